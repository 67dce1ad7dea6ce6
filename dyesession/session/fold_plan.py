"""What a change of the plan does: one extraction more, a lot that joins, other doses, a step more, the recipe
left.

Pure. The changes are carried out as the entry holds them; they were worked out when they were decided
(`replan`).
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import reduce
from typing import Any

from dyesession.plan.changes import (
    After,
    Change,
    Draws,
    Enters,
    Miss,
    NewIngredient,
    NewStep,
    StillToAdd,
    Water,
    change_from_log,
)
from dyesession.plan.model import Band, PlannedAddition, PlannedDose, Weigh
from dyesession.plan.today import unlike
from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session.fold_steps import left_out
from dyesession.session.state import Dyestuff, Lot, State, StepState, to_come
from dyesession.substances import find

MORE = "more"  # how a portion is called that the plan did not have


def _replanned(state: State, event: e.Replanned, at: c.Moment) -> State:
    if event.change == "refresh":
        return _once_more(state, event)
    if event.change == "recipe left":
        waiting = {one.name for one in state.steps if one.status == "waiting"}
        return replace(left_out(state, waiting, event.why, at), free=True)
    if event.change == "lot joins":
        lot = Lot(event.lot, event.fibre, event.mass_g or 0.0, mordanted=event.mordanted)
        state = replace(state, lots=(*state.lots, lot))
    if event.change == "lot weight":
        state = state.with_lot(event.lot, lambda one: replace(one, mass_g=event.mass_g or one.mass_g))
    return reduce(_changed, (change_from_log(one) for one in event.changes), state)


def _changed(state: State, change: Change) -> State:
    match change:
        case StillToAdd():
            return state.with_step(change.step, lambda one: _still_to_add(one, change))
        case Water():
            return state.with_step(
                change.step, lambda one: replace(one, plan=replace(one.plan, water_l=change.water_l))
            )
        case Enters():
            return state.with_step(
                change.step, lambda one: replace(one, plan=replace(one.plan, enter=change.enter))
            )
        case After():
            return state.with_step(
                change.step, lambda one: replace(one, plan=replace(one.plan, after=change.after))
            )
        case NewStep():
            return _with_step_behind(state, to_come(change.step), change.behind)
        case NewIngredient():
            return _with_ingredient(state, change)
        case Draws():
            return state.with_step(change.step, lambda one: replace(one, draw=change))
        case Miss():
            return state


def _still_to_add(step: StepState, change: StillToAdd) -> StepState:
    """What is still to go in of that ingredient comes to so much: its portions in measure, or one more."""
    done, still = step.plan.add[: step.added], step.plan.add[step.added :]
    there_g = sum(one.mass_g for one in still if one.ingredient == change.ingredient)
    if there_g <= 0.0:
        more = PlannedAddition(change.ingredient, change.mass_g, MORE if change.was_g <= 0.0 else "")
        kept = tuple(one for one in still if one.ingredient != change.ingredient)
        still = (*kept, more) if change.mass_g > 0.0 else kept
    else:
        measure = change.mass_g / there_g
        still = tuple(
            replace(one, mass_g=one.mass_g * measure) if one.ingredient == change.ingredient else one
            for one in still
            if one.ingredient != change.ingredient or measure > 0.0
        )
    return replace(step, plan=replace(step.plan, add=(*done, *still)))


def _with_step_behind(state: State, step: StepState, behind: str) -> State:
    names = [one.name for one in state.steps]
    at = names.index(behind) + 1 if behind in names else len(names)
    return replace(state, steps=(*state.steps[:at], step, *state.steps[at:]))


def _with_ingredient(state: State, new: NewIngredient) -> State:
    nothing = Band(0.0, 0.0, 0.0)
    dose = PlannedDose(
        new.ingredient,
        new.substance,
        new.role,  # type: ignore[arg-type]
        None,
        nothing,
        Weigh("not weighed", None, ""),
        known=find(new.substance) is not None,
    )
    state = replace(
        state,
        doses=(*state.doses, dose),
        substances=(*state.substances, (new.ingredient, new.substance)),
    )
    if new.role != "dyestuff":
        return state
    return replace(state, dyestuffs=(*state.dyestuffs, Dyestuff(new.ingredient, new.substance)))


def _once_more(state: State, event: e.Replanned) -> State:
    """One extraction and one strain more, after the strain named; what waited for it waits for the new
    one.
    """
    last = state.step(event.step)
    if last is None:
        return state
    pulls = [one for one in state.steps if one.plan.of == last.plan.of]
    extract = next((one.plan for one in reversed(pulls) if one.plan.stage == "extract"), None)
    if extract is None:
        return state
    again = max(one.plan.again for one in pulls) + 1
    names = [one.name for one in state.steps]
    more = replace(
        extract, name=unlike(f"extract {again + 1}", names), again=again, after=(last.name,), add=()
    )
    strain = replace(last.plan, name=unlike(f"strain {again + 1}", names), again=again, after=(more.name,))
    state = replace(state, steps=tuple(_after_instead(one, last.name, strain.name) for one in state.steps))
    return _with_step_behind(
        _with_step_behind(state, StepState(more), last.name), StepState(strain), more.name
    )


def _after_instead(step: StepState, old: str, new: str) -> StepState:
    after = tuple(new if one == old else one for one in step.plan.after)
    return replace(step, plan=replace(step.plan, after=after)) if step.status == "waiting" else step


CHANGES: Mapping[str, Callable[[State, Any, c.Moment], State]] = {"replanned": _replanned}
