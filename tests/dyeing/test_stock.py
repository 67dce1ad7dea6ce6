import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.stock import (
    HANDY_ML,
    bath_g_l,
    by_mass_pct,
    diluted_ml,
    dose_g,
    handy_strength_pct,
    percent_of_fibre,
    stays_dissolved,
    stock_g,
    stock_ml,
    water_l,
)

masses = st.floats(0.01, 2000)
percents = st.floats(0.01, 200)


@given(percents, masses)
def test_dose_and_per_cent_of_fibre_undo_each_other(percent: float, fibre: float) -> None:
    assert percent_of_fibre(dose_g(percent, fibre), fibre) == pytest.approx(percent, rel=1e-12)


@given(masses, percents)
def test_stock_volume_and_mass_undo_each_other(grams: float, strength: float) -> None:
    assert stock_g(stock_ml(grams, strength), strength) == pytest.approx(grams, rel=1e-12)


@given(percents, masses, st.floats(5, 100))
def test_dose_over_water_is_the_strength_of_the_bath(percent: float, fibre: float, ratio: float) -> None:
    assert dose_g(percent, fibre) / water_l(fibre, ratio) == pytest.approx(bath_g_l(percent, ratio))


@given(st.floats(1, 1000), st.floats(0.1, 50), st.floats(0.01, 1))
def test_diluting_keeps_what_is_dissolved(volume: float, strong: float, share: float) -> None:
    weak = strong * share
    assert diluted_ml(volume, strong, weak) * weak == pytest.approx(volume * strong, rel=1e-12)


def test_a_swatch_of_a_dyers_test_dyeing() -> None:
    """Beech, The Dyeing of Woollen Fabrics, 1902, pp. 214-215: 5 g of wool, dye 2 %, salt 15 %,
    stocks 5 and 50 g/L.
    """
    assert dose_g(2, 5) == pytest.approx(0.1)
    assert stock_ml(dose_g(2, 5), 0.5) == pytest.approx(20)
    assert stock_ml(dose_g(15, 5), 5) == pytest.approx(15)


def test_one_per_cent_of_fibre_from_a_one_per_cent_stock_is_a_millilitre_a_gram() -> None:
    assert stock_ml(dose_g(1, 87), 1) == pytest.approx(87)


def test_alum_keeps_at_ten_per_cent_and_crystallises_at_fifteen() -> None:
    assert stays_dissolved("potassium alum", 10) is True
    assert stays_dissolved("potassium alum", 15) is False
    assert stays_dissolved("stardust", 15) is None
    assert handy_strength_pct("cream of tartar", 20) is None


@given(st.floats(0.02, 20))
def test_a_handy_stock_gives_a_dose_that_can_be_measured(grams: float) -> None:
    strength = handy_strength_pct("madder extract", grams)
    assert strength is not None
    assert HANDY_ML[0] <= stock_ml(grams, strength) <= HANDY_ML[1]


def test_strength_by_mass_is_a_little_lower() -> None:
    assert by_mass_pct(5.1, 1.02) == pytest.approx(5)


def test_a_solution_cannot_be_diluted_stronger() -> None:
    with pytest.raises(OutOfRange, match="must be the lower"):
        diluted_ml(100, 1, 2)
    with pytest.raises(OutOfRange, match="fibre"):
        percent_of_fibre(10, 0)
