"""The pictures of a day's page as SVG text: lanes of steps, temperature curves, swatches. Pure.

Nothing is told by colour alone: a planned bar is hollow, an actual one filled, a wanted ramp dashed.
"""

from collections.abc import Iterable, Sequence
from html import escape

from dyesession.daybook.curves import Curve
from dyesession.daybook.model import StepReview

WIDE, LEFT, BAR, GAP, AXIS = 900, 150, 9, 26, 24
CURVE_HIGH, HOTTEST_C = 170, 105
TICKS_MIN = (15, 30, 60, 120, 240, 480, 1440)
MOST_TICKS = 12
_INK, _PALE, _DYE = "#222", "#bbb", "#8b3a2b"


def lanes_svg(steps: Sequence[StepReview], end_min: float) -> str:
    """One row a step: hollow as planned, filled as it was."""
    rows = [one for one in steps if one.planned or one.actual.start_min is not None]
    high = AXIS + GAP * len(rows)
    body = [_ticks(end_min, high)]
    for index, step in enumerate(rows):
        top = AXIS + GAP * index
        body.append(f'<text x="0" y="{top + 14}" font-size="12">{escape(step.name)}</text>')
        if step.planned is not None:
            body.append(_bar(step.planned.start_min, step.planned.end_min, top, end_min, "none", _INK))
        body.append(_bar(step.actual.start_min, step.actual.end_min, top + BAR + 2, end_min, _DYE, _DYE))
    return _svg(high, body, "The steps of the day: hollow bars as planned, filled bars as they were")


def _bar(start: float | None, end: float | None, top: float, end_min: float, fill: str, line: str) -> str:
    if start is None or end is None:
        return ""
    x, to = _x(start, end_min), _x(end, end_min)
    return (
        f'<rect x="{x:.1f}" y="{top}" width="{max(1.0, to - x):.1f}" height="{BAR}" fill="{fill}" stroke="{line}"/>'
    )


def curve_svg(curve: Curve, end_min: float) -> str:
    """One pot's temperature: dots as read, a dashed line as wanted."""
    high = CURVE_HIGH + AXIS
    body = [_ticks(end_min, high)]
    for degrees in (20, 40, 60, 80, 100):
        y = _y(degrees)
        body.append(f'<line x1="{LEFT}" y1="{y:.1f}" x2="{WIDE}" y2="{y:.1f}" stroke="#eee"/>')
        body.append(f'<text x="{LEFT - 6}" y="{y + 4:.1f}" font-size="11" text-anchor="end">{degrees} °C</text>')
    for line in curve.wanted:
        points = " ".join(f"{_x(m, end_min):.1f},{_y(t):.1f}" for m, t in line)
        body.append(f'<polyline points="{points}" fill="none" stroke="{_INK}" stroke-dasharray="4 3"/>')
    if len(curve.read) > 1:
        points = " ".join(f"{_x(m, end_min):.1f},{_y(t):.1f}" for m, t in curve.read)
        body.append(f'<polyline points="{points}" fill="none" stroke="{_DYE}" stroke-opacity="0.5"/>')
    body += [
        f'<circle cx="{_x(m, end_min):.1f}" cy="{_y(t):.1f}" r="3" fill="{_DYE}"><title>{t:g} °C</title></circle>'
        for m, t in curve.read
    ]
    body.append(f'<text x="0" y="{AXIS + 14}" font-size="12">{escape(curve.vessel)}</text>')
    return _svg(high, body, f"Temperature of the {curve.vessel}: dots as read, dashed as wanted")


def swatch_svg(colour: str, words: str) -> str:
    """A patch of a hex colour with its words beside it."""
    return (
        f'<svg width="230" height="44" role="img" aria-label="{escape(words)}">'
        f'<rect x="1" y="1" width="60" height="42" fill="{escape(colour)}" stroke="{_INK}"/>'
        f'<text x="70" y="26" font-size="12">{escape(words)}</text></svg>'
    )


def _ticks(end_min: float, high: float) -> str:
    step = next((one for one in TICKS_MIN if end_min / one <= MOST_TICKS), TICKS_MIN[-1])
    minutes: Iterable[int] = range(0, int(end_min) + 1, step)
    return "".join(
        f'<line x1="{_x(m, end_min):.1f}" y1="{AXIS - 6}" x2="{_x(m, end_min):.1f}" y2="{high}" stroke="{_PALE}"'
        f' stroke-width="0.5"/><text x="{_x(m, end_min):.1f}" y="{AXIS - 10}" font-size="10"'
        f' text-anchor="middle">{m // 60}:{m % 60:02}</text>'
        for m in minutes
    )


def _x(minute: float, end_min: float) -> float:
    return LEFT + (WIDE - LEFT - 10) * minute / max(end_min, 1.0)


def _y(degrees: float) -> float:
    return AXIS + (CURVE_HIGH - 8) * (1.0 - min(max(degrees, 0.0), HOTTEST_C) / HOTTEST_C)


def _svg(high: float, body: Iterable[str], says: str) -> str:
    inside = "".join(body)
    return (
        f'<svg viewBox="0 0 {WIDE} {high:g}" width="100%" role="img" font-family="sans-serif"'
        f' aria-label="{escape(says)}"><title>{escape(says)}</title>{inside}</svg>'
    )
