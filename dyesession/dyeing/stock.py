"""Per cent of fibre, stock solutions and dilution: the arithmetic of strengths.

Knows nothing of scales (`scales.py`). w/v strength is grams per 100 mL of solution, made up to the mark.
Limits of solubility at 20 °C were read, except cream of tartar (from memory, unverified).
"""

from dyesession.dyeing.limits import OutOfRange, above_zero, within, zero_or_more

ML_PER_L = 1000.0

# Grams that dissolve in a litre at 20 °C; soda ash 17.7 % by mass taken as w/v, which errs low
SOLUBLE_G_L = {"potassium alum": 139.0, "citric acid": 590.0, "soda ash": 177.0, "cream of tartar": 5.0}

HANDY_ML = (5.0, 250.0)  # a dose of stock easy to measure; judgement
HANDY_STRENGTHS_PCT = (0.1, 0.5, 1.0, 2.0, 5.0, 10.0)


def dose_g(percent_of_fibre: float, fibre_g: float) -> float:
    """Grams of a dose given as a per cent of the fibre's weight."""
    zero_or_more("dose", percent_of_fibre, "12 %")
    return percent_of_fibre * zero_or_more("fibre", fibre_g, "150 g") / 100.0


def percent_of_fibre(dose: float, fibre_g: float) -> float:
    """Per cent of the fibre's weight that a dose in grams is, the inverse of `dose_g`."""
    return 100.0 * zero_or_more("dose", dose, "18 g") / above_zero("fibre", fibre_g, "150 g")


def bath_g_l(percent: float, liquor_ratio: float) -> float:
    """Grams per litre of a dose in per cent of fibre at a liquor ratio in litres per kilogram."""
    return 10.0 * zero_or_more("dose", percent, "12 %") / above_zero("liquor ratio", liquor_ratio, "30 L/kg")


def water_l(fibre_g: float, liquor_ratio: float) -> float:
    """Litres of bath for a fibre at a liquor ratio in litres per kilogram."""
    zero_or_more("fibre", fibre_g, "150 g")
    return fibre_g * above_zero("liquor ratio", liquor_ratio, "30 L/kg") / ML_PER_L


def stock_ml(needed_g: float, strength_pct: float) -> float:
    """Millilitres of a stock solution (w/v per cent) that hold a mass."""
    return (
        100.0 * zero_or_more("mass needed", needed_g, "2.5 g") / above_zero("strength", strength_pct, "1 %")
    )


def stock_g(volume_ml: float, strength_pct: float) -> float:
    """Grams in a volume of stock solution (w/v per cent), the inverse of `stock_ml`."""
    return zero_or_more("volume", volume_ml, "250 mL") * zero_or_more("strength", strength_pct, "1 %") / 100.0


def diluted_ml(strong_ml: float, strong_pct: float, weak_pct: float) -> float:
    """Volume a strong solution must be made up to for a weaker strength, C1 V1 = C2 V2.

    Raises `OutOfRange` when the weaker strength lies above the stronger.
    """
    above_zero("weaker strength", weak_pct, "1 %")
    if weak_pct > strong_pct:
        raise OutOfRange(
            f"A {strong_pct:g} % solution cannot be diluted to {weak_pct:g} %;"
            " the strength wanted must be the lower, for example 10 % to 1 %."
        )
    return zero_or_more("volume", strong_ml, "25 mL") * strong_pct / weak_pct


def by_mass_pct(by_volume_pct: float, density_kg_l: float) -> float:
    """Strength by mass from w/v per cent and density (a 1 % solution: about 1.00-1.01 kg/L)."""
    zero_or_more("strength", by_volume_pct, "5 %")
    return by_volume_pct / within("density", density_kg_l, 0.7, 2.0, "1.02 kg/L")


def stays_dissolved(substance: str, strength_pct: float) -> bool | None:
    """Whether a stock of this strength keeps at 20 °C without crystals; None when no limit is known."""
    limit_g_l = SOLUBLE_G_L.get(substance)
    g_l = zero_or_more("strength", strength_pct, "10 %") * 10.0
    return None if limit_g_l is None else g_l <= limit_g_l


def handy_strength_pct(substance: str, needed_g: float) -> float | None:
    """Weakest usual stock strength that gives a dose of 5 to 250 mL and stays dissolved.

    None when there is none.
    """
    above_zero("mass needed", needed_g, "2.5 g")
    for strength in HANDY_STRENGTHS_PCT:
        dose = stock_ml(needed_g, strength)
        if HANDY_ML[0] <= dose <= HANDY_ML[1] and stays_dissolved(substance, strength) is not False:
            return strength
    return None
