"""What keeps the plan from being changed: one sentence for every change that does not fit the day, else None.

Pure. Part of `fit`. A substance that is refused is never planned; one that is off until chosen wants a
reason.
"""

from collections.abc import Callable, Iterable
from typing import Any

from dyesession import care
from dyesession.plan.changes import After, Change, Draws, NewIngredient, NewStep, change_from_log
from dyesession.plan.trouble import PlanError
from dyesession.recipe.model import ROLES
from dyesession.session import events as e
from dyesession.session.state import State

ALL_LOTS = "fibre"  # the word that stands for every lot in a step


def _replanned(state: State, event: e.Replanned) -> str | None:
    check = _CHANGES.get(event.change)
    if check is None:
        return f'"{event.change}" is not a change this program knows'
    if not event.why and not (state.free and event.change == "step"):
        return "a change of the plan needs a reason, for example: because the skein was found later"
    return check(state, event) or _pieces(state, event)


def _refresh(state: State, event: e.Replanned) -> str | None:
    step = state.step(event.step)
    if step is None:
        names = ", ".join(one.name for one in state.steps) or "none"
        return f'there is no step "{event.step}" today: the steps are {names}'
    strained = step.plan.stage == "strain" and step.status == "complete"
    return None if strained else "extracting once more can be planned after a strain only"


def _lot_joins(state: State, event: e.Replanned) -> str | None:
    if not event.lot.strip() or event.lot == ALL_LOTS:
        return "a lot that joins needs a name of its own, for example: small skein"
    if state.lot(event.lot) is not None:
        return (
            f'there is a lot "{event.lot}" already: give the new one another name, for example second skein'
        )
    return _weighed(event)


def _weighed(event: e.Replanned) -> str | None:
    if event.mass_g is None or event.mass_g <= 0:
        return f"the air-dry weight of {event.lot} is needed, more than nothing, for example 75 g"
    return None


def _lot_weight(state: State, event: e.Replanned) -> str | None:
    lot = state.lot(event.lot)
    if lot is None or lot.snippet:
        names = ", ".join(one.name for one in state.lots if not one.snippet) or "none"
        return f'there is no lot "{event.lot}": the lots are {names}'
    return _weighed(event)


def _dose(state: State, event: e.Replanned) -> str | None:
    if event.mass_g is None:
        return f"say how much {event.ingredient} in all, for example 35 g or 15 %"
    return None


def _step(state: State, event: e.Replanned) -> str | None:
    found = [one for one in event.changes if "stage" in one]
    return (
        None
        if found
        else "a stage that comes in names what is done and in which pot, for example mordant in the mordant pot"
    )


def _draw(state: State, event: e.Replanned) -> str | None:
    step = state.step(event.step)
    if step is None or step.plan.vessel is None:
        names = ", ".join(one.name for one in state.steps if one.plan.vessel is not None) or "none"
        return f'there is no step "{event.step}" with a pot to pour into: there is {names}'
    if step.status not in ("waiting", "running", "paused") or step.filled:
        return f"{event.step} has its liquor already: pour the kept bath in now, for example pour madder 3 into D"
    return None if any("label" in one for one in event.changes) else _NO_LABEL


def _recipe_left(state: State, event: e.Replanned) -> str | None:
    return "no recipe leads this day any more" if state.free else None


_CHANGES: dict[str, Callable[[State, e.Replanned], str | None]] = {
    "refresh": _refresh,
    "lot joins": _lot_joins,
    "lot weight": _lot_weight,
    "dose": _dose,
    "step": _step,
    "draw": _draw,
    "recipe left": _recipe_left,
}


def _pieces(state: State, event: e.Replanned) -> str | None:
    """Whether every piece of the change can be read and carried out."""
    try:
        changes = [change_from_log(one) for one in event.changes]
    except PlanError as error:
        sentence = str(error)
        return sentence[0].lower() + sentence[1:].rstrip(".")
    return (
        _first(_ingredient(state, one, event.why) for one in changes if isinstance(one, NewIngredient))
        or _first(_new_step(state, event, one, changes) for one in changes if isinstance(one, NewStep))
        or _first(_drawn_for(event, one) for one in changes if isinstance(one, Draws))
        or _ring(state, changes)
    )


def _first(sentences: Iterable[str | None]) -> str | None:
    return next((one for one in sentences if one), None)


def _ingredient(state: State, new: NewIngredient, why: str) -> str | None:
    no = care.refusal(new.substance)
    if no is not None:
        return f"{no.what} is refused: {no.reason}; instead, {no.safer}"
    choice = care.needs_choice(new.substance)
    if choice is not None and not why:
        return f"{choice.text.rstrip('.')}; to choose it all the same, say why"
    if new.role not in ROLES:
        return f'"{new.role}" is no role: one of {", ".join(ROLES)} was expected, for example mordant'
    if any(one.ingredient == new.ingredient for one in state.doses):
        return f'there is an ingredient "{new.ingredient}" already: add more of that one'
    return None


def _new_step(state: State, event: e.Replanned, new: NewStep, changes: list[Change]) -> str | None:
    name = new.step.name
    coming = [one.step.name for one in changes if isinstance(one, NewStep)]
    if state.step(name) is not None or coming.count(name) > 1:
        return f'there is a step "{name}" already: give the new one another name, for example {name} 2'
    missing = [one for one in new.step.after if state.step(one) is None and one not in coming]
    if missing:
        return f'"{name}" is to come after "{missing[0]}", and there is no such step today'
    lots = [one for one in new.step.enter if one not in (ALL_LOTS, event.lot) and state.lot(one) is None]
    return f'"{name}" is to take in "{lots[0]}", and there is no such lot today' if lots else None


def _drawn_for(event: e.Replanned, draws: Draws) -> str | None:
    if event.change != "draw" or draws.step != event.step:
        return f"the kept bath {draws.label} is to go into {event.step or 'no step'}, and not into {draws.step}"
    if draws.draw_l is not None and draws.draw_l <= 0.0:
        return f"nothing of the kept bath {draws.label} is nothing to draw: say how much, for example 2 L"
    return None if draws.label.strip() else _NO_LABEL


_NO_LABEL = "a kept bath is drawn by its label, for example madder bath 3"


def _ring(state: State, changes: list[Change]) -> str | None:
    """Steps that waited for each other could never begin."""
    after = {one.name: set(one.plan.after) for one in state.steps}
    after |= {one.step.name: set(one.step.after) for one in changes if isinstance(one, NewStep)}
    after |= {one.step: set(one.after) for one in changes if isinstance(one, After)}
    while free := [name for name, names in after.items() if not names & set(after)]:
        for name in free:
            del after[name]
    return f"{' and '.join(after)} would wait for each other and never begin" if after else None


CHECKS: dict[str, Callable[[State, Any], str | None]] = {"replanned": _replanned}
