"""How colour comes out of a dyestuff with time, within one extraction.

Knows nothing of how many extractions there are (`extraction.py`). The formulas are from memory,
unverified; their families are reviewed by Chan, Yusoff & Ngoh 2014, Chem. Eng. Res. Des. 92(6):1169
(abstract read). No rate constant for madder, weld or cochineal in water was found, so these are shapes to
fit, not promises.
"""

import math

from dyesession.dyeing.limits import above_zero, zero_or_more


def first_order_strength(limit: float, rate_per_min: float, minutes: float) -> float:
    """Strength after `minutes`, c = c_inf(1 - exp(-k t)), in the unit of `limit`."""
    zero_or_more("strength at rest", limit, "50")
    zero_or_more("rate", rate_per_min, "0.05 per minute")
    return -limit * math.expm1(-rate_per_min * zero_or_more("time", minutes, "45 min"))


def peleg_strength(first_constant: float, second_constant: float, minutes: float) -> float:
    """Peleg's c = t/(K1 + K2 t): starts at the rate 1/K1 and tends to 1/K2."""
    above_zero("Peleg's first constant", first_constant, "0.05 min per unit")
    above_zero("Peleg's second constant", second_constant, "0.02 per unit")
    zero_or_more("time", minutes, "45 min")
    return minutes / (first_constant + second_constant * minutes)


def two_site_strength(
    washed: float, wash_rate_per_min: float, diffused: float, diffusion_rate_per_min: float, minutes: float
) -> float:
    """Two first-order stores at once (So & Macdonald): one at the surface, one slow, within."""
    return first_order_strength(washed, wash_rate_per_min, minutes) + first_order_strength(
        diffused, diffusion_rate_per_min, minutes
    )
