"""What went otherwise than planned on a day, in one sentence each. Pure."""

from collections.abc import Iterator, Sequence

from dyesession.daybook.called_out import as_done
from dyesession.daybook.model import FlagReview, Rang, StepReview
from dyesession.daybook.walk import Pace
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State
from dyesession.units import show_duration

WORTH_LATE_MIN = 30.0  # a step begun so much later than planned, and later than the one before it; our own choice
SECONDS_PER_MIN = 60.0


def otherwise(
    day: LoggedDay,
    paces: Sequence[Pace],
    last: State,
    steps: Sequence[StepReview],
    alarms: Sequence[Rang],
    flags: Sequence[FlagReview],
) -> tuple[str, ...]:
    """Doses, holds, delays, gaps, early starts, alarms that rang on, entries that do not fit; the file's faults."""
    told = [one.text for one in as_done(day, paces, last)]
    told += _delays(steps)
    told += [f"{one.name} was begun before its time: {one.early}" for one in steps if one.early]
    told += [
        f"nobody was there for {show_duration(round(one.entry.event.away_s / SECONDS_PER_MIN))}"
        for one in paces
        if isinstance(one.entry.event, e.ResumedAfterGap)
    ]
    told += [
        f"the {one.vessel or one.step} rang, {show_duration(round(one.over_s / SECONDS_PER_MIN))} over" for one in alarms
    ]
    told += [f"entry {one.n} does not fit: {one.text}" for one in flags]
    return tuple(dict.fromkeys([*told, *day.notes]))


def _delays(steps: Sequence[StepReview]) -> Iterator[str]:
    """Where the day fell behind its plan: told once for each time it fell further behind."""
    behind = 0.0
    for one in sorted(steps, key=lambda step: step.actual.start_min or 0.0):
        planned = one.planned.start_min if one.planned is not None else None
        if planned is None or one.actual.start_min is None:
            continue
        late = one.actual.start_min - planned
        if late - behind >= WORTH_LATE_MIN:
            yield f"{one.name} was begun {show_duration(round(late))} later than planned"
        behind = max(behind, late)
