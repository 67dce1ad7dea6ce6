"""Looks after My kitchen: which questions are open, what was answered, and that every answer is written down at once.

Knows no file: the workroom writes. What is asked comes from the plan at hand; every question may stay open.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from dyesession.errors import UserError
from dyesession.kitchen.answers import answered, known, taken_away
from dyesession.kitchen.model import Alarm, Kitchen
from dyesession.plan.explained import Worked
from dyesession.plan.mordanted import without_mordanted
from dyesession.plan.needed import KitchenQuestion, kitchen_questions
from dyesession.plan.working import work_out
from dyesession.ui import place_messages as p
from dyesession.ui.frame_view import Entry, Frame, NextAct
from dyesession.ui.going import go
from dyesession.ui.kitchen_rows import KITCHEN_DRAWING
from dyesession.ui.kitchen_view import Asked, KitchenView, Known
from dyesession.ui.place_keys import KITCHEN, place_key_words
from dyesession.ui.rows import keys_of
from dyesession.ui.screens.place import PlaceScreen
from dyesession.ui.theme import DARK

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp

WORDS = {
    "scale": "scale", "pot": "pot", "jug": "jug", "ring": "ring", "height": "height", "hardness": "tap water",
    "household": "who lives", "poison": "poison", "jar": "jar", "thermometer": "thermometer",
}  # fmt: skip
# What can be added without being asked for, and how it is typed.
MORE: tuple[tuple[str, str], ...] = (
    ("scale", "0.1 g letter scale up to 500 g"),
    ("pot", "12 l stainless"),
    ("jug", "1 l"),
    ("ring", "1800 W electric"),
    ("jar", "madder root: 350 g, 4.50"),
)
ONCE: tuple[tuple[str, str], ...] = (
    ("thermometer", "yes, or none"), ("height", "400 m"), ("household", "child 12 kg, cat 4 kg"), ("poison", "the number by the telephone"),
)  # fmt: skip
_KEYS = ("space", "enter", "-", "q", "r", "delete", "?")
_TYPING_KEYS = ("enter", "escape")


class AtKitchen:
    """What My kitchen is in the middle of."""

    def __init__(
        self, app: DyeApp, worked: Worked | None, changed: Callable[[Kitchen], None], bounce_s: float
    ) -> None:
        self._app, self._changed = app, changed
        self._kitchen: Kitchen = worked.kitchen if worked is not None else app.workroom.kitchen()
        self._worked = worked
        self._left_open: tuple[str, ...] = ()
        self._slot, self._typed, self._note = "", "", ""
        self._cursor = ""
        self.screen: PlaceScreen[KitchenView] = PlaceScreen(KITCHEN_DRAWING, self._view(), bounce_s)

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
                self._answer(self._slot, text)
            case p.LayAside():
                self._stop_asking()
            case p.SkipQuestion():
                self._leave_open()
            case p.TakeAway():
                self._take_away()
            case _:
                go(self._app, act, KITCHEN)
        self.refresh()

    def _choose(self, key: str) -> None:
        kind, _, rest = key.partition("|")
        self._cursor = key
        if kind == "ask":
            self._begin_typing(rest)
        elif kind == "choice":
            slot, _, word = rest.rpartition("|")
            self._answer(slot, self._joined(slot, word))
        elif kind == "known":
            self._begin_typing(rest, dict(known(self._kitchen)).get(rest, ""))
        elif kind == "more":
            self._begin_typing(rest)
        elif kind == "alarm":
            self._app.try_alarm()

    def _joined(self, slot: str, word: str) -> str:
        """A word chosen for who lives here is one more beside those that do already."""
        there = dict(known(self._kitchen)).get(slot, "") if slot == "household" else ""
        return f"{there}, {word}" if there else word

    def _begin_typing(self, slot: str, text: str = "") -> None:
        example = dict((*MORE, *ONCE)).get(slot.partition(":")[0], "")
        asked = next((one for one in self._questions() if one.slot == slot), None)
        self._slot, self._typed = slot, text
        self._note = f"for example {asked.example if asked is not None else example}"
        self.screen.begin_entry(text)

    def _stop_asking(self) -> None:
        self._slot, self._typed = "", ""
        self.screen.clear_entry()

    def _answer(self, slot: str, text: str) -> None:
        """An answer counts and is written down; where it cannot, one sentence says why and the text stays."""
        try:
            kitchen = answered(self._kitchen, slot, text)
            said = self._app.workroom.keep_kitchen(kitchen)
        except UserError as trouble:
            self._note = str(trouble)
            return
        self._stop_asking()
        self._now_is(kitchen, said)

    def _now_is(self, kitchen: Kitchen, said: str) -> None:
        self._kitchen, self._note = kitchen, said
        if self._worked is not None:
            self._worked = _again(self._worked, kitchen)
        self._changed(kitchen)
        questions = self._questions()
        self._cursor = f"ask|{questions[0].slot}" if questions else self._cursor

    def _leave_open(self) -> None:
        marked = self._marked_question()
        if marked is None:
            self._note = "Mark a question first: only those can be left open."
            return
        self._left_open = (*self._left_open, marked.slot)
        rest = self._questions()
        self._cursor = f"ask|{rest[0].slot}" if rest else ""

    def _marked_question(self) -> KitchenQuestion | None:
        return _question_at(self._view().cursor, self._questions())

    def _take_away(self) -> None:
        kind, _, slot = self._cursor.partition("|")
        if kind != "known":
            self._note = "Mark what is known first: only that can be taken away."
            return
        kitchen = taken_away(self._kitchen, slot)
        try:
            said = self._app.workroom.keep_kitchen(kitchen)
        except UserError as trouble:
            self._note = str(trouble)
        else:
            self._now_is(kitchen, said)

    def _do_next(self) -> None:
        questions = self._questions()
        if questions:
            marked = self._marked_question() or questions[0]
            self._cursor = f"ask|{marked.slot}"
            self._begin_typing(marked.slot)
        else:
            self._app.leave()

    # The view.

    def _questions(self) -> tuple[KitchenQuestion, ...]:
        """What the plan at hand would be better for, without what was left open."""
        asked = kitchen_questions(self._worked) if self._worked is not None else ()
        return tuple(one for one in asked if one.slot not in self._left_open)

    def _view(self) -> KitchenView:
        questions = self._questions()
        view = KitchenView(
            frame=self._frame(questions),
            about=self._about(questions),
            asked=tuple(_asked(one) for one in questions),
            known=tuple(Known(f"known|{slot}", _word(slot), says) for slot, says in known(self._kitchen)),
            more=self._more(),
            alarm=_alarm_words(self._kitchen.alarm),
            file=self._kitchen.path,
        )
        keys = keys_of(KITCHEN_DRAWING.rows(view, 80, DARK))
        return replace(view, cursor=self._cursor if self._cursor in keys else (keys[0] if keys else ""))

    def _about(self, questions: tuple[KitchenQuestion, ...]) -> str:
        if self._worked is None:
            return "What is known of your kitchen. Work a recipe out, and it will ask for what it needs."
        plan = self._worked.plan.recipe
        if not questions:
            return f"For {plan} nothing more is wanted."
        return f"For {plan}. Every question may stay open: the plan then says what it took instead."

    def _more(self) -> tuple[Known, ...]:
        there = {slot.partition(":")[0] for slot, _ in known(self._kitchen)}
        missing = [one for one in ONCE if one[0] not in there]
        return tuple(
            Known(f"more|{slot}", f"+ {_word(slot)}", example) for slot, example in (*MORE, *missing)
        )

    def _frame(self, questions: tuple[KitchenQuestion, ...]) -> Frame:
        entry = Entry(_word(self._slot), self._typed, self._echo()) if self._slot else None
        keys = place_key_words(_TYPING_KEYS if self._slot else _KEYS)
        act = NextAct("back to where you came from", "", "back")
        if questions:
            one = _question_at(self._cursor, questions) or questions[0]
            act = NextAct(f"say it, or leave it open with -: {one.asks}", "", _word(one.slot))
        beside = str(self._app.workroom.folder.name)
        return self._app.frame("My kitchen", beside, act, keys, entry, self._note)

    def _echo(self) -> str:
        """What a half-typed answer was understood as."""
        if not self._typed.strip():
            return ""
        try:
            kitchen = answered(self._kitchen, self._slot, self._typed)
        except UserError:
            return ""
        was = dict(known(self._kitchen))
        new = [says for slot, says in known(kitchen) if was.get(slot) != says]
        return f"= {new[0]}" if new else ""


def _question_at(key: str, questions: tuple[KitchenQuestion, ...]) -> KitchenQuestion | None:
    """The question a line belongs to, itself or one of its answers."""
    parts = key.split("|")
    slot = parts[1] if len(parts) > 1 and parts[0] in ("ask", "choice") else ""
    return next((one for one in questions if one.slot == slot), None)


def _again(worked: Worked, kitchen: Kitchen) -> Worked:
    """The plan worked out again in the kitchen as it is now; the old one where that is refused."""
    try:
        plan = work_out(worked.recipe, worked.plan.lots, kitchen, depth=worked.depth)
        plan = without_mordanted(plan, worked.recipe, kitchen, worked.depth)
    except UserError:
        return replace(worked, kitchen=kitchen)
    return replace(worked, plan=plan, kitchen=kitchen)


def _word(slot: str) -> str:
    kind = slot.partition(":")[0]
    return "pot" if kind == "material" else WORDS.get(kind, kind)


def _asked(one: KitchenQuestion) -> Asked:
    choices = tuple((f"choice|{one.slot}|{word}", word) for word in one.choices)
    return Asked(f"ask|{one.slot}", one.asks, one.why, one.example, choices)


def _alarm_words(alarm: Alarm) -> str:
    """How the dyer is called: bell, how often, quiet hours, a command of their own."""
    pieces = ["bell" if alarm.bell else "no bell", f"again every {alarm.repeat_s:g} s until it is seen"]
    pieces += [f"still from {alarm.quiet_from} to {alarm.quiet_to}"] if alarm.quiet_from else []
    pieces += [f"and starts {alarm.command[0]}"] if alarm.command else []
    return ", ".join(pieces)
