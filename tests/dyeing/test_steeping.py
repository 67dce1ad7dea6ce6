import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.steeping import first_order_strength, peleg_strength, two_site_strength


@given(st.floats(0.001, 1), st.floats(0.001, 1), st.floats(0, 500))
def test_peleg_starts_at_one_rate_and_ends_below_its_limit(k1: float, k2: float, minutes: float) -> None:
    assert peleg_strength(k1, k2, minutes) < 1 / k2
    assert peleg_strength(k1, k2, 1e-9) == pytest.approx(1e-9 / k1, rel=1e-6)


@given(st.floats(0, 100), st.floats(0, 1), st.floats(0, 500), st.floats(0, 100))
def test_steeping_longer_never_brings_less(limit: float, rate: float, minutes: float, more: float) -> None:
    assert (
        first_order_strength(limit, rate, minutes) <= first_order_strength(limit, rate, minutes + more) + 1e-9
    )
    assert two_site_strength(limit, rate, limit, rate / 2, minutes) <= 2 * limit


def test_a_time_before_the_start_is_refused() -> None:
    with pytest.raises(OutOfRange, match="time is -1"):
        first_order_strength(50, 0.05, -1)
