"""Looks after Working out: what the dyer has said so far, the plan that follows from it, what choosing a line does.

Works nothing out itself: recipe, lots, depth and kitchen go to the plan's rooms, and what they say is shown.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.errors import UserError
from dyesession.plan import PlanError, lot_from_text, work_out
from dyesession.plan.explained import DEPTH_WORDS, Explained, Worked
from dyesession.plan.lots import lot_questions
from dyesession.plan.mordanted import without_mordanted
from dyesession.plan.shopping import Shopping, shopping
from dyesession.ui import from_plan
from dyesession.ui import pattern_need as pn
from dyesession.ui import place_messages as p
from dyesession.ui.frame_view import Entry, Frame, NextAct
from dyesession.ui.going import go
from dyesession.ui.place_keys import WORKING_OUT, place_key_words
from dyesession.ui.rows import keys_of
from dyesession.ui.screens.place import PlaceScreen
from dyesession.ui.theme import DARK
from dyesession.ui.working_rows import WORKING_DRAWING
from dyesession.ui.working_view import Answer, ChoiceLine, LotLine, SaidLine, WorkingView

if TYPE_CHECKING:
    from dyesession.kitchen.model import Kitchen
    from dyesession.plan.doses import Depth
    from dyesession.plan.model import FibreLot, Plan
    from dyesession.recipe.model import Recipe
    from dyesession.ui.app import DyeApp

DEPTHS: tuple[Depth, ...] = ("low", "aim", "high")
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
        self._recipe: Recipe = app.workroom.recipe(recipe) if isinstance(recipe, Path) else recipe
        self._remarks = app.workroom.remarks(recipe) if isinstance(recipe, Path) else {}
        self._kitchen: Kitchen = app.workroom.kitchen()
        self._stocked: Kitchen = self._with_jars_as_they_stand()
        self._lots: tuple[FibreLot, ...] = ()
        self._depth: Depth = "aim"
        self._plan: Plan | None = None
        self._shopping: Shopping | None = None
        self._trouble = ""
        self._agreed: tuple[str, ...] = ()
        self._cursor, self._note = "lot+", ""
        self._asking, self._about, self._typed = NEW, "", ""
        self._pattern = pn.PatternTalk()
        self._note = EXAMPLE
        if lots:
            self._asking, self._note, self._lots = "", "", lots
            self._work_out()
            self._to_next()
        self.screen: PlaceScreen[WorkingView] = PlaceScreen(WORKING_DRAWING, self._view(), bounce_s)

    @property
    def worked(self) -> Worked | None:
        """The plan and all it is made of, once there is one."""
        if self._plan is None:
            return None
        return Worked(self._plan, self._recipe, self._kitchen, self._depth, self._remarks)

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
                self._app.open_kitchen(self.worked, self._kitchen_changed)
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
                    LOT, which, "type it anew; nothing and enter: it is taken away", self._lot(which).words
                )
            case "dry":
                self._change(which, air_dry=True)
            case "damp":
                self._ask(DAMP, which, BOTH)
            case "mordanted":
                self._ask(READY, which, MORDANTED, self._lot(which).mordanted)
            case "agreed":
                self._agreed = (*self._agreed, which)
                self._to_next()
            case "recipe":
                self._app.leave()
            case "depth":
                self._next_depth()
            case "kitchen":
                self._app.open_kitchen(self.worked, self._kitchen_changed)
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
        explained = self._why(key)
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
            self._to_next()

    def _take(self, text: str) -> None:
        self._note = ""
        if self._asking == READY:
            self._change(self._about, mordanted=text)
        elif not text and self._asking == LOT:
            self._lots = tuple(one for one in self._lots if one.name != self._about)
            self._work_out()
        elif self._asking in (NEW, LOT, DAMP):
            self._take_lot(text)

    # What the pattern needs, and what can be printed or looked at before the day begins.

    def _ask_pattern(self) -> None:
        """Ask for the next thing that is wanted of pattern and yarn."""
        wanted = self._pattern.wanted
        at_hand = f"{sum(one.mass_g for one in self._lots):g} g, " if wanted == pn.YARN and self._lots else ""
        self._ask(wanted, "", pn.EXAMPLES[wanted], at_hand)

    def _pattern_typed(self, text: str) -> None:
        need = self._pattern.take(text, self._kitchen)
        if need is None:
            self._ask_pattern()
            return
        self._stop_asking()
        page = pn.need_page(need, self._recipe, self._kitchen, self._page_width())
        self._app.show_page("What the pattern needs", page, BACK)

    def _page_width(self) -> int:
        return max(40, self.screen.size.width - 6)

    def _rehearse(self) -> None:
        """Run the whole day on a stepping clock, beside the screen, and show how it would go."""
        from dyesession.ui.working_papers import rehearsed

        now, width = self._app.now().at, self._page_width()
        said = (self._recipe, self._lots, self._stocked, self._depth, now, width)
        self._note = "Rehearsing …"
        self._app.in_background(lambda: rehearsed(*said), self._rehearsed)

    def _rehearsed(self, text: str) -> None:
        self.say("")
        self._app.show_page("The day, rehearsed", text, BACK)

    def _take_lot(self, text: str) -> None:
        lot = self._read(text)
        others = [one for one in self._lots if self._asking == NEW or one.name != self._about]
        if self._asking == DAMP and lot.air_dry is not True:
            raise PlanError(f"That is one weight still: {BOTH}.")
        if any(one.name == lot.name for one in others):
            lot = replace(lot, name=_fresh(lot.name, [one.name for one in others]))
        if self._asking == NEW:
            self._lots = (*self._lots, lot)
        else:
            self._lots = tuple(lot if one.name == self._about else one for one in self._lots)
        self._work_out()

    def _read(self, text: str) -> FibreLot:
        return lot_from_text(text, self._recipe.fibre[0] if self._recipe.fibre else "wool")

    def _lot(self, name: str) -> FibreLot:
        return next(one for one in self._lots if one.name == name)

    def _change(self, name: str, *, air_dry: bool | None = None, mordanted: str | None = None) -> None:
        changed = self._lot(name)
        changed = replace(changed, air_dry=air_dry) if air_dry is not None else changed
        changed = replace(changed, mordanted=mordanted) if mordanted is not None else changed
        self._lots = tuple(changed if one.name == name else one for one in self._lots)
        self._work_out()
        self._to_next()

    def _take_away(self) -> None:
        kind, _, which = self._cursor.partition(":")
        if kind == "lot":
            self._lots = tuple(one for one in self._lots if one.name != which)
            self._work_out()
        else:
            self._note = "Mark a lot of fibre first: that is all that can be taken away here."

    def _next_depth(self) -> None:
        self._depth = DEPTHS[(DEPTHS.index(self._depth) + 1) % len(DEPTHS)]
        self._work_out()

    def _with_jars_as_they_stand(self) -> Kitchen:
        """The kitchen less what days have used of its jars; what My kitchen writes down stays as it was written."""
        from dyesession.daybook.stock import stocked

        try:
            return stocked(self._kitchen, self._app.workroom.jars_now())
        except UserError:
            return self._kitchen  # a logs' folder that cannot be read is told on the Bench

    def _kitchen_changed(self, kitchen: Kitchen) -> None:
        self._kitchen = kitchen
        self._stocked = self._with_jars_as_they_stand()
        self._work_out()

    def _work_out(self) -> None:
        """Work the plan out from what was said; where it cannot be, keep the sentence."""
        self._plan, self._shopping, self._trouble = None, None, ""
        if not self._lots:
            return
        try:
            plan = work_out(self._recipe, self._lots, self._stocked, depth=self._depth)
            self._plan = without_mordanted(plan, self._recipe, self._stocked, self._depth)
        except UserError as trouble:
            self._trouble = str(trouble)
        else:
            self._shopping = shopping(self._plan, self._stocked.jars)

    # What comes next.

    def _open_questions(self) -> tuple[str, ...]:
        """The plan's own questions that nobody has answered, those about the lots left out."""
        plan = self._plan
        if plan is None:
            return ()
        of_lots = lot_questions(self._lots)
        return tuple(one for one in plan.questions if one not in of_lots and one not in self._agreed)

    def _next_key(self) -> str:
        """The line that the next act is about; "" where the day may begin."""
        if not self._lots:
            return "lot+"
        unsure = next((one for one in self._lots if one.air_dry is None), None)
        if unsure is not None:
            return f"dry:{unsure.name}"
        damp = next((one for one in self._lots if one.air_dry is False), None)
        if damp is not None:
            return f"lot:{damp.name}"
        questions = self._open_questions()
        return f"agreed:{questions[0]}" if questions else ""

    def _to_next(self) -> None:
        """Put the mark where the next act is; at the first dose where the day may begin."""
        doses = self._plan.doses if self._plan is not None else ()
        self._cursor = self._next_key() or (f"dose:{doses[0].ingredient}" if doses else self._cursor)

    def _do_next(self) -> None:
        key = self._next_key()
        if key in ("lot+", *(f"lot:{one.name}" for one in self._lots)):
            self._choose(key)
        elif key:
            self._cursor = key
            self._note = "Enter on the line that is true; space answers nothing here."
        elif self._plan is None:
            self._note = self._trouble
        elif self._app.day is not None and not self._app.day.is_over:
            under_way = self._app.day.session.snapshot.recipe
            self._note = (
                f"{under_way} is under way here: begin this day in a second window, or close that one first."
            )
        else:
            self._note = "Beginning …"
            self._app.begin_day(self._recipe, self._plan, self._stocked)

    def _print(self) -> None:
        """Write the weighing list into the workroom, as a page and as text."""
        if self._plan is None:
            return
        from dyesession.ui.working_papers import write_list

        try:
            self._note = write_list(self._app.workroom, self._plan, self._recipe, self._stocked, self._app.now().at)
        except UserError as trouble:
            self._note = str(trouble)

    # The view.

    def _why(self, key: str) -> Explained | None:
        chosen = from_plan.why_chosen(self._recipe, self._kitchen, key)
        worked = self.worked
        if chosen is not None or worked is None or self._shopping is None:
            return chosen
        return from_plan.why(replace(worked, kitchen=self._stocked), self._shopping, key)

    def _view(self) -> WorkingView:
        plan = self._plan
        view = WorkingView(
            frame=self._app.frame("", "", NextAct(""), (), None, ""),
            lots=self._lot_lines(),
            choices=self._choices(),
            trouble=self._trouble,
            questions=self._question_lines(),
        )
        if plan is not None and self._shopping is not None:
            view = replace(
                view,
                doses=tuple(from_plan.dose_line(one) for one in plan.doses),
                baths=tuple(from_plan.bath_line(one) for one in plan.baths),
                day=from_plan.day_bars(plan, self._app.now().at),
                mind=from_plan.mind_lines(plan),
                care=from_plan.care_lines(plan, self._kitchen.poison_centre),
                jars=from_plan.jar_lines(self._shopping),
                ahead=SaidLine("rehearse", "Rehearse the day: how it would go, on a stepping clock."),
                paper=SaidLine("paper", "Write the weighing list, to be printed: a page and a text."),
            )
        keys = keys_of(WORKING_DRAWING.rows(view, 80, DARK))
        cursor = self._cursor if self._cursor in keys else (keys[0] if keys else "")
        return replace(view, frame=self._frame(), cursor=cursor, why=from_plan.why_view(self._why(cursor)))

    def _frame(self) -> Frame:
        typing = bool(self._asking)
        keys = place_key_words(_TYPING_KEYS if typing else _KEYS)
        return self._app.frame(
            "Working out", self._recipe.name, self._next(), keys, self._entry(), self._note
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

    def _next(self) -> NextAct:
        key = self._next_key()
        kind, _, which = key.partition(":")
        if kind == "lot+":
            return NextAct("type what your fibre weighs", "washed and air-dry", "weight")
        if kind == "dry":
            return NextAct(
                f"say whether the {which} is washed and air-dry", "enter on the line that is true", "dry?"
            )
        if kind == "lot":
            return NextAct(f"the {which} is damp: type both its weights", "", "weight")
        if kind == "agreed":
            return NextAct(
                "answer what is asked before the day begins", "enter on the line that is true", "answer"
            )
        if self._plan is None:
            return NextAct("this cannot be worked out: read why", "", "")
        return NextAct(f"begin this day: {self._recipe.name}", "opens the Stove and its log", "begin")

    def _lot_lines(self) -> tuple[LotLine, ...]:
        mordants = any(one.stage == "mordant" for one in self._recipe.steps)
        lines = [from_plan.lot_line(one, mordants) for one in self._lots]
        more = "another lot" if lines else "what your fibre weighs, washed and air-dry"
        return (*lines, LotLine("lot+", "+", more))

    def _choices(self) -> tuple[ChoiceLine, ...]:
        depth = ChoiceLine(
            "depth", "depth", DEPTH_WORDS[self._depth], "paler, usual, deeper: enter changes it"
        )
        return (
            ChoiceLine("recipe", "recipe", self._recipe.name, "enter: choose another"),
            *((depth,) if self._has_range() else ()),
            ChoiceLine("kitchen", "kitchen", from_plan.kitchen_words(self._kitchen), "m: say more of it"),
            ChoiceLine("pattern", "pattern", "What does the pattern need?", "is the yarn enough"),
        )

    def _has_range(self) -> bool:
        """Whether the colour of this recipe can be made paler or deeper."""
        from dyesession.plan.doses import FOLLOWS_DEPTH

        doses = [one for one in self._recipe.ingredients if one.role in FOLLOWS_DEPTH]
        return any(one.least or one.most or (one.dose and one.dose.low != one.dose.high) for one in doses)

    def _question_lines(self) -> tuple[LotLine, ...]:
        return tuple(
            LotLine("", "", "", one, (Answer(f"agreed:{one}", "yes: I have read it, go on"),))
            for one in self._open_questions()
        )


def _fresh(name: str, taken: list[str]) -> str:
    """A name no other lot has."""
    return next(
        one for one in (f"{name} {number}" for number in range(2, len(taken) + 3)) if one not in taken
    )
