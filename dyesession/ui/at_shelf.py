"""Looks after the Bath shelf: every kept bath, every mordanted lot that waits, and opening one of them.

Reckons nothing: the shelf's rooms fold it from the logs, beside the screen.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from dyesession.ui.at_leaf import AtLeaf
from dyesession.ui.bench_view import Swatch
from dyesession.ui.frame_view import NextAct
from dyesession.ui.leaf_view import Item, Section, Shades, Told
from dyesession.ui.place_keys import SHELF

if TYPE_CHECKING:
    from dyesession.shelf import KeptBath, Shelf
    from dyesession.ui.app import DyeApp

EMPTY = (
    Told("Nothing stands on your shelf, and no mordanted fibre waits."),
    Told("Put a bath by at the end of a day, under a label: it comes here by itself, with what is left in it."),
)


class BathShelf:
    """Everything on the shelf."""

    place: AtLeaf
    name = SHELF

    def __init__(self, app: DyeApp, bounce_s: float) -> None:
        self._app, self._bounce_s = app, bounce_s
        self._shelf: Shelf | None = None

    def look(self) -> None:
        """Fold the shelf from the logs, beside the screen."""
        self._app.in_background(self._app.workroom.shelf, self._found)

    def _found(self, shelf: Shelf) -> None:
        self._shelf = shelf
        self.place.refresh()

    @property
    def beside(self) -> str:
        """How much stands there."""
        if self._shelf is None:
            return ""
        baths, waiting = len(self._shelf.baths), len(self._shelf.waiting)
        demo = f"; demo, as of {self._shelf.stood_on}" if self._shelf.stood_on else ""
        return f"{baths} bath{'' if baths == 1 else 's'}, {waiting} lot{'' if waiting == 1 else 's'} waiting{demo}"

    def sections(self) -> tuple[Section, ...]:
        """Dye baths, mordant baths, waiting fibre, and what two days disagree about."""
        shelf = self._shelf
        if shelf is None:
            return (Section("", (Told("looking through the logs …"),)),)
        from dyesession.shelf.say import demo_words, waiting_words

        dye, other = ([one for one in shelf.baths if bool(one.dye) is kind] for kind in (True, False))
        waiting = tuple(Told(f"{waiting_words(one)}{_demo(one.demo)}", f"lot:{n}") for n, one in enumerate(shelf.waiting))
        demo = (Told(f"{demo_words(shelf)}."),) if shelf.stood_on else ()
        found = (
            Section("does not add up", tuple(Told(f"{one.text}.", strong=True) for one in shelf.told)),
            Section("kept baths", tuple(item for one in dye for item in _bath_items(one))),
            Section("mordant baths and others", tuple(item for one in other for item in _bath_items(one))),
            Section("mordanted, waiting for a bath", waiting),
            Section("demo", demo),
        )
        if not (shelf.baths or shelf.waiting or shelf.told):
            return (Section("", EMPTY),)
        return tuple(one for one in found if one.items)

    def _bath(self, key: str) -> KeptBath | None:
        return next((one for one in self._shelf.baths if bath_key(one) == key), None) if self._shelf else None

    def about(self, key: str) -> tuple[Item, ...]:
        """All that is known of the marked bath."""
        bath = self._bath(key)
        return about_bath(bath) if bath is not None else ()

    def next_act(self, key: str) -> NextAct:
        """Open the marked bath."""
        if self._shelf is None:
            return NextAct("one moment: looking through the logs")
        bath = self._bath(key)
        if bath is not None:
            return NextAct(f"look at {bath.label}", "", "open")
        if self._shelf.waiting and key.startswith("lot:"):
            return NextAct("go to the Bench and choose a recipe for it", "", "Bench")
        return NextAct("go to the Bench and begin a day", "what it keeps stands here then", "Bench")

    def do_next(self, key: str) -> None:
        """Open the marked bath; with none, go to the Bench."""
        if self._shelf is None:
            self.place.note("One moment: still looking through the logs.")
        elif self._bath(key) is not None:
            self.choose(key)
        else:
            self._app.open_place("Bench")

    def choose(self, key: str) -> None:
        """Open a bath."""
        bath = self._bath(key)
        if bath is not None and self._shelf is not None:
            from dyesession.ui.at_bath import PAD, OneBath

            one = OneBath(self._app, bath, self._shelf, self.look)
            self._app.go_to(AtLeaf(self._app, one, self._bounce_s, pad=PAD))

    def take(self, slot: str, text: str) -> None:
        """Nothing is typed here."""

    def echo(self, slot: str, text: str) -> str:
        """Nothing is typed here."""
        return ""


def bath_key(bath: KeptBath) -> str:
    """What a bath is marked by."""
    return f"bath:{bath.session}:{bath.label}"


def _demo(demo: bool) -> str:
    return " (demo)" if demo else ""


def _bath_items(bath: KeptBath) -> tuple[Item, ...]:
    """A bath in two or three lines, marked together: label, what is in it, what it would do."""
    from dyesession.shelf.say import bath_sentences, would_do_words

    key, sentences = bath_key(bath), bath_sentences(bath)
    past = "look again now" if bath.past else f"look again by {bath.look_again}"
    where = f", {bath.place}" if bath.place else ""
    items: list[Item] = [
        Told(f"{bath.label}{_demo(bath.demo)}", key, strong=True, mark=f"{bath.kept_at:%Y-%m-%d}{where}; {past}"),
        Told(sentences[0], key),
    ]
    if bath.would_do is not None:
        items.append(Told(_capital(would_do_words(bath.would_do)), key))
    return tuple(items)


def _capital(text: str) -> str:
    return f"{text}." if text.startswith("pH") else f"{text[0].upper()}{text[1:]}."


def about_bath(bath: KeptBath) -> tuple[Item, ...]:
    """Every sentence about a bath, its cautions, the colour of what was dyed in it."""
    from dyesession.shelf.say import bath_sentences

    told = tuple(Told(_capital(one)) for one in bath_sentences(bath))
    cautions = tuple(Told(one, strong=True) for one in bath.cautions)
    done = bath.would_do
    shades = tuple(
        Swatch(colour, of)
        for colour, of in ((done.colour, "the first lot, dry"), (done.then, "this would be near"))
        if colour.startswith("#")
    ) if done is not None else ()
    return (*told, *cautions, *((Shades(shades),) if shades else ()))


def open_shelf(app: DyeApp, bounce_s: float) -> AtLeaf:
    """The shelf, ready to be gone to; it is folded from the logs beside the screen."""
    shelf = BathShelf(app, bounce_s)
    place = AtLeaf(app, shelf, bounce_s)
    shelf.look()
    return place
