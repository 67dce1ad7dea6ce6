"""Hardness of water and its units, and how chalk and alum meet the lime in it.

Knows nothing of baths. Units are derived from their definitions and atomic masses; classes are the USGS
ones (read as quoted on a calculator page). Hardness is not alkalinity: an acid dose needs the latter.
"""

from dyesession.dyeing.hydrates import ATOMIC_MASS, FORMS, molar_mass
from dyesession.dyeing.limits import OutOfRange, zero_or_more

CHALK_G_MOL = molar_mass("CaCO3")
LIME_G_MOL = molar_mass("CaO")
GRAIN_MG = 64.79891  # exact
US_GALLON_L, IMPERIAL_GALLON_L = 3.785411784, 4.54609  # exact

# mg/L as CaCO3 for one of each unit
UNIT_MG_L = {
    "mg/L": 1.0,
    "mmol/L": CHALK_G_MOL,
    "meq/L": CHALK_G_MOL / 2.0,
    "German degree": 10.0 * CHALK_G_MOL / LIME_G_MOL,  # 10 mg CaO per litre
    "French degree": 10.0,  # 10 mg CaCO3 per litre
    "Clark degree": GRAIN_MG / IMPERIAL_GALLON_L,  # a grain per imperial gallon
    "grain per US gallon": GRAIN_MG / US_GALLON_L,
    "mg/L calcium": CHALK_G_MOL / ATOMIC_MASS["Ca"],
    "mg/L magnesium": CHALK_G_MOL / ATOMIC_MASS["Mg"],
}

# Upper end of each class, mg/L CaCO3
SOFT_TO, MODERATE_TO, HARD_TO = 60.0, 120.0, 180.0

# Alkalinity as a share of hardness when only hardness is known; common practice, no source
ALKALINITY_SHARE = (0.6, 0.8, 1.0)

ACID_PER_ALUMINIUM = 3.0  # on full hydrolysis


def in_mg_l(amount: float, unit: str) -> float:
    """Hardness in mg/L CaCO3 from another unit; raises `OutOfRange` for a unit not known."""
    return zero_or_more("hardness", amount, "8 German degrees") * _unit(unit)


def from_mg_l(mg_l: float, unit: str) -> float:
    """Hardness in another unit from mg/L CaCO3."""
    return zero_or_more("hardness", mg_l, "140 mg/L") / _unit(unit)


def hardness_class(mg_l: float) -> str:
    """Class of a hardness in mg/L CaCO3: soft, moderately hard, hard or very hard."""
    zero_or_more("hardness", mg_l, "140 mg/L")
    if mg_l <= SOFT_TO:
        return "soft"
    if mg_l <= MODERATE_TO:
        return "moderately hard"
    return "hard" if mg_l <= HARD_TO else "very hard"


def alkalinity_guess_mg_l(hardness_mg_l: float) -> tuple[float, float, float]:
    """Alkalinity (low, middle, high) in mg/L CaCO3 when only the hardness is known.

    A guess to be said as one.
    """
    zero_or_more("hardness", hardness_mg_l, "140 mg/L")
    low, middle, high = (hardness_mg_l * share for share in ALKALINITY_SHARE)
    return low, middle, high


def chalk_g_for(extra_mg_l: float, volume_l: float) -> float:
    """Chalk that adds a hardness in mg/L CaCO3 to a volume, if all of it dissolves, g."""
    mg_per_g = 1000.0
    return (
        zero_or_more("hardness to add", extra_mg_l, "100 mg/L")
        * zero_or_more("volume", volume_l, "4 L")
        / mg_per_g
    )


def alkalinity_eaten_by_alum_mg_l(alum_g_l: float) -> float:
    """Most alkalinity, mg/L CaCO3, that alum crystals (g/L) use up on full hydrolysis (derived)."""
    mmol_l = 1000.0 * zero_or_more("alum", alum_g_l, "4 g/L") / molar_mass(FORMS["potassium alum"].formula)
    return mmol_l * ACID_PER_ALUMINIUM * UNIT_MG_L["meq/L"]


def _unit(unit: str) -> float:
    if unit not in UNIT_MG_L:
        raise OutOfRange(f'"{unit}" is not a known unit of hardness; expected one of {", ".join(UNIT_MG_L)}.')
    return UNIT_MG_L[unit]
