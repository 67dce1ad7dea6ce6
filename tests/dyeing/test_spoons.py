import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.spoons import (
    DENSITY_G_ML,
    MEASURE_ML,
    WeighInstead,
    refuse_spoons,
    spoonful_g,
    volume_ml,
)

# Millilitres by definition; published tables of measures.
DEFINED = {
    "US tablespoon": 14.78676478125,
    "US fluid ounce": 29.5735295625,
    "US cup": 236.5882365,
    "US quart": 946.352946,
    "imperial fluid ounce": 28.4130625,
    "imperial cup": 284.130625,
    "imperial pint": 568.26125,
    "Australian tablespoon": 20,
}


@pytest.mark.parametrize("measure", DEFINED)
def test_measures_hold_what_they_are_defined_to(measure: str) -> None:
    assert volume_ml(measure, 1) == pytest.approx(DEFINED[measure], rel=1e-12)


@pytest.mark.parametrize(
    ("substance", "low", "high"),
    [
        ("alum, fine", 3.7, 3.9),
        ("alum, lumpy", 4.3, 4.7),
        ("baking soda", 3.4, 4.3),
        ("soda ash, light", 2.5, 3.5),
        ("soda ash, dense", 4.4, 5.9),
        ("citric acid", 4.7, 5.2),
        ("cream of tartar", 3.0, 3.2),
    ],
)
def test_a_level_us_teaspoon(substance: str, low: float, high: float) -> None:
    spoon = spoonful_g(substance, "US teaspoon", 1)
    assert spoon.low_g == pytest.approx(low, abs=0.06)
    assert spoon.high_g == pytest.approx(high, abs=0.06)


@given(
    st.sampled_from(sorted(DENSITY_G_ML)),
    st.sampled_from(sorted(MEASURE_ML)),
    st.floats(0.25, 20),
    st.sampled_from(["level", "rounded", "unknown"]),
)
def test_every_spoonful_is_a_band(substance: str, measure: str, count: float, heap: str) -> None:
    spoon = spoonful_g(substance, measure, count, heap)
    assert 0 < spoon.low_g < spoon.middle_g < spoon.high_g
    assert spoon.source
    level = spoonful_g(substance, measure, count)
    if heap != "level":
        assert spoon.high_g > level.high_g


@pytest.mark.parametrize(
    "substance",
    [
        "iron",
        "Ferrous sulphate heptahydrate",
        "ferrous-sulphate",
        "copper sulphate",
        "lye",
        "sodium_hydroxide",
    ],
)
def test_iron_copper_and_lye_are_weighed(substance: str) -> None:
    with pytest.raises(WeighInstead, match="weigh it"):
        refuse_spoons(substance)


def test_a_small_dose_is_weighed() -> None:
    with pytest.raises(WeighInstead, match="too small for a spoon"):
        spoonful_g("citric acid", "metric teaspoon", 1, percent_of_fibre=1.5)
    assert spoonful_g("citric acid", "metric teaspoon", 1, percent_of_fibre=2).middle_g == pytest.approx(5)


def test_words_that_are_not_known_are_answered() -> None:
    with pytest.raises(OutOfRange, match="US teaspoon"):
        volume_ml("teaspoon", 1)
    with pytest.raises(OutOfRange, match="level, rounded, unknown"):
        spoonful_g("citric acid", "metric teaspoon", 1, "mountainous")
    with pytest.raises(OutOfRange, match="No density is known for cochineal"):
        spoonful_g("cochineal", "metric teaspoon", 1)
