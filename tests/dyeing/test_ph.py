import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.ph import (
    ACIDS,
    WINDOWS,
    acid_by_rule_g_l,
    acid_for_ph_g_l,
    mean_charge,
    ph_with_acid,
    vinegar_ml,
)

DOSES = (0.05, 0.1, 0.2, 0.5, 1, 2, 5)
# pH by acid and alkalinity at each of DOSES in g/L; worked out apart from this program.
WORKED_OUT = [
    ("citric", 0, (3.66, 3.43, 3.22, 2.97, 2.78, 2.61, 2.39)),
    ("citric", 50, (6.14, 5.22, 4.03, 3.26, 2.95, 2.71, 2.45)),
    ("citric", 100, (6.60, 6.14, 5.21, 3.67, 3.14, 2.82, 2.51)),
    ("citric", 200, (6.93, 6.60, 6.14, 4.76, 3.61, 3.05, 2.63)),
    ("citric", 300, (7.10, 6.80, 6.43, 5.55, 4.22, 3.30, 2.75)),
    ("acetic", 0, (3.95, 3.79, 3.63, 3.43, 3.27, 3.12, 2.92)),
    ("acetic", 50, (5.82, 4.91, 4.41, 3.94, 3.65, 3.40, 3.10)),
    ("acetic", 200, (6.87, 6.48, 5.82, 4.71, 4.26, 3.90, 3.49)),
    ("acetic", 300, (7.05, 6.72, 6.26, 5.09, 4.50, 4.10, 3.66)),
    ("tartaric", 0, (3.52, 3.30, 3.09, 2.84, 2.65, 2.48, 2.26)),
    ("tartaric", 100, (6.61, 6.04, 4.41, 3.30, 2.91, 2.64, 2.35)),
    ("tartaric", 300, (7.14, 6.84, 6.42, 4.83, 3.57, 2.98, 2.53)),
]
# Acid, pH wanted, mean charge, g/L at alkalinity 100 and 300, simple rule at 200.
DOSED = [
    ("citric", 6, 2.234, 0.117, 0.351, 0.344),
    ("citric", 5, 1.660, 0.222, 0.664, 0.464),
    ("citric", 4.5, 1.326, 0.290, 0.861, 0.584),
    ("citric", 3.5, 0.749, 0.593, 1.616, 1.106),
    ("acetic", 6, 0.946, 0.086, 0.259, 0.254),
    ("acetic", 4.5, 0.357, 0.337, 1.000, 0.678),
    ("acetic", 3.5, 0.053, 2.642, 7.202, 4.929),
    ("tartaric", 5, 1.817, 0.159, 0.474, 0.331),
    ("tartaric", 4, 1.233, 0.254, 0.739, 0.499),
]

acids = st.sampled_from(sorted(ACIDS))


@pytest.mark.parametrize(("acid", "alkalinity", "values"), WORKED_OUT)
def test_ph_of_an_acid_in_tap_water(acid: str, alkalinity: float, values: tuple[float, ...]) -> None:
    for dose, value in zip(DOSES, values, strict=True):
        assert ph_with_acid(acid, dose, alkalinity) == pytest.approx(value, abs=0.012)


@pytest.mark.parametrize(("acid", "target", "charge", "at_100", "at_300", "rule"), DOSED)
def test_doses_for_a_ph(
    acid: str, target: float, charge: float, at_100: float, at_300: float, rule: float
) -> None:
    assert mean_charge(acid, target) == pytest.approx(charge, abs=6e-4)
    assert acid_for_ph_g_l(acid, target, 100) == pytest.approx(at_100, abs=0.0015)
    assert acid_for_ph_g_l(acid, target, 300) == pytest.approx(at_300, abs=0.0015)
    assert acid_by_rule_g_l(acid, target, 200) == pytest.approx(rule, abs=0.0015)


@given(acids, st.floats(3, 6.5), st.floats(20, 400))
def test_the_dose_for_a_ph_gives_that_ph(acid: str, target: float, alkalinity: float) -> None:
    assert ph_with_acid(acid, acid_for_ph_g_l(acid, target, alkalinity), alkalinity) == pytest.approx(target)


@given(acids, st.floats(0.01, 5), st.floats(1.01, 3), st.floats(0, 400))
def test_more_acid_lowers_the_ph_and_more_alkalinity_raises_it(
    acid: str, dose: float, more: float, alkalinity: float
) -> None:
    here = ph_with_acid(acid, dose, alkalinity)
    assert ph_with_acid(acid, dose * more, alkalinity) < here
    assert ph_with_acid(acid, dose, alkalinity + 20) > here


def test_water_is_neutral_without_anything_and_needs_no_acid_when_sour_enough() -> None:
    assert ph_with_acid("citric", 0, 0) == pytest.approx(7, abs=1e-6)
    assert acid_for_ph_g_l("citric", 9, 100) == 0


def test_vinegar_for_half_past_four_in_hard_water() -> None:
    assert vinegar_ml(acid_for_ph_g_l("acetic", 4.5, 200), 5) == pytest.approx(13.4, abs=0.1)


def test_every_window_says_it_has_no_source() -> None:
    for low, high, source in WINDOWS.values():
        assert 2 < low < high < 12
        assert source == "common practice, no source"


def test_unknown_acids_and_wild_targets_are_refused() -> None:
    with pytest.raises(OutOfRange, match="citric, acetic, tartaric"):
        ph_with_acid("oxalic", 1, 100)
    with pytest.raises(OutOfRange, match="pH wanted"):
        acid_for_ph_g_l("citric", 0.5, 100)
