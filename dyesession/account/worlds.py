"""A fixed set of equally likely worlds, and how a number that differs between them becomes a band.

Knows nothing of dye. Each unknown takes the middle points of its prior's equal shares, one a world, dealt
out by a rank-1 lattice: world i gets point i times the unknown's own generator, modulo the (prime) number
of worlds. So every unknown's own band is exact, unknowns are nearly uncorrelated (checked in the tests),
and nothing depends on chance.
"""

import math
import operator
from collections.abc import Sequence
from functools import lru_cache, reduce

from dyesession.account.model import Band90
from dyesession.dyeing.bands import HIGH_SHARE, LOW_SHARE, quantile_points, t4_quantile
from dyesession.dyeing.priors import Prior

Vector = tuple[float, ...]  # one number for each world

WORLDS = 199  # a prime near the most that keeps a full day under a tenth of a second; measured
# Found by a greedy search for the smallest greatest correlation between any two columns (0.15).
GENERATORS = (
    1, 59, 77, 144, 168, 79, 29, 63, 78, 97, 12, 14,
    23, 105, 108, 190, 20, 65, 180, 183, 15, 49, 166, 174,
)  # fmt: skip
# Columns beyond the generators reuse them shifted round the circle by the share s that makes a column and its
# shifted self uncorrelated, 1 - 6 s (1 - s) = 0 (derived).
SHIFT = round(WORLDS * (0.5 - math.sqrt(1.0 / 12.0)))

ZEROS: Vector = (0.0,) * WORLDS


def column(number: int) -> tuple[int, ...]:
    """Which share of its prior each world gets, 0 to WORLDS - 1, for the unknown of that number from 0."""
    turn, place = divmod(number, len(GENERATORS))
    generator = GENERATORS[place]
    return tuple((i * generator + turn * SHIFT) % WORLDS for i in range(WORLDS))


@lru_cache(maxsize=512)
def dealt(prior: Prior, number: int) -> Vector:
    """The prior's points, one a world, by the unknown's number; one number everywhere if it has no width."""
    if prior.low == prior.high:
        return (prior.centre,) * WORLDS
    points = quantile_points(prior.centre, prior.low, prior.high, prior.scale, WORLDS)
    return tuple(points[i] for i in column(number))


@lru_cache(maxsize=64)
def dealt_steps(number: int) -> Vector:
    """Steps of Student's t (4 df), one a world: for a band whose width is known only later."""
    return tuple(t4_quantile((i + 0.5) / WORLDS) for i in column(number))


def constant(value: float) -> Vector:
    """The same number in every world."""
    return (value,) * WORLDS


def mean(values: Sequence[float]) -> float:
    """Mean over the worlds."""
    return math.fsum(values) / len(values)


def band(values: Vector) -> Band90:
    """Mean and 90 % band over the worlds."""
    if values is ZEROS:
        return Band90(0.0, 0.0, 0.0)
    ordered = sorted(values)
    if ordered[0] == ordered[-1]:
        return Band90(ordered[0], ordered[0], ordered[0])
    middle = math.fsum(ordered) / len(ordered)
    return Band90(middle, min(middle, _at(ordered, LOW_SHARE)), max(middle, _at(ordered, HIGH_SHARE)))


def _at(ordered: list[float], share: float) -> float:
    """Value at a share of the ordered worlds; world i stands at (i + 1/2)/WORLDS."""
    place = share * len(ordered) - 0.5
    below = math.floor(place)
    return ordered[below] + (ordered[below + 1] - ordered[below]) * (place - below)


# Through `map` and `operator`: a third of a comprehension's time, and a day holds thousands of these sums.
def plus(a: Vector, b: Vector) -> Vector:
    """Sum in each world."""
    if a is ZEROS:
        return b
    return a if b is ZEROS else tuple(map(operator.add, a, b))


def minus(a: Vector, b: Vector) -> Vector:
    """Difference in each world."""
    return a if b is ZEROS else tuple(map(operator.sub, a, b))


def times(a: Vector, factor: float) -> Vector:
    """The same multiple in each world."""
    return tuple([x * factor for x in a])


def scaled(a: Vector, shares: Vector) -> Vector:
    """A share of each world's number."""
    return ZEROS if a is ZEROS else tuple(map(operator.mul, a, shares))


def total(vectors: Sequence[Vector]) -> Vector:
    """Sum of any number of vectors, nothing for none."""
    return reduce(plus, vectors, ZEROS)


def settled(values: Vector, reading: float, error_share: float) -> Vector:
    """The worlds after a reading: its number is their mean, and each keeps its side of it.

    The 90 % half-width becomes that of the reading, `error_share` of it, or stays when it was narrower: a
    reading never widens the band. Nothing goes below nought.
    """
    now = band(values)
    half, allowed = now.half_width, error_share * abs(reading)
    shrink = min(1.0, allowed / half) if half > 0.0 else 0.0
    return tuple([max(0.0, reading + (value - now.mean) * shrink) for value in values])
