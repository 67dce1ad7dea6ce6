"""A comparison as plain lines and as plain tables. Knows no screens."""

import textwrap
from dataclasses import asdict
from typing import Any

from dyesession.daybook.comparing import CameOut, Comparison, Row

_LEAST_WIDTH = 40


def comparison_lines(found: Comparison, width: int) -> list[str]:
    """The two days line by line: how they came out, what was other, what was the same."""
    width = max(width, _LEAST_WIDTH)
    lines = _wrapped(f"{found.one.name} beside {found.other.name}", "", width)
    verdicts = [found.one.verdict or "no verdict", found.other.verdict or "no verdict"]
    lines += _wrapped(f"verdict: {verdicts[0]} | {verdicts[1]}", "  ", width)
    lines += [text for one in found.came_out for text in _wrapped(_came_out(one), "  ", width)]
    if found.rows:
        lines += ["", *_wrapped("Other, what matters most for the colour first", "", width)]
        lines += [text for row in found.rows for text in _wrapped(_row(row), "  ", width)]
    else:
        lines += ["", *_wrapped("Nothing that bears on the colour was other.", "", width)]
    if found.same:
        lines += ["", *_wrapped(f"The same: {'; '.join(found.same)}", "", width)]
    return lines


def comparison_as_json(found: Comparison) -> dict[str, Any]:
    """The comparison as another program reads it."""
    return {
        "one": asdict(found.one),
        "other": asdict(found.other),
        "came_out": [asdict(one) for one in found.came_out],
        "differences": [asdict(one) for one in found.rows],
        "same": list(found.same),
    }


def _came_out(one: CameOut) -> str:
    lot = one.lot or "the fibre"
    pair = f"{lot} came out {one.one or 'unread'} | {one.other or 'unread'}"
    if one.apart is None or one.plus_minus is None:
        return pair
    return f"{pair}, {one.apart:.0f} ± {one.plus_minus:.0f} apart (CIEDE2000)"


def _row(row: Row) -> str:
    effect = f": {row.effect}" if row.effect else ""
    return f"{row.what} {row.one} | {row.other}{effect}"


def _wrapped(text: str, indent: str, width: int) -> list[str]:
    return textwrap.wrap(
        text, width, initial_indent=indent, subsequent_indent=f"{indent}  ", break_on_hyphens=False
    )
