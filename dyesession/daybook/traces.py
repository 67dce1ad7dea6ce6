"""What a log shows of how a day was dyed: heat, holds, doses, water, rinses, metal. Facts only, no blame.

Pure; knows no files. What nobody read or wrote is None, never a guess; a bath just filled counts as tap-cold.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from dyesession.daybook.steps import step_reviews
from dyesession.daybook.walk import Pace, walk
from dyesession.plan.minutes import TAP_C
from dyesession.plan.pots import SHADE_SHIFTING
from dyesession.session import events as e
from dyesession.session.fold import opening_state
from dyesession.session.opening import LoggedDay
from dyesession.session.state import OUT_DRY, State, StepState
from dyesession.substances import Substance, find

SECONDS_PER_MIN = 60.0
GRAMS_PER_KG = 1000.0
LEAST_MIN = (
    3.0  # readings nearer than this say more of the thermometer than of the pot; our own choice, no source
)


@dataclass(frozen=True)
class Rise:
    """The steepest rise of a bath between two readings, °C a minute, and from what to what."""

    c_per_min: float
    from_c: float
    to_c: float


@dataclass(frozen=True)
class Trace:
    """One step with fibre in it.

    `hottest_how` is "read" or "planned". `entered_c` and `lifted_c` are the bath's degrees as the fibre went
    in and came out; `entered_dry` tells that some went in dry. `ratio_l_per_kg` is by the litres a fact says.
    """

    name: str
    stage: str
    vessel: str
    material: str
    metal: str
    held_min: float | None
    planned_held_min: float | None
    hottest_c: float | None
    hottest_how: str
    planned_c: float | None
    rise: Rise | None
    entered_c: float | None
    entered_dry: bool
    lifted_c: float | None
    ratio_l_per_kg: float | None
    uses_before: int
    ended_early: bool


@dataclass(frozen=True)
class Dosed:
    """What went in over the day: its substance where it is known, grams, per cent of all the fibre,
    portions.
    """

    ingredient: str
    substance: str
    known: Substance | None
    role: str
    grams: float
    percent: float
    planned_percent: float | None
    portions: int
    pulls: int


@dataclass(frozen=True)
class Traces:
    """All that the causes of a trouble are looked for in."""

    steps: tuple[Trace, ...]
    doses: tuple[Dosed, ...]
    fibre_kinds: tuple[str, ...]
    raw: bool
    hardness_mg_l: float | None
    rinsed: bool
    rinses: int
    rinse_c: float | None
    drained: bool
    mordanted: bool = False
    judged_dry: bool = False

    def of(self, *stages: str) -> tuple[Trace, ...]:
        """The steps of some stages."""
        return tuple(one for one in self.steps if one.stage in stages)

    def dosed(self, *roles: str) -> tuple[Dosed, ...]:
        """What went in of some roles."""
        return tuple(one for one in self.doses if one.role in roles)

    def with_trait(self, *traits: str) -> tuple[Dosed, ...]:
        """What went in that has any of these traits."""
        return tuple(one for one in self.doses if one.known is not None and one.known.has(*traits))

    def named(self, *words: str) -> tuple[Dosed, ...]:
        """What went in whose substance has one of these words in its name."""
        return tuple(
            one
            for one in self.doses
            if any(
                word in f"{one.known.key if one.known else ''} {one.substance}".casefold() for word in words
            )
        )


def traces(day: LoggedDay) -> Traces:
    """What the log of a day shows."""
    paces = tuple(walk(day))
    last = paces[-1].after if paces else opening_state(day.plan)
    reviews = {one.name: one for one in step_reviews(day, paces, last)}
    steps = []
    for step in last.steps:
        if step.entered and step.plan.vessel is not None:
            review = reviews[step.name]
            held = (review.actual.held_min, review.planned.held_min if review.planned else None)
            hottest = (review.actual.temperature_c, review.actual.temperature_how)
            steps.append(_trace(step, last, paces, held, hottest))
    rinses, rinse_c = _rinses(last, paces)
    return Traces(
        steps=tuple(steps),
        doses=_doses(day, last, paces),
        fibre_kinds=tuple(dict.fromkeys(one.kind for one in last.lots if not one.snippet)),
        raw=any(one.form == "raw" for one in day.plan.lots),
        hardness_mg_l=_hardness(day.header),
        rinsed=any(one.plan.stage == "rinse" and one.begun_s is not None for one in last.steps),
        rinses=rinses,
        rinse_c=rinse_c,
        drained=any(isinstance(one.entry.event, e.Drawn) for one in paces),
        mordanted=any(one.mordanted for one in last.lots),
        judged_dry=any(_is_dry_shade(one.entry.event) for one in paces),
    )


def _trace(
    step: StepState,
    last: State,
    paces: Sequence[Pace],
    held: tuple[float | None, float | None],
    hottest: tuple[float | None, str],
) -> Trace:
    vessel, mine = step.plan.vessel or "", _under_way(step.name, paces)
    entered = [one for one in mine if isinstance(one.entry.event, e.Entered)]
    pot = last.vessel(vessel)
    planned = [one.temperature_c for one in step.plan.heat if one.temperature_c is not None]
    judge = step.plan.judge
    return Trace(
        name=step.name,
        stage=step.plan.stage,
        vessel=vessel,
        material=pot.material if pot is not None else "",
        metal=_bare_metal(pot.material if pot is not None else ""),
        held_min=held[0],
        planned_held_min=held[1] if held[1] is not None else _planned_hold(step),
        hottest_c=hottest[0],
        hottest_how=hottest[1],
        planned_c=max(planned, default=None),
        rise=_steepest(vessel, mine),
        entered_c=_temperature(entered[0].before, vessel) if entered else None,
        entered_dry=any(_was_dry(one) for one in entered),
        lifted_c=_lifted_c(vessel, paces, step),
        ratio_l_per_kg=_ratio(step, mine, vessel, last),
        uses_before=_uses_before(entered, vessel),
        ended_early=judge is not None and held[0] is not None and held[0] < judge.least_min - 1.0,
    )


def _under_way(name: str, paces: Iterable[Pace]) -> list[Pace]:
    """The entries while a step was under way."""
    found = []
    for one in paces:
        step = one.before.step(name)
        if step is not None and step.status in ("running", "paused"):
            found.append(one)
    return found


def _planned_hold(step: StepState) -> float | None:
    holds = [one.minutes for one in step.plan.heat if one.kind == "hold" and one.minutes is not None]
    return sum(holds) if holds else None


def _bare_metal(material: str) -> str:
    words = material.casefold().replace("-", " ").split()
    coated = {"enamelled", "enameled", "enamel", "stainless"} & set(words)
    return "" if coated else next((one for one in SHADE_SHIFTING if one in words), "")


def _read_c(event: e.Event, vessel: str) -> float | None:
    """Degrees that were read of a vessel with this entry."""
    if isinstance(event, e.Read | e.Confirmed) and event.vessel == vessel:
        return event.temperature_c
    if isinstance(event, e.Reached) and event.vessel == vessel and event.how == "read":
        return event.temperature_c
    return None


def _steepest(vessel: str, paces: Iterable[Pace]) -> Rise | None:
    """The steepest rise between readings; a bath filled and not read yet counts from tap-cold."""
    found: list[Rise] = []
    before: tuple[float, float] | None = None
    for one in paces:
        event, minute = one.entry.event, one.after.now_s / SECONDS_PER_MIN
        if isinstance(event, e.Lit) and event.vessel == vessel and event.on and before is None:
            before = (minute, TAP_C)
        degrees_c = _read_c(event, vessel)
        if degrees_c is None:
            continue
        if before is not None and degrees_c > before[1] and minute - before[0] >= LEAST_MIN:
            found.append(Rise((degrees_c - before[1]) / (minute - before[0]), before[1], degrees_c))
        before = (minute, degrees_c)
    return max(found, key=lambda one: one.c_per_min, default=None)


def _temperature(state: State, vessel: str) -> float | None:
    """Degrees of a vessel as far as a fact says: the last reading, else what it was brought to."""
    pot = state.vessel(vessel)
    if pot is None:
        return None
    return pot.temperature_c if pot.temperature_c is not None else pot.reached_c


def _was_dry(pace: Pace) -> bool:
    event = pace.entry.event
    lot = pace.before.lot(event.lot) if isinstance(event, e.Entered) else None
    return lot is not None and lot.place == OUT_DRY


def _lifted_c(vessel: str, paces: Iterable[Pace], step: StepState) -> float | None:
    """Degrees of the bath when the fibre of this step was last lifted out of it."""
    found = None
    for one in paces:
        event = one.entry.event
        if isinstance(event, e.Lifted) and event.vessel == vessel and event.lot in step.entered:
            found = _temperature(one.before, vessel)
    return found


def _ratio(step: StepState, paces: Sequence[Pace], vessel: str, last: State) -> float | None:
    fibre_g = sum(one.mass_g for one in last.lots if one.name in step.entered)
    litres = None
    for one in paces:
        pot = one.after.vessel(vessel)
        if pot is not None and pot.bath is not None and pot.bath.volume_l is not None:
            litres = pot.bath.volume_l
    return None if litres is None or fibre_g <= 0 else GRAMS_PER_KG * litres / fibre_g


def _uses_before(entered: Sequence[Pace], vessel: str) -> int:
    """How many lots of fibre had been in that bath before the first of this step."""
    pot = entered[0].before.vessel(vessel) if entered else None
    return pot.bath.uses if pot is not None and pot.bath is not None else 0


def _doses(day: LoggedDay, last: State, paces: Iterable[Pace]) -> tuple[Dosed, ...]:
    grams: dict[str, float] = {}
    portions: dict[str, int] = {}
    for one in paces:
        event = one.entry.event
        if isinstance(event, e.Added):
            grams[event.ingredient] = grams.get(event.ingredient, 0.0) + event.mass_g
            portions[event.ingredient] = portions.get(event.ingredient, 0) + 1
    fibre_g = sum(one.mass_g for one in last.lots if not one.snippet)
    roles = {one.ingredient: one.role for one in last.doses}
    planned = {one.ingredient: one.percent_wof for one in day.plan.doses}
    substances = dict(last.substances)
    found = []
    for name, mass_g in grams.items():
        substance = substances.get(name, name)
        dyestuff, wanted = last.dyestuff(name), planned.get(name)
        found.append(
            Dosed(
                name,
                substance,
                find(substance),
                roles.get(name, ""),
                mass_g,
                100.0 * mass_g / fibre_g if fibre_g > 0 else 0.0,
                wanted.aim if wanted is not None else None,
                portions[name],
                dyestuff.pulls if dyestuff is not None else 0,
            )
        )
    return tuple(found)


def _is_dry_shade(event: e.Event) -> bool:
    """Whether this entry tells of a shade looked at dry."""
    if isinstance(event, e.Cared):
        return "dry" in event.what.casefold()
    return isinstance(event, e.Read) and bool(event.colour) and event.wet is False


def _rinses(last: State, paces: Iterable[Pace]) -> tuple[int, float | None]:
    """How often fresh water was run for a rinse, and its degrees where they were read."""
    pots = {one.plan.vessel for one in last.steps if one.plan.stage == "rinse" and one.begun_s is not None}
    count, degrees_c = 0, None
    for one in paces:
        event = one.entry.event
        if isinstance(event, e.Filled | e.ToppedUp) and event.vessel in pots:
            count += 1
        for vessel in pots:
            read_c = _read_c(event, vessel or "")
            degrees_c = read_c if read_c is not None else degrees_c
    return count, degrees_c


def _hardness(header: Mapping[str, object]) -> float | None:
    kitchen = header.get("kitchen")
    water = kitchen.get("water") if isinstance(kitchen, Mapping) else None
    hardness = water.get("hardness_mg_l") if isinstance(water, Mapping) else None
    return float(hardness) if isinstance(hardness, int | float) else None
