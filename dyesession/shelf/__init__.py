"""The bath shelf: every kept bath and every mordanted lot, folded from the logs. No second store, no screens.

Must not know where logs lie or what the time is: days and today's date are handed in. What is done to a kept
bath is decided in `acts` and written by `writing`.
"""

from dyesession.shelf.acts import (
    Adding,
    ShelfAct,
    ShelfRefused,
    adding_of,
    bringing,
    correction,
    discard,
    drawn,
    drawn_with,
    pool,
    read_again,
    top_up,
)
from dyesession.shelf.for_the_day import from_shelf
from dyesession.shelf.listed import shelf_as_json, shelf_lines
from dyesession.shelf.minding import drawing
from dyesession.shelf.model import KeptBath, Shelf
from dyesession.shelf.standing import bath_sentences, shelf_of, told_to
from dyesession.shelf.tags import stored_of
from dyesession.shelf.touching import discarding, pooling
from dyesession.shelf.writing import write_act

__all__ = [
    "Adding",
    "KeptBath",
    "Shelf",
    "ShelfAct",
    "ShelfRefused",
    "adding_of",
    "bath_sentences",
    "bringing",
    "correction",
    "discard",
    "discarding",
    "drawing",
    "drawn",
    "drawn_with",
    "from_shelf",
    "pool",
    "pooling",
    "read_again",
    "shelf_as_json",
    "shelf_lines",
    "shelf_of",
    "stored_of",
    "told_to",
    "top_up",
    "write_act",
]
