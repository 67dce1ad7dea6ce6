"""Aftercare as Colour asks for it: a colour noted on its day, a test of fastness begun or ended. Draws nothing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from dyesession.colour.readings import Reading
from dyesession.colour.written import written
from dyesession.daybook.fastness import FastnessTest, before_of, begun, tried
from dyesession.session import events as e

if TYPE_CHECKING:
    from dyesession.daybook.shade_card import Shade
    from dyesession.ui.workroom import Workroom

DRY_SHADE = "dry shade"
BEFORE, AFTER = "before", "after"


def shade_entry(reading: Reading, lot: str) -> e.Cared:
    """The entry of a dry shade; under what conditions it was read is its result."""
    return e.Cared(DRY_SHADE, lot, reading.conditions, written(reading))


def begun_before(workroom: Workroom, shade: Shade, test: FastnessTest) -> Reading | None:
    """The first reading of a test that was begun another day. Raises what reading the log raises."""
    return before_of(workroom.day(workroom.log_of(shade.session)).entries, test, shade.lot)


def test_entry(test: FastnessTest, before: Reading, after: Reading | None, lot: str) -> tuple[e.Cared, str]:
    """The entry of a test and what to say of it; without the second reading it is begun."""
    if after is None:
        return begun(test, before, lot), test.do
    found = tried(test, before, after, lot)
    return found.entry, f"{found.words[0].upper()}{found.words[1:]}.\n\n{found.advice}"


class FastnessTalk:
    """A test of fastness asked for: the reading before, where no earlier day has it, then the one after."""

    def __init__(self, test: FastnessTest, shade: Shade, before: Reading | None) -> None:
        self.test, self.shade = test, shade
        self._before = before

    @property
    def wanted(self) -> str:
        """Which reading is wanted now: `before` or `after`."""
        return AFTER if self._before is not None else BEFORE

    @property
    def wants(self) -> str:
        """The same in words."""
        return f"{self.test.of}, {self.wanted}"

    def take(self, reading: Reading | None) -> tuple[e.Cared, str] | None:
        """A reading; after the last one, or none in its stead, the entry and what to say of it."""
        if self._before is None:
            self._before = reading
            return None
        return test_entry(self.test, self._before, reading, self.shade.lot)


def note(workroom: Workroom, session: str, entry: e.Cared) -> None:
    """Write it on the day. Raises what the log raises."""
    workroom.note_care(workroom.log_of(session), entry)
