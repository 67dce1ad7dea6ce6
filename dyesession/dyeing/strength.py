"""Reading the strength of a liquor at home, four ways, all on one linear scale: half the colour, half the number.

Knows nothing of pots or logs; a strength is a share of another liquor's. Columns of equal depth of colour:
Beech, The Dyeing of Woollen Fabrics, 1902, p. 217 (read). Light through a liquor falls off with strength
times path (Beer and Lambert; standard, from memory). The errors are judgement: no trial of kitchen readings
was found.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from dyesession.dyeing.limits import OutOfRange, above_zero, zero_or_more

Method = Literal["dilution match", "equal columns", "white dish", "liquor colour"]

# One standard deviation as a share of the reading; judgement (an eye tells liquors a tenth apart).
EYE_SD = 0.10
MEASURE_SD = 0.05  # of a spoon or a small jug; judgement
HEIGHT_SD_MM = 2.0  # of a column read against a ruler; judgement
MATCH_SD = math.hypot(EYE_SD, MEASURE_SD)
TYPED_SD = 0.20  # a strength of which nobody said how it was read; judgement
COLOURLESS = 0.01  # less than a hundredth of the other cannot be told from none; judgement

# A photo's or a sensor's light, as a share of full white; below and above these a band tells nothing.
LIGHT_SD = 0.015  # judgement
DARKEST_LIGHT, PALEST_ABSORBED = 0.04, 0.05  # judgement
PHOTO_SD = 0.08  # dishes filled unequally, light uneven over the picture; judgement

# Of a reading whose own error was not logged: columns of 40 mm; a photo with a middling band. Judgement.
USUAL_SD: Mapping[str, float] = {
    "dilution match": MATCH_SD,
    "equal columns": math.hypot(EYE_SD, HEIGHT_SD_MM / 40.0, HEIGHT_SD_MM / 40.0),
    "white dish": math.hypot(PHOTO_SD, 0.06),
    "liquor colour": math.hypot(PHOTO_SD, 0.04),
}

# Two liquors this far apart in warmth should not be compared; judgement (hot liquor is 2.7 % larger at 80 °C,
# and many colours shift with heat).
UNLIKE_WARMTH_C = 20.0

HOW_TO: Mapping[Method, tuple[str, str]] = {
    "dilution match": (
        "Put a spoon of the stronger liquor in a glass over white, and add clear water by the same spoon until"
        " it looks like the weaker one at the same depth.",
        "One spoon and two of water look alike: the weaker is a third as strong; type 0.33 of the other.",
    ),
    "equal columns": (
        "Take two like straight glasses over white, look down through both, and pour off the stronger until"
        " they look alike.",
        "Measure both heights: the weaker is as strong as the stronger one's height over its own.",
    ),
    "white dish": (
        "Fill two white dishes equally high, one of each liquor, and a third with clear water.",
        "Photograph all three together in shade, no flash, and read the three colours from the one picture.",
    ),
    "liquor colour": (
        "Read the colour of the liquor in a flat clear glass against white, and again with clear water in it.",
        "Say how deep the light goes through it, in millimetres; too dark to read: thin it and say how often.",
    ),
}


@dataclass(frozen=True)
class Strength:
    """A strength as a share of another liquor's, its standard deviation as a share of itself, and how."""

    share: float
    sd: float
    method: Method


def by_dilution(water_parts: float, liquor_parts: float = 1.0) -> Strength:
    """The weaker liquor's share, when the stronger matched it after so many parts of water were added."""
    zero_or_more("water added", water_parts, "2 spoons")
    above_zero("liquor thinned", liquor_parts, "1 spoon")
    return Strength(liquor_parts / (liquor_parts + water_parts), MATCH_SD, "dilution match")


def by_columns(this_mm: float, other_mm: float) -> Strength:
    """This liquor's share of the other's, when columns of these heights look alike from above."""
    above_zero("height of this column", this_mm, "30 mm")
    above_zero("height of the other column", other_mm, "25 mm")
    sd = math.hypot(EYE_SD, HEIGHT_SD_MM / this_mm, HEIGHT_SD_MM / other_mm)
    return Strength(other_mm / this_mm, sd, "equal columns")


def absorbed(light: float, clear: float) -> float:
    """Absorbance (natural) of a liquor in one band: its light and that of clear water, as shares of full."""
    above_zero("light through clear water", clear, "0.9")
    return math.log(clear / above_zero("light through the liquor", light, "0.4"))


def by_light(
    this: Sequence[float],
    other: Sequence[float],
    clear: Sequence[float],
    this_path_mm: float = 1.0,
    other_path_mm: float = 1.0,
    method: Method = "white dish",
) -> Strength:
    """This liquor's share of the other's from linear light (0 to 1) in the same bands, by Beer and Lambert.

    Each band gives absorbance over path; bands count by how well they can be read. A band too dark or too
    pale in either liquor is left out. Raises `OutOfRange` when none is left, or the bands do not match.
    """
    above_zero("path through this liquor", this_path_mm, "10 mm")
    above_zero("path through the other liquor", other_path_mm, "10 mm")
    if not len(this) == len(other) == len(clear):
        raise OutOfRange(
            f"{len(this)}, {len(other)} and {len(clear)} bands were read; expected the same number of each,"
            " for example red, green and blue."
        )
    bands = [one for one in map(_band, this, other, clear) if one is not None]
    if not bands:
        raise OutOfRange(
            "No band of these two liquors can be read: too dark, or too near clear water; thin a dark one"
            " and say how often, for example once with as much water, or take a deeper glass for a pale one."
        )
    weight = math.fsum(1.0 / sd**2 for _, sd in bands)
    log_ratio = math.fsum(log / sd**2 for log, sd in bands) / weight
    sd = math.hypot(PHOTO_SD, math.sqrt(1.0 / weight))
    return Strength(math.exp(log_ratio) * other_path_mm / this_path_mm, sd, method)


def _band(this: float, other: float, clear: float) -> tuple[float, float] | None:
    """Log of the ratio of absorbances in one band and its error, None where it cannot be read."""
    if min(this, other) < DARKEST_LIGHT or clear <= max(this, other):
        return None
    mine, others = absorbed(this, clear), absorbed(other, clear)
    if min(mine, others) < PALEST_ABSORBED:
        return None
    errors = [LIGHT_SD * math.hypot(1.0 / this, 1.0 / clear) / mine]
    errors.append(LIGHT_SD * math.hypot(1.0 / other, 1.0 / clear) / others)
    return math.log(mine / others), math.hypot(*errors)


def thinned(strength: Strength, times: float) -> Strength:
    """The strength of a liquor that was thinned to `times` its volume (1 or more) before it was read."""
    if not 1.0 <= times < math.inf:
        raise OutOfRange(f"A liquor thinned {times:g} times; expected 1 or more, for example 4.")
    return Strength(strength.share * times, math.hypot(strength.sd, MEASURE_SD), strength.method)


def sd_of(how: str, share: float, method: str = "", error_share: float | None = None) -> float:
    """Standard deviation of a logged strength, as a share of it: its own where it tells one, else its
    method's, else that of its one word for where it comes from.
    """
    usual = USUAL_SD.get(method, TYPED_SD if how == "typed" else MATCH_SD)
    own = usual if error_share is None or error_share <= 0.0 else error_share
    return math.hypot(own, COLOURLESS / max(share, COLOURLESS))


def is_nothing(share: float) -> bool:
    """Whether a strength is too small to be told from clear water."""
    return zero_or_more("strength", share, "0.31") < COLOURLESS
