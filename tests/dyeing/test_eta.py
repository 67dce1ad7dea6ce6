import itertools
import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.eta import (
    CONSTANT_FACTOR,
    Reading,
    far_enough,
    from_three_readings,
    settling_from_two_c,
    straight_line_min,
    time_constant_prior_min,
    time_to_temperature,
)
from dyesession.dyeing.heating import minutes_to, temperature_after_c
from dyesession.dyeing.limits import OutOfRange

Three = tuple[float, float, float]

# Simulated 28 cm pots warmed from 15 to 85 °C, worked out apart from this program: hours of time constant,
# whether the lid is on, then minute and temperature at three readings with the minutes truly left to a tenth.
SIMULATED = [
    (7.73, True, (13.1, 33.3, 39.2), (26.2, 51.2, 26.2), (39.2, 68.5, 13.1)),
    (2.72, False, (15.3, 36.2, 45.8), (30.5, 55.8, 30.5), (45.8, 72.5, 15.3)),
    (7.73, True, (8.6, 33.0, 25.7), (17.1, 50.8, 17.1), (25.7, 68.1, 8.6)),
    (2.72, False, (9.4, 34.6, 28.1), (18.7, 53.4, 18.7), (28.1, 70.5, 9.4)),
    (6.04, True, (8.3, 33.2, 24.9), (16.6, 51.0, 16.6), (24.9, 68.3, 8.3)),
    (8.54, True, (9.6, 33.0, 28.7), (19.1, 50.8, 19.1), (28.7, 68.1, 9.6)),
]


@pytest.mark.parametrize(("hours", "lid_on", "early", "middle", "late"), SIMULATED)
def test_the_band_holds_the_truth_of_a_simulated_pot(
    hours: float, lid_on: bool, early: Three, middle: Three, late: Three
) -> None:
    start = (0.0, 15.0, 0.0)
    for before, now in itertools.pairwise((start, early, middle, late)):
        told = time_to_temperature(85, Reading(*before[:2]), Reading(*now[:2]), hours * 60, lid_on)
        assert told.not_before_min <= now[2] <= told.late_min
        assert told.about_min == pytest.approx(now[2], rel=0.03 if lid_on else 0.2)


@given(st.floats(5, 40), st.floats(90, 300), st.floats(60, 600), st.floats(5, 40))
def test_exact_readings_give_the_exact_answer(start: float, settles: float, tau: float, apart: float) -> None:
    second = Reading(apart, temperature_after_c(start, settles, tau, apart))
    first = Reading(0, start)
    assert settling_from_two_c(first, second, tau) == pytest.approx(settles, rel=1e-6)
    if second.temperature_c < 84:
        truth = minutes_to(85, second.temperature_c, settles, tau)
        told = time_to_temperature(85, first, second, tau, lid_on=True, reading_sd_c=0)
        assert told.about_min == pytest.approx(truth, rel=1e-4)
        assert told.not_before_min == pytest.approx(straight_line_min(85, first, second), rel=1e-6)
        assert told.not_before_min <= truth <= told.late_min


def test_noisy_kitchen_readings_fall_in_the_band_nine_times_in_ten() -> None:
    dice = random.Random(4)
    truth = minutes_to(85, temperature_after_c(20, 120, 460, 180), 120, 460)
    inside, trials = 0, 1500
    for _ in range(trials):
        first = Reading(160, temperature_after_c(20, 120, 460, 160) + dice.gauss(0, 0.5))
        second = Reading(180, temperature_after_c(20, 120, 460, 180) + dice.gauss(0, 0.5))
        told = time_to_temperature(85, first, second, 460, lid_on=True)
        inside += told.not_before_min <= truth <= told.late_min
    assert 0.88 <= inside / trials <= 0.99


@given(st.floats(0.1, 3), st.floats(1.1, 3))
def test_a_shakier_thermometer_widens_the_band(sd: float, more: float) -> None:
    first, second = Reading(0, 30), Reading(20, 50)
    steady = time_to_temperature(85, first, second, 460, True, sd)
    shaky = time_to_temperature(85, first, second, 460, True, sd * more)
    assert shaky.not_before_min < steady.not_before_min
    assert shaky.late_min > steady.late_min
    assert shaky.settles_plus_minus_c > steady.settles_plus_minus_c


def test_an_open_pot_gets_a_longer_late_end() -> None:
    readings = Reading(0, 30), Reading(20, 50)
    assert time_to_temperature(85, *readings, 163, False).late_min > 1.2 * (
        time_to_temperature(85, *readings, 163, True).late_min
    )


def test_a_ring_too_low_is_said_to_settle_short() -> None:
    tau = 160.0
    first = Reading(0, 60)
    second = Reading(30, temperature_after_c(60, 78, tau, 30))
    told = time_to_temperature(85, first, second, tau, lid_on=False)
    assert told.settles_c == pytest.approx(78)
    assert told.about_min == math.inf and told.late_min == math.inf


def test_a_pot_already_there_needs_no_time() -> None:
    told = time_to_temperature(60, Reading(0, 30), Reading(20, 62), 460, lid_on=True)
    assert (told.not_before_min, told.about_min, told.late_min) == (0, 0, 0)


def test_a_pot_that_cools_never_arrives() -> None:
    told = time_to_temperature(85, Reading(0, 70), Reading(20, 65), 460, lid_on=True)
    assert told.about_min == math.inf
    assert straight_line_min(85, Reading(0, 70), Reading(20, 65)) == math.inf


@pytest.mark.parametrize(("second", "enough"), [((6, 41), True), ((4, 60), False), ((30, 35), False)])
def test_readings_want_ten_degrees_and_five_minutes(second: tuple[float, float], enough: bool) -> None:
    assert far_enough(Reading(0, 30), Reading(*second)) is enough


def test_readings_in_the_wrong_order_are_refused() -> None:
    with pytest.raises(OutOfRange, match="later one must come after"):
        time_to_temperature(85, Reading(20, 30), Reading(20, 50), 460, lid_on=True)


@pytest.mark.parametrize("rise", [(20, 30, 40), (20, 30, 45), (30, 30, 40), (40, 30, 35)])
def test_three_readings_must_slow_down(rise: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRange, match="slow down"):
        from_three_readings(*rise, 10)


def test_time_constants_grow_with_the_pot_and_hold_at_the_ends() -> None:
    litres = [2, 5, 7, 10, 12, 15, 30]
    for lid_on in (True, False):
        constants = [time_constant_prior_min(volume, lid_on) for volume in litres]
        assert constants == sorted(constants)
        assert constants[0] == constants[1] and constants[-1] == constants[-2]
    assert time_constant_prior_min(10, True) == pytest.approx(463.8)
    assert time_constant_prior_min(10, False) < time_constant_prior_min(10, True) / CONSTANT_FACTOR


@given(st.floats(20, 40), st.floats(5, 30), st.floats(5, 30))
def test_the_early_end_allows_for_the_noise_of_both_readings_together(
    start: float, rise: float, minutes: float
) -> None:
    first, second, sd = Reading(0, start), Reading(minutes, start + rise), 1e-4
    line, step = straight_line_min(85, first, second), 1e-5
    by_first = straight_line_min(85, Reading(0, start + step), second) - line
    by_second = straight_line_min(85, first, Reading(minutes, start + rise + step)) - line
    noise = 1.645 * sd * math.hypot(by_first, by_second) / step
    told = time_to_temperature(85, first, second, 460, lid_on=True, reading_sd_c=sd)
    assert line - told.not_before_min == pytest.approx(noise, rel=0.01)
