"""What is left in a dyestuff, told from the strengths of the liquors already strained off it.

Knows nothing of how a strength was read. If each strain brings the share rho of the one before, the rest
is a geometric series; the two-strain case is the algebra of two-catch removal estimates in fisheries
(from memory). Error propagation and guards are derived.
"""

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from dyesession.dyeing.extraction import strain_ratio
from dyesession.dyeing.limits import OutOfRange, above_zero, zero_or_more


@dataclass(frozen=True)
class WhatIsLeft:
    """Estimate from successive strains; amounts in the unit of the strains, errors relative (one sd).

    `at_least`: the ratio rose from strain to strain, a stubborn store is likely, `left` is only a lower
    bound. `ratio_too_high`: the only ratio known leans on a first strain that wetted dry stuff, so `left`
    is too high.
    """

    ratio: float
    total: float
    left: float
    total_error: float
    left_error: float
    at_least: bool = False
    ratio_too_high: bool = False


def left_from_strains(
    amounts: Sequence[float],
    relative_error: float,
    *,
    on_one_linear_scale: bool,
    first_wetted_dry_stuff: bool = True,
) -> WhatIsLeft:
    """Estimate what is left, with the guards the trade needs.

    (a) refuses when a strain brought no less than the one before; (b) when the first water wetted dry
    stuff, takes the ratio from the second strain on if there are three or more, else flags it (correct it
    first with `unbiased_first_strain` and pass `first_wetted_dry_stuff=False` when the held volume is
    known); (c) a rising ratio makes the result "at least"; (d) refuses strengths that are not on one
    linear scale. `amounts` are strengths times strained volumes, first to last; `relative_error` is that
    of each strength.
    """
    if not on_one_linear_scale:
        raise OutOfRange(
            "These strengths are not on one linear scale; read them again so that half the strength"
            " gives half the number, for example by a dilution match."
        )
    ratios = [strain_ratio(a, b) for a, b in _pairs(amounts)]
    skip_first = first_wetted_dry_stuff and len(amounts) > 2
    fitted = fit_strains(amounts, relative_error, skip=1 if skip_first else 0)
    trusted = ratios[1:] if skip_first else ratios
    return WhatIsLeft(
        fitted.ratio,
        fitted.total,
        fitted.left,
        fitted.total_error,
        fitted.left_error,
        at_least=any(b > a for a, b in _pairs(trusted)) or (skip_first and trusted[0] > ratios[0]),
        ratio_too_high=first_wetted_dry_stuff and len(amounts) == 2,
    )


def fit_strains(amounts: Sequence[float], relative_error: float, skip: int = 0) -> WhatIsLeft:
    """Least squares of ln(strain) on its number, leaving out the first `skip`.

    No guards but (a) on the slope. Left = last strain x rho/(1 - rho), total = all strains + left. With
    two strains that is A1^2/(A1 - A2) and A2^2/(A1 - A2). Raises `OutOfRange` for fewer than two strains
    to fit, or a slope that does not fall.
    """
    zero_or_more("relative error of a strength", relative_error, "0.1")
    weights = _slope_weights(len(amounts), skip)
    for amount in amounts:
        above_zero("strain", amount, "42")
    ratio = math.exp(sum(w * math.log(a) for w, a in zip(weights, amounts, strict=True)))
    if ratio >= 1.0:
        raise OutOfRange(
            "The strains do not grow weaker;"
            " each must bring less than the one before, for example 100 then 40."
        )
    left = amounts[-1] * ratio / (1.0 - ratio)
    total = math.fsum(amounts) + left
    left_sways = [w / (1.0 - ratio) for w in weights]
    left_sways[-1] += 1.0
    total_sways = [(a + left * s) / total for a, s in zip(amounts, left_sways, strict=True)]
    return WhatIsLeft(
        ratio,
        total,
        left,
        relative_error * math.hypot(*total_sways),
        relative_error * math.hypot(*left_sways),
    )


def left_from_fitted_line(amounts: Sequence[float]) -> float:
    """As `fit_strains`, but starting from the fitted last strain instead of the observed one."""
    fitted = fit_strains(amounts, 0.0)
    middle = math.fsum(math.log(a) for a in amounts) / len(amounts)
    half_span = (len(amounts) - 1) / 2.0
    last = math.exp(middle + half_span * math.log(fitted.ratio))
    return last * fitted.ratio / (1.0 - fitted.ratio)


def _pairs(values: Sequence[float]) -> list[tuple[float, float]]:
    return list(itertools.pairwise(values))


def _slope_weights(count: int, skip: int) -> list[float]:
    used = count - skip
    if used < 2:
        raise OutOfRange(
            f"{used} strain cannot tell what is left; expected two or more, for example 100 then 40."
        )
    middle = (used - 1) / 2.0
    spread = math.fsum((i - middle) ** 2 for i in range(used))
    return [0.0] * skip + [(i - middle) / spread for i in range(used)]
