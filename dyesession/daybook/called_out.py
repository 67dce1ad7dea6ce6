"""What is other this time than on the day that is repeated, each with what it does to the colour. Pure.

Effects are told as a factor on depth with its band where a starting guess gives one, else in words whose
source stands beside them. Nothing is promised.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from dyesession.account import Band90
from dyesession.daybook.day_line import dyes_drawn
from dyesession.daybook.doses import dose_reviews
from dyesession.daybook.steps import step_reviews
from dyesession.daybook.walk import Pace
from dyesession.dyeing.exhaustion import exhausted_share
from dyesession.dyeing.priors import partition_prior, potency_prior
from dyesession.errors import UserError
from dyesession.kitchen import kitchen_from_log
from dyesession.kitchen.model import Jar, Kitchen
from dyesession.plan.model import FibreLot, Plan
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State
from dyesession.substances import find
from dyesession.units import show_mass, show_percent, show_temperature, show_volume

About = Literal["done", "fibre", "dyestuff", "kitchen", "depth", "kept bath", "other bath"]

WORTH_PERCENT = 3.0  # a dose this far off the plan is told; our own choice, no source
WORTH_MIN = 10.0  # a hold this many minutes off; our own choice, no source
WORTH_HARDNESS_MG_L = 50.0  # our own choice, no source
WORTH_C = 1.0
SHIFTING = ("iron", "copper", "aluminium")  # bare metals that shift shades: common practice, no source
PRACTICE = "common practice, no source"


@dataclass(frozen=True)
class Change:
    """One thing that is other: about what, in words, and its effect ("" where none is known).

    `factor` is the depth to expect over the depth of the day, where it can be told.
    """

    about: About
    text: str
    effect: str = ""
    factor: Band90 | None = None


def as_done(day: LoggedDay, paces: Sequence[Pace], last: State) -> Iterator[Change]:
    """Where the new recipe follows what was done and not what had been planned."""
    events = [one.entry.event for one in paces]
    for dose in dose_reviews(day.plan, events, last.doses):
        off = dose.off_percent
        if dose.added_g is None and dose.planned_g is not None and dose.role != "":
            yield Change("done", f"{dose.ingredient} was planned and never went in: it is left out")
        elif off is not None and abs(off) >= WORTH_PERCENT and dose.added_g is not None:
            planned = show_mass(dose.planned_g.aim) if dose.planned_g else ""
            yield Change(
                "done", f"{dose.ingredient} as it went in, {show_mass(dose.added_g)}, not {planned} as planned"
            )
        elif dose.planned_g is None and dose.added_g is not None:
            yield Change("done", f"{dose.ingredient}, {show_mass(dose.added_g)}, came in at the stove")
    for step in step_reviews(day, paces, last):
        planned_min = step.planned.held_min if step.planned else None
        held = step.actual.held_min
        if held is not None and planned_min is not None and abs(held - planned_min) >= WORTH_MIN:
            yield Change("done", f"{step.name} held {held:.0f} min as it was, not {planned_min:.0f} as planned")
        elif step.status == "skipped" and step.planned is not None:
            yield Change("done", f"{step.name} was left out{f': {step.why}' if step.why else ''}")
    yield from _corrected(day, last)


def _corrected(day: LoggedDay, last: State) -> Iterator[Change]:
    unfit = {one.n for one in last.flags}
    made = [one for one in day.entries if isinstance(one.event, e.Corrected) and one.n not in unfit]
    if made:
        entries = ", ".join(str(one.event.entry) for one in made if isinstance(one.event, e.Corrected))
        yield Change("done", f"corrections are carried out: of entry {entries}")


def kept_baths(paces: Sequence[Pace]) -> Iterator[Change]:
    """Kept baths that were poured in: their colour is in no recipe."""
    for pace in paces:
        event = pace.entry.event
        if isinstance(event, e.Drawn) and not any(one.label == event.label for one in pace.before.kept):
            yield _kept_bath(event)


def _kept_bath(event: e.Drawn) -> Change:
    much = f"{show_volume(event.volume_l)} of " if event.volume_l else ""
    untold = "" if event.volume_l else " (how many litres, the log does not say)"
    went = f"{much}the kept bath “{event.label}” went into the {event.vessel}{untold}"
    if event.contents and not dyes_drawn((event,)):
        return Change("other bath", f"{went}: no recipe holds what was in it", "weigh it fresh, or draw one like it")
    return Change(
        "kept bath",
        f"{went}: no recipe holds its colour",
        "draw one like it for this; the bath shelf says what one would bring",
    )


def fibre(old: Sequence[FibreLot], new: Sequence[FibreLot], dyestuffs: Sequence[str], ratio: float) -> (
    Iterator[Change]
):
    """Another weight, another kind, another form, mordanted already."""
    before, after = sum(one.mass_g for one in old), sum(one.mass_g for one in new)
    if before > 0 and abs(after - before) > 0.5:
        yield Change("fibre", f"{show_mass(after)} of fibre for {show_mass(before)}: doses and water follow it")
    kinds_before, kinds_after = {one.kind for one in old}, {one.kind for one in new}
    for kind in sorted(kinds_after - kinds_before):
        yield _other_kind(kind, next(iter(sorted(kinds_before)), ""), dyestuffs, ratio)
    forms_before, forms_after = {one.form for one in old if one.form}, {one.form for one in new if one.form}
    if forms_before and forms_after and forms_before != forms_after:
        forms = f"{' and '.join(sorted(forms_after))} for {' and '.join(sorted(forms_before))}"
        yield Change("fibre", forms, f"it takes up faster or slower and less or more evenly ({PRACTICE})")
    for lot in new:
        if lot.mordanted and not any(one.mordanted for one in old):
            yield Change("fibre", f"the {lot.name} is mordanted already ({lot.mordanted})", "as that mordant was")
    bare = [one.name for one in new if not one.mordanted]
    was = next((one.mordanted for one in old if one.mordanted), "")
    if was and bare and all(one.mordanted for one in old):
        yield Change(
            "fibre",
            f"that day's fibre had been mordanted before it ({was}): the {' and the '.join(bare)} wants it too",
            "without it little of the colour stays",
        )


def _other_kind(kind: str, was: str, dyestuffs: Sequence[str], ratio: float) -> Change:
    text = f"{kind} for {was}" if was else kind
    for dyestuff in dyestuffs:
        factor = _kind_factor(kind, was, dyestuff, ratio)
        if factor is not None:
            return Change("fibre", text, f"of {dyestuff}, {_of_depth(factor)}, a guess", factor)
    return Change("fibre", text, "another fibre takes up otherwise: try a snippet first")


def _kind_factor(kind: str, was: str, dyestuff: str, ratio: float) -> Band90 | None:
    """Share taken by the new fibre over that taken by the old one, at the same liquor ratio."""
    try:
        new, old = partition_prior(kind, dyestuff), partition_prior(was, dyestuff)
    except (UserError, KeyError, ValueError):
        return None
    taken = exhausted_share(old.centre, ratio)
    mean, low, high = (exhausted_share(k, ratio) / taken for k in (new.centre, new.low, new.high))
    return Band90(mean, low, high)


def _of_depth(factor: Band90) -> str:
    return f"expect {factor.mean:.1f} of the depth ({factor.low:.1f} to {factor.high:.1f})"


def kitchen_then(day: LoggedDay) -> Kitchen:
    """The kitchen as the log has it; an empty one where it cannot be read."""
    table = day.header.get("kitchen")
    try:
        return kitchen_from_log(table) if isinstance(table, Mapping) else Kitchen()
    except UserError:
        return Kitchen()


def jar_of(kitchen: Kitchen, substance: str) -> Jar | None:
    """The first jar that holds a substance, by whatever name."""
    wanted = find(substance)
    for jar in kitchen.jars:
        held = find(jar.substance)
        same = jar.substance.casefold() == substance.casefold()
        if same or (wanted is not None and held is not None and held.key == wanted.key):
            return jar
    return None


def strength_factor(then: Kitchen, now: Kitchen, substance: str) -> float | None:
    """How many times as much of today's jar a dose of that day's stands for; None where it is not known."""
    old, new = jar_of(then, substance), jar_of(now, substance)
    if old is None or new is None or not old.strength or not new.strength:
        return None
    return old.strength / new.strength


def dyestuff(then: Kitchen, now: Kitchen, substance: str) -> Iterator[Change]:
    """Another jar of a dyestuff: stronger, weaker, or nobody knows."""
    old, new = jar_of(then, substance), jar_of(now, substance)
    factor = strength_factor(then, now, substance)
    if factor is not None and abs(factor - 1.0) > 0.01:
        yield Change(
            "dyestuff",
            f"your jar of {substance} is {1 / factor:.2f} times as strong as that day's: the dose is"
            f" {factor:.2f} times as much",
            "the same depth",
        )
    elif factor is None and (new is None or old is None or new.name != old.name):
        prior = potency_prior(substance)
        low, high = prior.low / prior.centre, prior.high / prior.centre
        if old is not None or new is not None:
            yield Change(
                "dyestuff",
                f"{substance} may be of another lot than that day's",
                f"another lot gives {low:.2f} to {high:.2f} of the depth, a guess ({prior.source})",
                Band90(1.0, low, high),
            )
    if old is not None and new is not None and old.form and new.form and old.form != new.form:
        yield Change("dyestuff", f"{substance} is now {new.form}, then it was {old.form}", "try a snippet first")


def kitchen(day: LoggedDay, then: Kitchen, now: Kitchen, plan: Plan) -> Iterator[Change]:
    """Water, height, pots, thermometer."""
    yield from _water(then, now)
    if abs(plan.boiling_c - day.plan.boiling_c) >= WORTH_C:
        yield Change(
            "kitchen",
            f"water boils at {show_temperature(round(plan.boiling_c, 1))} here, at"
            f" {show_temperature(round(day.plan.boiling_c, 1))} there: heat is capped at that",
            "a cooler hold takes up more slowly: give it longer",
        )
    materials = {one.name: one.material for one in day.plan.vessels}
    for vessel in plan.vessels:
        was = materials.get(vessel.name, "")
        if vessel.material and was and vessel.material != was:
            metal = next((one for one in SHIFTING if one in (vessel.material, was)), "")
            effect = f"bare {metal} shifts shades ({PRACTICE})" if metal else ""
            yield Change("kitchen", f"the {vessel.name} is of {vessel.material}, then of {was}", effect)
    if then.thermometer and now.thermometer is False:
        yield Change("kitchen", "no thermometer now: heat goes by the eye", "the depth is less sure")
    for bath in plan.baths:
        if bath.fits is False:
            yield Change(
                "kitchen", f"{bath.step} wants {show_volume(bath.water_l)} and the pot is too small", bath.say
            )


def _water(then: Kitchen, now: Kitchen) -> Iterator[Change]:
    old, new = then.water, now.water
    was, now_is = old.hardness_mg_l, new.hardness_mg_l
    if was is not None and now_is is not None and abs(now_is - was) >= WORTH_HARDNESS_MG_L:
        yield Change(
            "kitchen",
            f"the water is {'harder' if now_is > was else 'softer'}, {now_is:.0f} mg/L for {was:.0f}",
            f"madder, weld and cochineal answer to lime in the water ({PRACTICE}): try a snippet",
        )
    if old.ph is not None and new.ph is not None and abs(old.ph - new.ph) >= 1.0:
        yield Change("kitchen", f"the water has pH {new.ph:g}, then {old.ph:g}", "try a snippet first")


def depth(wanted: float, exponent: float, plus_minus: float) -> Iterator[Change]:
    """Another depth was asked for."""
    if wanted == 1.0:
        return
    dose = wanted ** (1.0 / exponent)
    ends = sorted(dose ** (exponent + sign * plus_minus) for sign in (-1.0, 1.0))
    yield Change(
        "depth",
        f"{show_percent(100 * dose)} of the dyestuff, for {wanted:.3g} of the depth",
        f"{ends[0]:.2f} to {ends[1]:.2f} of it, by how surely depth is known to follow dose",
        Band90(wanted, ends[0], ends[1]),
    )
