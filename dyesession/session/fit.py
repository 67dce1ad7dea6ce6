"""What may happen when: one sentence for every fact that does not fit the state it meets, else None.

`engine.decide` refuses such a command; `fold.apply` flags such an entry (after a correction) and goes on.
Everything that the state of a pot, a lot or a step forbids is in this file.
"""

from collections.abc import Callable
from typing import Any

from dyesession.session import events as e
from dyesession.session.state import ENDED, SIEVE, State, StepState

HIGHEST_C, LOWEST_C = 105.0, -5.0  # a kettle's thermometer reads no more; our own bounds, no source
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
        ("temperature_c", LOWEST_C, HIGHEST_C, "a temperature from -5 to 105 °C was expected, for example 82"),
        ("ph", 0.0, 14.0, "a pH from 0 to 14 was expected, for example 4.5"),
        ("strength", 0.0, 1e6, "a strength of 0 or more was expected, for example 0.31"),
        ("minutes", -1e5, 1e5, "minutes were expected, for example 15"),
    ):
        value = getattr(event, name, None)
        if value is None:
            continue
        if not isinstance(value, int | float) or isinstance(value, bool):
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
        waits = [one for one in step.plan.after if (s := state.step(one)) is None or s.status not in ENDED]
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


def _bath(state: State, name: str) -> str | None:
    vessel = state.vessel(name)
    if vessel is None:
        return f'there is no vessel "{name}": {_vessel_names(state)}'
    return None if vessel.bath else f"there is nothing in the {name}: fill it first"


def _vessel_names(state: State) -> str:
    names = ", ".join(f"{one.letter} {one.name}" for one in state.vessels)
    return f"the vessels are {names}" if names else "none is in use yet"


def _filled(state: State, event: e.Filled) -> str | None:
    vessel = state.vessel(event.vessel)
    if vessel is not None and vessel.bath is not None:
        return f"the {event.vessel} already holds a bath: top it up, keep it or discard it first"
    return None


def _added(state: State, event: e.Added) -> str | None:
    lots = [one.name for one in state.lots_in(event.vessel) if not one.snippet]
    if lots:
        return f"lift {' and '.join(lots)} out of the {event.vessel} before anything is added"
    return None


def _strained(state: State, event: e.Strained) -> str | None:
    if event.vessel == event.into:
        return f"the {event.vessel} cannot be strained into itself: name another vessel"
    if trouble := _bath(state, event.vessel):
        return trouble
    lots = [one.name for one in state.lots_in(event.vessel)]
    return f"lift {' and '.join(lots)} out of the {event.vessel} before it is strained" if lots else None


def _refreshed(state: State, event: e.Refreshed) -> str | None:
    vessel = state.vessel(event.vessel)
    if vessel is not None and vessel.bath is not None:
        return f"the {event.vessel} still holds liquor: strain it first"
    if not any(one.place == SIEVE for one in state.dyestuffs):
        return "no strained dyestuff is waiting in the sieve to be extracted again"
    return None


def _pooled(state: State, event: e.Pooled) -> str | None:
    if event.vessel == event.into:
        return f"the {event.vessel} cannot be poured into itself: name another vessel"
    trouble = _bath(state, event.vessel)
    if trouble or event.volume_l is not None:
        return trouble
    return _emptied(state, event.vessel)


def _emptied(state: State, name: str) -> str | None:
    if trouble := _bath(state, name):
        return trouble
    lots = [one.name for one in state.lots_in(name)]
    return f"lift {' and '.join(lots)} out of the {name} first" if lots else None


def _discarded(state: State, event: e.Discarded) -> str | None:
    if event.vessel:
        return _emptied(state, event.vessel)
    labels = [one.label for one in state.kept]
    if event.label in labels:
        return None
    return f'no kept bath is labelled "{event.label}": kept are {", ".join(labels) or "none"}'


def _topped_up(state: State, event: e.ToppedUp) -> str | None:
    if event.to_l is None and event.volume_l is None:
        return "say how much water was added, or up to which mark, for example 7.2 L"
    return _bath(state, event.vessel)


def _entered(state: State, event: e.Entered) -> str | None:
    lot = state.lot(event.lot)
    if lot is None:
        return f'there is no lot "{event.lot}": the lots are {", ".join(one.name for one in state.lots)}'
    if lot.place == event.vessel:
        return f"{event.lot} is already in the {event.vessel}"
    if state.vessel(lot.place):
        return f"{event.lot} is in the {lot.place}: lift it first"
    return None


def _lifted(state: State, event: e.Lifted) -> str | None:
    lot = state.lot(event.lot)
    if lot is None or lot.place != event.vessel:
        return f"{event.lot} is not in the {event.vessel}, so it cannot be lifted from there"
    if event.wet_mass_g is not None and event.wet_mass_g < lot.mass_g * _LIGHTEST_WET:
        return (
            f"{event.wet_mass_g:g} g is less than {event.lot} weighs dry ({lot.mass_g:g} g): "
            "weigh it again, or keep it as a note"
        )
    return None


# Air-dry wool at 18.25 % regain is 0.85 of its weight bone dry (EU Reg. 1007/2011 Annex IX): below that no
# fibre can weigh, wet or dry.
_LIGHTEST_WET = 0.84


def _dipped(state: State, event: e.Dipped) -> str | None:
    lot = state.lot(event.snippet)
    if lot is not None and state.vessel(lot.place):
        return f"{event.snippet} is in the {lot.place}: lift it first"
    return _bath(state, event.vessel)


def _reached(state: State, event: e.Reached) -> str | None:
    if state.vessel(event.vessel) is None:
        return f'there is no vessel "{event.vessel}": {_vessel_names(state)}'
    return None


def _read(state: State, event: e.Read) -> str | None:
    if event.vessel and state.vessel(event.vessel) is None:
        return f'there is no vessel "{event.vessel}": {_vessel_names(state)}'
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


def _replanned(state: State, event: e.Replanned) -> str | None:
    if event.change != "refresh":
        return f'"{event.change}" is not a change this program knows'
    step = _step(state, event.step)
    if isinstance(step, str):
        return step
    strained = step.plan.stage == "strain" and step.status == "complete"
    return None if strained else "extracting once more can be planned after a strain only"


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
    "begun": _begun,
    "filled": _filled,
    "added": _added,
    "strained": _strained,
    "refreshed": _refreshed,
    "pooled": _pooled,
    "topped-up": _topped_up,
    "entered": _entered,
    "lifted": _lifted,
    "dipped": _dipped,
    "reached": _reached,
    "read": _read,
    "paused": _paused,
    "resumed": _resumed,
    "extended": _extended,
    "on-shade": _on_shade,
    "finished": _finished,
    "skipped": _skipped,
    "kept": lambda state, event: _emptied(state, event.vessel),
    "discarded": _discarded,
    "replanned": _replanned,
    "acknowledged": _acknowledged,
    "corrected": _corrected,
    "cleared": _cleared,
    "closed": _closed,
}
