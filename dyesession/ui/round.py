"""The places that the Bench leads to, one line each: name, the question it answers, who opens it. Loads none of them.

A further place is a further line; one that tab leads round has its name in `place_keys.ROUND`, too.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from dyesession.ui.place_keys import BENCH, COLOUR, DAY_BOOK, JARS, SHELF

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp
    from dyesession.ui.places import Place


@dataclass(frozen=True)
class RoundPlace:
    """A place that the Bench leads to. `asks` is what one goes there to see."""

    name: str
    asks: str
    opened: Callable[[DyeApp, float], Place]


def _day_book(app: DyeApp, bounce_s: float) -> Place:
    from dyesession.ui.at_book import AtDayBook

    return AtDayBook(app, bounce_s)


def _shelf(app: DyeApp, bounce_s: float) -> Place:
    from dyesession.ui.at_shelf import open_shelf

    return open_shelf(app, bounce_s)


def _colour(app: DyeApp, bounce_s: float) -> Place:
    from dyesession.ui.at_colour import AtColour

    return AtColour(app, bounce_s)


def _jars(app: DyeApp, bounce_s: float) -> Place:
    from dyesession.ui.at_jars import open_jars

    return open_jars(app, bounce_s)


BEYOND_THE_BENCH: tuple[RoundPlace, ...] = (
    RoundPlace(DAY_BOOK, "what did I do? every day: find, look back, repeat, compare, aftercare", _day_book),
    RoundPlace(SHELF, "what can I still dye? kept baths and mordanted fibre: draw, pool, top up, label", _shelf),
    RoundPlace(COLOUR, "did I hit it? target and skein, what would mend it, more or less of it", _colour),
)

BESIDE_THE_ROUND: tuple[RoundPlace, ...] = (
    RoundPlace(JARS, "what is left in the jars? what the next colours take and cost, and what to buy", _jars),
)
FROM_THE_BENCH = (*BEYOND_THE_BENCH, *BESIDE_THE_ROUND)


def place_after(name: str) -> str:
    """Where tab leads from a place of the round; behind the last one is the Bench again."""
    names = [BENCH, *(one.name for one in BEYOND_THE_BENCH)]
    return names[(names.index(name) + 1) % len(names)] if name in names else BENCH


def place_named(name: str) -> RoundPlace | None:
    """A place that the Bench leads to, by its name; None for the Bench and for anything else."""
    return next((one for one in FROM_THE_BENCH if one.name == name), None)
