import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.reflectance import (
    depth_error,
    depth_linear,
    depth_of,
    depth_saturating,
    is_full,
    reflectance_of,
)


@given(st.floats(0.005, 1))
def test_depth_and_reflectance_undo_each_other(reflectance: float) -> None:
    assert reflectance_of(depth_of(reflectance)) == pytest.approx(reflectance, rel=1e-6)


@given(st.floats(0, 1000), st.floats(0.001, 10))
def test_deeper_is_darker(depth: float, more: float) -> None:
    assert 0 < reflectance_of(depth + more) < reflectance_of(depth) <= 1


@given(st.floats(0.01, 0.95))
def test_the_error_is_the_slope(reflectance: float) -> None:
    step = 1e-7
    slope = (depth_of(reflectance - step) - depth_of(reflectance + step)) / (2 * step)
    assert depth_error(reflectance, 1) == pytest.approx(slope, rel=1e-3)


def test_a_full_shade_cannot_be_read_to_a_tenth() -> None:
    assert depth_error(0.0238, 0.002) / depth_of(0.0238) == pytest.approx(0.088, abs=0.002)
    assert is_full(depth_of(0.0238)) and not is_full(19)


@given(st.floats(0.1, 60), st.floats(1.1, 3))
def test_depth_grows_with_colour_and_flattens(on_fibre: float, more: float) -> None:
    assert depth_linear(on_fibre * more, 2, 0.1) > depth_linear(on_fibre, 2, 0.1) > 0.1
    here, there = depth_saturating(on_fibre, 25, 8), depth_saturating(on_fibre * more, 25, 8)
    assert here < there < min(25, here * more)
    assert depth_saturating(8, 25, 8, 0.5) == pytest.approx(13)


@pytest.mark.parametrize("reflectance", [0, -0.1, 1.1])
def test_reflectances_outside_nought_to_one_are_refused(reflectance: float) -> None:
    with pytest.raises(OutOfRange):
        depth_of(reflectance)
