import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.yarn import (
    DIRECT_TEX,
    METRIC,
    YARDS_PER_HANK,
    count_of,
    mass_of_length_g,
    metres_per_100_g,
    metres_per_100_g_of,
    tex_of,
)

systems = st.sampled_from([*DIRECT_TEX, METRIC, *YARDS_PER_HANK])
# Tex of count 1; worked out apart from this program from the pound and the yard.
TEX_OF_ONE = {
    METRIC: 1000,
    "worsted": 885.811871,
    "cotton": 590.541247,
    "spun silk": 590.541247,
    "linen lea": 1653.515493,
    "woollen run": 310.034155,
    "woollen cut": 1653.515493,
    "Yorkshire skein": 1937.713468,
    "tex": 1,
    "dtex": 0.1,
    "denier": 1 / 9,
}


@pytest.mark.parametrize("system", TEX_OF_ONE)
def test_each_trades_count_comes_to_tex(system: str) -> None:
    assert tex_of(system, 1) == pytest.approx(TEX_OF_ONE[system], rel=1e-8)


@given(systems, st.floats(0.1, 500))
def test_counts_convert_there_and_back(system: str, count: float) -> None:
    assert count_of(system, tex_of(system, count)) == pytest.approx(count, rel=1e-12)


def test_two_strands_of_28_metric() -> None:
    tex = tex_of("Nm", 28, strands=2)
    assert tex == pytest.approx(71.43, abs=0.005)
    assert metres_per_100_g(tex) == pytest.approx(1400)
    assert tex_of("tex", 10, strands=3) == pytest.approx(30)


@given(st.floats(1, 5000), st.floats(10, 3000))
def test_a_length_weighs_within_a_twentieth(length: float, tex: float) -> None:
    low, middle, high = mass_of_length_g(length, tex)
    assert low < middle < high
    assert middle == pytest.approx(100 * length / metres_per_100_g(tex))


def test_a_thousand_yards_to_the_pound_is_two_hundred_metres() -> None:
    assert metres_per_100_g_of(1000) == pytest.approx(201.59, abs=0.005)


def test_an_unknown_count_is_refused() -> None:
    with pytest.raises(OutOfRange, match="worsted"):
        tex_of("wraps", 12)
