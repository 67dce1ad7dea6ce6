"""Depth of colour from reflectance: K/S, and how it grows with the colour on the fibre.

Knows nothing of wavelengths or of hue; never a colour from chemistry alone. K/S = (1 - R)^2/(2R) (Kubelka
& Munk, from memory; standard). K/S rises steeply from 5 to 15 % extract and slower above, for logwood and
brazilwood on cotton (Wood extracts for dyeing of cotton, preprint 2024, results read). No table of K/S
against dose could be read.
"""

import math

from dyesession.dyeing.limits import above_zero, between_shares, within, zero_or_more

# Above this K/S a shade is "full" rather than a number: an error of 0.002 in R is already 9 % (derived).
FULL_DEPTH = 20.0


def depth_of(reflectance: float) -> float:
    """K/S of a reflectance above 0, up to 1."""
    within("reflectance", above_zero("reflectance", reflectance, "0.1"), 0.0, 1.0, "0.1")
    return (1.0 - reflectance) ** 2 / (2.0 * reflectance)


def reflectance_of(depth: float) -> float:
    """Reflectance of a K/S of 0 or more, the inverse of `depth_of`: R = 1 + x - sqrt(x^2 + 2x)."""
    zero_or_more("K/S", depth, "4")
    return 1.0 / (
        1.0 + depth + math.sqrt(depth * (depth + 2.0))
    )  # the same, without taking two near numbers apart


def depth_error(reflectance: float, reflectance_error: float) -> float:
    """Error of K/S from a small error of the reflectance, (1 - R^2)/(2 R^2) dR (derived)."""
    between_shares("reflectance", reflectance, "0.1")
    zero_or_more("error of the reflectance", reflectance_error, "0.002")
    return (1.0 - reflectance**2) / (2.0 * reflectance**2) * reflectance_error


def is_full(depth: float) -> bool:
    """Whether a K/S is so high that it should be called full instead of being given as a number."""
    return zero_or_more("K/S", depth, "23") > FULL_DEPTH


def depth_linear(on_fibre_mg_g: float, depth_per_mg_g: float, ground_depth: float = 0.0) -> float:
    """K/S of pale to medium dyeings: that of the undyed fibre plus a share of the colour on it."""
    zero_or_more("K/S of the undyed fibre", ground_depth, "0.1")
    zero_or_more("K/S per mg/g", depth_per_mg_g, "2")
    return ground_depth + depth_per_mg_g * zero_or_more("colour on the fibre", on_fibre_mg_g, "3 mg/g")


def depth_saturating(
    on_fibre_mg_g: float, most_depth: float, half_mg_g: float, ground_depth: float = 0.0
) -> float:
    """K/S of deep dyeings, x_m q/(q_h + q): half of `most_depth` is reached at `half_mg_g` on the fibre."""
    zero_or_more("colour on the fibre", on_fibre_mg_g, "3 mg/g")
    above_zero("colour for half the depth", half_mg_g, "8 mg/g")
    zero_or_more("most K/S", most_depth, "25")
    return ground_depth + most_depth * on_fibre_mg_g / (half_mg_g + on_fibre_mg_g)
