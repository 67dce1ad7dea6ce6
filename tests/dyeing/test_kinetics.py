import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.kinetics import (
    arrhenius_factor,
    cegarra_puente_share,
    first_order_minutes,
    first_order_share,
    second_order_half_min,
    second_order_start_mg_g_min,
    second_order_taken,
    uptake_along,
)
from dyesession.dyeing.limits import OutOfRange

rates = st.floats(0.001, 0.5)
times = st.floats(0.1, 200)


@given(rates, st.floats(0, 0.999))
def test_first_order_minutes_and_share_undo_each_other(rate: float, share: float) -> None:
    assert first_order_share(rate, first_order_minutes(rate, share)) == pytest.approx(share, abs=1e-9)


@given(rates, times, st.floats(1.001, 3))
def test_uptake_only_grows_with_time(rate: float, minutes: float, more: float) -> None:
    assert 0 <= first_order_share(rate, minutes) <= first_order_share(rate, minutes * more) <= 1
    assert second_order_taken(20, rate, minutes) < second_order_taken(20, rate, minutes * more) < 20
    assert 0 < cegarra_puente_share(rate, minutes) <= cegarra_puente_share(rate, minutes * more) <= 1


@given(st.floats(1, 60), rates)
def test_half_is_taken_at_the_half_time(final: float, rate: float) -> None:
    assert second_order_taken(final, rate, second_order_half_min(final, rate)) == pytest.approx(final / 2)


@given(st.floats(1, 60), rates)
def test_the_start_rate_is_the_slope_at_the_start(final: float, rate: float) -> None:
    step = 1e-6 * second_order_half_min(final, rate)
    slope = second_order_taken(final, rate, step) / step
    assert slope == pytest.approx(second_order_start_mg_g_min(final, rate), rel=1e-5)


@given(st.floats(-20, 120), st.floats(20, 100), st.floats(20, 100))
def test_going_up_and_coming_back_cancel(energy: float, low: float, high: float) -> None:
    assert arrhenius_factor(energy, low, high) * arrhenius_factor(energy, high, low) == pytest.approx(1)


def test_published_energies_disagree_too_much_to_promise_a_time() -> None:
    assert arrhenius_factor(107.15, 60, 80) / arrhenius_factor(10.4, 60, 80) > 7


@given(rates, st.floats(1, 120))
def test_a_level_curve_is_plain_first_order(rate: float, minutes: float) -> None:
    along = uptake_along([(0, 85), (minutes, 85)], rate, 85, 45)
    assert along == pytest.approx(first_order_share(rate, minutes), rel=1e-9)


@given(st.floats(0, 100))
def test_a_slow_climb_takes_less_than_the_same_time_hot(energy: float) -> None:
    climb = uptake_along([(0, 40), (60, 85)], 0.05, 85, energy)
    hot = uptake_along([(0, 85), (60, 85)], 0.05, 85, energy)
    assert climb <= hot * (1 + 1e-9)


def test_finer_steps_agree_with_coarse_ones() -> None:
    curve = [(0.0, 40.0), (60.0, 85.0), (120.0, 85.0)]
    coarse, fine = (uptake_along(curve, 0.03, 85, 60, step_min=step) for step in (1.0, 0.05))
    assert coarse == pytest.approx(fine, rel=1e-4)


def test_a_dye_held_less_when_hot_can_come_off_again() -> None:
    cooled = uptake_along([(0, 60), (200, 60)], 0.1, 60, 0, lambda c: 0.9 if c < 70 else 0.6)
    boiled = uptake_along([(0, 90), (200, 90)], 0.1, 90, 0, lambda c: 0.9 if c < 70 else 0.6, cooled)
    assert boiled == pytest.approx(0.6, abs=1e-6) and cooled == pytest.approx(0.9, abs=1e-6)


def test_times_that_do_not_rise_are_refused() -> None:
    with pytest.raises(OutOfRange, match="times must rise"):
        uptake_along([(0, 40), (0, 85)], 0.05, 85, 45)


def test_the_whole_uptake_takes_for_ever() -> None:
    with pytest.raises(OutOfRange, match="below 1"):
        first_order_minutes(0.05, 1)


def test_a_climb_agrees_with_plain_small_steps() -> None:
    share, steps = 0.0, 20_000
    for i in range(steps):
        rate = 0.03 * arrhenius_factor(60, 85, 40 + 45 * (i + 0.5) / steps)
        share += rate * (1 - share) * 60 / steps
    assert uptake_along([(0, 40), (60, 85)], 0.03, 85, 60) == pytest.approx(share, rel=1e-4)
