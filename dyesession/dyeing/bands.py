"""Points of a heavy-tailed band: from a centre and a 90 % band to quantiles, without chance.

Knows nothing of dye. Student's t with four degrees of freedom, on the log or logit scale, has heavier
tails than a normal, so that an odd pot is believed once it has been read (judgement). Its quantile and
distribution are in closed form (Shaw 2006, J. Comput. Finance 9(4):37-73: from memory, unverified;
checked against each other in the tests).
"""

import math
from collections.abc import Sequence
from typing import Literal

from dyesession.dyeing.limits import OutOfRange, above_zero, between_shares

Scale = Literal["log", "logit"]

LOW_SHARE = 0.05
HIGH_SHARE = 0.95
Z_90 = 1.645  # half-width of a 90 % band in standard deviations of a normal


def t4_quantile(share: float) -> float:
    """Value of Student's t (4 df) below which `share` of it lies; `share` strictly between 0 and 1."""
    between_shares("share of the band", share, "0.95")
    spread = 4.0 * share * (1.0 - share)
    root = math.sqrt(spread)
    shape = math.cos(math.acos(min(root, 1.0)) / 3.0) / root
    return math.copysign(2.0 * math.sqrt(max(shape - 1.0, 0.0)), share - 0.5)


def t4_share_below(value: float) -> float:
    """Share of Student's t (4 df) that lies below `value`."""
    bent = value / math.sqrt(1.0 + value * value / 4.0)
    return 0.5 + 0.375 * bent * (1.0 - bent * bent / 12.0)


T4_AT_HIGH = t4_quantile(HIGH_SHARE)


def to_scale(value: float, scale: Scale) -> float:
    """Put a number on the log scale (above 0) or a share on the logit scale (strictly between 0 and 1)."""
    if scale == "log":
        return math.log(above_zero("number on a log scale", value, "0.5"))
    between_shares("share on a logit scale", value, "0.65")
    return math.log(value) - math.log1p(-value)


def from_scale(point: float, scale: Scale) -> float:
    """Undo `to_scale`."""
    if scale == "log":
        return math.exp(point)
    return 1.0 / (1.0 + math.exp(-point)) if point > 0 else math.exp(point) / (1.0 + math.exp(point))


def quantile(centre: float, low: float, high: float, scale: Scale, share: float) -> float:
    """Value below which `share` of the band lies.

    `centre` is the median, `low` and `high` the 5 % and 95 % points; the two sides may be of unequal width.
    Raises `OutOfRange` unless low < centre < high.
    """
    return at_steps(centre, low, high, scale, (t4_quantile(share),))[0]


def at_steps(
    centre: float, low: float, high: float, scale: Scale, steps: Sequence[float]
) -> tuple[float, ...]:
    """Values at steps of Student's t (4 df): as `quantile`, for who counts in steps instead of shares."""
    middle, down, up = _sides(centre, low, high, scale)
    return tuple([from_scale(middle + step * (down if step < 0 else up), scale) for step in steps])


def t4_log_density(step: float) -> float:
    """Log of Student's t density (4 df), but for its constant."""
    return -2.5 * math.log1p(step * step / 4.0)


def share_below(centre: float, low: float, high: float, scale: Scale, value: float) -> float:
    """Share of the band below `value`: the inverse of `quantile`, for weighing the cells of a grid."""
    middle, down, up = _sides(centre, low, high, scale)
    away = to_scale(value, scale) - middle
    return t4_share_below(away / (down if away < 0 else up))


def quantile_points(centre: float, low: float, high: float, scale: Scale, count: int) -> tuple[float, ...]:
    """Return `count` rising points that stand for equal shares of the band: the middle of each share."""
    above_zero("count of points", count, "41")
    return tuple(quantile(centre, low, high, scale, (i + 0.5) / count) for i in range(count))


def _sides(centre: float, low: float, high: float, scale: Scale) -> tuple[float, float, float]:
    if not low < centre < high:
        raise OutOfRange(
            f"The band {low:g} to {high:g} does not hold its centre {centre:g};"
            " it must rise, for example 0.15, 0.35, 0.6."
        )
    middle = to_scale(centre, scale)
    down = (middle - to_scale(low, scale)) / T4_AT_HIGH
    return middle, down, (to_scale(high, scale) - middle) / T4_AT_HIGH
