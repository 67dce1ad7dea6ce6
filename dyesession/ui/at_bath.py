"""Looks after one kept bath: drawing from it, pooling, topping up, putting right, throwing away, its label.

Decides and writes nothing itself: the shelf's rooms say what may be and what to mind, the workroom writes.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from dyesession.plan.lots import lot_from_text
from dyesession.shelf import (
    KeptBath,
    Shelf,
    ShelfAct,
    ShelfRefused,
    discard,
    drawing,
    drawn,
    drawn_with,
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
    from dyesession.care import Reminder, Situation
    from dyesession.plan.model import Plan
    from dyesession.session.session import Session
    from dyesession.ui.app import DyeApp

PAD = ("l", "ml", "g", "alum", "pH", "stands", "wool", "silk", "skein")
FIBRE_EXAMPLE = "for example 75 g wool: what will be dyed in it"
DYE_POT = "dye pot"
BY_RECIPE, FREELY = "a day by a recipe", "a day without a recipe"


@dataclass(frozen=True)
class _Drawing:
    """So much is to be drawn (None: all of it), and where to once that is said; what is then to be minded."""

    volume_l: float | None
    into: str = ""
    minded: tuple[Reminder, ...] = ()
    fibre: str = ""


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
        if self._drawing is not None and self._drawing.into:
            return self._before_the_draw(self._drawing)
        if self._drawing is not None:
            return (Section(f"{self._much(self._drawing)}, into what?", (*self._targets(), _BACK)),)
        if self._pooling:
            others = tuple(Doable(f"into:{bath_key(one)}", one.label, one.recipe) for one in self._others())
            return (Section(f"pour {self._bath.label} into which bath?", (*others, _BACK)),)
        if self._correcting:
            return (Section("which entry is wrong?", (*self._entries(), _BACK)),)
        acts = _ACTS if self._others() else tuple(one for one in _ACTS if one.key != "pool")
        return (Section("with this bath", acts), Section(self._bath.label, about_bath(self._bath)))

    def _before_the_draw(self, asked: _Drawing) -> tuple[Section, ...]:
        minded = tuple(dict.fromkeys(one.text for one in asked.minded))
        does, why = self._confirms(asked)
        return (
            Section("first bear in mind", tuple(Told(one, strong=True) for one in minded)),
            Section(f"{self._much(asked)} of {self._bath.label}", (Doable("pour", does, why), _BACK)),
        )

    def _confirms(self, asked: _Drawing) -> tuple[str, str]:
        """What the line that draws says, by where it goes."""
        if asked.into == BY_RECIPE:
            return "Choose the recipe at the Bench", "it goes in when its dyeing begins, before the water"
        if asked.into == FREELY:
            return "Begin the day and pour it in", f"{asked.fibre}, without a recipe"
        return f"Pour it into the {asked.into}", "into the day that is open; written into its log"

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
            Doable("by-recipe", "A new day by a recipe", "choose it at the Bench; it is poured in as its dyeing begins"),
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
                self._into(which, self._in_the_open_day(which))
            case "by-recipe":
                self._into(BY_RECIPE, None)
            case "pour":
                self._pour()
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

    def _in_the_open_day(self, pot: str) -> Situation | None:
        """The pot as it stands, with the bath poured in."""
        running, asked = self._app.day, self._drawing
        if running is None or asked is None:
            return None
        from dyesession.session.situation import situation_of

        session = running.session
        return situation_of(session.snapshot.state, drawn(self._bath, pot, asked.volume_l), session.household)

    def _into(self, into: str, there: Situation | None, fibre: str = "") -> None:
        """Show what to bear in mind before anything is poured; what must never mix is refused here."""
        if self._drawing is not None:
            pot = "the pot" if into in (BY_RECIPE, FREELY) else into
            minded = drawing(self._bath, pot, there, self._household)
            self._drawing = replace(self._drawing, into=into, minded=minded, fibre=fibre)
            self.place.mark("pour")

    def _pour(self) -> None:
        """What was minded is poured, or waits for the recipe that is chosen now."""
        asked, running = self._drawing, self._app.day
        if asked is None:
            return
        if asked.into == BY_RECIPE:
            self._app.draw_for_the_day = self._drawing_for_a_day(asked)
            self._app.open_place("Bench")
            self._app.say(f"Choose the recipe: “{self._bath.label}” goes in as its dyeing begins, before the water.")
        elif asked.into == FREELY:
            self._begin_freely(asked)
        elif running is not None:
            running.session.do(drawn(self._bath, asked.into, asked.volume_l)).result()
            self._done(f"{self._much(asked)} of “{self._bath.label}” stands in the {asked.into} of the open day.")

    def _drawing_for_a_day(self, asked: _Drawing) -> Callable[[Session[Account]], str]:
        """Writes it into a day that begins: with the dyeing, or at once where no dyeing has a pot of its own."""

        def draw(session: Session[Account]) -> str:
            step = dye_step(session.snapshot.plan)
            if step is None:
                session.do(drawn(self._bath, DYE_POT, asked.volume_l)).result()
                return f"“{self._bath.label}” is poured into the {DYE_POT}."
            session.do(drawn_with(self._bath, step, asked.volume_l)).result()
            return f"“{self._bath.label}” goes in when {step} begins, before its water."

        return draw

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
            lot_from_text(text, "wool")  # refuses what is no fibre
            self._into(FREELY, None, text)

    def _begin_freely(self, asked: _Drawing) -> None:
        if self._app.day is not None and not self._app.day.is_over:
            raise ShelfRefused("A day is open here already: draw into that one, or close it first.")
        lot = lot_from_text(asked.fibre, "wool")
        session = self._app.workroom.begin_freely((lot,))
        session.do(drawn(self._bath, DYE_POT, asked.volume_l)).result()
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
          "discard": "discard", "do": "done", "pour": "pour", "back": "back"}  # fmt: skip


def dye_step(plan: Plan) -> str | None:
    """The step a recipe dyes in first; None where none has a pot."""
    return next((one.name for one in plan.steps if one.stage == "dye" and one.vessel), None)
