"""What a day by each shipped recipe is told: what it must, what it must not, and how often it is asked."""

import re

import pytest
from care.shipped import KITCHENS, RECIPES, lines, planned
from days import Day

from dyesession.care import ASKS_PER_DAY, TRIGGERS
from dyesession.session import events as e

IRON, MADDER, COCHINEAL = "iron-saddening", "madder-brick-red-on-wool", "cochineal-crimson-on-wool"
COTTON, WALNUT = "madder-red-over-tannin-and-alum-on-cotton", "walnut-brown-without-mordant"
ORDINARY = "ordinary"

# trigger: the (recipe, kitchen, fibre) that raises it, what is said, one near it that does not
FIRED = {
    "insect dye": ((COCHINEAL, ORDINARY, ""), "its dust can start asthma", (MADDER, ORDINARY, "")),
    "hot liquor": (
        (MADDER, ORDINARY, ""),
        "C, 2.4 L, is at 70 °C: one second burns",
        None,  # every recipe has a hot step; the near miss is the cold alum below
    ),
    "vent the lid": (
        (COTTON, ORDINARY, ""),
        "C is lidded and 1.9 g soda ash in it gives off gas",
        (COTTON, "no lids", ""),
    ),
    "foam": ((COTTON, ORDINARY, ""), "soda ash on alum in C", (MADDER, ORDINARY, "")),
    "iron at home": (
        (IRON, "with a child", "120 g wool"),
        "1.2 g swallowed can make a 12 kg child ill",
        (IRON, ORDINARY, "120 g wool"),
    ),
    "metal pot": ((MADDER, "bare aluminium", ""), "29 g alum in bare aluminium", (MADDER, ORDINARY, "")),
    "pot shifts the shade": (
        (MADDER, "bare aluminium", ""),
        "the pot itself brightens the shade",
        (MADDER, ORDINARY, ""),
    ),
    "heavy pot": (
        (MADDER, "big pots", "1000 g wool"),
        "C and its liquor weigh about",
        (MADDER, ORDINARY, ""),
    ),
    "boil-over": ((COTTON, ORDINARY, ""), "madder at 90 °C in D can boil over", (MADDER, ORDINARY, "")),
    "goggles": ((MADDER, ORDINARY, ""), "14 g wash for A: hard on eyes", (WALNUT, ORDINARY, "")),
    "madder dust": ((MADDER, ORDINARY, ""), "120 g madder for C: mask on", (COCHINEAL, ORDINARY, "")),
    "dust": ((MADDER, ORDINARY, ""), "29 g alum for B: mask on", (WALNUT, ORDINARY, "")),
    "chopping": (
        ("weld-yellow-on-wool", ORDINARY, ""),
        "180 g weld for C dusts",
        ("fresh-weld-yellow-on-wool", ORDINARY, ""),
    ),
    "hot alkali on wool": (
        (COTTON, ORDINARY, "240 g wool"),
        "12 g soda ash in A at 90 °C harms the wool",
        (COTTON, ORDINARY, ""),
    ),
    "walnut stain": ((WALNUT, ORDINARY, ""), "stains skin for weeks", (MADDER, ORDINARY, "")),
    "iron pot": ((IRON, ORDINARY, ""), "serve iron alone", (MADDER, ORDINARY, "")),
    "cool-down": ((MADDER, ORDINARY, ""), "Bare hands in D only when cool", None),
    "not food": ((MADDER, ORDINARY, ""), "29 g alum for B: from now on", (IRON, ORDINARY, "")),
}

# No shipped recipe brings the substance, the lid, the strength or the kept bath that these speak of, and no
# plan fills a pot above two thirds.
NEVER_FIRED = {
    "never mix", "refused", "unknown substance", "lye into water", "damp powder", "too strong", "lock it up",
    "looks like juice", "past its date", "off unless chosen", "near a flame", "ammonia fumes", "open air",
    "powder at the boil", "superheated jar", "opened again", "sealed and warm", "put by", "grinding",
    "iron dose", "full pot", "thrown away", "hot vinegar", "foul vat", "iron and tannin",
    "drifted",
    "fuel stove indoors",  # such a kitchen is refused before anything is planned
}  # fmt: skip


def test_every_trigger_is_either_fired_by_a_recipe_or_known_not_to_be():
    assert set(FIRED) | NEVER_FIRED == set(TRIGGERS)
    assert not set(FIRED) & NEVER_FIRED


@pytest.mark.parametrize("trigger", FIRED)
def test_a_shipped_recipe_raises_it(trigger):
    raising, said, _ = FIRED[trigger]
    found = lines(planned(*raising), trigger)
    assert any(said in one for one in found), found


