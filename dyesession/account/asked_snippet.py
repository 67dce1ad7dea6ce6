"""How far along is it? From a dried snippet, as a dyer says it: a share of the depth wanted, or two colours read.

Knows nothing of screens. Wet is never held against dry: a wet reading is refused in a sentence.
"""

import math
import re

from dyesession.account.along import SNIPPET_SD, Z_90, along
from dyesession.account.estimate import Behind
from dyesession.account.model import Account
from dyesession.account.say import Said
from dyesession.account.say_answers import along_words
from dyesession.account.told import NoAnswer
from dyesession.colour.difference import DepthRatio, difference
from dyesession.colour.readings import Reading
from dyesession.colour.targets import target_of
from dyesession.colour.typed import read_colour
from dyesession.session.state import State
from dyesession.units import quoted

SNIPPET_EXAMPLE = "70 %"
COLOURS_EXAMPLE = "#b5705a, wanted #8e3b26, undyed #d8d2c6"
_SHARE = re.compile(r"(?P<share>\d+(?:[.,]\d+)?)\s*%")
_COLOURS = re.compile(r"(?P<dried>.+?)[,;]?\s+wanted\s+(?P<wanted>.+?)[,;]?\s+undyed\s+(?P<undyed>.+)", re.IGNORECASE)
_NAMED = re.compile(r"(?P<name>snippet\s+\d+)\b[:,]?\s*", re.IGNORECASE)
PER_CENT = 100.0


def snippet_asked(account: Account, vessel: str, text: str) -> tuple[Said, ...]:
    """What a dried snippet says of every lot in a vessel: “70 %” of the depth wanted, judged dry beside dry, or its
    colour with the wanted one and the undyed fibre's; “snippet 2” before it where it is not the last one dipped.

    Raises `NoAnswer` for words that say neither, or where no fibre is in a dyebath there, and what colours raise.
    """
    behind = account.behind
    state = behind.state if isinstance(behind, Behind) else None
    named = _NAMED.match(text.strip())
    rest = text.strip()[named.end() :] if named else text.strip()
    share, sd = _told(rest)
    snippet = _snippet(state, named["name"] if named else "")
    lots = [one.lot for one in account.fibres if one.place == vessel and not one.snippet]
    found = [along(account, lot, share, snippet, sd) for lot in lots]
    said = tuple(one for each in found if each is not None for one in along_words(each, wet=False))
    if not said:
        raise NoAnswer("No fibre has taken colour in that bath yet: expected a lot in a dyebath, and its dried snippet.")
    return said


def _told(text: str) -> tuple[float, float]:
    """The depth over the depth wanted, and its standard deviation as a share of it."""
    if found := _SHARE.fullmatch(text):
        share = float(found["share"].replace(",", ".")) / PER_CENT
        if share > 0.0:
            return share, SNIPPET_SD
    if found := _COLOURS.fullmatch(text):
        dried, wanted, undyed = (_dry(found[name]) for name in ("dried", "wanted", "undyed"))
        depth = difference(dried, target_of([wanted]), undyed).depth
        if depth is None:
            raise NoAnswer(
                f"{quoted(found['dried'])} and {quoted(found['wanted'])} are not more and less of one dye on that fibre;"
                f" say by eye how deep it is, for example “{SNIPPET_EXAMPLE}”."
            )
        return depth.ratio, math.hypot(SNIPPET_SD, _sd(depth))
    raise NoAnswer(
        f"{quoted(text)} says nothing of a dried snippet; expected its depth as a share of the one you want, for example"
        f" “{SNIPPET_EXAMPLE}”, or three dry colours, for example “{COLOURS_EXAMPLE}”."
    )


def _dry(text: str) -> Reading:
    reading = read_colour(text.strip())
    if reading.wet:
        raise NoAnswer(f"{quoted(text.strip())} was read wet, which is never held against dry: dry the snippet first.")
    return reading


def _sd(depth: DepthRatio) -> float:
    return math.log(depth.high / depth.low) / (2.0 * Z_90) if depth.low > 0.0 else 0.0


def _snippet(state: State | None, name: str) -> str:
    """The snippet that is meant: the one named, else the last one dipped."""
    if state is None:
        return ""
    snippets = [one.name for one in state.lots if one.snippet]
    wanted = " ".join(name.casefold().split())
    if not wanted:
        return snippets[-1] if snippets else ""
    if wanted not in snippets:
        there = ", ".join(snippets) or "none yet"
        raise NoAnswer(f"No {wanted} was dipped today; dipped were {there}.")
    return wanted
