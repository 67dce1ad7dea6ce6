"""Tags for finished skeins: recipe, lot, date, colour. Pure; a tag tells what a wearer and a repeater want.

Written from one line of the day book. Black on white; a colour is its hex beside its patch, never alone.
"""

import textwrap
from dataclasses import dataclass

from dyesession.colour.logged import screen_hex
from dyesession.daybook.day_line import CareLine, DayLine
from dyesession.substances import find
from dyesession.units import show_mass

NARROWEST = 28
_NAMES = 9


@dataclass(frozen=True)
class Tag:
    """One lot's tag, its fields in the order they are read; `colour` is a hex, "" where none was read."""

    lot: str
    colour: str
    rows: tuple[tuple[str, str], ...]


def tags_of(line: DayLine) -> tuple[Tag, ...]:
    """A tag for every lot of the day that is fibre."""
    return tuple(_tag(line, one.name) for one in line.fibre)


def _tag(line: DayLine, name: str) -> Tag:
    lot = next(one for one in line.fibre if one.name == name)
    colour = next((one.colour for one in reversed(line.colours) if one.lot in ("", name) and not one.wet), "")
    cared = [one for one in line.cared if one.lot in ("", name) and one.result]
    rows = (
        ("skein", f"{name}, {show_mass(lot.mass_g)} {lot.kind}"),
        ("dyed", f"{line.day}{' (rehearsal)' if line.rehearsal else ' (demo)' if line.demo else ''}"),
        ("recipe", line.recipe),
        ("with", ", ".join(line.dyed_with)),
        ("over", ", ".join(one for one in line.others if not only_washes(one))),
        ("colour", colour),
        ("tried", "; ".join(_tried(one) for one in cared)),
        ("log", line.session),
    )
    return Tag(name, screen_hex(colour), tuple(row for row in rows if row[1]))


def only_washes(name: str) -> bool:
    """Nobody dyes over a washing powder."""
    found = find(name)
    return found is not None and found.roles == ("scour",)


def _tried(one: CareLine) -> str:
    return f"{one.what}: {one.result}"


def tag_lines(tag: Tag, width: int = 52) -> tuple[str, ...]:
    """The tag in a frame, every line `width` cells wide. Raises ValueError below 28 cells."""
    if width < NARROWEST:
        raise ValueError(f"a tag {width} wide: expected {NARROWEST} or more")
    inner = width - 4
    body = []
    for name, text in tag.rows:
        for i, line in enumerate(textwrap.wrap(text, inner - _NAMES)):
            body.append(f"{'' if i else name:{_NAMES}}{line}")
    rule = "─" * (width - 2)
    return (f"┌{rule}┐", *(f"│ {one:{inner}} │" for one in body), f"└{rule}┘")
