import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.diffusion import (
    FIRST_ZEROS,
    SHORT_TIME,
    cylinder_share,
    cylinder_time,
    j0_zero,
)


def bessel_j0(x: float) -> float:
    """J0 by its power series, good to 1e-9 for x below 20."""
    return math.fsum((-1) ** k * (x / 2) ** (2 * k) / math.factorial(k) ** 2 for k in range(60))


@pytest.mark.parametrize("number", [1, 2, 3, 4, 5, 6])
def test_the_zeros_are_zeros_of_j0(number: int) -> None:
    zero = j0_zero(number)
    assert bessel_j0(zero - 1e-6) * bessel_j0(zero + 1e-6) < 0


def test_the_expansion_agrees_with_the_written_zeros_and_spaces_by_pi() -> None:
    assert j0_zero(6) - FIRST_ZEROS[4] == pytest.approx(math.pi, abs=2e-3)
    assert j0_zero(41) - j0_zero(40) == pytest.approx(math.pi, abs=3e-5)


def test_short_and_long_forms_meet() -> None:
    below, above = cylinder_share(SHORT_TIME * (1 - 1e-9)), cylinder_share(SHORT_TIME)
    assert below == pytest.approx(above, abs=1e-6)


@given(st.floats(0, 5), st.floats(1e-6, 1))
def test_uptake_only_grows(time: float, more: float) -> None:
    assert -1e-12 <= cylinder_share(time) <= cylinder_share(time + more) + 1e-7 <= 1 + 2e-7


@given(st.floats(0.01, 0.99))
def test_time_and_share_undo_each_other(share: float) -> None:
    assert cylinder_share(cylinder_time(share)) == pytest.approx(share, abs=1e-6)


def test_nothing_is_taken_at_the_start() -> None:
    assert cylinder_share(0) == 0
