"""What is left to do, worked out again from what was done: a lot joins, a weight or a dose is corrected.

Pure: the day as it stands in, the changes out; what was done is never changed, only what it lacks is said.
Doses keep their share of the fibre (or of their bath); a pot is filled to two thirds (`pots`).
"""

from collections.abc import Iterable, Mapping

from dyesession.plan.changes import Change, Enters, Miss, StillToAdd, Water
from dyesession.plan.late import catching_up
from dyesession.plan.model import FibreLot
from dyesession.plan.pots import FILL_SHARE
from dyesession.plan.today import StepToday, Today
from dyesession.plan.trouble import PlanError
from dyesession.units import show_mass

SAME_G = 5e-4  # two reckonings of one dose may differ by rounding alone
WORTH_SAYING = 0.05  # a dose this far off is no wider than a kitchen weighing: common practice, no source
ALL_LOTS = "fibre"
BEFORE_DYEING = ("scour", "wet", "mordant")


def with_lot(today: Today, lot: FibreLot) -> list[Change]:
    """What a lot that joins changes: it goes along where no fibre is in yet, and catches up on the rest."""
    going = [one for one in today.steps if _goes_along(today, one, lot)]
    ratios = {one.name: _ratio(today.mass_g(one.lots), lot.mass_g) for one in going}
    named = [Enters(one.name, (*one.plan.enter, lot.name)) for one in going if ALL_LOTS not in one.plan.enter]
    without = [
        Enters(one.name, one.lots)
        for one in today.steps
        if one.how_far in ("to come", "under way") and ALL_LOTS in one.plan.enter and one not in going
    ]
    return [*named, *without, *_scaled(today, ratios), *catching_up(today, lot)]


def _goes_along(today: Today, step: StepToday, lot: FibreLot) -> bool:
    """Whether the lot takes part: no fibre is in yet, and the step is for all, or for all but the mordanted.

    A lot that is mordanted already stays out of what comes before the dyeing.
    """
    if not step.open or not step.plan.enter:
        return False
    if lot.mordanted and step.name in _before_dyeing(today):
        return False
    others = [one for one in today.lots if one.name not in step.plan.enter]
    for_all = step.name == step.plan.of and bool(others) and all(one.mordanted for one in others)
    return ALL_LOTS in step.plan.enter or for_all


def _before_dyeing(today: Today) -> set[str]:
    """The fibre's steps up to its last mordant of all, left out by whatever is mordanted already."""
    fibre = [one.plan for one in today.steps if one.plan.enter and one.plan.name == one.plan.of]
    last = max((i for i, one in enumerate(fibre) if one.stage == "mordant"), default=-1)
    return {one.name for one in fibre[: last + 1] if one.stage in BEFORE_DYEING}


def _ratio(there_g: float, more_g: float) -> float:
    return (there_g + more_g) / there_g if there_g > 0 else 1.0


def with_weight(today: Today, lot: str, mass_g: float) -> list[Change]:
    """What a lot's corrected weight changes: doses and water to come follow it, and what was done is told.

    Raises `PlanError` for a lot the day does not have.
    """
    old_g = next((one.mass_g for one in today.lots if one.name == lot), None)
    if old_g is None:
        names = ", ".join(one.name for one in today.lots)
        raise PlanError(f'There is no lot "{lot}"; expected one of {names}, for example large skein.')
    ratios = {
        one.name: _ratio(today.mass_g(one.lots), mass_g - old_g) for one in today.steps if lot in one.lots
    }
    return _scaled(today, ratios)


def with_dose(today: Today, ingredient: str, mass_g: float) -> list[Change]:
    """What a raised or lowered dose changes: what is still to go in makes up the new total of the day.

    Raises `PlanError` where more is in already, or where no step to come takes it.
    """
    if not today.knows(ingredient):
        known = ", ".join(one.ingredient for one in today.doses) or "none yet"
        raise PlanError(
            f'Nothing is called "{ingredient}" today; expected one of {known}, for example alum 35 g.'
        )
    left_g = mass_g - today.in_g(ingredient)
    if left_g < -SAME_G:
        raise PlanError(
            f"{show_mass(today.in_g(ingredient))} of {ingredient} is in already and cannot come out again;"
            f" expected no less, for example {ingredient} {show_mass(today.in_g(ingredient))}."
        )
    waiting = [(one, one.still_g(ingredient)) for one in today.steps if _takes_more(one, ingredient)]
    still_g = sum(grams for _, grams in waiting)
    if still_g <= SAME_G:
        return _somewhere(today, ingredient, max(0.0, left_g))
    return [
        StillToAdd(one.name, ingredient, max(0.0, left_g) * grams / still_g, grams) for one, grams in waiting
    ]


