"""What a kitchen scale can weigh: its error on one dose, and when a stock solution is the better way.

Knows nothing of doses in a recipe. A display step d is a rectangular error, u = d/sqrt(12) (GUM type B;
NIST TN 1297 section 4, page read in part); a tared dose rounds twice, d/sqrt(6). The default
repeatability is judgement. Kitchen scales are not verified instruments: the step is a floor, not a
promise.
"""

import math

from dyesession.dyeing.limits import above_zero, zero_or_more

COVERAGE = 2.0  # expanded error is this many standard deviations, about 95 %
REPEATABILITY_STEPS = 0.5  # standard deviation of repeated weighings, in display steps; judgement
USUAL_TOLERANCE = 0.05  # a dose is weighed well when its expanded error is within 5 %; judgement


def reading_sd_g(resolution_g: float) -> float:
    """Standard deviation of one reading from its display step alone, d/sqrt(12), g."""
    return above_zero("display step", resolution_g, "0.1 g") / math.sqrt(12.0)


def tared_sd_g(resolution_g: float) -> float:
    """Standard deviation of a tared dose from the display step alone, d/sqrt(6), g."""
    return above_zero("display step", resolution_g, "0.1 g") / math.sqrt(6.0)


def weighing_sd_g(
    dose_g: float, resolution_g: float, repeatability_g: float | None = None, linearity_share: float = 0.0
) -> float:
    """Standard deviation of a tared dose, g: display step, repeatability and linearity together.

    `repeatability_g` is the scatter of repeated weighings (half a step when not known); `linearity_share`
    what the scale may be wrong by as a share of the dose.
    """
    zero_or_more("dose", dose_g, "20 g")
    step_sd = tared_sd_g(resolution_g)
    repeated = REPEATABILITY_STEPS * resolution_g if repeatability_g is None else repeatability_g
    zero_or_more("repeatability", repeated, "0.05 g")
    return math.hypot(step_sd, repeated, zero_or_more("linearity", linearity_share, "0.01") * dose_g)


def weighing_error_share(dose_g: float, resolution_g: float, repeatability_g: float | None = None) -> float:
    """Expanded error (two standard deviations) of a tared dose as a share of it."""
    above_zero("dose", dose_g, "20 g")
    return COVERAGE * weighing_sd_g(dose_g, resolution_g, repeatability_g) / dose_g


def smallest_dose_g(
    resolution_g: float, tolerance: float = USUAL_TOLERANCE, repeatability_g: float | None = None
) -> float:
    """Smallest dose whose expanded error stays within a share `tolerance`, g: about 26 steps for 5 %."""
    return (
        COVERAGE
        * weighing_sd_g(0.0, resolution_g, repeatability_g)
        / above_zero("tolerance", tolerance, "0.05")
    )


def can_be_weighed(dose_g: float, resolution_g: float, tolerance: float = USUAL_TOLERANCE) -> bool:
    """Whether a dose can be weighed within a tolerance.

    If not, a stock solution or a larger batch is the way.
    """
    return zero_or_more("dose", dose_g, "20 g") >= smallest_dose_g(resolution_g, tolerance)


def stock_error_share(mass_error: float, jug_error: float, measure_error: float) -> float:
    """Expanded error of a dose from a stock solution: weighing, making up and measuring out, as shares."""
    for what, error in (("weighing", mass_error), ("jug", jug_error), ("measure", measure_error)):
        zero_or_more(f"error of the {what}", error, "0.03")
    return math.hypot(mass_error, jug_error, measure_error)
