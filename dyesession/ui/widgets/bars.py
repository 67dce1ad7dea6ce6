"""What each extraction brought of the dyestuff, or would bring, each bar with its band. Reckons nothing."""

from dyesession.ui.ink import QUIET, STRONG, TEXT, Ink, Line, cut, say, width_of
from dyesession.ui.sheet import Sheet
from dyesession.ui.stove_view import Bar, Bars
from dyesession.ui.theme import Palette, ink_on
from dyesession.ui.widgets.pot import liquor_ground

_MARGIN, _GAP = 1, 2
_WIDEST_WORD = 18
_LEAST_BAR = 8


def _band(sheet: Sheet, x: int, y: int, bar: Bar, scale: float, palette: Palette) -> None:
    """The 90 % band across a bar, in whatever ink shows on each cell."""
    low, high = x + round(bar.low * scale), x + max(round(bar.low * scale) + 1, round(bar.high * scale))
    for cell in range(low, high + 1):
        mark = "├" if cell == low else "┤" if cell == high else "─"
        ground = sheet.ground_at(cell, y)
        front = "strong" if ground == "ground" else ink_on(palette.colour(ground), palette)
        sheet.put(cell, y, mark, Ink(front, ground, bold=True))


def _bar(sheet: Sheet, x: int, y: int, bar: Bar, scale: float, ground: str) -> None:
    length = max(1, round(bar.centre * scale))
    if bar.brought:
        sheet.wash(x, y, length, 1, ground)
    else:
        sheet.put(x, y, "░" * length, Ink("wall"))


def draw_bars(bars: Bars, width: int, height: int, palette: Palette) -> list[Line]:
    """A title, a bar for each extraction on every second row where there is room, and a remark."""
    sheet = Sheet(width, height)
    sheet.put_line(_MARGIN, 0, (say(cut(bars.title, width - 2), QUIET),))
    words = min(_WIDEST_WORD, max((width_of(bar.word) for bar in bars.rows), default=0))
    shown = max((width_of(bar.shown) for bar in bars.rows), default=0)
    start = _MARGIN + words + _GAP
    room = width - start - shown - 2 * _GAP
    step = 2 if 2 * len(bars.rows) + 3 <= height else 1
    most = max((bar.high for bar in bars.rows), default=0.0)
    if room >= _LEAST_BAR and most > 0:
        ground, scale = liquor_ground(bars.liquor, palette), (room - 1) / most
        for index, bar in enumerate(bars.rows):
            y = 2 + index * step
            ink = TEXT if bar.brought else QUIET
            sheet.put_line(_MARGIN, y, (say(cut(bar.word, words), ink),))
            _bar(sheet, start, y, bar, scale, ground)
            _band(sheet, start, y, bar, scale, palette)
            sheet.put_line(width - shown - _MARGIN, y, (say(bar.shown, STRONG if bar.brought else QUIET),))
    foot = min(height - 1, 2 + step * len(bars.rows) + 1)
    sheet.put_line(_MARGIN, foot, (say(cut(bars.remark, width - 2), QUIET),))
    return sheet.lines()
