"""Water boiling off a pot in every world: the laws' band, a lid not told, and the bound of the ring's power.

Knows nothing of vessels by name. Laws and their spread are `dyeing.evaporation`'s; what it needs and the
plan does not tell (a diameter) is guessed here.
"""

import math
from functools import lru_cache

from dyesession.account.worlds import Vector, times
from dyesession.dyeing.evaporation import latent_heat_bound_kg_h, room_air, steam_band
from dyesession.dyeing.water import saturation_pressure_kpa

HEIGHT_OVER_DIAMETER = 0.7  # a stock pot: 28 cm wide, 12 L; judgement
FILLED_TO = 2.0 / 3.0  # a pot of unknown size is taken as filled to two thirds; common practice, no source
COLDEST_STEAM_C = 30.0  # below this a pot loses under 30 g an hour (the laws at 28 cm): left out
LOWEST_BOIL_C, HIGHEST_BOIL_C = 82.0, 101.5  # 5000 m up, and sea level under a high; the fit's own range
MOST_OF_POT = 0.5  # of what is there, in one short step: a pot never boils quite dry here
L_PER_M3 = 1000.0


def diameter_m(capacity_l: float | None, volume_l: float) -> float:
    """Width of a pot from its brim volume or, not knowing that, from what is in it."""
    brim_l = capacity_l if capacity_l is not None and capacity_l > 0 else volume_l / FILLED_TO
    return float((4.0 * brim_l / L_PER_M3 / (math.pi * HEIGHT_OVER_DIAMETER)) ** (1.0 / 3.0))


def steamed_l(
    lid: Vector,
    steam: Vector,
    volume_l: Vector,
    temperature_c: float,
    hours: float,
    wide_m: float,
    boiling_c: float,
    net_power_w: float,
) -> Vector:
    """Litres lost in each world in some hours at a temperature of 30 °C or more.

    `lid` is the share past the lid, `steam` where the kitchen lies in the laws' band (1: the middle).
    """
    boil_c = min(max(boiling_c, LOWEST_BOIL_C), HIGHEST_BOIL_C)
    bath_c = min(temperature_c, boil_c)
    rates, fastest = _rates_1_m_wide(lid, steam, round(bath_c), round(boil_c, 1))
    most = latent_heat_bound_kg_h(net_power_w, bath_c) * hours
    scale = wide_m * wide_m * hours
    if fastest * scale <= min(most, MOST_OF_POT * min(volume_l)):
        return times(rates, scale)
    return tuple(
        [min(rate * scale, most, MOST_OF_POT * there) for rate, there in zip(rates, volume_l, strict=True)]
    )


@lru_cache(maxsize=512)
def _rates_1_m_wide(lid: Vector, steam: Vector, temperature_c: int, boiling_c: float) -> tuple[Vector, float]:
    """Kilograms an hour from a pot 1 m wide in each world, and the fastest of them; a lid never adds."""
    centre, down, up = _open_1_m_wide(temperature_c, boiling_c)
    rates = tuple(
        [
            centre * factor ** (up if factor > 1.0 else down) * min(share, 1.0)
            for factor, share in zip(steam, lid, strict=True)
        ]
    )
    return rates, max(rates)


@lru_cache(maxsize=512)
def _open_1_m_wide(temperature_c: int, boiling_c: float) -> tuple[float, float, float]:
    """Open pot 1 m wide: centre in kg/h, and the log-widths of its 90 % band down and up."""
    room = room_air(pressure_kpa=saturation_pressure_kpa(boiling_c))
    found = steam_band(float(temperature_c), 1.0, "off", None, room)
    centre = found.centre_kg_h
    return (
        centre,
        math.log(centre / found.low_kg_h),
        math.log(found.high_kg_h / centre),
    )
