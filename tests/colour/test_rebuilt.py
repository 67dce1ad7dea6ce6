import pytest
from hypothesis import given

from dyesession.colour.cielab import Lab
from dyesession.colour.rebuilt import rebuilt, seen
from dyesession.colour.trouble import ColourError, OutsideCloth, TooDark
from dyesession.colour.viewing import D65_2, D65_10, Viewing
from tests.colour.shades_of_cloth import cloth, is_one_sentence, unhurried


@unhurried
@given(cloth)
def test_a_rebuilt_curve_looks_like_its_lab(lab: Lab) -> None:
    for viewing in (D65_2, D65_10):
        curve = rebuilt(lab, viewing)
        assert all(0 < share < 1 for share in curve)
        assert seen(curve, viewing) == pytest.approx(lab, abs=1e-6)


@unhurried
@given(cloth)
def test_no_small_change_of_a_rebuilt_curve_is_smoother(lab: Lab) -> None:
    """The slope of the curve's hyperbolic tangent is at its least among curves of the same colour."""
    import math

    import numpy

    from dyesession.colour.spectral_weights import weights_for

    curve = rebuilt(lab, D65_2)
    z = numpy.array([math.atanh(2 * share - 1) for share in curve])
    slope = 2 * (numpy.diff(z, prepend=z[0]) - numpy.diff(z, append=z[-1]))
    seen_by = numpy.array(weights_for(D65_2)) * ((1 - numpy.tanh(z) ** 2) / 2)[:, None]
    # At the optimum the slope is a mix of the three columns of what changes X, Y and Z.
    mix, *_ = numpy.linalg.lstsq(seen_by, slope, rcond=None)
    assert numpy.abs(seen_by @ mix - slope).max() < 1e-7


def test_white_is_a_curve_of_ones() -> None:
    assert rebuilt(Lab(100.0, 0.0, 0.0), D65_2) == (1.0,) * 31


@pytest.mark.parametrize("lab", [(60, 120, 20), (50, 0, 120), (99, 40, 0), (50, 200, -200)])
def test_a_colour_no_cloth_can_show_is_refused_in_one_sentence(lab: tuple[float, ...]) -> None:
    with pytest.raises(OutsideCloth) as refused:
        rebuilt(Lab(*map(float, lab)), D65_2)
    assert is_one_sentence(str(refused.value))


def test_black_itself_is_refused_in_one_sentence() -> None:
    with pytest.raises(TooDark) as refused:
        rebuilt(Lab(0.0, 0.0, 0.0), D65_2)
    assert is_one_sentence(str(refused.value))


def test_a_light_without_weights_is_refused_in_one_sentence() -> None:
    with pytest.raises(ColourError) as refused:
        rebuilt(Lab(50.0, 0.0, 0.0), Viewing("D50", 2))
    assert is_one_sentence(str(refused.value))
