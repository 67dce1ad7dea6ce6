"""The plain data reminders are made from."""

import pytest

from dyesession.care import Household, OtherVessel, Situation
from dyesession.care.scene import grams, scene_of


def test_an_action_nobody_knows_is_an_error_not_a_silence():
    with pytest.raises(ValueError, match="unknown action 'strain'"):
        Situation(actions=("strain",))


def test_a_burner_nobody_knows_is_an_error_not_a_silence():
    with pytest.raises(ValueError, match="unknown burner 'campfire'"):
        Situation(burner="campfire")


def test_a_child_nobody_has_weighed_counts_as_ten_kilograms():
    assert Household(children=True).smallest() == ("child", 10.0)
    assert Household(child_kg=30.0, pets=True).smallest() == ("pet", 10.0)
    assert Household(child_kg=8.0, pets=True).smallest() == ("child", 8.0)
    assert Household().smallest() is None


def test_masses_are_said_as_a_dyer_says_them():
    said = [grams(mass_g) for mass_g in (36.0, 9.96, 2.4, 2.0, 0.07, 0.01)]
    assert said == ["36 g", "10 g", "2.4 g", "2 g", "0.1 g", "0.01 g"]


def test_a_pot_without_a_letter_is_called_by_its_word():
    assert scene_of(Situation(letter="", vessel="dye pot")).pot == "the dye pot"


def test_the_bath_poured_into_is_known_only_while_pouring():
    others = (OtherVessel("C", (("alum", 29.0),)),)
    assert scene_of(Situation(actions=("pours",), into="C", other_vessels=others)).target
    assert not scene_of(Situation(actions=("heats",), into="C", other_vessels=others)).target
