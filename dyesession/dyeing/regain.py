"""How much moisture a fibre holds, and what it weighs dry, damp or as the trade agrees.

Knows nothing of lots. Agreed allowances are trade values, not measurements: Regulation (EU) 1007/2011,
Annex IX (read in a German copy), and ASTM D1909-13 (read in Table 10 of a 2020 review, Bioresour.
Bioprocess., s40643-020- 00339-1, which also quotes Morton & Hearle 2008 for measured values). Regain is
in per cent of bone-dry mass.
"""

from dyesession.dyeing.fibres import fibre_family
from dyesession.dyeing.limits import above_zero, zero_or_more

EU_ALLOWANCE_PCT = {
    "wool, combed": 18.25,
    "wool, carded": 17.0,
    "silk": 11.0,
    "cotton": 8.5,
    "cotton, mercerised": 10.5,
    "linen": 12.0,
    "hemp": 12.0,
    "jute": 17.0,
    "ramie": 8.5,
    "viscose": 13.0,
    "polyamide staple": 6.25,
    "polyamide filament": 5.75,
    "polyester": 1.5,
}

ASTM_REGAIN_PCT = {"wool": 13.6, "silk": 11.0, "cotton": 8.5, "flax": 12.0, "hemp": 12.0, "jute": 13.75}

# Air-dry in an ordinary room: low, usual, high. Wool 14 and 16-18, silk 10, cotton 7-8 measured at 65 %
# humidity (Morton & Hearle as above); the usual ones are the trade's 16 (Dooley, Textiles, c. 1910), 11, 8.5.
AIR_DRY_PCT = {"wool": (14.0, 16.0, 18.0), "silk": (10.0, 11.0, 11.5), "cellulose": (7.0, 8.5, 8.7)}


def regain_pct(mass_g: float, bone_dry_g: float) -> float:
    """Moisture in per cent of bone-dry mass, R = 100(wet - dry)/dry."""
    above_zero("bone-dry mass", bone_dry_g, "86 g")
    return 100.0 * (zero_or_more("mass", mass_g, "100 g") - bone_dry_g) / bone_dry_g


def bone_dry_g(mass_g: float, regain: float) -> float:
    """Bone-dry mass of a fibre weighed at a regain in per cent, dry = m/(1 + R/100)."""
    zero_or_more("regain", regain, "16 %")
    return zero_or_more("mass", mass_g, "100 g") / (1.0 + regain / 100.0)


def mass_at_regain_g(dry_g: float, regain: float) -> float:
    """Mass of a bone-dry fibre once it has taken up a regain in per cent, the inverse of `bone_dry_g`."""
    zero_or_more("regain", regain, "16 %")
    return zero_or_more("bone-dry mass", dry_g, "85 g") * (1.0 + regain / 100.0)


def bone_dry_of_air_dry_g(air_dry_g: float, fibre: str) -> tuple[float, float, float]:
    """Bone-dry mass (low, usual, high) of a fibre weighed air-dry in an ordinary room, g."""
    low, usual, high = AIR_DRY_PCT[fibre_family(fibre)]
    return bone_dry_g(air_dry_g, high), bone_dry_g(air_dry_g, usual), bone_dry_g(air_dry_g, low)


def air_dry_of_bone_dry_g(dry_g: float, fibre: str) -> float:
    """Usual air-dry mass of a fibre from its bone-dry mass, g: what a dose on fibre stands on."""
    return mass_at_regain_g(dry_g, AIR_DRY_PCT[fibre_family(fibre)][1])
