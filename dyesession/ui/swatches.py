"""Dyed colours on a screen: a swatch in a field of mid grey, alone or two touching, its figure always beside it.

Where the terminal cannot show a dyed colour there is no swatch: a wrong one is worse than none.
"""

from dyesession.ui.ink import EMPTY, Ink, Line, Span, fill, say
from dyesession.ui.theme import Palette

_GREY = Ink(ground="grey_field")


def is_hex(text: str) -> bool:
    """Whether a text is `#rrggbb`."""
    return len(text) == 7 and text.startswith("#") and all(one in "0123456789abcdefABCDEF" for one in text[1:])


def swatch(colour: str, palette: Palette, cells: int = 6) -> Line:
    """So many cells of a colour with a cell of mid grey at either side; as many blanks for no colour."""
    if not palette.dyed:
        return EMPTY
    if not is_hex(colour):
        return (say(" " * (cells + 2)),)
    grey: Span = (" ", _GREY)
    return (grey, (" " * cells, Ink(ground=colour)), grey)


def field(colours: tuple[str, ...], width: int, rows: int, palette: Palette) -> list[Line]:
    """Colours touching one another in one field of mid grey, so many cells wide and rows high."""
    shown = tuple(one for one in colours if is_hex(one))
    if not palette.dyed or not shown or rows < 1:
        return []
    edge = 1 if rows >= _EDGED_FROM else 0
    across = max(1, (width - 2 * _MARGIN) // len(shown))
    inside: Line = ((" " * _MARGIN, _GREY), *((" " * across, Ink(ground=one)) for one in shown))
    colour, grey = fill(inside, width, "grey_field"), fill(EMPTY, width, "grey_field")
    return [grey if y < edge or y >= rows - edge else colour for y in range(rows)]


_MARGIN, _EDGED_FROM = 2, 4
