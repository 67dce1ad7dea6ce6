"""A pot on a ring as one lump of heat: how warm when, where it settles, how much energy.

Knows nothing of clocks: time is minutes from any start. C dT/dt = P - k(T - Ta), so T tends to Ta + P/k
with the time constant C/k (textbook form). `eta.py` turns readings into a time to temperature;
`cooling.py` has the losses.
"""

import math

from dyesession.dyeing.limits import OutOfRange, above_zero, zero_or_more

SECONDS_PER_MIN = 60.0
KJ_PER_KWH = 3600.0
WATER_KJ_KG_K = 4.188  # mean of IAPWS-95 from 15 to 95 °C
STEEL_KJ_KG_K = 0.5  # stainless steel; from memory, rounded
FIBRE_AS_WATER = 0.35  # 0.3 to 0.4 of its mass in water; common practice, no source

# Share of a stove's input that reaches the pot. A blog quoting US DOE tests (read): weak; measure your own.
SHARE_REACHING_POT = {"gas": 0.40, "electric coil": 0.74, "induction": 0.84}

# Wool is brought to near the boil in 45 to 60 minutes (Mairet 1916, A Book on Vegetable Dyes, read).
WOOL_RAMP_MIN = (45.0, 60.0)


def heat_capacity_kj_k(water_kg: float, pot_kg: float = 0.0, dry_fibre_kg: float = 0.0) -> float:
    """Heat to warm water, steel pot and fibre by one degree, kJ/K."""
    above_zero("water", water_kg, "10 kg")
    zero_or_more("pot", pot_kg, "2 kg")
    zero_or_more("fibre", dry_fibre_kg, "0.2 kg")
    return WATER_KJ_KG_K * (water_kg + FIBRE_AS_WATER * dry_fibre_kg) + STEEL_KJ_KG_K * pot_kg


def heat_kj(capacity_kj_k: float, from_c: float, to_c: float) -> float:
    """Heat to go from one temperature to another, losses left out, kJ."""
    return above_zero("heat capacity", capacity_kj_k, "42.9 kJ/K") * (to_c - from_c)


def net_power_w(stove: str, input_w: float) -> float:
    """Power reaching the pot from the stove's input, W.

    Raises `OutOfRange` for a stove without a figure.
    """
    above_zero("stove's input", input_w, "2000 W")
    if stove not in SHARE_REACHING_POT:
        known = ", ".join(SHARE_REACHING_POT)
        raise OutOfRange(f'No share is known for the stove "{stove}"; expected one of {known}.')
    return input_w * SHARE_REACHING_POT[stove]


def power_from_readings_w(capacity_kj_k: float, from_c: float, to_c: float, minutes: float) -> float:
    """Power that reached the pot between two readings, W; best from 25 to 45 °C, where losses are small."""
    watts_per_kw = 1000.0
    seconds = above_zero("time between readings", minutes, "10 min") * SECONDS_PER_MIN
    return heat_kj(capacity_kj_k, from_c, to_c) * watts_per_kw / seconds


def settling_c(room_c: float, power_w: float, loss_w_k: float) -> float:
    """Temperature at which a setting settles, Ta + P/k.

    It may lie above the boil, which then comes first.
    """
    return room_c + zero_or_more("power", power_w, "1000 W") / above_zero("loss", loss_w_k, "5 W/K")


def time_constant_min(capacity_kj_k: float, loss_w_k: float) -> float:
    """Time constant C/k in minutes."""
    joules_per_kj = 1000.0
    above_zero("heat capacity", capacity_kj_k, "42.7 kJ/K")
    return capacity_kj_k * joules_per_kj / above_zero("loss", loss_w_k, "5 W/K") / SECONDS_PER_MIN


def temperature_after_c(start_c: float, settles_c: float, constant_min: float, minutes: float) -> float:
    """Temperature after some minutes, T = Tinf + (T0 - Tinf) exp(-t/tau)."""
    above_zero("time constant", constant_min, "142 min")
    return settles_c + (start_c - settles_c) * math.exp(
        -zero_or_more("time", minutes, "10 min") / constant_min
    )


def minutes_to(target_c: float, now_c: float, settles_c: float, constant_min: float) -> float:
    """Minutes from now until the pot passes a target; 0 when it is there, infinite when it never will.

    It never will when the target does not lie between now and where the pot settles.
    """
    above_zero("time constant", constant_min, "142 min")
    if target_c == now_c:
        return 0.0
    share_gone = (target_c - now_c) / (settles_c - now_c) if settles_c != now_c else math.inf
    return -constant_min * math.log1p(-share_gone) if 0.0 < share_gone < 1.0 else math.inf


def ramp_c(start_c: float, target_c: float, ramp_min: float, minutes: float) -> float:
    """Wanted temperature along an even climb of `ramp_min`, held at the target afterwards."""
    above_zero("length of the climb", ramp_min, "45 min")
    return start_c + (target_c - start_c) * min(zero_or_more("time", minutes, "10 min") / ramp_min, 1.0)
