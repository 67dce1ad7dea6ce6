"""A dyer's question at the stove: how much iron, with a small child in the house? Through the real plan."""

import pytest
from care.shipped import KITCHENS, RECIPES

from dyesession.care import Situation, first_aid_for
from dyesession.plan import lots_from_text, plan_for_log, work_out
from dyesession.recipe import load_recipe


@pytest.fixture(scope="module")
def plan():
    recipe = load_recipe(RECIPES["iron-saddening"])
    return work_out(
        recipe, lots_from_text(["120 g wool, washed and air-dry"], "wool"), KITCHENS["with a child"]
    )


def test_the_dose_says_what_the_scale_would_miss_and_how_to_do_better(plan):
    say = plan.dose("iron").weigh.say
    assert plan.dose("iron").mass_g.aim == pytest.approx(2.4)
    assert say.startswith(
        "2.4 g; your 1 g scale could miss that by 1.3 g. Dissolve 10 g to 1 L and add 120 mL"
    )
    assert "with the fibre lifted, ten minutes, look; up to 120 mL more (± 13 %)" in say


def test_the_child_is_reckoned_with_at_the_step_where_the_iron_is_in_hand(plan):
    said = [one.text for one in plan.reminders if one.step == "sadden"]
    assert said[0] == "1.2 g iron for B: lock the rest up; 1.2 g swallowed can make a 12 kg child ill."
    assert "1.2 g iron for B: its pot, spoon and gloves serve iron alone, never food." in said


def test_any_swallowed_goes_straight_to_the_poison_centre_by_its_number():
    step = Situation(
        letter="B",
        actions=("weighs powder", "adds"),
        adding=(("ferrous sulphate", 1.2),),
        household=KITCHENS["with a child"].household,
    )
    assert first_aid_for(step, "0123 456") == (
        "Any swallowed: ring your poison centre (0123 456) at once, before any sign shows."
    )


def test_of_the_child_nothing_is_written_to_the_log(plan):
    assert "child" in str(plan.reminders)
    assert "child ill" not in str(plan_for_log(plan)["reminders"])
