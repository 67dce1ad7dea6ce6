"""The Stove: draws the view it is handed, posts one message for each thing the dyer does. Computes nothing.

The only thing it keeps is the text being typed, so that a key that is part of it is never taken for an act.
"""

from typing import Any, ClassVar

from textual.app import ComposeResult
from textual.events import Key as KeyPressed
from textual.events import Resize
from textual.message import Message
from textual.screen import Screen

from dyesession.ui.keys import BY_KEY
from dyesession.ui.messages import (
    Chosen,
    Entered,
    KeyTouched,
    NotNow,
    PadTouched,
    RowChosen,
    RowMarked,
    Typed,
)
from dyesession.ui.pressing import ASK_REST_S, BOUNCE_S, InOrder, Pressed, joined
from dyesession.ui.room import room_of
from dyesession.ui.rows import moved
from dyesession.ui.stove_rooms import Arrangement, arrange
from dyesession.ui.stove_view import StoveView, wants_pad
from dyesession.ui.widgets.account import draw_account
from dyesession.ui.widgets.ask import AskBox
from dyesession.ui.widgets.bars import draw_bars
from dyesession.ui.widgets.care import draw_care
from dyesession.ui.widgets.craft import draw_craft, draw_how
from dyesession.ui.widgets.curve import draw_curve
from dyesession.ui.widgets.drawn import Drawn
from dyesession.ui.widgets.headline import draw_headline, headline_part
from dyesession.ui.widgets.key_line import KeyLine, is_live, keys_part
from dyesession.ui.widgets.lanes import draw_lanes
from dyesession.ui.widgets.large_clocks import away_part, draw_away, draw_loudest, loudest_part
from dyesession.ui.widgets.next_act import NextBand
from dyesession.ui.widgets.notice import draw_notice, notice_part
from dyesession.ui.widgets.offers import Offers, offers_part
from dyesession.ui.widgets.pad import Pad
from dyesession.ui.widgets.pot import PotPart, PotPicture
from dyesession.ui.widgets.pot_lines import PotLines
from dyesession.ui.widgets.ringing import RingingBlock, ringing_part
from dyesession.ui.widgets.shade import draw_shade
from dyesession.ui.widgets.where import draw_where

# More pots than this never have a picture at once: 20 cells each, on the widest window tried.
MOST_PICTURES = 10
_BEGINS = "0123456789"
_ENDING = ("enter", "escape", "backspace")
_MOVES = {"up": -1, "down": 1, "pageup": -8, "pagedown": 8, "home": -9999, "end": 9999}
_LONGEST_ENTRY = 400  # a note of several sentences; longer ones are cut


def _simple_widgets() -> list[Drawn[Any]]:
    """The parts that are only looked at."""
    return [
        Drawn(draw_headline, name="headline"), Drawn(draw_lanes, name="lanes"),
        Drawn(draw_account, name="account"), Drawn(draw_care, name="care"),
        Drawn(draw_how, name="how"), Drawn(draw_craft, name="craft"), Drawn(draw_notice, name="notice"),
        Drawn(draw_curve, name="curve"), Drawn(draw_bars, name="bars"),
        Drawn(draw_shade, name="shade"), Drawn(draw_where, name="where"), Drawn(draw_away, name="away"),
        Drawn(draw_loudest, name="loudest"),
    ]  # fmt: skip


def _parts(view: StoveView, arrangement: Arrangement) -> dict[str, object]:
    """Each part's share of the view, by the name of its box."""
    return {
        "headline": headline_part(view), "lanes": view.lanes, "account": view.account, "care": view.care,
        "how": view.how, "craft": view.craft, "offers": offers_part(view) if view.offers else None,
        "pad": view.pad if wants_pad(view) else None,
        "notice": notice_part(view), "curve": view.curve, "bars": view.bars, "shade": view.shade,
        "where": view.where, "away": away_part(view), "loudest": loudest_part(view),
        "ringing": ringing_part(view), "ask": view.ask, "next": view.next_act, "keys": keys_part(view),
        "lines": arrangement.lines,
    }  # fmt: skip


