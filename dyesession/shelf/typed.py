"""What is typed about a kept bath, read: how much is drawn, what goes in, what it is seen to be. Pure."""

import re
from dataclasses import dataclass

from dyesession.errors import UserError
from dyesession.shelf.acts import Adding, ShelfRefused, adding_of
from dyesession.shelf.model import KeptBath
from dyesession.units import quoted, read_mass, read_volume

TOP_UP_EXAMPLE = "1.5 l, or 10 g alum, or both: 1.5 l, 10 g alum"
SEEN_EXAMPLE = "4 l, or pH 6.8, or stands in the cellar, or called madder 4; several parted by commas"
LITRES_EXAMPLE = "2 l; nothing and enter: all of it"
_PH = re.compile(r"ph\s*(\d+(?:[.,]\d+)?)$", re.IGNORECASE)


@dataclass(frozen=True)
class Seen:
    """What a bath is seen to be now; None or "" for what nobody said."""

    volume_l: float | None = None
    ph: float | None = None
    place: str | None = None
    label: str = ""


def litres(text: str) -> float:
    """ "2", "2 l", "500 ml" in litres. Raises what reading a volume raises."""
    bare = text.strip().replace(",", ".")
    return float(read_volume(f"{bare} l" if bare.replace(".", "", 1).isdigit() else text.strip()).aim)


def topping(text: str, bath: KeptBath) -> tuple[float | None, tuple[Adding, ...]]:
    """Water, substances, or both: "1.5 l, 10 g alum". Raises `ShelfRefused` for what is neither."""
    water: float | None = None
    adding: list[Adding] = []
    for part in _parts(text):
        try:
            water = (water or 0.0) + litres(part)
        except UserError:
            name, mass_g = _mass(part)
            adding.append(adding_of(bath, name, mass_g))
    return water, tuple(adding)


def _mass(text: str) -> tuple[str, float]:
    """ "10 g alum" or "alum 10 g" in two."""
    words = text.split()
    for cut in range(1, len(words)):
        for amount, name in ((words[:cut], words[cut:]), (words[cut:], words[:cut])):
            try:
                return " ".join(name).removeprefix("of "), float(read_mass(" ".join(amount)).aim)
            except UserError:
                continue
    raise ShelfRefused(f"{quoted(text)} does not say how much of what goes in; expected, for example, {TOP_UP_EXAMPLE}.")


def seen(text: str) -> Seen:
    """What a bath is seen to be: "4 l, pH 6.8, stands in the cellar". Raises `ShelfRefused`."""
    volume_l: float | None = None
    ph: float | None = None
    place: str | None = None
    label = ""
    for part in _parts(text):
        word, _, rest = part.partition(" ")
        if found := _PH.match(part):
            ph = float(found[1].replace(",", "."))
        elif word.casefold() == "stands" and rest:
            place = rest
        elif word.casefold() == "called" and rest:
            label = rest
        else:
            volume_l = _litres_or_refuse(part)
    return Seen(volume_l, ph, place, label)


def _litres_or_refuse(part: str) -> float:
    try:
        return litres(part)
    except UserError as trouble:
        raise ShelfRefused(f"{quoted(part)} is not understood; expected, for example, {SEEN_EXAMPLE}.") from trouble


def _parts(text: str) -> list[str]:
    return [one.strip() for one in re.split(r",\s+|;", text) if one.strip()]