def _takes_more(step: StepToday, ingredient: str) -> bool:
    return step.how_far in ("to come", "under way") and step.still_g(ingredient) > SAME_G


def _somewhere(today: Today, ingredient: str, more_g: float) -> list[Change]:
    """All of it is in: more goes in where it went in, if that still runs, else with the next step of its
    kind.
    """
    if more_g <= SAME_G:
        return []
    took = [one for one in today.steps if ingredient in one.put_in]
    running = next((one for one in took if one.how_far == "under way"), None)
    stages = {one.plan.stage for one in took}
    later = next((one for one in today.steps if one.how_far == "to come" and one.plan.stage in stages), None)
    target = running or later
    if target is None:
        raise PlanError(
            f"All the {ingredient} is in, and no step to come takes any; expected a stage of its own for"
            f" {show_mass(more_g)} more, for example a dye step with {ingredient}."
        )
    return [StillToAdd(target.name, ingredient, more_g, 0.0)]


def _scaled(today: Today, ratios: Mapping[str, float]) -> list[Change]:
    """Doses and water of every step in the measure of its fibre; liquor in the measure of what it is for."""
    found: list[Change] = []
    for step in today.steps:
        ratio = ratios.get(step.name) or ratios.get(_user_of(today, step), 1.0)
        if ratio == 1.0 or step.how_far == "left out":
            continue
        if step.open:
            water = list(_water(today, step, ratio))
            found += [*water, *_doses(today, step, ratio, _bath_ratio(step, water))]
        else:
            found += _missed(today, step, ratio)
    return found


def _user_of(today: Today, step: StepToday) -> str:
    """The step whose fibre a liquor is made for: the first to dye in the vessel it is strained into."""
    if step.plan.enter or step.plan.vessel is None:
        return ""
    same_pot = (one.plan.into for one in today.steps if one.plan.vessel == step.plan.vessel)
    target = next((into for into in same_pot if into), step.plan.vessel)
    users = (one.name for one in today.steps if one.plan.vessel == target and one.plan.enter)
    return next(users, "")


def _water(today: Today, step: StepToday, ratio: float) -> Iterable[Water]:
    """The bath in the measure of its fibre, as far as the pot holds it; a bath already filled stays."""
    was_l = step.plan.water_l
    if was_l is None or step.filled or step.plan.water_by == "nothing":
        return
    capacity_l = today.capacity_l.get(step.plan.vessel or "")
    most_l = max(was_l, FILL_SHARE * capacity_l) if capacity_l is not None else float("inf")
    now_l = min(was_l * ratio, most_l)
    if abs(now_l - was_l) > SAME_G:
        yield Water(step.name, now_l, was_l, today.mass_g(step.lots) * ratio)


def _bath_ratio(step: StepToday, water: list[Water]) -> float:
    return water[0].water_l / water[0].was_l if water and water[0].was_l > 0 else 1.0


def _doses(today: Today, step: StepToday, ratio: float, bath_ratio: float) -> list[Change]:
    """What is still to go in, so that the whole comes to its share again; what is in too much stays."""
    measure = {"fibre": ratio, "bath": bath_ratio, "nothing": 1.0}
    found: list[Change] = []
    for name in step.ingredients:
        in_g, still_g = step.put_in.get(name, 0.0), step.still_g(name)
        wanted_g = (in_g + still_g) * measure[today.reckoned_on(name)]
        left_g = max(0.0, wanted_g - in_g)
        if abs(left_g - still_g) > SAME_G:
            found.append(StillToAdd(step.name, name, left_g, still_g))
        if in_g > wanted_g * (1 + WORTH_SAYING):
            found.append(Miss(step.name, name, in_g, wanted_g))
    return found


def _missed(today: Today, step: StepToday, ratio: float) -> list[Change]:
    """What went in with fibre that weighed something else: told where it is worth saying."""
    if abs(ratio - 1.0) <= WORTH_SAYING:
        return []
    return [
        Miss(step.name, name, in_g, in_g * ratio)
        for name, in_g in step.put_in.items()
        if in_g > 0 and today.reckoned_on(name) == "fibre"
    ]