class StoveScreen(Screen[None]):
    """The Stove. `show(view)` draws; every act comes back as one of `ui.messages`."""

    AUTO_FOCUS = None
    ALLOW_SELECT = False
    BINDINGS: ClassVar = []

    def __init__(self, view: StoveView, bounce_s: float = BOUNCE_S) -> None:
        super().__init__()
        self._view = view
        self.styles.overflow_x = self.styles.overflow_y = "hidden"
        self._typed = ""
        self._ask_rest_s = ASK_REST_S if bounce_s else 0.0
        self._asked_at_s = float("-inf")
        self._keys = InOrder(self, self._press, bounce_s)
        self._pictures = [PotPicture(f"pot-{index}") for index in range(MOST_PICTURES)]
        self._widgets: dict[str, Drawn[Any]] = {str(widget.id): widget for widget in _simple_widgets()}
        for touched in (RingingBlock(), AskBox(), NextBand(), Offers(), Pad(), KeyLine(), PotLines()):
            self._widgets[str(touched.id)] = touched

    def begin_after(self, key: str, at_s: float) -> None:
        """Take a key as pressed before: held down, it opened this screen and must not act here."""
        self._keys.begin_after(key, at_s)

    @property
    def view(self) -> StoveView:
        """What is shown at present."""
        return self._view

    @property
    def typed(self) -> str:
        """The text typed so far; the screen is its only keeper."""
        return self._typed

    def compose(self) -> ComposeResult:
        """Every part is mounted once and stays."""
        yield from self._widgets.values()
        yield from self._pictures

    def on_mount(self) -> None:
        """Draw what was handed over at the start."""
        self._redraw()

    def on_resize(self, event: Resize) -> None:
        """Arrange anew for the new size."""
        self._redraw()

    def show(self, view: StoveView) -> None:
        """Draw this view from now on. An equal view changes and repaints nothing."""
        if view != self._view:
            if view.ask is not None and (self._view.ask is None or view.ask.question != self._view.ask.question):
                self._asked_at_s = Message().time
            self._view = view
            if self.is_mounted:
                self._redraw()

    def begin_entry(self, text: str) -> None:
        """Let what is typed next go on behind this text."""
        self._typed = text

    def clear_entry(self) -> None:
        """Forget what was typed: it counted, or is no longer wanted."""
        self._typed = ""

    def _redraw(self) -> None:
        arrangement = arrange(self._view, *room_of(self))
        parts = _parts(self._view, arrangement)
        for name, widget in self._widgets.items():
            box = arrangement.boxes.get(name)
            if box is not None and parts[name] is not None:
                widget.show(parts[name])
            widget.put_at(box if parts[name] is not None else None)
        for index, picture in enumerate(self._pictures):
            place = arrangement.pots[index] if index < len(arrangement.pots) else None
            if place is not None:
                picture.show(PotPart(place.pot, place.text_rows, place.face))
            picture.put_at(place.box if place else None)

    def on_key(self, event: KeyPressed) -> None:
        """Every key is ours: part of a text, an answer, an act, or nothing."""
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
        elif wants_pad(self._view) and (self._typed or not self._too_soon(message.time)):
            self._add(message.types)

    def _too_soon(self, at_s: float) -> bool:
        """Whether a question has only just appeared: nobody can have read it."""
        return self._view.ask is not None and at_s - self._asked_at_s < self._ask_rest_s

    def on_chosen(self, message: Chosen) -> None:
        """A letter pressed or touched before the question could be read answers nothing."""
        if self._too_soon(message.time):
            message.stop()

    def on_not_now(self, message: NotNow) -> None:
        """Nor does it put off."""
        if self._too_soon(message.time):
            message.stop()

    def _press(self, pressed: Pressed) -> None:
        if self._too_soon(pressed.at_s) and not self._typed:
            return
        if not (self._type(pressed.key, pressed.character) or self._answer(pressed.key)):
            self._act(pressed.key, pressed.at_s)

    def _type(self, key: str, character: str | None) -> bool:
        """Take a key as part of what is typed; says whether it was."""
        if self._view.offers and self._choose(key):
            return True
        if self._typed and key in _ENDING:
            self._finish(key)
            return True
        if character is None or not character.isprintable() or not self._may_begin(character):
            return False
        self._add(character)
        return True

    def _choose(self, key: str) -> bool:
        """Take a key as a move of the mark over the rows on offer, or as choosing one; says whether it was."""
        if key in _MOVES:
            rows = offers_part(self._view).rows
            self._keys.post(RowMarked(moved(rows, self._view.mark, _MOVES[key])))
        elif key == "enter":
            self._keys.post(RowChosen(self._view.mark))
        return key in _MOVES or key == "enter"

    def _add(self, text: str) -> None:
        if len(self._typed) < _LONGEST_ENTRY:
            self._typed = joined(self._typed, text)
            self.post_message(Typed(self._typed))

    def _may_begin(self, character: str) -> bool:
        """Digits begin a number anywhere; where a text is asked for, anything but a space begins it."""
        asked = self._view.entry is not None and character != " "
        return bool(self._typed) or asked or character in _BEGINS

    def _finish(self, key: str) -> None:
        if key == "enter":
            self.post_message(Entered(self._typed))
            return
        self._typed = self._typed[:-1] if key == "backspace" else ""
        self.post_message(Typed(self._typed))

    def _answer(self, key: str) -> bool:
        """Take a key as one of an Ask's letters. While letters answer, no other letter does anything."""
        ask = self._view.ask
        if ask is None:
            return False
        if key in {choice.key for choice in ask.choices}:
            self.post_message(Chosen(key))
            return True
        return key in ("enter", "y") or (key in BY_KEY and not is_live(key, self._view))

    def _act(self, key: str, at_s: float) -> None:
        """Post the act of a key. The same key again at once is a bounce and counts once."""
        entry = BY_KEY.get(key)
        if entry is not None and self._keys.counts(key, at_s):
            self._keys.post(entry.act())
