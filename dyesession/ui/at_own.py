"""Looks after "Your own numbers": each number that days taught beside the guess it replaces, and what would teach more.

Words and sums are the day book's; the same are printed by the command. Knows no file.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from dyesession.ui.at_leaf import AtLeaf
from dyesession.ui.frame_view import NextAct
from dyesession.ui.leaf_view import Item, Section, Told
from dyesession.ui.place_keys import OWN_NUMBERS

if TYPE_CHECKING:
    from dyesession.daybook.dyers_numbers import Number
    from dyesession.daybook.own_book import OwnNumbers
    from dyesession.ui.app import DyeApp

BACK = "any key: back to your own numbers"


class OwnNumbersLeaf:
    """All that the days taught."""

    place: AtLeaf
    name = OWN_NUMBERS

    def __init__(self, app: DyeApp) -> None:
        self._app = app
        self._found: OwnNumbers | None = None
        self._sections: tuple[Section, ...] = (Section("", (Told("reading the logs …"),)),)

    def look(self) -> None:
        """Learn from the logs, beside the screen."""
        workroom = self._app.workroom

        def read() -> tuple[OwnNumbers, tuple[Section, ...]]:
            found = workroom.own_numbers()
            return found, own_sections(found)

        self._app.in_background(read, self._read)

    def _read(self, found: tuple[OwnNumbers, tuple[Section, ...]]) -> None:
        self._found, self._sections = found
        self.place.refresh()

    @property
    def beside(self) -> str:
        """How many, from how many days."""
        return self._found.in_short if self._found is not None else ""

    def sections(self) -> tuple[Section, ...]:
        """The numbers, then what is not learned yet."""
        return self._sections

    def about(self, key: str) -> tuple[Item, ...]:
        """Every day that the marked number comes from."""
        number = self._number(key)
        if number is None:
            return ()
        from dyesession.daybook.learned_text import told_number

        days = tuple(Told(day, mark="hardly counted, being odd" if day in number.odd else "") for day in number.days)
        return (Told(told_number(number).title, strong=True), *days)

    def next_act(self, key: str) -> NextAct:
        """Look at the marked number's days."""
        if self._number(key) is not None:
            return NextAct("read which days it comes from", "", "its days")
        return NextAct("back to where you came from", "", "back")

    def do_next(self, key: str) -> None:
        """As the line does; where it does nothing, back."""
        if self._number(key) is not None:
            self.choose(key)
        else:
            self._app.leave()

    def choose(self, key: str) -> None:
        """The days of a number, each with its name."""
        number = self._number(key)
        if number is not None:
            from dyesession.daybook.learned_text import number_page

            heading, lines = number_page(number)
            self._app.show_page(heading, "\n".join(lines), BACK)

    def _number(self, key: str) -> Number | None:
        kind, _, index = key.partition(":")
        if kind != "number" or self._found is None:
            return None
        return self._found.learned.numbers[int(index)]

    def take(self, slot: str, text: str) -> None:
        """Nothing is typed here."""

    def echo(self, slot: str, text: str) -> str:
        """Nothing is typed here."""
        return ""


def own_sections(found: OwnNumbers) -> tuple[Section, ...]:
    """What was found, ready to be drawn."""
    from dyesession.daybook.learned_text import STILL, WOULD_TEACH, head_of, told_number, untaught_line

    numbers = tuple(
        item
        for index, one in enumerate(map(told_number, found.learned.numbers))
        for item in (
            Told(one.title, f"number:{index}", strong=True),
            Told(one.yours, f"number:{index}", "yours"),
            Told(one.guess, f"number:{index}", "usual guess"),
            Told(one.days, f"number:{index}", "days"),
        )
    )
    lacking = tuple(
        item
        for index, one in enumerate(found.lacking)
        for item in (
            Told(untaught_line(one), f"lacking:{index}", strong=True),
            Told(one.reading, f"lacking:{index}", "reading"),
        )
    )
    head = Told(head_of(found.learned, found.demo))
    would = (STILL if numbers else WOULD_TEACH).rstrip(":").casefold()
    return (Section("", (head,)), Section("learned", numbers), Section(would, lacking))


def open_own_numbers(app: DyeApp, bounce_s: float) -> AtLeaf:
    """The dyer's own numbers, ready to be gone to; the logs are read beside the screen."""
    leaf = OwnNumbersLeaf(app)
    place = AtLeaf(app, leaf, bounce_s)
    leaf.look()
    return place
