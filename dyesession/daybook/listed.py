"""The day book as plain lines and as plain tables. Knows no screens.

A day takes one line, what it left behind a second one.
"""

import textwrap
from collections.abc import Iterable, Sequence
from datetime import date
from typing import Any

from dyesession.daybook.aftercare import Due, aftercare_due
from dyesession.daybook.day_line import DayLine, as_plain
from dyesession.daybook.finding import Aside, DayBook
from dyesession.units import show_mass

_INDENT = "  "
_LEAST_WIDTH = 40


def day_book_lines(days: Sequence[DayLine], aside: Sequence[Aside], today: date, width: int) -> list[str]:
    """The days, what is due of them, and the files left aside with their reasons."""
    width = max(width, _LEAST_WIDTH)
    lines = [text for one in days for text in _day(one, today, width)] or ["No day answers to that."]
    if aside:
        lines += ["", *_wrapped(f"Left aside, {_files(aside)}:", "", width)]
        lines += [text for one in aside for text in _wrapped(one.reason, _INDENT, width)]
    return lines


def day_book_as_json(days: Sequence[DayLine], aside: Sequence[Aside], today: date) -> dict[str, Any]:
    """The day book as another program reads it: grams, ISO dates."""
    return {
        "days": [{**as_plain(one), "aftercare_due": _due(aftercare_due(one, today))} for one in days],
        "aside": [{"file": one.file, "reason": one.reason} for one in aside],
    }


def empty_lines(book: DayBook, folder: str) -> list[str]:
    """What to say where there is no log at all, or none but demo days."""
    if book.days and all(one.demo for one in book.days):
        return [f'No day of your own yet in {folder}: "dyesession begin" makes the first. Demo days, dyed by nobody:']
    if book.days or book.aside:
        return []
    return [f'There is no log in {folder} yet: "dyesession begin" makes the first, "rehearse" tries one out.']


def _due(due: Iterable[Due]) -> list[dict[str, str]]:
    return [{"what": one.what, "since": one.since.isoformat(), "do": one.do} for one in due]


def _day(line: DayLine, today: date, width: int) -> list[str]:
    fibre = "".join(f", {show_mass(one.mass_g)} {one.kind}" for one in line.fibre)
    kind = " (rehearsal)" if line.rehearsal else " (demo)" if line.demo else ""
    verdict = f": {line.verdict}" if line.verdict else "" if line.status == "complete" else f": {line.status}"
    lines = _wrapped(f"{line.day}  {line.recipe}{fibre}{kind}{verdict}", "", width)
    lines += _wrapped(line.session, _INDENT, width)
    told = [f"with {' and '.join(line.dyed_with)}"] if line.dyed_with else []
    told += [f"from the kept bath “{one.label}” of {one.session}" for one in line.drawn if one.session]
    told += [f"colour {one.colour}{_state(one.wet)}, {one.lot}" for one in line.colours[-1:]]
    told += [f"kept bath “{one}”" for one in line.kept]
    told += [f"{one} mordanted, waiting for a bath" for one in line.waiting if line.status != "open"]
    told += [f"{one.what} due since {one.since}" for one in aftercare_due(line, today)]
    told += [f"repeats {line.from_logs[0]}"] if line.from_logs else []
    lines += _wrapped("; ".join(told), _INDENT, width)
    return lines + [text for one in line.faults for text in _wrapped(one, _INDENT, width)]


def _state(wet: bool | None) -> str:
    return "" if wet is None else " wet" if wet else " dry"


def _files(aside: Sequence[Aside]) -> str:
    return "one file" if len(aside) == 1 else f"{len(aside)} files"


def _wrapped(text: str, indent: str, width: int) -> list[str]:
    return textwrap.wrap(
        text, width, initial_indent=indent, subsequent_indent=f"{indent}  ", break_on_hyphens=False
    )