@pytest.mark.parametrize("trigger", [one for one, (_, _, near) in FIRED.items() if near is not None])
def test_a_recipe_or_kitchen_nearby_does_not(trigger):
    assert lines(planned(*FIRED[trigger][2]), trigger) == []


@pytest.mark.parametrize("recipe", RECIPES)
def test_nothing_is_raised_that_no_recipe_was_thought_to_raise(recipe):
    for kitchen in KITCHENS:
        raised = {one.trigger for one in planned(recipe, kitchen).reminders}
        assert not raised & NEVER_FIRED, kitchen


@pytest.mark.parametrize("recipe", RECIPES)
def test_a_step_says_no_two_lines_alike(recipe):
    plan = planned(recipe, "with a child")
    for step in plan.steps:
        said = [one for one in plan.reminders if one.step == step.name]
        assert len({one.trigger for one in said}) == len(said), step.name
        assert len({_without_numbers(one.text) for one in said}) == len(said), step.name


def _without_numbers(text):
    return re.sub(r"\d[\d.]*", "#", text)


@pytest.mark.parametrize("recipe", RECIPES)
def test_a_step_speaks_only_of_its_own_pot(recipe):
    plan = planned(recipe, "ordinary")
    letters = {one.name: one.letter for one in plan.vessels}
    for one in plan.reminders:
        named = set(re.findall(r"(?<!°)\b[A-F]\b", one.text))
        assert named == {letters[plan.step(one.step).vessel]}, one.text


@pytest.mark.parametrize("recipe", RECIPES)
def test_an_ordinary_day_has_no_line_that_cannot_apply(recipe):
    """No child, no allergy, stainless pots with room, an electric ring: nothing of what these speak of."""
    raised = {one.trigger for one in planned(recipe, "ordinary").reminders}
    assert not raised & {"iron at home", "fuel stove indoors", "metal pot", "pot shifts the shade"}
    if recipe != IRON and "cutch" not in recipe:
        assert "iron pot" not in raised


@pytest.mark.parametrize("recipe", RECIPES)
def test_never_for_food_is_said_once_in_a_day(recipe):
    plan = planned(recipe, "ordinary")
    said = [one for one in plan.reminders if "food" in one.text]
    iron = [one for one in said if one.trigger == "iron pot"]
    assert len(said) - len(iron) == (0 if recipe == IRON else 1)
    assert len(iron) == (1 if "iron" in {dose.ingredient for dose in plan.doses} else 0)


@pytest.mark.parametrize("recipe", RECIPES)
def test_no_step_is_told_more_than_five_things(recipe):
    plan = planned(recipe, "ordinary")
    for step in plan.steps:
        assert len([one for one in plan.reminders if one.step == step.name]) <= 5, step.name


@pytest.mark.parametrize("recipe", RECIPES)
def test_a_whole_day_asks_at_most_four_times_and_tells_each_line_of_a_step_once(recipe):
    day = Day(planned(recipe, "ordinary"))
    day.home()
    begun = [one.event for one in day.entries if isinstance(one.event, e.Begun)]
    asked = [one for one in day.entries if isinstance(one.event, e.Confirmed | e.PutOff)]
    assert {one.step for one in begun} == {one.name for one in day.plan.steps}
    assert any(one.reminders for one in begun)
    assert 1 <= len(asked) <= ASKS_PER_DAY
    for one in begun:
        assert len({_without_numbers(text) for text in one.reminders}) == len(one.reminders), one.step


def test_the_cold_alum_of_a_silk_day_is_never_called_hot():
    plan = planned("madder-on-silk-with-cold-alum", "ordinary")
    assert [one.trigger for one in plan.reminders if one.step == "cold alum"] == ["dust", "not food"]


def test_an_ordinary_madder_day_reads_like_this():
    plan = planned(MADDER, "ordinary")
    assert [(one.step, one.text) for one in plan.reminders] == [
        ("scour", "14 g wash for A: hard on eyes until it is in the water, so pour it low."),
        ("mordant", "29 g alum for B: mask on, damp cloth under, shut the jar first."),
        ("mordant", "29 g alum for B: from now on pots, spoons, sieve, scales are never for food."),
        ("extract", "120 g madder for C: mask on until it is wet, and none near a mouth."),
        ("strain", "C, 1.9 L, is at 70 °C: one second burns. Strain with a ladle, away from you."),
        ("strain again", "C, 2.4 L, is at 70 °C: one second burns. Strain with a ladle, away from you."),
        ("strain 3", "C, 2.4 L, is at 70 °C: one second burns. Strain with a ladle, away from you."),
        ("dye", "D, 7.2 L, is at 80 °C: one second burns. Lift with tongs and let it drip."),
        ("dye", "Bare hands in D only when cool: 1.5 to 4 h from 80 °C down to 40 °C, longer with a lid."),
    ]
