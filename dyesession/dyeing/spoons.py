"""Spoons and cups: what a level or rounded one holds, in millilitres and, with a band, in grams.

Knows nothing of recipes. Volumes are exact by definition (inch, US gallon of 231 cubic inches, imperial
gallon), or 21 CFR 101.9 for US labels (read). Bulk densities are as named in the table; where none was
found there is no row: weigh instead. Always ask which country's spoon.
"""

import re
from dataclasses import dataclass

from dyesession.dyeing.limits import OutOfRange, zero_or_more

US_GALLON_ML = 231.0 * 2.54**3
IMPERIAL_GALLON_ML = 4546.09
US_FL_OZ_ML = US_GALLON_ML / 128.0
IMPERIAL_FL_OZ_ML = IMPERIAL_GALLON_ML / 160.0

MEASURE_ML = {
    "US teaspoon": US_FL_OZ_ML / 6.0,
    "US tablespoon": US_FL_OZ_ML / 2.0,
    "US fluid ounce": US_FL_OZ_ML,
    "US cup": US_FL_OZ_ML * 8.0,
    "US quart": US_GALLON_ML / 4.0,
    "US label teaspoon": 5.0,
    "US label tablespoon": 15.0,
    "US label cup": 240.0,
    "metric teaspoon": 5.0,
    "metric tablespoon": 15.0,
    "Australian tablespoon": 20.0,
    "metric cup": 250.0,
    "imperial fluid ounce": IMPERIAL_FL_OZ_ML,
    "imperial cup": IMPERIAL_FL_OZ_ML * 10.0,
    "imperial pint": IMPERIAL_GALLON_ML / 8.0,
    "Japanese cup": 200.0,
}

TABLES = "a bulk-material table at simetric.co.uk and a bulk-bag density list (read)"
# Grams per millilitre of a level measure: low, high, source
DENSITY_G_ML = {
    "alum, fine": (0.75, 0.80, TABLES),
    "alum, lumpy": (0.88, 0.96, TABLES),
    "aluminium sulphate": (0.93, 0.93, "a bulk-bag density list (read)"),
    "baking soda": (0.69, 0.88, TABLES),
    "soda ash, light": (0.50, 0.70, "makers' pages, three (read)"),
    "soda ash, dense": (0.90, 1.20, "makers' pages, three (read)"),
    "chalk": (1.12, 1.12, "piping-designer.com (read); precipitated chalk is much lighter, no figure"),
    "cream of tartar": (0.60, 0.65, "USDA figure of about 3 g a teaspoon, read at second hand"),
    "citric acid": (0.95, 1.05, "a kitchen page, 5 g level (read)"),
    "dried plant dyestuff": (0.10, 0.30, "common practice, no source"),
}

ROUNDED = (1.25, 1.5)  # times a level one; a kitchen page (read) and, for citric acid, 7 g against 5 g
UNKNOWN_SPOONFUL = (0.7, 1.5)  # times a level one, when no one knows how full it was; judgement
LONE_FIGURE = 0.1  # band either way about a density found only once; judgement

NEVER_BY_SPOON = ("iron", "ferrous sulphate", "copper", "copper sulphate", "lye", "sodium hydroxide")
SMALLEST_PCT = 2.0  # a dose below this share of the fibre is never measured by spoon; judgement


class WeighInstead(OutOfRange):
    """A dose that must not be measured by spoon."""


@dataclass(frozen=True)
class Spoonful:
    """Grams in some spoonfuls: low, middle, high, and where the density comes from."""

    low_g: float
    middle_g: float
    high_g: float
    source: str


def volume_ml(measure: str, count: float) -> float:
    """Millilitres in some level measures; raises `OutOfRange` for a measure not known."""
    if measure not in MEASURE_ML:
        raise OutOfRange(f'"{measure}" is not a known measure; expected one of {", ".join(MEASURE_ML)}.')
    return zero_or_more("number of measures", count, "2") * MEASURE_ML[measure]


def spoonful_g(
    substance: str, measure: str, count: float, heap: str = "level", percent_of_fibre: float | None = None
) -> Spoonful:
    """Grams in some spoonfuls, "level", "rounded" or "unknown", as a band.

    To be logged as "by volume". Raises `WeighInstead` for iron, copper and lye and for any dose under 2 %
    of the fibre, and `OutOfRange` when no density is known.
    """
    refuse_spoons(substance, percent_of_fibre)
    low, high, source = _density(substance)
    least, most = _heap_factors(heap)
    millilitres = volume_ml(measure, count)
    middle = millilitres * (low + high) / 2.0 * (1.0 if heap == "unknown" else (least + most) / 2.0)
    return Spoonful(millilitres * low * least, middle, millilitres * high * most, source)


def refuse_spoons(substance: str, percent_of_fibre: float | None = None) -> None:
    """Raise `WeighInstead` when a substance or so small a dose must be weighed."""
    name = re.sub(r"[-_]+", " ", substance.casefold())
    if any(name == never or name.startswith(f"{never} ") for never in NEVER_BY_SPOON):
        raise WeighInstead(f"{substance} is not measured by spoon; weigh it, for example 4.8 g.")
    if percent_of_fibre is not None and percent_of_fibre < SMALLEST_PCT:
        raise WeighInstead(
            f"A dose of {percent_of_fibre:g} % of the fibre is too small for a spoon;"
            " weigh it or use a stock solution, for example 1 g as 100 mL of a 1 % stock."
        )


def _density(substance: str) -> tuple[float, float, str]:
    if substance not in DENSITY_G_ML:
        raise OutOfRange(f"No density is known for {substance}; weigh it, for example 12 g.")
    low, high, source = DENSITY_G_ML[substance]
    if low == high:
        return low * (1.0 - LONE_FIGURE), high * (1.0 + LONE_FIGURE), source
    return low, high, source


def _heap_factors(heap: str) -> tuple[float, float]:
    factors = {"level": (1.0, 1.0), "rounded": ROUNDED, "unknown": UNKNOWN_SPOONFUL}
    if heap not in factors:
        raise OutOfRange(f'A spoon is not "{heap}"; expected one of {", ".join(factors)}.')
    return factors[heap]
