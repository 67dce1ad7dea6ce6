"""A rehearsal as plain lines for a terminal or a sheet of paper. Knows no screens."""

import textwrap
from collections.abc import Iterable
from datetime import datetime

from dyesession.care import ASKS_PER_DAY
from dyesession.rehearsal.model import Happening, Rehearsed
from dyesession.session.words import day_text
from dyesession.units import show_duration

WIDTH = 80
_LANE_WIDTH = 7


def rehearsed_lines(rehearsed: Rehearsed, width: int = WIDTH) -> list[str]:
    """The whole rehearsal, line by line, wrapped to `width` columns."""
    lasted = show_duration(round((rehearsed.ended - rehearsed.started).total_seconds() / 60))
    lines = [f"{rehearsed.plan.recipe}, rehearsed: {lasted}"]
    lines += [f"Its log: {rehearsed.path}"] if rehearsed.path else []
    lines += textwrap.wrap(_counts(rehearsed), width)
    lines += _section(
        "To weigh", (f"{one.ingredient}: {one.weigh.say}" for one in rehearsed.plan.doses), width
    )
    lines += _section("The day", (_line(rehearsed, one) for one in rehearsed.timeline), width)
    lines += _section(
        "The account", (f"{_at(rehearsed, one.at)} {one.text}" for one in rehearsed.account), width
    )
    for one in rehearsed.care:
        asked = f" ({one.asks} asked)" if one.asks else ""
        lines += _section(f"Care: {one.step}{asked}", (*one.private, *one.texts), width)
    lines += _section(
        f"Confirmations: {len(rehearsed.questions)}",
        (f"{_at(rehearsed, one.at)} {one.question} {one.answer}" for one in rehearsed.questions),
        width,
    )
    lines += _section("Alarms", (f"{_at(rehearsed, one.at)} {one.what}" for one in rehearsed.alarms), width)
    return lines


def _counts(rehearsed: Rehearsed) -> str:
    asked = _count(len(rehearsed.questions), "confirmation")
    most = f" ({ASKS_PER_DAY} at most in an ordinary day)"
    return f"{_count(rehearsed.reminder_count, 'reminder')}, {asked}{most}, {_count(len(rehearsed.alarms), 'alarm')}"


def _count(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"


def _section(heading: str, texts: Iterable[str], width: int) -> list[str]:
    said = [
        line
        for text in texts
        for line in textwrap.wrap(text, width, initial_indent="  ", subsequent_indent="    ")
    ]
    return ["", heading, *said] if said else []


def _at(rehearsed: Rehearsed, moment: datetime) -> str:
    return day_text(moment, rehearsed.started).replace(" tomorrow", " next day")


def _line(rehearsed: Rehearsed, one: Happening) -> str:
    return f"{_at(rehearsed, one.at)}  {one.lane:<{_LANE_WIDTH}} {one.what}"
