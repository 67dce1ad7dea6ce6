"""How a step was really heated: each stretch with its degrees and minutes, as a recipe writes them.

Pure. A reading counts before what was planned; time paused is not counted; a stretch never begun is left out.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from dyesession.daybook.walk import Pace
from dyesession.recipe.model import Heat
from dyesession.session import countdowns as c
from dyesession.session import events as e
from dyesession.session.state import StepState

SECONDS_PER_MIN = 60.0


@dataclass
class _Stretch:
    """A stretch of heating under way: what was planned, seconds counted so far, degrees read at its end.

    `unseen`: nobody was there for a part of it.
    """

    heat: Heat
    seconds: float = 0.0
    read_c: float | None = None
    unseen: bool = False

    @property
    def minutes(self) -> int:
        """Minutes it took; a rise that nobody saw the whole of, as long as was planned, 0 where that was not said."""
        if self.heat.kind == "to" and self.unseen:
            return round(self.heat.minutes or 0.0)
        return round(self.seconds / SECONDS_PER_MIN)


def heats(name: str, paces: Iterable[Pace]) -> list[dict[str, str]]:
    """The stretches of one step, as the `heat` of a recipe holds them."""
    found: dict[int, _Stretch] = {}
    for pace in paces:
        before, after = pace.before.step(name), pace.after.step(name)
        if before is None or after is None or before.countdown is None:
            continue
        heat = c.segment(before)
        if heat is None:
            continue
        stretch = found.setdefault(before.segment, _Stretch(heat))
        if before.status == "running":
            stretch.seconds += pace.after.now_s - pace.before.now_s
        stretch.unseen = stretch.unseen or isinstance(pace.entry.event, e.ResumedAfterGap)
        if _is_over(before, after):
            stretch.read_c = _read_c(pace.entry.event)
    return [table for index in sorted(found) if (table := _table(found[index])) is not None]


def _is_over(before: StepState, after: StepState) -> bool:
    return after.segment != before.segment or after.countdown is None


def _read_c(event: e.Event) -> float | None:
    if isinstance(event, e.Read):
        return event.temperature_c
    return event.temperature_c if isinstance(event, e.Reached) and event.how == "read" else None


def _table(stretch: _Stretch) -> dict[str, Any] | None:
    heat, minutes = stretch.heat, stretch.minutes
    if heat.kind in ("to", "cool_to"):
        table: dict[str, Any] = {heat.kind: _degrees(stretch)}
        return {**table, "over": f"{minutes} min"} if heat.kind == "to" and minutes >= 1 else table
    if heat.overnight:
        return {"rest": "overnight"}
    return {heat.kind: f"{minutes} min"} if minutes >= 1 else None


def _degrees(stretch: _Stretch) -> str:
    """Degrees as read at the end of the stretch, to the nearest; else as the recipe says them."""
    if stretch.read_c is not None:
        return f"{round(stretch.read_c)} degC"
    return stretch.heat.word or f"{stretch.heat.temperature_c or 0.0:g} degC"
