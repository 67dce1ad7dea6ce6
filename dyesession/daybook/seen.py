"""What one day says of the dyer's own numbers: a value, how sure, and of what. Frozen data; knows no estimates.

A number is about a dyestuff on a kind of fibre, a dyestuff, a fibre, a pot, the stove, or a jar.
"""

from dataclasses import dataclass
from typing import Literal

from dyesession.dyeing.fibres import Family
from dyesession.dyeing.limits import OutOfRange
from dyesession.substances import find

What = Literal[
    "exhaustion", "uptake rate", "kept share", "stiffening", "liquor held", "cooling", "stove power", "strength",
    "depth exponent",
]  # fmt: skip


@dataclass(frozen=True, order=True)
class About:
    """Which number. `of` is a dyestuff's key, a family of fibre or a pot; `on` the fibre, or the jar."""

    what: What
    of: str = ""
    on: str = ""


@dataclass(frozen=True)
class Seen:
    """One day's word: the value, the standard deviation of its reading on the scale of its guess, the day."""

    about: About
    value: float
    error: float
    day: str


@dataclass(frozen=True)
class Uptake:
    """A used bath: log of the share of its colour that was left, that log's error, litres a kilogram, minutes at heat."""

    day: str
    dyestuff: str
    family: Family
    left: float
    error: float
    liquor_ratio: float
    minutes: float


@dataclass(frozen=True)
class FurtherStrain:
    """A further strain's colour over the first's, as a log with its error, after so many extractions."""

    day: str
    dyestuff: str
    over_first: float
    error: float
    pulls: int


def key_of(substance: str) -> str:
    """One name for a substance under all its synonyms."""
    found = find(substance)
    return found.key if found is not None else substance.casefold().strip()


def family_of(kind: str) -> Family | None:
    """The family a fibre counts with, None for one without figures."""
    from dyesession.dyeing.fibres import fibre_family

    try:
        return fibre_family(kind)
    except OutOfRange:
        return None
