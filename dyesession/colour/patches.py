"""A patch of a photo, cut out and boiled down: clipped pixels left out, tiles in linear light, one or two
colours.

Knows nothing of cards or of files: it is handed rows of pixels, each red, green and blue as stored, 0 to 255.
Means inside a tile are taken in linear light (a mean of stored values, or a median, misses by up to 1
CIEDE2000 on coarse yarn: our own trial), the median across tiles. All limits are our own choice.
"""

import math
import statistics
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.srgb import LIGHT_OF_BYTE, Channels, lab_of_linear
from dyesession.colour.trouble import PhotoTrouble

Pixel = tuple[int, int, int]
Rows = Sequence[Sequence[Pixel]]

CLIPPED_FROM, CRUSHED_TO = 250, 2  # 0.98 and 0.01 of the full 255
_CLIPPED_SHARE = 0.05  # more of a patch than this, and what is left would tell a wrong colour
_LEAST_SIDE = 12  # pixels
_FEW_TILES, _MANY_TILES, _MANY_FROM = 3, 5, 40  # tiles each way; five from 40 pixels on
_MAD_TO_SD = 1.4826  # the median deviation of a normal spread into its standard deviation
_OTHER_SHARE = 0.2


@dataclass(frozen=True)
class Box:
    """A part of a picture in pixels, from its left upper corner."""

    left: int
    top: int
    width: int
    height: int

    def __str__(self) -> str:
        return f"{self.left},{self.top},{self.width},{self.height}"


@dataclass(frozen=True)
class Patch:
    """What stands in a patch: the light of its tiles, and their median."""

    tiles: tuple[Channels, ...]
    light: Channels


def check_inside(box: Box, width: int, height: int, what: str) -> None:
    """Raise `PhotoTrouble` when the box of `what` ("the card") does not lie within the picture."""
    fits = box.left >= 0 and box.top >= 0 and box.left + box.width <= width and box.top + box.height <= height
    if box.width < _LEAST_SIDE or box.height < _LEAST_SIDE:
        raise PhotoTrouble(
            f"The patch given for {what}, {box}, is too small; expected at least {_LEAST_SIDE} by "
            f"{_LEAST_SIDE} pixels, for example 400,300,120,120 (left, top, width, height)."
        )
    if not fits:
        raise PhotoTrouble(
            f"The patch given for {what}, {box}, is not in the frame, which is {width} by {height} pixels; "
            "expected left, top, width and height within it, for example 400,300,120,120."
        )


def cut(picture: Rows, box: Box, what: str) -> Rows:
    """The part of a picture within the box."""
    check_inside(box, len(picture[0]) if picture else 0, len(picture), what)
    return [row[box.left : box.left + box.width] for row in picture[box.top : box.top + box.height]]


def patch_of(rows: Rows, what: str) -> Patch:
    """Boil a patch down. Raises `PhotoTrouble` when it is too small or when too much of it is clipped."""
    height, width = len(rows), len(rows[0]) if rows else 0
    check_inside(Box(0, 0, width, height), width, height, what)
    _check_exposure(rows, what)
    across = _MANY_TILES if min(width, height) >= _MANY_FROM else _FEW_TILES
    tiles = []
    for i in range(across):
        band = rows[height * i // across : height * (i + 1) // across]
        for j in range(across):
            mean = _mean_light([row[width * j // across : width * (j + 1) // across] for row in band])
            tiles += [mean] if mean else []
    return Patch(tuple(tiles), _median(tiles))


def check_one_colour(patch: Patch, lab_of: Callable[[Channels], Lab], limit: float, problem: str) -> None:
    """Raise `PhotoTrouble(problem)` when a fifth of the tiles lie over `limit` from the middle."""
    middle = lab_of(patch.light)
    others = [one for one in patch.tiles if de00(middle, lab_of(one)) > limit]
    if len(others) >= _OTHER_SHARE * len(patch.tiles):
        raise PhotoTrouble(problem)


def spread_of(patch: Patch, lab_of: Callable[[Channels], Lab]) -> float:
    """How far tiles differ (CIEDE2000): the robust spread of their L, a and b, taken together."""
    middle = lab_of(patch.light)
    labs = [lab_of(one) for one in patch.tiles]
    spreads = [
        _robust(column, centre) for column, centre in zip(zip(*labs, strict=True), middle, strict=True)
    ]
    off = Lab(*(centre + spread for centre, spread in zip(middle, spreads, strict=True)))
    return de00(middle, off)


def plain_lab(light: Channels) -> Lab:
    """The Lab of a tile without any correction."""
    return lab_of_linear(light)


def _robust(column: Sequence[float], centre: float) -> float:
    return _MAD_TO_SD * statistics.median(abs(one - centre) for one in column)


def _clipped(pixel: Pixel) -> bool:
    return max(pixel) >= CLIPPED_FROM


def _crushed(pixel: Pixel) -> bool:
    return min(pixel) <= CRUSHED_TO


def _check_exposure(rows: Rows, what: str) -> None:
    count = sum(len(row) for row in rows)
    if sum(_clipped(pixel) for row in rows for pixel in row) > _CLIPPED_SHARE * count:
        raise PhotoTrouble(
            f"The photo is clipped: {what} is so bright in it that the camera could not count the light; "
            "expected every channel below 250 of 255, for example the same photo with one stop less exposure."
        )
    if sum(_crushed(pixel) for row in rows for pixel in row) > _CLIPPED_SHARE * count:
        raise PhotoTrouble(
            f"The photo is clipped: {what} is so dark in one of its channels that nothing is left to read; "
            "expected every channel above 2 of 255, for example the same photo with one stop more exposure."
        )


def _mean_light(rows: Rows) -> Channels | None:
    kept = [one for row in rows for one in row if not _clipped(one) and not _crushed(one)]
    if not kept:
        return None
    red, green, blue = (
        math.fsum(LIGHT_OF_BYTE[byte] for byte in channel) / len(kept) for channel in zip(*kept, strict=True)
    )
    return red, green, blue


def _median(tiles: Sequence[Channels]) -> Channels:
    red, green, blue = (statistics.median(channel) for channel in zip(*tiles, strict=True))
    return red, green, blue
