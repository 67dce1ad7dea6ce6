"""One reading of a colour: the Lab, its honest ±, how and under what conditions it was read.

Knows nothing of texts, photos or dyes. The ± by what read it: our own synthesis of published abstracts (phone
colour without and with a chart: lawdata.com.tw 475787; a cheap LED sensor against a spectrophotometer, mean
1.50: Sensors 2018, 18(4) 1252) and of a simulation with two measured cameras; the spectrophotometer's from
memory. Wet fibre is another colour: Jasper & Jasper 2025, Fibers 13(4) 47.
"""

import math
from dataclasses import dataclass

from dyesession.colour.cielab import Lab
from dyesession.colour.trouble import OutOfRange, OutsideCloth, Unlike
from dyesession.colour.viewing import D65_2, Viewing

HOWS = ("weighed", "read", "matched", "typed", "planned", "modelled", "learned")
"""Where a figure comes from, one word of seven, as in the logs."""

PLUS_MINUS = {
    "spectrophotometer": 0.3,  # from memory, unverified
    "colorimeter": 1.5,  # a cheap sensor
    "typed": 0.5,  # figures taken at their word, to about half a unit: our own choice
    "eye": 7.5,  # picked by eye against a screen or a chart, 5 to 10
    "photo with card": 12.0,  # of an unknown light; `photo.LIGHTS` knows better where the light is known
    "photo": 25.0,
}
"""The ± of a reading by what read it, where nothing better is known: CIEDE2000, half of a 90 % band."""

_FARTHEST_FROM_GREY = 200.0  # no object colour lies beyond it; from memory, unverified
_MOST_LIGHTNESS = 100.0
_MOST_PLUS_MINUS = 100.0
_SLACK = 1e-6  # rounding of a white read as 100.0000001


@dataclass(frozen=True)
class Reading:
    """A colour as it was read.

    `plus_minus` is its whole ±, `repeats_within` the part of it that stays when two colours stand in one
    `frame` (the same photo, say). `by` says what read it, `how` is one of `HOWS`.
    """

    lab: Lab
    plus_minus: float
    how: str = "read"
    by: str = "colorimeter"
    wet: bool = False
    viewing: Viewing = D65_2
    repeats_within: float | None = None
    frame: str = ""
    conditions: str = ""

    def __post_init__(self) -> None:
        if self.how not in HOWS:
            raise OutOfRange(
                f"“{self.how}” is no way to come by a figure; expected one of {', '.join(HOWS)}."
            )
        if not 0.0 <= self.plus_minus <= _MOST_PLUS_MINUS:
            raise OutOfRange(
                f"The ± is {self.plus_minus:g}, but it must lie between 0 and 100, for example 1.5."
            )
        _check_possible(self.lab)

    @property
    def illuminant(self) -> str:
        """The CIE name of the light it was read under."""
        return self.viewing.illuminant

    @property
    def observer_deg(self) -> int:
        """The observer it was read for, 2 or 10 degrees."""
        return self.viewing.observer_deg


def _check_possible(lab: Lab) -> None:
    if not all(math.isfinite(one) for one in lab):
        raise OutOfRange("A colour needs three plain numbers, for example lab(42 45 30).")
    light, chroma = lab.lightness, lab.chroma
    if not -_SLACK <= light <= _MOST_LIGHTNESS + _SLACK or chroma > _FARTHEST_FROM_GREY:
        raise OutsideCloth(
            f"lab({light:.4g} {lab.a:.4g} {lab.b:.4g}) is a colour no cloth can show; expected L* from 0 to "
            "100 and a* and b* well within 200 of grey, for example lab(42 45 30)."
        )


def check_alike(first: Reading, second: Reading) -> None:
    """Raise `Unlike` when the two must not be compared or mixed."""
    check_dry(first)
    check_dry(second)
    if first.viewing != second.viewing:
        raise Unlike(
            f"One colour was read for {first.viewing} and the other for {second.viewing}; the same cloth has "
            f"other figures under each, so read both the same way, for example both for {first.viewing}."
        )


def check_dry(reading: Reading) -> None:
    """Raise `Unlike` for a wet reading."""
    if reading.wet:
        raise Unlike(
            "A wet colour was given, and wet fibre shows another colour than dry; expected a reading "
            'of the dry fibre, for example "lab(42 45 30) dry".'
        )


def plus_minus_between(first: Reading, second: Reading) -> float:
    """The ± of the difference of two readings; in one frame only what does not cancel counts."""
    if first.frame and first.frame == second.frame:
        return math.hypot(_within(first), _within(second))
    return math.hypot(first.plus_minus, second.plus_minus)


def _within(reading: Reading) -> float:
    return reading.plus_minus if reading.repeats_within is None else reading.repeats_within
