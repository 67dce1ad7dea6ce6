import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.water import (
    density_kg_m3,
    heat_capacity_kj_kg_k,
    latent_heat_kj_kg,
    mass_of_volume_kg,
    saturation_pressure_kpa,
    volume_when_cold_l,
)

temperatures = st.floats(5, 104)


@given(temperatures, st.floats(0.01, 1))
def test_hotter_water_is_lighter_and_gives_off_more(temperature: float, more: float) -> None:
    assert density_kg_m3(temperature + more) < density_kg_m3(temperature)
    assert saturation_pressure_kpa(temperature + more) > saturation_pressure_kpa(temperature)
    assert latent_heat_kj_kg(temperature + more) < latent_heat_kj_kg(temperature)


@pytest.mark.parametrize(("temperature", "overstates_pct"), [(80, 2.7), (95, 3.8)])
def test_a_jug_of_hot_liquor_overstates_it(temperature: float, overstates_pct: float) -> None:
    assert 100 * (1 / volume_when_cold_l(1, temperature) - 1) == pytest.approx(overstates_pct, abs=0.05)


@given(st.floats(0.1, 30), temperatures)
def test_the_mass_does_not_change_when_the_volume_is_taken_cold(volume: float, temperature: float) -> None:
    cold = volume_when_cold_l(volume, temperature)
    assert mass_of_volume_kg(cold, 20) == pytest.approx(mass_of_volume_kg(volume, temperature), rel=1e-12)


def test_heat_capacity_stays_near_its_kitchen_mean() -> None:
    values = [heat_capacity_kj_kg_k(c) for c in range(15, 96)]
    assert sum(values) / len(values) == pytest.approx(4.188, abs=0.002)


@pytest.mark.parametrize("temperature", [-1, 106])
def test_ice_and_pressure_cookers_are_refused(temperature: float) -> None:
    with pytest.raises(OutOfRange, match="between 0 and 105"):
        density_kg_m3(temperature)
