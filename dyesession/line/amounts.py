"""Amounts as they are typed at the prompt: a bare figure takes the unit the act has, and the rest is `units`.

Knows no session. Bare figures are grams, litres, degrees Celsius and minutes, and are always said back.
A figure below nought is read as it stands: whether it can be is asked elsewhere.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta

from dyesession.line.trouble import LineError
from dyesession.units import (
    HeatWord,
    Overnight,
    Quantity,
    UnitError,
    quoted,
    read_duration,
    read_mass,
    read_percent,
    read_signed_temperature,
    read_volume,
    show_duration,
    show_figure,
    show_mass,
    show_percent,
    show_temperature,
    show_volume,
    sign_of,
)

_BARE = re.compile(r"[0-9][0-9.,]*(?: ?[0-9]+/[0-9]+)?|[0-9]+/[0-9]+|[0-9]* ?[¼½¾⅓⅔⅛⅜⅝⅞]|\.[0-9]+")
_PERCENT = 100.0


@dataclass(frozen=True)
class Typed:
    """An amount in the base unit of its sort, as typed, and as this program says it back.

    `sort` is "temperature" (°C), "mass" (g), "volume" (L), "time" (min) or "share" (1 is the whole).
    """

    sort: str
    value: float
    text: str
    shown: str

    @property
    def echo(self) -> str:
        """What was understood, where that is not plain from what was typed."""
        plain = " ".join(self.text.casefold().split())
        if is_bare(self.text):
            return f"{self.shown}."
        return "" if plain == self.shown.casefold() else f"{self.text.strip()} is {self.shown}."


def is_bare(text: str) -> bool:
    """Whether a text is one figure without a unit."""
    return _BARE.fullmatch(text.strip()) is not None


def _single(text: str, quantity: Quantity) -> float:
    if quantity.is_range:
        raise LineError(f"{quoted(text)} is a range; expected one figure that was read, for example 82.")
    return float(quantity.aim)


def _with_unit(text: str, unit: str) -> str:
    return f"{text.strip()} {unit}" if is_bare(text) else text.strip()


def _shown(show: Callable[[float], str], value: float) -> str:
    return show(round(value, 9))


def mass(text: str) -> Typed:
    """Read grams; a bare figure is grams. Raises `UnitError` or `LineError`."""
    sign, bare = sign_of(text)
    value = sign * _single(text, read_mass(_with_unit(bare, "g")))
    return Typed("mass", value, text, _shown(show_mass, value))


def volume(text: str) -> Typed:
    """Read litres; a bare figure is litres. Raises `UnitError` or `LineError`."""
    sign, bare = sign_of(text)
    value = sign * _single(text, read_volume(_with_unit(bare, "l")))
    return Typed("volume", value, text, _shown(show_volume, value))


def temperature(text: str) -> Typed:
    """Read degrees Celsius; a bare figure is Celsius, a heat word its middle. Raises `UnitError` or
    `LineError`.
    """
    found = read_signed_temperature(text.strip())
    value = float(found.aim) if isinstance(found, HeatWord) else _single(text, found)
    return Typed("temperature", round(value, 2), text, _shown(show_temperature, value))


def minutes(text: str) -> Typed:
    """Read minutes; a bare figure is minutes. Raises `UnitError` or `LineError`."""
    found = read_duration(_with_unit(text, "min"))
    if isinstance(found, Overnight):
        raise LineError("“overnight” has no length here; expected a time, for example 15 min.")
    value = _single(text, found)
    return Typed("time", value, text, show_duration(value))


def share(text: str) -> Typed:
    """Read a strength on one linear scale: `31 %` is 0.31, a bare figure itself. Raises `UnitError` or
    `LineError`.
    """
    sign, bare = sign_of(text)
    if not is_bare(bare):
        value = sign * _single(text, read_percent(bare.strip())) / _PERCENT
        return Typed("share", value, text, show_percent(value * _PERCENT))
    value = plain(text)
    return Typed("share", value, text, show_figure(value))


def plain(text: str) -> float:
    """Read a bare decimal figure, with a point or a comma. Raises `LineError`."""
    try:
        return float(text.strip().replace(",", "."))
    except ValueError:
        raise LineError(f"{quoted(text)} is not a figure; expected one, for example 4.5.") from None


def any_sort(text: str) -> Typed | None:
    """Read an amount by the unit that stands with it; None for a bare figure. Raises `UnitError` when none
    fits.
    """
    if is_bare(text):
        return None
    for read in (temperature, mass, volume, minutes, share):
        try:
            return read(text)
        except UnitError as trouble:
            if type(trouble) is not UnitError and read is not mass:
                raise
    raise LineError(
        f"{quoted(text)} is no amount this program can read; expected a figure with its unit, "
        "for example 82 C, 1.8 l or 29 g."
    )


Ago = timedelta | None

_AGO = re.compile(r"(?P<before>.*?)[,;]?\s+(?P<ago>\d[^,;]*?)\s+ago\s*", re.IGNORECASE | re.DOTALL)
LONGEST_AGO_MIN = 24 * 60.0  # what happened earlier belongs in a note; our own choice, no source


def split_ago(text: str) -> tuple[str, timedelta | None]:
    """Split `temperature B 82, 10 min ago` into the act and how long ago; None where it is not said."""
    found = _AGO.fullmatch(text)
    if found is None:
        return text, None
    ago, before = found["ago"], found["before"]
    words = ago.split()
    for index in range(len(words)):
        try:
            read = minutes(" ".join(words[index:]))
        except (UnitError, LineError):
            continue
        if read.value > LONGEST_AGO_MIN or is_bare(" ".join(words[index:])):
            break
        return f"{before} {' '.join(words[:index])}".strip(), timedelta(minutes=read.value)
    raise LineError(
        f"{quoted(ago)} does not say how long ago, within a day; "
        "expected for example “temperature B 82, 10 min ago”."
    )
