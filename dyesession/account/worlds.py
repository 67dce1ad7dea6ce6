"""A fixed set of worlds with their weights, and how a number that differs between them becomes a band.

Knows nothing of dye. Each unknown takes the middle points of its prior's equal shares, one a world, dealt
out by a rank-1 lattice: world i gets point i times the unknown's own generator, modulo the (prime) number
of worlds. So every unknown's own band is exact, unknowns are nearly uncorrelated (checked in the tests),
and nothing depends on chance. Readings weigh the worlds (`beliefs`); without any they weigh alike.
"""


import math
import operator
from collections.abc import Sequence
from functools import lru_cache, reduce

from dyesession.account.model import Band90
from dyesession.dyeing import bands
from dyesession.dyeing.bands import HIGH_SHARE, LOW_SHARE, t4_quantile
from dyesession.dyeing.priors import Prior

Vector = tuple[float, ...]  # one number for each world

WORLDS = 307  # a prime that keeps a reading on a full day under a tenth of a second; measured
# Found by a search over random orders for many columns no two of which correlate by more than 0.16.
GENERATORS = (
    1, 255, 266, 201, 39, 8, 94, 43, 58, 44, 233, 272, 186, 209, 158, 61, 120, 113, 90, 265, 64,
    48, 271, 250, 146, 276, 166, 89, 38, 274, 54, 23, 150, 10, 301, 118, 252, 227, 34, 206, 207, 28,
)  # fmt: skip
# Columns beyond the generators reuse them shifted round the circle by the share s that makes a column and its
# shifted self uncorrelated, 1 - 6 s (1 - s) = 0 (derived).
SHIFT = round(WORLDS * (0.5 - math.sqrt(1.0 / 12.0)))

FURTHEST_OUT = 0.8  # of the share beyond an end of a band: how much further out it is sought at the most

ZEROS: Vector = (0.0,) * WORLDS
EVEN: Vector = (1.0 / WORLDS,) * WORLDS  # every world weighs the same: nothing was read yet


def column(number: int) -> tuple[int, ...]:
    """Which share of its prior each world gets, 0 to WORLDS - 1, for the unknown of that number from 0."""
    turn, place = divmod(number, len(GENERATORS))
    generator = GENERATORS[place]
    return tuple((i * generator + turn * SHIFT) % WORLDS for i in range(WORLDS))


@lru_cache(maxsize=512)
def dealt_steps(number: int) -> Vector:
    """Steps of Student's t (4 df), one a world, for the unknown of that number."""
    return tuple(t4_quantile((i + 0.5) / WORLDS) for i in column(number))


@lru_cache(maxsize=512)
def at_steps(prior: Prior, steps: Vector) -> Vector:
    """The prior's values at those steps, one a world; one number everywhere if it has no width."""
    if prior.low == prior.high:
        return (prior.centre,) * WORLDS
    return bands.at_steps(prior.centre, prior.low, prior.high, prior.scale, steps)


def dealt(prior: Prior, number: int) -> Vector:
    """The prior's own points, one a world, by the unknown's number."""
    return at_steps(prior, dealt_steps(number))


def constant(value: float) -> Vector:
    """The same number in every world."""
    return (value,) * WORLDS


def mean(values: Sequence[float], weights: Vector = EVEN) -> float:
    """Mean over the worlds."""
    if weights is EVEN:
        return math.fsum(values) / len(values)
    return math.fsum(map(operator.mul, values, weights))


def band(values: Vector, weights: Vector = EVEN) -> Band90:
    """Mean and 90 % band over the worlds."""
    if values is ZEROS:
        return Band90(0.0, 0.0, 0.0)
    least, most = min(values), max(values)
    if least == most:
        return Band90(least, least, least)
    middle = mean(values, weights)
    low, high = _evenly(values) if weights is EVEN else _weighed(values, weights)
    return Band90(middle, min(middle, low), max(middle, high))


@lru_cache(maxsize=8)
def counting(weights: Vector) -> float:
    """How many of the worlds count, as if they weighed alike."""
    return 1.0 / math.fsum(map(operator.mul, weights, weights))


def _evenly(values: Vector) -> tuple[float, float]:
    ordered = sorted(values)
    return _at(ordered, LOW_SHARE), _at(ordered, HIGH_SHARE)


def _at(ordered: list[float], share: float) -> float:
    """Value at a share of the ordered worlds; world i stands at (i + 1/2)/WORLDS."""
    place = share * len(ordered) - 0.5
    below = math.floor(place)
    return ordered[below] + (ordered[below + 1] - ordered[below]) * (place - below)


def _weighed(values: Vector, weights: Vector) -> tuple[float, float]:
    """The same for worlds that weigh differently: each stands in the middle of its own weight.

    Few worlds know their own ends badly: of n, the i-th lies above the share i/(n + 1), so the ends are sought a
    little further out (order statistics, textbook).
    """
    share = LOW_SHARE - min((0.5 - LOW_SHARE) / counting(weights), FURTHEST_OUT * LOW_SHARE)
    order = sorted(range(len(values)), key=values.__getitem__)
    low = _from_the_end(values, weights, order, share)
    order.reverse()
    return low, _from_the_end(values, weights, order, share)


def _from_the_end(values: Vector, weights: Vector, order: list[int], share: float) -> float:
    """The value at a share of the worlds' weight from the end where `order` starts: few need be looked at."""
    passed = place = 0.0
    last = -1
    for i in order:
        before, place = place, passed + weights[i] / 2.0
        if place >= share:
            if last < 0:
                return values[i]
            return values[last] + (values[i] - values[last]) * (share - before) / (place - before)
        passed += weights[i]
        last = i
    return values[last]


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
