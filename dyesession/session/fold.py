"""State is the fold of the facts. `apply` never raises: what no longer fits is flagged beside the entry.

Pure: an entry carries its own times. Account entries are ignored (they are what was shown, not what was).
What each fact does stands in `fold_pots` (liquor, fibre), `fold_steps` (steps, heat, the day), `fold_plan`.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Any

from dyesession.clock import Instant, elapsed_s
from dyesession.plan.model import Plan
from dyesession.session import countdowns as c
from dyesession.session.entry import Entry, correction_misfit, effective
from dyesession.session.fit import misfit
from dyesession.session.fold_heat import NEAR_ENOUGH_C
from dyesession.session.fold_plan import CHANGES as PLAN
from dyesession.session.fold_pots import CHANGES as POTS
from dyesession.session.fold_steps import CHANGES as STEPS
from dyesession.session.state import Dyestuff, Lot, State, Vessel, to_come

__all__ = ["NEAR_ENOUGH_C", "Entry", "apply", "correction_misfit", "effective", "fold", "opening_state"]


def opening_state(plan: Plan) -> State:
    """The state before anything was done: the plan's steps, lots, doses and vessels.

    A plan without steps is an improvised day: `free` from the first.
    """
    return State(
        steps=tuple(to_come(one) for one in plan.steps),
        lots=tuple(Lot(one.name, one.kind, one.mass_g, mordanted=one.mordanted) for one in plan.lots),
        dyestuffs=tuple(
            Dyestuff(one.ingredient, one.substance) for one in plan.doses if one.role == "dyestuff"
        ),
        vessels=tuple(
            Vessel(one.name, one.letter, one.capacity_l, one.material, lid=one.lid) for one in plan.vessels
        ),
        substances=tuple((one.ingredient, one.substance) for one in plan.doses),
        doses=plan.doses,
        boiling_c=plan.boiling_c,
        by_eye=plan.by_eye,
        cooling=plan.cooling,
        free=not plan.steps,
        burner=plan.burner or "",
        indoors=plan.indoors is not False,
    )


def fold(opening: State, entries: Iterable[Entry], opened: Instant) -> State:
    """The state after all entries, corrections carried out: a corrected entry counts as corrected."""
    state = replace(opening, instant=opened)
    for entry in effective(tuple(entries)):
        state = apply(state, entry)
    return state


def apply(state: State, entry: Entry) -> State:
    """The state after one entry. Time never runs backwards; a fact may have `happened` a while ago."""
    instant, event = entry.instant, entry.event
    passed_s = 0.0 if state.instant is None else elapsed_s(state.instant, instant).seconds
    state = replace(state, n=entry.n, instant=instant, now_s=state.now_s + passed_s)
    if event.kind in _IGNORED:
        return state
    ago_s = 0.0 if entry.happened is None else max(0.0, (instant.at - entry.happened).total_seconds())
    moment = c.Moment(max(0.0, state.now_s - ago_s), entry.happened or instant.at)
    if trouble := misfit(state, event):
        return state.flagged(trouble)
    change = _CHANGES.get(event.kind)
    changed = change(state, event, moment) if change else state
    return c.settle(changed, moment) if changed.status == "open" else changed


_IGNORED = frozenset({"account", "resumed-after-gap", "clock-changed", "recovered", "unknown", "corrected"})
_CHANGES: Mapping[str, Callable[[State, Any, c.Moment], State]] = {**STEPS, **POTS, **PLAN}
