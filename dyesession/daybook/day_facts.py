"""What of a day bears on its colour: fibre, doses, extractions, heat, water, pots, readings. Pure."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from dyesession.daybook.called_out import kitchen_then
from dyesession.daybook.day_line import dyes_drawn
from dyesession.daybook.model import StepReview
from dyesession.daybook.steps import step_reviews
from dyesession.daybook.walk import Pace, walk
from dyesession.session import events as e
from dyesession.session.fold import opening_state
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State

GRAMS_PER_KG = 1000.0
HUNDRED = 100.0


@dataclass(frozen=True)
class Dosed:
    """So much of one substance over all of the day's fibre, in per cent."""

    substance: str
    role: str
    percent: float


@dataclass(frozen=True)
class DayFacts:
    """One day, as far as it bears on the colour. Minutes, °C, L/kg, mg/L; None where no fact says it.

    `dyes_drawn` are dyestuffs that kept baths brought; `came_mordanted` how every lot was mordanted before this day,
    "" where one was not.
    """

    name: str
    fibre: str
    fibre_g: float
    dosed: Mapping[str, Dosed]
    extractions: int
    extract_min: float | None
    extract_c: float | None
    mordant_min: float | None
    dye_min: float | None
    dye_c: float | None
    liquor_ratio: float | None
    drawn: tuple[str, ...]
    dye_pot_of: str
    dye_ph: float | None
    hardness_mg_l: float | None
    colours: Mapping[str, str]
    verdict: str
    strengths: Mapping[str, float]
    dyes_drawn: tuple[str, ...] = ()
    came_mordanted: str = ""


def day_facts(day: LoggedDay) -> DayFacts:
    """Go through a day once."""
    paces = tuple(walk(day))
    last = paces[-1].after if paces else opening_state(day.plan)
    steps = step_reviews(day, paces, last)
    lots = [one for one in last.lots if not one.snippet]
    fibre_g = sum(one.mass_g for one in lots)
    kitchen = kitchen_then(day)
    dye = [one for one in steps if one.stage == "dye" and one.actual.start is not None]
    return DayFacts(
        name=day.name,
        fibre=" and ".join(dict.fromkeys(one.kind for one in lots)),
        fibre_g=fibre_g,
        dosed=_dosed(last, fibre_g),
        extractions=sum(one.pulls for one in last.dyestuffs),
        extract_min=_held(steps, "extract"),
        extract_c=_hottest(steps, "extract"),
        mordant_min=_held(steps, "mordant"),
        dye_min=_held(steps, "dye"),
        dye_c=_hottest(steps, "dye"),
        liquor_ratio=_ratio(paces, dye),
        drawn=tuple(
            one.entry.event.label
            for one in paces
            if isinstance(one.entry.event, e.Drawn)
            and not any(kept.label == one.entry.event.label for kept in one.before.kept)
        ),
        dye_pot_of=_material(last, dye),
        dye_ph=_ph(paces, dye),
        hardness_mg_l=kitchen.water.hardness_mg_l,
        colours=_colours(paces),
        verdict=last.verdict,
        strengths={one.substance: one.strength for one in kitchen.jars if one.strength},
        dyes_drawn=dyes_drawn(one.entry.event for one in paces),
        came_mordanted="; ".join(dict.fromkeys(one.mordanted for one in lots)) if all(one.mordanted for one in lots) else "",
    )


def _dosed(last: State, fibre_g: float) -> dict[str, Dosed]:
    roles = {one.ingredient: one.role for one in last.doses}
    named, grams, role_of = dict(last.substances), dict[str, float](), dict[str, str]()
    for one in last.put_in:
        substance = named.get(one.ingredient, one.ingredient)
        grams[substance] = grams.get(substance, 0.0) + one.mass_g
        role_of.setdefault(substance, roles.get(one.ingredient, "assist"))
    if fibre_g <= 0:
        return {}
    return {name: Dosed(name, role_of[name], HUNDRED * mass_g / fibre_g) for name, mass_g in grams.items()}


def _held(steps: Iterable[StepReview], stage: str) -> float | None:
    found = [one.actual.held_min for one in steps if one.stage == stage and one.actual.held_min is not None]
    return sum(found) if found else None


def _hottest(steps: Iterable[StepReview], stage: str) -> float | None:
    found = [one.actual.temperature_c for one in steps if one.stage == stage]
    return max((one for one in found if one is not None), default=None)


def _ratio(paces: Sequence[Pace], dye: Sequence[StepReview]) -> float | None:
    """Litres to the kilogram as the first fibre went into the dye bath."""
    for pace in paces:
        event = pace.entry.event
        if isinstance(event, e.Entered) and any(one.vessel == event.vessel for one in dye):
            running = pace.after.running_in(event.vessel)
            vessel = pace.after.vessel(event.vessel)
            if running is None or running.plan.stage != "dye" or vessel is None or vessel.bath is None:
                continue
            kg = sum(one.mass_g for one in pace.after.lots if not one.snippet) / GRAMS_PER_KG
            return vessel.bath.volume_l / kg if vessel.bath.volume_l and kg > 0 else None
    return None


def _material(last: State, dye: Sequence[StepReview]) -> str:
    vessel = last.vessel(dye[0].vessel) if dye else None
    return vessel.material if vessel is not None else ""


def _ph(paces: Sequence[Pace], dye: Sequence[StepReview]) -> float | None:
    pots = {one.vessel for one in dye}
    found = [
        one.entry.event.ph
        for one in paces
        if isinstance(one.entry.event, e.Read) and one.entry.event.vessel in pots
    ]
    return next((one for one in reversed(found) if one is not None), None)


def _colours(paces: Iterable[Pace]) -> dict[str, str]:
    """The last dry colour of each lot."""
    found: dict[str, str] = {}
    for pace in paces:
        event = pace.entry.event
        if isinstance(event, e.Read) and event.wet is True:
            continue
        if isinstance(event, e.Read | e.Cared) and event.colour and (event.lot or isinstance(event, e.Cared)):
            found[event.lot] = event.colour
    return found
