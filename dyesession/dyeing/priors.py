"""Starting guesses for what no one has read yet: each a centre, a 90 % band, a scale and a source.

Knows nothing of readings; `account` replaces these as the dyer reads, and they are drawn with heavier
tails than a normal (`bands.py`). All are judgement unless their source says otherwise; shown as a guess,
never as a promise.
"""

import re
from dataclasses import dataclass

from dyesession.dyeing.bands import Scale, quantile_points
from dyesession.dyeing.evaporation import LID_SHARE, Lid, law_factor
from dyesession.dyeing.exhaustion import partition_from_share
from dyesession.dyeing.fibres import Family, fibre_family
from dyesession.dyeing.retention import Drained, Held, Squeeze, fibre_held, spent_held

STANDARD_LIQUOR_RATIO = 30.0  # the exhaustion guesses are for 1:30
ALSO_CALLED = {"madder": "madder root", "onion skin": "onion skins"}


@dataclass(frozen=True)
class Prior:
    """A starting guess: median, 5 % and 95 % points, the scale its tails are drawn on, and its source."""

    name: str
    centre: float
    low: float
    high: float
    scale: Scale
    source: str


UNKNOWN_DYE = "judgement: the widest honest band, no datum for this dye"
SILK_LESS = "judgement: wool's guess lowered, for silk takes as wool but weaker (Mairet 1916, read)"

# Share taken at a liquor ratio of 30, on mordanted fibre, by dyestuff ("" for any) and fibre
EXHAUSTION: dict[tuple[str, Family], Prior] = {
    ("", "wool"): Prior("exhaustion", 0.65, 0.25, 0.95, "logit", UNKNOWN_DYE),
    ("", "silk"): Prior("exhaustion", 0.575, 0.17, 0.90, "logit", SILK_LESS),
    ("", "cellulose"): Prior("exhaustion", 0.35, 0.10, 0.70, "logit", "judgement: tannin and alum, no datum"),
    ("madder root", "wool"): Prior(
        "exhaustion",
        0.85,
        0.60,
        0.95,
        "logit",
        "judgement from 78.7-94.1 % on unmordanted wool, liquor ratio not given (Scientific Reports 2022,"
        " s41598-022-25495-6, abstract read)",
    ),
    ("madder root", "silk"): Prior("exhaustion", 0.775, 0.50, 0.92, "logit", SILK_LESS),
}

KEPT_SHARE = Prior(
    "kept share per extraction",
    0.35,
    0.15,
    0.60,
    "logit",
    "judgement from cochineal being worth four boils (a seller's instruction sheet, author not named, read)",
)

# What is stubborn is left for later: the odds of keeping grow from extraction to extraction (`extraction`).
STIFFENS = Prior(
    "odds of keeping in the second extraction over the first",
    1.5,
    0.75,
    4.0,
    "log",
    "judgement: one store, boiled a little harder, up to two stores far apart; no dyestuff's was found",
)
STIFFENING_FADES = Prior(
    "what is left of that each time after, on the log scale",
    0.5,
    0.25,
    0.75,
    "logit",
    "judgement, about what two stores do",
)

UPTAKE_RATE = Prior(
    "rate of uptake at a simmer, per minute",
    0.05,
    0.02,
    0.15,
    "log",
    "judgement: chosen so that an hour gives 95 %",
)

ANY_LOT = Prior(
    "potency", 1.0, 0.65, 1.55, "log", "judgement: dose fixes depth to 40-50 % until the lot has been read"
)
CONTENT = "range of contents read, taken as the 90 % band; judgement; "

