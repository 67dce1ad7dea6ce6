"""A screen's or a photo's numbers into light and back: the sRGB curve, its three channels, their Lab.

Knows nothing of photos. Curve and primaries: IEC 61966-2-1 (from memory; checked in the tests against
coloraide and colour-science). Lab is for D65 and 2 degrees; a grey comes out as exactly grey.
"""

from dyesession.colour.cielab import XYZ, Lab, lab_of_xyz, xyz_of_lab

# Linear red, green and blue to X, Y and Z; the rows' sums are the white.
_TO_XYZ = (
    (0.4123907992659595, 0.35758433938387796, 0.1804807884018343),
    (0.21263900587151036, 0.7151686787677559, 0.07219231536073371),
    (0.01933081871559185, 0.11919477979462599, 0.9505321522496606),
)
_FROM_XYZ = (
    (3.2409699419045213, -1.5373831775700935, -0.4986107602930033),
    (-0.9692436362808798, 1.8759675015077206, 0.04155505740717561),
    (0.05563007969699361, -0.20397695888897657, 1.0569715142428786),
)
_WHITE: XYZ = (sum(_TO_XYZ[0]), sum(_TO_XYZ[1]), sum(_TO_XYZ[2]))

_STRAIGHT_BELOW, _STRAIGHT, _SCALE, _SHIFT, _POWER = 0.04045, 12.92, 1.055, 0.055, 2.4
_LINEAR_BELOW = 0.0031308
_FULL = 255

Channels = tuple[float, float, float]


def decoded(share: float) -> float:
    """Light, 0 to 1, of a stored channel, 0 to 1."""
    return share / _STRAIGHT if share <= _STRAIGHT_BELOW else ((share + _SHIFT) / _SCALE) ** _POWER


def encoded(light: float) -> float:
    """The stored channel, 0 to 1, of light, 0 to 1."""
    return light * _STRAIGHT if light <= _LINEAR_BELOW else _SCALE * light ** (1.0 / _POWER) - _SHIFT


LIGHT_OF_BYTE = tuple(decoded(byte / _FULL) for byte in range(_FULL + 1))
"""Light of each stored byte, 0 to 255."""


def lab_of_linear(channels: Channels) -> Lab:
    """The Lab of linear red, green and blue (1, 1, 1 is white)."""
    return lab_of_xyz(_times(_TO_XYZ, channels), _WHITE)


def linear_of_lab(lab: Lab) -> Channels:
    """Linear red, green and blue of a Lab; below 0 or above 1 where a screen cannot show it."""
    return _times(_FROM_XYZ, xyz_of_lab(lab, _WHITE))


def luminance(channels: Channels) -> float:
    """How light linear red, green and blue are, 1 for white."""
    return _dot(_TO_XYZ[1], channels)


def _times(rows: tuple[Channels, Channels, Channels], by: Channels) -> Channels:
    return _dot(rows[0], by), _dot(rows[1], by), _dot(rows[2], by)


def _dot(row: Channels, by: Channels) -> float:
    return row[0] * by[0] + row[1] * by[1] + row[2] * by[2]
