"""When a step's heating stretches start, end and fall due. A countdown is a deadline, never a ticking number.

Pure: facts' own times in, a changed state out. Knows nothing of estimates or of the wall clock's present.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from dyesession.plan.model import PlannedStep
from dyesession.recipe.model import Heat
from dyesession.session.state import Countdown, State, StepState

RISE_MIN = 45.0  # look at the pot after this when the recipe names no rise; common practice, no source
COOL_LOOK_MIN = 30.0  # look again at a cooling bath after this; common practice, no source
MORNING_HOUR = 7  # an overnight step is over then; common practice, no source
SHORTEST_NIGHT_H = 6.0  # a rest begun after one o'clock waits for the next morning; common practice, no source
DUE_SLACK_S = 1.0  # an act this much before the deadline counts as on time: the screen shows whole seconds


@dataclass(frozen=True)
class Moment:
    """When a fact happened: session seconds, and the wall time that goes with them."""

    s: float
    wall: datetime


def prepared(state: State, step: StepState) -> bool:
    """Whether water, additions and fibre of a step are in, so that its heating may count."""
    plan = step.plan
    watered = step.filled or plan.vessel is None or (plan.water_l is None and step.draw is None)
    entered = all(
        (lot := state.lot(name)) is not None and lot.place == plan.vessel for name in state.wanted_lots(step)
    )
    strained = plan.stage != "strain" or step.strained
    return watered and step.next_addition is None and (entered or plan.vessel is None) and strained


def segment(step: StepState) -> Heat | None:
    """The heating stretch a step is at, or None when all are over."""
    return step.plan.heat[step.segment] if step.segment < len(step.plan.heat) else None


def due(step: StepState, now_s: float) -> bool:
    """Whether the step's running countdown has ended."""
    countdown = step.countdown
    return countdown is not None and countdown.paused_at_s is None and countdown.left_s(now_s) <= DUE_SLACK_S


def heat_on(state: State, step: StepState) -> bool:
    """Whether the step's vessel is on the heat."""
    vessel = state.vessel(step.plan.vessel)
    return vessel is not None and vessel.on_heat


def settle(state: State, moment: Moment) -> State:
    """Start every heating stretch that may start now: called after each fact."""
    for step in state.steps:
        if step.status == "running" and step.countdown is None and may_start(state, step):
            state = state.with_step(step.name, lambda one: _started(one, moment))
    return state


def may_start(state: State, step: StepState) -> bool:
    """Whether the step's present stretch can start counting: prepared, and the heat as it needs it."""
    heat = segment(step)
    if heat is None or not prepared(state, step):
        return False
    if heat.kind == "hold":
        return True
    return heat_on(state, step) == (heat.kind == "to")


def _started(step: StepState, moment: Moment) -> StepState:
    heat = segment(step)
    if heat is None:
        return step
    countdown = Countdown(
        key=f"{step.name}/{step.segment + 1}",
        step=step.name,
        vessel=step.plan.vessel or "",
        kind={"to": "rise", "hold": "hold", "cool_to": "cool", "rest": "rest"}[heat.kind],  # type: ignore[arg-type]
        target_c=heat.temperature_c if heat.temperature_c is not None else held_at_c(step.plan, step.segment),
        start_s=moment.s,
        length_s=_length_s(heat, moment),
        overnight=heat.overnight,
    )
    held = moment.s if heat.kind == "hold" and step.held_since_s is None else step.held_since_s
    return replace(step, countdown=countdown, held_since_s=held)


def held_at_c(plan: PlannedStep, index: int) -> float | None:
    """The temperature a hold or rest keeps: that of the nearest rise before it, None when there is none."""
    for heat in reversed(plan.heat[: index + 1]):
        if heat.temperature_c is not None:
            return heat.temperature_c
    return None


def _length_s(heat: Heat, moment: Moment) -> float:
    if heat.overnight:
        return _until_morning_s(moment.wall)
    if heat.minutes is not None:
        return heat.minutes * 60
    return (COOL_LOOK_MIN if heat.kind == "cool_to" else RISE_MIN) * 60


def _until_morning_s(wall: datetime) -> float:
    """Seconds to the first morning that leaves a night's length; wall times carry a fixed offset."""
    morning = wall.replace(hour=MORNING_HOUR, minute=0, second=0, microsecond=0)
    while (morning - wall).total_seconds() < SHORTEST_NIGHT_H * 3600:
        morning += timedelta(days=1)
    return (morning - wall).total_seconds()


def next_segment(step: StepState) -> StepState:
    """The step with its present stretch over."""
    return replace(step, segment=step.segment + 1, countdown=None)


def paused(step: StepState, at_s: float) -> StepState:
    """The step with its countdown standing still."""
    countdown = step.countdown
    still = replace(countdown, paused_at_s=at_s) if countdown is not None else None
    return replace(step, status="paused", countdown=still)


def resumed(step: StepState, at_s: float) -> StepState:
    """The step going on: its deadline moves by as long as it stood still."""
    countdown = step.countdown
    if countdown is not None and countdown.paused_at_s is not None:
        stood_s = at_s - countdown.paused_at_s
        countdown = replace(countdown, length_s=countdown.length_s + stood_s, paused_at_s=None)
    return replace(step, status="running", countdown=countdown)


def extended(step: StepState, minutes: float) -> StepState:
    """The step with a longer (or, for negative minutes, shorter) countdown; it rings anew when due."""
    countdown = step.countdown
    if countdown is None:
        return step
    length_s = max(0.0, countdown.length_s + minutes * 60)
    return replace(step, countdown=replace(countdown, length_s=length_s, acknowledged_s=None, raised=False))
