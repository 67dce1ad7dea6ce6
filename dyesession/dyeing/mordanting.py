"""What fibre takes of alum, what stays in the bath, and what recharges it for the next lot.

Knows nothing of pots; per cents are of the fibre's weight. On wool at 7, 12 and 17 % alum 26 to 68 % of
the aluminium stayed behind, less at the lower dose (Saha 2019, thesis, abstract read); a dyer reckons
only a quarter is used (a practising dyer's note of 2003/2004, opening read). Both put what wool takes at
about 2 to 5.5 % of its weight (derived). On cotton 92 to 96 % stays (Haar & Saha, conference abstract
read). pH and basicity drift are not modelled: never promise.
"""

from dataclasses import dataclass

from dyesession.dyeing.fibres import Family, fibre_family
from dyesession.dyeing.hydrates import FORMS, mass_share
from dyesession.dyeing.limits import OutOfRange, a_share, above_zero, zero_or_more


@dataclass(frozen=True)
class Uptake:
    """Mordant taken, in per cent of the fibre's weight: centre and 90 % band."""

    centre_pct: float
    low_pct: float
    high_pct: float


@dataclass(frozen=True)
class Rule:
    """Share of a small dose taken and the most the fibre takes, each as low, centre, high."""

    share: tuple[float, float, float]
    most_pct: tuple[float, float, float]
    source: str


# taken = min(0.75 dose, 4 +- 1.5 %); the width of the share is judgement too
WOOL_RULE = Rule((0.5, 0.75, 0.9), (2.5, 4.0, 5.5), "judgement from Saha 2019 and a dyer's note of 2003/2004")
RULES: dict[Family, Rule] = {
    "wool": WOOL_RULE,
    "silk": Rule(
        (0.4, 0.75, 0.9), (2.0, 4.0, 6.0), "judgement: no figure for silk found, wool's rule widened"
    ),
    "cellulose": Rule(
        (0.02, 0.035, 0.06),
        (0.4, 0.7, 1.5),
        "2.31-5.16 % of the aluminium taken (a study of the effluent of mordanted cotton, authors not"
        " shown, abstract read), widened; judgement",
    ),
}


def uptake_pct(dose_pct: float, fibre: str) -> Uptake:
    """Alum taken from a dose in per cent of the fibre's weight; also for what a standing bath offers."""
    zero_or_more("dose of alum", dose_pct, "12 %")
    rule = RULES[fibre_family(fibre)]
    low, centre, high = (min(dose_pct * s, m) for s, m in zip(rule.share, rule.most_pct, strict=True))
    return Uptake(centre, low, high)


def uptake_source(fibre: str) -> str:
    """Say where the rule for a fibre comes from."""
    return RULES[fibre_family(fibre)].source


def left_in_bath_g(dose_g: float, taken_g: float, carried_share: float) -> float:
    """Alum left, g, when fibre has taken some and carried off a share of the rest."""
    zero_or_more("dose", dose_g, "28.8 g")
    if zero_or_more("alum taken", taken_g, "9.6 g") > dose_g:
        raise OutOfRange(
            f"{taken_g:g} g of alum cannot be taken from {dose_g:g} g;"
            " expected less, for example 9.6 g of 28.8 g."
        )
    return (dose_g - taken_g) * (1.0 - a_share("share carried off", carried_share, "0.07"))


def recharge_g(wanted_g: float, left_g: float) -> float:
    """Alum to add so that the bath offers the next lot what it wants; 0 when there is enough."""
    return max(
        0.0, zero_or_more("alum wanted", wanted_g, "28.8 g") - zero_or_more("alum left", left_g, "19 g")
    )


def aluminium_mg_g(taken_pct: float, form: str = "potassium alum") -> float:
    """Aluminium on the fibre in mg/g from alum taken in per cent of its weight."""
    mg_g_per_pct = 10.0
    zero_or_more("alum taken", taken_pct, "4 %")
    if form not in FORMS:
        raise OutOfRange(f'The form "{form}" is not known; expected one of {", ".join(FORMS)}.')
    return taken_pct * mg_g_per_pct * mass_share("Al", FORMS[form].formula)


@dataclass(frozen=True)
class Ledger:
    """A standing mordant bath after some lots: used in all, used with fresh baths, share saved."""

    used: float
    with_fresh_baths: float
    saved_share: float


def standing_bath(first: float, later: float, lot_count: int) -> Ledger:
    """Reckon a standing bath that gets a full first charge and a smaller one for each later lot.

    The book that gives the scheme (Beech, The Dyeing of Woollen Fabrics, 1902, p. 84, read) adds five
    sixths of the first charge for each later lot, and says such baths end by getting dirty. Any unit of
    mass.
    """
    above_zero("first charge", first, "6 g")
    if not 0.0 <= later <= first:
        raise OutOfRange(
            f"A later charge of {later:g} does not lie between 0 and the first, {first:g}; for example 5."
        )
    above_zero("number of lots", lot_count, "4")
    used = first + later * (lot_count - 1)
    fresh = first * lot_count
    return Ledger(used, fresh, 1.0 - used / fresh)
