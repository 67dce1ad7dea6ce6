"""CIELAB and its round form LCh, and the way from and to XYZ for a given white.

Knows nothing of light sources or screens. Formulas: CIE 1976 L*a*b* (CIE 15; ISO/CIE 11664-4), from memory,
checked in the tests against colour-science.
"""

import math
from typing import NamedTuple

_LINEAR_BELOW = 6.0 / 29.0  # where the cube root meets the straight part: CIE 15
_SLOPE = 3.0 * _LINEAR_BELOW**2
_OFFSET = 4.0 / 29.0
_L_FACTOR, _L_OFFSET, _A_FACTOR, _B_FACTOR = 116.0, 16.0, 500.0, 200.0

XYZ = tuple[float, float, float]


class Lab(NamedTuple):
    """One colour: lightness 0 to 100, `a` (green below 0, red above), `b` (blue below, yellow above)."""

    lightness: float
    a: float
    b: float

    @property
    def chroma(self) -> float:
        """How far from grey, 0 or more."""
        return math.hypot(self.a, self.b)

    @property
    def hue_deg(self) -> float:
        """Hue angle, 0 (red) up to 360; 0 for a grey."""
        return math.degrees(math.atan2(self.b, self.a)) % 360.0


def lab_of_lch(lightness: float, chroma: float, hue_deg: float) -> Lab:
    """The Lab of lightness, chroma and hue angle."""
    turn = math.radians(hue_deg)
    return Lab(lightness, chroma * math.cos(turn), chroma * math.sin(turn))


def lab_of_xyz(xyz: XYZ, white: XYZ) -> Lab:
    """The Lab of XYZ under this white (both on the same scale)."""
    fx, fy, fz = (_compressed(value / full) for value, full in zip(xyz, white, strict=True))
    return Lab(_L_FACTOR * fy - _L_OFFSET, _A_FACTOR * (fx - fy), _B_FACTOR * (fy - fz))


def xyz_of_lab(lab: Lab, white: XYZ) -> XYZ:
    """The XYZ of a Lab under this white, on the white's scale."""
    fy = (lab.lightness + _L_OFFSET) / _L_FACTOR
    x, y, z = (_expanded(f) for f in (fy + lab.a / _A_FACTOR, fy, fy - lab.b / _B_FACTOR))
    return x * white[0], y * white[1], z * white[2]


def _compressed(share: float) -> float:
    return math.cbrt(share) if share > _LINEAR_BELOW**3 else share / _SLOPE + _OFFSET


def _expanded(value: float) -> float:
    return value**3 if value > _LINEAR_BELOW else _SLOPE * (value - _OFFSET)
