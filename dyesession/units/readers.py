"""Readers of one plain amount each: weight, volume, length, percentage, and what is typed after a weight.

Knows no doses and no temperatures. Figures come from the typed text, sizes of units from `names`.
"""

from dataclasses import dataclass
from fractions import Fraction

from dyesession.units.amount import Amount, Quantity, amount, asking, demand
from dyesession.units.cursor import Ask, Cursor
from dyesession.units.kinds import Kind
from dyesession.units.names import Option
from dyesession.units.trouble import NeedsWeight, Wanted, quoted, sentence

WEIGHT = Wanted("a weight with its unit", "240 g")
VOLUME = Wanted("a volume with its unit", "7.2 l")
LENGTH = Wanted("a length with its unit", "3 m")
PERCENT = Wanted("a percentage", "12 %")
FIBRE = Wanted("a weight and what it is", "240 g wool")

_NOT_WEIGHED = (Kind.VOLUME, Kind.LENGTH, Kind.HOUSEHOLD)


@dataclass(frozen=True)
class FibreText:
    """A weight in grams and the words typed after it, which may be none."""

    mass: Quantity
    words: str


def weighable(cursor: Cursor, found: Amount | None) -> Amount:
    """Insist on a weight; a spoonful, a length or a volume is refused because it needs weighing."""
    if found is not None and found.kind in _NOT_WEIGHED:
        raise NeedsWeight(sentence(cursor.text, f"is {found.kind.value} and needs a weight", cursor.wanted))
    return demand(cursor, found, Kind.MASS)


@asking
def read_mass(text: str) -> Quantity:
    """Read a weight in grams: `240 g`, `2 lb 3 oz`, `1 1/2 oz`, `2,5 g`, `3 to 4 oz`, `165 g + 75 g`.

    Raises `NeedsWeight` for a spoonful or a volume, `Ambiguous` for a drachm, `1,000` and their like,
    `UnitError` for anything else that is not a weight from 0 to a thousand tonnes.
    """
    cursor = Cursor(text, WEIGHT)
    found = weighable(cursor, amount(cursor, (Kind.MASS,)))
    cursor.settle()
    return Quantity(found.low, found.high, text)


@asking
def read_volume(text: str) -> Quantity:
    """Read a volume in litres: `7.2 l`, `350 ml`, `10 gal (UK)`, `4 to 4.5 US gallons`.

    Raises `Ambiguous` for a bare gallon, quart, pint, gill, fluid ounce, spoon or cup; `UnitError` otherwise.
    """
    return _read(text, Kind.VOLUME, VOLUME)


@asking
def read_length(text: str) -> Quantity:
    """Read a length in metres: `30 cm`, `10 yards`, `5 ft 6 in`. Raises `UnitError`."""
    return _read(text, Kind.LENGTH, LENGTH)


def _read(text: str, kind: Kind, wanted: Wanted) -> Quantity:
    cursor = Cursor(text, wanted)
    found = demand(cursor, amount(cursor, (kind,)), kind)
    cursor.settle()
    return Quantity(found.low, found.high, text)


@asking
def read_percent(text: str) -> Quantity:
    """Read a percentage as parts of a hundred: `12 %`, `20 to 40 %`, and bare figures from 1 up.

    Raises `Ambiguous` for a bare figure below one (0.5 may be a half per cent, or a half), else `UnitError`.
    """
    cursor = Cursor(text, PERCENT)
    found = amount(cursor, (Kind.PERCENT,))
    if found is not None and found.kind is None and cursor.at_end:
        if 0 < found.low < 1:
            cursor.asks.append(_share_or_percent(text, found))
        found = Amount(found.low, found.high, Kind.PERCENT)
    found = demand(cursor, found, Kind.PERCENT)
    cursor.settle()
    return Quantity(found.low, found.high, text)


def _share_or_percent(text: str, found: Amount) -> Ask:
    """Ask whether `0.5` typed for a percentage is half a per cent or fifty."""
    hundred = " to ".join(_plain(100 * end) for end in dict.fromkeys((found.low, found.high)))
    options = (
        Option(f"{text.strip()} per cent", f"{text.strip()} %"),
        Option(f"{hundred} per cent", f"{hundred} %"),
    )
    return Ask(f"Is {quoted(text)} already in hundredths?", 0, len(text), options)


def _plain(value: Fraction) -> str:
    """Write a figure so that it reads back exactly."""
    whole, left = divmod(value, 1)
    return f"{whole} {left}" if left and whole else str(left or whole)


@asking
def read_fibre(text: str) -> FibreText:
    """Read `240 g wool` or `2 lb 3 oz grey wool yarn`: the weight in grams, then the words.

    Raises what `read_mass` raises, and `UnitError` when a second weight is joined on with a plus sign.
    """
    cursor = Cursor(text, FIBRE)
    found = weighable(cursor, amount(cursor, (Kind.MASS,)))
    words = cursor.rest().lstrip("-–—,;: ")
    words = words[3:].lstrip() if words.casefold().startswith("of ") else words
    if not words.isprintable():
        cursor.refuse("has an unprintable mark in it")
    if "+" in words:
        cursor.refuse("names more than one fibre; give each its own line")
    cursor.settle_questions()
    return FibreText(Quantity(found.low, found.high, text), words)


# Substances whose dose does harm when it is guessed: iron, copper and lye are weighed, never spooned.
# Common practice, no source for the rule; the names are those of the trade.
_NEVER_BY_SPOON = {
    "iron": ("iron", "ferrous", "ferric", "copperas", "green vitriol"),
    "copper": ("copper", "cupric", "blue vitriol", "bluestone", "blue stone", "verdigris"),
    "lye": ("lye", "caustic", "sodium hydroxide", "potassium hydroxide"),
}


def refuse_spoon_for(substance: str) -> None:
    """Refuse to take iron, copper or lye by the spoon, whatever name they go by; other substances pass.

    Raises `NeedsWeight`.
    """
    spoken = " ".join(substance.casefold().replace("-", " ").split())
    for what, names in _NEVER_BY_SPOON.items():
        if any(f" {name} " in f" {spoken} " for name in names):
            why = f"is {what} and is never measured by the spoon"
            raise NeedsWeight(sentence(substance, why, Wanted("a weight", "2.4 g")))
