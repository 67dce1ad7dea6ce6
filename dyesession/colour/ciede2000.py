"""CIEDE2000, the size of a colour difference as the eye judges it, with its parts kept apart.

Knows nothing of readings or words. Formula: Sharma, Wu & Dalal 2005, Color Research & Application 30(1),
21-30, doi 10.1002/col.20070 (also ISO/CIE 11664-6); kL = kC = kH = 1.
"""

import math
from dataclasses import dataclass

from dyesession.colour.cielab import Lab

# All from Sharma, Wu & Dalal 2005, equations 2 to 22.
_KNEE = 25.0**7
_FULL, _HALF = 360.0, 180.0
_L_MIDDLE, _L_BOWL, _L_SOFT = 50.0, 0.015, 20.0
_C_STEP, _H_STEP = 0.045, 0.015
_T_WAVES = ((-0.17, 1, -30.0), (0.24, 2, 0.0), (0.32, 3, 6.0), (-0.20, 4, -63.0))
_BLUE_DEG, _BLUE_WIDTH_DEG, _BLUE_TURN_DEG = 275.0, 25.0, 30.0


@dataclass(frozen=True)
class Parts:
    """A difference taken apart: lightness, chroma and hue in units of the whole, and the turn of blues."""

    lightness: float
    chroma: float
    hue: float
    turn: float

    @property
    def whole(self) -> float:
        """The difference itself, 0 or more."""
        squares = self.lightness**2 + self.chroma**2 + self.hue**2 + self.turn * self.chroma * self.hue
        return math.sqrt(max(0.0, squares))


def de00(standard: Lab, trial: Lab) -> float:
    """CIEDE2000 between two Lab of like illuminant and observer, 0 or more; the order does not matter."""
    return parts(standard, trial).whole


def parts(standard: Lab, trial: Lab) -> Parts:
    """The parts of the difference; above 0 the trial is lighter, of higher chroma, turned on in hue."""
    stretch = _stretch((standard.chroma + trial.chroma) / 2.0)
    first, second = (Lab(lab.lightness, lab.a * (1.0 + stretch), lab.b) for lab in (standard, trial))
    chroma_product = first.chroma * second.chroma
    turn_deg = _turn_deg(first.hue_deg, second.hue_deg) if chroma_product else 0.0
    middle_c = (first.chroma + second.chroma) / 2.0
    middle_h = _middle_hue(first, second)
    hue_step = 2.0 * math.sqrt(chroma_product) * math.sin(math.radians(turn_deg) / 2.0)
    return Parts(
        lightness=(trial.lightness - standard.lightness)
        / _s_lightness((standard.lightness + trial.lightness) / 2.0),
        chroma=(second.chroma - first.chroma) / (1.0 + _C_STEP * middle_c),
        hue=hue_step / (1.0 + _H_STEP * middle_c * _waves(middle_h)),
        turn=_blue_turn(middle_c, middle_h),
    )


def _high_chroma_share(chroma: float) -> float:
    return math.sqrt(chroma**7 / (chroma**7 + _KNEE))


def _stretch(middle_chroma: float) -> float:
    return 0.5 * (1.0 - _high_chroma_share(middle_chroma))


def _turn_deg(first: float, second: float) -> float:
    """The short way round from the first hue to the second, -180 up to and with 180."""
    turn = second - first
    if turn > _HALF:
        return turn - _FULL
    return turn + _FULL if turn < -_HALF else turn


def _middle_hue(first: Lab, second: Lab) -> float:
    together = first.hue_deg + second.hue_deg
    if not first.chroma * second.chroma:
        return together
    if abs(first.hue_deg - second.hue_deg) <= _HALF:
        return together / 2.0
    return (together + _FULL if together < _FULL else together - _FULL) / 2.0


def _s_lightness(middle: float) -> float:
    off = (middle - _L_MIDDLE) ** 2
    return 1.0 + _L_BOWL * off / math.sqrt(_L_SOFT + off)


def _waves(hue_deg: float) -> float:
    return 1.0 + sum(size * math.cos(math.radians(times * hue_deg + at)) for size, times, at in _T_WAVES)


def _blue_turn(middle_chroma: float, middle_hue: float) -> float:
    near_blue = math.exp(-(((middle_hue - _BLUE_DEG) / _BLUE_WIDTH_DEG) ** 2))
    return -math.sin(math.radians(2.0 * _BLUE_TURN_DEG * near_blue)) * 2.0 * _high_chroma_share(middle_chroma)
