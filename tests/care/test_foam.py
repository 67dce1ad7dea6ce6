"""Gas from carbonates against the room above the liquor."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.care import Situation, foam_litres, reminders


@given(st.floats(0.0, 500.0))
def test_twice_the_chalk_is_twice_the_gas(mass_g):
    assert foam_litres("chalk", 2 * mass_g) == pytest.approx(2 * foam_litres("chalk", mass_g))


def test_washing_soda_is_mostly_water_and_foams_least():
    litres = [foam_litres(name, 10.0) for name in ("washing soda", "soda ash", "chalk", "baking soda")]
    assert litres == sorted(litres)


def test_what_is_no_carbonate_gives_no_gas_and_what_is_unknown_is_said_to_be():
    assert foam_litres("alum", 20.0) == 0.0
    with pytest.raises(LookupError, match="fairy dust"):
        foam_litres("fairy dust", 20.0)


@given(st.floats(0.1, 100.0), st.floats(0.0, 20.0))
def test_the_line_turns_grave_exactly_where_the_gas_outgrows_the_headspace(mass_g, free_l):
    situation = Situation(
        adding=(("chalk", mass_g),), contents=(("tartar", 6.0),), volume_l=4.0, capacity_l=4.0 + free_l
    )
    (line,) = [r for r in reminders(situation) if r.trigger == "foam"]
    room_l = situation.capacity_l - situation.volume_l
    assert (line.severity == 3) == (0.240 * mass_g > room_l)


def test_a_carbonate_of_unknown_mass_is_taken_for_the_worst():
    situation = Situation(
        adding=(("chalk", None),), contents=(("alum", 29.0),), volume_l=1.0, capacity_l=10.0
    )
    (line,) = [r for r in reminders(situation) if r.trigger == "foam"]
    assert line.severity == 3
    assert "up to gas" in line.text
