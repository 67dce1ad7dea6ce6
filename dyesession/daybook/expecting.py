"""How near a repeat will come to the depth of its day: the ± that weights, water, hands and days leave open. Pure.

Depth is grams of the dyestuff's colour over the weight of fibre. Both days swing, so each swing counts twice.
How the swings carry over to depth is derived (mass balance of `dyeing.exhaustion` and `dyeing.extraction`); how
large they are is learned where three days or more told of it, else the usual swing of `daybook.learning`.
"""

import math
from collections.abc import Sequence

from dyesession.account import Band90
from dyesession.daybook.dyers_numbers import Learnt, Number
from dyesession.daybook.learning import SWINGS
from dyesession.daybook.seen import family_of, key_of
from dyesession.dyeing.bands import quantile_points, to_scale
from dyesession.dyeing.eta import Z_90
from dyesession.dyeing.exhaustion import exhausted_share
from dyesession.dyeing.extraction import kept_in_pull
from dyesession.dyeing.priors import STIFFENING_FADES, STIFFENS, Prior, kept_share_prior, partition_prior
from dyesession.session.state import State

TWO_DAYS = math.sqrt(2.0)
ENOUGH_DAYS = 3  # before the dyer's own swing counts; our own choice, no source
WATER_SD = 0.06  # of the litres in a dye bath: jug, steam; judgement
HANDS_SD = 0.05  # liquor lost in the sieve and on the fibre, an uneven skein, the scale; judgement
POINTS = 9  # places of a guess over which a slope is averaged
NUDGE = 0.05


def expected_depth(last: State, pulls: int, liquor_ratio: float, learned: Learnt, kinds: Sequence[str]) -> Band90:
    """Depth of a repeat over that of its day when nothing is meant to be other; 1 in the middle."""
    dyestuffs = [one for one in last.doses if one.role == "dyestuff"]
    substance = dyestuffs[0].substance if dyestuffs else ""
    kind = kinds[0] if kinds else "wool"
    family = family_of(kind) or "wool"
    taken = learned.number("exhaustion", key_of(substance), family)
    kept = learned.number("kept share", key_of(substance))
    spread = math.hypot(
        _by_taking(taken.own if taken else partition_prior(family, substance), liquor_ratio)
        * math.hypot(TWO_DAYS * swing_of(taken, SWINGS["exhaustion"]), TWO_DAYS * WATER_SD),
        _by_keeping(kept.own if kept else kept_share_prior(substance), pulls)
        * TWO_DAYS
        * swing_of(kept, SWINGS["kept share"]),
        TWO_DAYS * HANDS_SD,
    )
    return Band90(1.0, math.exp(-Z_90 * spread), math.exp(Z_90 * spread))


def swing_of(number: Number | None, usual: float) -> float:
    """How far the dyer's days swing in a number, as a standard deviation on its scale."""
    if number is None or len(number.days) < ENOUGH_DAYS:
        return usual
    ahead, own = _sd(number.next_day), _sd(number.own)
    return math.sqrt(max(ahead * ahead - own * own, 0.0))


def _sd(prior: Prior) -> float:
    return (to_scale(prior.high, prior.scale) - to_scale(prior.low, prior.scale)) / (2.0 * Z_90)


def _by_taking(partition: Prior, liquor_ratio: float) -> float:
    """How much depth moves with the partition, log over log: what is left in the bath."""
    left = [1.0 - exhausted_share(one, liquor_ratio) for one in _points(partition)]
    return math.sqrt(math.fsum(one * one for one in left) / len(left))


def _by_keeping(kept: Prior, pulls: int) -> float:
    """How much depth moves with the share kept, log over logit; none where nothing was extracted apart."""
    if pulls < 1:
        return 0.0
    slopes = [_slope(one, pulls) for one in _points(kept)]
    return math.sqrt(math.fsum(one * one for one in slopes) / len(slopes))


def _slope(kept: float, pulls: int) -> float:
    odds = kept / (1.0 - kept)
    ends = [by * odds / (1.0 + by * odds) for by in (math.exp(-NUDGE), math.exp(NUDGE))]
    drawn = [math.log(_drawn(one, pulls)) for one in ends]
    return (drawn[1] - drawn[0]) / (2.0 * NUDGE)


def _drawn(kept: float, pulls: int) -> float:
    return 1.0 - math.prod(
        kept_in_pull(kept, STIFFENS.centre, STIFFENING_FADES.centre, i + 1) for i in range(pulls)
    )


def _points(prior: Prior) -> tuple[float, ...]:
    if prior.low == prior.high:
        return (prior.centre,)
    return quantile_points(prior.centre, prior.low, prior.high, prior.scale, POINTS)
