"""A strength as it is taken at the stove, four ways, from what is typed: spoons of water, two columns, three
colours in one photo, or the liquor's own colour in a glass. Each is reckoned in `dyeing.strength`.

`1:2 of the first strain`, `30/25 mm of the first strain`, `#8b3a2b #6e2a1b #f2efe8 of the first strain`,
`glass #8b3a2b #6e2a1b #f2efe8 of the first strain`; or how it is, `0.31` or `31 %`.
"""

import re
from collections.abc import Sequence

from dyesession.colour.srgb import LIGHT_OF_BYTE
from dyesession.dyeing.strength import Method, Strength, by_columns, by_dilution, by_light, thinned
from dyesession.session import events as e
from dyesession.session.state import State

HOW_TO_TAKE = (
    "One spoon of the stronger and 2 of water look like it: type 1:2 of the first strain. Two glasses seen"
    " through from above look alike at 30 and 25 mm: 30/25 mm of the first strain.",
    "Three white dishes in one photo, this one, the other, water: #8b3a2b #6e2a1b #f2efe8 of the first strain;"
    " in a clear glass: glass and the three. Or how it is: 31 % of the first strain.",
)
FIRST_STRAIN = "first strain"
MATCHED: tuple[Method, ...] = ("dilution match", "equal columns")

COOLED = "samples cooled"
_COOLED = re.compile(r"[\s,]+(?:both\s+|samples\s+|as\s+)*cooled\.?\s*$", re.IGNORECASE)

_FIGURE = r"(\d+(?:[.,]\d+)?)"
_SPOONS = re.compile(rf"{_FIGURE}\s*(?:spoons?)?\s*(?::|\+|and)\s*{_FIGURE}(?:\s*(?:spoons?)?\s*(?:of\s+)?water)?$")
_COLUMNS = re.compile(rf"{_FIGURE}\s*(?:/|and|to)\s*{_FIGURE}\s*mm$")
_COLOURS = re.compile(r"(glass\s+)?(#[0-9a-f]{6})[\s,]+(#[0-9a-f]{6})[\s,]+(#[0-9a-f]{6})$")
_THINNED = re.compile(rf"\s*,?\s*thinned\s+{_FIGURE}\s*(?:times|x)?$")
_AGAINST = re.compile(r"\s+(?:of|against)\s+(?!water\b)")


def taken(text: str) -> tuple[Strength, str] | None:
    """The strength by one of the four ways, and what it was held against; None where the text is of none.

    Raises `dyeing.limits.OutOfRange` in one sentence where the figures cannot be.
    """
    pieces = _AGAINST.split(text.strip(), maxsplit=1)
    figures, against = pieces[0].casefold(), pieces[1].strip() if len(pieces) > 1 else ""
    times = _THINNED.search(figures)
    if times is not None:
        figures = figures[: times.start()]
    found = _strength(figures.strip())
    if found is None:
        return None
    return (thinned(found, _number(times[1])) if times is not None else found), against


def held_against(state: State, vessel: str, named: str) -> str:
    """What a strength was held against: as named, else the first strain of the one dyestuff that is in the pot again.

    A share is always a share of something; nothing else stands there to be held beside it.
    """
    again = [one for one in state.dyestuffs if one.place == vessel and one.pulls]
    return named if named or len(again) != 1 else FIRST_STRAIN


def as_cooled(text: str) -> tuple[str, bool]:
    """A strength's text without the word that both samples had cooled before they were compared, and whether it stood."""
    bare = _COOLED.sub("", text)
    return bare, bare != text


def method_of(method: str, cooled: bool) -> str:
    """How a strength was taken, and that both samples had cooled where that was said."""
    return ", ".join(one for one in (method, COOLED if cooled else "") if one)


def read_of(vessel: str, strength: Strength, against: str, cooled: bool = False) -> e.Read:
    """The reading to write down."""
    how = "matched" if strength.method in MATCHED else "read"
    error = round(strength.sd, 3)
    return e.Read(
        vessel,
        strength=round(strength.share, 4),
        against=against,
        how=how,
        method=method_of(strength.method, cooled),
        error_share=error,
    )


def said_back(strength: Strength, against: str) -> str:
    """What was understood: "33 % of the first strain, dilution match ± 11 %"."""
    beside = f" of {against}" if against else ""
    share = 100 * strength.share
    return f"{share:.2g} %{beside}, {strength.method}, ± {100 * strength.sd:.0f} % of it"


def _strength(figures: str) -> Strength | None:
    if hit := _SPOONS.match(figures):
        return by_dilution(_number(hit[2]), _number(hit[1]))
    if hit := _COLUMNS.match(figures):
        return by_columns(_number(hit[1]), _number(hit[2]))
    if hit := _COLOURS.match(figures):
        method: Method = "liquor colour" if hit[1] else "white dish"
        return by_light(_light(hit[2]), _light(hit[3]), _light(hit[4]), method=method)
    return None


def _light(hexed: str) -> Sequence[float]:
    return tuple(LIGHT_OF_BYTE[int(hexed[i : i + 2], 16)] for i in (1, 3, 5))


def _number(text: str) -> float:
    return float(text.replace(",", "."))
