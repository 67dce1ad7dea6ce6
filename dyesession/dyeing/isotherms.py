"""A bath at rest for the four shapes of uptake: Nernst, Langmuir, Freundlich and the two together.

Knows nothing of which dye needs which. Each shape is solved with the mass balance q = L(c0 - c), L in
L/g, c in mg/L, q in mg per g of fibre (solutions derived). Reported as best: Langmuir for lac on wool and
silk (Wei et al. 2013) and myrobalan on wool (Shabbir et al. 2016), Freundlich with n = 0.61 for madder on
wool (Feiz & Norouzi 2015), dual mode for cochineal on wool at pH 4 (Mirnezhad et al. 2017); abstracts
read.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

from dyesession.dyeing.limits import above_zero, zero_or_more

FREUNDLICH_MADDER_WOOL = 0.61  # Feiz & Norouzi 2015, abstract read
HALVINGS = 200  # enough to end on neighbouring floats


@dataclass(frozen=True)
class AtRest:
    """A bath at rest: its strength in mg/L, colour on the fibre in mg/g, share taken."""

    bath_mg_l: float
    on_fibre_mg_g: float
    exhausted: float


def nernst_bath(start_mg_l: float, litres_per_g: float, partition_l_per_g: float) -> AtRest:
    """Solve q = K c."""
    _check(start_mg_l, litres_per_g)
    zero_or_more("partition", partition_l_per_g, "0.12 L/g")
    return _settled(start_mg_l, litres_per_g, start_mg_l * litres_per_g / (litres_per_g + partition_l_per_g))


def langmuir_bath(
    start_mg_l: float, litres_per_g: float, most_mg_g: float, langmuir_l_per_mg: float
) -> AtRest:
    """Solve q = q_m K_L c/(1 + K_L c): the share taken falls as the dose rises."""
    _check(start_mg_l, litres_per_g)
    above_zero("most the fibre can take", most_mg_g, "24 mg/g")
    above_zero("Langmuir constant", langmuir_l_per_mg, "0.02 L/mg")
    middle = litres_per_g + most_mg_g * langmuir_l_per_mg - litres_per_g * langmuir_l_per_mg * start_mg_l
    root = math.hypot(middle, 2.0 * litres_per_g * math.sqrt(langmuir_l_per_mg * start_mg_l))
    if middle > 0:  # the form that does not subtract two nearly equal numbers
        bath = 2.0 * litres_per_g * start_mg_l / (middle + root)
    else:
        bath = (root - middle) / (2.0 * litres_per_g * langmuir_l_per_mg)
    return _settled(start_mg_l, litres_per_g, bath)


def freundlich_bath(start_mg_l: float, litres_per_g: float, factor: float, exponent: float) -> AtRest:
    """Solve q = K_F c^n, exponent n above 0: below 1, the weaker the bath the larger the share taken."""
    _check(start_mg_l, litres_per_g)
    above_zero("Freundlich factor", factor, "0.5")
    above_zero("Freundlich exponent", exponent, "0.61")
    return _bisected(start_mg_l, litres_per_g, lambda bath: factor * bath**exponent)


def dual_mode_bath(
    start_mg_l: float,
    litres_per_g: float,
    most_mg_g: float,
    langmuir_l_per_mg: float,
    partition_l_per_g: float,
) -> AtRest:
    """Solve q = S K_L c/(1 + K_L c) + K_p c: sites and solution at once."""
    _check(start_mg_l, litres_per_g)
    zero_or_more("most the sites can take", most_mg_g, "12 mg/g")
    zero_or_more("Langmuir constant", langmuir_l_per_mg, "0.05 L/mg")
    zero_or_more("partition", partition_l_per_g, "0.02 L/g")

    def on_fibre(bath: float) -> float:
        sites = most_mg_g * langmuir_l_per_mg * bath / (1.0 + langmuir_l_per_mg * bath)
        return sites + partition_l_per_g * bath

    return _bisected(start_mg_l, litres_per_g, on_fibre)


def _check(start_mg_l: float, litres_per_g: float) -> None:
    zero_or_more("strength at the start", start_mg_l, "300 mg/L")
    above_zero("liquor per gram of fibre", litres_per_g, "0.03 L/g")


def _settled(start_mg_l: float, litres_per_g: float, bath_mg_l: float) -> AtRest:
    taken = start_mg_l - bath_mg_l
    return AtRest(bath_mg_l, litres_per_g * taken, taken / start_mg_l if start_mg_l else 0.0)


def _bisected(start_mg_l: float, litres_per_g: float, on_fibre: Callable[[float], float]) -> AtRest:
    low, high = 0.0, start_mg_l
    for _ in range(HALVINGS):
        bath = (low + high) / 2.0
        if on_fibre(bath) > litres_per_g * (start_mg_l - bath):
            high = bath
        else:
            low = bath
        if bath in (low, high) and math.nextafter(low, high) >= high:
            break
    return _settled(start_mg_l, litres_per_g, (low + high) / 2.0)
