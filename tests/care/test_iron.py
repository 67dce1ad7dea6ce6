"""Iron swallowed: grams against body mass."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.care import DOSE_LIMITS, heptahydrate_grams_for, iron_mg_per_kg

MASSES = st.floats(0.01, 500.0)
BODIES = st.floats(1.0, 150.0)


@given(MASSES, BODIES)
def test_grams_and_milligrams_per_kilogram_undo_each_other(mass_g, body_kg):
    assert heptahydrate_grams_for(iron_mg_per_kg(mass_g, body_kg), body_kg) == pytest.approx(mass_g)


@given(MASSES, BODIES)
def test_half_the_body_is_twice_the_harm(mass_g, body_kg):
    assert iron_mg_per_kg(mass_g, body_kg / 2) == pytest.approx(2 * iron_mg_per_kg(mass_g, body_kg))


@pytest.mark.parametrize("body_kg", [0.0, -1.0, float("nan")])
def test_a_body_without_mass_is_refused(body_kg):
    with pytest.raises(ValueError, match="expected more than 0"):
        heptahydrate_grams_for(20.0, body_kg)
    with pytest.raises(ValueError, match="expected more than 0"):
        iron_mg_per_kg(1.0, body_kg)


def test_iron_is_planned_at_one_to_two_per_cent_and_warned_about_above_four():
    limit = DOSE_LIMITS["ferrous sulphate"]
    assert (limit.planned_low, limit.planned_high, limit.warned_above) == (1.0, 2.0, 4.0)
    assert limit.source
