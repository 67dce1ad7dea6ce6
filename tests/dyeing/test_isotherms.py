import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.exhaustion import exhausted_share
from dyesession.dyeing.isotherms import (
    FREUNDLICH_MADDER_WOOL,
    AtRest,
    dual_mode_bath,
    freundlich_bath,
    langmuir_bath,
    nernst_bath,
)
from dyesession.dyeing.limits import OutOfRange

starts = st.floats(0.1, 5000)
liquors = st.floats(0.005, 0.2)
factors = st.floats(0.001, 5)


def balances(rest: AtRest, start: float, liquor: float) -> bool:
    total = rest.on_fibre_mg_g + liquor * rest.bath_mg_l
    return total == pytest.approx(liquor * start, rel=1e-9) and 0 <= rest.bath_mg_l <= start


@given(starts, liquors, factors)
def test_nernst_is_the_simple_share(start: float, liquor: float, partition: float) -> None:
    rest = nernst_bath(start, liquor, partition)
    assert balances(rest, start, liquor)
    assert rest.exhausted == pytest.approx(exhausted_share(partition * 1000, liquor * 1000), rel=1e-9)


@given(starts, liquors, st.floats(1, 60), st.floats(1e-4, 0.5))
def test_langmuir_lies_on_its_curve_and_balances(start: float, liquor: float, most: float, k: float) -> None:
    rest = langmuir_bath(start, liquor, most, k)
    assert balances(rest, start, liquor)
    curve = most * k * rest.bath_mg_l / (1 + k * rest.bath_mg_l)
    assert rest.on_fibre_mg_g == pytest.approx(curve, rel=1e-6, abs=1e-9)


@given(starts, liquors, st.floats(0.01, 3), st.floats(0.3, 1))
def test_freundlich_lies_on_its_curve_and_balances(start: float, liquor: float, k: float, n: float) -> None:
    rest = freundlich_bath(start, liquor, k, n)
    assert balances(rest, start, liquor)
    assert rest.on_fibre_mg_g == pytest.approx(k * rest.bath_mg_l**n, rel=1e-6, abs=1e-9)


@given(starts, st.floats(1.05, 10))
def test_the_weaker_the_madder_bath_the_larger_the_share_taken(start: float, more: float) -> None:
    weak = freundlich_bath(start, 0.03, 0.5, FREUNDLICH_MADDER_WOOL)
    strong = freundlich_bath(start * more, 0.03, 0.5, FREUNDLICH_MADDER_WOOL)
    assert strong.exhausted < weak.exhausted
    assert strong.on_fibre_mg_g > weak.on_fibre_mg_g


@given(starts, liquors, st.floats(1, 60), st.floats(1e-4, 0.5))
def test_dual_mode_without_solution_is_langmuir(start: float, liquor: float, most: float, k: float) -> None:
    assert dual_mode_bath(start, liquor, most, k, 0).bath_mg_l == pytest.approx(
        langmuir_bath(start, liquor, most, k).bath_mg_l, rel=1e-6, abs=1e-9
    )


def test_a_bath_without_colour_gives_none() -> None:
    assert langmuir_bath(0, 0.03, 24, 0.02) == AtRest(0, 0, 0)
    assert freundlich_bath(0, 0.03, 0.5, 0.61).on_fibre_mg_g == 0


def test_a_negative_strength_is_refused() -> None:
    with pytest.raises(OutOfRange, match="strength at the start"):
        nernst_bath(-1, 0.03, 0.1)
