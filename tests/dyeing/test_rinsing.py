import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.rinsing import (
    best_share_left,
    fibre_is_letting_go,
    rinses_needed,
    share_left,
    share_left_splitting,
)

held = st.floats(0.1, 6)
fresh = st.floats(1, 50)

# Carry-over, rinse, rinses for 1 % and for 0.1 %, all per gram; worked out apart from this program.
COUNTED = [
    (0.6, 10, 2, 3),
    (0.6, 20, 2, 2),
    (1, 10, 2, 3),
    (1, 20, 2, 3),
    (2, 10, 3, 4),
    (2, 20, 2, 3),
    (4, 10, 4, 6),
    (4, 20, 3, 4),
    (4, 30, 3, 4),
]


@pytest.mark.parametrize(("carry", "water", "one_pct", "tenth_pct"), COUNTED)
def test_rinses_are_counted(carry: float, water: float, one_pct: int, tenth_pct: int) -> None:
    assert rinses_needed(0.01, carry, water) == one_pct
    assert rinses_needed(0.001, carry, water) == tenth_pct


@given(st.floats(0.0001, 0.9), held, fresh)
def test_the_count_is_enough_and_one_fewer_is_not(wanted: float, carry: float, water: float) -> None:
    count = rinses_needed(wanted, carry, water)
    assert share_left(carry, water, count) <= wanted * (1 + 1e-6)
    assert count == 1 or share_left(carry, water, count - 1) > wanted


@given(held, fresh, st.integers(1, 6))
def test_many_small_rinses_beat_one_large_and_have_a_floor(carry: float, water: float, count: int) -> None:
    split = share_left_splitting(carry, water, count)
    assert share_left_splitting(carry, water, count + 1) < split
    assert split > best_share_left(carry, water)


@pytest.mark.parametrize(("count", "share"), [(1, 0.0625), (2, 0.0138), (3, 0.0046), (6, 0.0005)])
def test_thirty_of_water_split_into_rinses(count: int, share: float) -> None:
    assert share_left_splitting(2, 30, count) == pytest.approx(share, abs=1e-4)


def test_two_small_rinses_beat_one_of_the_same_water() -> None:
    assert share_left(2, 10, 2) == pytest.approx(0.0278, abs=1e-4)
    assert share_left(2, 20, 1) == pytest.approx(0.0909, abs=1e-4)


def test_colour_far_above_dilution_in_the_third_rinse_is_the_fibre_letting_go() -> None:
    assert fibre_is_letting_go(0.05, 2, 10, 3)
    assert not fibre_is_letting_go(0.005, 2, 10, 3)
    assert fibre_is_letting_go(share_left(2, 20, 3, partition=20), 2, 20, 3)


def test_goals_that_cannot_be_are_refused() -> None:
    with pytest.raises(OutOfRange):
        rinses_needed(0, 2, 10)
    with pytest.raises(OutOfRange):
        share_left(2, 0, 1)
