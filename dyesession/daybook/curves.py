"""How hot each pot was, as it was read, beside the heat its steps asked for. Pure.

Minutes from the opening. A wanted ramp begins where its step was begun, so that a late start is no fault.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from dyesession.daybook.walk import Pace
from dyesession.session import events as e
from dyesession.session.countdowns import RISE_MIN
from dyesession.session.state import State, StepState

Point = tuple[float, float]

TAP_C = 15.0  # where a wanted ramp begins when nobody read the pot; common practice, no source
SECONDS_PER_MIN = 60.0


@dataclass(frozen=True)
class Curve:
    """One pot: (minute, °C) as read, and the stretches that were wanted, each a few points."""

    vessel: str
    read: tuple[Point, ...]
    wanted: tuple[tuple[Point, ...], ...]


def curves(paces: Sequence[Pace], last: State) -> tuple[Curve, ...]:
    """Every pot that was heated or read."""
    read = _read(paces)
    names = dict.fromkeys((*(one.plan.vessel for one in last.steps if one.plan.vessel), *read))
    found = (Curve(name, tuple(read.get(name, ())), tuple(_wanted(name, last))) for name in names)
    return tuple(one for one in found if one.read or one.wanted)


def _read(paces: Iterable[Pace]) -> dict[str, list[Point]]:
    found: dict[str, list[Point]] = {}
    for pace in paces:
        event = pace.entry.event
        if not isinstance(event, e.Read | e.Confirmed | e.Reached) or event.temperature_c is None:
            continue
        if event.vessel and not (isinstance(event, e.Reached) and event.how != "read"):
            minute = pace.after.now_s / SECONDS_PER_MIN
            found.setdefault(event.vessel, []).append((minute, event.temperature_c))
    return found


def _wanted(vessel: str, last: State) -> Iterable[tuple[Point, ...]]:
    for step in last.steps:
        if step.plan.vessel == vessel and step.begun_s is not None:
            points = tuple(_points(step))
            if len(points) > 1:
                yield points


def _points(step: StepState) -> Iterable[Point]:
    """The corners of a step's wanted heat; a cooling has no pace of its own and ends the line."""
    minute, degrees = (step.begun_s or 0.0) / SECONDS_PER_MIN, TAP_C
    if not any(one.kind == "to" for one in step.plan.heat):
        return
    yield minute, degrees
    for heat in step.plan.heat:
        if heat.kind == "to" and heat.temperature_c is not None:
            minute, degrees = minute + (heat.minutes or RISE_MIN), heat.temperature_c
        elif heat.kind == "hold" and heat.minutes:
            minute += heat.minutes
        else:
            return
        yield minute, degrees
