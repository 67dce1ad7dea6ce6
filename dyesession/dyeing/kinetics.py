"""Uptake with time, as shapes to fit to the dyer's own readings; never a promise from temperature.

Knows nothing of dyes by name. Published activation energies for dyeings alike run from 10.4 to 107.15
kJ/mol (Ajmal & Piergiovanni 2018 for cochineal on wool; Wei et al. 2013 for lac on wool; abstracts read):
60 to 80 °C may mean 1.2 or 9 times as fast. A surface barrier makes the first minutes slower than any of
these laws on wool (study of a surface barrier to dye on wool, authors not shown, abstract read).
`diffusion.py` holds the cylinder.
"""

import itertools
import math
from collections.abc import Callable, Sequence

from dyesession.dyeing.exhaustion import GAS_CONSTANT, J_PER_KJ
from dyesession.dyeing.limits import OutOfRange, above_zero, within, zero_or_more
from dyesession.dyeing.water import KELVIN_AT_ZERO_C

COLDEST_C, HOTTEST_C = -50.0, 200.0  # far outside any kitchen: only to catch a slip of the pen


def first_order_share(rate_per_min: float, minutes: float) -> float:
    """Share of the final uptake reached, F = 1 - exp(-k t) (textbook form)."""
    zero_or_more("rate", rate_per_min, "0.05 per minute")
    return -math.expm1(-rate_per_min * zero_or_more("time", minutes, "30 min"))


def first_order_minutes(rate_per_min: float, share: float) -> float:
    """Minutes to reach a share of the final uptake, the inverse of `first_order_share`.

    Share from 0 to below 1.
    """
    above_zero("rate", rate_per_min, "0.05 per minute")
    if not 0.0 <= share < 1.0:
        raise OutOfRange(
            f"The share of the uptake is {share:g}; expected from 0 to below 1, for example 0.9."
        )
    return -math.log1p(-share) / rate_per_min


def second_order_taken(final_mg_g: float, rate_g_mg_min: float, minutes: float) -> float:
    """Uptake in mg/g after `minutes`, q = q_e^2 k2 t/(1 + q_e k2 t) (textbook form).

    k2 belongs to the strength and the liquor ratio it was fitted at; never carry it to another dose.
    """
    zero_or_more("final uptake", final_mg_g, "20 mg/g")
    zero_or_more("rate", rate_g_mg_min, "0.003 g/mg/min")
    reach = final_mg_g * rate_g_mg_min * zero_or_more("time", minutes, "30 min")
    return final_mg_g * reach / (1.0 + reach)


def second_order_half_min(final_mg_g: float, rate_g_mg_min: float) -> float:
    """Minutes to half the final uptake, 1/(k2 q_e)."""
    return 1.0 / (
        above_zero("final uptake", final_mg_g, "20 mg/g") * above_zero("rate", rate_g_mg_min, "0.003")
    )


def second_order_start_mg_g_min(final_mg_g: float, rate_g_mg_min: float) -> float:
    """Uptake per minute at the very start, k2 q_e^2."""
    zero_or_more("final uptake", final_mg_g, "20 mg/g")
    return zero_or_more("rate", rate_g_mg_min, "0.003 g/mg/min") * final_mg_g**2


def cegarra_puente_share(rate_per_min: float, minutes: float, exponent: float = 1.0) -> float:
    """Share of the final uptake, F = sqrt(1 - exp(-(k t)^a)); a is 1 in the original form.

    Formula from memory, unverified; the modified form is used by Kesornsit et al. 2020 (abstract read).
    """
    zero_or_more("rate", rate_per_min, "0.02 per minute")
    above_zero("exponent", exponent, "1")
    reach = rate_per_min * zero_or_more("time", minutes, "30 min")
    return math.sqrt(-math.expm1(-(reach**exponent)))


def arrhenius_factor(activation_kj_mol: float, from_c: float, to_c: float) -> float:
    """Factor on a rate from one temperature to another, exp((Ea/R)(1/T1 - 1/T2)) (textbook form).

    The activation energy has no default on purpose: see the head of this file.
    """
    return math.exp(
        activation_kj_mol * J_PER_KJ / GAS_CONSTANT * (1.0 / _kelvin(from_c) - 1.0 / _kelvin(to_c))
    )


def uptake_along(
    curve: Sequence[tuple[float, float]],
    rate_per_min: float,
    rate_at_c: float,
    activation_kj_mol: float,
    final_share: Callable[[float], float] = lambda _temperature_c: 1.0,
    start_share: float = 0.0,
    step_min: float = 0.5,
) -> float:
    """Share taken at the end of a temperature curve of (minutes, °C) points joined by straight lines.

    Steps through dF/dt = k(T)(F_e(T) - F), each step solved exactly at its middle temperature (derived),
    so a long step never overshoots. Raises `OutOfRange` when the times do not rise.
    """
    above_zero("step", step_min, "0.5 min")
    share = start_share
    for (from_min, from_c), (to_min, to_c) in itertools.pairwise(curve):
        if to_min <= from_min:
            raise OutOfRange(
                f"The time {to_min:g} min follows {from_min:g} min; times must rise, for example 0, 45."
            )
        steps = math.ceil((to_min - from_min) / step_min)
        for i in range(steps):
            temperature_c = from_c + (to_c - from_c) * (i + 0.5) / steps
            rate = rate_per_min * arrhenius_factor(activation_kj_mol, rate_at_c, temperature_c)
            final = final_share(temperature_c)
            share = final + (share - final) * math.exp(-rate * (to_min - from_min) / steps)
    return share


def _kelvin(temperature_c: float) -> float:
    return within("temperature", temperature_c, COLDEST_C, HOTTEST_C, "85 °C") + KELVIN_AT_ZERO_C
