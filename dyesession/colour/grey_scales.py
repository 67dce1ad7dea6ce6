"""Fastness grades from two readings: how much a colour changed, and how much a white cloth was stained.

Knows nothing of tests or of dyes. Change: ISO 105-A05; staining: ISO 105-A04. Neither text was read; the
formulas stand alike in two independent public re-implementations, and give the right grade for the steps of
the scales themselves (EN 20105-A02:1994, preview read; A03's steps from one of the two). The standards mean
D65/10 degrees or C/2 and an instrument; from other readings a grade is "about grade 3-4", from a phone's
photo or by eye only slight, clear or strong.
"""

import math
from dataclasses import dataclass

from dyesession.colour.cielab import Lab
from dyesession.colour.readings import Reading, check_alike

# ISO 105-A05: grade, and the difference from which the next lower grade begins.
_CHANGE_BELOW = (
    (0.40, 5.0), (1.25, 4.5), (2.10, 4.0), (2.95, 3.5), (4.10, 3.0), (5.80, 2.5), (8.20, 2.0), (11.60, 1.5),
)  # fmt: skip
_WORST, _BEST = 1.0, 5.0
# ISO 105-A05's formula.
_HUE_CENTRE_DEG, _HUE_WIDTH_DEG, _TURN_SCALE = 280.0, 30.0, 100.0
_CHROMA_STEP, _HUE_STEP, _THOUSAND = 20.0, 10.0, 1000.0
_STRAIGHT_TO, _STRAIGHT_STEP, _LOG_UNIT = 3.4, 1.7, 0.85
# ISO 105-A04's formula.
_COLOUR_SHARE, _SSR_TOP, _SSR_LOG, _SSR_JOIN, _SSR_STEP = 0.4, 6.1, 1.45, 4.0, 0.23
_FULL, _HALF = 360.0, 180.0
_COARSE = ("photo", "eye")  # what a half grade would be too fine for

# Words from a phone's photo, down to and with this grade: our own choice.
_WORDS = ((4.75, "none to be seen"), (3.75, "slight"), (2.25, "clear"))
_STRONGEST = "strong"


@dataclass(frozen=True)
class Grade:
    """A grade of a grey scale, 5 (none) to 1 in halves; `exact` before rounding; and how to say it."""

    grade: float
    exact: float
    difference: float
    words: str


def change_of_colour(before: Reading, after: Reading) -> Grade:
    """How much a dyed cloth changed, ISO 105-A05. Both dry and alike, or `Unlike` is raised."""
    check_alike(before, after)
    difference = change_difference(before.lab, after.lab)
    grade = next((grade for below, grade in _CHANGE_BELOW if difference < below), _WORST)
    return Grade(grade, change_grade_exact(difference), difference, _said(grade, before, after))


def staining(before: Reading, after: Reading) -> Grade:
    """How much an undyed cloth was stained, ISO 105-A04. Both dry and alike, or `Unlike` is raised."""
    check_alike(before, after)
    difference = staining_difference(before.lab, after.lab)
    exact = staining_grade_exact(difference)
    grade = min(max(math.floor(2.0 * exact + 0.5) / 2.0, _WORST), _BEST)
    return Grade(grade, exact, difference, _said(grade, before, after))


def change_difference(before: Lab, after: Lab) -> float:
    """The weighted difference of ISO 105-A05, 0 or more."""
    middle_c = (before.chroma + after.chroma) / 2.0
    apart = abs(_middle_hue(before, after) - _HUE_CENTRE_DEG)
    off = (apart if apart <= _HALF else _FULL - apart) / _HUE_WIDTH_DEG
    chroma, hue = after.chroma - before.chroma, _hue_step(before, after)
    share = middle_c * math.exp(-(off**2)) / _TURN_SCALE
    turned = chroma * share
    hue_f = (hue - turned) / (1.0 + (_HUE_STEP * middle_c / _THOUSAND) ** 2)
    chroma_f = (chroma - turned) / (1.0 + (_CHROMA_STEP * middle_c / _THOUSAND) ** 2)
    return math.sqrt((after.lightness - before.lightness) ** 2 + chroma_f**2 + hue_f**2)


def change_grade_exact(difference: float) -> float:
    """The grade of change before it is rounded, 1 to 5."""
    if difference <= _STRAIGHT_TO:
        return _BEST - difference / _STRAIGHT_STEP
    return max(_WORST, _BEST - math.log2(difference / _LOG_UNIT))


def staining_difference(before: Lab, after: Lab) -> float:
    """The weighted difference of ISO 105-A04, 0 or more."""
    lightness = after.lightness - before.lightness
    whole = math.dist(before, after)
    return whole - _COLOUR_SHARE * math.sqrt(max(0.0, whole**2 - lightness**2))


def staining_grade_exact(difference: float) -> float:
    """The grade of staining before it is rounded; a little below 1 for the heaviest."""
    if difference <= 0.0:
        return _BEST
    grade = _SSR_TOP - _SSR_LOG * math.log(difference)
    return grade if grade <= _SSR_JOIN else _BEST - _SSR_STEP * difference


def shown(grade: float) -> str:
    """A grade as the trade writes it: 3.5 is "3-4"."""
    whole = math.floor(grade)
    return f"{whole}" if grade == whole else f"{whole}-{whole + 1}"


def _said(grade: float, *readings: Reading) -> str:
    if not any(one.by.startswith(_COARSE) for one in readings):
        return f"about grade {shown(grade)}"
    return next((word for least, word in _WORDS if grade >= least), _STRONGEST)


def _middle_hue(before: Lab, after: Lab) -> float:
    together, apart = before.hue_deg + after.hue_deg, abs(before.hue_deg - after.hue_deg)
    if apart <= _HALF:
        return together / 2.0
    return together / 2.0 + (_HALF if together < _FULL else -_HALF)


def _hue_step(before: Lab, after: Lab) -> float:
    """The hue difference with the sign of its turn."""
    turn = math.remainder(math.radians(after.hue_deg - before.hue_deg), math.tau)
    return 2.0 * math.sqrt(before.chroma * after.chroma) * math.sin(turn / 2.0)
