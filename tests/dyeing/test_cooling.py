import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.cooling import cooling_min, holding_w, time_constant_from_cooling_min
from dyesession.dyeing.heating import temperature_after_c
from dyesession.dyeing.limits import OutOfRange


@pytest.mark.parametrize(
    ("litres", "lid_on", "to_c", "minutes"), [(10, True, 40, 588), (5, False, 60, 38), (15, True, 30, 1107)]
)
def test_the_simulated_pot_comes_back(litres: float, lid_on: bool, to_c: float, minutes: float) -> None:
    assert cooling_min(90, to_c, litres, lid_on) == pytest.approx(minutes)


@given(st.floats(31, 89), st.floats(5, 15), st.booleans())
def test_cooling_by_stages_takes_as_long_as_in_one(between: float, litres: float, lid_on: bool) -> None:
    stages = cooling_min(90, between, litres, lid_on) + cooling_min(between, 30, litres, lid_on)
    assert stages == pytest.approx(cooling_min(90, 30, litres, lid_on), rel=1e-9)


@given(st.floats(30, 89), st.floats(5, 15))
def test_a_lid_and_more_liquor_keep_it_warm(to_c: float, litres: float) -> None:
    assert cooling_min(90, to_c, litres, True) > cooling_min(90, to_c, litres, False)
    if litres < 14:
        assert cooling_min(90, to_c, litres + 1, True) > cooling_min(90, to_c, litres, True)


@given(st.floats(40, 95))
def test_holding_costs_more_without_a_lid(bath_c: float) -> None:
    assert holding_w(bath_c, False) > holding_w(bath_c, True)
    assert holding_w(85, False) == 530


@given(st.floats(30, 800), st.floats(5, 120))
def test_a_pots_own_cooling_tells_its_time_constant(tau: float, minutes: float) -> None:
    there = temperature_after_c(90, 20, tau, minutes)
    if there > 21:
        assert time_constant_from_cooling_min(90, there, minutes, 20) == pytest.approx(tau, rel=1e-6)


def test_a_covered_pot_keeps_one_time_constant_and_an_open_one_does_not() -> None:
    def constants(lid_on: bool) -> list[float]:
        steps = [(90, 80), (60, 50), (40, 30)]
        return [time_constant_from_cooling_min(a, b, cooling_min(a, b, 10, lid_on), 20) for a, b in steps]

    covered, bare = constants(True), constants(False)
    assert max(covered) / min(covered) < 1.7 < 2.5 < max(bare) / min(bare)


@pytest.mark.parametrize(("from_c", "to_c"), [(90, 18), (80, 85), (90, 90)])
def test_readings_that_tell_nothing_are_refused(from_c: float, to_c: float) -> None:
    with pytest.raises(OutOfRange, match="tells no time constant"):
        time_constant_from_cooling_min(from_c, to_c, 30, 20)


def test_a_pot_does_not_warm_by_itself() -> None:
    with pytest.raises(OutOfRange, match="does not warm"):
        cooling_min(60, 70, 10, True)
    with pytest.raises(OutOfRange, match="between 30 and 90"):
        cooling_min(95, 70, 10, True)
    assert not math.isnan(cooling_min(60, 60, 10, True))
