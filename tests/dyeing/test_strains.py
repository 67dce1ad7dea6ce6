import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from dyesession.dyeing.extraction import TwoPools, two_pool_strains
from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.strains import fit_strains, left_from_strains

shares = st.floats(0.05, 0.9)


@given(st.floats(1, 500), shares, st.integers(2, 6))
def test_a_steady_ratio_is_told_exactly(first: float, kept: float, count: int) -> None:
    amounts = [first * kept**i for i in range(count)]
    told = left_from_strains(amounts, 0.1, on_one_linear_scale=True, first_wetted_dry_stuff=False)
    total = first / (1 - kept)
    assert told.ratio == pytest.approx(kept, rel=1e-9)
    assert told.total == pytest.approx(total, rel=1e-9)
    assert told.left == pytest.approx(total * kept**count, rel=1e-9)


@given(st.floats(10, 500), st.floats(0.1, 0.8), st.floats(0.2, 0.85), st.floats(0.01, 0.2))
def test_the_errors_are_the_slopes_of_the_estimate(
    first: float, ratio: float, second_ratio: float, error: float
) -> None:
    amounts = [first, first * ratio, first * ratio * second_ratio]
    step = 1e-6
    told = fit_strains(amounts, error)
    left, total = 0.0, 0.0
    for i in range(3):
        moved = [a * (1 + step if i == j else 1) for j, a in enumerate(amounts)]
        other = fit_strains(moved, error)
        left += ((other.left - told.left) / told.left / step) ** 2
        total += ((other.total - told.total) / told.total / step) ** 2
    assert told.left_error == pytest.approx(error * left**0.5, rel=1e-3)
    assert told.total_error == pytest.approx(error * total**0.5, rel=1e-3)


def test_a_third_strain_narrows_what_is_left() -> None:
    two = fit_strains([100, 40], 0.12)
    three = fit_strains([100, 40, 16], 0.12)
    assert three.left_error < two.left_error


def test_a_stubborn_store_turns_the_answer_into_at_least() -> None:
    drawn = [out for out, _ in two_pool_strains(TwoPools(60, 0.1, 40, 0.7), 3)]
    told = left_from_strains(drawn, 0.1, on_one_linear_scale=True)
    assert told.at_least
    assert told.left < 13.78


@given(st.floats(0.05, 0.4), st.floats(0.5, 0.9), st.integers(3, 5))
def test_a_stubborn_store_is_always_noticed_and_the_figure_is_a_lower_bound(
    fast_kept: float, slow_kept: float, count: int
) -> None:
    drawn = two_pool_strains(TwoPools(60, fast_kept, 40, slow_kept), count)
    told = left_from_strains([out for out, _ in drawn], 0.1, on_one_linear_scale=True)
    assert told.at_least
    assert told.left <= drawn[-1][1]


def test_two_strains_off_dry_stuff_are_flagged_and_three_use_the_later_ratio() -> None:
    two = left_from_strains([100, 40], 0.1, on_one_linear_scale=True)
    assert two.ratio_too_high
    three = left_from_strains([94, 40, 15], 0.1, on_one_linear_scale=True)
    assert not three.ratio_too_high
    assert three.ratio == pytest.approx(15 / 40)
    assert not three.at_least
    assert three.total == pytest.approx(94 + 40 + 15 + three.left)


@given(st.floats(1, 100), st.floats(1, 3))
def test_a_strain_no_weaker_than_the_one_before_is_refused(first: float, times: float) -> None:
    with pytest.raises(OutOfRange, match="must bring less"):
        left_from_strains([first, first * times], 0.1, on_one_linear_scale=True)


def test_strengths_off_one_linear_scale_are_refused() -> None:
    with pytest.raises(OutOfRange, match="one linear scale"):
        left_from_strains([100, 40], 0.1, on_one_linear_scale=False)


@pytest.mark.parametrize("amounts", [[], [100]])
def test_one_strain_cannot_tell_what_is_left(amounts: list[float]) -> None:
    with pytest.raises(OutOfRange, match="two or more"):
        left_from_strains(amounts, 0.1, on_one_linear_scale=True)


@given(st.lists(st.floats(1, 100), min_size=2, max_size=5))
def test_a_fit_that_does_not_fall_is_refused(amounts: list[float]) -> None:
    rising = sorted(amounts)
    assume(rising[0] < rising[-1])
    with pytest.raises(OutOfRange, match="grow weaker"):
        fit_strains(rising, 0.1)
