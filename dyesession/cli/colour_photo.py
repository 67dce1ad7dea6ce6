"""`dyesession colour photo`: a colour from a photo, by boxes of pixels. Reads what was typed, calls, prints."""

import argparse
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from dyesession.cli.colour import BOX
from dyesession.cli.colour_reading import ColourAsked

if TYPE_CHECKING:
    from dyesession.colour.patches import Box
    from dyesession.colour.photo import Card

_PERCENT = 100.0


def photo(options: argparse.Namespace) -> int:
    """Print a colour read from a photo, and how it differs from a target in the same photo."""
    from dyesession.cli.colour import print_answer
    from dyesession.cli.colour_reading import ground, target_of_readings
    from dyesession.cli.colour_told import difference_document, difference_lines, reading_told
    from dyesession.colour.difference import difference
    from dyesession.colour.photo import read_photo

    patches = _patches(options)
    card = _card(options, patches)
    frame = Path(options.file).name
    sample = read_photo(patches["the fibre"], card, options.light, frame=frame, wet=options.wet)
    document, lines = reading_told(sample)
    if "the target" in patches:
        target = read_photo(patches["the target"], card, options.light, frame=frame, what="the target")
        undyed, notes = ground(options.undyed, sample)
        found = difference(sample, target_of_readings([target]), undyed)
        found = replace(found, notes=(*found.notes, *notes))
        document["difference"] = difference_document(found)
        lines += difference_lines(found)
    print_answer(options, document, lines)
    return 0


def _patches(options: argparse.Namespace) -> dict[str, Any]:
    from dyesession.colour.photo_file import patches_of_file

    boxes = {"the fibre": options.fibre, "the card": options.card, "the target": options.target}
    wanted = {what: _box(text, what) for what, text in boxes.items() if text is not None}
    return patches_of_file(Path(options.file), wanted)


def _card(options: argparse.Namespace, patches: dict[str, Any]) -> "Card | None":
    from dyesession.colour.photo import Card

    if (options.card is None) != (options.card_reflects is None):
        raise ColourAsked(
            "A card goes with how much it throws back, for example --card 200,400,200,200 --card-reflects 18 "
            "for a grey card of 18 %."
        )
    return None if options.card is None else Card(patches["the card"], options.card_reflects / _PERCENT)


def _box(text: str, what: str) -> "Box":
    from dyesession.colour.patches import Box

    try:
        left, top, width, height = (int(part) for part in text.split(","))
    except ValueError as trouble:
        raise ColourAsked(
            f"The patch for {what} is no box; expected {BOX}, for example 400,300,120,120."
        ) from trouble
    return Box(left, top, width, height)
