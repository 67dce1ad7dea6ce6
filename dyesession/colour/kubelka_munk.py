"""Depth of dyed fibre band by band: K/S, more or less of a dye, one dye over another, strength.

Knows nothing of Lab or of the eye beyond the weights it is handed. Theory: Kubelka & Munk with one constant,
K/S = (1 - R)^2/(2R), the fibre alone scattering and the dye alone taking light up (standard; from memory).
Strength: the "integral" sum of the dye's own K/S weighted by light and eye; its exact weights from memory.
"""

import math
from collections.abc import Sequence

from dyesession.colour.rebuilt import Spectrum
from dyesession.colour.spectral_weights import weights_for
from dyesession.colour.trouble import NoDye, OutOfRange
from dyesession.colour.viewing import Viewing

LEAST_R, MOST_R = 1e-4, 0.9999  # keeps K/S finite; common practice, no source
# The darkest band among 612 dyed swatches looked at (cotton, nylon, polyester): a prediction below it is
# unsure.
DARKEST_CLOTH_R = 0.014
_EVEN, _LEAST_EXPONENT, _MOST_EXPONENT = 1.0, 0.3, 1.2  # the clamp is our own choice

Depths = tuple[float, ...]


def depths_of(spectrum: Spectrum) -> Depths:
    """K/S in every band."""
    return tuple((1.0 - r) ** 2 / (2.0 * r) for r in (min(max(one, LEAST_R), MOST_R) for one in spectrum))


def spectrum_of(depths: Sequence[float]) -> Spectrum:
    """Reflectance in every band; the inverse, R = 1 + q - sqrt(q^2 + 2q), without its loss of figures."""
    return tuple(1.0 / (1.0 + q + math.sqrt(q * (q + 2.0))) for q in depths)


def dye_only(undyed: Depths, dyed: Depths) -> Depths:
    """What the dye adds to the fibre's K/S, 0 or more in every band: a dye only takes light up."""
    return tuple(max(0.0, one - ground) for ground, one in zip(undyed, dyed, strict=True))


def at_depth(undyed: Depths, sample: Depths, ratio: float) -> Depths:
    """K/S at so many times the sample's depth (0 or more); 0 gives the undyed fibre, 1 the sample exactly.

    A band in which the sample is lighter than the undyed fibre is not driven beyond the sample.
    """
    bands = []
    for ground, one in zip(undyed, sample, strict=True):
        added = one - ground
        bands.append(ground + added * (ratio if added > 0.0 else min(ratio, _EVEN)))
    return tuple(bands)


def overdyed(skein: Depths, second_dye: Depths, amount: float) -> Depths:
    """K/S of the skein with so much (1 is the second dye's own sample) of another dye over it."""
    return tuple(one + amount * added for one, added in zip(skein, second_dye, strict=True))


def held_at_cloth(spectrum: Spectrum, sample: Spectrum) -> Spectrum:
    """A predicted curve held at the darkest cloth seen, except where the sample itself is darker."""
    floors = (min(DARKEST_CLOTH_R, one) for one in sample)
    return tuple(max(one, floor) for one, floor in zip(spectrum, floors, strict=True))


def strength_of(dye: Depths, viewing: Viewing) -> float:
    """Strength of a dye's own K/S, each band counted as light and eye see it; 0 or more."""
    return math.fsum(depth * sum(row) for depth, row in zip(dye, weights_for(viewing), strict=True))


def fitted_exponent(pale_strength: float, pale_dose: float, deep_strength: float, deep_dose: float) -> float:
    """How depth follows dose, depth = dose^g, from two dyeings; g is held within 0.3 to 1.2.

    Raises `OutOfRange` when the doses are alike or not above 0, `NoDye` when a strength is not above 0.
    """
    if not 0.0 < pale_dose < deep_dose:
        raise OutOfRange(
            f"The doses are {pale_dose:g} and {deep_dose:g}, but the deeper one must be the larger and both "
            "more than 0, for example 10 and 20 % of the weight of fibre."
        )
    if pale_strength <= 0.0 or deep_strength <= 0.0:
        raise NoDye("One of the two samples is no deeper than the undyed fibre; expected two dyed ones.")
    exponent = math.log(deep_strength / pale_strength) / math.log(deep_dose / pale_dose)
    return min(max(exponent, _LEAST_EXPONENT), _MOST_EXPONENT)
