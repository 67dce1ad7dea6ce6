"""Sums on amounts that were read."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.units import (
    Flat,
    NeedsWeight,
    PerBath,
    Quantity,
    ShareOf,
    ShareOfFibre,
    as_share_of_fibre,
    mass_of_share,
    percent_of_fibre,
    read_dose,
    read_mass,
    repeated,
    split,
    through,
    total,
    within,
)

grams = st.fractions(Fraction(1, 100), 10_000, max_denominator=1000)


@given(grams, grams, grams, grams)
def test_the_share_of_a_range_is_the_widest_it_can_be(
    a: Fraction, b: Fraction, c: Fraction, d: Fraction
) -> None:
    ingredient, fibre = Quantity(min(a, b), max(a, b), "x"), Quantity(min(c, d), max(c, d), "y")
    percent = percent_of_fibre(ingredient, fibre)
    corners = [100 * i / f for i in (a, b) for f in (c, d)]
    assert (percent.low, percent.high) == (min(corners), max(corners))


@given(grams, grams)
def test_weighing_out_a_share_gives_the_share_back(ingredient: Fraction, fibre: Fraction) -> None:
    skein = Quantity(fibre, fibre, "skein")
    percent = percent_of_fibre(Quantity(ingredient, ingredient, "alum"), skein)
    assert mass_of_share(ShareOfFibre(percent.low / 100, percent.high / 100, ""), skein).aim == ingredient


def test_a_share_of_no_fibre_needs_a_weight() -> None:
    with pytest.raises(NeedsWeight, match="needs a weight"):
        percent_of_fibre(read_mass("5 g"), read_mass("0 g"))


@pytest.mark.parametrize(
    ("typed", "sort"), [("5 g", Flat), ("2 g/l", PerBath), ("1/16 of the alum", ShareOf)]
)
def test_a_dose_on_another_base_is_no_share_of_the_fibre(typed: str, sort: type) -> None:
    dose = read_dose(typed)
    assert isinstance(dose, sort)
    with pytest.raises(NeedsWeight, match="needs a weight of fibre"):
        as_share_of_fibre(dose)


def test_a_share_of_a_share_multiplies() -> None:
    soda, alum = read_dose("1/16 of the alum"), read_dose("20 to 25 %")
    assert isinstance(soda, ShareOf) and isinstance(alum, ShareOfFibre)
    assert through(soda, alum) == ShareOfFibre(Fraction(1, 80), Fraction(1, 64), "1/16 of the alum")


def test_amounts_add_end_to_end_and_repeat() -> None:
    added = total([read_mass("5 g"), read_mass("13 to 14 g")])
    assert (added.low, added.high) == (18, 19)
    again = repeated(read_mass("6 to 8 g"), 1, 3)
    assert (again.low, again.high) == (6, 24)
    assert total([]).aim == 0


@given(st.fractions(0, 1000), st.lists(st.integers(0, 9), min_size=1, max_size=5).filter(sum))
def test_a_split_loses_nothing(whole: Fraction, parts: list[int]) -> None:
    assert sum(split(whole, parts)) == whole


def test_a_split_into_no_parts_is_an_error() -> None:
    with pytest.raises(ValueError, match="more than nothing"):
        split(Fraction(1), [0, 0])


def test_a_limit_is_kept_by_the_most_there_may_be_on_the_least_fibre() -> None:
    limit = as_share_of_fibre(read_dose("10 %"))
    assert within([read_mass("9 to 10 g")], read_mass("100 g"), limit)
    assert not within([read_mass("9 to 11 g")], read_mass("100 g"), limit)
    assert not within([read_mass("10 g")], read_mass("99 to 101 g"), limit)
