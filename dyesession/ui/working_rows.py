"""How Working out is drawn: the lines of its list, the day's bars, and why a figure is what it is. Knows no plans."""

from dyesession.ui.day_axis import DayAxis, day_axis
from dyesession.ui.ink import EMPTY, LINE, QUIET, STRONG, TEXT, Ink, Line, cut, cut_line, say, width_of, wrap
from dyesession.ui.place_keys import WORKING_OUT
from dyesession.ui.rows import BLANK, Row, heading, paragraph, section
from dyesession.ui.screens.place import Drawing
from dyesession.ui.sheet import Sheet
from dyesession.ui.theme import Palette
from dyesession.ui.working_view import (
    BathLine,
    ChoiceLine,
    DayBars,
    DoseLine,
    LotLine,
    SaidLine,
    StepBar,
    WhyView,
    WorkingView,
)

_NAME, _FIGURE, _PLUS_MINUS, _SHARE = 16, 9, 10, 24
_CHOICE, _BAR_NAME = 10, 20
_EMBER = Ink("ember")
_ALARM = Ink("alarm_ink", "alarm", bold=True)
_PAD = ("g", "kg", "oz", "lb", "wool", "silk", "cotton", "damp,", "dry", "skein")


def _left(text: str, cells: int) -> str:
    """A text in so many cells, filled up at its right."""
    text = cut(text, cells - 1)
    return text + " " * (cells - width_of(text))


def _right(text: str, cells: int) -> str:
    return " " * max(0, cells - width_of(text)) + text


def working_rows(view: WorkingView, width: int, palette: Palette) -> tuple[Row, ...]:
    """Every line of Working out, from the fibre to the shopping list."""
    chosen = [row for one in view.lots for row in _lot(one, width)]
    chosen += [_choice(one, width) for one in view.choices]
    parts = (
        heading("what you have"),
        *chosen,
        *_trouble(view.trouble, width),
        *section("to answer first", [row for one in view.questions for row in _lot(one, width)]),
        *section("to weigh", [row for one in view.doses for row in _dose(one, width)]),
        *section("water and pots", [row for one in view.baths for row in _bath(one, width)]),
        *section("the day", _day(view.day, width)),
        *section("mind", [row for one in view.mind for row in _said(one, width)]),
        *_care(view.care, width),
        *section("from the jars", [row for one in view.jars for row in _said(one, width)]),
        *section("from your own days", _said(view.own, width) if view.own else ()),
        *section("before the ring is lit", _said(view.ahead, width) if view.ahead else ()),
        *section("on paper", _said(view.paper, width) if view.paper else ()),
    )
    return tuple(parts)


def _lot(lot: LotLine, width: int) -> list[Row]:
    rows = (
        [Row(cut_line((say(_left(lot.name, _NAME), STRONG), say(lot.says)), width), lot.key)]
        if lot.name
        else []
    )
    if lot.asks:
        rows += [Row((say("  "), *line)) for line in wrap([say(lot.asks, STRONG)], width - 2)]
    rows += [Row((say(f"    {one.says}"),), one.key) for one in lot.answers]
    return rows


def _choice(choice: ChoiceLine, width: int) -> Row:
    hint: Line = (say(f"   {choice.hint}", QUIET),) if choice.hint else EMPTY
    return Row(
        cut_line((say(_left(choice.word, _CHOICE), QUIET), say(choice.says), *hint), width), choice.key
    )


def _trouble(trouble: str, width: int) -> tuple[Row, ...]:
    return (BLANK, *paragraph(trouble, width, ink=STRONG)) if trouble else ()


def _dose(dose: DoseLine, width: int) -> list[Row]:
    spans = [say(_left(dose.name, _NAME)), say(_right(dose.figure, _FIGURE), STRONG)]
    spans += [say(_left(f" {dose.plus_minus}", _PLUS_MINUS)), say(dose.share, QUIET)]
    rows = [Row(cut_line(tuple(spans), width), dose.key)]
    return rows + [Row((say("  "), *line), dose.key) for line in wrap([say(dose.how, QUIET)], width - 2)]


