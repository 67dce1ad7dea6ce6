"""Looks after two days side by side: choosing the other one, then what was other, what matters most first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from dyesession.daybook.comparing import CameOut, Comparison, Row, compare
from dyesession.daybook.day_line import DayLine
from dyesession.ui.at_leaf import AtLeaf
from dyesession.ui.bench_view import Swatch
from dyesession.ui.book_view import BookDay
from dyesession.ui.frame_view import NextAct
from dyesession.ui.from_book import book_day
from dyesession.ui.leaf_view import Doable, Item, Section, Shades, Told
from dyesession.ui.place_keys import COMPARE

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp


class Comparing:
    """A day beside another one that is still to be chosen, or was."""

    place: AtLeaf
    name = COMPARE

    def __init__(self, app: DyeApp, one: DayLine, bounce_s: float) -> None:
        self._app, self._one = app, one
        self._others: tuple[BookDay, ...] | None = None
        self._found: Comparison | None = None
        self._other = ""

    def look(self) -> None:
        """Read which other days there are, beside the screen."""
        workroom, today = self._app.workroom, self._app.now().at.date()

        def read() -> tuple[BookDay, ...]:
            days = workroom.day_book().days
            return tuple(book_day(one, today) for one in days if one.session != self._one.session and one.fibre)

        self._app.in_background(read, self._read)

    def _read(self, others: tuple[BookDay, ...]) -> None:
        self._others = others
        self.place.refresh()

    @property
    def beside(self) -> str:
        """Which day, or which two."""
        if self._found is None:
            return f"{self._one.recipe}, {self._one.day}, with …"
        return f"{self._one.recipe}, {self._one.day}, and {self._other}"

    def sections(self) -> tuple[Section, ...]:
        """The days to choose from, or the two beside one another."""
        if self._found is not None:
            return _side_by_side(self._found)
        if self._others is None:
            return (Section("", (Told("looking through the logs …"),)),)
        if not self._others:
            return (Section("", (Told("There is no other day to compare it with yet."),)),)
        rows = tuple(Doable(one.key, f"{one.date}  {one.recipe}", f"{one.fibre}  {one.mark}") for one in self._others)
        return (Section("with which day?", rows),)

    def about(self, key: str) -> tuple[Item, ...]:
        """The marked day's colours, or the two days' colours touching."""
        if self._found is not None:
            return tuple(item for one in self._found.came_out for item in _shades(one))
        day = next((one for one in self._others or () if one.key == key), None)
        return (*(Told(one) for one in day.tells), Shades(day.swatches)) if day is not None else ()

    def next_act(self, key: str) -> NextAct:
        """Compare with the marked day."""
        if key.startswith("day:") and self._found is None:
            return NextAct("put them side by side", key.partition(":")[2], "compare")
        return NextAct("choose another day" if self._found else "back to the day", "", "another" if self._found else "")

    def do_next(self, key: str) -> None:
        """As the line does; with two days there, back to choosing."""
        if self._found is not None:
            self._found = None
        elif key.startswith("day:"):
            self.choose(key)
        else:
            self._app.leave()

    def choose(self, key: str) -> None:
        """Put the day beside the chosen one."""
        if self._found is not None or not key.startswith("day:"):
            return
        other = next((one for one in self._others or () if one.key == key), None)
        self._other = f"{other.recipe}, {other.date}" if other is not None else ""
        workroom, sessions = self._app.workroom, (self._one.session, key.partition(":")[2])

        def read() -> Comparison:
            first, second = (workroom.day(workroom.log_of(one)) for one in sessions)
            return compare(first, second)

        self._app.in_background(read, self._compared)

    def _compared(self, found: Comparison) -> None:
        self._found = found
        self.place.mark("")
        self.place.refresh()

    def take(self, slot: str, text: str) -> None:
        """Nothing is typed here."""

    def echo(self, slot: str, text: str) -> str:
        """Nothing is typed here."""
        return ""


def _side_by_side(found: Comparison) -> tuple[Section, ...]:
    came_out = tuple(item for one in found.came_out for item in _shades(one))
    verdicts = tuple(
        Told(f"“{day.verdict}”" if day.verdict else "no verdict", head=which)
        for which, day in (("the one", found.one), ("the other", found.other))
    )
    rows = tuple(item for one in found.rows for item in _row(one))
    return (
        Section("how they came out", (*came_out, *verdicts)),
        Section(
            "what was other, what matters most for the colour first",
            rows or (Told("Nothing that bears on the colour was other."),),
        ),
        Section("the same", tuple(Told(one) for one in found.same)),
    )


def _shades(one: CameOut) -> tuple[Item, ...]:
    apart = f", {one.apart:.0f} ± {one.plus_minus:.0f} apart" if one.apart is not None and one.plus_minus else ""
    said = Told(f"{one.one or 'not read'}, then {one.other or 'not read'}{apart}", head=one.lot or "the fibre")
    pair = tuple(
        Swatch(text, which)
        for text, which in ((one.one, "the one"), (one.other, "the other"))
        if text.startswith("#")
    )
    return (said, Shades(pair)) if pair else (said,)


def _row(row: Row) -> tuple[Item, ...]:
    effect = f"{row.effect} " if row.effect else ""
    source = f"({row.source})" if row.effect or row.factor else ""
    first = Told(f"{row.one or 'none'}  |  {row.other or 'none'}", head=row.what, strong=True)
    return (first, Told(effect.strip(), head=" ", mark=source)) if effect else (first,)
