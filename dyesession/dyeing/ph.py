"""pH of water with a weak acid in it, and the acid for a wanted pH: a starting dose, never a result.

Knows nothing of fibre, dye or alum, which buffer in their own ways. Charge balance at 25 °C in a closed
cold pot; no activities, no temperature. pKa: Principles of General Chemistry v1.0M, Appendix C (read);
tartaric acid from memory, unverified. Tap water is taken to start at pH 7.8 (judgement). Go in thirds,
stir, measure.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from dyesession.dyeing.limits import OutOfRange, above_zero, within, zero_or_more

KW = 1.0e-14
CARBONIC_PKA = (6.35, 10.33)
MG_L_PER_EQ = 50043.0  # mg/L CaCO3 that one equivalent per litre is
WATER_STARTS_AT_PH = 7.8
STRIP_PLUS_MINUS = 0.5  # a paper strip; judgement
LOWEST_PH, HIGHEST_PH = 0.0, 14.0
HALVINGS = 60

RULE = "common practice, no source"
# Working windows; no good published table was found
WINDOWS = {
    "alum mordant on wool": (3.0, 4.5, RULE),
    "cochineal red brightened with acid": (4.0, 5.0, RULE),
    "madder red with calcium": (6.5, 8.0, RULE),
    "weld": (7.0, 9.0, RULE),
    "logwood on alum": (6.5, 8.0, RULE),
    "indigo vat for cotton": (10.0, 11.0, RULE),
    "indigo vat for wool": (9.0, 10.0, RULE),
    "wool safe": (4.0, 8.0, RULE),
    "silk safe": (4.0, 9.0, RULE),
    "cellulose safe hot": (5.0, 11.0, RULE),
}


@dataclass(frozen=True)
class Acid:
    """A weak acid: its pKa values in order and its molar mass in g/mol."""

    pka: tuple[float, ...]
    g_mol: float


ACIDS = {
    "citric": Acid((3.13, 4.76, 6.40), 192.123),
    "acetic": Acid((4.756,), 60.052),
    "tartaric": Acid((2.98, 4.34), 150.087),
}


def mean_charge(acid: str, ph: float) -> float:
    """Mean number of protons a molecule of the acid has given up at a pH."""
    return _given_up(_acid(acid).pka, _hydrogen(ph))


def ph_with_acid(acid: str, dose_g_l: float, alkalinity_mg_l: float) -> float:
    """pH of water of an alkalinity (mg/L CaCO3) with an acid in it (g/L), in a closed cold pot."""
    moles_l = zero_or_more("acid", dose_g_l, "0.5 g/L") / _acid(acid).g_mol
    alkalinity_eq = zero_or_more("alkalinity", alkalinity_mg_l, "120 mg/L") / MG_L_PER_EQ
    low, high = LOWEST_PH, HIGHEST_PH
    for _ in range(HALVINGS):
        middle = (low + high) / 2.0
        hydrogen = _hydrogen(middle)
        excess = _free_charge(hydrogen, alkalinity_eq) - _given_up(_acid(acid).pka, hydrogen) * moles_l
        low, high = (middle, high) if excess > 0.0 else (low, middle)
    return (low + high) / 2.0


def acid_for_ph_g_l(acid: str, target_ph: float, alkalinity_mg_l: float) -> float:
    """Acid in g/L that brings water to a pH by charge balance; 0 when the water is that acid already."""
    hydrogen = _hydrogen(within("pH wanted", target_ph, 2.0, 10.0, "4.5"))
    alkalinity_eq = zero_or_more("alkalinity", alkalinity_mg_l, "120 mg/L") / MG_L_PER_EQ
    moles_l = _free_charge(hydrogen, alkalinity_eq) / _given_up(_acid(acid).pka, hydrogen)
    return max(0.0, moles_l * _acid(acid).g_mol)


def acid_by_rule_g_l(acid: str, target_ph: float, alkalinity_mg_l: float) -> float:
    """Acid in g/L by the simple rule that turns all bicarbonate: M(Alk + 10^-pH)/n.

    A little high at pH 4.5, half too high at pH 6 in a closed cold pot, nearer right in a hot open one
    (derived).
    """
    hydrogen = _hydrogen(within("pH wanted", target_ph, 2.0, 7.0, "4.5"))
    alkalinity_eq = zero_or_more("alkalinity", alkalinity_mg_l, "120 mg/L") / MG_L_PER_EQ
    return _acid(acid).g_mol * (alkalinity_eq + hydrogen) / _given_up(_acid(acid).pka, hydrogen)


def vinegar_ml(acetic_g: float, strength_pct: float) -> float:
    """Millilitres of vinegar (strength in g per 100 mL) that hold a mass of acetic acid."""
    return (
        100.0
        * zero_or_more("acetic acid", acetic_g, "0.67 g")
        / above_zero("strength of the vinegar", strength_pct, "5 %")
    )


def _acid(name: str) -> Acid:
    if name not in ACIDS:
        raise OutOfRange(f'No figures are known for the acid "{name}"; expected one of {", ".join(ACIDS)}.')
    return ACIDS[name]


def _hydrogen(ph: float) -> float:
    return float(10.0 ** -within("pH", ph, LOWEST_PH, HIGHEST_PH, "4.5"))


def _given_up(pka: Sequence[float], hydrogen: float) -> float:
    """Mean charge: each species' share weighted by the protons it has lost."""
    terms = [1.0]
    for step in pka:
        terms.append(terms[-1] * 10.0**-step / hydrogen)
    return sum(lost * term for lost, term in enumerate(terms)) / sum(terms)


def _free_charge(hydrogen: float, alkalinity_eq: float) -> float:
    """Charge the acid must balance: alkalinity and hydrogen, less hydroxide and carbonate."""
    start = _hydrogen(WATER_STARTS_AT_PH)
    carbonate = max(0.0, alkalinity_eq - KW / start + start) / _given_up(CARBONIC_PKA, start)
    carried = carbonate * _given_up(CARBONIC_PKA, hydrogen) if alkalinity_eq else 0.0
    return alkalinity_eq + hydrogen - KW / hydrogen - carried