def _bath(bath: BathLine, width: int) -> list[Row]:
    short: Line = (say("▲ too small ", STRONG),) if bath.short else EMPTY
    spans = (
        say(_left(bath.step, _NAME)), say(_right(bath.figure, _FIGURE), STRONG),
        say(_left(f" {bath.ratio}", _PLUS_MINUS), QUIET), *short, say(bath.where),
    )  # fmt: skip
    rows = [Row(cut_line(spans, width), bath.key)]
    return rows + [Row((say("  "), *line), bath.key) for line in wrap([say(bath.says, QUIET)], width - 2)]


def _said(said: SaidLine, width: int) -> list[Row]:
    at = f"{said.at}: " if said.at else ""
    ink = STRONG if said.grave else TEXT
    return [Row(line, said.key) for line in wrap([say(at, QUIET), say(said.says, ink)], width)]


def _care(care: tuple[SaidLine, ...], width: int) -> tuple[Row, ...]:
    rows = [row for one in care for row in _said(one, width)]
    return (BLANK, Row((say(" CARE ", _ALARM),)), *rows) if rows else ()


# The day drawn.


def _day(day: DayBars, width: int) -> list[Row]:
    if not day.bars:
        return []
    when = max(width_of(one.when) for one in day.bars) + 2
    axis = day_axis(_moments(day), max(8, width - _BAR_NAME - when))
    lanes = [row for lane in ("fibre", "liquor") for row in _lane(day, lane, axis, width)]
    return [*paragraph(day.says, width, ink=TEXT), _hours(axis, width), *lanes]


def _moments(day: DayBars) -> list[float]:
    return [moment for one in day.bars for moment in (one.start_min, one.end_min)]


def _hours(axis: DayAxis, width: int) -> Row:
    sheet = Sheet(width, 1)
    for hour, cell in axis.ticks():
        sheet.put(_BAR_NAME + cell, 0, f"{hour} h" if hour else "0", QUIET)
    return Row(sheet.lines()[0])


def _lane(day: DayBars, lane: str, axis: DayAxis, width: int) -> list[Row]:
    bars = [one for one in day.bars if one.lane == lane]
    return [
        Row(_bar(one, axis, width, lane if index == 0 else ""), one.key) for index, one in enumerate(bars)
    ]


def _bar(bar: StepBar, axis: DayAxis, width: int, lane: str) -> Line:
    """A step: thin while it stands or wants hands, full while its pot is on the ring; torn where the day is."""
    sheet = Sheet(width, 1)
    sheet.put(0, 0, cut(f"{'*' if bar.decides else ' '} {bar.name}", _BAR_NAME - 1), TEXT)
    first = axis.cell(bar.start_min)
    last = max(first + 1, axis.cell(bar.end_min))
    sheet.put(_BAR_NAME + first, 0, "▄" * (last - first), Ink("text" if bar.lane == "fibre" else "quiet"))
    if bar.lit_min is not None and bar.off_min is not None:
        lit, off = axis.cell(bar.lit_min), max(axis.cell(bar.lit_min) + 1, axis.cell(bar.off_min))
        sheet.put(_BAR_NAME + lit, 0, "█" * (off - lit), _EMBER)
    for cell in axis.tears():
        inside = first < cell < last
        sheet.put(_BAR_NAME + cell, 0, "≈" if inside else "┊", STRONG if inside else LINE)
    sheet.put(width - width_of(bar.when), 0, bar.when, QUIET)
    return sheet.lines()[0]


# Why a figure is what it is.


def working_aside(view: WorkingView, width: int, height: int, palette: Palette) -> list[Line]:
    """Where the marked figure comes from: as much as there is room for, the rest behind enter."""
    if view.why is None:
        return []
    lines = _why(view.why, width, roomy=height > _ASIDE_ROWS)
    if len(lines) <= height:
        return lines
    return [*lines[: height - 1], (say("… enter: all of it", QUIET),)]


def _why(why: WhyView, width: int, roomy: bool) -> list[Line]:
    lines = wrap([say(why.figure, STRONG)], width)
    for reason in why.reasons:
        source = [say(f"  ({reason.source})", QUIET)] if reason.source else []
        lines += [EMPTY] if roomy else []
        lines += wrap([say(reason.says), *source], width)
    return lines


_ASIDE_ROWS = 4
WORKING_DRAWING: Drawing[WorkingView] = Drawing(
    WORKING_OUT, working_rows, working_aside, aside_rows=_ASIDE_ROWS, pad=_PAD
)
