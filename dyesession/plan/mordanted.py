"""Fibre that is mordanted already: it stays out of the steps up to the mordant, which are reckoned without it.

Works on a plan that is there. What comes before the dye bath is worked out again for the other lots alone and put
in its place, so that doses, water, times and reminders agree. Wetting out first: common practice, no source.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from dyesession.kitchen.model import Kitchen
from dyesession.plan.cautions import Day
from dyesession.plan.doses import Depth
from dyesession.plan.model import FibreLot, Plan, PlannedBath, PlannedDose, PlannedStep
from dyesession.plan.words import and_list
from dyesession.plan.working import laid_out, work_out
from dyesession.recipe.model import Recipe
from dyesession.units import show_mass

BEFORE_DYEING = ("scour", "wet", "mordant", "soak")
FIBRE = "fibre"


def without_mordanted(plan: Plan, recipe: Recipe, kitchen: Kitchen, depth: Depth = "aim") -> Plan:
    """The plan with the lots that are mordanted already left out of what comes before the dye bath.

    Where none is, or the recipe mordants nothing, the plan as it is.
    """
    ready = [one for one in plan.lots if one.mordanted]
    mine = _steps_before(plan)
    if not ready or not mine:
        return plan
    rest = [one for one in plan.lots if not one.mordanted]
    alone = work_out(recipe, rest, kitchen, depth=depth) if rest else None
    doses, steps = _doses(plan, alone, mine), _steps(plan, alone, mine)
    day = Day(recipe, kitchen, doses, plan.vessels, [one.kind for one in plan.lots])
    return replace(
        plan,
        doses=doses,
        steps=steps,
        baths=_baths(plan, alone, mine),
        timetable=laid_out(steps, kitchen),
        reminders=tuple(reminder for step in steps for reminder in day.reminders(step)),
        warnings=(*plan.warnings, _sentence(ready, rest, plan, doses)),
    )


def _steps_before(plan: Plan) -> set[str]:
    """The fibre's steps up to its last mordant; none where the recipe has no mordant step of its own."""
    fibre = [one for one in plan.steps if one.lane == FIBRE]
    mordants = [index for index, one in enumerate(fibre) if one.stage == "mordant" and one.enter]
    before = fibre[: max(mordants, default=-1) + 1]
    return {one.name for one in before} if all(one.stage in BEFORE_DYEING for one in before) else set()


def _doses(plan: Plan, alone: Plan | None, mine: set[str]) -> tuple[PlannedDose, ...]:
    """What goes only into the steps before the dye bath is the other lots' own dose; the rest stays."""
    fewer: Mapping[str, PlannedDose] = {one.ingredient: one for one in alone.doses} if alone else {}
    found = []
    for dose in plan.doses:
        if not _only_before(plan, dose.ingredient, mine):
            found.append(dose)
        elif dose.ingredient in fewer:
            found.append(fewer[dose.ingredient])
    return tuple(found)


def _only_before(plan: Plan, ingredient: str, mine: set[str]) -> bool:
    users = [one.name for one in plan.steps if any(added.ingredient == ingredient for added in one.add)]
    return bool(users) and all(name in mine for name in users)


def _steps(plan: Plan, alone: Plan | None, mine: set[str]) -> tuple[PlannedStep, ...]:
    if alone is None:
        return _dropped(plan.steps, mine)
    names = tuple(one.name for one in alone.lots)
    fewer = {one.name: one for one in alone.steps}
    return tuple(_for_fewer(one, fewer[one.name], names) if one.name in mine else one for one in plan.steps)


def _for_fewer(step: PlannedStep, fewer: PlannedStep, lots: tuple[str, ...]) -> PlannedStep:
    return replace(fewer, after=step.after, enter=lots if FIBRE in step.enter else step.enter)


def _dropped(steps: Sequence[PlannedStep], mine: set[str]) -> tuple[PlannedStep, ...]:
    """The other steps; what waited for a dropped one waits for what that one waited for."""
    before = {one.name: one.after for one in steps}

    def waits(names: Sequence[str]) -> tuple[str, ...]:
        found: list[str] = []
        for name in names:
            found += waits(before[name]) if name in mine else [name]
        return tuple(dict.fromkeys(found))

    return tuple(replace(one, after=waits(one.after)) for one in steps if one.name not in mine)


def _baths(plan: Plan, alone: Plan | None, mine: set[str]) -> tuple[PlannedBath, ...]:
    """The smaller baths before dyeing, in the pots of the whole plan."""
    fewer = {one.step: one for one in alone.baths} if alone else {}
    found = []
    for bath in plan.baths:
        if bath.step not in mine:
            found.append(bath)
        elif bath.step in fewer:
            found.append(replace(fewer[bath.step], pot=bath.pot, capacity_l=bath.capacity_l))
    return tuple(found)


def _sentence(
    ready: Sequence[FibreLot], rest: Sequence[FibreLot], plan: Plan, doses: Sequence[PlannedDose]
) -> str:
    lots = and_list([f"the {one.name}" for one in ready])
    stay = "is" if len(ready) == 1 else "are"
    joins = f"{lots} {stay} mordanted already: wet out, then straight into the dye bath"
    was = {one.ingredient: one.mass_g.aim for one in plan.doses}
    less = [one for one in doses if one.mass_g.aim != was[one.ingredient] and one.role == "mordant"]
    amounts = and_list([f"{show_mass(one.mass_g.aim)} of {one.ingredient}" for one in less])
    tail = (
        f"; {amounts} for the other {show_mass(sum(one.mass_g for one in rest))}" if amounts and rest else ""
    )
    return f"{joins[0].upper()}{joins[1:]}{tail}."
