"""What facts do to steps and to the day: begun, paused, finished, skipped, stopped, closed; and the heat
under them.

Pure: facts' own times in, a changed state out.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from dyesession.plan.model import PlannedStep
from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session.fold_heat import lit, off, reached, rested, warmed
from dyesession.session.state import DONE, ENDED, OUT_DRY, OUT_WET, Countdown, State, StepState


def _begun(state: State, event: e.Begun, at: c.Moment) -> State:
    return state.with_step(event.step, lambda one: replace(one, status="running", begun_s=at.s))


def _answered(state: State, event: e.Confirmed | e.PutOff, at: c.Moment) -> State:
    state = replace(state, answered=(*state.answered, event.ask))
    if isinstance(event, e.PutOff):
        return replace(state, put_off=(*state.put_off, (event.ask, at.s)))
    if isinstance(event, e.Confirmed) and event.temperature_c is not None and event.vessel:
        return warmed(state, event.vessel, event.temperature_c, at)
    return state


def _weighed(state: State, event: e.Weighed, at: c.Moment) -> State:
    others = tuple(one for one in state.weighed if one[0] != event.ingredient)
    return replace(state, weighed=(*others, (event.ingredient, event.mass_g)))


def _paused(state: State, event: e.Paused, at: c.Moment) -> State:
    return state.with_step(event.step, lambda one: c.paused(one, at.s))


def _resumed(state: State, event: e.Resumed, at: c.Moment) -> State:
    return state.with_step(event.step, lambda one: c.resumed(one, at.s))


def _extended(state: State, event: e.Extended, at: c.Moment) -> State:
    return state.with_step(event.step, lambda one: c.extended(one, event.minutes))


def ended(state: State, name: str, at: c.Moment) -> State:
    """The state with a step complete."""
    return state.with_step(name, lambda one: replace(one, status="complete", ended_s=at.s, countdown=None))


def _closed_step(state: State, event: e.OnShade | e.Finished, at: c.Moment) -> State:
    """The step is complete and the heat under its vessel is off."""
    step = state.step(event.step)
    state = ended(state, event.step, at)
    if step is None or step.plan.vessel is None:
        return _dried(state, step)
    return state.with_vessel(step.plan.vessel, rested if _rests(step) else off)


def _rests(step: StepState) -> bool:
    """Whether the step ends with a night's rest: nobody knows then how warm its pot still is."""
    return bool(step.plan.heat) and step.plan.heat[-1].overnight


def _dried(state: State, step: StepState | None) -> State:
    if step is None or step.plan.stage != "dry":
        return state
    only = state.wanted_lots(step)
    return replace(
        state,
        lots=tuple(
            replace(one, place=OUT_DRY) if one.place == OUT_WET and (not only or one.name in only) else one
            for one in state.lots
        ),
    )


def _skipped(state: State, event: e.Skipped, at: c.Moment) -> State:
    """The step is left out; with an extraction go its strain and the extractions after it."""
    names = {event.step}
    first = state.step(event.step)
    if first is not None and first.plan.stage == "extract" and first.plan.again:
        names |= _later_pulls(state, first.plan)
    return left_out(state, names, event.why, at)


def _later_pulls(state: State, first: PlannedStep) -> set[str]:
    return {
        one.name
        for one in state.steps
        if one.plan.of == first.of and one.plan.again >= first.again and one.status == "waiting"
    }


def left_out(state: State, names: set[str], why: str, at: c.Moment) -> State:
    """The state with those steps left out, save the ones that have ended."""

    def skip(step: StepState) -> StepState:
        if step.name not in names or step.status in ENDED:
            return step
        return replace(step, status="skipped", why=why, ended_s=at.s, countdown=None)

    return replace(state, steps=tuple(skip(one) for one in state.steps))


def _acknowledged(state: State, event: e.Acknowledged, at: c.Moment) -> State:
    return _on_countdown(state, event.countdown, lambda one: replace(one, acknowledged_s=at.s))


def _raised(state: State, event: e.AlarmRaised, at: c.Moment) -> State:
    return _on_countdown(state, event.countdown, lambda one: replace(one, raised=True))


def _on_countdown(state: State, key: str, change: Callable[[Countdown], Countdown]) -> State:
    def changed(step: StepState) -> StepState:
        countdown = step.countdown
        if countdown is None or countdown.key != key:
            return step
        return replace(step, countdown=change(countdown))

    return replace(state, steps=tuple(changed(one) for one in state.steps))


def _stopped(state: State, event: e.Stopped, at: c.Moment) -> State:
    steps = tuple(
        one if one.status in ENDED else replace(one, status="stopped", ended_s=at.s, countdown=None)
        for one in state.steps
    )
    return replace(state, status="stopped", why=event.why, steps=steps)


def _aborted(state: State, event: e.Aborted, at: c.Moment) -> State:
    steps = tuple(c.paused(one, at.s) if one.status == "running" else one for one in state.steps)
    return replace(
        state, status="aborted", why=event.why, steps=steps, vessels=tuple(map(off, state.vessels))
    )


def _cleared(state: State, event: e.Cleared, at: c.Moment) -> State:
    return replace(state, status="open", why="")


def _closed(state: State, event: e.Closed, at: c.Moment) -> State:
    lots = tuple(replace(one, place=DONE) for one in state.lots)
    return replace(state, status="complete", verdict=event.verdict, lots=lots)


def _noted(state: State, event: e.Noted, at: c.Moment) -> State:
    return replace(state, notes=(*state.notes, event.text))


CHANGES: Mapping[str, Callable[[State, Any, c.Moment], State]] = {
    "begun": _begun,
    "confirmed": _answered,
    "put-off": _answered,
    "weighed": _weighed,
    "lit": lit,
    "reached": reached,
    "paused": _paused,
    "resumed": _resumed,
    "extended": _extended,
    "on-shade": _closed_step,
    "finished": _closed_step,
    "skipped": _skipped,
    "noted": _noted,
    "acknowledged": _acknowledged,
    "alarm-raised": _raised,
    "stopped": _stopped,
    "aborted": _aborted,
    "cleared": _cleared,
    "closed": _closed,
}
