"""Dye creeping into a round fibre from a bath of constant strength.

Knows nothing of rates or temperature: time enters only as D t/r^2. The series over the zeros of J0 and
the short- time form are Crank's (The Mathematics of Diffusion: from memory, unverified; the two are
checked against each other and the zeros against J0 itself in the tests).
"""

import math

from dyesession.dyeing.limits import between_shares, zero_or_more

# The first five zeros of the Bessel function J0; from memory, checked in the tests.
FIRST_ZEROS = (
    2.404825557695773,
    5.520078110286311,
    8.653727912911013,
    11.791534439014281,
    14.930917708487787,
)
ZEROS_USED = 45
SHORT_TIME = 0.001  # below this the short-time form is used; at it, the series has long converged
HALVINGS = 100


def j0_zero(number: int) -> float:
    """Zero of J0 by its number from 1; beyond the fifth by McMahon's expansion (from memory, checked)."""
    if number <= len(FIRST_ZEROS):
        return FIRST_ZEROS[number - 1]
    middle = (number - 0.25) * math.pi
    near = 1.0 / (8.0 * middle)
    return middle + near - 124.0 / 3.0 * near**3 + 120928.0 / 15.0 * near**5


ZEROS = tuple(j0_zero(i) for i in range(1, ZEROS_USED + 1))


def cylinder_share(time_over_size: float) -> float:
    """Share of the final uptake of a round fibre after D t/r^2, 0 or more."""
    zero_or_more("D t/r^2", time_over_size, "0.06")
    if time_over_size < SHORT_TIME:
        root = math.sqrt(time_over_size / math.pi)
        return 4.0 * root - time_over_size - root * time_over_size / 3.0
    return 1.0 - 4.0 * math.fsum(math.exp(-zero * zero * time_over_size) / (zero * zero) for zero in ZEROS)


def cylinder_time(share: float) -> float:
    """D t/r^2 at which a share of the final uptake is reached, the inverse of `cylinder_share`."""
    between_shares("share of the final uptake", share, "0.5")
    low, high = 0.0, 1.0
    while cylinder_share(high) < share:
        high *= 2.0
    for _ in range(HALVINGS):
        middle = (low + high) / 2.0
        low, high = (middle, high) if cylinder_share(middle) < share else (low, middle)
    return (low + high) / 2.0
