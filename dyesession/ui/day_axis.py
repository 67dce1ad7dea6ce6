"""A day laid out on a line of cells: long stretches in which nothing begins or ends are drawn short, with a tear.

Pure arithmetic; knows no steps. Times are minutes from the start of the day.
"""

import itertools
from collections.abc import Iterable
from dataclasses import dataclass

# A stretch longer than this, with no beginning or end in it, is torn: drawn as if it took so long. Our own choice.
LONGEST_MIN, TORN_MIN = 240.0, 60.0
HOUR_MIN = 60.0
_LEAST_TICK_CELLS = 7
_TICK_HOURS = (1, 2, 3, 4, 6, 12, 24)


@dataclass(frozen=True)
class Stretch:
    """A stretch of the day and where it is drawn: minutes, and the same on the drawn scale."""

    start_min: float
    end_min: float
    drawn_from: float
    drawn_to: float

    @property
    def is_torn(self) -> bool:
        """Whether it is drawn shorter than it is."""
        return self.end_min - self.start_min > LONGEST_MIN


@dataclass(frozen=True)
class DayAxis:
    """The day on `width` cells."""

    stretches: tuple[Stretch, ...]
    width: int

    @property
    def end_min(self) -> float:
        """Minutes from the start to the end of the day."""
        return self.stretches[-1].end_min if self.stretches else 0.0

    def cell(self, minute: float) -> int:
        """The cell a minute falls in, 0 to `width`."""
        whole = self.stretches[-1].drawn_to if self.stretches else 0.0
        if whole <= 0:
            return 0
        return min(self.width, round(self._drawn(minute) * self.width / whole))

    def _drawn(self, minute: float) -> float:
        for one in self.stretches:
            if minute <= one.end_min:
                share = (minute - one.start_min) / max(1e-9, one.end_min - one.start_min)
                return one.drawn_from + max(0.0, share) * (one.drawn_to - one.drawn_from)
        return self.stretches[-1].drawn_to

    def tears(self) -> tuple[int, ...]:
        """The cells at which the line is torn."""
        return tuple(self.cell((one.start_min + one.end_min) / 2) for one in self.stretches if one.is_torn)

    def ticks(self) -> tuple[tuple[int, int], ...]:
        """Hours worth a mark, each with its cell, never nearer than can be read, none inside a tear."""
        for step in _TICK_HOURS:
            marks = [
                (hour, self.cell(hour * HOUR_MIN))
                for hour in range(0, int(self.end_min // HOUR_MIN) + 1, step)
            ]
            kept = [mark for mark in marks if not self._inside_tear(mark[0] * HOUR_MIN)]
            if all(b[1] - a[1] >= _LEAST_TICK_CELLS for a, b in itertools.pairwise(kept)):
                return tuple(kept)
        return ((0, 0),)

    def _inside_tear(self, minute: float) -> bool:
        return any(one.is_torn and one.start_min < minute < one.end_min for one in self.stretches)


def day_axis(moments: Iterable[float], width: int) -> DayAxis:
    """The axis of a day in which something begins or ends at these minutes."""
    times = sorted({0.0, *moments})
    stretches: list[Stretch] = []
    drawn = 0.0
    for start, end in itertools.pairwise(times):
        length = end - start if end - start <= LONGEST_MIN else TORN_MIN
        stretches.append(Stretch(start, end, drawn, drawn + length))
        drawn += length
    return DayAxis(tuple(stretches), max(0, width))
