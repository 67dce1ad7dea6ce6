"""The grammar of an amount: figures and units, mixed units, sums and ranges.

`amount := sum [("to" | "or" | "-") sum]`, `sum := mixed {"+" mixed}`, `mixed := number unit {number unit}`,
largest unit first. Knows no doses; what the units mean is in `names`.
"""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from functools import wraps
from typing import TypeVar

from dyesession.units.cursor import LARGEST_NUMBER, Ask, Cursor, Number, Token, tokenise
from dyesession.units.kinds import Kind, Unit
from dyesession.units.names import ASKED, HOUSEHOLD, SYSTEMS, Option, kinds_called, sized
from dyesession.units.trouble import Ambiguous, UnitError, quoted

_LONGEST_NAME = 4  # words, as in "imperial fl oz"
_CONNECTORS = ("to", "or")

Answer = TypeVar("Answer")


@dataclass(frozen=True)
class Quantity:
    """An amount from `low` to `high`, exact, in the base unit its reader names; `text` is what was typed.

    Raises `ValueError` if the ends are the wrong way round.
    """

    low: Fraction
    high: Fraction
    text: str

    def __post_init__(self) -> None:
        if self.low > self.high:
            raise ValueError(f"a range cannot run from {self.low} down to {self.high}")

    @property
    def aim(self) -> Fraction:
        """The middle of the range: what one weighs when the book leaves it open."""
        return (self.low + self.high) / 2

    @property
    def is_range(self) -> bool:
        """Whether the two ends differ."""
        return self.low != self.high


@dataclass(frozen=True)
class Amount:
    """A range read so far; `kind` is None for bare figures, `unit` the first unit named."""

    low: Fraction
    high: Fraction
    kind: Kind | None


@dataclass(frozen=True)
class _Part:
    """One end of a range, or one term of a sum: its size, its first figure and its first and last unit."""

    size: Fraction
    figure: Number
    unit: Unit | None = None
    last: Unit | None = None

    def in_unit(self, unit: Unit) -> "_Part":
        return _Part(self.size * unit.size, self.figure, unit, unit)


@dataclass(frozen=True)
class _Found:
    """A unit's name in the text: the unit or the question it raises, and the marks it takes up."""

    unit: Unit
    options: tuple[Option, ...]
    taken: int
    name: str


def asking(read: Callable[[str], Answer]) -> Callable[[str], Answer]:
    """Make a reader offer only choices that it reads itself without asking again."""

    @wraps(read)
    def reader(text: str) -> Answer:
        try:
            return read(text)
        except Ambiguous as unclear:
            clear = tuple(choice for choice in unclear.choices if _reads(read, choice.text))
            if not clear:
                why = "is unclear in more than one way; write each unit out"
                raise UnitError(f"{quoted(text)} {why}, for example “1 oz per imperial gallon”.") from None
            raise Ambiguous(unclear.question, clear) from None

    return reader


def _reads(read: Callable[[str], Answer], text: str) -> bool:
    try:
        read(text)
    except UnitError:
        return False
    return True


def amount(cursor: Cursor, kinds: tuple[Kind, ...]) -> Amount | None:
    """Read an amount; of a unit with two meanings the one in `kinds` is taken. None if no figure is next.

    Raises `UnitError` for a range that runs downwards, unlike units, or an end without a unit.
    """
    low = _sum(cursor, kinds)
    if low is None:
        return None
    high = low
    if range_follows(cursor) and not (low.unit and low.unit.kind is Kind.PARTS):  # "5 parts to 32" is a share
        dash = cursor.sees("dash")
        cursor.at += 1
        high = _needed(cursor, _sum(cursor, kinds))
        if dash and _may_be_one_figure(low, high):
            high = low = _half_or_range(cursor, low, high)
        low, high = _alike(cursor, low, high)
    if low.size > high.size:
        cursor.refuse("runs downwards; write the smaller figure first")
    if high.size > LARGEST_NUMBER:
        cursor.refuse("is more than any kitchen holds")
    return Amount(low.size, high.size, low.unit.kind if low.unit else None)


