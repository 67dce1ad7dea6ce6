"""What may happen when: one sentence for every fact that does not fit the state it meets, else None.

`engine.decide` refuses such a command; `fold.apply` flags such an entry (after a correction) and goes on.
What the day and its steps forbid stands here, what pots, liquor and fibre forbid in `fit_pots`, what keeps
the plan from being changed in `fit_plan`.
"""

from collections.abc import Callable
from typing import Any

from dyesession.session import events as e
from dyesession.session import fit_plan, fit_pots
from dyesession.session.state import ENDED, State, StepState

HIGHEST_C, LOWEST_C = 105.0, -5.0  # a kettle's thermometer reads no more; our own bounds, no source
MOST_PERCENT = 10_000.0  # old books print 600 %; our own bound, no source
MOST_L, MOST_G = 1000.0, 100_000.0  # a kitchen holds no more; our own bounds, no source


def misfit(state: State, event: e.Event) -> str | None:
    """Why this fact cannot have happened in this state, in one sentence, or None when it can."""
    if trouble := _session_misfit(state, event):
        return trouble
    if trouble := misfit_of_figures(event):
        return trouble
    check: Callable[[State, Any], str | None] | None = _CHECKS.get(event.kind)
    return check(state, event) if check else None


# What a closed, stopped or broken-off day still takes. Everything else needs an open one.
_ALWAYS = e.PROGRAM_KINDS | {"noted", "corrected", "cared", "unknown"}
_TAKES = {
    "complete": _ALWAYS | {"discarded", "read"},
    "aborted": _ALWAYS | {"cleared", "acknowledged", "read", "lit", "lifted"},
    "stopped": _ALWAYS
    | {"acknowledged", "read", "lit", "lifted", "kept", "discarded", "closed", "confirmed", "put-off"},
}
_SAYS = {
    "complete": "this day is closed: it takes aftercare, notes and corrections only",
    "aborted": "this day was broken off: clear the trouble first, for example with the clear key",
    "stopped": "this day was ended early: lift the fibre, empty the pots and close it",
}


def _session_misfit(state: State, event: e.Event) -> str | None:
    takes = _TAKES.get(state.status)
    return _SAYS[state.status] if takes is not None and event.kind not in takes else None


def misfit_of_figures(event: e.Event) -> str | None:
    """Why a figure of this fact cannot be, in one sentence, or None."""
    for name, low, high, says in (
        ("mass_g", 0.0, MOST_G, "a mass between 0 and 100 kg was expected, for example 36 g"),
        ("wet_mass_g", 0.0, MOST_G, "a mass between 0 and 100 kg was expected, for example 620 g"),
        ("volume_l", 0.0, MOST_L, "a volume between 0 and 1000 L was expected, for example 1.8 L"),
        ("to_l", 0.0, MOST_L, "a volume between 0 and 1000 L was expected, for example 7.2 L"),
        (
            "temperature_c",
            LOWEST_C,
            HIGHEST_C,
            "a temperature from -5 to 105 °C was expected, for example 82",
        ),
        ("ph", 0.0, 14.0, "a pH from 0 to 14 was expected, for example 4.5"),
        ("strength", 0.0, 1e6, "a strength of 0 or more was expected, for example 0.31"),
        ("error_share", 0.0, 10.0, "an error from 0 to 10 times the strength was expected, for example 0.11"),
        ("minutes", -1e5, 1e5, "minutes were expected, for example 15"),
        ("value", 0.0, MOST_PERCENT, "a share of the fibre was expected, for example 15"),
    ):
        value = getattr(event, name, None)
        if value is None:
            continue
        if isinstance(value, bool) or not isinstance(value, int | float):
            return f'"{value}" cannot be: {says}'
        if not low <= value <= high:
            return f"{value:g} cannot be: {says}"
    return None


def _step(state: State, name: str) -> StepState | str:
    return state.step(name) or f'there is no step "{name}" today: the steps are {_step_names(state)}'


def _step_names(state: State) -> str:
    return ", ".join(one.name for one in state.steps) or "none"


def _under_way(state: State, name: str) -> str | None:
    step = _step(state, name)
    if isinstance(step, str):
        return step
    if step.status not in ("running", "paused"):
        return f'"{name}" is not under way ({step.status}): begin it first'
    return None


