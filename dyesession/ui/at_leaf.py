"""Looks after a place that is a leaf: the mark, what is typed, the line above the keys. Knows no logs and no baths.

What stands on the leaf and what its lines do is somebody else's: a `Leaf`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from dyesession.errors import UserError
from dyesession.ui import place_messages as p
from dyesession.ui.frame_view import Entry, NextAct
from dyesession.ui.going import go
from dyesession.ui.leaf_rows import leaf_drawing
from dyesession.ui.leaf_view import Item, LeafView, Section, keys_on
from dyesession.ui.place_keys import ROUND, place_key_words
from dyesession.ui.screens.place import PlaceScreen

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp

_TYPING_KEYS = ("enter", "escape")


class Leaf(Protocol):
    """What stands on a leaf, and what its lines do."""

    place: AtLeaf

    @property
    def name(self) -> str:
        """The place, as its title and its keys name it."""
        ...

    @property
    def beside(self) -> str:
        """What stands behind the title."""
        ...

    def sections(self) -> tuple[Section, ...]:
        """All that stands on it."""
        ...

    def about(self, key: str) -> tuple[Item, ...]:
        """What explains the marked line."""
        ...

    def next_act(self, key: str) -> NextAct:
        """What space does now."""
        ...

    def choose(self, key: str) -> None:
        """Do what a line does. A refusal is raised."""
        ...

    def do_next(self, key: str) -> None:
        """Do what the next act says."""
        ...

    def take(self, slot: str, text: str) -> None:
        """A text that was typed counts. A refusal is raised, and the text stays."""
        ...

    def echo(self, slot: str, text: str) -> str:
        """What a half-typed text was understood as; "" where it is not yet."""
        ...


class AtLeaf:
    """What a leaf is in the middle of."""

    def __init__(
        self, app: DyeApp, leaf: Leaf, bounce_s: float, *, aside_rows: int | None = None, pad: tuple[str, ...] = ()
    ) -> None:
        self._app, self._leaf = app, leaf
        leaf.place = self
        self._cursor, self._note = "", ""
        self._slot, self._wants, self._typed = "", "", ""
        drawing = leaf_drawing(leaf.name, pad=pad) if aside_rows is None else leaf_drawing(leaf.name, aside_rows, pad)
        self.screen: PlaceScreen[LeafView] = PlaceScreen(drawing, self._view(), bounce_s)

    def refresh(self) -> None:
        """Show it as it stands now."""
        self.screen.show(self._view())

    def say(self, note: str) -> None:
        """One line to the dyer, until the next act."""
        self._note = note
        self.refresh()

    def note(self, note: str) -> None:
        """One line to the dyer, shown with the act under way."""
        self._note = note

    def mark(self, key: str) -> None:
        """Put the mark on a line."""
        self._cursor = key

    def ask(self, slot: str, wants: str, example: str, text: str = "") -> None:
        """Ask for a text in the entry line, beginning from what stands there already."""
        self._slot, self._wants, self._typed, self._note = slot, wants, text, example
        self.screen.begin_entry(text)

    def carry_out(self, act: p.PlaceAct) -> None:
        """Do what was pressed or touched; where it cannot be done, one sentence says why."""
        if not isinstance(act, p.TypedSoFar | p.TypedOut):
            self._note = ""
        try:
            self._do(act)
        except UserError as trouble:
            self._note = str(trouble)
        self.refresh()

    def _do(self, act: p.PlaceAct) -> None:
        match act:
            case p.Mark(key=key):
                self._cursor = key
            case p.Choose(key=key):
                self._leaf.choose(key)
            case p.DoNext():
                self._leaf.do_next(self._view().cursor)
            case p.TypedSoFar(text=text):
                self._typed = text
            case p.TypedOut(text=text):
                self._typed_out(text)
            case p.LayAside():
                self._stop_asking()
            case _:
                go(self._app, act, self._leaf.name)

    def _typed_out(self, text: str) -> None:
        slot = self._slot
        self._note = ""
        self._leaf.take(slot, text.strip())
        if self._slot == slot:
            self._stop_asking()

    def _stop_asking(self) -> None:
        self._slot, self._typed = "", ""
        self.screen.clear_entry()

    def _view(self) -> LeafView:
        sections = self._leaf.sections()
        keys = keys_on(sections)
        cursor = self._cursor if self._cursor in keys else (keys[0] if keys else "")
        entry = Entry(self._wants, self._typed, self._echo()) if self._slot else None
        walk = ("tab",) if self._leaf.name in ROUND else ()
        words = place_key_words(_TYPING_KEYS if entry else ("space", "enter", *walk, "q", "r", "?"))
        frame = self._app.frame(
            self._leaf.name, self._leaf.beside, self._leaf.next_act(cursor), words, entry, self._note
        )
        return LeafView(frame, cursor, sections, self._leaf.about(cursor))

    def _echo(self) -> str:
        if not self._typed.strip():
            return ""
        try:
            return self._leaf.echo(self._slot, self._typed.strip())
        except UserError:
            return ""
