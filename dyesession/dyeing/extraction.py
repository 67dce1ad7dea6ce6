"""Colour drawn from a dyestuff in several extractions: what each brings, what is still within.

Knows nothing of jars or dyestuffs by name. Straining leaves liquor in the spent dyestuff, and some colour
bound to it; both stay behind for the next extraction (mass balance, derived). Dyers get colour on a
fourth boil of cochineal (a seller's instruction sheet, author not named, read), which washing alone would
not give.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from dyesession.dyeing.limits import OutOfRange, a_share, above_zero, between_shares, zero_or_more


def kept_share(total_liquor_ml: float, held_ml: float, bound_ml: float = 0.0) -> float:
    """Share of the colour that stays behind when the liquor is strained off.

    `total_liquor_ml` is all liquor present, `held_ml` what the spent dyestuff keeps, `bound_ml` the
    colour bound to it expressed as the volume of liquor that would hold as much (0: pure washing).
    """
    _check_liquor(total_liquor_ml, held_ml, bound_ml)
    return (held_ml + bound_ml) / (total_liquor_ml + bound_ml)


@dataclass(frozen=True)
class Pull:
    """One extraction: strength per mL, colour strained off, colour left in the spent dyestuff."""

    strength_per_ml: float
    strained: float
    left: float


def pull(colour: float, total_liquor_ml: float, held_ml: float, bound_ml: float = 0.0) -> Pull:
    """Extract once: the colour spreads over liquor and bound store, the free liquor is strained off."""
    zero_or_more("colour in the dyestuff", colour, "100")
    left = colour * kept_share(total_liquor_ml, held_ml, bound_ml)
    return Pull(colour / (total_liquor_ml + bound_ml), colour - left, left)


def pulls(
    colour: float, fresh_waters_ml: Sequence[float], held_ml: float, bound_ml: float = 0.0
) -> tuple[Pull, ...]:
    """Extract once with each fresh water; from the second on, the liquor held back is there too."""
    done: list[Pull] = []
    for fresh_ml in fresh_waters_ml:
        above_zero("fresh water", fresh_ml, "1000 mL")
        total_ml = fresh_ml + (held_ml if done else 0.0)
        done.append(pull(colour, total_ml, held_ml, bound_ml))
        colour = done[-1].left
    return tuple(done)


def share_left_after_pulls(kept: float, pull_count: int) -> float:
    """Share of the colour left after `pull_count` extractions that each keep the share `kept`."""
    zero_or_more("number of extractions", pull_count, "3")
    return float(a_share("share kept per extraction", kept, "0.35") ** pull_count)


def kept_share_to_reach(share_left: float, pull_count: int) -> float:
    """Largest share kept per extraction that leaves no more than `share_left` after `pull_count`."""
    a_share("share left", share_left, "0.05")
    return float(share_left ** (1.0 / above_zero("number of extractions", pull_count, "4")))


def next_pull_brings(left: float, kept: float) -> float:
    """Colour one more extraction would bring out of the `left` that is still within."""
    zero_or_more("colour left", left, "12 g")
    return left * (1.0 - a_share("share kept per extraction", kept, "0.35"))


@dataclass(frozen=True)
class TwoPools:
    """A dyestuff with a ready store and a stubborn one; each keeps its own share per extraction."""

    fast: float
    fast_kept: float
    slow: float
    slow_kept: float


def two_pool_strains(pools: TwoPools, pull_count: int) -> tuple[tuple[float, float], ...]:
    """Return (strained off, left within) for each of `pull_count` extractions of a two-pool dyestuff."""
    zero_or_more("ready colour", pools.fast, "60")
    zero_or_more("stubborn colour", pools.slow, "40")
    a_share("share the ready store keeps", pools.fast_kept, "0.1")
    a_share("share the stubborn store keeps", pools.slow_kept, "0.7")
    done: list[tuple[float, float]] = []
    fast, slow = pools.fast, pools.slow
    for _ in range(pull_count):
        strained = next_pull_brings(fast, pools.fast_kept) + next_pull_brings(slow, pools.slow_kept)
        fast, slow = fast * pools.fast_kept, slow * pools.slow_kept
        done.append((strained, fast + slow))
    return tuple(done)


def kept_in_pull(first_kept: float, stiffens: float, fades: float, number: int) -> float:
    """Share kept in extraction `number` (from 1) of a dyestuff that gives its ready colour first.

    The odds of keeping, share over 1 - share, grow by the factor `stiffens` from the first extraction to the
    second, and on the log scale by `fades` times as much each time after; 1 keeps the same share each time.
    A shape of our own for what two stores do: a ready store of 60 % that keeps a tenth beside a stubborn one
    that keeps seven tenths has 0.34, 0.59, 0.68, 0.70 (stiffens 2.8, fades 0.4).
    """
    a_share("share the first extraction keeps", first_kept, "0.35")
    above_zero("factor by which the dyestuff stiffens", stiffens, "1.3")
    a_share("what is left of the stiffening each time", fades, "0.5")
    above_zero("number of the extraction", number, "2")
    if stiffens == 1.0 or number == 1 or first_kept in (0.0, 1.0):
        return first_kept
    grown = math.log(stiffens) * math.fsum(fades**i for i in range(number - 1))
    odds = first_kept / (1.0 - first_kept) * math.exp(grown)
    return odds / (1.0 + odds)


def unbiased_first_strain(strained: float, water_ml: float, held_ml: float) -> float:
    """First strain as if dry dyestuff had drunk nothing: strained x V/(V - V_r) (derived).

    The first water wets dry stuff, so its strain is short by what stays in it, and the ratio of second to
    first is too high by that factor.
    """
    above_zero("first strain", strained, "94")
    _check_liquor(water_ml, held_ml, 0.0)
    if held_ml == water_ml:
        raise OutOfRange(
            f"All {water_ml:g} mL was held back; expected less than the water, for example 60 mL."
        )
    return strained * water_ml / (water_ml - held_ml)


def strain_ratio(first: float, second: float) -> float:
    """Ratio of two successive strains.

    Raises `OutOfRange` unless the second brought less than the first.
    """
    above_zero("first strain", first, "100")
    above_zero("second strain", second, "40")
    if second >= first:
        raise OutOfRange(
            f"The second strain brought {second:g} and the first {first:g};"
            " each strain must bring less than the one before, for example 100 then 40."
        )
    return between_shares("ratio of the strains", second / first, "0.4")


def _check_liquor(total_liquor_ml: float, held_ml: float, bound_ml: float) -> None:
    above_zero("liquor on the dyestuff", total_liquor_ml, "1000 mL")
    zero_or_more("liquor held back", held_ml, "60 mL")
    zero_or_more("bound colour as liquor", bound_ml, "200 mL")
    if held_ml > total_liquor_ml:
        raise OutOfRange(
            f"The dyestuff holds back {held_ml:g} mL of {total_liquor_ml:g} mL;"
            " it must hold less than there is, for example 60 mL of 1000 mL."
        )
