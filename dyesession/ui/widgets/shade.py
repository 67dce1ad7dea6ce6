"""A wanted colour and a snippet's, touching, in a mid-grey field of their own, with their numbers.

A terminal with few colours shows the numbers only: a wrong swatch is worse than none.
"""

from dyesession.ui.ink import QUIET, TEXT, Line, cut, cut_line, say
from dyesession.ui.sheet import Sheet
from dyesession.ui.stove_view import Shade
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.pot import is_colour

_MARGIN = 1
_WORDS_ROWS = 3
_EDGE_ACROSS, _EDGE_DOWN = 3, 1
# Below this a swatch is too small to judge (common practice, no source).
_LEAST_ACROSS, _LEAST_DOWN = 16, 4


def _words(shade: Shade, width: int) -> list[Line]:
    return [
        (say(" "), say(f"{shade.wanted_word} "), say(shade.wanted, QUIET)),
        (say(" "), say(f"{shade.snippet_word} "), say(shade.snippet, QUIET)),
        (say(f" {shade.difference}", QUIET),),
    ]


def _field(shade: Shade, width: int, rows: int) -> Sheet:
    sheet = Sheet(width, rows)
    across, down = width - 2 * _MARGIN, rows
    sheet.wash(_MARGIN, 0, across, down, "grey_field")
    half = (across - 2 * _EDGE_ACROSS) // 2
    left = _MARGIN + _EDGE_ACROSS
    sheet.wash(left, _EDGE_DOWN, half, down - 2 * _EDGE_DOWN, shade.wanted)
    sheet.wash(left + half, _EDGE_DOWN, half, down - 2 * _EDGE_DOWN, shade.snippet)
    return sheet


def draw_shade(shade: Shade, width: int, height: int, palette: Palette) -> list[Line]:
    """The field on top, three lines of words below; the words alone where the colours cannot be shown."""
    words = [cut_line(line, width) for line in _words(shade, width)]
    rows = height - _WORDS_ROWS - 1
    judged = palette.dyed and is_colour(shade.wanted) and is_colour(shade.snippet)
    said = "wanted, and the snippet" + ("; approximate, 256 colours" if palette.approximate else "")
    title: Line = (say(f" {cut(said, width - 2)}", QUIET),)
    if not judged or rows < _LEAST_DOWN or width < _LEAST_ACROSS:
        return [title, (), *words, (say(" no colours here: numbers only", TEXT),) if not judged else ()]
    return [title, *_field(shade, width, rows).lines(), *words]