def range_follows(cursor: Cursor) -> bool:
    """Say whether a connector and a second figure come next."""
    connector = cursor.sees("dash") or cursor.peek().key in _CONNECTORS
    return connector and (cursor.sees_number(1) or cursor.peek(1).sort == "dash")


def _needed(cursor: Cursor, part: _Part | None) -> _Part:
    if part is None:
        cursor.refuse("has a range with one end missing")
    return part


def _may_be_one_figure(low: _Part, high: _Part) -> bool:
    """Tell `3-1/2 oz`, which some books write for three and a half, from a range that runs upwards."""
    return low.unit is None and low.figure.whole and high.figure.split and low.size > high.figure.value


def _half_or_range(cursor: Cursor, low: _Part, high: _Part) -> _Part:
    """Note the question of `3-1/2 oz`: three and a half, or from a half to three."""
    whole, half = (cursor.text[f.start : f.end] for f in (low.figure, high.figure))
    options = (
        Option(f"{whole} and {half}, one figure", f"{whole} {half}"),
        Option(f"from {half} to {whole}", f"{half} to {whole}"),
    )
    question = f"What does the dash mean in {quoted(cursor.text)}?"
    cursor.asks.append(Ask(question, low.figure.start, high.figure.end, options))
    extra = low.size * high.unit.size if high.unit else low.size
    return _Part(high.size + extra, low.figure, high.unit, high.last)


def _alike(cursor: Cursor, low: _Part, high: _Part) -> tuple[_Part, _Part]:
    """Lend the unit of one end to the other, and insist that both measure one thing."""
    if low.unit is None and high.unit is not None:
        low = low.in_unit(high.unit)
    elif high.unit is None and low.unit is not None:
        if low.unit is not low.last:
            cursor.refuse("has a second figure without a unit")
        high = high.in_unit(low.unit)
    if low.unit and high.unit and low.unit.kind is not high.unit.kind:
        cursor.refuse(f"runs from {low.unit.kind.value} to {high.unit.kind.value}")
    return low, high


def _sum(cursor: Cursor, kinds: tuple[Kind, ...]) -> _Part | None:
    """Read terms joined by plus signs; a bare term takes the unit of the next that has one."""
    first = _mixed(cursor, kinds)
    if first is None:
        return None
    terms = [first]
    while cursor.sees("plus"):
        cursor.at += 1
        term = _mixed(cursor, kinds)
        if term is None:
            cursor.refuse("has a plus sign with nothing after it")
        terms.append(term)
    return _added(cursor, terms)


def _added(cursor: Cursor, terms: list[_Part]) -> _Part:
    unit = terms[-1].unit
    for place in range(len(terms) - 1, -1, -1):
        term = terms[place]
        if term.unit is None and unit is not None:
            terms[place] = term.in_unit(unit)
        elif (term.unit and term.unit.kind) is not (unit and unit.kind):
            cursor.refuse("adds unlike things")
        unit = term.unit or unit
    size = sum((term.size for term in terms), Fraction())
    return _Part(size, terms[0].figure, terms[0].unit, terms[-1].last)


def _mixed(cursor: Cursor, kinds: tuple[Kind, ...]) -> _Part | None:
    """Read `2 lb 3 oz`: each further unit of the same kind, and smaller."""
    figure = cursor.number()
    if figure is None:
        return None
    unit = take_unit(cursor, kinds)
    if unit is None:
        return _Part(figure.value, figure)
    size, last = figure.value * unit.size, unit
    while (further := _further(cursor, kinds, last)) is not None:
        size, last = size + further.size, further.unit or last
    if unit.kind is Kind.TIME and last.size == _HOUR_MIN:
        size += _bare_minutes(cursor)
    return _Part(size, figure, unit, last)


_HOUR_MIN = Fraction(60)
_MIXED = (Kind.MASS, Kind.VOLUME, Kind.LENGTH, Kind.TIME)


