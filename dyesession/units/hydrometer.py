"""Hydrometer readings as specific gravity. Knows no substances.

Twaddell: SG = 1 + 0.005 per degree (Beringer, Textbook of Assaying, where 25 Tw is 1.125). Baume for liquids
heavier than water is modulus / (modulus - degrees), and there is no single modulus: the scale must be named.
"""

from fractions import Fraction

from dyesession.units.amount import Quantity, asking
from dyesession.units.cursor import Ask, Cursor, Number
from dyesession.units.names import Option
from dyesession.units.trouble import Wanted, quoted

DENSITY = Wanted("a hydrometer reading", "40 Tw")
TWADDELL_STEP = Fraction(5, 1000)
# 144.3: Beringer. 145, at 60/60 F: cool.conservation-us.org, dt0255. 144 and 146.78: listed from a chemistry
# handbook at potters.org.
BAUME_MODULI = {
    "145": Fraction(145),
    "1443": Fraction("144.3"),
    "144": Fraction(144),
    "14678": Fraction("146.78"),
}
_BAUME_SHOWN = ("145", "144.3", "144", "146.78")
_TWADDELL = ("tw", "° tw", "twaddell", "° twaddell", "twaddle")
_BAUME = ("be", "° be", "bé", "° bé", "baume", "° baume", "baumé", "° baumé")


def twaddell(degrees: Fraction) -> Fraction:
    """Give the specific gravity of a Twaddell reading."""
    return 1 + TWADDELL_STEP * degrees


def baume(degrees: Fraction, modulus: Fraction) -> Fraction:
    """Give the specific gravity of a Baume reading, heavier than water, on the scale of that modulus.

    Raises `ValueError` at or above the modulus, where the scale ends.
    """
    if degrees >= modulus:
        raise ValueError(f"{degrees} Baume is beyond the end of the scale, {modulus}")
    return modulus / (modulus - degrees)


@asking
def read_specific_gravity(text: str) -> Quantity:
    """Read a specific gravity: `40 Tw`, `SG 1.2`, `1.2 SG`, or Baume with its scale named, `32 Be (145)`.

    Raises `Ambiguous` for Baume alone, `UnitError` for anything else.
    """
    cursor = Cursor(text, DENSITY)
    named = cursor.skip("sg")
    figure = cursor.number()
    if figure is None:
        cursor.refuse("has no reading in it")
    gravity = figure.value if named or cursor.skip("sg") else _on_a_scale(cursor, figure)
    cursor.settle()
    if not gravity:
        cursor.refuse("is no specific gravity")
    return Quantity(gravity, gravity, text)


def _on_a_scale(cursor: Cursor, figure: Number) -> Fraction:
    if cursor.skip(*_TWADDELL):
        return twaddell(figure.value)
    place = cursor.peek()
    if not cursor.skip(*_BAUME):
        cursor.refuse("names no scale")
    modulus = _modulus(cursor, place.start, cursor.peek(-1).end)
    if figure.value >= modulus:
        cursor.refuse("is beyond the end of that Baume scale")
    return baume(figure.value, modulus)


def _modulus(cursor: Cursor, start: int, end: int) -> Fraction:
    """Read the named scale in brackets, or note the question which one it is."""
    if cursor.sees("paren"):
        modulus = BAUME_MODULI.get(cursor.peek().key)
        if modulus is None:
            cursor.refuse("names a Baume scale this program does not know")
        cursor.at += 1
        return modulus
    name = cursor.text[start:end]
    options = tuple(Option(f"modulus {shown}", f"{name} ({shown})") for shown in _BAUME_SHOWN)
    cursor.asks.append(Ask(f"Which Baume scale is meant in {quoted(cursor.text)}?", start, end, options))
    return next(iter(BAUME_MODULI.values()))
