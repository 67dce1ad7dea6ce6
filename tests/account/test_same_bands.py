"""The end of a band is looked for from the outside in; the whole sum of weights says the same."""

import bisect
import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.account.worlds import FURTHEST_OUT, WORLDS, Vector, band, counting
from dyesession.dyeing.bands import HIGH_SHARE, LOW_SHARE

numbers = st.one_of(st.just(0.0), st.floats(-1e3, 1e3))


def by_the_whole_sum(values: Vector, weights: Vector, share: float) -> float:
    """Each world stands in the middle of its own weight; between two the line is straight (textbook)."""
    order = sorted(range(WORLDS), key=values.__getitem__)
    ends = list(itertools.accumulate(weights[i] for i in order))
    places = [end - weights[i] / 2.0 for end, i in zip(ends, order, strict=True)]
    above = bisect.bisect_left(places, share)
    if above in (0, WORLDS):
        return values[order[min(above, WORLDS - 1)]]
    low, high = values[order[above - 1]], values[order[above]]
    return low + (high - low) * (share - places[above - 1]) / (places[above] - places[above - 1])


@given(st.lists(numbers, min_size=5, max_size=40), st.lists(st.floats(1e-6, 1.0), min_size=5, max_size=40))
def test_both_ways_find_the_same_ends(some: list[float], heavy: list[float]) -> None:
    values = tuple(itertools.islice(itertools.cycle(some), WORLDS))
    raw = list(itertools.islice(itertools.cycle(heavy), WORLDS))
    weights = tuple(one / sum(raw) for one in raw)
    few = min((0.5 - LOW_SHARE) / counting(weights), FURTHEST_OUT * LOW_SHARE)
    found = band(values, weights)
    assert found.low == pytest.approx(
        min(found.mean, by_the_whole_sum(values, weights, LOW_SHARE - few)), abs=1e-6
    )
    assert found.high == pytest.approx(
        max(found.mean, by_the_whole_sum(values, weights, HIGH_SHARE + few)), abs=1e-6
    )
