"""Looks after Colour: the target and the skein as they are typed or taken, and what each line does.

Reckons nothing: the day book's `hit` answers, beside the screen. Knows no files: the workroom reads and writes.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from dyesession.colour.photo_frame import FrameReadings, photo_typed
from dyesession.colour.readings import Reading
from dyesession.colour.targets import target_of
from dyesession.daybook.dyed_lots import DyedLot
from dyesession.daybook.fastness import COMES_OFF, test_named
from dyesession.daybook.hit import Hit, Overdye
from dyesession.daybook.shade_card import Near, Shade
from dyesession.errors import UserError
from dyesession.ui import colour_care as care
from dyesession.ui import colour_lines as lines
from dyesession.ui import place_messages as p
from dyesession.ui.colour_answer import answer, overdyes_for
from dyesession.ui.colour_next import EXAMPLES, OTHER_EXAMPLE, WANTS, next_act
from dyesession.ui.colour_photo import read_or_show
from dyesession.ui.colour_rows import COLOUR_DRAWING
from dyesession.ui.colour_state import CARD, NOTE, OVERDYE, TO_SAMPLE, TO_TARGET, ColourState, view_of
from dyesession.ui.colour_taken import next_card, next_light, with_sample, with_target, with_undyed, without
from dyesession.ui.colour_view import ColourView
from dyesession.ui.frame_view import Entry, Frame
from dyesession.ui.going import go
from dyesession.ui.place_keys import COLOUR, place_key_words
from dyesession.ui.rows import keys_of
from dyesession.ui.screens.place import PlaceScreen
from dyesession.ui.theme import DARK

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp

BACK = "any key: back to Colour"
_KEYS = ("space", "enter", "c", "tab", "q", "delete", "r", "?")
_TYPING_KEYS = ("enter", "escape")


class AtColour:
    """What Colour is in the middle of."""

    def __init__(self, app: DyeApp, bounce_s: float, day: str = "") -> None:
        self._app, self._bounce_s = app, bounce_s
        self._state = ColourState(day=day)
        self._slot, self._typed, self._note, self._cursor = "", "", "", "sample+" if day else ""
        self._test: care.FastnessTalk | None = None
        self._asked = 0
        self._skein = ""  # the shade that the sample has just been noted as
        self.screen: PlaceScreen[ColourView] = PlaceScreen(COLOUR_DRAWING, self._view(), bounce_s)
        self.look_round()

    def look_round(self) -> None:
        """Read the colours in the logs, beside the screen."""
        self._app.in_background(self._app.workroom.shades, self._found)

    def _found(self, shades: tuple[Shade, ...]) -> None:
        """The skein keeps its reading; where that was noted, it has a recipe and a dose from now on."""
        state, key = self._state, self._skein or (self._state.shade.key if self._state.shade else "")
        shade = next((one for one in shades if one.key == key), state.shade) if state.sample is not None else None
        undyed = shade.undyed if shade is not None and shade.undyed is not None else state.undyed
        self._state, self._skein = replace(state, shades=shades, shade=shade, undyed=undyed), ""
        self._answer()

    def refresh(self) -> None:
        """Show it as it stands now."""
        self.screen.show(self._view())

    def say(self, note: str) -> None:
        """One line to the dyer, until the next act."""
        self._note, self._state = note, replace(self._state, working=False)
        self.refresh()

    # What is pressed or touched.

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
                self._do_next()
            case p.TypeColour():
                first = not self._state.target and not self._state.day
                self._begin_typing("target" if first or self._on("target") else "sample")
            case p.TypedSoFar(text=text):
                self._typed = text
            case p.TypedOut(text=text):
                self._typed_out(text)
            case p.LayAside():
                self._lay_aside()
            case p.TakeAway():
                self._take_away()
            case p.LeavePlace() if self._state.listing:
                self._lay_aside()
            case _:
                go(self._app, act, COLOUR)
        self.refresh()

    def _on(self, what: str) -> bool:
        """Whether the mark stands on one of a kind of lines."""
        return self._cursor.startswith(what)

    def _lay_aside(self) -> None:
        if self._slot:
            self._stop_typing()
        else:
            self._state = replace(self._state, listing="", day="" if self._state.listing == NOTE else self._state.day)

    def _choose(self, key: str) -> None:
        kind, _, rest = key.partition(":")
        doing: dict[str, Callable[[], None]] = {
            "target+": lambda: self._begin_typing("target"),
            "target": lambda: self._begin_typing("target"),
            "sample": lambda: self._begin_typing("sample"),
            "sample+": lambda: self._begin_typing("sample"),
            "undyed": lambda: self._begin_typing("undyed"),
            "photo": lambda: self._begin_typing("photo"),
            "card": lambda: self._now(next_card(self._state)),
            "light": lambda: self._now(next_light(self._state)),
            "logs": lambda: self._list(TO_TARGET if rest == "target" else TO_SAMPLE),
            "shades": lambda: self._list(CARD),
            "page": self._write_page,
            "shade": lambda: self._choose_shade(rest),
            "mend": self._read_mend,
            "overdye": self._look_for_overdye,
            "over": lambda: self._read_overdye(int(rest)),
            "depth": lambda: self._app.show_page("More or less of the same dye", self._view().series_says, BACK),
            "note": self._begin_noting,
            "lot": lambda: self._note_on(rest),
            "test": lambda: self._begin_test(rest),
            "off": lambda: self._app.show_page("Colour comes off", COMES_OFF, BACK),
        }
        if kind in doing:
            doing[kind]()

    def _now(self, state: ColourState) -> None:
        self._state = state

    # Typing.

    def _begin_typing(self, slot: str, text: str = "") -> None:
        self._slot, self._typed = slot, text
        self._note = EXAMPLES.get(slot, OTHER_EXAMPLE)
        self.screen.begin_entry(text)

    def _stop_typing(self) -> None:
        self._slot, self._typed, self._test = "", "", None
        self.screen.clear_entry()

    def _typed_out(self, text: str) -> None:
        """What was typed counts; where it cannot, one sentence says why and the text stays."""
        try:
            if self._slot == "photo":
                self._open_photo(text)
            elif self._slot in (care.BEFORE, care.AFTER):
                self._typed_test(text)
            else:
                self._take(self._slot, self._app.workroom.readings(text))
                self._stop_typing()
        except UserError as trouble:
            self._note = str(trouble)

    def _take(self, slot: str, readings: tuple[Reading, ...], shade: Shade | None = None) -> None:
        """Readings become the target's, the skein's or the undyed fibre's. Raises what does not fit."""
        state = self._state
        if slot == "target":
            first = not state.target and state.sample is None
            self._state = with_target(state, readings)
            self._cursor = "sample+" if first else "target+"
        elif slot == "sample":
            self._state = with_sample(state, readings, shade)
            self._cursor = "sample"
            if state.day and shade is None:
                self._begin_noting()
        else:
            self._state = with_undyed(state, readings)
        self._note = ""
        self._answer()

    def _take_away(self) -> None:
        state = without(self._state, self._cursor)
        if state is None:
            self._note = "Mark a reading first: only those can be taken away."
            return
        self._state = state
        self._answer()

    # The answer.

    def _answer(self) -> None:
        """Reckon anew beside the screen; only the last question's answer is shown."""
        state = self._state
        self._asked += 1
        asked = self._asked
        self._state = replace(state, hit=None, overdyes=None, near=(), trouble="", working=state.aim is not None)
        self.refresh()
        if state.aim is None:
            return
        workroom = self._app.workroom

        def show(brought: tuple[Hit | None, tuple[Near, ...], str]) -> None:
            if asked == self._asked:
                found, near, trouble = brought
                self._state = replace(self._state, hit=found, near=near, trouble=trouble, working=False)
                self.refresh()

        self._app.in_background(lambda: answer(state, workroom.kitchen().jars), show)

    def _read_mend(self) -> None:
        if self._state.hit is not None:
            self._app.show_page("What would mend it", lines.mend_page(self._state.hit.advice), BACK)

    def _look_for_overdye(self) -> None:
        state = self._state
        if state.aim is None or state.sample is None:
            return
        self._state = replace(state, listing=OVERDYE, working=state.overdyes is None)
        if state.overdyes is not None:
            return
        workroom = self._app.workroom

        def show(found: tuple[Overdye, ...]) -> None:
            self._state = replace(self._state, overdyes=found, working=False)
            self.refresh()

        self._app.in_background(lambda: overdyes_for(state, workroom.kitchen().jars), show)

    def _read_overdye(self, at: int) -> None:
        found = self._state.overdyes or ()
        if at < len(found):
            self._app.show_page(found[at].second.name, lines.overdye_page(found[at]), BACK)

    # The logs.

    def _list(self, listing: str) -> None:
        self._state, self._cursor = replace(self._state, listing=listing), ""

    def _choose_shade(self, key: str) -> None:
        """A colour of the logs: taken as what was asked for, else shown in full."""
        state = self._state
        shade = next((one for one in state.shades or () if one.key == key), None)
        if shade is None:
            return
        if state.listing not in (TO_TARGET, TO_SAMPLE):
            self._app.show_page(shade.recipe, lines.shade_page(shade), BACK)
            return
        try:
            self._take(state.listing, (shade.reading,), shade)
        except UserError as trouble:
            self._note = str(trouble)
            return
        self._state = replace(self._state, listing="")

    def _write_page(self) -> None:
        from dyesession.daybook.shade_lines import in_order, shade_card_page

        shades = self._state.shades or ()

        def write() -> str:
            return str(self._app.workroom.keep_paper("shade-card.html", shade_card_page(in_order(shades))))

        self._app.in_background(write, lambda where: self.say(f"Written to {where}."))

    # Photos.

    def _open_photo(self, text: str) -> None:
        """Areas that were typed are read at once; else the photo is shown, to be pointed at."""
        name, boxes = photo_typed(text)
        self._stop_typing()
        read_or_show(self._app, name, boxes, self._state, self._take_photo, self._bounce_s)

    def _take_photo(self, found: FrameReadings) -> None:
        """The photo's colours; one wanted in the same frame takes the place of what was wanted."""
        if found.target is not None:
            self._state = replace(self._state, target=(), aim=None)
            self._take("target", (found.target,))
        self._take("sample", (found.skein,))
        self.refresh()

    # Aftercare.

    def _begin_noting(self) -> None:
        """Ask for the day that a colour belongs to."""
        self._list(NOTE)

        def show(lots: tuple[DyedLot, ...]) -> None:
            self._state = replace(self._state, lots=lots)
            self.refresh()

        self._app.in_background(self._app.workroom.dyed_lots, show)

    def _note_on(self, key: str) -> None:
        state = self._state
        lot = next((one for one in state.lots or () if one.key == key), None)
        if lot is None or state.sample is None:
            return
        entry, workroom = care.shade_entry(state.sample, lot.lot), self._app.workroom
        self._state, self._skein = replace(state, listing="", day=""), lot.key

        def say(_: None) -> None:
            self.say(f"Noted on {lot.session}: {entry.colour}.")
            self.look_round()
            self._app.logs_changed()

        self._app.in_background(lambda: care.note(workroom, lot.session, entry), say)

    def _begin_test(self, what: str) -> None:
        """Ask for the reading before; where it was noted on an earlier day, for the one after."""
        shade, test = self._state.shade, test_named(what)
        if shade is None:
            return

        def ask(before: Reading | None) -> None:
            talk = care.FastnessTalk(test, shade, before)
            self._test = talk
            self._begin_typing(talk.wanted)
            self._note = test.do
            self.refresh()

        self._app.in_background(lambda: care.begun_before(self._app.workroom, shade, test), ask)

    def _typed_test(self, text: str) -> None:
        talk, workroom = self._test, self._app.workroom
        assert talk is not None
        later = talk.wanted == care.AFTER and not text.strip()
        done = talk.take(None if later else self._one(text))
        if done is None:
            self._begin_typing(talk.wanted)
            self._note = "Do the test, then type the second reading; enter alone leaves it for another day."
            return
        entry, said = done
        self._stop_typing()

        def show(_: None) -> None:
            self._app.show_page(f"{talk.test.what}: noted on {talk.shade.session}", said, BACK)
            self.look_round()
            self._app.logs_changed()

        self._app.in_background(lambda: care.note(workroom, talk.shade.session, entry), show)

    def _one(self, text: str) -> Reading:
        return target_of(self._app.workroom.readings(text)).middle

    # The view.

    def _do_next(self) -> None:
        state = self._state
        if state.listing:
            self._choose(self._view().cursor)
        elif not state.target and not (state.day and state.sample is None):
            self._begin_typing("target")
        elif state.sample is None or state.trouble:
            self._begin_typing("sample")
        elif state.hit is not None and state.hit.advice:
            self._read_mend()
        elif state.hit is not None:
            self._begin_noting()

    def _view(self) -> ColourView:
        view = view_of(self._state, Frame(""), self._cursor)
        keys = keys_of(COLOUR_DRAWING.rows(view, 80, DARK))
        cursor = self._cursor if self._cursor in keys else (keys[0] if keys else "")
        return replace(view, cursor=cursor, frame=self._frame())

    def _frame(self) -> Frame:
        entry = Entry(self._wants(), self._typed, self._echo()) if self._slot else None
        keys = place_key_words(_TYPING_KEYS if self._slot else _KEYS)
        beside = "did I hit it?" if not self._state.listing else ""
        return self._app.frame("Colour", beside, next_act(self._state), keys, entry, self._note)

    def _wants(self) -> str:
        if self._test is not None and self._slot in (care.BEFORE, care.AFTER):
            return self._test.wants
        return WANTS.get(self._slot, self._slot)

    def _echo(self) -> str:
        """What a half-typed colour was understood as."""
        if not self._typed.strip() or self._slot == "photo" or self._typed.strip().lower().endswith(".csv"):
            return ""
        try:
            found = self._app.workroom.readings(self._typed)[0]
        except UserError:
            return ""
        line = lines.reading_line("", "", found)
        return f"= {line.figures} {line.hex}"
