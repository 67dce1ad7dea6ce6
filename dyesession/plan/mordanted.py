"""Fibre that is mordanted already: it stays out of the steps up to the mordant, and the mordant is reckoned without it.

Works on a plan that is there, from the recipe and kitchen it was made of; the same parts of the work are asked
again, so that doses, water, times and reminders agree. Wetting out first: common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import replace

from dyesession.kitchen.model import Kitchen
from dyesession.plan.cautions import Day
from dyesession.plan.minutes import pot_minutes
from dyesession.plan.model import Band, FibreLot, Plan, PlannedBath, PlannedDose, PlannedStep
from dyesession.plan.timetable import timetable
from dyesession.plan.weighing import ToWeigh, weigh
from dyesession.plan.words import and_list
from dyesession.recipe.model import Recipe
from dyesession.substances import find
from dyesession.units import PerBath, ShareOf, ShareOfFibre, show_mass

BEFORE_DYEING = ("scour", "wet", "mordant", "soak")
FIBRE = "fibre"


def without_mordanted(plan: Plan, recipe: Recipe, kitchen: Kitchen) -> Plan:
    """The plan with the lots that are mordanted already left out of what comes before the dye bath.

    Where none is, or the recipe mordants nothing, the plan as it is.
    """
    ready = [one for one in plan.lots if one.mordanted]
    mine = _steps_before(plan)
    if not ready or not mine:
        return plan
    rest = [one for one in plan.lots if not one.mordanted]
    share = sum(one.mass_g for one in rest) / plan.fibre_mass_g
    doses = tuple(_dose(one, share, plan, recipe, kitchen, mine) for one in plan.doses)
    steps = _steps(plan, mine, rest, share, doses)
    kept = {one.name for one in steps}
    baths = tuple(_bath(one, share) if one.step in mine else one for one in plan.baths if one.step in kept)
    day = Day(recipe, kitchen, doses, plan.vessels, [one.kind for one in plan.lots])
    return replace(
        plan,
        doses=tuple(one for one in doses if rest or one.mass_g.aim > 0),
        steps=steps,
        baths=baths,
        timetable=timetable(steps, pot_minutes(steps, kitchen.burners)),
        reminders=tuple(reminder for step in steps for reminder in day.reminders(step)),
        warnings=(*plan.warnings, _sentence(ready, rest, plan, doses)),
    )


def _steps_before(plan: Plan) -> set[str]:
    """The fibre's steps up to its last mordant; none where the recipe has no mordant step of its own."""
    fibre = [one for one in plan.steps if one.lane == FIBRE]
    mordants = [index for index, one in enumerate(fibre) if one.stage == "mordant" and one.enter]
    last = max(mordants, default=-1)
    before = fibre[: last + 1]
    return {one.name for one in before} if all(one.stage in BEFORE_DYEING for one in before) else set()


def _steps(
    plan: Plan, mine: set[str], rest: Sequence[FibreLot], share: float, doses: Sequence[PlannedDose]
) -> tuple[PlannedStep, ...]:
    if not rest:
        return _dropped(plan.steps, mine)
    grams = {one.ingredient: one.mass_g.aim for one in doses}
    was = {one.ingredient: one.mass_g.aim for one in plan.doses}
    return tuple(_smaller(one, rest, share, grams, was) if one.name in mine else one for one in plan.steps)


def _dropped(steps: Sequence[PlannedStep], mine: set[str]) -> tuple[PlannedStep, ...]:
    """The other steps; what waited for a dropped one waits for what that one waited for."""
    before = {one.name: one.after for one in steps}

    def waits(names: Sequence[str]) -> tuple[str, ...]:
        found: list[str] = []
        for name in names:
            found += waits(before[name]) if name in mine else [name]
        return tuple(dict.fromkeys(found))

    return tuple(replace(one, after=waits(one.after)) for one in steps if one.name not in mine)


def _smaller(
    step: PlannedStep, rest: Sequence[FibreLot], share: float, grams: dict[str, float], was: dict[str, float]
) -> PlannedStep:
    enter = tuple(one.name for one in rest) if FIBRE in step.enter else step.enter
    add = tuple(
        replace(one, mass_g=one.mass_g * grams[one.ingredient] / was[one.ingredient])
        if was.get(one.ingredient)
        else one
        for one in step.add
    )
    water_l = None if step.water_l is None else step.water_l * share
    return replace(step, enter=enter, add=add, water_l=water_l)


def _dose(
    dose: PlannedDose, share: float, plan: Plan, recipe: Recipe, kitchen: Kitchen, mine: set[str]
) -> PlannedDose:
    """A dose that goes only into the steps before dyeing, reckoned on the lots that still go through them."""
    users = [one for one in plan.steps if any(added.ingredient == dose.ingredient for added in one.add)]
    if not users or any(one.name not in mine for one in users) or not _follows_fibre(dose.ingredient, recipe):
        return dose
    mass = Band(dose.mass_g.low * share, dose.mass_g.aim * share, dose.mass_g.high * share)
    portions = tuple(
        added.mass_g * share for one in users for added in one.add if added.ingredient == dose.ingredient
    )
    again = ToWeigh(mass.aim, portions, dose.role, find(dose.substance), plan.fibre_mass_g * share)
    # Its share of the fibre stays what it was: it is a share of the fibre that goes into its bath.
    return replace(dose, mass_g=mass, weigh=weigh(again, kitchen.scales))


def _follows_fibre(name: str, recipe: Recipe) -> bool:
    """Whether a dose grows with the fibre: a share of it, of its bath, or of another such dose."""
    dose = recipe.ingredient(name).dose
    if isinstance(dose, ShareOf):
        return _follows_fibre(dose.ingredient, recipe)
    return isinstance(dose, ShareOfFibre | PerBath)


def _bath(bath: PlannedBath, share: float) -> PlannedBath:
    return replace(bath, water_l=bath.water_l * share)


def _sentence(
    ready: Sequence[FibreLot], rest: Sequence[FibreLot], plan: Plan, doses: Sequence[PlannedDose]
) -> str:
    lots = and_list([f"the {one.name}" for one in ready])
    joins = f"{lots} {'is' if len(ready) == 1 else 'are'} mordanted already: wet out, then straight into the dye bath"
    was = {one.ingredient: one.mass_g.aim for one in plan.doses}
    less = [one for one in doses if one.mass_g.aim != was[one.ingredient] and one.role == "mordant"]
    on = show_mass(sum(one.mass_g for one in rest)) if rest else ""
    amounts = and_list([f"{show_mass(one.mass_g.aim)} of {one.ingredient}" for one in less])
    tail = f"; {amounts} for the other {on}" if amounts and rest else ""
    return f"{joins[0].upper()}{joins[1:]}{tail}."
