"""A colour in mind, with its spread: one reading or several that are all what the dyer wants.

Knows nothing of dyes. The bands of the verdict (1, 2, 4, 8) are our own choice around what is said to be just
noticeable, CIEDE2000 about 1 (strollswithmydog.com/just-noticeable-difference-color).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.readings import Reading, check_alike, check_dry, plus_minus_between
from dyesession.colour.trouble import OutOfRange

MATCH, VERY_CLOSE, SAME_FAMILY, CLEARLY_OTHER = 1.0, 2.0, 4.0, 8.0
_BANDS = (
    (MATCH, "a match"),
    (VERY_CLOSE, "very close"),
    (SAME_FAMILY, "the same family"),
    (CLEARLY_OTHER, "clearly another shade"),
    (math.inf, "another colour"),
)
INSIDE = "inside it"


@dataclass(frozen=True)
class Target:
    """`middle` is the mean of the readings; `spread` is how far the farthest of them lies from it."""

    middle: Reading
    spread: float
    readings: tuple[Reading, ...]


@dataclass(frozen=True)
class Verdict:
    """How near a sample comes: CIEDE2000 with its range, whether it is inside, and a word for it."""

    de00: float
    low: float
    high: float
    inside: bool
    word: str


def target_of(readings: Sequence[Reading]) -> Target:
    """One target out of one or more dry readings of a like kind; the largest ± stays, for it is shared."""
    if not readings:
        raise OutOfRange("A target needs at least one reading, for example lab(42 45 30).")
    for one in readings:
        check_dry(one)
        check_alike(readings[0], one)
    lab = Lab(*(math.fsum(part) / len(readings) for part in zip(*(one.lab for one in readings), strict=True)))
    middle = replace(readings[0], lab=lab, plus_minus=max(one.plus_minus for one in readings))
    return Target(middle, max(de00(lab, one.lab) for one in readings), tuple(readings))


def verdict(sample: Reading, target: Target) -> Verdict:
    """Compare a dry sample with a target; inside means no farther out than the target's own readings."""
    check_alike(sample, target.middle)
    apart = de00(target.middle.lab, sample.lab)
    plus_minus = plus_minus_between(sample, target.middle)
    inside = target.spread > 0.0 and apart <= target.spread
    word = INSIDE if inside else next(word for below, word in _BANDS if apart < below)
    return Verdict(apart, max(0.0, apart - plus_minus), apart + plus_minus, inside, word)