# Strength of a gram of this lot over a gram of a usual lot, by dyestuff
POTENCY: dict[str, Prior] = {
    "cochineal": Prior(
        "potency",
        1.0,
        0.5,
        1.25,
        "log",
        CONTENT
        + "carminic acid 17-24 % and 18-22 % (trade pages, not named), old lots 10-14 % (a monograph)",
    ),
    "onion skins": Prior(
        "potency",
        1.0,
        0.5,
        2.0,
        "log",
        CONTENT + "16.7-66.3 mg/g quercetin compounds by onion colour (Saudi J Biol Sci 24(6):1387, Table 1)",
    ),
    "myrobalan": Prior(
        "potency", 1.0, 0.8, 1.25, "log", CONTENT + "tannin 27-40 % (Britannica 1911; Adcock c. 1915)"
    ),
    "sumac": Prior(
        "potency", 1.0, 0.7, 1.25, "log", CONTENT + "tannin 20-35 % (Britannica 1911; farm cyclopedia)"
    ),
    "oak bark": Prior("potency", 1.0, 0.75, 1.35, "log", CONTENT + "tannin 8-14 % (Adcock c. 1915)"),
    "henna": Prior("potency", 1.0, 0.7, 1.4, "log", CONTENT + "lawsone 1-2 % (weak page)"),
}


def exhaustion_prior(fibre: str, dyestuff: str = "") -> Prior:
    """Guess at the share a mordanted fibre takes at a liquor ratio of 30, by dyestuff when one is known."""
    family = fibre_family(fibre)
    return EXHAUSTION.get((_key(dyestuff), family), EXHAUSTION["", family])


def partition_prior(fibre: str, dyestuff: str = "") -> Prior:
    """Return the guess of `exhaustion_prior` as a partition in L/kg, for any liquor ratio."""
    share = exhaustion_prior(fibre, dyestuff)
    centre, low, high = (
        partition_from_share(point, STANDARD_LIQUOR_RATIO) for point in (share.centre, share.low, share.high)
    )
    return Prior("partition, L/kg", centre, low, high, "log", share.source)


def kept_share_prior(dyestuff: str = "") -> Prior:
    """Guess at the share of its colour a dyestuff keeps per extraction; one for all dyestuffs yet."""
    return KEPT_SHARE


def stiffens_prior(dyestuff: str = "") -> Prior:
    """Guess at how much more a dyestuff keeps in its second extraction; one for all dyestuffs yet."""
    return STIFFENS


def stiffening_fades_prior(dyestuff: str = "") -> Prior:
    """Guess at how that fades from one extraction to the next."""
    return STIFFENING_FADES


def fibre_retention_prior(fibre: str, squeeze: Squeeze) -> Prior:
    """Guess at liquor held by a wet fibre, grams per gram bone-dry."""
    return _held_prior(f"liquor held by {fibre}, {squeeze}", fibre_held(fibre, squeeze))


def spent_retention_prior(drained: Drained = "drained") -> Prior:
    """Guess at liquor held by spent dyestuff, grams per gram bone-dry."""
    return _held_prior(f"liquor held by dyestuff, {drained}", spent_held(drained))


def evaporation_prior(bath_c: float, lid: Lid = "off") -> Prior:
    """Guess at the factor on an open pot's evaporation law: the law's own error and the lid's share.

    Do not put it on top of `evaporation.steam_band`, which holds it already.
    """
    spread = law_factor(bath_c)
    if lid not in LID_SHARE:
        return Prior(
            "steam over the law's", 1.0, 1.0 / spread, spread, "log", "judgement, from the laws' spread"
        )
    centre, low, high = LID_SHARE[lid]
    return Prior(
        "steam over the law's", centre, low / spread, high * spread, "log", "common practice, no source"
    )


def potency_prior(dyestuff: str = "") -> Prior:
    """Guess at this lot's strength over a usual lot's; it drops out of every share within one lot."""
    return POTENCY.get(_key(dyestuff), ANY_LOT)


def points(prior: Prior, count: int) -> tuple[float, ...]:
    """Return `count` rising values that stand for equal shares of a prior."""
    return quantile_points(prior.centre, prior.low, prior.high, prior.scale, count)


def _held_prior(name: str, held: Held) -> Prior:
    return Prior(name, held.centre, held.low, held.high, "log", held.source)


def _key(dyestuff: str) -> str:
    name = " ".join(re.split(r"[\s_-]+", dyestuff.strip().casefold()))
    return ALSO_CALLED.get(name, name)
