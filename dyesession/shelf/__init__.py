"""The bath shelf: every kept bath and every mordanted lot, folded from the logs. No second store, no screens.

Must not know where logs lie or what the time is: days and today's date are handed in.
"""

from dyesession.shelf.listed import shelf_as_json, shelf_lines
from dyesession.shelf.model import KeptBath, Shelf
from dyesession.shelf.standing import bath_sentences, shelf_of, told_to
from dyesession.shelf.tags import stored_of
from dyesession.shelf.touching import discarding, pooling

__all__ = [
    "KeptBath",
    "Shelf",
    "bath_sentences",
    "discarding",
    "pooling",
    "shelf_as_json",
    "shelf_lines",
    "shelf_of",
    "stored_of",
    "told_to",
]
