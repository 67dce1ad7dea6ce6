"""The nearest of a terminal's 256 or 16 colours to a Lab, and by how much it misses.

Knows nothing of screens or of how they are drawn. The 256: a cube of six steps and 24 greys, fixed by xterm's
own table (from memory); the 16 as xterm ships them, though every terminal may repaint those (so a swatch in
16 colours is no evidence, and none should be shown).
"""

from dataclasses import dataclass
from functools import cache

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.srgb import LIGHT_OF_BYTE, lab_of_linear

_CUBE_FROM, _GREYS_FROM, _COUNT = 16, 232, 256
_STEPS = (0, 95, 135, 175, 215, 255)
_FIRST_GREY, _GREY_STEP = 8, 10
_SIXTEEN = (
    (0, 0, 0), (205, 0, 0), (0, 205, 0), (205, 205, 0),
    (0, 0, 238), (205, 0, 205), (0, 205, 205), (229, 229, 229),
    (127, 127, 127), (255, 0, 0), (0, 255, 0), (255, 255, 0),
    (92, 92, 255), (255, 0, 255), (0, 255, 255), (255, 255, 255),
)  # fmt: skip

Bytes = tuple[int, int, int]


@dataclass(frozen=True)
class TerminalColour:
    """A palette entry: its number, its hex, and how far it is from what was asked for (CIEDE2000)."""

    number: int
    hex: str
    miss: float


def nearest_of_256(lab: Lab) -> TerminalColour:
    """The nearest of the 240 fixed colours (16 to 255) to a Lab for D65 and 2 degrees."""
    return _nearest(lab, range(_CUBE_FROM, _COUNT))


def nearest_of_16(lab: Lab) -> TerminalColour:
    """The nearest of the first 16 as xterm ships them."""
    return _nearest(lab, range(len(_SIXTEEN)))


def palette_bytes(number: int) -> Bytes:
    """Red, green and blue of a palette entry, 0 to 255."""
    if number < _CUBE_FROM:
        return _SIXTEEN[number]
    if number >= _GREYS_FROM:
        grey = _FIRST_GREY + _GREY_STEP * (number - _GREYS_FROM)
        return grey, grey, grey
    rest, blue = divmod(number - _CUBE_FROM, len(_STEPS))
    red, green = divmod(rest, len(_STEPS))
    return _STEPS[red], _STEPS[green], _STEPS[blue]


@cache
def _palette() -> tuple[Lab, ...]:
    return tuple(
        lab_of_linear((LIGHT_OF_BYTE[red], LIGHT_OF_BYTE[green], LIGHT_OF_BYTE[blue]))
        for red, green, blue in map(palette_bytes, range(_COUNT))
    )


def _nearest(lab: Lab, numbers: range) -> TerminalColour:
    labs = _palette()
    best = min(numbers, key=lambda number: de00(lab, labs[number]))
    red, green, blue = palette_bytes(best)
    return TerminalColour(best, f"#{red:02x}{green:02x}{blue:02x}", de00(lab, labs[best]))
