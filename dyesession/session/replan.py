"""A change of the plan, worked out from the day as it stands: the state as plain data in, the whole fact out.

Pure. The arithmetic is `plan.again`, `plan.late` and `plan.stage`; what comes out is logged and never
reckoned anew.
"""

from dataclasses import replace

from dyesession.plan.again import with_dose, with_lot, with_weight
from dyesession.plan.changes import Change, NewIngredient, NewStep, change_for_log, change_from_log
from dyesession.plan.model import FibreLot
from dyesession.plan.stage import with_stage
from dyesession.plan.today import HowFar, StepToday, Today, unlike
from dyesession.session import events as e
from dyesession.session.state import State, StepState, StepStatus

_HOW_FAR: dict[StepStatus, HowFar] = {
    "waiting": "to come",
    "running": "under way",
    "paused": "under way",
    "complete": "over",
    "stopped": "over",
    "skipped": "left out",
}


def worked_out(state: State, event: e.Replanned) -> e.Replanned:
    """The fact with its changes. Raises `PlanError` with one sentence where there is no way to do it."""
    return replace(event, changes=tuple(change_for_log(one) for one in _changes(state, event)))


def under_a_name_of_its_own(state: State, event: e.Replanned) -> e.Replanned:
    """The same stage, called as no other step of the day is: a second "dye" becomes "dye 2"."""
    if event.change != "step":
        return event
    taken = [one.name for one in state.steps]
    changes = tuple(
        {**one, "name": unlike(str(one["name"]), taken)} if "stage" in one and "name" in one else one
        for one in event.changes
    )
    names = [str(one["name"]) for one in changes if "stage" in one and "name" in one]
    return replace(event, step=names[0] if names else event.step, changes=changes)


def _changes(state: State, event: e.Replanned) -> list[Change]:
    day, mass_g = today(state), event.mass_g or 0.0
    if event.change == "lot joins":
        return with_lot(day, FibreLot(event.lot, event.fibre, mass_g, mordanted=event.mordanted))
    if event.change == "lot weight":
        return with_weight(day, event.lot, mass_g)
    if event.change == "dose":
        return with_dose(day, event.ingredient, mass_g)
    given = [change_from_log(one) for one in event.changes]
    steps = [one.step for one in given if isinstance(one, NewStep)]
    if event.change == "step" and len(steps) == 1:
        return with_stage(
            day, steps[0], [one for one in given if isinstance(one, NewIngredient)], state.boiling_c
        )
    return given


def today(state: State) -> Today:
    """The day as it stands, for the arithmetic of `plan`."""
    return Today(
        steps=tuple(_step(state, one) for one in state.steps),
        lots=tuple(
            FibreLot(one.name, one.kind, one.mass_g, mordanted=one.mordanted)
            for one in state.lots
            if not one.snippet
        ),
        doses=state.doses,
        capacity_l={one.name: one.capacity_l for one in state.vessels if one.capacity_l is not None},
        full=frozenset(one.name for one in state.vessels if one.bath is not None),
        loose=_grams(state, ""),
    )


def _step(state: State, step: StepState) -> StepToday:
    entered = tuple(dict.fromkeys(step.entered))
    over = step.status in ("complete", "stopped")
    return StepToday(
        plan=step.plan,
        how_far=_HOW_FAR[step.status],
        lots=entered if over else state.wanted_lots(step),
        fibre_in=bool(entered),
        filled=step.filled,
        put_in=_grams(state, step.name),
        still=step.plan.add[step.added :] if step.status in ("waiting", "running", "paused") else (),
    )


def _grams(state: State, step: str) -> dict[str, float]:
    found: dict[str, float] = {}
    for one in state.put_in:
        if one.step == step:
            found[one.ingredient] = found.get(one.ingredient, 0.0) + one.mass_g
    return found