def _begun(state: State, event: e.Begun) -> str | None:
    step = _step(state, event.step)
    if isinstance(step, str):
        return step
    if step.status != "waiting":
        return f'"{event.step}" is already {step.status}'
    if not state.ready(step) and not event.early:
        waits = [one for one in step.plan.after if not state.over(one)]
        return f'"{event.step}" comes after {" and ".join(waits)}: to begin it sooner, say why'
    busy = state.running_in(step.plan.vessel) if step.plan.vessel else None
    if busy:
        return f"the {step.plan.vessel} is taken by {busy.name}: finish that first"
    return _fibre_taken(state, step)


def _fibre_taken(state: State, step: StepState) -> str | None:
    """One lot cannot be in two steps at once: they would lift it from each other for ever."""
    wanted = set(state.wanted_lots(step))
    for other in state.steps:
        shared = wanted & set(state.wanted_lots(other))
        if other.status in ("running", "paused") and shared:
            return f"{' and '.join(sorted(shared))} is still in {other.name}: finish that first"
    return None


def _paused(state: State, event: e.Paused) -> str | None:
    step = state.step(event.step)
    if step is not None and step.status == "paused":
        return f'"{event.step}" is already paused'
    return _under_way(state, event.step)


def _resumed(state: State, event: e.Resumed) -> str | None:
    step = _step(state, event.step)
    if isinstance(step, str):
        return step
    return None if step.status == "paused" else f'"{event.step}" is not paused'


def _extended(state: State, event: e.Extended) -> str | None:
    step = _step(state, event.step)
    if isinstance(step, str):
        return step
    return None if step.countdown else f'"{event.step}" has no clock running that could be made longer'


def _on_shade(state: State, event: e.OnShade) -> str | None:
    if trouble := _under_way(state, event.step):
        return trouble
    step = state.step(event.step)
    if step is None or step.plan.judge is None or event.why:
        return None
    since_s = step.held_since_s if step.held_since_s is not None else step.begun_s
    held_s = state.now_s - (since_s or 0.0)
    least = step.plan.judge.least_min
    if held_s < least * 60 - 1:
        return (
            f'"{event.step}" wants at least {least:g} min at its heat and has had {held_s / 60:.0f}: '
            "a shade judged so early is seldom level; to end it all the same, say why"
        )
    return None


def _finished(state: State, event: e.Finished) -> str | None:
    if trouble := _under_way(state, event.step):
        return trouble
    step = state.step(event.step)
    if step is not None and (waiting := step.next_addition) is not None:
        return f"{waiting.ingredient} is not in yet: add it, or skip the step and say why"
    return None


def _skipped(state: State, event: e.Skipped) -> str | None:
    step = _step(state, event.step)
    if isinstance(step, str):
        return step
    if step.status in ENDED:
        return f'"{event.step}" is already {step.status}'
    return None if event.why else "a skipped step needs a reason, for example: strong enough"


def _acknowledged(state: State, event: e.Acknowledged) -> str | None:
    keys = [one.countdown.key for one in state.steps if one.countdown]
    return None if event.countdown in keys else "nothing rings under that name"


def _corrected(state: State, event: e.Corrected) -> str | None:
    if not 0 < event.entry <= state.n:
        return f"there is no entry {event.entry}: the last one is {state.n}"
    if not event.why:
        return "a correction needs a reason, for example: misread the scale"
    return None if event.strike or event.changes else "a correction sets something or strikes the entry"


def _cleared(state: State, event: e.Cleared) -> str | None:
    return None if state.status == "aborted" else "nothing needs clearing"


def _closed(state: State, event: e.Closed) -> str | None:
    inside = [one for one in state.lots if state.vessel(one.place)]
    if inside:
        return f"{inside[0].name} is still in the {inside[0].place}: lift it before closing"
    open_steps = [one.name for one in state.steps if one.status not in ENDED]
    if open_steps and state.status == "open":
        return f"{open_steps[0]} is not done: finish it, skip it with a reason, or stop the day early"
    return None


_CHECKS: dict[str, Callable[[State, Any], str | None]] = {
    **fit_pots.CHECKS,
    **fit_plan.CHECKS,
    "begun": _begun,
    "paused": _paused,
    "resumed": _resumed,
    "extended": _extended,
    "on-shade": _on_shade,
    "finished": _finished,
    "skipped": _skipped,
    "acknowledged": _acknowledged,
    "corrected": _corrected,
    "cleared": _cleared,
    "closed": _closed,
}
