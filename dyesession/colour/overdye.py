"""What a second dye over a skein would do, how little of it comes nearest a target, and how near that is.

Knows nothing of grams; an amount is counted in the second dye's own sample. Not modelled, and likely larger
than all that is: two dyes competing for the mordant, the order of the baths, shifts of pH, iron. So a plan is
for a few grams first. The expected miss is never the solver's own: see the figures below.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.depth import REFUSE_FROM_KS, theory_notes
from dyesession.colour.readings import Reading, check_alike, plus_minus_between
from dyesession.colour.shades import Line, depths, first_as_near, overdye_line
from dyesession.colour.spread import EXPECTED, ONE_DIRECTION, WITHIN, carried, together
from dyesession.colour.targets import VERY_CLOSE, Target
from dyesession.colour.trouble import TooDark
from dyesession.colour.words import listed, spoken, terms

LEAST_AMOUNT, MOST_AMOUNT = 0.02, 10.0  # less is called none, more is not looked for: our own choice
_AS_GOOD = 0.005  # CIEDE2000 that nobody sees: the smaller of two amounts as good as this is taken
# The mean miss with exact readings where the second dye is at half its depth; less of it, less miss. From our
# own benchmark on independent reflectance curves, `tests/bench/bench_colour.py`.
_MODEL_MISS, _MODEL_FULL_AT = 0.9, 0.5
_SMALL_LOG, _MOST_FACTOR = 0.05, 100.0  # step for a slope; a band wider than this says nothing more
_NEAR_ENOUGH = "Nothing need be added: the skein is as near as this dye can bring it."
_SNIPPET = (
    "Try it on a few grams first: the mordant, the order of the baths and pH shift a shade more than this."
)


@dataclass(frozen=True)
class OverdyePlan:
    """The smallest amount that comes nearest, and what to make of it.

    `amount` counts the second dye's sample; `now` is the skein's miss as it is, `solved` the model's own
    (never shown as the expected one), `expected` what to expect (all CIEDE2000); `says` is one sentence.
    """

    amount: float
    amount_low: float
    amount_high: float
    lab: Lab
    now: float
    solved: float
    expected: float
    reachable: bool
    says: str
    notes: tuple[str, ...]


def plan_overdye(undyed: Reading, skein: Reading, second: Reading, target: Target) -> OverdyePlan:
    """The smallest addition of a second dye that brings the skein nearest the target.

    Raises `Unlike` for unlike or wet readings, `TooDark` for a black skein, `OutsideCloth`.
    """
    for one in (skein, second, target.middle):
        check_alike(undyed, one)
    _check_not_black(skein)
    notes = theory_notes(skein.lab, skein.viewing, deeper=False)
    line = overdye_line(undyed.lab, skein.lab, second.lab, skein.viewing)
    amount = _smallest(line, target.middle.lab, _most(second))
    lab = line(amount) if amount else skein.lab
    solved = de00(target.middle.lab, lab)
    astray = _astray(undyed, skein, second, target.middle, amount)
    model = _MODEL_MISS * min(amount / _MODEL_FULL_AT, 1.0)
    expected = together(solved, model, astray * EXPECTED)
    low, high = _amount_band(line, amount, together(astray, model * WITHIN))
    reachable = solved <= max(VERY_CLOSE, target.spread, plus_minus_between(skein, target.middle))
    now = de00(target.middle.lab, skein.lab)
    says = _says(target.middle.lab, skein.lab, lab, amount, reachable)
    return OverdyePlan(amount, low, high, lab, now, solved, expected, reachable, says, (*notes, _SNIPPET))


def plan_further_dip(undyed: Reading, skein: Reading, target: Target) -> OverdyePlan:
    """A further dip in the same bath, counted in the skein's own depth. Raises as `plan_overdye`."""
    return plan_overdye(undyed, skein, skein, target)


def _check_not_black(skein: Reading) -> None:
    if min(depths(skein.lab, skein.viewing)) > REFUSE_FROM_KS:
        raise TooDark(
            "The skein is so dark in every part of the spectrum (K/S above 25) that no dye over it can be "
            "told; expected a skein with some colour left, for example lab(42 45 30)."
        )


def _most(second: Reading) -> float:
    """A sample too deep for the theory is not made deeper."""
    return 1.0 if max(depths(second.lab, second.viewing)) > REFUSE_FROM_KS else MOST_AMOUNT


def _smallest(line: Line, target: Lab, most: float) -> float:
    def apart(log: float) -> float:
        return de00(line(math.exp(log)), target)

    first = first_as_near(apart, math.log(LEAST_AMOUNT), math.log(most), _AS_GOOD)
    return 0.0 if de00(line(0.0), target) <= apart(first) else math.exp(first)


def _astray(undyed: Reading, skein: Reading, second: Reading, target: Reading, amount: float) -> float:
    """The ± that all four readings leave along the one way the amount can move the shade."""
    viewing = skein.viewing

    def of(reading: Reading, line_of: Callable[[Lab], Line]) -> float:
        return carried(lambda lab: line_of(lab)(amount), reading.lab, reading.plus_minus)

    whole = together(
        target.plus_minus,
        of(skein, lambda lab: overdye_line(undyed.lab, lab, second.lab, viewing)),
        of(second, lambda lab: overdye_line(undyed.lab, skein.lab, lab, viewing)),
        of(undyed, lambda lab: overdye_line(lab, skein.lab, second.lab, viewing)),
    )
    return whole * ONE_DIRECTION


def _amount_band(line: Line, amount: float, plus_minus: float) -> tuple[float, float]:
    """The amounts that the ± leaves open, by how fast the shade moves with the amount."""
    if not amount:
        return 0.0, 0.0
    slope = de00(line(amount), line(amount * math.exp(_SMALL_LOG))) / _SMALL_LOG
    factor = math.exp(min(plus_minus / max(slope, _SMALL_LOG), math.log(_MOST_FACTOR)))
    return amount / factor, min(amount * factor, MOST_AMOUNT)


def _says(target: Lab, skein: Lab, best: Lab, amount: float, reachable: bool) -> str:
    if reachable:
        return _NEAR_ENOUGH if not amount else "Within reach, as far as the model can tell."
    if target.lightness > skein.lightness + VERY_CLOSE:
        return "Unreachable: the target is lighter than what you have, and dye over dye only darkens."
    if target.chroma > max(best.chroma, skein.chroma) + VERY_CLOSE:
        return "Unreachable: the target is cleaner than this dye over this skein can give."
    left = spoken(target, best) or (max(terms(target, best), key=lambda term: term.seen).word,)
    return f"Unreachable with this dye: at its nearest the skein stays {listed(left)}."
