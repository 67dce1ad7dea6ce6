"""Water by temperature: density, heat capacity, latent heat, saturation pressure.

Knows nothing of pots. Density is Kell's polynomial and the pressure Buck's form (coefficients of both
from memory; within 0.015 kg/m3 and 0.11 % of IAPWS-95 from 0 to 100 °C). Heat capacity and latent heat
are IAPWS-95 and, at 100 and 105 °C, IAPWS-IF97 values worked out with an independent package, joined by
straight lines.
"""

import math
from bisect import bisect_right
from collections.abc import Sequence

from dyesession.dyeing.limits import within, zero_or_more

KELVIN_AT_ZERO_C = 273.15
COLDEST_C = 0.0
HOTTEST_C = 105.0
JUG_C = 20.0  # a jug is marked for cold water

# Kell: rho = (a0 + a1 T + ... + a5 T^5)/(1 + b T)
KELL_ABOVE = (999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12)
KELL_BELOW = 16.879850e-3

# Buck: p = A exp((B - T/D) T/(C + T)), kPa
BUCK_A_KPA, BUCK_B, BUCK_C, BUCK_D = 0.61121, 18.678, 257.14, 234.5

# °C, heat capacity kJ/kg/K, latent heat kJ/kg
HEAT = (
    (0.0, 4.2194, 2500.9),
    (5.0, 4.2050, 2489.1),
    (10.0, 4.1952, 2477.2),
    (20.0, 4.1841, 2453.5),
    (30.0, 4.1798, 2429.8),
    (40.0, 4.1794, 2406.0),
    (50.0, 4.1813, 2382.0),
    (60.0, 4.1850, 2357.7),
    (70.0, 4.1901, 2333.1),
    (80.0, 4.1968, 2308.1),
    (90.0, 4.2052, 2282.6),
    (95.0, 4.2102, 2269.6),
    (100.0, 4.2166, 2256.5),
    (105.0, 4.2242, 2243.2),
)


def density_kg_m3(temperature_c: float) -> float:
    """Density of water, 0 to 105 °C, kg/m3."""
    _check(temperature_c)
    above = sum(a * temperature_c**power for power, a in enumerate(KELL_ABOVE))
    return above / (1.0 + KELL_BELOW * temperature_c)


def saturation_pressure_kpa(temperature_c: float) -> float:
    """Pressure of water vapour over water, 0 to 105 °C, kPa."""
    _check(temperature_c)
    return BUCK_A_KPA * math.exp((BUCK_B - temperature_c / BUCK_D) * temperature_c / (BUCK_C + temperature_c))


def heat_capacity_kj_kg_k(temperature_c: float) -> float:
    """Heat capacity of water, 0 to 105 °C, kJ/kg/K."""
    return _joined([(c, heat) for c, heat, _ in HEAT], _check(temperature_c))


def latent_heat_kj_kg(temperature_c: float) -> float:
    """Heat that turns a kilogram of water to vapour, 0 to 105 °C, kJ/kg."""
    return _joined([(c, latent) for c, _, latent in HEAT], _check(temperature_c))


def volume_when_cold_l(volume_l: float, temperature_c: float) -> float:
    """Volume at 20 °C of a volume read hot: at 95 °C a jug overstates the liquor by 3.8 %."""
    zero_or_more("volume", volume_l, "4 L")
    return volume_l * density_kg_m3(temperature_c) / density_kg_m3(JUG_C)


def mass_of_volume_kg(volume_l: float, temperature_c: float) -> float:
    """Mass of a volume of water read at a temperature, kg."""
    litres_per_m3 = 1000.0
    return zero_or_more("volume", volume_l, "4 L") * density_kg_m3(temperature_c) / litres_per_m3


def _check(temperature_c: float) -> float:
    return within("temperature", temperature_c, COLDEST_C, HOTTEST_C, "85 °C")


def _joined(points: Sequence[tuple[float, float]], at: float) -> float:
    """Value on the straight line between the two points round `at`."""
    right = min(bisect_right([x for x, _ in points], at), len(points) - 1)
    (x0, y0), (x1, y1) = points[right - 1], points[right]
    return y0 + (y1 - y0) * (at - x0) / (x1 - x0)
