"""A piece of aftercare as it is typed: which lot, what came of it, the dry colour. Pure; knows no screens."""

import re
from collections.abc import Sequence

from dyesession.colour.readings import check_dry
from dyesession.colour.typed import read_colour
from dyesession.colour.written import written
from dyesession.daybook.aftercare import AFTERCARE, WINDOW_LOOK
from dyesession.errors import UserError
from dyesession.session.events import Cared
from dyesession.units import quoted

DRY_SHADE = AFTERCARE[0]
EXAMPLE = "brick, a little pale, #8b3a2b"
_COLOUR = re.compile(r"#[0-9a-fA-F]{6}\b|#[0-9a-fA-F]{3}\b|\b(?:ok)?(?:lab|lch)\([^)]*\)", re.IGNORECASE)


class NoCare(UserError):
    """A piece of aftercare that does not say what came of it, or of which lot."""


def cared_of(what: str, text: str, lots: Sequence[str]) -> Cared:
    """Read "brick, a little pale, #8b3a2b", or "small skein: ..." where there are several lots.

    A colour counts for a dry shade alone. Raises `NoCare`, and what reading the colour raises.
    """
    lot, words = _lot(text.strip(), lots)
    if not words:
        raise NoCare(f"Say what came of the {what}; for example {EXAMPLE}.")
    found = _COLOUR.search(words) if DRY_SHADE.word in what.casefold() else None
    if found is None:
        return Cared(what, lot, words)
    reading = read_colour(found.group())
    check_dry(reading)
    colour = found.group().lower() if found.group().startswith("#") else written(reading)
    rest = (words[: found.start()] + words[found.end() :]).strip(" ,;")
    return Cared(what, lot, rest, colour)


def named_and_typed(text: str) -> tuple[str, str]:
    """ "second wash: runs a little" in two: the aftercare meant, and what was said of it. Raises `NoCare`."""
    what, _, said = text.partition(":")
    found = next((one.what for one in (*AFTERCARE, WINDOW_LOOK) if one.word in what.casefold()), None)
    if found is None or not said.strip():
        known = ", ".join(one.what for one in AFTERCARE)
        raise NoCare(f"{quoted(text)} names no aftercare: expected one of {known}, for example second wash: runs a little.")
    return found, said.strip()


def _lot(text: str, lots: Sequence[str]) -> tuple[str, str]:
    """The lot a text begins with, where the day has one of that name; of a single lot, that one."""
    before, parted, rest = text.partition(":")
    named = next((one for one in lots if one.casefold() == before.strip().casefold()), None)
    if parted and named is not None:
        return named, rest.strip()
    return (lots[0] if len(lots) == 1 else ""), text
