"""One photo with card, target and skein in it: the patches as they were given, into readings of one frame.

Knows nothing of screens. A colour in the same frame as another differs from it by far less than its own ±: most of
what a camera gets wrong it gets wrong in both.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from dyesession.colour.patches import Box
from dyesession.colour.photo import Card, read_photo
from dyesession.colour.photo_file import patches_of_file
from dyesession.colour.readings import Reading
from dyesession.colour.trouble import PhotoTrouble

CARD, TARGET, SKEIN = "card", "target", "skein"
PARTS = (CARD, TARGET, SKEIN)
SAID = {CARD: "the card", TARGET: "the target", SKEIN: "the fibre"}
_AREA = re.compile(r"\s+(card|target|skein|fibre)\s+(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)", re.IGNORECASE)
_LEAST_SIDE, _SIDE_SHARE = 12, 0.1  # a patch round a touched spot: a tenth of the photo's shorter side; our own choice


@dataclass(frozen=True)
class FrameReadings:
    """What was read of one photo."""

    skein: Reading
    target: Reading | None = None


def photo_typed(text: str) -> tuple[str, dict[str, Box]]:
    """A photo's path, and the areas typed behind it: `skein.jpg card 10,10,80,80 skein 110,10,80,80`."""
    boxes = {}
    for found in _AREA.finditer(text):
        name = SKEIN if found[1].lower() == "fibre" else found[1].lower()
        boxes[name] = Box(*(int(found[at]) for at in (2, 3, 4, 5)))
    path = text[: first.start()] if (first := _AREA.search(text)) else text
    return path.strip().strip("'\""), boxes


def box_round(x: float, y: float, width: int, height: int) -> Box:
    """A square patch round a spot, given as shares of a photo of so many pixels; it stays within the photo."""
    side = max(_LEAST_SIDE, round(_SIDE_SHARE * min(width, height)))
    left, top = (round(share * long - side / 2) for share, long in ((x, width), (y, height)))
    return Box(max(0, min(left, width - side)), max(0, min(top, height - side)), side, side)


def read_frame(path: Path, boxes: Mapping[str, Box], reflects: float, light: str) -> FrameReadings:
    """The readings of a photo's patches. `reflects` is the card's, 0 to 1; without a patch for it there is none.

    Raises `PhotoTrouble` for what no colour can be read from, `OutOfRange` for an unknown light or card.
    """
    if SKEIN not in boxes:
        raise PhotoTrouble(
            "It was not said where the fibre is; expected an area of it, for example skein 900,400,300,300 (left, top, "
            "width, height in pixels)."
        )
    patches = patches_of_file(path, {SAID[name]: box for name, box in boxes.items()})
    card = Card(patches[SAID[CARD]], reflects) if CARD in boxes else None
    frame = path.name
    target = (
        read_photo(patches[SAID[TARGET]], card, light, frame=frame, what=SAID[TARGET]) if TARGET in boxes else None
    )
    return FrameReadings(read_photo(patches[SAID[SKEIN]], card, light, frame=frame), target)
