"""The shelf as plain lines and as plain tables. Knows no screens."""

import textwrap
from dataclasses import asdict
from datetime import date, datetime
from typing import Any

from dyesession.shelf.model import KeptBath, Shelf
from dyesession.shelf.say import bath_sentences, demo_words, waiting_words, would_do_words

_LEAST_WIDTH = 40
CAUTIONS_SHOWN = 3


def shelf_lines(shelf: Shelf, width: int) -> list[str]:
    """The shelf line by line: baths, waiting fibre, what two days disagree about."""
    width = max(width, _LEAST_WIDTH)
    lines: list[str] = _wrapped(f"{demo_words(shelf)}.", "", width) if shelf.stood_on else []
    for bath in shelf.baths:
        lines += [*([""] if lines else []), *_bath(bath, width)]
    if shelf.waiting:
        lines += [*([""] if lines else []), "Mordanted, waiting for a bath"]
        lines += [text for one in shelf.waiting for text in _wrapped(waiting_words(one), "  ", width)]
    if shelf.told:
        lines += [*([""] if lines else []), "Does not add up"]
        lines += [text for one in shelf.told for text in _wrapped(f"{one.text}.", "  ", width)]
    return lines or ["Nothing stands on the shelf, and no mordanted fibre waits."]


def _bath(bath: KeptBath, width: int) -> list[str]:
    demo = " (demo)" if bath.demo else ""
    lines = _wrapped(f"{bath.label}{demo}, put by {bath.began_on or bath.kept_at.date()}, {bath.session}", "", width)
    for one in bath_sentences(bath):
        lines += _wrapped(f"{one[0].upper()}{one[1:]}.", "  ", width)
    for one in bath.cautions[:CAUTIONS_SHOWN]:
        lines += _wrapped(f"! {one}", "  ", width)
    return lines


def _wrapped(text: str, indent: str, width: int) -> list[str]:
    return textwrap.wrap(
        text, width, initial_indent=indent, subsequent_indent=f"{indent}  ", break_on_hyphens=False
    )


def shelf_as_json(shelf: Shelf) -> dict[str, Any]:
    """The shelf as another program reads it: grams, litres, bands, ISO dates."""
    tables = _plain(asdict(shelf))
    assert isinstance(tables, dict)
    for table, bath in zip(tables["baths"], shelf.baths, strict=True):
        table["say"] = list(bath_sentences(bath))
        if bath.would_do is not None:
            table["would_do"]["say"] = would_do_words(bath.would_do)
    return tables


def _plain(value: Any) -> Any:
    if isinstance(value, datetime):
        return value.isoformat(timespec="seconds")
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, dict):
        return {str(key): _plain(one) for key, one in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(one) for one in value]
    return value
