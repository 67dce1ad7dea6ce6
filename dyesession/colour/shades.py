"""From Lab to Lab through the theory of depth: more or less of a dye, a second dye over a skein, depth ratio.

Knows nothing of readings or their ±. Each Lab is rebuilt to a curve (`rebuilt`), worked on band by band
(`kubelka_munk`) and seen again. Doing the same on three screen channels instead misses by 5 CIEDE2000 on
average when two dyes meet; the benchmark beside the tests prints both.
"""

import math
from collections.abc import Callable

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.kubelka_munk import (
    Depths,
    at_depth,
    depths_of,
    dye_only,
    overdyed,
    spectrum_of,
    strength_of,
)
from dyesession.colour.rebuilt import rebuilt, seen
from dyesession.colour.viewing import Viewing

# How far a depth ratio is looked for, and how closely: our own choice.
_LEAST_RATIO, _MOST_RATIO, _GRID, _HALVINGS = 0.02, 50.0, 48, 60
_GOLDEN = (math.sqrt(5.0) - 1.0) / 2.0
_AT_THE_END = 1e-3
_NO_STRENGTH = 1e-3  # below this strength there is no dye to compare with

Line = Callable[[float], Lab]


def depths(lab: Lab, viewing: Viewing) -> Depths:
    """K/S of a Lab in every band. Raises what `rebuilt` raises."""
    return depths_of(rebuilt(lab, viewing))


def depth_line(undyed: Lab, sample: Lab, viewing: Viewing) -> Line:
    """The Lab at any ratio (0 or more) of the sample's depth; 1 gives the sample."""
    ground, dyed = depths(undyed, viewing), depths(sample, viewing)
    return lambda ratio: seen(spectrum_of(at_depth(ground, dyed, ratio)), viewing)


def overdye_line(undyed: Lab, skein: Lab, second: Lab, viewing: Viewing) -> Line:
    """The Lab of the skein under any amount of a second dye, whose own sample (amount 1) is `second`."""
    dye = dye_only(depths(undyed, viewing), depths(second, viewing))
    base = depths(skein, viewing)
    return lambda amount: seen(spectrum_of(overdyed(base, dye, amount)), viewing)


def strength(undyed: Lab, sample: Lab, viewing: Viewing) -> float:
    """Strength of the sample's own dye, 0 where it is no deeper than the undyed fibre."""
    return strength_of(dye_only(depths(undyed, viewing), depths(sample, viewing)), viewing)


def depth_ratio(undyed: Lab, standard: Lab, trial: Lab, viewing: Viewing) -> float | None:
    """How deep the trial is, 1 being the standard: the place on the standard's line that comes nearest.

    None where the standard holds no dye, or where the nearest place is beyond 1/50 to 50 times its depth.
    """
    if strength(undyed, standard, viewing) < _NO_STRENGTH:
        return None
    line = depth_line(undyed, standard, viewing)
    log_ratio = nearest(
        lambda log: de00(line(math.exp(log)), trial), math.log(_LEAST_RATIO), math.log(_MOST_RATIO)
    )
    ends = (math.log(_LEAST_RATIO), math.log(_MOST_RATIO))
    return None if any(abs(log_ratio - end) < _AT_THE_END for end in ends) else math.exp(log_ratio)


def nearest(apart: Callable[[float], float], low: float, high: float) -> float:
    """Where between `low` and `high` a distance is least: a grid first, then the golden section."""
    places, misses = _grid(apart, low, high)
    return _bottom(apart, places, min(range(_GRID + 1), key=misses.__getitem__))


def first_as_near(apart: Callable[[float], float], low: float, high: float, as_good: float) -> float:
    """The lowest place whose distance is no more than `as_good` above the least one anywhere.

    A distance may fall into several valleys, and a later one be deeper by what nobody sees: the first one
    that is as good is taken, and in it the place where it becomes so.
    """
    places, misses = _grid(apart, low, high)
    enough = apart(_bottom(apart, places, min(range(_GRID + 1), key=misses.__getitem__))) + as_good
    for i in range(_GRID + 1):
        is_valley = misses[i] <= min(misses[max(i - 1, 0)], misses[min(i + 1, _GRID)])
        within = places[i] if misses[i] <= enough else _bottom(apart, places, i) if is_valley else None
        if within is not None and apart(within) <= enough:
            return _becomes(apart, places[max(i - 1, 0)], within, enough)
    raise AssertionError("the least distance is as good as itself")


def _grid(apart: Callable[[float], float], low: float, high: float) -> tuple[list[float], list[float]]:
    places = [low + (high - low) * i / _GRID for i in range(_GRID + 1)]
    return places, [apart(place) for place in places]


def _bottom(apart: Callable[[float], float], places: list[float], i: int) -> float:
    """The least distance between the neighbours of a place of the grid, or that place itself."""
    left, right = places[max(i - 1, 0)], places[min(i + 1, _GRID)]
    for _ in range(_HALVINGS):
        inner, outer = right - _GOLDEN * (right - left), left + _GOLDEN * (right - left)
        if apart(inner) <= apart(outer):
            right = outer
        else:
            left = inner
    return min((left + right) / 2.0, places[i], key=apart)


def _becomes(apart: Callable[[float], float], before: float, within: float, enough: float) -> float:
    """Between a place that is not near enough (or is the first of all) and one that is: where it begins."""
    if apart(before) <= enough:
        return before
    for _ in range(_HALVINGS):
        middle = (before + within) / 2.0
        before, within = (before, middle) if apart(middle) <= enough else (middle, within)
    return within
