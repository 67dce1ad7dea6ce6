"""The rarer units, whose sizes pint knows: one bare name at a time, in exact fractions.

Only names on this list are ever handed over, because pint gives sizes to everyday words (a bag is 94 lb, a
point is printer's type), reads a bare gallon, pint or peck as the US one, and multiplies where a person adds.
"""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any, cast

from dyesession.units.kinds import Kind

_M, _V, _L, _T = Kind.MASS, Kind.VOLUME, Kind.LENGTH, Kind.TIME
_BASES = {_M: "gram", _V: "liter", _L: "meter", _T: "minute"}


@dataclass(frozen=True)
class Rare:
    """A rarer unit: what it measures, and the bare name pint knows it by."""

    kind: Kind
    pint_name: str


# (system, names apart by |, what it measures, pint's name); a name in two systems is asked about elsewhere.
_ROWS = (
    ("", "carat|carats", _M, "carat"),
    ("", "pennyweight|pennyweights|dwt", _M, "pennyweight"),
    ("", "scruple|scruples", _M, "scruple"),
    ("", "decagram|decagrams|dag|dkg", _M, "decagram"),
    ("", "hectogram|hectograms|hg", _M, "hectogram"),
    ("", "centigram|centigrams|cg", _M, "centigram"),
    ("imperial", "peck|pecks", _V, "imperial_peck"),
    ("US", "peck|pecks", _V, "peck"),
    ("imperial", "bushel|bushels", _V, "imperial_bushel"),
    ("US", "bushel|bushels", _V, "bushel"),
    ("imperial", "minim|minims", _V, "imperial_minim"),
    ("US", "minim|minims", _V, "minim"),
    ("", "hectolitre|hectolitres|hectoliter|hectoliters|hl", _V, "hectoliter"),
    ("", "cubic metre|cubic metres|cubic meter|cubic meters", _V, "kiloliter"),
    ("", "cubic inch|cubic inches|cu in", _V, "cubic_inch"),
    ("", "cubic foot|cubic feet|cu ft", _V, "cubic_foot"),
    ("", "mile|miles", _L, "mile"),
    ("", "decimetre|decimetres|decimeter|decimeters", _L, "decimeter"),
    ("", "fortnight|fortnights", _T, "fortnight"),
    ("", "month|months", _T, "month"),
)

LONG_TAIL = {
    (system, name): Rare(kind, pint_name)
    for system, names, kind, pint_name in _ROWS
    for name in names.split("|")
}


@cache
def _registry() -> Any:
    """Start pint, the first time a rare unit is named and never before."""
    import pint

    return pint.UnitRegistry(non_int_type=Fraction)


@cache
def long_tail_size(rare: Rare) -> Fraction:
    """Ask pint how many grams, litres, metres or minutes one of this unit is."""
    one = _registry().Quantity(Fraction(1), rare.pint_name)
    return Fraction(cast(Fraction, one.to(_BASES[rare.kind]).magnitude))
