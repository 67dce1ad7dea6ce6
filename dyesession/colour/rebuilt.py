"""A reflectance curve that would give a Lab: the smoothest one between black and white, in 31 bands.

Knows nothing of dyes. Method: least slope of the hyperbolic tangent, R = (tanh z + 1)/2 with the sum of
(z[i+1] - z[i])^2 least (S. A. Burns, "Reflectance curves from sRGB", scottburns.us, note of 2019-2020; also
arXiv 1710.05732), solved by Newton's method with the full second derivatives, starting from a flat grey.
"""

import math
from functools import lru_cache

from dyesession.colour.cielab import XYZ, Lab, lab_of_xyz, xyz_of_lab
from dyesession.colour.spectral_weights import BANDS_NM, Weights, weights_for, white_for
from dyesession.colour.trouble import OutsideCloth, TooDark
from dyesession.colour.viewing import Viewing

Spectrum = tuple[float, ...]

_BANDS = len(BANDS_NM)
_SETTLED = 1e-10  # largest slope or miss still left when the curve counts as found
_MOST_STEPS = 60  # 3,000 screen colours needed at most 22; colours no cloth can show never settle
_WHITE_WITHIN = 1e-9
_DARKEST_Y = 1e-4  # below this there is no colour left to rebuild


@lru_cache(maxsize=1024)
def rebuilt(lab: Lab, viewing: Viewing) -> Spectrum:
    """Reflectance (0 to 1) at 400, 410 ... 700 nm that looks like this Lab.

    Raises `OutsideCloth` where no reflectance between 0 and 1 can, `TooDark` for black itself.
    """
    weights, white = weights_for(viewing), white_for(viewing)
    wanted = xyz_of_lab(lab, white)
    if all(abs(got - full) < _WHITE_WITHIN for got, full in zip(wanted, white, strict=True)):
        return (1.0,) * _BANDS
    if wanted[1] < _DARKEST_Y:
        raise TooDark(f"{_told(lab)} is darker than any dyed cloth; expected L* above 0.1, for example 16.")
    if min(wanted) <= 0.0 or wanted[1] >= white[1]:
        raise _outside(lab)
    return _smoothest(weights, wanted, lab)


def seen(spectrum: Spectrum, viewing: Viewing) -> Lab:
    """The Lab of a reflectance curve."""
    x = y = z = 0.0
    for share, (wx, wy, wz) in zip(spectrum, weights_for(viewing), strict=True):
        x += share * wx
        y += share * wy
        z += share * wz
    return lab_of_xyz((x, y, z), white_for(viewing))


def _smoothest(weights: Weights, wanted: XYZ, lab: Lab) -> Spectrum:
    z, pull = [0.0] * _BANDS, [0.0] * 3
    for _ in range(_MOST_STEPS):
        curve = [math.tanh(one) for one in z]
        slope = _slopes(weights, wanted, z, pull, curve)
        if max(abs(one) for one in slope) < _SETTLED:
            return tuple((one + 1.0) / 2.0 for one in curve)
        step = _solved(_second_derivatives(weights, pull, curve), slope)
        if step is None:
            break
        z = [one - change for one, change in zip(z, step, strict=False)]
        pull = [one - change for one, change in zip(pull, step[_BANDS:], strict=True)]
    raise _outside(lab)


def _slopes(
    weights: Weights, wanted: XYZ, z: list[float], pull: list[float], curve: list[float]
) -> list[float]:
    """First derivatives: by each z, then how far X, Y and Z are missed."""
    slopes = []
    for i in range(_BANDS):
        left, right = z[max(i - 1, 0)], z[min(i + 1, _BANDS - 1)]
        rise = (1.0 - curve[i] ** 2) / 2.0
        slopes.append(2.0 * (2.0 * z[i] - left - right) + rise * _pulled(weights[i], pull))
    for k in range(3):
        got = math.fsum((one + 1.0) / 2.0 * row[k] for one, row in zip(curve, weights, strict=True))
        slopes.append(got - wanted[k])
    return slopes


def _second_derivatives(weights: Weights, pull: list[float], curve: list[float]) -> list[list[float]]:
    """The 34 by 34 matrix: a narrow band for the bands' smoothness, bordered by three rows for X, Y, Z."""
    size = _BANDS + 3
    rows = [[0.0] * size for _ in range(size)]
    for i, bend in enumerate(curve):
        rise = (1.0 - bend**2) / 2.0
        neighbours = 2.0 if 0 < i < _BANDS - 1 else 1.0
        rows[i][i] = 2.0 * neighbours - bend * (1.0 - bend**2) * _pulled(weights[i], pull)
        if i + 1 < _BANDS:
            rows[i][i + 1] = rows[i + 1][i] = -2.0
        for k in range(3):
            rows[i][_BANDS + k] = rows[_BANDS + k][i] = rise * weights[i][k]
    return rows


def _pulled(row: XYZ, pull: list[float]) -> float:
    return row[0] * pull[0] + row[1] * pull[1] + row[2] * pull[2]


def _solved(rows: list[list[float]], right: list[float]) -> list[float] | None:
    """Gauss with row pivots; most entries are nought and are passed over. None where there is no answer."""
    size = len(right)
    table = [[*row, value] for row, value in zip(rows, right, strict=True)]
    for k in range(size):
        best = max(range(k, size), key=lambda i: abs(table[i][k]))
        if not 0.0 < abs(table[best][k]) < math.inf:
            return None
        table[k], table[best] = table[best], table[k]
        head = table[k]
        for row in table[k + 1 :]:
            if row[k]:
                share = row[k] / head[k]
                row[k:] = [one - share * top for one, top in zip(row[k:], head[k:], strict=True)]
    found = [0.0] * size
    for k in reversed(range(size)):
        known = math.fsum(table[k][j] * found[j] for j in range(k + 1, size))
        found[k] = (table[k][size] - known) / table[k][k]
    return found


def _told(lab: Lab) -> str:
    return f"lab({lab.lightness:.4g} {lab.a:.4g} {lab.b:.4g})"


def _outside(lab: Lab) -> OutsideCloth:
    return OutsideCloth(
        f"{_told(lab)} is a colour no cloth can show, because it would have to throw back more light than "
        "falls on it; expected a colour read from cloth, for example lab(42 45 30)."
    )
