"""Looks after the Day book: every day there is a log of, what is looked for, and opening one.

Finds nothing itself: the day book's rooms read the logs, beside the screen, and say which days answer.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from dyesession.daybook.finding import DayBook
from dyesession.daybook.where import EXAMPLE, conditions, matching
from dyesession.errors import UserError
from dyesession.ui import place_messages as p
from dyesession.ui.book_rows import BOOK_DRAWING
from dyesession.ui.book_view import OWN, BookDay, BookView
from dyesession.ui.frame_view import Entry, NextAct
from dyesession.ui.from_book import book_day, left_aside
from dyesession.ui.going import go
from dyesession.ui.place_keys import DAY_BOOK, place_key_words
from dyesession.ui.screens.place import PlaceScreen

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp

_KEYS = ("space", "enter", "/", "tab", "q", "r", "?")
_TYPING_KEYS = ("enter", "escape")
EMPTY_BOOK = (
    "Nothing stands in your day book yet.",
    "A day comes in by itself as soon as it is begun at the Bench; nothing has to be saved or filed.",
)
OWN_ASKS = "what your days have taught, beside the usual guesses"


class AtDayBook:
    """What the Day book is in the middle of."""

    def __init__(self, app: DyeApp, bounce_s: float) -> None:
        self._app = app
        self._book: DayBook | None = None
        self._days: tuple[BookDay, ...] = ()
        self._shown: tuple[BookDay, ...] = ()
        self._find, self._finding = "", False
        self._cursor, self._note = "", ""
        self.screen: PlaceScreen[BookView] = PlaceScreen(BOOK_DRAWING, self._view(), bounce_s)
        self.look_through()

    def look_through(self) -> None:
        """Read the logs, beside the screen."""
        today = self._app.now().at.date()

        def read() -> tuple[DayBook, tuple[BookDay, ...]]:
            book = self._app.workroom.day_book()
            return book, tuple(book_day(one, today) for one in book.days)

        self._app.in_background(read, self._read)

    def _read(self, found: tuple[DayBook, tuple[BookDay, ...]]) -> None:
        self._book, self._days = found
        self._look_for(self._find)
        self.refresh()

    def refresh(self) -> None:
        """Show it as it stands now."""
        self.screen.show(self._view())

    def say(self, note: str) -> None:
        """One line to the dyer, until the next act."""
        self._note = note
        self.refresh()

    def carry_out(self, act: p.PlaceAct) -> None:
        """Do what was pressed or touched."""
        if not isinstance(act, p.TypedSoFar | p.TypedOut):
            self._note = ""
        match act:
            case p.Mark(key=key):
                self._cursor = key
            case p.Choose(key=key):
                self._choose(key)
            case p.DoNext():
                self._choose(self._marked())
            case p.FindRecipe():
                self._finding, self._note = True, EXAMPLE
                self.screen.begin_entry(self._find)
            case p.TypedSoFar(text=text):
                self._typed_so_far(text)
            case p.TypedOut(text=text):
                self._typed_out(text)
            case p.LayAside():
                self._finding = False
                self._look_for("")
            case _:
                go(self._app, act, DAY_BOOK)
        self.refresh()

    def _typed_so_far(self, text: str) -> None:
        """Look for what stands there as far as it can be understood yet."""
        try:
            self._look_for(text)
        except UserError:
            self._find = text

    def _typed_out(self, text: str) -> None:
        try:
            self._look_for(text)
        except UserError as trouble:
            self._note = str(trouble)
        else:
            self._finding, self._note = False, ""
            self.screen.clear_entry()

    def _look_for(self, text: str) -> None:
        """Show the days that answer; raises where the text cannot be understood, and shows what it did."""
        book = self._book
        if book is not None:
            wanted = conditions(text, self._app.now().at.date())
            found = {one.session for one in matching(book.days, wanted)}
            self._shown = tuple(one for one in self._days if one.key.partition(":")[2] in found)
        self._find = text
        if self._cursor not in (one.key for one in self._shown):
            self._cursor = self._shown[0].key if self._shown else ""

    def _choose(self, key: str) -> None:
        kind, _, rest = key.partition(":")
        if key == OWN:
            self._app.open_own_numbers()
        elif kind == "day":
            self._app.look_back(rest, self.look_through)
        elif kind == "aside" and self._book is not None:
            one = left_aside(self._book)[int(rest)]
            self._app.show_page(one.file, one.reason, "any key: back to the Day book")
        elif self._book is None:
            self._note = "One moment: still looking through the logs."
        elif not self._days:
            self._app.open_place("Bench")
        else:
            self._note = "Mark a day first."

    # The view.

    def _marked(self) -> str:
        return self._view().cursor

    def _view(self) -> BookView:
        book = self._book
        aside = left_aside(book) if book is not None and not self._find else ()
        own = OWN_ASKS if self._days and not self._find else ""
        keys = [one.key for one in self._shown] + [one.key for one in aside] + ([OWN] if own else [])
        cursor = self._cursor if self._cursor in keys else (keys[0] if keys else "")
        entry = Entry("days", self._find, self._echo()) if self._finding else None
        frame = self._app.frame(
            DAY_BOOK, self._beside(), self._next(cursor),
            place_key_words(_TYPING_KEYS if self._finding else _KEYS), entry, self._note,
        )  # fmt: skip
        return BookView(
            frame,
            cursor,
            self._shown,
            aside,
            len(self._days),
            self._find,
            EMPTY_BOOK if book is not None and not keys and not self._find else (),
            book is None,
            own,
        )

    def _beside(self) -> str:
        if self._book is None:
            return ""
        demo = ", all of them demo days" if self._days and self._book.is_demo else ""
        return f"{len(self._days)} day{'' if len(self._days) == 1 else 's'}{demo}"

    def _echo(self) -> str:
        return f"= {len(self._shown)} of {len(self._days)}" if self._find else ""

    def _next(self, cursor: str) -> NextAct:
        if self._book is None:
            return NextAct("one moment: looking through the logs")
        day = next((one for one in self._shown if one.key == cursor), None)
        if day is not None:
            return NextAct(f"look back on {day.recipe}", day.date, "look back")
        if cursor == OWN:
            return NextAct("look at your own numbers", "", "own numbers")
        if cursor:
            return NextAct("read why it is left aside", short="read")
        if self._days:
            return NextAct("no day answers: look for something else with /", short="find")
        return NextAct("go to the Bench and work a recipe out", "the first day stands here then", "Bench")
