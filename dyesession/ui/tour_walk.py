"""What the tour does and says, scene by scene: keys pressed on the real screens, then a rehearsed day at the Stove.

Knows no frames and no seconds of the looker-on: whoever shows it keeps the pace.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from dyesession.rehearsal.told import Teller
from dyesession.rehearsal.under_way import DayUnderWay, Did, Passes
from dyesession.ui.screens.place import PlaceScreen
from dyesession.units import show_duration

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp

FIBRE = "240 g wool"
_MOST_ANSWERS = 8
_LONG_WAIT_MIN = 120.0  # a wait this long is looked at from across the room; our own choice

BENCH = "This is the Bench, where a day begins. All of it is for show: a borrowed folder, a clock that runs ahead."
CHOSEN = "Space takes the marked recipe. Then all it needs to know: what does the washed, air-dry fibre weigh?"
WEIGHT = "240 g of grey-faced handspun, for mittens. A weight is typed as you say it: 8 1/2 oz will do as well."
DRY = "Damp or unwashed wool would throw every dose off, so that is asked: enter on the line that is true."
LIST = "What to weigh, down to what your own scales can and cannot tell. The arrows go through it."
WHY = "Enter on any figure says where it comes from, and what its ± is made of."
BEGINS = "Space begins the day. From here on every act is written down as it happens, so nothing is lost by closing."
STOVE = "The Stove: what is running and until when, how strong the bath is, and NEXT, the one right thing to do."
ACCOUNT = "b: the bath's account. Everything poured in, drawn out and carried off, each with its ±."
AWAY = "Nothing wants you for {long}. a: large clocks, to be read from across the room. Or close the lid: they go on."
ALARM = "A hot pot was left too long: that rings in every place until it is seen."
HOME = "Back on the Bench, the day stands among those dyed before: to look back on, to repeat, to compare."
BOOK = "Tab goes on: the Day book. Open a day, find its like, compare it with another, or repeat its colour."
SHELF = "The Bath shelf: the bath that was kept, what is left in it, and how much fibre it would still dye."
COLOUR = "Colour: type or photograph the skein beside the one you want: how far off it is, and what would mend it."
END = "That was the tour; nothing of it is kept. dyesession alone opens your own Bench. q leaves."


@dataclass(frozen=True)
class Say:
    """A caption; `stop`: it is meant to be read before anything else happens."""

    text: str
    stop: bool = True


@dataclass(frozen=True)
class Press:
    """A key pressed on the screen that is shown, by name, and the character it writes."""

    key: str
    character: str | None = None


@dataclass(frozen=True)
class Until:
    """Go on once this is so."""

    so: Callable[[], bool]


Scene = Say | Press | Until | Passes


def walk(app: DyeApp) -> Iterator[Scene]:
    """Every scene of the tour, from the Bench over a whole day and back."""
    yield from _to_working_out(app)
    yield from _working_out(app)
    yield from _day(app)
    yield Press("end")
    yield Say(HOME)
    for place, said in (("Day book", BOOK), ("Bath shelf", SHELF), ("Colour", COLOUR)):
        yield Press("tab")
        yield _at(app, place)
        yield Say(said)
    yield Press("tab")
    yield _at(app, "Bench")
    yield Say(END)


def _at(app: DyeApp, place: str) -> Until:
    return Until(lambda: app.screen.name == place)


def _to_working_out(app: DyeApp) -> Iterator[Scene]:
    yield Until(lambda: _next_act(app).startswith("work out"))
    yield Say(BENCH)
    yield Say(CHOSEN)
    yield Press("space")
    yield _at(app, "Working out")


def _working_out(app: DyeApp) -> Iterator[Scene]:
    yield Say(WEIGHT)
    for character in FIBRE:
        yield Press("space" if character == " " else character, character)
    yield Press("enter")
    for _ in range(_MOST_ANSWERS):
        yield Until(lambda: not _typing(app))
        if _cursor(app).startswith("dry:"):
            yield Say(DRY)
        elif not _cursor(app).startswith("agreed:"):
            break
        yield from _answer(app)
    yield Say(LIST)
    yield from (Press("down") for _ in range(3))
    yield Press("enter")
    yield Say(WHY)
    yield Press("escape")
    yield _at(app, "Working out")
    yield Say(BEGINS)
    yield Press("space")
    yield Until(lambda: app.day is not None and app.screen is app.day.screen)


def _answer(app: DyeApp) -> Iterator[Scene]:
    """Enter on the line that is marked, and wait until the mark has moved on."""
    marked = _cursor(app)
    yield Press("enter")
    yield Until(lambda: _cursor(app) != marked)


def _day(app: DyeApp) -> Iterator[Scene]:
    """The day at the Stove, done as a rehearsal does it; the first strain and the first long wait are looked at."""
    yield Say(STOVE)
    run, teller = DayUnderWay(app.session, app.workroom.kitchen()), Teller()
    looked_at = {"account": False, "away": False, "alarm": False}
    for move in run.moves():
        if not looked_at["alarm"] and any(one.severity == "alarm" for one in run.calls):
            looked_at["alarm"] = True
            yield Say(ALARM)
        if isinstance(move, Passes):
            long = move.seconds / 60 >= _LONG_WAIT_MIN and not looked_at["away"]
            looked_at["away"] |= long
            yield from _waiting(move) if long else (move,)
            continue
        told = teller.tell(move, app.session.snapshot.state)
        yield Say(told.what_for or told.what, stop=bool(told.what_for))
        if isinstance(move, Did) and move.fact.kind == "strained" and not looked_at["account"]:
            looked_at["account"] = True
            yield from _account(app)
    yield Press("q")
    yield _at(app, "Bench")


def _waiting(move: Passes) -> Iterator[Scene]:
    yield Press("a")
    yield Say(AWAY.format(long=show_duration(round(move.seconds / 60))))
    yield move
    yield Press("escape")


def _account(app: DyeApp) -> Iterator[Scene]:
    stove = app.screen
    yield Press("b")
    yield Until(lambda: app.screen is not stove)
    yield Say(ACCOUNT)
    yield Press("escape")
    yield Until(lambda: app.screen is stove)


def _next_act(app: DyeApp) -> str:
    screen = app.screen
    return screen.view.frame.next_act.act if isinstance(screen, PlaceScreen) else ""


def _cursor(app: DyeApp) -> str:
    screen = app.screen
    return str(screen.view.cursor) if isinstance(screen, PlaceScreen) else ""


def _typing(app: DyeApp) -> bool:
    screen = app.screen
    return isinstance(screen, PlaceScreen) and screen.view.frame.entry is not None
