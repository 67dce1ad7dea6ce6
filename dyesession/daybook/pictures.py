"""A day's lanes and heat as plain text: dots as planned, hashes as it was; each pot's degrees as read and wanted.

Pure. Seven-bit characters only, so that every terminal and printer shows them.
"""

from collections.abc import Iterable, Sequence

from dyesession.daybook.curves import Curve
from dyesession.daybook.model import StepReview, Stretch
from dyesession.units import show_temperature

PLANNED, ACTUAL = ".", "#"
MOST_NAME = 16
MINUTES_PER_HOUR = 60


def lanes_lines(steps: Sequence[StepReview], width: int) -> list[str]:
    """Two rows a step, on one axis of hours from the opening."""
    rows = [one for one in steps if one.planned or one.actual.start_min is not None]
    ends = [one.end_min for step in rows for one in (step.planned, step.actual) if one is not None]
    end = max((one for one in ends if one is not None), default=0.0)
    if not rows or end <= 0.0:
        return []
    name_width = min(MOST_NAME, max(len(one.name) for one in rows))
    room = max(10, width - name_width - 2)
    lines = [f"{'':{name_width}} 0:00{_clock(end):>{room - 4}}"]
    for step in rows:
        lines.append(f"{step.name[:name_width]:{name_width}} {_bar(step.planned, end, room, PLANNED)}".rstrip())
        lines.append(f"{'':{name_width}} {_bar(step.actual, end, room, ACTUAL)}".rstrip())
    return [one for one in lines if one.strip()]


def _bar(stretch: Stretch | None, end: float, room: int, mark: str) -> str:
    if stretch is None or stretch.start_min is None or stretch.end_min is None:
        return ""
    start, to = (round(room * max(0.0, one) / end) for one in (stretch.start_min, stretch.end_min))
    return " " * min(start, room - 1) + mark * max(1, to - start)


def heat_lines(curves: Iterable[Curve]) -> list[str]:
    """Each pot: what was wanted, and every reading with its time from the opening."""
    return [
        f"{one.vessel}: wanted {_wanted(one)}; read {_read(one)}" for one in curves if one.read or one.wanted
    ]


def _wanted(curve: Curve) -> str:
    tops = [(minute, degrees) for line in curve.wanted for minute, degrees in line[1:2]]
    return ", ".join(f"{show_temperature(degrees)} by {_clock(minute)}" for minute, degrees in tops) or "nothing"


def _read(curve: Curve) -> str:
    return ", ".join(f"{show_temperature(degrees)} at {_clock(minute)}" for minute, degrees in curve.read) or "nothing"


def _clock(minute: float) -> str:
    return f"{int(minute) // MINUTES_PER_HOUR}:{int(minute) % MINUTES_PER_HOUR:02}"
