"""One quiet line for the hand, beside the step. Hazards are never said here. Knows no stages."""

from dyesession.ui.ink import QUIET, STRONG, Line, cut_line, say
from dyesession.ui.theme import Palette

_WORD = " HAND   "


def draw_craft(craft: str, width: int, height: int, palette: Palette) -> list[Line]:
    """The line; its source behind it goes first where there is no room."""
    text, bracket, source = craft.rpartition(" (")
    whole = len(_WORD) + len(craft) + 1 <= width
    said = craft if whole or not bracket or not source.endswith(")") else text
    return [cut_line((say(_WORD, STRONG), say(said, QUIET)), width)]
