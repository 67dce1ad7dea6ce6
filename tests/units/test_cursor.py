"""Figures as people write them."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.units import Ambiguous, UnitError, read_mass
from dyesession.units.cursor import tokenise


@pytest.mark.parametrize(
    ("written", "grams"),
    [
        ("240 g", 240),
        ("2.5 g", Fraction(5, 2)),
        ("2,5 g", Fraction(5, 2)),
        (".5 g", Fraction(1, 2)),
        ("0,125 g", Fraction(1, 8)),
        ("1234,567 g", Fraction("1234.567")),
        ("1/4 g", Fraction(1, 4)),
        ("5/2 g", Fraction(5, 2)),
        ("1 1/2 g", Fraction(3, 2)),
        ("1½ g", Fraction(3, 2)),
        ("1 ½ g", Fraction(3, 2)),
        ("¼ g", Fraction(1, 4)),
        ("⅓ g", Fraction(1, 3)),
        ("1⁄2 g", Fraction(1, 2)),
        ("12 7/8 g", Fraction(103, 8)),
        ("0 g", 0),
    ],
)
def test_a_figure_reads_exactly_as_written(written: str, grams: Fraction) -> None:
    assert read_mass(written).low == read_mass(written).high == grams


@pytest.mark.parametrize(
    ("written", "why"),
    [
        ("-5 g", "negative"),
        ("−5 g", "negative"),
        ("5 to -3 g", "negative"),
        ("nan g", "no number"),
        ("inf g", "no number"),
        ("1e999 g", "exponent"),
        ("1e3 g", "exponent"),
        ("1e-3 g", "exponent"),
        ("1000000001 g", "larger than a thousand million"),
        ("9" * 150 + " g", "larger than a thousand million"),
        ("1/0 g", "divides by nothing"),
        ("1 3/2 g", "one or more after a whole number"),
        ("1.5/2 g", "mixes a decimal with a fraction"),
        ("1.5 1/2 g", "no unit"),
        ("1.5.2 g", "more than one comma or point"),
        ("1,000.5 g", "more than one comma or point"),
        ("1,000,000 g", "more than one comma or point"),
        ("٣ g", "no number"),
        ("x" * 201, "characters long"),
        ("1000000 tonne", "more than any kitchen holds"),
        ("+5 g", "does not begin with a number"),
        ("about 5 g", "does not begin with a number"),
    ],
)
def test_a_figure_that_means_nothing_is_refused_with_its_reason(written: str, why: str) -> None:
    with pytest.raises(UnitError, match=why):
        read_mass(written)


def test_a_thousand_with_a_comma_is_asked_about() -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_mass("1,000 g")
    assert [read_mass(choice.text).aim for choice in unclear.value.choices] == [1000, 1]


def test_a_comma_before_three_figures_after_a_nought_is_a_decimal() -> None:
    assert read_mass("0,250 g").aim == Fraction(1, 4)


def test_a_dash_between_a_whole_and_a_half_is_asked_about() -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_mass("3-1/2 oz")
    one_figure, a_range = (read_mass(choice.text) for choice in unclear.value.choices)
    assert one_figure == read_mass("3 1/2 oz") and not one_figure.is_range
    assert (a_range.low, a_range.high) == (read_mass("1/2 oz").aim, read_mass("3 oz").aim)


@given(st.text(max_size=60))
def test_every_character_belongs_to_one_mark(text: str) -> None:
    tokens = tokenise(text)
    covered = "".join(token.text for token in tokens)
    spaces = {" ", "\t", "\u00a0", "\u2007", "\u2009", "\u202f"}
    assert [c for c in covered if c not in spaces] == [c for c in text if c not in spaces]


@given(st.integers(0, 10**6), st.integers(1, 10**4), st.integers(1, 10**4))
def test_whole_and_fraction_add_up_exactly(whole: int, above: int, below: int) -> None:
    part = Fraction(min(above, below), max(above, below) + 1)
    assert read_mass(f"{whole} {part.numerator}/{part.denominator} g").aim == whole + part


@given(st.decimals(0, 10**6, places=5))
def test_a_decimal_reads_exactly(value: object) -> None:
    written = f"{value:f}"
    assert read_mass(f"{written} g").aim == Fraction(written)
