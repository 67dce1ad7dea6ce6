import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.hardness import (
    UNIT_MG_L,
    alkalinity_eaten_by_alum_mg_l,
    alkalinity_guess_mg_l,
    chalk_g_for,
    from_mg_l,
    hardness_class,
    in_mg_l,
)
from dyesession.dyeing.limits import OutOfRange

# mg/L CaCO3 for one of each; worked out apart from this program from definitions and atomic masses.
WORKED_OUT = {
    "mg/L": 1,
    "mmol/L": 100.086,
    "meq/L": 50.043,
    "German degree": 17.84796,
    "French degree": 10,
    "Clark degree": 14.25377,
    "grain per US gallon": 17.11806,
    "mg/L calcium": 2.49728,
    "mg/L magnesium": 4.11792,
}


@pytest.mark.parametrize("unit", UNIT_MG_L)
def test_units_come_from_their_definitions(unit: str) -> None:
    assert in_mg_l(1, unit) == pytest.approx(WORKED_OUT[unit], rel=1e-5)


@given(st.floats(0, 1000), st.sampled_from(sorted(UNIT_MG_L)))
def test_units_convert_there_and_back(amount: float, unit: str) -> None:
    assert from_mg_l(in_mg_l(amount, unit), unit) == pytest.approx(amount, rel=1e-12)


@pytest.mark.parametrize(
    ("mg_l", "word"),
    [
        (0, "soft"),
        (60, "soft"),
        (61, "moderately hard"),
        (120, "moderately hard"),
        (180, "hard"),
        (181, "very hard"),
    ],
)
def test_classes(mg_l: float, word: str) -> None:
    assert hardness_class(mg_l) == word


def test_hardness_only_brackets_alkalinity() -> None:
    assert alkalinity_guess_mg_l(200) == (120, 160, 200)


def test_a_gram_of_alum_can_use_up_316_of_alkalinity() -> None:
    assert alkalinity_eaten_by_alum_mg_l(1) == pytest.approx(316, abs=1)


def test_chalk_adds_its_own_weight_of_hardness() -> None:
    assert chalk_g_for(100, 4) == pytest.approx(0.4)


def test_an_unknown_unit_is_refused() -> None:
    with pytest.raises(OutOfRange, match="German degree"):
        in_mg_l(5, "dH")
