import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.heating import (
    heat_capacity_kj_k,
    heat_kj,
    minutes_to,
    net_power_w,
    power_from_readings_w,
    ramp_c,
    settling_c,
    temperature_after_c,
    time_constant_min,
)
from dyesession.dyeing.limits import OutOfRange


@given(st.floats(5, 60), st.floats(70, 300), st.floats(20, 600), st.floats(0.1, 300))
def test_time_and_temperature_undo_each_other(
    start: float, settles: float, tau: float, minutes: float
) -> None:
    there = temperature_after_c(start, settles, tau, minutes)
    if settles - there > 1e-6:
        assert minutes_to(there, start, settles, tau) == pytest.approx(minutes, rel=1e-4)


@given(st.floats(60, 99), st.floats(10, 25), st.floats(20, 600), st.floats(0.1, 100))
def test_cooling_follows_the_same_law(hot: float, room: float, tau: float, minutes: float) -> None:
    there = temperature_after_c(hot, room, tau, minutes)
    assert room <= there < hot
    if there - room > 1e-3:
        assert minutes_to(there, hot, room, tau) == pytest.approx(minutes, rel=1e-4)


def test_a_ring_that_settles_at_78_never_reaches_85() -> None:
    settles = settling_c(20, 290, 5)
    assert settles == 78
    assert minutes_to(85, 60, settles, 142) == math.inf
    assert minutes_to(78, 60, settles, 142) == math.inf
    assert minutes_to(60, 60, settles, 142) == 0


def test_warming_a_litre_from_15_to_85_costs_81_watt_hours() -> None:
    assert heat_kj(heat_capacity_kj_k(1), 15, 85) / 3.6 == pytest.approx(81.4, abs=0.2)


def test_a_two_kilogram_pot_adds_about_a_fiftieth_to_ten_litres() -> None:
    assert heat_capacity_kj_k(10, 2) / heat_capacity_kj_k(10) == pytest.approx(1.024, abs=0.002)
    assert heat_capacity_kj_k(10, 2, 0.2) > heat_capacity_kj_k(10, 2)


@given(st.floats(5, 60), st.floats(200, 3000), st.floats(1, 30))
def test_power_comes_back_out_of_readings(capacity: float, power: float, minutes: float) -> None:
    rise = power * minutes * 60 / 1000 / capacity
    assert power_from_readings_w(capacity, 25, 25 + rise, minutes) == pytest.approx(power, rel=1e-9)


def test_a_time_constant_is_heat_over_loss() -> None:
    assert time_constant_min(42.66, 5) == pytest.approx(142.2)


def test_a_stove_gives_the_pot_a_share() -> None:
    assert net_power_w("gas", 2000) == pytest.approx(800)
    with pytest.raises(OutOfRange, match="expected one of gas"):
        net_power_w("steam", 2000)


def test_an_even_climb_ends_in_a_hold() -> None:
    assert [ramp_c(40, 85, 45, m) for m in (0, 15, 45, 90)] == [40, 55, 85, 85]
