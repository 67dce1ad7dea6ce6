"""How a leaf is drawn: sentences, what can be done, swatches, the lanes and the heat of a day. Knows no logs."""

from collections.abc import Callable
from functools import lru_cache

from dyesession.ui.bench_rows import swatch_block, swatches_line
from dyesession.ui.day_axis import day_axis
from dyesession.ui.ink import EMPTY, LINE, QUIET, STRONG, TEXT, Line, Span, cut, cut_line, say, width_of, wrap
from dyesession.ui.leaf_view import (
    DayLanes,
    Doable,
    Heat,
    Item,
    LaneBar,
    LeafView,
    Section,
    Shades,
    Told,
    key_of,
)
from dyesession.ui.rows import BLANK, Row, heading
from dyesession.ui.screens.place import Drawing
from dyesession.ui.sheet import Sheet
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.curve import draw_curve

BESIDE_ONLY = 999  # more rows than any window has: what explains the marked line stands beside the list or nowhere
_WIDEST_TEXT = 92  # cells: longer lines are not found again by the eye; common practice, no source
_HEAD, _WIDEST_HEAD, _BAR_NAME, _HEAT_ROWS = 14, 26, 16, 9
_LARGE = 4


def leaf_rows(view: LeafView, width: int, palette: Palette) -> tuple[Row, ...]:
    """Every line of the leaf."""
    rows: list[Row] = []
    for number, section in enumerate(view.sections):
        rows += _section(number, section, width, palette)
    return tuple(rows[1:] if rows and rows[0] == BLANK else rows)


@lru_cache(maxsize=512)
def _section(number: int, section: Section, width: int, palette: Palette) -> tuple[Row, ...]:
    rows = [BLANK, heading(section.head)] if section.items and section.head else []
    head = _head_cells(section.items, width)
    for index, item in enumerate(section.items):
        key = key_of(number, index, item)
        rows += [Row(line, key) for line in _lines(item, width, palette, head=head)]
    return tuple(rows)


def _head_cells(items: tuple[Item, ...], width: int) -> int:
    """How wide the column of heads is: as wide as its widest, within reason."""
    widest = max((width_of(one.head) for one in items if isinstance(one, Told)), default=0)
    return max(_HEAD, min(widest + 2, width // 3, _WIDEST_HEAD))


def _lines(item: Item, width: int, palette: Palette, tall: int = 1, head: int = _HEAD) -> list[Line]:
    match item:
        case Told():
            return _told(item, min(width, _WIDEST_TEXT), head)
        case Doable():
            why: Line = (say(f"   {item.why}", QUIET),) if item.why else EMPTY
            return [cut_line((say(item.does, STRONG), *why), width)]
        case Shades():
            return _shades(item, width, palette, tall)
        case DayLanes():
            return _lanes(item, width)
        case Heat():
            return draw_curve(item.curve, min(width, _WIDEST_TEXT), _HEAT_ROWS, palette)


def _told(told: Told, width: int, cells: int) -> list[Line]:
    ink = STRONG if told.strong else TEXT
    behind = [say(f" {told.mark}", QUIET)] if told.mark else []
    if not told.head:
        lines = wrap([say(told.says, ink), *behind], width)
        return lines if len(lines) == 1 else _hung([say(told.says, ink), *behind], width)
    head = cut(told.head, cells - 1)
    lines = wrap([say(told.says, ink), *behind], max(8, width - cells))
    first: Line = (say(head + " " * (cells - width_of(head)), QUIET),)
    return [(*(first if index == 0 else (say(" " * cells),)), *line) for index, line in enumerate(lines)]


def _hung(spans: list[Span], width: int) -> list[Line]:
    """A long sentence, its further rows two cells in."""
    return [
        line if index == 0 else (say("  "), *line) for index, line in enumerate(wrap(spans, max(8, width - 2)))
    ]


def _shades(shades: Shades, width: int, palette: Palette, tall: int) -> list[Line]:
    if tall > 1:
        return [line for one in shades.swatches for line in swatch_block(one, tall, palette)]
    of: Line = (say(f"{shades.of}  ", QUIET),) if shades.of else EMPTY
    if shades.of:
        return [cut_line((*of, *swatches_line(shades.swatches, palette)), width)]
    return [
        cut_line((*swatches_line((one,), palette), say(f"  {one.of}", QUIET)), width) for one in shades.swatches
    ]


def _lanes(lanes: DayLanes, width: int) -> list[Line]:
    """One row a step: a line as planned, a bar as it was; torn where the day is long and nothing happens."""
    width = min(width, _WIDEST_TEXT)
    when = max((width_of(one.when) for one in lanes.bars), default=0) + 1
    spans = [span for one in lanes.bars for span in (one.planned, one.actual) if span is not None]
    axis = day_axis([moment for span in spans for moment in span], max(8, width - _BAR_NAME - when))
    hours = Sheet(width, 1)
    for hour, cell in axis.ticks():
        hours.put(_BAR_NAME + cell, 0, f"{hour} h" if hour else "0", QUIET)
    rows = [hours.lines()[0]]
    for one in lanes.bars:
        sheet = Sheet(width, 1)
        sheet.put(0, 0, cut(one.name, _BAR_NAME - 1), TEXT)
        for cell in axis.tears():
            sheet.put(_BAR_NAME + cell, 0, "┊", LINE)
        _bar(sheet, one, axis.cell)
        sheet.put(width - width_of(one.when), 0, one.when, QUIET)
        rows.append(sheet.lines()[0])
    return rows


def _bar(sheet: Sheet, one: LaneBar, cell: Callable[[float], int]) -> None:
    if one.planned is not None:
        first = cell(one.planned[0])
        last = max(first + 1, cell(one.planned[1]))
        sheet.put(_BAR_NAME + first, 0, "─" * (last - first), QUIET)
    if one.actual is not None:
        first = cell(one.actual[0])
        last = max(first + 1, cell(one.actual[1]))
        sheet.put(_BAR_NAME + first, 0, "▄" * (last - first), TEXT)


def leaf_aside(view: LeafView, width: int, height: int, palette: Palette) -> list[Line]:
    """What explains the marked line, swatches large."""
    lines: list[Line] = []
    for item in view.about:
        lines += [EMPTY] if lines else []
        lines += _lines(item, width, palette, _LARGE)
    return lines[:height]


def leaf_drawing(name: str, aside_rows: int = BESIDE_ONLY, pad: tuple[str, ...] = ()) -> Drawing[LeafView]:
    """The drawing of a place that is a leaf."""
    return Drawing(name, leaf_rows, leaf_aside, aside_rows=aside_rows, pad=pad)
