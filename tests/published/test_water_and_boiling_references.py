"""Water and boiling against two independent property packages, installed for the tests only.

Sources: IAPWS-IF97 and IAPWS-95 as coded in `iapws` (GPL-3, not shipped) and CoolProp's own equation of
state (MIT).
"""

import CoolProp.CoolProp as coolprop
import pytest
from iapws import IAPWS97

from dyesession.dyeing.boiling import boiling_point_at_c, boiling_point_c, pressure_kpa_at
from dyesession.dyeing.water import (
    density_kg_m3,
    heat_capacity_kj_kg_k,
    latent_heat_kj_kg,
    saturation_pressure_kpa,
)

KELVIN = 273.15
TEMPERATURES_C = [1, 5, 12, 20, 33, 45, 60, 71, 80, 88, 95, 99]


def if97(temperature_c: float, quality: float) -> IAPWS97:
    return IAPWS97(T=temperature_c + KELVIN, x=quality)


@pytest.mark.parametrize("temperature_c", TEMPERATURES_C)
def test_density_agrees_with_both_packages(temperature_c: float) -> None:
    ours = density_kg_m3(temperature_c)
    assert ours == pytest.approx(if97(temperature_c, 0).rho, abs=0.06)
    assert ours == pytest.approx(
        coolprop.PropsSI("D", "T", temperature_c + KELVIN, "P", 101_325, "Water"), abs=0.03
    )


@pytest.mark.parametrize("temperature_c", TEMPERATURES_C)
def test_saturation_pressure_agrees_within_its_stated_share(temperature_c: float) -> None:
    assert saturation_pressure_kpa(temperature_c) == pytest.approx(
        if97(temperature_c, 0).P * 1000, rel=0.0012
    )


@pytest.mark.parametrize("temperature_c", [*TEMPERATURES_C, 101, 104])
def test_heat_capacity_and_latent_heat_agree(temperature_c: float) -> None:
    liquid, vapour = if97(temperature_c, 0), if97(temperature_c, 1)
    assert heat_capacity_kj_kg_k(temperature_c) == pytest.approx(liquid.cp, rel=5e-4)
    assert latent_heat_kj_kg(temperature_c) == pytest.approx(vapour.h - liquid.h, rel=2e-4)


@pytest.mark.parametrize("pressure_kpa", [50, 55, 61.6, 70.1, 79.5, 89.9, 98, 101.325, 105, 108.4])
def test_the_boil_agrees_within_a_thousandth_of_a_degree_or_two(pressure_kpa: float) -> None:
    assert boiling_point_c(pressure_kpa) == pytest.approx(
        IAPWS97(P=pressure_kpa / 1000, x=0).T - KELVIN, abs=0.0025
    )
    assert boiling_point_c(pressure_kpa) == pytest.approx(
        coolprop.PropsSI("T", "P", pressure_kpa * 1000, "Q", 0, "Water") - KELVIN, abs=0.02
    )


@pytest.mark.parametrize("elevation_m", range(-500, 5001, 500))
def test_the_boil_by_elevation_agrees(elevation_m: int) -> None:
    reference = IAPWS97(P=pressure_kpa_at(elevation_m) / 1000, x=0).T - KELVIN
    assert boiling_point_at_c(elevation_m) == pytest.approx(reference, abs=0.0025)
