"""THE ONLY FILE OF THIS ROOM THAT OPENS A FILE: patches of a photo on disk, as rows of pixels.

Decodes with Pillow, loaded on first use. Pictures are turned as their camera noted, and brought to sRGB where
they carry another profile. Big patches are thinned to every n-th pixel, which leaves a mean as it is.
"""

import io
import math
import warnings
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.colour.patches import Box, Rows, check_inside
from dyesession.colour.trouble import PhotoTrouble, quoted

if TYPE_CHECKING:
    from PIL.Image import Image

_FORMATS = ("JPEG", "PNG", "TIFF", "WEBP")
_MODES = ("RGB", "RGBA", "RGBX", "L", "P")
_MOST_PIXELS = 120_000_000  # a phone's largest; more is likely a trap
_MOST_BYTES = 200_000_000
_PER_PATCH = 40_000  # pixels looked at in one patch: an error of the mean far below the camera's own
_SRGB = "srgb"


def patches_of_file(path: Path, boxes: Mapping[str, Box]) -> dict[str, Rows]:
    """The patches of a picture file by their names ("the card", "the fibre").

    Raises `PhotoTrouble` for what is no picture, for one too large, and for a box outside the frame.
    """
    from PIL import Image, ImageOps, UnidentifiedImageError

    data = _bytes(path)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # the size is checked below
            with Image.open(io.BytesIO(data), formats=_FORMATS) as opened:
                _check(opened, path)
                picture = ImageOps.exif_transpose(opened)
                for what, box in boxes.items():
                    check_inside(box, picture.width, picture.height, what)
                return {what: _rows(_as_srgb(_crop(picture, box), opened)) for what, box in boxes.items()}
    except (
        UnidentifiedImageError,
        OSError,
        SyntaxError,
        ValueError,
        Image.DecompressionBombError,
    ) as trouble:
        raise _unreadable(path) from trouble


def _bytes(path: Path) -> bytes:
    try:
        if path.is_file() and path.stat().st_size <= _MOST_BYTES:
            return path.read_bytes()
    except OSError:
        pass
    raise PhotoTrouble(
        f"There is no photo {quoted(str(path))} that can be opened; expected a JPEG, PNG, TIFF or WEBP file "
        "of at most 200 MB, for example skein.jpg."
    )


def _check(picture: "Image", path: Path) -> None:
    if picture.width * picture.height > _MOST_PIXELS or picture.mode not in _MODES:
        raise PhotoTrouble(
            f"{quoted(path.name)} is {picture.width} by {picture.height} pixels of kind {picture.mode}; "
            "expected at most 120 million pixels in red, green and blue, for example a JPEG from a phone."
        )


def _crop(picture: "Image", box: Box) -> "Image":
    area = (box.left, box.top, box.left + box.width, box.top + box.height)
    return picture.crop(area).convert("RGB")


def _as_srgb(patch: "Image", opened: "Image") -> "Image":
    """The patch in sRGB. Phones may store a wider space, and say so in a profile."""
    from PIL import ImageCms

    profile = opened.info.get("icc_profile")
    if not profile:
        return patch
    try:
        stored = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        if _SRGB in ImageCms.getProfileDescription(stored).lower():
            return patch
        made = ImageCms.profileToProfile(patch, stored, ImageCms.createProfile("sRGB"), outputMode="RGB")
    except (ImageCms.PyCMSError, OSError) as trouble:
        raise PhotoTrouble(
            "The photo's colour profile cannot be used; expected sRGB or another plain RGB profile, for "
            "example the photo saved again as sRGB."
        ) from trouble
    return made if made is not None else patch


def _rows(patch: "Image") -> Rows:
    step = max(1, math.ceil(math.sqrt(patch.width * patch.height / _PER_PATCH)))
    raw, long = patch.tobytes(), 3 * patch.width
    rows = []
    for start in range(0, len(raw), long * step):
        line = raw[start : start + long]
        rows.append([(line[x], line[x + 1], line[x + 2]) for x in range(0, long, 3 * step)])
    return rows


@dataclass(frozen=True)
class Coarse:
    """A photo made small to be pointed at: its size in pixels, and rows of `#rrggbb`."""

    width: int
    height: int
    rows: tuple[tuple[str, ...], ...]


def coarse(path: Path, across: int, down: int) -> Coarse:
    """The photo in at most so many squares across and down, its shape kept. Raises `PhotoTrouble`."""
    from PIL import Image, ImageOps, UnidentifiedImageError

    data = _bytes(path)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # the size is checked below
            with Image.open(io.BytesIO(data), formats=_FORMATS) as opened:
                _check(opened, path)
                picture = ImageOps.exif_transpose(opened).convert("RGB")
                share = min(across / picture.width, down / picture.height, 1.0)
                size = (max(1, round(picture.width * share)), max(1, round(picture.height * share)))
                small = picture.resize(size, Image.Resampling.BOX)
    except (UnidentifiedImageError, OSError, SyntaxError, ValueError, Image.DecompressionBombError) as trouble:
        raise _unreadable(path) from trouble
    raw, long = small.tobytes(), 3 * small.width
    rows = tuple(
        tuple(f"#{raw[at : at + 3].hex()}" for at in range(start, start + long, 3))
        for start in range(0, len(raw), long)
    )
    return Coarse(picture.width, picture.height, rows)


def _unreadable(path: Path) -> PhotoTrouble:
    return PhotoTrouble(
        f"{quoted(path.name)} cannot be read as a photo; expected a whole JPEG, PNG, TIFF or WEBP file, "
        "for example skein.jpg."
    )
