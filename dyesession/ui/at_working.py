"""Looks after Working out: what is typed and chosen there, and what each line does.

Keeps what was said in `working_state`, which works the plan out; what comes next is `working_next`.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.errors import UserError
from dyesession.plan import PlanError, lot_from_text
from dyesession.ui import from_plan
from dyesession.ui import pattern_need as pn
from dyesession.ui import place_messages as p
from dyesession.ui.frame_view import Entry, Frame
from dyesession.ui.going import go
from dyesession.ui.place_keys import WORKING_OUT, place_key_words
from dyesession.ui.rows import keys_of
from dyesession.ui.screens.place import PlaceScreen
from dyesession.ui.theme import DARK
from dyesession.ui.working_next import next_act, next_key, next_mark
from dyesession.ui.working_rows import WORKING_DRAWING
from dyesession.ui.working_state import (
    WorkingState,
    next_depth,
    view_of,
    why_of,
    with_lot,
    without_lot,
    worked_out,
)
from dyesession.ui.working_view import WorkingView

if TYPE_CHECKING:
    from dyesession.daybook.dyers_numbers import Learnt
    from dyesession.kitchen.model import Kitchen
    from dyesession.plan.model import FibreLot
    from dyesession.recipe.model import Recipe
    from dyesession.ui.app import DyeApp

EXAMPLE = "for example 240 g wool, or 165 g large skein, or 212 g damp, 148 g dry wool"
BOTH = "wash it, weigh it after a day in the room; or type both weights: 212 g damp, 148 g dry wool"
MORDANTED = "with what, and when: alum 12 %, in March; nothing and enter: not mordanted"
BACK = "any key: back to Working out"
NEW, LOT, DAMP, READY = "new", "lot", "damp", "mordanted"
_KEYS = ("space", "enter", "q", "m", "delete", "r", "?")
_TYPING_KEYS = ("enter", "escape")


class AtWorkingOut:
    """What Working out is in the middle of."""

    def __init__(
        self, app: DyeApp, recipe: Path | Recipe, bounce_s: float, lots: tuple[FibreLot, ...] = ()
    ) -> None:
        self._app = app
        kitchen = app.workroom.kitchen()
        read = app.workroom.recipe(recipe) if isinstance(recipe, Path) else recipe
        self._state = WorkingState(
            read,
            kitchen,
            self._with_jars_as_they_stand(kitchen),
            app.workroom.remarks(recipe) if isinstance(recipe, Path) else {},
            self._learnt(read),
            lots,
        )
        self._cursor, self._note = "lot+", ""
        self._asking, self._about, self._typed = NEW, "", ""
        self._pattern = pn.PatternTalk()
        self._note = EXAMPLE
        if lots:
            self._asking, self._note = "", ""
            self._now_said(worked_out(self._state))
        self.screen: PlaceScreen[WorkingView] = PlaceScreen(WORKING_DRAWING, self._view(), bounce_s)

    def refresh(self) -> None:
        """Show it as it stands now."""
        self.screen.show(self._view())

    def say(self, note: str) -> None:
        """One line to the dyer, until the next act."""
        self._note = note
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
            case p.TypedSoFar(text=text):
                self._typed = text
            case p.TypedOut(text=text):
                self._typed_out(text)
            case p.LayAside() | p.SkipQuestion():
                self._stop_asking()
            case p.TakeAway():
                self._take_away()
            case p.OpenKitchen():
                self._app.open_kitchen(self._state.worked, self._kitchen_changed)
            case _:
                go(self._app, act, WORKING_OUT)
        self.refresh()

    def _choose(self, key: str) -> None:
        """What a line does when it is chosen."""
        kind, _, which = key.partition(":")
        match kind:
            case "lot+":
                self._ask(NEW, "", EXAMPLE)
            case "lot":
                self._ask(
                    LOT, which, "type it anew; nothing and enter: it is taken away", self._state.lot(which).words
                )
            case "dry":
                self._change(which, air_dry=True)
            case "damp":
                self._ask(DAMP, which, BOTH)
            case "mordanted":
                self._ask(READY, which, MORDANTED, self._state.lot(which).mordanted)
            case "agreed":
                self._now_said(replace(self._state, agreed=(*self._state.agreed, which)))
            case "recipe":
                self._app.leave()
            case "depth":
                self._state = next_depth(self._state)
            case "kitchen":
                self._app.open_kitchen(self._state.worked, self._kitchen_changed)
            case "pattern":
                self._pattern = pn.PatternTalk()
                self._ask_pattern()
            case "rehearse":
                self._rehearse()
            case "paper":
                self._print()
            case _:
                self._explain(key)

    def _explain(self, key: str) -> None:
        explained = why_of(self._state, key)
        if explained is not None:
            lines = explained.lines()
            self._app.show_page(lines[0], "\n".join(lines[1:]), BACK)

    def _ask(self, asking: str, about: str, note: str, text: str = "") -> None:
        """Ask for a text in the entry line, beginning from what stands there already."""
        self._asking, self._about, self._typed, self._note = asking, about, text, note
        self.screen.begin_entry(text)

    def _stop_asking(self) -> None:
        self._asking, self._typed = "", ""
        self.screen.clear_entry()

    def _typed_out(self, text: str) -> None:
        """The text counts; where it cannot, one sentence says why and the text stays."""
        about_pattern = self._asking in pn.EXAMPLES
        try:
            (self._pattern_typed if about_pattern else self._take)(text.strip())
        except UserError as trouble:
            self._note = str(trouble)
            return
        if not about_pattern:
            self._stop_asking()
            self._now_said(self._state)

    def _now_said(self, state: WorkingState) -> None:
        """Keep what was said, and put the mark where the next act is."""
        self._state, self._cursor = state, next_mark(state, self._cursor)

    def _take(self, text: str) -> None:
        self._note = ""
        if self._asking == READY:
            self._change(self._about, mordanted=text)
        elif not text and self._asking == LOT:
            self._state = without_lot(self._state, self._about)
        elif self._asking in (NEW, LOT, DAMP):
            self._take_lot(text)

    # What the pattern needs, and what can be printed or looked at before the day begins.

    def _ask_pattern(self) -> None:
        """Ask for the next thing that is wanted of pattern and yarn."""
        wanted = self._pattern.wanted
        lots = self._state.lots
        at_hand = f"{sum(one.mass_g for one in lots):g} g, " if wanted == pn.YARN and lots else ""
        self._ask(wanted, "", pn.EXAMPLES[wanted], at_hand)

    def _pattern_typed(self, text: str) -> None:
        need = self._pattern.take(text, self._state.kitchen)
        if need is None:
            self._ask_pattern()
            return
        self._stop_asking()
        page = pn.need_page(need, self._state.recipe, self._state.kitchen, self._page_width())
        self._app.show_page("What the pattern needs", page, BACK)

    def _page_width(self) -> int:
        return max(40, self.screen.size.width - 6)

    def _rehearse(self) -> None:
        """Run the whole day on a stepping clock, beside the screen, and show how it would go."""
        from dyesession.ui.working_papers import rehearsed

        now, width = self._app.now().at, self._page_width()
        state = self._state
        said = (state.recipe, state.lots, state.reckoned_in, state.depth, now, width)
        self._note = "Rehearsing …"
        self._app.in_background(lambda: rehearsed(*said), self._rehearsed)

    def _rehearsed(self, text: str) -> None:
        self.say("")
        self._app.show_page("The day, rehearsed", text, BACK)

    def _take_lot(self, text: str) -> None:
        lot = self._read(text)
        if self._asking == DAMP and lot.air_dry is not True:
            raise PlanError(f"That is one weight still: {BOTH}.")
        self._state = with_lot(self._state, lot, "" if self._asking == NEW else self._about)

    def _read(self, text: str) -> FibreLot:
        kinds = self._state.recipe.fibre
        return lot_from_text(text, kinds[0] if kinds else "wool")

    def _change(self, name: str, *, air_dry: bool | None = None, mordanted: str | None = None) -> None:
        changed = self._state.lot(name)
        changed = replace(changed, air_dry=air_dry) if air_dry is not None else changed
        changed = replace(changed, mordanted=mordanted) if mordanted is not None else changed
        self._now_said(with_lot(self._state, changed, name))

    def _take_away(self) -> None:
        kind, _, which = self._cursor.partition(":")
        if kind == "lot":
            self._state = without_lot(self._state, which)
        else:
            self._note = "Mark a lot of fibre first: that is all that can be taken away here."

    def _with_jars_as_they_stand(self, kitchen: Kitchen) -> Kitchen:
        """The kitchen less what days have used of its jars; what My kitchen writes down stays as it was written."""
        from dyesession.daybook.stock import stocked

        try:
            return stocked(kitchen, self._app.workroom.jars_now())
        except UserError:
            return kitchen  # a logs' folder that cannot be read is told on the Bench

    def _learnt(self, recipe: Recipe) -> Learnt:
        """The dyer's own numbers for this recipe's dyestuffs."""
        from dyesession.daybook.dyers_numbers import Learnt

        try:
            return self._app.workroom.learnt(tuple(one.substance for one in recipe.ingredients if one.role == "dyestuff"))
        except UserError:
            return Learnt()  # a logs' folder that cannot be read is told on the Bench

    def _kitchen_changed(self, kitchen: Kitchen) -> None:
        stocked = self._with_jars_as_they_stand(kitchen)
        self._state = worked_out(replace(self._state, kitchen=kitchen, stocked=stocked))

    # What comes next.

    def _do_next(self) -> None:
        state, key = self._state, next_key(self._state)
        if key in ("lot+", *(f"lot:{one.name}" for one in state.lots)):
            self._choose(key)
        elif key:
            self._cursor = key
            self._note = "Enter on the line that is true; space answers nothing here."
        elif state.plan is None:
            self._note = state.trouble
        elif self._app.day is not None and not self._app.day.is_over:
            under_way = self._app.day.session.snapshot.recipe
            self._note = (
                f"{under_way} is under way here: begin this day in a second window, or close that one first."
            )
        else:
            self._note = "Beginning …"
            self._app.begin_day(state.recipe, state.plan, state.stocked)

    def _print(self) -> None:
        """Write the weighing list into the workroom, as a page and as text."""
        state = self._state
        if state.plan is None:
            return
        from dyesession.ui.working_papers import write_list

        try:
            kitchen = state.reckoned_in
            self._note = write_list(self._app.workroom, state.plan, state.recipe, kitchen, self._app.now().at)
        except UserError as trouble:
            self._note = str(trouble)

    # The view.

    def _view(self) -> WorkingView:
        view = view_of(self._state, self._frame(), self._app.now().at)
        keys = keys_of(WORKING_DRAWING.rows(view, 80, DARK))
        cursor = self._cursor if self._cursor in keys else (keys[0] if keys else "")
        return replace(view, cursor=cursor, why=from_plan.why_view(why_of(self._state, cursor)))

    def _frame(self) -> Frame:
        typing = bool(self._asking)
        keys = place_key_words(_TYPING_KEYS if typing else _KEYS)
        return self._app.frame(
            "Working out", self._state.recipe.name, next_act(self._state), keys, self._entry(), self._note
        )

    def _entry(self) -> Entry | None:
        if not self._asking:
            return None
        wants = {NEW: "fibre", LOT: self._about, DAMP: f"{self._about}, both weights", READY: "mordanted"}
        return Entry(wants.get(self._asking, self._asking), self._typed, self._echo())

    def _echo(self) -> str:
        """What a half-typed lot was understood as."""
        if self._asking == READY or self._asking in pn.EXAMPLES or not self._typed.strip():
            return ""
        try:
            return f"= {from_plan.lot_line(self._read(self._typed), False).says}"
        except UserError:
            return ""
