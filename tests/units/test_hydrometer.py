"""Hydrometer scales."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.units import Ambiguous, UnitError, baume, read_specific_gravity, twaddell


@pytest.mark.parametrize(
    ("typed", "gravity"),
    [("40 Tw", "1.2"), ("25 °Tw", "1.125"), ("20 Twaddell", "1.1"), ("SG 1.2", "1.2"), ("1.2 sg", "1.2")],
)
def test_twaddell_and_plain_gravity(typed: str, gravity: str) -> None:
    assert read_specific_gravity(typed).aim == Fraction(gravity)


@pytest.mark.parametrize("typed", ["32 Be", "32 °Bé", "32 baume", "32 Baumé", "32°Be"])
def test_baume_alone_is_asked_about_because_it_has_four_scales(typed: str) -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_specific_gravity(typed)
    read = [read_specific_gravity(choice.text).aim for choice in unclear.value.choices]
    assert [round(float(gravity), 3) for gravity in read] == [1.283, 1.285, 1.286, 1.279]


@pytest.mark.parametrize(
    "typed", ["32", "", "Tw", "32 Be (150)", "145 Be (145)", "200 Be (144)", "40 Tw 3", "0 SG", "-3 Tw"]
)
def test_what_is_no_reading_is_refused(typed: str) -> None:
    with pytest.raises(UnitError):
        read_specific_gravity(typed)


@given(st.fractions(0, 143, max_denominator=100), st.fractions(0, 143, max_denominator=100))
def test_a_heavier_liquor_reads_higher_on_every_scale(a: Fraction, b: Fraction) -> None:
    light, heavy = sorted((a, b))
    assert twaddell(light) <= twaddell(heavy)
    assert 1 <= baume(light, Fraction(145)) <= baume(heavy, Fraction(145))


def test_the_baume_scale_ends_at_its_modulus() -> None:
    with pytest.raises(ValueError, match="beyond the end"):
        baume(Fraction(145), Fraction(145))
