"""A day as one self-contained HTML page: lanes, heat against plan, baths, swatches, what went otherwise. Pure.

No script, nothing fetched; every text of a log is escaped. Prints on paper.
"""

from collections.abc import Iterable, Sequence
from html import escape

from dyesession.colour.logged import screen_hex
from dyesession.daybook.day_line import DayLine, day_line
from dyesession.daybook.drawn import curve_svg, lanes_svg, swatch_svg
from dyesession.daybook.model import BathReview, DoseReview, Review
from dyesession.daybook.printed import review_lines
from dyesession.daybook.review import review
from dyesession.session.opening import LoggedDay
from dyesession.units import show_mass, show_volume

_STYLE = """
body{font:15px/1.5 sans-serif;max-width:960px;margin:2em auto;padding:0 1em;color:#222;background:#fff}
h1{font-size:1.5em}h2{font-size:1.1em;border-bottom:1px solid #bbb;margin-top:2em}
table{border-collapse:collapse}td,th{padding:.15em .8em .15em 0;text-align:left;vertical-align:top}
pre{white-space:pre-wrap;font-size:13px}.mark{background:#eee;padding:.1em .5em}
@media print{h2{break-after:avoid}svg,table{break-inside:avoid}}
"""


def day_page(day: LoggedDay) -> str:
    """The whole page."""
    found = review(day)
    line = day_line(day, f"{day.name}.toml")
    parts = [
        _head(found, line),
        _section("The shade", _swatches(line)),
        _section("What went otherwise than planned", _otherwise(found)),
        _section("The day, in hours from its opening: hollow as planned, filled as it was", _lanes(found)),
        _section("Heat: dots as read, dashed as wanted", _heat(found)),
        _section("Doses", [_doses(found.doses)]),
        _section("Cost, by the prices in your kitchen then", [f"<p>{escape(found.cost)}</p>"] if found.cost else []),
        _section("Baths: shown then, and reckoned now", [_baths(found.baths)]),
        _section("Everything", [f"<pre>{escape(chr(10).join(review_lines(found, 96)))}</pre>"]),
    ]
    body = "\n".join(one for one in parts if one)
    title = escape(f"{found.recipe}, {line.day}")
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        f"<title>{title}</title><style>{_STYLE}</style></head>\n<body>\n{body}\n</body></html>\n"
    )


def _head(found: Review, line: DayLine) -> str:
    kind = "rehearsal" if found.rehearsal else "demo" if line.demo else ""
    mark = f' <span class="mark">{kind}</span>' if kind else ""
    fibre = ", ".join(f"{show_mass(one.mass_g)} {one.kind} ({one.name})" for one in line.fibre)
    back = f"<p>Repeats {escape(', '.join(line.from_logs))}</p>" if line.from_logs else ""
    verdict = f"<p>{escape(found.verdict)}</p>" if found.verdict else ""
    return (
        f"<h1>{escape(found.recipe)}{mark}</h1><p>{escape(fibre)}; {found.opened:%Y-%m-%d %H:%M},"
        f" {escape(found.status)}; {escape(found.session)}</p>{verdict}{back}"
    )


def _section(heading: str, inside: Iterable[str]) -> str:
    told = "\n".join(one for one in inside if one)
    return f"<h2>{escape(heading)}</h2>\n{told}" if told else ""


def _swatches(line: DayLine) -> Iterable[str]:
    for one in (*line.undyed, *line.colours):
        state = ", before dyeing" if one in line.undyed else ""
        state += "" if one.wet is None else ", wet" if one.wet else ", dry"
        words = f"{one.lot or 'the fibre'}{state}: {one.colour}"
        shown = screen_hex(one.colour)
        yield swatch_svg(shown, words) if shown else f"<p>{escape(words)}</p>"


def _otherwise(found: Review) -> Iterable[str]:
    if not found.otherwise:
        return ["<p>Nothing.</p>"]
    return [f"<ul>{''.join(f'<li>{escape(one)}</li>' for one in found.otherwise)}</ul>"]


def _end_min(found: Review) -> float:
    ends = [one.actual.end_min for one in found.steps] + [
        one.planned.end_min for one in found.steps if one.planned
    ]
    return max((one for one in ends if one is not None), default=60.0)


def _lanes(found: Review) -> Iterable[str]:
    return [lanes_svg(found.steps, _end_min(found))] if found.steps else []


def _heat(found: Review) -> Iterable[str]:
    return [curve_svg(one, _end_min(found)) for one in found.curves]


def _doses(doses: Sequence[DoseReview]) -> str:
    rows = "".join(
        f"<tr><td>{escape(one.ingredient)}</td><td>{escape(one.substance)}</td>"
        f"<td>{show_mass(one.planned_g.aim) if one.planned_g else 'not planned'}</td>"
        f"<td>{show_mass(one.added_g) if one.added_g is not None else 'not put in'}</td>"
        f"<td>{escape(one.how)}</td></tr>"
        for one in doses
    )
    return f"<table><tr><th></th><th>is</th><th>planned</th><th>put in</th><th></th></tr>{rows}</table>"


def _baths(baths: Sequence[BathReview]) -> str:
    rows = "".join(_bath_rows(one) for one in baths)
    head = "<tr><th></th><th>of</th><th>shown then</th><th>reckoned now</th><th>litres now</th></tr>"
    return f"<table>{head}{rows}</table>" if rows else ""


def _bath_rows(bath: BathReview) -> str:
    """The end of one bath: what was shown last, beside what is reckoned for the same entry now."""
    if not bath.reckoned_now:
        return ""
    end = bath.reckoned_now[-1].after
    then = {one.lot: one for one in bath.shown_then if one.after == max(o.after for o in bath.shown_then)}
    rows = []
    for one in (line for line in bath.reckoned_now if line.after == end and line.lot):
        shown = then.get(one.lot)
        litres = show_volume(one.volume_l, estimate=True) if one.volume_l else ""
        rows.append(
            f"<tr><td>{escape(bath.vessel)}</td><td>{escape(one.lot)}</td>"
            f"<td>{_band(shown.mass_g, shown.low_g, shown.high_g) if shown else ''}</td>"
            f"<td>{_band(one.mass_g, one.low_g, one.high_g)}</td><td>{litres}</td></tr>"
        )
    return "".join(rows)


def _band(mean: float | None, low: float | None, high: float | None) -> str:
    if mean is None:
        return ""
    told = show_mass(mean, estimate=True)
    if low is None or high is None:
        return told
    ends = [show_mass(one, estimate=True) for one in (low, high)]
    return told if ends[0] == ends[1] else f"{told} ({ends[0]} to {ends[1]})"