def _further(cursor: Cursor, kinds: tuple[Kind, ...], last: Unit) -> _Part | None:
    """Read one more figure and unit if they belong to the same mixed amount; otherwise stay where we were."""
    place, asked = cursor.at, len(cursor.asks)
    if cursor.sees("comma") or cursor.peek().key == "and":
        cursor.at += 1
    figure = cursor.number() if cursor.sees_number() else None
    unit = take_unit(cursor, kinds) if figure else None
    if figure is None or unit is None or unit.kind is not last.kind or unit.kind not in _MIXED:
        cursor.at = place
        del cursor.asks[asked:]
        return None
    if unit.size >= last.size:
        cursor.refuse("names its units out of order; write the larger first, or put a plus sign between")
    return _Part(figure.value * unit.size, figure, unit, unit)


def _bare_minutes(cursor: Cursor) -> Fraction:
    """Read the 15 of `1 h 15`."""
    bare = cursor.sees("number") and cursor.peek().text.isdigit()
    if not bare or cursor.peek(1).sort in ("slash", "word"):
        return Fraction()
    minutes = cursor.number()
    if minutes is None or minutes.value >= _HOUR_MIN:
        cursor.refuse("has sixty minutes or more after the hours")
    return minutes.value


def take_unit(cursor: Cursor, kinds: tuple[Kind, ...]) -> Unit | None:
    """Read a unit's name, longest first, noting a question where the name has several meanings."""
    found = _find_unit(cursor.tokens, cursor.at, kinds)
    if found is None:
        return None
    if found.options:
        start, end = cursor.peek().start, cursor.peek(found.taken - 1).end
        question = f"What does {quoted(found.name)} mean in {quoted(cursor.text)}?"
        cursor.asks.append(Ask(question, start, end, _spaced(cursor.text, start, found.options)))
    cursor.at += found.taken
    return found.unit


def _spaced(text: str, start: int, options: tuple[Option, ...]) -> tuple[Option, ...]:
    """Keep a word off the figure before it when it is put into the text."""
    gap = " " if start and text[start - 1].isdigit() else ""
    return tuple(Option(option.label, gap + option.words) for option in options)


def _find_unit(tokens: tuple[Token, ...], at: int, kinds: tuple[Kind, ...]) -> _Found | None:
    words = []
    for token in tokens[at : at + _LONGEST_NAME]:
        if token.sort != "word":
            break
        words.append(token.key)
    for count in range(len(words), 0, -1):
        after = tokens[at + count] if at + count < len(tokens) else None
        bracket = SYSTEMS.get(after.key) if after and after.sort == "paren" else None
        found = _named(words[:count], bracket, kinds)
        if found is not None:
            return found
    return None


def _named(words: list[str], bracket: str | None, kinds: tuple[Kind, ...]) -> _Found | None:
    """Look a name up: with the system in brackets after it, then before it, then bare."""
    name = " ".join(words)
    ways = [(bracket, name, len(words) + 1)] if bracket else []
    if words[0] in SYSTEMS:
        ways.append((SYSTEMS[words[0]], " ".join(words[1:]), len(words)))
    ways.append(("", name, len(words)))
    for system, called, taken in ways:
        kind = _best_kind(system or "", called, kinds)
        if kind is not None:
            return _Found(sized(system or "", called, kind), (), taken, called)
    if name in ASKED:
        meaning = _find_unit(tokenise(ASKED[name][0].words), 0, kinds)
        return _Found(meaning.unit, ASKED[name], len(words), name) if meaning else None
    return _Found(Unit(Kind.HOUSEHOLD, Fraction(1)), (), len(words), name) if name in HOUSEHOLD else None


def _best_kind(system: str, name: str, kinds: tuple[Kind, ...]) -> Kind | None:
    called = kinds_called(system, name)
    return next((kind for kind in kinds if kind in called), called[0] if called else None)


def demand(cursor: Cursor, found: Amount | None, kind: Kind) -> Amount:
    """Insist that an amount was found and measures `kind`; the messages say what was found instead."""
    if found is None:
        figures = any(token.sort in ("number", "vulgar") for token in cursor.tokens)
        cursor.refuse("does not begin with a number" if figures else "has no number in it")
    if found.kind is kind:
        return found
    if found.kind is not None:
        cursor.refuse(f"is {found.kind.value}, not {kind.value}")
    if cursor.sees("word"):
        cursor.refuse(f"has no unit this program knows ({quoted(cursor.peek().text)})")
    cursor.refuse("has no unit")
