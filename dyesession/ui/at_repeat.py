"""Looks after "Repeat this colour": for which fibre, how deep, what recipe that makes, and what to do with it.

Works nothing out itself: the day book makes the recipe, the plan its doses. Knows no file: the workroom writes.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from dyesession.daybook.called_out import Change
from dyesession.daybook.repeating import LEAST_DEPTH, MOST_DEPTH, NoSuchDepth, Repeated, repeat
from dyesession.errors import UserError
from dyesession.plan.lots import lot_from_text
from dyesession.plan.model import FibreLot
from dyesession.recipe import recipe_from_document
from dyesession.session.opening import LoggedDay
from dyesession.ui.at_leaf import AtLeaf
from dyesession.ui.frame_view import NextAct
from dyesession.ui.leaf_view import Doable, Item, Section, Told
from dyesession.ui.place_keys import REPEAT
from dyesession.units import show_mass

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp

FIBRE_EXAMPLE = "for example 90 g silk, or 240 g wool; nothing and enter: the fibre of that day"
DEPTH_EXAMPLE = "of that day's depth: 1 as it was, 0.5 for half of it, 2 for twice"
_WORDS = {1.0: "as it was", 0.5: "half of it", 2.0: "twice it"}


class Repeating:
    """A day's colour for other fibre."""

    place: AtLeaf
    name = REPEAT
    pad = ("g", "kg", "oz", "wool", "silk", "cotton", "skein")

    def __init__(self, app: DyeApp, day: LoggedDay, bounce_s: float) -> None:
        self._app, self._day = app, day
        self._kitchen = app.workroom.kitchen()
        self._learned = app.workroom.learnt(tuple(one.substance for one in day.plan.doses if one.role == "dyestuff"))
        self._lots: tuple[FibreLot, ...] = ()
        self._depth = 1.0
        self._found: Repeated | None = None
        self._trouble, self._written = "", ""

    def begin(self) -> None:
        """Ask for the fibre first; the depth may stay as it was."""
        self.place.ask("fibre", "fibre", FIBRE_EXAMPLE)
        self.place.refresh()

    # What stands there.

    @property
    def beside(self) -> str:
        """Of which day."""
        return f"{self._day.recipe}, {self._day.opened.at:%Y-%m-%d}"

    def sections(self) -> tuple[Section, ...]:
        """Fibre and depth; then the doses, what is other, and what can be done with it."""
        asked = (
            Doable("fibre", f"fibre: {self._fibre()}", "enter: type it anew"),
            Doable("depth", f"depth: {self._depth:g}, {_WORDS.get(self._depth, 'of that day')}", "enter: type another"),
        )
        found = self._found
        if found is None:
            says = (Told(self._trouble, strong=True),) if self._trouble else ()
            return (Section("for what?", (*asked, *says)),)
        return (
            Section("for what?", asked),
            Section("with it", tuple(self._acts())),
            Section("what to expect", (Told(found.expect),)),
            Section("to weigh", tuple(Told(one.weigh.say, head=one.ingredient) for one in found.plan.doses)),
            Section("other this time", tuple(_change(one) for one in found.changes) or (Told("nothing"),)),
            Section("it goes back to", tuple(Told(one) for one in found.lineage)),
        )

    def _acts(self) -> list[Doable]:
        where = f"written: {self._written}" if self._written else "a recipe of your own, to be found at the Bench"
        return [
            Doable("work-out", "Work it out now", "water, pots, times, cautions; then begin"),
            Doable("write", "Write this recipe down", where),
        ]

    def _fibre(self) -> str:
        if self._lots:
            return ", ".join(f"{show_mass(one.mass_g)} {one.name}" for one in self._lots)
        return "that day's own" if self._found is not None else "not said yet"

    def about(self, key: str) -> tuple[Item, ...]:
        """What the marked line is about."""
        return ()

    def next_act(self, key: str) -> NextAct:
        """Say the fibre; then work it out."""
        if self._found is None:
            return NextAct("type what your fibre weighs", "", "fibre")
        if key == "write":
            return NextAct("write this recipe down", "", "write")
        return NextAct("work it out now", f"{len(self._found.plan.doses)} doses", "work out")

    # What its lines do.

    def do_next(self, key: str) -> None:
        """Do what the next act says."""
        self.choose("fibre" if self._found is None else "write" if key == "write" else "work-out")

    def choose(self, key: str) -> None:
        """Do what a line does."""
        if key == "fibre":
            self.place.ask("fibre", "fibre", FIBRE_EXAMPLE)
        elif key == "depth":
            self.place.ask("depth", "depth", DEPTH_EXAMPLE)
        elif key == "write" and self._found is not None:
            path = self._app.workroom.keep_recipe(self._found.document)
            self._written = path.name
            self.place.note(f"Written: {path.name} in {path.parent}. The Bench offers it among your own.")
        elif key == "work-out" and self._found is not None:
            recipe = recipe_from_document(self._found.document, f"the repeat of {self._day.name}")
            self._app.work_out_recipe(recipe, self._found.plan.lots)

    def take(self, slot: str, text: str) -> None:
        """A fibre or a depth counts; where nothing can be made of them, the text stays."""
        before = (self._lots, self._depth)
        if slot == "fibre":
            self._lots = (self._lot(text),) if text else ()
        else:
            self._depth = _depth(text)
        try:
            self._found = repeat(self._day, self._lots, self._kitchen, depth=self._depth, learned=self._learned)
        except UserError:
            self._lots, self._depth = before
            raise
        self._written, self._trouble = "", ""
        self.place.mark("work-out")

    def _lot(self, text: str) -> FibreLot:
        return lot_from_text(text, self._day.plan.lots[0].kind if self._day.plan.lots else "wool")

    def echo(self, slot: str, text: str) -> str:
        """What a half-typed fibre or depth was understood as."""
        if slot == "depth":
            return f"= {_depth(text):g} of that day's depth"
        lot = self._lot(text)
        return f"= {show_mass(lot.mass_g)} {lot.kind}"


def _depth(text: str) -> float:
    bare = text.removeprefix("x").strip().replace(",", ".")
    try:
        value = float(bare.rstrip("%")) / (100.0 if bare.endswith("%") else 1.0)
    except ValueError:
        value = 0.0
    if not LEAST_DEPTH <= value <= MOST_DEPTH:
        raise NoSuchDepth(
            f"“{text}” is no depth that can be told: expected {LEAST_DEPTH:g} to {MOST_DEPTH:g} of that day's, for"
            " example 0.5 for half of it."
        )
    return value


def _change(one: Change) -> Told:
    effect = f": {one.effect}" if one.effect else ""
    return Told(f"{one.text}{effect}.", head=one.about)
