"""Where water boils, by elevation or station pressure, and the hottest a recipe may ask for.

Knows nothing of recipes. Pressure: the standard atmosphere (constants from memory; within 1 Pa of an
ASHRAE psychrometric package). Boiling point: our fit to the IAPWS-IF97 saturation line, within 0.001 °C
from 50 to 106 kPa.
"""

import math

from dyesession.dyeing.limits import within

SEA_LEVEL_KPA = 101.325
LAPSE_PER_M = 2.25577e-5
LAPSE_POWER = 5.25588
LOWEST_M, HIGHEST_M = -500.0, 5000.0

FIT_ABOVE, FIT_LN, FIT_BELOW_C = 3803.96569, 16.27063887, 226.48178629
LOWEST_KPA, HIGHEST_KPA = 50.0, 108.5

RULE_AT_SEA_C, RULE_PER_M = 99.98, 0.003334  # derived: within 0.007 °C from 0 to 3000 m
RULE_HIGHEST_M = 3000.0

CAP_BELOW_BOIL_C = 2.0  # our choice: a recipe's temperature is capped this far below the boil
WEATHER_C = 1.0  # 97 to 105 kPa moves the boil from 98.76 to 100.98 °C (derived): elevation alone is +-1 °C


def pressure_kpa_at(elevation_m: float) -> float:
    """Usual air pressure at an elevation of -500 to 5000 m, kPa."""
    within("elevation", elevation_m, LOWEST_M, HIGHEST_M, "600 m")
    return float(SEA_LEVEL_KPA * (1.0 - LAPSE_PER_M * elevation_m) ** LAPSE_POWER)


def boiling_point_c(pressure_kpa: float) -> float:
    """Boiling point of water at a station pressure of 50 to 108.5 kPa, °C.

    A sharper answer than elevation gives.
    """
    within("air pressure", pressure_kpa, LOWEST_KPA, HIGHEST_KPA, "101.3 kPa")
    return FIT_ABOVE / (FIT_LN - math.log(pressure_kpa)) - FIT_BELOW_C


def boiling_point_at_c(elevation_m: float) -> float:
    """Boiling point of water at an elevation, °C, good to `WEATHER_C` either way."""
    return boiling_point_c(pressure_kpa_at(elevation_m))


def boiling_point_by_rule_c(elevation_m: float) -> float:
    """Rule of thumb, 1 °C lower for each 300 m, for 0 to 3000 m."""
    within("elevation", elevation_m, 0.0, RULE_HIGHEST_M, "600 m")
    return RULE_AT_SEA_C - RULE_PER_M * elevation_m


def hottest_workable_c(boiling_c: float) -> float:
    """Highest temperature a recipe may ask for in an open pot, °C."""
    return boiling_c - CAP_BELOW_BOIL_C


def thermometer_error_c(reading_c: float, boiling_c: float) -> float:
    """What a thermometer reads too high (or, below 0, too low) in a rolling boil, °C."""
    return reading_c - boiling_c
