"""The reader of the water for a bath: a volume, litres for each kilogram, or a liquor ratio.

Knows no pots and no fibre. In a ratio such as 1:30 a litre of water counts as a kilogram, as the trade does.
"""

from dataclasses import dataclass
from fractions import Fraction

from dyesession.units.amount import amount, asking, demand, range_follows
from dyesession.units.cursor import Cursor
from dyesession.units.dose import one_or_more, per, share_base
from dyesession.units.kinds import Kind
from dyesession.units.trouble import Wanted

WATER = Wanted("an amount of water", "30 l/kg")
GRAMS_PER_KG = 1000


@dataclass(frozen=True)
class WaterPerKg:
    """Litres for each kilogram of fibre, or of the ingredient named in `of`."""

    low: Fraction
    high: Fraction
    of: str | None
    text: str


@dataclass(frozen=True)
class WaterVolume:
    """Litres, whatever the fibre weighs."""

    low: Fraction
    high: Fraction
    text: str


WaterText = WaterPerKg | WaterVolume


@asking
def read_water(text: str) -> WaterText:
    """Read the water of a bath: `30 l/kg`, `20 l/kg of madder`, `1:30`, `7.2 l`, `10 gal (UK) per 2 1/2 lb`.

    Raises `Ambiguous` for a bare gallon and the like, `UnitError` for anything else, such as `to cover`.
    """
    cursor = Cursor(text, WATER)
    water = _ratio(cursor) if _is_ratio(cursor) else _volume(cursor)
    cursor.settle()
    return water


def _is_ratio(cursor: Cursor) -> bool:
    return any(token.sort == "colon" for token in cursor.tokens)


def _ratio(cursor: Cursor) -> WaterPerKg:
    """Read `1:30`, `30:1`, `1:20-30` or `1:20 to 1:30`."""
    first = _one_to(cursor)
    second = first
    if range_follows(cursor):
        cursor.at += 1
        second = _one_to(cursor) if cursor.peek(1).sort == "colon" else _figure(cursor)
    if first > second:
        cursor.refuse("runs downwards; write the smaller ratio first")
    return WaterPerKg(first, second, share_base(cursor), cursor.text)


def _one_to(cursor: Cursor) -> Fraction:
    fibre = _figure(cursor)
    if not cursor.sees("colon"):
        cursor.refuse("is not a ratio")
    cursor.at += 1
    water = _figure(cursor)
    if 1 not in (fibre, water):
        cursor.refuse("is a ratio with no one in it")
    return max(fibre, water)


def _figure(cursor: Cursor) -> Fraction:
    figure = cursor.number()
    if figure is None or not figure.value:
        cursor.refuse("is a ratio with a figure missing")
    return figure.value


def _volume(cursor: Cursor) -> WaterText:
    found = demand(cursor, amount(cursor, (Kind.VOLUME,)), Kind.VOLUME)
    if not per(cursor):
        return WaterVolume(found.low, found.high, cursor.text)
    base = demand(cursor, one_or_more(cursor), Kind.MASS)
    low, high = GRAMS_PER_KG * found.low / base.high, GRAMS_PER_KG * found.high / base.low
    return WaterPerKg(low, high, share_base(cursor), cursor.text)
