"""An unknown that hangs on another: what it is at each place of that one, and its value in every world.

Knows nothing of dye. Readings of a bath tell the partition only together with the rate of uptake: learned as one
number it would swallow the other's error, learned apart from it both would be wider than what was read.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from dyesession.account.worlds import Vector
from dyesession.dyeing.bands import T4_AT_HIGH, Scale, from_scale, to_scale
from dyesession.dyeing.priors import Prior


@dataclass(frozen=True)
class Beside:
    """The other unknown's name and scale, and what this one is at places of it, rising; at least one place.

    Between two places it is taken straight on the scales, beyond the last as at the last.
    """

    of: str
    scale: Scale
    at: tuple[tuple[float, Prior], ...]


@lru_cache(maxsize=128)
def beside_values(beside: Beside, other: Vector, steps: Vector) -> Vector:
    """One value a world, at its step of Student's t (4 df) and at the other unknown's value there."""
    places = [(to_scale(place, beside.scale), *_points(prior)) for place, prior in beside.at]
    scale = beside.at[0][1].scale
    found = []
    for value, step in zip(other, steps, strict=True):
        low, middle, high = _between(places, to_scale(value, beside.scale))
        side = middle - low if step < 0.0 else high - middle
        found.append(from_scale(middle + step / T4_AT_HIGH * side, scale))
    return tuple(found)


def _points(prior: Prior) -> tuple[float, float, float]:
    low, middle, high = (to_scale(one, prior.scale) for one in (prior.low, prior.centre, prior.high))
    return low, middle, high


def _between(
    places: Sequence[tuple[float, float, float, float]], at: float
) -> tuple[float, float, float]:
    if at <= places[0][0]:
        return places[0][1:]
    for (left, *below), (right, *above) in pairwise(places):
        if at <= right:
            share = (at - left) / (right - left)
            low, middle, high = (a + (b - a) * share for a, b in zip(below, above, strict=True))
            return low, middle, high
    return places[-1][1:]
