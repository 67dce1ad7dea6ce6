"""Figures with a minus in front, for who asks about a figure below nought instead of refusing it.

Knows nothing of what the figure measures; the plain readers take none below nought.
"""

import re

from dyesession.units.amount import Quantity
from dyesession.units.heat import HeatWord, celsius, fahrenheit, read_temperature

_SIGNED = re.compile(r"\s*[-\u2010-\u2015\u2212]\s*(?=[\d.¼½¾⅓⅔⅛⅜⅝⅞])")


def sign_of(text: str) -> tuple[int, str]:
    """-1 and the text without its minus sign where a figure follows it at the start, else 1 and the text."""
    found = _SIGNED.match(text)
    return (1, text) if found is None else (-1, text[found.end() :])


def read_signed_temperature(text: str) -> Quantity | HeatWord:
    """As `read_temperature`, and degC below nought from `-3`, `-3 degC`, `-4 F`. Raises as it does."""
    sign, bare = sign_of(text)
    read = read_temperature(bare)
    if sign > 0 or isinstance(read, HeatWord):
        return read
    below = [celsius(-fahrenheit(one)) if "f" in bare.casefold() else -one for one in (read.low, read.high)]
    return Quantity(min(below), max(below), text)
