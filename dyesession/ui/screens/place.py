"""A place before the Stove: draws the view it is handed, posts one message for each thing the dyer does.

The Bench, Working out and My kitchen are all of this kind: a list with a mark, what explains the marked line, the
next act and the keys. It keeps only the text being typed.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, ClassVar, Generic, Protocol, TypeVar

from textual.app import ComposeResult
from textual.events import Key as KeyPressed
from textual.events import Resize
from textual.screen import Screen

from dyesession.ui import place_messages as p
from dyesession.ui.frame_view import Frame
from dyesession.ui.ink import Line
from dyesession.ui.messages import KeyTouched, Next, PadTouched
from dyesession.ui.place_keys import live_key
from dyesession.ui.place_rooms import arrange_place
from dyesession.ui.pressing import BOUNCE_S, InOrder, Pressed, joined
from dyesession.ui.room import room_of
from dyesession.ui.rows import ListPart, Row, moved
from dyesession.ui.theme import Palette, palette_of
from dyesession.ui.widgets.drawn import Drawn
from dyesession.ui.widgets.key_line import KeyLine, KeysPart
from dyesession.ui.widgets.next_act import NextBand
from dyesession.ui.widgets.pad import Pad
from dyesession.ui.widgets.place_frame import draw_line, draw_title
from dyesession.ui.widgets.ringing import RingingBlock, RingingPart
from dyesession.ui.widgets.row_list import RowList

_MOVES = {"up": -1, "down": 1, "pageup": -8, "pagedown": 8, "home": -9999, "end": 9999}
_ENDING = ("enter", "escape", "backspace")
_LONGEST_ENTRY = 400


class PlaceView(Protocol):
    """What every place's view has: the frame, and which line has the mark."""

    @property
    def frame(self) -> Frame:
        """What stands round the middle."""
        ...

    @property
    def cursor(self) -> str:
        """The key of the marked line."""
        ...


View = TypeVar("View", bound=PlaceView)


@dataclass(frozen=True)
class Drawing(Generic[View]):
    """How the middle of one place is drawn; all of it pure.

    `rows(view, width, palette)` are the lines of its list; `aside(view, width, height, palette)` is what explains
    the marked line, in at most `aside_rows` rows where it stands below the list. `pad` are words often typed.
    """

    name: str
    rows: Callable[[View, int, Palette], tuple[Row, ...]]
    aside: Callable[[View, int, int, Palette], list[Line]]
    aside_rows: int = 0
    pad: tuple[str, ...] = ()


