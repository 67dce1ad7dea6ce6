"""Readers of heat and of time: degrees or a cook's word, minutes or overnight.

Knows no recipes and no clock. The Fahrenheit scale is its definition; the words are common practice, no
source.
"""

from enum import Enum
from fractions import Fraction
from typing import NoReturn

from dyesession.units.amount import Quantity, amount, asking, demand, range_follows
from dyesession.units.cursor import Ask, Cursor
from dyesession.units.kinds import Kind
from dyesession.units.names import Option
from dyesession.units.trouble import Ambiguous, Choice, Wanted, quoted

TEMPERATURE = Wanted("a temperature", "85 degC")
DURATION = Wanted("a time", "1 h 15 min")

FAHRENHEIT_FREEZING = 32
CELSIUS_PER_FAHRENHEIT = Fraction(5, 9)
# An open pan stops near 100, so a bare figure above this is asked about. Common practice, no source.
BARE_CELSIUS_MOST = 110
_PER_HOUR = 60  # minutes to the hour, and seconds to the minute

_CELSIUS = ("c", "° c", "degc", "celsius", "centigrade", "℃")
_FAHRENHEIT = ("f", "° f", "degf", "fahrenheit", "℉")
_DEGREES = ("deg", "degs", "degree", "degrees", "°", "º", "˚")


class HeatWord(Enum):
    """Heat as a kitchen without a thermometer knows it; `low_c` to `high_c` degC.

    Common practice, no source. Boiling is given as at sea level: a kitchen higher up boils cooler.
    """

    HAND_HOT = ("hand-hot", 40, 45)
    STEAMING = ("steaming", 60, 75)
    SIMMERING = ("simmering", 85, 95)
    BOILING = ("boiling", 100, 100)

    @property
    def word(self) -> str:
        """The word as it is shown and written in a recipe."""
        return str(self.value[0])

    @property
    def low_c(self) -> Fraction:
        """The lower end in degC."""
        return Fraction(self.value[1])

    @property
    def high_c(self) -> Fraction:
        """The upper end in degC."""
        return Fraction(self.value[2])

    @property
    def aim(self) -> Fraction:
        """The middle in degC."""
        return (self.low_c + self.high_c) / 2


# Below each word's low end, and within it; common practice, no source.
_BY_EYE = (
    (HeatWord.HAND_HOT, "lukewarm", "hand-hot"),
    (HeatWord.STEAMING, "hot, not steaming", "steaming"),
    (HeatWord.SIMMERING, "steaming, not simmering", "a simmer"),
)


def by_eye(degrees_c: float) -> str:
    """How a heat looks where nobody can measure it: “steaming”, “a simmer”, “the boil”."""
    for word, below, within in _BY_EYE:
        if degrees_c <= word.high_c:
            return within if degrees_c >= word.low_c else below
    return "the boil"


_HEAT_WORDS = {
    "hand-hot": HeatWord.HAND_HOT, "hand hot": HeatWord.HAND_HOT, "handhot": HeatWord.HAND_HOT,
    "steaming": HeatWord.STEAMING, "simmering": HeatWord.SIMMERING, "simmer": HeatWord.SIMMERING,
    "a simmer": HeatWord.SIMMERING, "boiling": HeatWord.BOILING, "boil": HeatWord.BOILING,
    "the boil": HeatWord.BOILING,
}  # fmt: skip


class Overnight(Enum):
    """A time that ends in the morning rather than after so many minutes."""

    OVERNIGHT = "overnight"


OVERNIGHT = Overnight.OVERNIGHT
_SPOKEN_TIMES = {"a quarter of an hour": 15, "half an hour": 30, "an hour": 60, "one hour": 60}


def celsius(fahrenheit: Fraction) -> Fraction:
    """Turn degF into degC, exactly."""
    return (fahrenheit - FAHRENHEIT_FREEZING) * CELSIUS_PER_FAHRENHEIT


