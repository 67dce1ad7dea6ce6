import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.colour.kubelka_munk import (
    at_depth,
    depths_of,
    dye_only,
    fitted_exponent,
    held_at_cloth,
    overdyed,
    spectrum_of,
    strength_of,
)
from dyesession.colour.rebuilt import rebuilt
from dyesession.colour.trouble import ColourError
from dyesession.colour.viewing import D65_2
from tests.colour.shades_of_cloth import MADDER, UNDYED, unhurried

curves = st.tuples(*[st.floats(0.01, 0.95)] * 31)
GROUND, DYED = (depths_of(rebuilt(lab, D65_2)) for lab in (UNDYED, MADDER))


@unhurried
@given(curves)
def test_depth_of_a_curve_and_back(curve: tuple[float, ...]) -> None:
    assert spectrum_of(depths_of(curve)) == pytest.approx(curve, rel=1e-9)


@unhurried
@given(curves, curves)
def test_once_the_depth_is_the_sample_and_none_of_it_the_undyed_fibre(
    ground: tuple[float, ...], dyed: tuple[float, ...]
) -> None:
    undyed, sample = depths_of(ground), depths_of(dyed)
    assert at_depth(undyed, sample, 1.0) == pytest.approx(sample, rel=1e-9)
    assert at_depth(undyed, sample, 0.0) == undyed


@unhurried
@given(st.floats(0, 10), st.floats(1.01, 3))
def test_more_dye_is_darker_in_every_band(ratio: float, more: float) -> None:
    paler, deeper = (spectrum_of(at_depth(GROUND, DYED, one)) for one in (ratio, ratio * more + 0.01))
    assert all(a > b for a, b in zip(paler, deeper, strict=True))


@unhurried
@given(curves, curves, st.floats(0, 10))
def test_a_dye_over_another_never_lightens(
    base: tuple[float, ...], second: tuple[float, ...], amount: float
) -> None:
    dye = dye_only(GROUND, depths_of(second))
    over = spectrum_of(overdyed(depths_of(base), dye, amount))
    assert all(b <= a + 1e-9 for a, b in zip(base, over, strict=True))


@unhurried
@given(st.floats(0.1, 4))
def test_strength_grows_as_the_depth_does(ratio: float) -> None:
    whole = strength_of(dye_only(GROUND, DYED), D65_2)
    assert strength_of(dye_only(GROUND, at_depth(GROUND, DYED, ratio)), D65_2) == pytest.approx(ratio * whole)


@unhurried
@given(st.floats(0.31, 1.19), st.floats(1.5, 8))
def test_the_exponent_of_two_dyeings_is_found(exponent: float, doses: float) -> None:
    assert fitted_exponent(2.0, 1.0, 2.0 * doses**exponent, doses) == pytest.approx(exponent)


def test_an_exponent_beyond_belief_is_held() -> None:
    assert fitted_exponent(1.0, 1.0, 1.01, 4.0) == 0.3
    assert fitted_exponent(1.0, 1.0, 100.0, 4.0) == 1.2


@pytest.mark.parametrize(("pale", "pale_dose", "deep", "dose"), [(1, 2, 2, 2), (1, 0, 2, 2), (0, 1, 2, 2)])
def test_doses_that_do_not_rise_and_samples_without_dye_are_refused(
    pale: float, pale_dose: float, deep: float, dose: float
) -> None:
    with pytest.raises(ColourError) as refused:
        fitted_exponent(pale, pale_dose, deep, dose)
    assert str(refused.value).endswith(".")


def test_a_prediction_is_held_at_the_darkest_cloth_but_not_lighter_than_the_sample() -> None:
    assert held_at_cloth((0.5, 0.001, 0.001), (0.6, 0.1, 0.005)) == (0.5, 0.014, 0.005)


def test_a_light_ground_under_a_dye_that_lightens_is_not_driven_on() -> None:
    """In a band where the sample is lighter than the undyed fibre, ten times the depth is no lighter."""
    undyed, sample = depths_of((0.5, 0.5)), depths_of((0.6, 0.2))
    assert at_depth(undyed, sample, 10.0)[0] == pytest.approx(sample[0])
