"""The steps of a day, planned beside actual: when, how long at heat, how hot, how each ended. Pure."""

from collections.abc import Iterable, Sequence

from dyesession.daybook.model import StepReview, Stretch
from dyesession.daybook.walk import Pace
from dyesession.plan.model import Plan, PlannedStep
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State, StepState
from dyesession.session.words import wall_time

SECONDS_PER_MIN = 60.0


def step_reviews(day: LoggedDay, paces: Sequence[Pace], last: State) -> tuple[StepReview, ...]:
    """Every step of the day in its own order, those that came in at the stove among them."""
    held, hottest = _held_s(paces), _hottest(paces)
    early = {
        one.entry.event.step: one.entry.event.early for one in paces if isinstance(one.entry.event, e.Begun)
    }
    return tuple(
        StepReview(
            name=one.name,
            stage=one.plan.stage,
            lane=one.plan.lane,
            vessel=one.plan.vessel,
            status=one.status,
            why=one.why or _why(one.name, paces),
            early=early.get(one.name, ""),
            planned=_planned(day.plan, one.name),
            actual=_actual(one, last, held.get(one.name), hottest.get(one.name)),
        )
        for one in last.steps
    )


def _why(step: str, paces: Iterable[Pace]) -> str:
    """The reason a step was ended by eye, where one was given."""
    for one in paces:
        if isinstance(one.entry.event, e.OnShade) and one.entry.event.step == step:
            return one.entry.event.why or "on shade"
    return ""


def _planned(plan: Plan, name: str) -> Stretch | None:
    step = next((one for one in plan.steps if one.name == name), None)
    if step is None:
        return None
    row = next((one for one in plan.timetable if one.step == name), None)
    return Stretch(
        start_min=row.start_min if row else None,
        end_min=row.end_min if row else None,
        held_min=_planned_hold(step),
        temperature_c=max(
            (one.temperature_c for one in step.heat if one.temperature_c is not None), default=None
        ),
        temperature_how="planned",
    )


def _planned_hold(step: PlannedStep) -> float | None:
    holds = [one.minutes for one in step.heat if one.kind == "hold" and one.minutes is not None]
    return sum(holds) if holds else None


def _actual(step: StepState, last: State, held_s: float | None, hottest: tuple[float, str] | None) -> Stretch:
    return Stretch(
        start_min=_minutes(step.begun_s),
        end_min=_minutes(step.ended_s) if step.begun_s is not None else None,
        held_min=_minutes(held_s),
        temperature_c=hottest[0] if hottest else None,
        start=wall_time(last, step.begun_s) if step.begun_s is not None else None,
        end=wall_time(last, step.ended_s) if step.ended_s is not None and step.begun_s is not None else None,
        temperature_how=hottest[1] if hottest else "",
    )


def _minutes(seconds: float | None) -> float | None:
    return None if seconds is None else round(seconds / SECONDS_PER_MIN, 2)


def _held_s(paces: Sequence[Pace]) -> dict[str, float]:
    """Seconds each step stood at its heat: from one entry to the next, pauses left out."""
    held: dict[str, float] = {}
    for one in paces:
        passed_s = one.after.now_s - one.before.now_s
        for step in one.before.steps:
            if _holding(step):
                held[step.name] = held.get(step.name, 0.0) + passed_s
    return held


def _holding(step: StepState) -> bool:
    countdown = step.countdown
    return step.status == "running" and countdown is not None and countdown.kind == "hold"


def _hottest(paces: Iterable[Pace]) -> dict[str, tuple[float, str]]:
    """The highest temperature known of each step's pot while it ran, a reading before a mere plan."""
    found: dict[str, tuple[float, str]] = {}
    for one in paces:
        heat = _temperature_of(one.entry.event)
        step = one.before.running_in(heat[2]) if heat else None
        if heat is None or step is None:
            continue
        degrees_c, how, _ = heat
        best = found.get(step.name)
        if best is None or (how == "read", degrees_c) > (best[1] == "read", best[0]):
            found[step.name] = (degrees_c, how)
    return found


def _temperature_of(event: e.Event) -> tuple[float, str, str] | None:
    if isinstance(event, e.Read | e.Confirmed) and event.temperature_c is not None:
        return event.temperature_c, "read", event.vessel
    if isinstance(event, e.Reached) and event.temperature_c is not None:
        return event.temperature_c, event.how, event.vessel
    return None
