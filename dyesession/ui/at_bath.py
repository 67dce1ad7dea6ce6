"""Looks after one kept bath: drawing from it, pooling, topping up, putting right, throwing away, its label.

Decides and writes nothing itself: the shelf's rooms say what may be and what to mind, the workroom writes.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from dyesession.plan.lots import lot_from_text
from dyesession.shelf import (
    KeptBath,
    Shelf,
    ShelfAct,
    ShelfRefused,
    discard,
    drawn,
    pool,
    read_again,
    stored_of,
    top_up,
)
from dyesession.shelf.typed import LITRES_EXAMPLE, SEEN_EXAMPLE, TOP_UP_EXAMPLE, litres, seen, topping
from dyesession.ui.at_leaf import AtLeaf
from dyesession.ui.at_shelf import about_bath, bath_key
from dyesession.ui.frame_view import NextAct
from dyesession.ui.leaf_view import Doable, Item, Section, Told
from dyesession.ui.place_keys import BATH
from dyesession.units import show_mass, show_volume

if TYPE_CHECKING:
    from dyesession.account import Account
    from dyesession.plan.model import Plan
    from dyesession.session.session import Session
    from dyesession.ui.app import DyeApp

PAD = ("l", "ml", "g", "alum", "pH", "stands", "wool", "silk", "skein")
FIBRE_EXAMPLE = "for example 75 g wool: what will be dyed in it"
DYE_POT = "dye pot"


@dataclass(frozen=True)
class _Drawing:
    """So much is to be drawn; None: all of it."""

    volume_l: float | None


class OneBath:
    """A kept bath and what can be done with it. `changed` is told when something was written."""

    place: AtLeaf
    name = BATH

    def __init__(self, app: DyeApp, bath: KeptBath, shelf: Shelf, changed: Callable[[], None]) -> None:
        self._app, self._bath, self._shelf, self._changed = app, bath, shelf, changed
        self._household = app.workroom.kitchen().household
        self._act: ShelfAct | None = None
        self._drawing: _Drawing | None = None
        self._pooling = self._correcting = False

    # What stands there.

    @property
    def beside(self) -> str:
        """Its label, and the day that kept it."""
        return f"{self._bath.label}, kept {self._bath.kept_at:%Y-%m-%d}"

    def sections(self) -> tuple[Section, ...]:
        """What is asked just now, else all of the bath and its acts."""
        if self._act is not None:
            minded = tuple(dict.fromkeys(one.text for one in self._act.reminders))
            return (
                Section("first bear in mind", tuple(Told(one, strong=True) for one in minded)),
                Section(self._act.title, (Doable("do", "It is done: write it down", self._act.says), _BACK)),
            )
        if self._drawing is not None:
            return (Section(f"{self._much(self._drawing)}, into what?", (*self._targets(), _BACK)),)
        if self._pooling:
            others = tuple(Doable(f"into:{bath_key(one)}", one.label, one.recipe) for one in self._others())
            return (Section(f"pour {self._bath.label} into which bath?", (*others, _BACK)),)
        if self._correcting:
            return (Section("which entry is wrong?", (*self._entries(), _BACK)),)
        acts = _ACTS if self._others() else tuple(one for one in _ACTS if one.key != "pool")
        return (Section("with this bath", acts), Section(self._bath.label, about_bath(self._bath)))

    def _others(self) -> tuple[KeptBath, ...]:
        return tuple(one for one in self._shelf.baths if bath_key(one) != bath_key(self._bath))

    def _much(self, drawing: _Drawing) -> str:
        return "all of it" if drawing.volume_l is None else show_volume(drawing.volume_l)

    def _targets(self) -> tuple[Doable, ...]:
        running = self._app.day
        into: list[Doable] = []
        if running is not None and not running.is_over:
            shot = running.session.snapshot
            into = [
                Doable(f"pot:{one.name}", f"the {one.name}", f"{one.letter} of the day that is open: {shot.recipe}")
                for one in shot.state.vessels
            ]
        return (
            *into,
            Doable("by-recipe", "A new day by a recipe", "choose it at the Bench; it is poured in as the day begins"),
            Doable("freely", "A new day without a recipe", "asks for the fibre, then opens the Stove"),
        )

    def _entries(self) -> tuple[Doable, ...]:
        kept = Doable(f"entry:{self._bath.session}", f"how much was kept by {self._bath.session}", "")
        drew = tuple(
            Doable(f"entry:{one.session}", f"how much {one.session} drew",
                   "all of it" if one.volume_l is None else show_volume(one.volume_l))
            for one in self._bath.draws
        )  # fmt: skip
        return (kept, *drew)

    def about(self, key: str) -> tuple[Item, ...]:
        """All that is known of the bath; of the one it is to be poured into, where that is marked."""
        other = next((one for one in self._others() if f"into:{bath_key(one)}" == key), None)
        return about_bath(other or self._bath) if other is not None or self._act or self._drawing else ()

    def next_act(self, key: str) -> NextAct:
        """The marked act; drawing from it, where none is marked."""
        chosen = self._chosen(key)
        return NextAct(f"{chosen.does[0].lower()}{chosen.does[1:]}", "", _SHORT.get(chosen.key, ""))

    def _chosen(self, key: str) -> Doable:
        acts = [one for section in self.sections() for one in section.items if isinstance(one, Doable)]
        return next((one for one in acts if one.key == key), None) or acts[0]

    # What its lines do.

    def do_next(self, key: str) -> None:
        """Do what the next act says."""
        self.choose(self._chosen(key).key)

    def choose(self, key: str) -> None:
        """Do what a line does."""
        kind, _, which = key.partition(":")
        match kind:
            case "draw":
                drawn(self._bath, DYE_POT)
                self.place.ask("draw", "how much", f"for example {LITRES_EXAMPLE}")
            case "pot":
                self._into_open_day(which)
            case "by-recipe":
                self._into_recipe()
            case "freely":
                self.place.ask("freely", "fibre", FIBRE_EXAMPLE)
            case "pool":
                self._pooling = True
            case "into":
                other = next(one for one in self._others() if bath_key(one) == which)
                self._mind(pool(other, self._bath, household=self._household))
            case "top-up":
                self.place.ask("top-up", "what goes in", f"for example {TOP_UP_EXAMPLE}")
            case "seen":
                self.place.ask("seen", "it is now", f"for example {SEEN_EXAMPLE}")
            case "correct":
                self._correcting = True
            case "entry":
                self.place.ask(key, "litres", "what the entry should have said, for example 4 l")
            case "discard":
                self._mind(discard(self._bath, self._household))
            case "label":
                self._label()
            case "do":
                self._do()
            case "back":
                self._lay_aside()
            case _:
                pass

    def _lay_aside(self) -> None:
        self._act, self._drawing, self._pooling, self._correcting = None, None, False, False
        self.place.mark("")

    def _mind(self, act: ShelfAct) -> None:
        """Show what to bear in mind before anything is written."""
        self._lay_aside()
        self._act = act
        self.place.mark("do")

    def _do(self) -> None:
        act = self._act
        if act is not None:
            path = self._app.workroom.keep_shelf_act(act)
            self._done(f"{act.says} Written in {path.stem}.")

    def _done(self, said: str) -> None:
        """Back to the shelf, which has changed."""
        self._app.leave()
        self._changed()
        self._app.say(said)

    def _into_open_day(self, pot: str) -> None:
        running, drawing = self._app.day, self._drawing
        if running is None or drawing is None:
            return
        running.session.do(drawn(self._bath, pot, drawing.volume_l)).result()
        self._done(f"{self._much(drawing)} of “{self._bath.label}” stands in the {pot} of the open day.")

    def _into_recipe(self) -> None:
        drawing = self._drawing
        assert drawing is not None
        self._app.pour_as_it_begins = self._pouring(drawing)
        self._app.open_place("Bench")
        self._app.say(f"Choose the recipe: “{self._bath.label}” is poured into its dye pot as the day begins.")

    def _pouring(self, drawing: _Drawing) -> Callable[[Session[Account]], None]:
        def pour(session: Session[Account]) -> None:
            pot = _pot_of(session.snapshot.plan)
            session.do(drawn(self._bath, pot, drawing.volume_l)).result()

        return pour

    def _label(self) -> None:
        """Write the label, as a drawing to be printed and as a text, and say where."""
        from dyesession.care import label_lines, label_of, label_svg

        kitchen, workroom = self._app.workroom.kitchen(), self._app.workroom
        label = label_of(stored_of(self._bath, kitchen.poison_centre, kitchen.household))
        name = f"{self._bath.session}-{'-'.join(''.join(c if c.isalnum() else ' ' for c in self._bath.label).split())}"
        drawing = workroom.keep_paper(f"{name}.svg", label_svg(label))
        text = workroom.keep_paper(f"{name}.txt", "\n".join(label_lines(label)) + "\n")
        self.place.note(f"Written: {drawing.name} and {text.name} in {drawing.parent}.")

    def take(self, slot: str, text: str) -> None:
        """What was typed counts; where it cannot be, it stays."""
        kind, _, which = slot.partition(":")
        if kind == "draw":
            volume_l = litres(text) if text else None
            drawn(self._bath, DYE_POT, volume_l)  # refuses more than there is
            self._drawing = _Drawing(volume_l)
            self.place.mark("")
        elif kind == "top-up":
            water, adding = topping(text, self._bath)
            self._mind(top_up(self._bath, water, adding, self._household))
        elif kind == "seen":
            now = seen(text)
            self._mind(read_again(self._bath, now.volume_l, now.ph, now.place, now.label, self._household))
        elif kind == "entry":
            workroom = self._app.workroom
            said = workroom.correct_at_shelf(self._bath, workroom.log_of(which), litres(text), "")
            self._done(said)
        elif kind == "freely":
            self._begin_freely(text)

    def _begin_freely(self, text: str) -> None:
        drawing = self._drawing
        if drawing is None:
            return
        if self._app.day is not None and not self._app.day.is_over:
            raise ShelfRefused("A day is open here already: draw into that one, or close it first.")
        lot = lot_from_text(text, "wool")
        session = self._app.workroom.begin_freely((lot,))
        session.do(drawn(self._bath, DYE_POT, drawing.volume_l)).result()
        self._app.begun(session)

    def echo(self, slot: str, text: str) -> str:
        """What a half-typed text was understood as."""
        kind = slot.partition(":")[0]
        if kind in ("draw", "entry"):
            return f"= {show_volume(litres(text))}"
        if kind == "freely":
            lot = lot_from_text(text, "wool")
            return f"= {show_mass(lot.mass_g)} {lot.kind}"
        if kind == "top-up":
            water, adding = topping(text, self._bath)
            said = [show_volume(water)] if water else []
            return f"= {' and '.join([*said, *(f'{show_mass(one.mass_g)} {one.substance}' for one in adding)])}"
        return ""


_ACTS = (
    Doable("draw", "Draw from it", "into the open day, a new day by a recipe, or one without"),
    Doable("pool", "Pour it into another bath", "never-mix and iron are looked at first"),
    Doable("top-up", "Top it up", "water, what recharges it, or both"),
    Doable("seen", "Say what it is now", "its litres, its pH, where it stands, its label"),
    Doable("correct", "Put an entry right", "where a log says too much or too little of it"),
    Doable("label", "Write its label", "a drawing to print, and a text"),
    Doable("discard", "Throw it away safely", "told first what may go where"),
)
_BACK = Doable("back", "Not now", "back to the bath; nothing is written")
_SHORT = {"draw": "draw", "pool": "pool", "top-up": "top up", "seen": "say", "correct": "correct", "label": "label",
          "discard": "discard", "do": "done", "back": "back"}  # fmt: skip


def _pot_of(plan: Plan) -> str:
    """The pot a recipe dyes in; "dye pot" where it names none."""
    return next((one.vessel for one in plan.steps if one.stage == "dye" and one.vessel), DYE_POT)
