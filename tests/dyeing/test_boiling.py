import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.boiling import (
    CAP_BELOW_BOIL_C,
    WEATHER_C,
    boiling_point_at_c,
    boiling_point_by_rule_c,
    boiling_point_c,
    hottest_workable_c,
    pressure_kpa_at,
    thermometer_error_c,
)
from dyesession.dyeing.limits import OutOfRange


@given(st.floats(-500, 4990), st.floats(1, 10))
def test_higher_up_it_boils_cooler(elevation: float, more: float) -> None:
    assert pressure_kpa_at(elevation + more) < pressure_kpa_at(elevation)
    assert boiling_point_at_c(elevation + more) < boiling_point_at_c(elevation)


@given(st.floats(0, 3000))
def test_the_rule_of_thumb_holds_within_a_hundredth_of_a_degree(elevation: float) -> None:
    assert boiling_point_by_rule_c(elevation) == pytest.approx(boiling_point_at_c(elevation), abs=0.01)


@pytest.mark.parametrize("pressure", [97.0, 105.0])
def test_weather_moves_the_boil_by_no_more_than_stated(pressure: float) -> None:
    moved = abs(boiling_point_c(pressure) - boiling_point_at_c(0))
    assert 0.5 < moved <= WEATHER_C + 0.25


def test_a_simmer_at_95_cannot_be_had_above_1500_m() -> None:
    assert CAP_BELOW_BOIL_C == 2
    assert hottest_workable_c(boiling_point_at_c(800)) > 95
    assert hottest_workable_c(boiling_point_at_c(1500)) < 95


def test_a_rolling_boil_checks_the_thermometer() -> None:
    assert thermometer_error_c(96.5, boiling_point_at_c(600)) == pytest.approx(-1.5, abs=0.1)


@pytest.mark.parametrize("elevation", [-900, 6000])
def test_places_outside_the_fit_are_refused(elevation: float) -> None:
    with pytest.raises(OutOfRange, match="between -500 and 5000"):
        boiling_point_at_c(elevation)