def fahrenheit(degrees_c: Fraction) -> Fraction:
    """Turn degC into degF, exactly."""
    return degrees_c / CELSIUS_PER_FAHRENHEIT + FAHRENHEIT_FREEZING


def _spoken(text: str) -> str:
    return " ".join(text.casefold().split())


@asking
def read_temperature(text: str) -> Quantity | HeatWord:
    """Read degC from `85 degC`, `85 °C`, `185 F`, `80-85 °C` or a bare `85`, or a heat word.

    Raises `Ambiguous` for a bare figure above 110, `UnitError` for anything else.
    """
    cursor = Cursor(text, TEMPERATURE)
    if (word := _HEAT_WORDS.get(_spoken(text))) is not None:
        return word
    low, low_scale = _degrees(cursor)
    high, high_scale = low, low_scale
    if range_follows(cursor):
        cursor.at += 1
        high, high_scale = _degrees(cursor)
    if high_scale is None and low_scale is None and cursor.at_end and high > BARE_CELSIUS_MOST:
        cursor.asks.append(_which_scale(text))
    low, high = _as_celsius(low, low_scale or high_scale), _as_celsius(high, high_scale or low_scale)
    if low > high:
        cursor.refuse("runs downwards; write the lower figure first")
    cursor.settle()
    return Quantity(low, high, text)


def _degrees(cursor: Cursor) -> tuple[Fraction, str | None]:
    """Read a figure and its scale, which may be missing."""
    figure = cursor.number()
    if figure is None:
        words = ", ".join(word.word for word in HeatWord)
        cursor.refuse(f"is neither degrees nor one of {words}")
    cursor.skip(*_DEGREES)
    if cursor.skip(*_CELSIUS):
        return figure.value, "C"
    return figure.value, "F" if cursor.skip(*_FAHRENHEIT) else None


def _as_celsius(degrees: Fraction, scale: str | None) -> Fraction:
    return celsius(degrees) if scale == "F" else degrees


def _which_scale(text: str) -> Ask:
    options = (Option("Fahrenheit", f"{text.strip()} degF"), Option("Celsius", f"{text.strip()} degC"))
    return Ask(f"Which degrees are meant in {quoted(text)}?", 0, len(text), options)


@asking
def read_duration(text: str) -> Quantity | Overnight:
    """Read minutes from `45 min`, `1 h 15`, `1.5 h`, `2 to 3 days`, `half an hour`, `overnight`.

    Raises `Ambiguous` for `1:15`, `UnitError` for anything else.
    """
    cursor = Cursor(text, DURATION)
    if _spoken(text) in ("overnight", "over night"):
        return OVERNIGHT
    if (minutes := _SPOKEN_TIMES.get(_spoken(text))) is not None:
        return Quantity(Fraction(minutes), Fraction(minutes), text)
    if cursor.sees("number", "colon", "number"):
        _ask_colon(cursor)
    found = demand(cursor, amount(cursor, (Kind.TIME,)), Kind.TIME)
    cursor.settle()
    return Quantity(found.low, found.high, text)


def _ask_colon(cursor: Cursor) -> NoReturn:
    """Ask whether `1:15` is hours and minutes or minutes and seconds."""
    before, after = cursor.peek().text, cursor.peek(2).text
    if len(cursor.tokens) > len(("before", ":", "after")) or not (before.isdigit() and after.isdigit()):
        cursor.refuse("has a colon in it")
    if len(before) > 3 or len(after) > 3 or int(after) >= _PER_HOUR:
        cursor.refuse("has sixty or more after the colon")
    hours = f"{int(before)} h {int(after)} min"
    minutes = f"{int(before)} min {int(after)} s"
    choices = (Choice("hours and minutes", hours), Choice("minutes and seconds", minutes))
    raise Ambiguous(f"What does the colon mean in {quoted(cursor.text)}?", choices)
