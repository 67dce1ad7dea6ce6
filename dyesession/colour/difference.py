"""Did I hit the colour? The difference as a range, depth first, then words for what is left.

Knows nothing of how to mend it. The order is a dyer's own: first how much weaker or stronger, found on the
target's line of depths, then one word for each direction that is left, and nothing below what the readings
can tell.
"""

import math
from dataclasses import dataclass

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.readings import Reading, check_alike, plus_minus_between
from dyesession.colour.shades import depth_line, depth_ratio
from dyesession.colour.spread import ONE_DIRECTION
from dyesession.colour.targets import CLEARLY_OTHER, INSIDE, Target, Verdict, verdict
from dyesession.colour.trouble import ColourError
from dyesession.colour.words import listed, spoken, terms

NOTHING_TO_TELL = "no difference these readings can tell"
_LEAST_SPOKEN = 0.03  # less of a depth is not worth a word: our own choice
_STEP_PERCENT = 5
_TWICE = 2.0
_MOST_FACTOR = 100.0  # a band wider than this says nothing more
_SMALL_LOG = 0.05  # step along the line of depths, for its slope


@dataclass(frozen=True)
class DepthRatio:
    """How deep the sample is, the target being 1, with the band the readings leave it."""

    ratio: float
    low: float
    high: float


@dataclass(frozen=True)
class Difference:
    """A sample against a target.

    `words` is what to say; `depth` None where no depth could be told; `left` the words behind the depth.
    """

    verdict: Verdict
    plus_minus: float
    depth: DepthRatio | None
    left: tuple[str, ...]
    words: str
    sample: Reading
    target: Target
    notes: tuple[str, ...]


def difference(sample: Reading, target: Target, undyed: Reading) -> Difference:
    """Compare a dry sample with a target, both dyed on the `undyed` fibre. Raises `Unlike`."""
    found = verdict(sample, target)
    check_alike(sample, undyed)
    plus_minus = plus_minus_between(sample, target.middle)
    depth, notes = _depth(sample, target.middle, undyed, plus_minus)
    phrase, moved = depth_phrase(depth), target.middle.lab
    if depth and phrase:
        on_line = depth_line(undyed.lab, moved, sample.viewing)(depth.ratio)
        other = de00(on_line, sample.lab) >= CLEARLY_OTHER  # then it is not more or less of this dye
        phrase, moved = ("", moved) if other else (phrase, on_line)
    left = spoken(moved, sample.lab, plus_minus)
    words = _words(found, plus_minus, phrase, left, target.middle.lab, sample.lab)
    return Difference(found, plus_minus, depth, left, words, sample, target, notes)


def depth_phrase(depth: DepthRatio | None) -> str:
    """ "about 20 % weaker", or "" where the readings leave it open whether there is a difference at all."""
    if depth is None or depth.low <= 1.0 <= depth.high or abs(depth.ratio - 1.0) < _LEAST_SPOKEN:
        return ""
    if depth.ratio >= _TWICE:
        return f"about {round(2.0 * depth.ratio) / 2.0:g} times as deep"
    percent = max(_STEP_PERCENT, _STEP_PERCENT * round(100.0 * abs(depth.ratio - 1.0) / _STEP_PERCENT))
    return f"about {percent} % {'stronger' if depth.ratio > 1.0 else 'weaker'}"


def shown_range(low: float, high: float) -> str:
    """A difference as a person reads it, "2 to 6", never a second decimal; "under 1" for the least."""
    if high < 1.0:
        return "under 1"
    first, last = math.floor(low + 0.5), math.floor(high + 0.5)
    return f"{first} to {last}" if first != last else f"about {first}"


def _depth(
    sample: Reading, target: Reading, undyed: Reading, plus_minus: float
) -> tuple[DepthRatio | None, tuple[str, ...]]:
    try:
        ratio = depth_ratio(undyed.lab, target.lab, sample.lab, sample.viewing)
    except ColourError as trouble:
        return None, (f"No depth can be told: {trouble}",)
    if ratio is None:
        return None, ("No depth can be told: the two are not more and less of one dye on this fibre.",)
    line = depth_line(undyed.lab, target.lab, sample.viewing)
    slope = de00(line(ratio), line(ratio * math.exp(_SMALL_LOG))) / _SMALL_LOG
    factor = math.exp(min(plus_minus * ONE_DIRECTION / max(slope, _SMALL_LOG), math.log(_MOST_FACTOR)))
    return DepthRatio(ratio, ratio / factor, ratio * factor), ()


def _words(
    found: Verdict, plus_minus: float, phrase: str, left: tuple[str, ...], target: Lab, sample: Lab
) -> str:
    if found.inside:
        return INSIDE
    if found.de00 <= plus_minus:
        return NOTHING_TO_TELL
    if not phrase and not left:  # much in all, little in each direction: name the greatest
        left = (max(terms(target, sample), key=lambda term: term.seen).word,)
    return f"{phrase}, then {listed(left)}" if phrase and left else phrase or listed(left)
