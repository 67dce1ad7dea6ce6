"""A lot that comes late catches up: the mordant it missed, the dye bath as long as it is there, rinse and
drying.

Pure. A lot bought mordanted, or mordanted on another day, needs no mordant step.
"""

from collections.abc import Iterable
from dataclasses import replace

from dyesession.plan.changes import After, Change, NewStep
from dyesession.plan.model import FibreLot, PlannedAddition
from dyesession.plan.today import StepToday, Today

COLOURS = ("dye", "modify")
FINISHES = ("rinse", "dry")


def catching_up(today: Today, lot: FibreLot) -> list[Change]:
    """Steps of its own for all the lot missed, in order, and the steps to come that wait for them."""
    made: list[NewStep] = []
    for missed in today.steps:
        if not _is_missed(missed) or not _is_wanted(today, missed, lot, bool(made)):
            continue
        made.append(_own_step(today, missed, lot, made))
    return [*made, *_waiting_for(today, made)]


def _is_missed(step: StepToday) -> bool:
    """Over or under way with other fibre in it, and the recipe's own step, not another lot's catching up."""
    if step.name != step.plan.of:
        return False
    dry = step.plan.stage == "dry" and step.how_far == "under way"
    return step.how_far == "over" or (step.how_far == "under way" and step.fibre_in) or dry


def _is_wanted(today: Today, step: StepToday, lot: FibreLot, catching: bool) -> bool:
    stage = step.plan.stage
    if stage == "mordant":
        return bool(step.lots) and not lot.mordanted
    if stage in COLOURS:
        return bool(step.lots) and step.plan.vessel in today.full
    return stage in FINISHES and catching


def _own_step(today: Today, missed: StepToday, lot: FibreLot, made: list[NewStep]) -> NewStep:
    """The missed step for this lot alone: its share of every dose, its own water, after the others."""
    plan = missed.plan
    there_g = today.mass_g(missed.lots)
    share = lot.mass_g / there_g if there_g > 0 else 1.0
    exhaust = plan.stage in COLOURS
    before = [made[-1].step.name] if made else []
    step = replace(
        plan,
        name=today.named(f"{plan.name} {lot.name}"),
        after=tuple(dict.fromkeys((plan.name, *_earlier(today, missed), *before))),
        enter=(lot.name,),
        add=_own_additions(missed, share),
        water_l=None if exhaust or plan.water_l is None else plan.water_l * share,
        fresh_water=not exhaust,
        say="",
    )
    return NewStep(step, behind=plan.name)


def _own_additions(step: StepToday, share: float) -> tuple[PlannedAddition, ...]:
    wholes = {name: step.put_in.get(name, 0.0) + step.still_g(name) for name in step.ingredients}
    return tuple(PlannedAddition(name, grams * share) for name, grams in wholes.items() if grams > 0)


def _earlier(today: Today, missed: StepToday) -> Iterable[str]:
    """Steps to come that stand before the missed one and that the lot goes along in."""
    for step in today.steps:
        if step.name == missed.name:
            return
        if step.how_far == "to come" and "fibre" in step.plan.enter:
            yield step.name


def _waiting_for(today: Today, made: list[NewStep]) -> list[Change]:
    """Steps to come for all the fibre, behind the first missed one, wait for the last catching up."""
    if not made:
        return []
    names = [one.name for one in today.steps]
    first = names.index(made[0].behind)
    return [
        After(one.name, (*one.plan.after, made[-1].step.name))
        for one in today.steps[first + 1 :]
        if one.how_far == "to come" and ("fibre" in one.plan.enter or one.plan.vessel is None)
    ]
