import math
import warnings

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.colour.cielab import Lab, lab_of_lch, lab_of_xyz, xyz_of_lab
from dyesession.colour.srgb import decoded, encoded, lab_of_linear, linear_of_lab, luminance
from tests.colour.shades_of_cloth import any_lab, unhurried

WHITE = (0.950174, 1.0, 1.088128)


@unhurried
@given(any_lab)
def test_a_lab_goes_to_xyz_and_back(lab: Lab) -> None:
    assert lab_of_xyz(xyz_of_lab(lab, WHITE), WHITE) == pytest.approx(lab, abs=1e-9)


@unhurried
@given(any_lab)
def test_a_lab_goes_to_lightness_chroma_and_hue_and_back(lab: Lab) -> None:
    assert lab_of_lch(lab.lightness, lab.chroma, lab.hue_deg) == pytest.approx(lab, abs=1e-9)
    assert (lab.chroma >= 0 and 0 <= lab.hue_deg < 360) or math.isclose(lab.hue_deg, 360)


def test_a_white_is_exactly_white_and_black_exactly_black() -> None:
    assert lab_of_xyz(WHITE, WHITE) == pytest.approx((100, 0, 0), abs=1e-12)
    assert lab_of_xyz((0.0, 0.0, 0.0), WHITE) == pytest.approx((0, 0, 0), abs=1e-12)


@unhurried
@given(any_lab)
def test_a_lab_goes_to_a_screens_light_and_back(lab: Lab) -> None:
    assert lab_of_linear(linear_of_lab(lab)) == pytest.approx(lab, abs=1e-7)


@unhurried
@given(st.floats(0, 1))
def test_a_stored_channel_is_decoded_and_encoded(share: float) -> None:
    assert encoded(decoded(share)) == pytest.approx(share, abs=1e-6)


@unhurried
@given(st.floats(0, 1))
def test_a_grey_has_no_colour(light: float) -> None:
    grey = lab_of_linear((light, light, light))
    assert grey.chroma < 1e-9
    assert luminance((light, light, light)) == pytest.approx(light)


# Lab (D65, 2 degrees) of hex colours as two other programs give them; they differ among themselves by 0.021.
@pytest.mark.parametrize(
    ("hexed", "lab"),
    [
        ("#ffffff", (100, 0, 0)),
        ("#808080", (53.585, 0, 0)),
        ("#7a2f3b", (30.6093, 33.8096, 9.3615)),
        ("#e3c16f", (79.3969, 1.9401, 45.4591)),
        ("#2b3f5c", (26.2774, 1.3616, -19.7161)),
    ],
)
def test_a_hex_has_the_lab_that_other_programs_give_it(hexed: str, lab: tuple[float, ...]) -> None:
    shares = [int(hexed[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    assert lab_of_linear(tuple(decoded(one) for one in shares)) == pytest.approx(lab, abs=0.03)
    assert _colour_science(shares) == pytest.approx(lab, abs=0.03)


def _colour_science(shares: list[float]) -> list[float]:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from colour import XYZ_to_Lab, sRGB_to_XYZ

        return [float(one) for one in XYZ_to_Lab(sRGB_to_XYZ(shares))]
