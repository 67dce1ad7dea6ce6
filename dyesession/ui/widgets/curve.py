"""A pot's temperature over the day: what was read, with the wanted ramp behind it, and where now is.

Drawn in dots, 2 x 4 to a cell (braille patterns, U+2800 up). Knows temperatures and minutes, no sessions.
"""

import math
from collections.abc import Iterable
from itertools import pairwise

from dyesession.ui.ink import QUIET, STRONG, TEXT, Ink, Line, cut, say
from dyesession.ui.sheet import Sheet
from dyesession.ui.stove_view import Curve, CurvePoint
from dyesession.ui.theme import Palette

_AXIS, _MARGIN = 8, 1
_DOTS_ACROSS, _DOTS_DOWN = 2, 4
_BRAILLE = 0x2800
# Bit of each dot in a braille pattern, by column and row (Unicode Standard, chapter 21, "Braille Patterns").
_BITS = ((0x01, 0x02, 0x04, 0x40), (0x08, 0x10, 0x20, 0x80))
_ROUND_C = 10  # the axis ends on whole tens of degrees
_LEAST_ROWS = 5
# The wanted ramp is dotted, so that the two lines differ without colour.
_WANTED_EVERY = 3


class _Plot:
    """The scale from minutes and degrees to dots."""

    def __init__(self, curve: Curve, across: int, down: int) -> None:
        points = (*curve.wanted, *curve.read)
        minutes = [point.minute for point in points] + [curve.now_minute or 0.0]
        degrees = [point.temperature_c for point in points]
        self.across, self.down = across, down
        self.first, self.last = min(minutes), max(minutes)
        self.low = math.floor(min(degrees) / _ROUND_C) * _ROUND_C
        self.high = max(self.low + _ROUND_C, math.ceil(max(degrees) / _ROUND_C) * _ROUND_C)

    def dot(self, minute: float, degrees: float) -> tuple[int, int]:
        """The dot for a time and a temperature."""
        x = (minute - self.first) / max(1e-9, self.last - self.first) * (self.across - 1)
        y = (self.high - degrees) / (self.high - self.low) * (self.down - 1)
        return round(x), round(y)

    def line(self, points: Iterable[CurvePoint]) -> list[tuple[int, int]]:
        """Every dot of the line through the points."""
        ends = [self.dot(point.minute, point.temperature_c) for point in points]
        dots = list(ends[:1])
        for (x0, y0), (x1, y1) in pairwise(ends):
            steps = max(abs(x1 - x0), abs(y1 - y0), 1)
            dots += [
                (x0 + round((x1 - x0) * step / steps), y0 + round((y1 - y0) * step / steps))
                for step in range(1, steps + 1)
            ]
        return dots


def _patterns(dots: Iterable[tuple[int, int]]) -> dict[tuple[int, int], int]:
    cells: dict[tuple[int, int], int] = {}
    for x, y in dots:
        cell = (x // _DOTS_ACROSS, y // _DOTS_DOWN)
        cells[cell] = cells.get(cell, 0) | _BITS[x % _DOTS_ACROSS][y % _DOTS_DOWN]
    return cells


def _draw_dots(sheet: Sheet, dots: Iterable[tuple[int, int]], ink: Ink) -> None:
    for (x, y), pattern in _patterns(dots).items():
        sheet.put(_AXIS + x, y + 1, chr(_BRAILLE + pattern), ink)


def _labels(sheet: Sheet, curve: Curve, plot: _Plot, rows: int) -> None:
    sheet.put_line(_MARGIN, 0, (say(cut(curve.title, sheet.width - 2), QUIET),))
    for degrees, unit in ((plot.high, " °C"), (plot.low, "")):
        _, dot = plot.dot(plot.first, degrees)
        sheet.put(_MARGIN, 1 + dot // _DOTS_DOWN, f"{degrees:>3}{unit}", QUIET)
    foot = rows + 1
    sheet.put_line(_AXIS, foot, (say(curve.start, QUIET),))
    end = cut(curve.end, sheet.width - _AXIS)
    sheet.put_line(sheet.width - len(end) - _MARGIN, foot, (say(end, QUIET),))
    if curve.now_minute is not None:
        x = _AXIS + plot.dot(curve.now_minute, plot.low)[0] // _DOTS_ACROSS
        sheet.put(x, foot, "▲ now", TEXT)


def draw_curve(curve: Curve, width: int, height: int, palette: Palette) -> list[Line]:
    """The title, the picture, and the times below it. Readings are marked with a heavy dot each."""
    sheet = Sheet(width, height)
    rows = height - 3
    if rows < _LEAST_ROWS - 3 or width < 2 * _AXIS or not (curve.wanted or curve.read):
        return [(say(f" {cut(curve.title, width - 2)}", QUIET),)]
    plot = _Plot(curve, (width - _AXIS - _MARGIN) * _DOTS_ACROSS, rows * _DOTS_DOWN)
    _draw_dots(sheet, plot.line(curve.wanted)[::_WANTED_EVERY], QUIET)
    _draw_dots(sheet, plot.line(curve.read), TEXT)
    for point in curve.read:
        x, y = plot.dot(point.minute, point.temperature_c)
        sheet.put(_AXIS + x // _DOTS_ACROSS, 1 + y // _DOTS_DOWN, "●", STRONG)
    _labels(sheet, curve, plot, rows)
    sheet.put(_AXIS, height - 1, "● read   ┈ wanted", QUIET)
    return sheet.lines()
