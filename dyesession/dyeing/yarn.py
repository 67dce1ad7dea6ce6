"""Yarn counts: tex, and the counts of each trade, and what a length weighs.

Knows nothing of recipes. Yards per hank were read (Taylor, Cotton Weaving and Designing, 6th ed., and
spinners' count tables); one page gives 1600 yd as the Yorkshire skein, better sources 256. Conversions
are derived from the exact pound and yard.
"""

from dyesession.dyeing.limits import OutOfRange, above_zero, zero_or_more

GRAMS_PER_LB, METRES_PER_YD = 453.59237, 0.9144  # exact
TEX_PER_G_M = 1000.0

# Systems in which a higher number is a thicker yarn: tex in one unit
DIRECT_TEX = {"tex": 1.0, "dtex": 0.1, "denier": 1.0 / 9.0}

# Systems in which a higher number is a finer yarn: yards per hank, hanks counted per pound
YARDS_PER_HANK = {
    "worsted": 560.0,
    "cotton": 840.0,
    "spun silk": 840.0,
    "linen lea": 300.0,
    "woollen run": 1600.0,
    "woollen cut": 300.0,
    "Yorkshire skein": 256.0,
}
METRIC = "Nm"
LENGTH_ERROR = 0.05  # weight reckoned from a length and a count, either way; common practice, no source


def tex_of(system: str, count: float, strands: int = 1) -> float:
    """Tex (grams per kilometre) of a yarn of `strands` strands, each of this count in a system.

    Trades write 2/28 and 28/2 for the same yarn: ask which number is the strands. Raises `OutOfRange` for
    a system not known.
    """
    above_zero("count", count, "20")
    above_zero("number of strands", strands, "2")
    if system in DIRECT_TEX:
        return strands * count * DIRECT_TEX[system]
    return strands * _fineness_to_tex(system) / count


def count_of(system: str, tex: float) -> float:
    """Count in a system from tex, as a single strand; the inverse of `tex_of`."""
    above_zero("tex", tex, "250 tex")
    return tex / DIRECT_TEX[system] if system in DIRECT_TEX else _fineness_to_tex(system) / tex


def metres_per_100_g(tex: float) -> float:
    """Metres in 100 g of a yarn."""
    return 100.0 * TEX_PER_G_M / above_zero("tex", tex, "250 tex")


def metres_per_100_g_of(yards_per_lb: float) -> float:
    """Metres in 100 g from yards per pound."""
    return above_zero("yards per pound", yards_per_lb, "1000") * METRES_PER_YD * 100.0 / GRAMS_PER_LB


def mass_of_length_g(length_m: float, tex: float) -> tuple[float, float, float]:
    """Grams (low, middle, high) of a length of yarn, when only the length is known."""
    middle = zero_or_more("length", length_m, "400 m") * above_zero("tex", tex, "250 tex") / TEX_PER_G_M
    return middle * (1.0 - LENGTH_ERROR), middle, middle * (1.0 + LENGTH_ERROR)


def _fineness_to_tex(system: str) -> float:
    if system == METRIC:
        return TEX_PER_G_M
    if system not in YARDS_PER_HANK:
        known = ", ".join((*DIRECT_TEX, METRIC, *YARDS_PER_HANK))
        raise OutOfRange(f'"{system}" is not a known yarn count; expected one of {known}.')
    return TEX_PER_G_M * GRAMS_PER_LB / (YARDS_PER_HANK[system] * METRES_PER_YD)
