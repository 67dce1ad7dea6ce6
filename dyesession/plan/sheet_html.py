"""A weighing list as one page for a browser or a printer: nothing in it is fetched from anywhere.

Pure: a sheet in, the page's text out. Every word of a person or a file is escaped. Its timetable is a drawing of
lines, and readable without colour.
"""

from collections.abc import Iterable, Sequence
from html import escape

from dyesession.plan.model import TimetableRow
from dyesession.plan.sheet import (
    NOT_ADVICE,
    Sheet,
    bath_words,
    cautions,
    dose_words,
    fibre_words,
    named,
    poison_words,
    to_mind,
)
from dyesession.plan.shopping import in_words, price_text
from dyesession.plan.timetable import end_min
from dyesession.plan.words import clock

_STYLE = """
@page { margin: 15mm } body { font: 12pt/1.4 Georgia, serif; color: #14110d; background: #fffdf8; max-width: 46em;
margin: 1.5em auto; padding: 0 1em } h1 { font-size: 1.5em; margin: 0 } h2 { font-size: 1em; margin: 1.4em 0 .3em;
border-bottom: 1px solid #857d70 } ul { list-style: none; margin: 0; padding: 0 } li { margin: .35em 0;
break-inside: avoid } li.tick::before { content: "\\2610"; font-size: 1.3em; margin-right: .4em } b { font-weight: 700 }
small { display: block; margin-left: 2em; color: #38332b } .mind { border: 2px solid #14110d; padding: .4em .8em }
svg { width: 100%; height: auto } .poison { font-size: 1.2em; border: 2px solid #14110d; padding: .3em .8em }
footer { margin-top: 2em; font-size: .85em; color: #38332b }
"""
# The drawing of the day, in points.
_ROW, _NAME, _ACROSS, _BAR = 20.0, 150.0, 720.0, 10.0
_HOUR_MIN = 60.0
_MOST_TICKS = 12


def sheet_html(sheet: Sheet) -> str:
    """The whole page."""
    plan = sheet.plan
    parts = [
        f"<h1>{escape(plan.recipe)}</h1>",
        f"<p>weighing list, {escape(sheet.made)}</p>",
        _list(fibre_words(plan)),
        _mind((*plan.questions, *to_mind(plan))),
        "<h2>To weigh</h2>",
        _ticked(
            (f"{named(one.ingredient, one.substance)}: ", dose_words(one), one.weigh.say) for one in plan.doses
        ),
        "<h2>Water and pots</h2>",
        _ticked((f"{one.step}: ", bath_words(one), one.say) for one in plan.baths),
        f"<h2>The day: {clock(end_min(plan.timetable))}, first filling to last skein hung</h2>",
        timetable_svg(plan.timetable),
        "<p><small>* these steps decide when you are done</small></p>",
        "<h2>From the jars</h2>",
        _list(_jars(sheet)),
        "<h2>Care</h2>",
        _list(cautions(plan)),
        _poison(sheet.poison_centre),
        f"<footer>{escape(NOT_ADVICE)}</footer>",
    ]
    return _page(plan.recipe, "\n".join(one for one in parts if one))


def _page(title: str, body: str) -> str:
    return (
        '<!doctype html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">"
        f"<title>{escape(title)}: weighing list</title><style>{_STYLE}</style></head>\n"
        f"<body>\n{body}\n</body></html>\n"
    )


def _list(lines: Iterable[str]) -> str:
    items = "".join(f"<li>{escape(one)}</li>" for one in lines)
    return f"<ul>{items}</ul>" if items else ""


def _ticked(lines: Iterable[tuple[str, str, str]]) -> str:
    items = "".join(
        f'<li class="tick">{escape(what)}<b>{escape(figure)}</b>'
        + (f"<small>{escape(how)}</small>" if how else "")
        + "</li>"
        for what, figure, how in lines
    )
    return f"<ul>{items}</ul>"


def _mind(sentences: Sequence[str]) -> str:
    return f'<div class="mind">{_list(sentences)}</div>' if sentences else ""


def _jars(sheet: Sheet) -> list[str]:
    lines = [f"{one.ingredient}: {in_words(one)}" for one in sheet.shopping.items]
    if sheet.shopping.day_price is not None:
        lines.append(f"the day uses up {price_text(sheet.shopping.day_price)} of what has a price")
    return lines


def _poison(number: str) -> str:
    return f'<p class="poison"><b>{escape(poison_words(number))}</b></p>'


def timetable_svg(rows: Sequence[TimetableRow]) -> str:
    """The day drawn: a bar for each step, on a scale of hours."""
    whole_min = max(end_min(rows), _HOUR_MIN)
    scale = (_ACROSS - _NAME) / whole_min
    height = _ROW * (len(rows) + 1)
    parts = [_tick(hour, scale, height) for hour in _hours(whole_min)]
    parts += [_bar(index, row, scale) for index, row in enumerate(rows)]
    return (
        f'<svg viewBox="0 0 {_ACROSS:.0f} {height:.0f}" role="img" aria-label="the day, step by step" '
        f'font-family="Georgia, serif" font-size="12" fill="#14110d">{"".join(parts)}</svg>'
    )


def _hours(whole_min: float) -> list[int]:
    hours = int(whole_min // _HOUR_MIN)
    step = next(one for one in (1, 2, 3, 6, 12, 24, 48, 96, hours + 1) if hours / one <= _MOST_TICKS)
    return list(range(0, hours + 1, step))


def _tick(hour: int, scale: float, height: float) -> str:
    x = _NAME + hour * _HOUR_MIN * scale
    line = f'<line x1="{x:.1f}" x2="{x:.1f}" y1="{_ROW:.0f}" y2="{height:.0f}" stroke="#c9c0b0" stroke-width=".7"/>'
    return f'{line}<text x="{x:.1f}" y="13" text-anchor="middle" font-size="10">{hour} h</text>'


def _bar(index: int, row: TimetableRow, scale: float) -> str:
    y = _ROW * (index + 1)
    x, width = _NAME + row.start_min * scale, max(1.5, (row.end_min - row.start_min) * scale)
    ink = "#38332b" if row.lane == "fibre" else "#9a9387"
    name = f"* {row.step}" if row.critical else row.step
    return (
        f'<text x="0" y="{y + 14:.1f}">{escape(name)}</text>'
        f'<rect x="{x:.1f}" y="{y + 5:.1f}" width="{width:.1f}" height="{_BAR:.0f}" fill="{ink}"/>'
    )
