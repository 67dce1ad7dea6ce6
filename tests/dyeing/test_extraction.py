import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.extraction import (
    TwoPools,
    kept_share,
    kept_share_to_reach,
    next_pull_brings,
    pull,
    pulls,
    share_left_after_pulls,
    strain_ratio,
    two_pool_strains,
    unbiased_first_strain,
)
from dyesession.dyeing.limits import OutOfRange

colours = st.floats(0.01, 500)
waters = st.lists(st.floats(200, 5000), min_size=1, max_size=6)
helds = st.floats(0, 199)
bounds = st.floats(0, 3000)
shares = st.floats(0.01, 0.99)


@given(colours, waters, helds, bounds)
def test_strained_and_left_make_up_the_dyestuff(
    colour: float, fresh: list[float], held: float, bound: float
) -> None:
    done = pulls(colour, fresh, held, bound)
    assert math.fsum(one.strained for one in done) + done[-1].left == pytest.approx(colour, rel=1e-12)


@given(colours, st.floats(200, 5000), helds, bounds)
def test_the_kept_share_is_what_a_pull_leaves(colour: float, water: float, held: float, bound: float) -> None:
    assert pull(colour, water, held, bound).left / colour == pytest.approx(
        kept_share(water, held, bound), rel=1e-9, abs=1e-12
    )


@given(colours, waters, helds, bounds)
def test_each_strain_is_weaker_than_the_one_before(
    colour: float, fresh: list[float], held: float, bound: float
) -> None:
    done = pulls(colour, [fresh[0]] * len(fresh), held, bound)
    strengths = [one.strength_per_ml for one in done]
    assert strengths == sorted(strengths, reverse=True)


@given(shares, st.integers(1, 8))
def test_the_kept_share_for_a_goal_reaches_it(goal: float, count: int) -> None:
    assert share_left_after_pulls(kept_share_to_reach(goal, count), count) == pytest.approx(goal, rel=1e-9)


def test_a_fourth_boil_worth_doing_means_at_most_0_473_is_kept_each_time() -> None:
    assert kept_share_to_reach(0.05, 4) == pytest.approx(0.473, abs=5e-4)
    assert kept_share_to_reach(0.01, 4) == pytest.approx(0.316, abs=5e-4)


def test_one_more_pull_brings_all_but_what_is_kept() -> None:
    assert next_pull_brings(12, 0.35) == pytest.approx(7.8)


@given(st.floats(200, 5000), helds)
def test_correcting_the_first_strain_gives_the_true_ratio_of_washing(water: float, held: float) -> None:
    first, second = pulls(100, [water, water], held)
    if held == 0:
        return
    fair = unbiased_first_strain(first.strained, water, held)
    assert second.strained / fair == pytest.approx(held / (water + held), rel=1e-9)


@given(shares, shares, st.floats(1, 100), st.floats(1, 100))
def test_two_pools_keep_the_balance_and_the_ratio_never_falls(
    fast_kept: float, slow_kept: float, fast: float, slow: float
) -> None:
    drawn = two_pool_strains(TwoPools(fast, fast_kept, slow, slow_kept), 4)
    assert math.fsum(out for out, _ in drawn) + drawn[-1][1] == pytest.approx(fast + slow, rel=1e-12)
    ratios = [b[0] / a[0] for a, b in itertools.pairwise(drawn)]
    assert all(later >= earlier * (1 - 1e-9) for earlier, later in itertools.pairwise(ratios))


def test_a_strain_that_brings_more_than_the_one_before_is_refused() -> None:
    with pytest.raises(OutOfRange, match="each strain must bring less"):
        strain_ratio(40, 40)


def test_holding_back_more_than_was_poured_on_is_refused() -> None:
    with pytest.raises(OutOfRange, match="holds back 1200 mL of 1000 mL"):
        pull(100, 1000, 1200)
