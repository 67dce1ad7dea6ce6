"""Finding days: by dyestuff, fibre, recipe, date, verdict, words in notes, or a colour near a target.

Pure. A condition is a word and a value, "dyestuff madder"; several must all hold. Colours are compared by
CIEDE2000; how near is near is our own choice, no source.
"""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from dyesession.colour.ciede2000 import de00
from dyesession.colour.readings import Reading, check_alike
from dyesession.colour.typed import read_colour
from dyesession.daybook.aftercare import aftercare_due
from dyesession.daybook.day_line import DayLine
from dyesession.errors import UserError
from dyesession.substances import find

NEAR = 10.0
EXAMPLE = (
    'for example "dyestuff madder", "fibre silk", "since 2026-03", "until 2026-09", "verdict even",'
    ' "notes mittens", "near #8b3a2b within 6", "kept", "due"'
)

Holds = Callable[[DayLine], bool]
_WITHIN = re.compile(r"\s+within\s+(\d+(?:[.,]\d+)?)$")
_ISO = re.compile(r"(\d{4})(?:-(\d{1,2})(?:-(\d{1,2}))?)?$")
_FIRST_LAST = ((1, 1), (12, 31))


class NotACondition(UserError):
    """A condition nobody can look for."""


@dataclass(frozen=True)
class Condition:
    """A condition as it was typed, and whether it holds of a day."""

    text: str
    holds: Holds


def condition(text: str, today: date) -> Condition:
    """Read one condition. Raises `NotACondition`, or what reading its colour raises."""
    word, _, value = re.sub(r"\s*[=:]\s*", " ", text.strip(), count=1).partition(" ")
    made, value = _MADE.get(word.casefold()), value.strip()
    if made is None:
        raise NotACondition(f'"{text}" does not begin with what to look for; {EXAMPLE}')
    if not value and word.casefold() not in _BARE:
        raise NotACondition(f'"{text}" does not say which {word}; {EXAMPLE}')
    return Condition(text, made(value, today))


def matching(lines: Iterable[DayLine], conditions: Sequence[Condition]) -> tuple[DayLine, ...]:
    """The days of which every condition holds, in the order they came in."""
    return tuple(one for one in lines if all(each.holds(one) for each in conditions))


def conditions(text: str, today: date) -> tuple[Condition, ...]:
    """Several conditions typed behind one another, parted by "," or "and"; words alone are looked for everywhere.

    Raises what `condition` raises.
    """
    parts = [one.strip() for one in _PARTED.split(text) if one.strip()]
    return tuple(_anywhere(one) if _first(one) not in _MADE else condition(one, today) for one in parts)


def _first(text: str) -> str:
    return re.split(r"[\s=:]", text, maxsplit=1)[0].casefold()


def _anywhere(text: str) -> Condition:
    """Every word somewhere in what the day tells: recipe, fibre, what went in, verdict, notes, kept baths."""
    wanted = text.casefold().split()

    def holds(line: DayLine) -> bool:
        told = (line.session, line.recipe, line.verdict, *line.dyed_with, *line.others, *line.notes, *line.kept,
                *(f"{one.kind} {one.name}" for one in line.fibre), *(one.result for one in line.cared))  # fmt: skip
        everything = " ".join(told).casefold()
        return all(word in everything for word in wanted)

    return Condition(text, holds)


def _in(value: str, texts: Iterable[str]) -> bool:
    wanted = value.casefold()
    return any(wanted in one.casefold() for one in texts)


def _dyestuff(value: str, _: date) -> Holds:
    return lambda line: _substance_in(value, line.dyed_with)


def _with(value: str, _: date) -> Holds:
    return lambda line: _substance_in(value, (*line.dyed_with, *line.others))


def _substance_in(value: str, names: Iterable[str]) -> bool:
    """By a piece of its name, or by any other name of the same substance."""
    meant = find(value)
    listed = tuple(names)
    if meant is not None and any((one := find(name)) and one.key == meant.key for name in listed):
        return True
    return _in(value, listed)


def _fibre(value: str, _: date) -> Holds:
    return lambda line: _in(value, (text for one in line.fibre for text in (one.kind, one.name)))


def _recipe(value: str, _: date) -> Holds:
    return lambda line: _in(value, (line.recipe, line.session))


def _verdict(value: str, _: date) -> Holds:
    return lambda line: _in(value, (line.verdict,))


def _notes(value: str, _: date) -> Holds:
    return lambda line: _in(value, (*line.notes, line.verdict, *(one.result for one in line.cared)))


def _since(value: str, _: date) -> Holds:
    first = _date(value, last=False)
    return lambda line: line.day >= first


def _until(value: str, _: date) -> Holds:
    last = _date(value, last=True)
    return lambda line: line.day <= last


def _on(value: str, _: date) -> Holds:
    first, last = _date(value, last=False), _date(value, last=True)
    return lambda line: first <= line.day <= last


def _date(value: str, *, last: bool) -> str:
    found = _ISO.match(value)
    if not found:
        raise NotACondition(f'"{value}" is no date; expected a year, a month or a day, for example 2026-03-14')
    year, month, day = found[1], found[2], found[3]
    usual = _FIRST_LAST[last]
    return f"{year}-{int(month or usual[0]):02}-{int(day or usual[1]):02}"


def _near(value: str, _: date) -> Holds:
    within = _WITHIN.search(value)
    limit = float(within[1].replace(",", ".")) if within else NEAR
    target = read_colour(_WITHIN.sub("", value))

    def holds(line: DayLine) -> bool:
        distance = nearest_colour(line, target)
        return distance is not None and distance <= limit

    return holds


def nearest_colour(line: DayLine, target: Reading) -> float | None:
    """How far the day's nearest dry colour is from a target by CIEDE2000; None where none can be compared."""
    found = []
    for one in line.colours:
        if one.wet:
            continue
        try:
            sample = read_colour(one.colour)
            check_alike(sample, target)
        except UserError:
            continue  # a colour told in words, or read by another light
        found.append(de00(target.lab, sample.lab))
    return min(found, default=None)


def _kept(value: str, _: date) -> Holds:
    return lambda line: bool(line.kept) and _in(value, line.kept)


def _due(value: str, today: date) -> Holds:
    return lambda line: any(_in(value, (one.what,)) for one in aftercare_due(line, today))


def _rehearsal(value: str, _: date) -> Holds:
    return lambda line: line.rehearsal


def _demo(value: str, _: date) -> Holds:
    return lambda line: line.demo


def _repeats(value: str, _: date) -> Holds:
    return lambda line: bool(line.from_logs) and _in(value, line.from_logs)


_MADE: dict[str, Callable[[str, date], Holds]] = {
    "dyestuff": _dyestuff, "with": _with, "fibre": _fibre, "recipe": _recipe, "verdict": _verdict,
    "notes": _notes, "since": _since, "until": _until, "on": _on, "near": _near, "kept": _kept, "due": _due,
    "rehearsal": _rehearsal, "demo": _demo, "repeats": _repeats,
}  # fmt: skip
_BARE = frozenset({"kept", "due", "rehearsal", "demo", "repeats"})
# Where one condition ends and the next begins: a comma or "and" before a word that begins one.
_PARTED = re.compile(rf"(?:\s*,|\s+and)\s+(?=(?:{'|'.join(_MADE)})\b)", re.IGNORECASE)
