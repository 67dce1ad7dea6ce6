import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.exhaustion import (
    dip,
    exhausted_share,
    partition_factor,
    partition_from_share,
    partition_from_share_left,
    share_left_after,
    share_left_in_bath,
    successive_dips,
)
from dyesession.dyeing.limits import OutOfRange

partitions = st.floats(0.01, 5000)
ratios = st.floats(1, 200)
masses = st.floats(1, 2000)


@given(partitions, ratios)
def test_share_and_partition_undo_each_other(partition: float, ratio: float) -> None:
    assert partition_from_share(exhausted_share(partition, ratio), ratio) == pytest.approx(
        partition, rel=1e-9
    )


@given(partitions, ratios, st.floats(1.01, 5))
def test_more_water_leaves_more_in_the_bath(partition: float, ratio: float, more: float) -> None:
    assert exhausted_share(partition, ratio * more) < exhausted_share(partition, ratio)


def test_doubling_the_water_hurts_a_weakly_held_dye_more() -> None:
    weak, strong = (exhausted_share(k, 30) / exhausted_share(k, 60) for k in (20, 200))
    assert weak > 1.4 > 1.15 > strong


def test_a_partition_read_from_the_bath_carries_its_error() -> None:
    read = partition_from_share_left(0.2, 30, 0.05)
    assert read.l_per_kg == pytest.approx(120)
    assert read.relative_error == pytest.approx(0.3125)


@given(st.floats(0.05, 0.95), ratios)
def test_the_error_of_a_partition_is_the_slope_of_its_formula(left: float, ratio: float) -> None:
    step = 1e-6
    up = partition_from_share_left(left + step, ratio, 0).l_per_kg
    down = partition_from_share_left(left - step, ratio, 0).l_per_kg
    here = partition_from_share_left(left, ratio, step)
    assert here.relative_error == pytest.approx(abs(up - down) / 2 / here.l_per_kg, rel=1e-5)


def test_evaporation_between_the_readings_is_allowed_for() -> None:
    assert share_left_in_bath(1.0, 0.25, 4.0, 3.2) == pytest.approx(0.2)


def test_a_bath_that_gained_colour_is_refused_in_words() -> None:
    with pytest.raises(OutOfRange, match=r"for example 0\.2"):
        share_left_in_bath(1.0, 1.1, 4.0, 4.0)


def test_an_exothermic_dye_is_held_less_when_hotter_and_an_endothermic_one_more() -> None:
    assert partition_factor(-20, 333.15, 363.15) < 1 < partition_factor(18.03, 333.15, 363.15)
    assert partition_factor(18.03, 333.15, 363.15) * partition_factor(18.03, 363.15, 333.15) == pytest.approx(
        1
    )


@given(
    st.floats(0, 100),
    st.floats(0.5, 20),
    st.lists(masses, min_size=1, max_size=6),
    partitions,
    st.floats(0, 6),
)
def test_no_colour_is_lost_in_a_row_of_dips(
    colour: float, volume: float, fibres: list[float], partition: float, held: float
) -> None:
    dips = successive_dips(colour, volume, fibres, partition, held, topping_up_l=0.5)
    out = math.fsum(one.on_fibre_g + one.carried_out_g for one in dips)
    assert out + dips[-1].left_g == pytest.approx(colour, rel=1e-12, abs=1e-12)


@given(st.floats(0.5, 20), st.lists(masses, min_size=1, max_size=6), partitions)
def test_without_carrying_out_dips_multiply(volume: float, fibres: list[float], partition: float) -> None:
    dips = successive_dips(10, volume, fibres, partition, 0)
    expected = 10 * share_left_after(partition, [volume * 1000 / g for g in fibres])
    assert dips[-1].left_g == pytest.approx(expected, rel=1e-9, abs=1e-12)


def test_fibre_that_could_hold_more_than_the_bath_leaves_with_all_of_it() -> None:
    soaked = dip(10, 0.2, 100, 60, 5)
    assert soaked.left_volume_l == 0
    assert soaked.left_g == pytest.approx(0, abs=1e-12)


def test_an_assumed_share_of_nine_tenths_leaves_nothing_for_a_fifth_dyeing() -> None:
    partition = partition_from_share(0.9, 30)
    assert share_left_after(partition, [30] * 4) < 0.001
    assert share_left_after(partition_from_share(0.53, 30), [30] * 4) == pytest.approx(0.0488, abs=1e-4)


@pytest.mark.parametrize(("partition", "ratio"), [(-1, 30), (60, 0), (math.nan, 30), (60, math.inf)])
def test_impossible_numbers_are_refused(partition: float, ratio: float) -> None:
    with pytest.raises(OutOfRange, match="for example"):
        exhausted_share(partition, ratio)


def test_a_share_of_one_leaves_no_partition() -> None:
    with pytest.raises(OutOfRange, match="below 1"):
        partition_from_share(1, 30)
