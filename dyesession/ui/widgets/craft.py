"""Quiet lines for the hand, beside the step: the recipe's own words, or one line of craft.

Hazards are never said here. Knows no stages.
"""

from dyesession.ui.ink import QUIET, STRONG, Line, cut_line, say, wrap
from dyesession.ui.theme import Palette

_WORD, _HOW = " HAND   ", " HOW    "
MOST_HOW = 3  # rows for the recipe's own words; the whole of it stands in the plan


def draw_craft(craft: str, width: int, height: int, palette: Palette) -> list[Line]:
    """The line; its source behind it goes first where there is no room."""
    text, bracket, source = craft.rpartition(" (")
    whole = len(_WORD) + len(craft) + 1 <= width
    said = craft if whole or not bracket or not source.endswith(")") else text
    return [cut_line((say(_WORD, STRONG), say(said, QUIET)), width)]


def how_rows(how: str, width: int) -> int:
    """How many rows the recipe's words take, up to the most they may."""
    return len(_how_lines(how, width, MOST_HOW)) if how else 0


def draw_how(how: str, width: int, height: int, palette: Palette) -> list[Line]:
    """The recipe's own words for the step, from the front, in as many rows as there are."""
    words = (say(_HOW, STRONG), say(" " * len(_HOW)))
    rows = _how_lines(how, width, height)
    return [cut_line((words[0 if n == 0 else 1], *row), width) for n, row in enumerate(rows)]


def _how_lines(how: str, width: int, rows: int) -> list[Line]:
    return wrap([say(how)], width - len(_HOW) - 1, rows)
