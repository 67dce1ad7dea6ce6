"""Doses of modern recipes and old books."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.units import (
    Ambiguous,
    Dose,
    Flat,
    NeedsWeight,
    PerBath,
    ShareOf,
    ShareOfFibre,
    UnitError,
    read_dose,
    read_mass,
    read_volume,
)


def F(text: str) -> Fraction:
    return Fraction(text)


@pytest.mark.parametrize(
    ("typed", "low", "high"),
    [
        ("12 %", "3/25", "3/25"),
        ("12%", "3/25", "3/25"),
        ("12 per cent", "3/25", "3/25"),
        ("12 % WOF", "3/25", "3/25"),
        ("12 % o.w.f.", "3/25", "3/25"),
        ("12 % of the weight of the dry fibre", "3/25", "3/25"),
        ("20 to 40 %", "1/5", "2/5"),
        ("600 %", "6", "6"),
        ("1 oz per lb", "1/16", "1/16"),
        ("1 oz/lb", "1/16", "1/16"),
        ("1 oz to the pound", "1/16", "1/16"),
        ("1 oz to the lb of wool", "1/16", "1/16"),
        ("1 oz for each lb", "1/16", "1/16"),
        ("1 1/2 oz per 2 1/2 lb", "3/80", "3/80"),
        ("3 to 4 oz per lb", "3/16", "1/4"),
        ("2 lb 3 oz per 11 lb", "35/176", "35/176"),
        ("5-6 lb per lb", "5", "6"),
        ("2-3 oz per 4-6 lb", "1/48", "3/64"),
        ("100 g/kg", "1/10", "1/10"),
        ("1 lb per 100 lb", "1/100", "1/100"),
        ("5 parts to 32", "5/32", "5/32"),
        ("5 parts to 32 of cloth", "5/32", "5/32"),
        ("5-6 parts to 16 parts", "5/16", "3/8"),
        ("1 part to 4 of cotton", "1/4", "1/4"),
        ("1/8-1/6 parts to 1 part", "1/8", "1/6"),
        ("1/4 of the wool", "1/4", "1/4"),
        ("2 1/2 times the wool", "5/2", "5/2"),
    ],
)
def test_a_share_of_the_fibre(typed: str, low: str, high: str) -> None:
    assert read_dose(typed) == ShareOfFibre(F(low), F(high), typed)


@pytest.mark.parametrize(
    ("typed", "ingredient", "low", "high"),
    [
        ("6.25 % of alum", "alum", "1/16", "1/16"),
        ("1/16 of the alum", "alum", "1/16", "1/16"),
        ("2 oz per lb of madder", "madder", "1/8", "1/8"),
        ("1 part to 4 of alum", "alum", "1/4", "1/4"),
        ("as much as the alum", "alum", "1", "1"),
        ("10 to 20 % of the weight of the cream of tartar", "cream of tartar", "1/10", "1/5"),
        ("3 % of alum on wool", "alum on wool", "3/100", "3/100"),
    ],
)
def test_a_share_of_another_ingredient(typed: str, ingredient: str, low: str, high: str) -> None:
    assert read_dose(typed) == ShareOf(ingredient, F(low), F(high), typed)


@pytest.mark.parametrize(
    ("typed", "low", "high"),
    [
        ("2 g/l", "2", "2"),
        ("2 g per litre of water", "2", "2"),
        ("1-2 g/l", "1", "2"),
        ("10 g per 5 l", "2", "2"),
        ("1 kg per 500-1000 l of bath", "1", "2"),
    ],
)
def test_a_dose_of_the_bath(typed: str, low: str, high: str) -> None:
    assert read_dose(typed) == PerBath(F(low), F(high), typed)


def test_a_flat_dose_is_grams() -> None:
    assert read_dose("5 g") == Flat(Fraction(5), Fraction(5), "5 g")
    assert read_dose("3 to 4 oz") == Flat(read_mass("3 oz").aim, read_mass("4 oz").aim, "3 to 4 oz")


@pytest.mark.parametrize(
    "typed",
    [
        "a handful",
        "1 tablespoon",
        "2 handfuls",
        "a tablespoon per lb",
        "3 cups",
        "1 oz per 10 yards",
        "1 1/4 lb per 10 yards",
        "1 oz per skein",
        "20 ml",
        "5 ml per l",
        "to shade",
        "some alum",
        "a pinch",
        "2 spoonfuls",
        "1 oz per pail",
        "3 lb per 100",
        "3 lb per wagon",
        "1 US tablespoon",
        "1 oz per piece of cloth",
    ],
)
def test_a_dose_with_no_weight_in_it_needs_one_and_is_never_nothing(typed: str) -> None:
    with pytest.raises(NeedsWeight, match="needs a weight"):
        read_dose(typed)


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("12", "no unit"),
        ("5 roots", "no unit this program knows"),
        ("12 % alum", "left over"),
        ("12 % of", "left over"),
        ("5 parts", "not of how many"),
        ("1 g per 0 g", "divides by nothing"),
        ("1 part to 0", "not of how many"),
        ("5 min", "a time, not a weight"),
        ("2 g/l of wool", "for a volume of"),
        ("2 of the alum", "no unit"),
        ("-5 %", "negative"),
        ("5 g of alum", "left over"),
        ("12 % of 240 g wool", "names nothing"),
        ("1 oz per lb per lb", "left over"),
    ],
)
def test_a_dose_that_does_not_hang_together_is_refused(typed: str, why: str) -> None:
    with pytest.raises(UnitError, match=why) as error:
        read_dose(typed)
    assert not isinstance(error.value, Ambiguous | NeedsWeight)


@pytest.mark.parametrize(
    "typed", ["1 oz per gallon", "2 oz/gal", "1 drachm per lb", "1 dram per gallon", "1,500 g"]
)
def test_an_unclear_unit_in_a_dose_is_asked_about(typed: str) -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_dose(typed)
    read: list[Dose] = [read_dose(choice.text) for choice in unclear.value.choices]
    assert len({(dose.low, type(dose)) for dose in read}) == len(read) >= 2


def test_an_ounce_to_ten_pounds_may_be_a_rate_or_a_range() -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_dose("1 oz to 10 lb")
    rate, between = (read_dose(choice.text) for choice in unclear.value.choices)
    assert isinstance(rate, ShareOfFibre) and rate.low == Fraction(1, 160)
    assert between == Flat(read_mass("1 oz").aim, read_mass("10 lb").aim, unclear.value.choices[1].text)


def test_a_gallon_in_a_dose_is_the_gallon_named() -> None:
    dose = read_dose("1 oz per imperial gallon")
    assert isinstance(dose, PerBath)
    assert dose.low == read_mass("1 oz").aim / read_volume("1 imperial gallon").aim


@given(st.fractions(0, 10, max_denominator=64), st.fractions(0, 10, max_denominator=64))
def test_percent_and_ounces_per_pound_agree(a: Fraction, b: Fraction) -> None:
    low, high = min(a, b), max(a, b)
    old, new = read_dose(f"{low} to {high} oz per lb"), read_dose(f"{low * 25 / 4} to {high * 25 / 4} %")
    assert (old.low, old.high) == (new.low, new.high) == (low / 16, high / 16)
