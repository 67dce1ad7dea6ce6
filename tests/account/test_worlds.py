"""The worlds: dealt without chance, every prior's band kept, unknowns hardly correlated."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.account.worlds import (
    GENERATORS,
    WORLDS,
    band,
    column,
    constant,
    dealt,
    mean,
    total,
)
from dyesession.dyeing.priors import KEPT_SHARE, UPTAKE_RATE, Prior, partition_prior

GREATEST_CORRELATION = 0.16  # found by the search that chose the generators: 0.15

# Each vector from a few numbers: a list of all worlds is more than the generator likes to make.
vectors = st.lists(st.floats(0.5, 50.0), min_size=1, max_size=20).map(
    lambda some: tuple(some[i % len(some)] for i in range(WORLDS))
)


def correlation(one: tuple[float, ...], other: tuple[float, ...]) -> float:
    a, b = mean(one), mean(other)
    both = math.fsum((x - a) * (y - b) for x, y in zip(one, other, strict=True))
    spread = math.hypot(*(x - a for x in one)) * math.hypot(*(y - b for y in other))
    return both / spread


def test_every_unknown_takes_every_share_of_its_prior_once() -> None:
    for number in range(3 * len(GENERATORS)):
        assert sorted(column(number)) == list(range(WORLDS))


def test_no_two_unknowns_lean_on_each_other() -> None:
    columns = [column(number) for number in range(len(GENERATORS))]
    worst = max(abs(correlation(a, b)) for a, b in itertools.combinations(columns, 2))
    assert worst < GREATEST_CORRELATION


def test_a_column_used_again_is_not_the_same_column() -> None:
    for number in range(len(GENERATORS)):
        again = column(number + len(GENERATORS))
        assert abs(correlation(column(number), again)) < 0.02


@pytest.mark.parametrize("prior", [KEPT_SHARE, UPTAKE_RATE, partition_prior("wool", "madder root")])
def test_the_worlds_hold_the_band_of_the_prior(prior: Prior) -> None:
    found = band(dealt(prior, 7))
    assert found.low == pytest.approx(prior.low, rel=0.01)
    assert found.high == pytest.approx(prior.high, rel=0.01)


def test_a_known_number_is_the_same_in_every_world() -> None:
    assert dealt(Prior("kept", 0.35, 0.35, 0.35, "log", "known"), 3) == constant(0.35)
    assert band(constant(0.35)).half_width == 0.0


@given(vectors, vectors)
def test_means_add_up(one: tuple[float, ...], other: tuple[float, ...]) -> None:
    assert band(total([one, other])).mean == pytest.approx(band(one).mean + band(other).mean, abs=1e-9)
