import random
import statistics
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.depth import (
    NOT_FITTED,
    Exponent,
    at_dose,
    at_ratio,
    depth_of_dose,
    fit_exponent,
    series,
)
from dyesession.colour.shades import depth_line
from dyesession.colour.trouble import ColourError, NoDye, OutOfRange, OutsideCloth, TooDark, Unlike
from dyesession.colour.viewing import D65_2, D65_10
from tests.colour.shades_of_cloth import INDIGO, MADDER, UNDYED, WELD, is_one_sentence, read, unhurried

DARK, BLACK = Lab(16.0, 1.0, -1.0), Lab(9.0, 1.0, 1.0)


@pytest.mark.parametrize("dye", [MADDER, WELD, INDIGO])
def test_the_plus_minus_grows_away_from_the_sample(dye: Lab) -> None:
    quarter, half, twice, four = series(read(UNDYED), read(dye))
    once = at_ratio(read(UNDYED), read(dye), 1.0)
    assert once.lab == dye and once.plus_minus == 0.5
    assert quarter.plus_minus > half.plus_minus > once.plus_minus < twice.plus_minus < four.plus_minus
    assert quarter.lab.lightness > half.lab.lightness > dye.lightness
    assert dye.lightness > twice.lab.lightness > four.lab.lightness


def test_a_surer_reading_gives_a_surer_depth() -> None:
    sure, unsure = (at_ratio(read(UNDYED), read(MADDER, pm), 2.0).plus_minus for pm in (0.3, 4.0))
    assert sure < 2 < 4 < unsure


def test_the_carried_noise_is_what_noise_really_does() -> None:
    """Readings drawn with noise: nine in ten of the depths worked out lie within the ±."""
    draw = random.Random(4)
    noise, plus_minus = 1.0, 2.5  # Lab units in each direction; the 90 % half-width of three such
    told = at_ratio(read(UNDYED, 0.0), read(MADDER, plus_minus), 2.0)
    misses = []
    for _ in range(150):
        noisy = Lab(*(one + draw.gauss(0, noise) for one in MADDER))
        misses.append(de00(told.lab, depth_line(UNDYED, noisy, D65_2)(2.0)))
    share = statistics.fmean(one <= told.plus_minus for one in misses)
    assert share >= 0.85


def test_a_sample_darker_than_the_theory_covers_is_not_made_deeper() -> None:
    with pytest.raises(TooDark) as refused:
        at_ratio(read(UNDYED), read(BLACK), 2.0)
    assert is_one_sentence(str(refused.value))
    paler = at_ratio(read(UNDYED), read(BLACK), 0.5)
    assert paler.lab.lightness > BLACK.lightness and "rough guess" in paler.notes[0]


def test_the_series_of_too_dark_a_sample_keeps_its_paler_half_and_says_why() -> None:
    shades = series(read(UNDYED), read(BLACK))
    assert [one.ratio for one in shades] == [0.25, 0.5]
    assert all("beyond what the theory of depth covers" in one.notes[-1] for one in shades)
    with pytest.raises(TooDark):
        series(read(UNDYED), read(BLACK), (2.0, 4.0))


def test_the_flags_stand_where_the_theory_wears_thin() -> None:
    assert at_ratio(read(UNDYED), read(Lab(60.0, 30.0, 20.0)), 0.5).notes == ()
    assert "above 9" in at_ratio(read(UNDYED), read(MADDER), 0.5).notes[0]
    assert "above 17" in at_ratio(read(UNDYED), read(DARK), 0.5).notes[0]
    assert "above 25" in at_ratio(read(UNDYED), read(MADDER), 4.0).notes[1]
    assert "nothing was checked" in at_ratio(read(UNDYED), read(Lab(60.0, 30.0, 20.0)), 6.0).notes[-1]


@pytest.mark.parametrize(
    ("undyed", "sample", "ratio", "trouble"),
    [
        (UNDYED, UNDYED, 2.0, NoDye),
        (UNDYED, Lab(92.0, 0.0, 5.0), 2.0, NoDye),
        (UNDYED, MADDER, -1.0, OutOfRange),
        (UNDYED, MADDER, 11.0, OutOfRange),
        (UNDYED, MADDER, float("nan"), OutOfRange),
        (UNDYED, Lab(60.0, 120.0, 20.0), 2.0, OutsideCloth),
        (UNDYED, Lab(0.0, 0.0, 0.0), 0.5, TooDark),
    ],
)
def test_what_cannot_be_worked_out_is_refused_in_one_sentence(
    undyed: Lab, sample: Lab, ratio: float, trouble: type[ColourError]
) -> None:
    with pytest.raises(trouble) as refused:
        at_ratio(read(undyed), read(sample), ratio)
    assert is_one_sentence(str(refused.value))


def test_unlike_and_wet_readings_are_refused() -> None:
    with pytest.raises(Unlike):
        at_ratio(read(UNDYED), replace(read(MADDER), viewing=D65_10), 2.0)
    with pytest.raises(Unlike):
        at_ratio(read(UNDYED), replace(read(MADDER), wet=True), 2.0)


def test_depth_works_for_the_other_observer_too() -> None:
    undyed, sample = (replace(read(lab), viewing=D65_10) for lab in (UNDYED, MADDER))
    found, other = at_ratio(undyed, sample, 2.0), at_ratio(read(UNDYED), read(MADDER), 2.0)
    assert 0 < de00(found.lab, other.lab) < 1.5


@unhurried
@given(st.floats(0.4, 1.1), st.floats(1.5, 6))
def test_the_exponent_comes_back_from_two_depths_of_one_dye(exponent: float, doses: float) -> None:
    deep = Lab(60.0, 30.0, 20.0)
    pale = depth_line(UNDYED, deep, D65_2)(doses**-exponent)
    found = fit_exponent(read(UNDYED), read(pale), 1.0, read(deep), doses)
    assert found.fitted and abs(found.value - exponent) <= found.plus_minus


def test_without_two_depths_dose_is_taken_for_depth_and_the_doubt_is_carried() -> None:
    depth, dose = at_ratio(read(UNDYED), read(MADDER), 2.0), at_dose(read(UNDYED), read(MADDER), 2.0)
    assert dose.lab == depth.lab and dose.plus_minus > depth.plus_minus
    assert NOT_FITTED.value == 1.0 and not NOT_FITTED.fitted


def test_a_fitted_exponent_makes_twice_the_dose_less_than_twice_the_depth() -> None:
    found = at_dose(read(UNDYED), read(MADDER), 2.0, Exponent(0.7, 0.05, True))
    assert found.ratio == pytest.approx(2**0.7) == depth_of_dose(2.0, Exponent(0.7, 0.05, True))
    assert found.plus_minus < at_dose(read(UNDYED), read(MADDER), 2.0).plus_minus
    with pytest.raises(OutOfRange):
        depth_of_dose(0.0)


def test_doses_that_do_not_rise_are_refused() -> None:
    with pytest.raises(OutOfRange) as refused:
        fit_exponent(read(UNDYED), read(MADDER), 20.0, read(MADDER), 10.0)
    assert is_one_sentence(str(refused.value))