class PlaceScreen(Screen[None], Generic[View]):
    """One place. `show(view)` draws; every act comes back as one of `ui.place_messages`."""

    AUTO_FOCUS = None
    ALLOW_SELECT = False
    BINDINGS: ClassVar = []

    def __init__(self, drawing: Drawing[View], view: View, bounce_s: float = BOUNCE_S) -> None:
        super().__init__(name=drawing.name)
        self._drawing, self._view = drawing, view
        self.styles.overflow_x = self.styles.overflow_y = "hidden"
        self._typed = ""
        self._keys = InOrder(self, self._press, bounce_s)
        self._list = RowList()
        parts: list[Drawn[Any]] = [
            RingingBlock(), Drawn(draw_title, name="headline"), self._list, Drawn(self._draw_aside, name="aside"),
            NextBand(), Drawn(draw_line, name="notice"), Pad(), KeyLine(),
        ]  # fmt: skip
        self._parts = {str(one.id): one for one in parts}

    @property
    def view(self) -> View:
        """What is shown at present."""
        return self._view

    @property
    def typed(self) -> str:
        """The text typed so far; the screen is its only keeper."""
        return self._typed

    @property
    def list_part(self) -> ListPart | None:
        """The lines of the list as they are drawn."""
        return self._list.part

    def compose(self) -> ComposeResult:
        """Every part is mounted once and stays."""
        yield from self._parts.values()

    def on_mount(self) -> None:
        """Draw what was handed over at the start."""
        self._redraw()

    def on_resize(self, event: Resize) -> None:
        """Arrange anew for the new size."""
        self._redraw()

    def show(self, view: View) -> None:
        """Draw this view from now on. An equal view changes and repaints nothing."""
        if view != self._view:
            self._view = view
            if self.is_mounted:
                self._redraw()

    def begin_entry(self, text: str = "") -> None:
        """Let what is typed next go on behind this text."""
        self._typed = text

    def clear_entry(self) -> None:
        """Forget what was typed: it counted, or is no longer wanted."""
        self._typed = ""

    def _draw_aside(self, view: View, width: int, height: int, palette: Palette) -> list[Line]:
        return self._drawing.aside(view, width, height, palette)

    def _redraw(self) -> None:
        frame = self._view.frame
        width, height = room_of(self)
        boxes = arrange_place(frame, self._drawing.aside_rows, width, height)
        shown: dict[str, object] = {
            "ringing": RingingPart(frame.ringing, frame.wall_clock) if frame.ringing else None,
            "headline": frame, "aside": self._view, "next": frame.next_act, "notice": frame.note or None,
            "pad": self._drawing.pad if frame.entry is not None else None,
            "keys": KeysPart(frame.keys, frame.entry),
        }  # fmt: skip
        if box := boxes.get("list"):
            rows = self._drawing.rows(self._view, max(1, box.width - 4), palette_of(self.app))
            shown["list"] = ListPart(rows, self._view.cursor)
        for name, widget in self._parts.items():
            part = shown.get(name)
            if part is not None:
                widget.show(part)
            widget.put_at(boxes.get(name) if part is not None else None)

    def on_key(self, event: KeyPressed) -> None:
        """Every key is ours: part of a text, a move of the mark, an act, or nothing."""
        self._keys.arrived(event)

    def on_key_touched(self, message: KeyTouched) -> None:
        """A touched word in the key line is that key."""
        message.stop()
        self._press(Pressed(message.key, None, message.time))

    def on_pad_touched(self, message: PadTouched) -> None:
        """A touch on the pad types what is written on it, or ends the text."""
        message.stop()
        if message.types in _ENDING:
            self._press(Pressed(message.types, None, message.time))
        elif self._view.frame.entry is not None:
            self._add(message.types)

    def on_next(self, message: Next) -> None:
        """A touch on the band of the next act, or on what rings, is the space bar."""
        message.stop()
        self._space()

    def _press(self, pressed: Pressed) -> None:
        if self._view.frame.entry is not None and self._type(pressed):
            return
        if pressed.key in _MOVES:
            rows = self._list.part.rows if self._list.part else ()
            self._post(p.Mark(moved(rows, self._view.cursor, _MOVES[pressed.key])))
        elif (live := live_key(pressed.key, self._drawing.name)) and self._keys.counts(
            pressed.key, pressed.at_s
        ):
            self._act(pressed.key, live.act)

    def _act(self, key: str, act: type[p.PlaceAct] | None) -> None:
        if key == "space":
            self._space()
        elif key == "enter":
            self._post(p.Choose(self._view.cursor))
        elif act is not None:
            self._post(act())

    def _space(self) -> None:
        self._post(p.Seen() if self._view.frame.ringing else p.DoNext())

    def _type(self, pressed: Pressed) -> bool:
        """Take a key as part of what is typed; says whether it was."""
        if pressed.key == "enter":
            self._post(p.TypedOut(self._typed))
        elif pressed.key == "escape":
            self._typed = ""
            self._post(p.LayAside())
        elif pressed.key == "backspace":
            self._typed = self._typed[:-1]
            self._post(p.TypedSoFar(self._typed))
        elif pressed.character is not None and pressed.character.isprintable():
            self._add(pressed.character)
        else:
            return False
        return True

    def _add(self, text: str) -> None:
        if len(self._typed) < _LONGEST_ENTRY and (self._typed or text.strip()):
            self._typed = joined(self._typed, text)
            self._post(p.TypedSoFar(self._typed))

    def _post(self, act: p.PlaceAct) -> None:
        act.place = self._drawing.name
        self._keys.post(act)

    @property
    def last_pressed(self) -> tuple[str, float]:
        """The last key that acted here, and when."""
        return self._keys.last

    def begin_after(self, key: str, at_s: float) -> None:
        """Take a key as pressed before: held down, it opened this place and must not act here."""
        self._keys.begin_after(key, at_s)
