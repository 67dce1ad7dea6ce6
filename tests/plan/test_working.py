import tomllib
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from plan.days import (
    KITCHEN,
    LETTER_SCALE,
    RECIPES,
    a_recipe,
    a_step,
    alum_only,
    an_ingredient,
    house_recipe,
    with_child,
    wool,
)

from dyesession.kitchen import Burner, Jar, Kitchen, Pot, Scale
from dyesession.kitchen.model import Own
from dyesession.plan import (
    FibreLot,
    PlanError,
    Refused,
    improvised,
    plan_as_json,
    plan_for_log,
    plan_from_document,
    work_out,
)
from dyesession.plan.timetable import end_min
from dyesession.recipe import load_recipe
from dyesession.tomlfile import write_document
from dyesession.units import Flat, show_duration

HOUSE = sorted(file.stem for file in RECIPES.glob("*.toml"))
NOTHING_FLAT = [
    name for name in HOUSE if not any(isinstance(one.dose, Flat) for one in house_recipe(name).ingredients)
]


def planned(recipe, mass_g=240.0, kitchen=KITCHEN, **more):
    return work_out(recipe, [FibreLot("lot", recipe.fibre[0], mass_g, air_dry=True)], kitchen, **more)


@pytest.mark.parametrize("kitchen", [KITCHEN, Kitchen()], ids=["with pots", "empty"])
@pytest.mark.parametrize("name", HOUSE)
def test_every_recipe_of_the_house_plans_for_240_g(name, kitchen):
    recipe = house_recipe(name)
    plan = planned(recipe, kitchen=kitchen)
    assert {dose.ingredient for dose in plan.doses} == {one.name for one in recipe.ingredients}
    assert all(dose.mass_g.aim > 0 and dose.known for dose in plan.doses)
    assert end_min(plan.timetable) > 0
    names = [step.name for step in plan.steps]
    for i, step in enumerate(plan.steps):
        assert all(names.index(one) < i for one in step.after)
    for bath in plan.baths:
        assert bath.water_l > 0
        assert bath.fits is (None if not bath.pot else True)


@pytest.mark.parametrize("name", HOUSE)
def test_the_grams_added_in_all_steps_are_the_dose(name):
    plan = planned(house_recipe(name))
    for dose in plan.doses:
        added = sum(
            one.mass_g for step in plan.steps for one in step.add if one.ingredient == dose.ingredient
        )
        assert added == pytest.approx(dose.mass_g.aim, rel=1e-12)


@pytest.mark.parametrize("name", HOUSE)
def test_a_plan_comes_back_whole_from_the_head_of_a_log(name):
    plan = planned(house_recipe(name))
    document = tomllib.loads(write_document({"plan": plan_for_log(plan)}))
    assert plan_from_document(document["plan"]) == plan


def test_a_plan_without_lanes_pots_or_scales_comes_back_too():
    plan = planned(house_recipe("iron-saddening"), kitchen=Kitchen())
    assert plan_from_document(tomllib.loads(write_document(plan_for_log(plan)))) == plan


def test_what_names_the_household_stays_out_of_the_log():
    plan = planned(house_recipe("iron-saddening"), kitchen=with_child(KITCHEN, 11.5))
    private = [one for one in plan.reminders if one.private]
    assert any("11.5 kg" in one.text or "12 kg" in one.text for one in private)
    assert all("child ill" not in one["text"] for one in plan_for_log(plan)["reminders"])
    again = plan_from_document(plan_for_log(plan))
    assert again == replace(plan, reminders=tuple(one for one in plan.reminders if not one.private))


def test_a_poison_centre_number_never_enters_a_plan():
    kitchen = replace(KITCHEN, poison_centre="0123 456789")
    assert "0123" not in write_document(
        plan_for_log(planned(house_recipe("iron-saddening"), kitchen=kitchen))
    )


@pytest.mark.parametrize("document", [{}, {"recipe": 3}, {"steps": "x"}, {"lots": [{"nome": 1}]}])
def test_tables_that_are_no_plan_are_one_sentence(document):
    with pytest.raises(PlanError, match="cannot be read"):
        plan_from_document(document)


@settings(max_examples=25)
@given(st.floats(20, 2000), st.sampled_from(NOTHING_FLAT), st.floats(1.1, 7))
def test_doses_grow_with_the_fibre(mass_g, name, factor):
    recipe = house_recipe(name)
    small, large = (planned(recipe, mass, Kitchen()) for mass in (mass_g, mass_g * factor))
    for one, other in zip(small.doses, large.doses, strict=True):
        assert other.mass_g.aim == pytest.approx(one.mass_g.aim * factor, rel=1e-9)
        assert other.percent_wof.aim == pytest.approx(one.percent_wof.aim, rel=1e-9)


@given(st.floats(1, 100_000), st.integers(1, 60_000))
def test_a_percentage_of_the_fibre_comes_back_from_its_grams(mass_g, hundredths):
    plan = planned(alum_only(f"{hundredths / 100} %"), mass_g, Kitchen())
    [dose] = plan.doses
    assert dose.percent_wof.aim == pytest.approx(hundredths / 100, rel=1e-12)
    assert dose.mass_g.aim == pytest.approx(mass_g * hundredths / 10_000, rel=1e-9)


@given(st.floats(20, 3000), st.integers(10, 60), st.floats(1, 40))
def test_a_bath_keeps_the_ratio_or_fills_two_thirds_of_its_pot(mass_g, ratio, pot_l):
    kitchen = Kitchen(pots=(Pot("pot", pot_l),))
    [bath] = planned(alum_only(liquor_ratio=ratio), mass_g, kitchen).baths
    wanted = ratio * mass_g / 1000
    assert bath.water_l == pytest.approx(min(wanted, pot_l * 2 / 3))
    assert bath.ratio_l_per_kg == pytest.approx(bath.water_l / mass_g * 1000)
    assert bath.fits is (bath.ratio_l_per_kg >= min(15, ratio) - 1e-6)
    assert bool(bath.say) == (wanted > pot_l * 2 / 3 + 1e-9)


def test_a_pot_too_small_says_what_would_do():
    plan = planned(alum_only(), 240.0, Kitchen(pots=(Pot("saucepan", 4.0),)))
    [bath] = plan.baths
    assert bath.fits is False
    assert "1:30 wants 7.2 L; two thirds of your pot is 2.7 L, only 1:11" in bath.say
    assert "at least 5.4 L" in bath.say
    assert "no more than 177 g" in bath.say
    assert any(bath.say in sentence for sentence in plan.warnings)


def test_a_short_ratio_that_the_recipe_itself_wants_is_no_fault():
    step = a_step("gall", add=["alum"], enter=["fibre"], water="12.5 l/kg")
    recipe = a_recipe([an_ingredient("alum", "12 %")], [step])
    assert planned(recipe, 200.0, Kitchen(pots=(Pot("pot", 6.0),))).baths[0].fits is True


def test_a_dose_on_another_dose_follows_it():
    ingredients = [
        an_ingredient("alum", "25 %"),
        an_ingredient("soda", "1/16 of the alum", "soda ash", "assist"),
    ]
    plan = planned(a_recipe(ingredients, [a_step("mordant", add=["alum", "soda"])]), 320.0)
    # Mairet, A Book on Vegetable Dyes, 1916, ch. III: a quarter of alum, soda a sixteenth of that: 1.5625 %.
    assert plan.dose("soda").mass_g.aim == pytest.approx(5.0)
    assert plan.dose("soda").percent_wof.aim == pytest.approx(1.5625)


def test_a_dose_by_the_litre_is_reckoned_on_the_water_the_pot_takes():
    recipe = a_recipe(
        [an_ingredient("wash", "2 g/l", "neutral textile wash", "scour")],
        [a_step("scour", "scour", add=["wash"])],
    )
    assert planned(recipe, 240.0, Kitchen()).dose("wash").mass_g.aim == pytest.approx(14.4)
    assert planned(recipe, 240.0, Kitchen(pots=(Pot("pot", 9.0),))).dose("wash").mass_g.aim == pytest.approx(
        12.0
    )


def test_a_flat_dose_stays_the_same():
    recipe = a_recipe([an_ingredient("alum", "5 g")], [a_step("mordant", add=["alum"])])
    assert (
        planned(recipe, 50.0).dose("alum").mass_g.aim == planned(recipe, 500.0).dose("alum").mass_g.aim == 5.0
    )


def test_depth_moves_the_colour_and_leaves_the_mordant():
    recipe = house_recipe("cochineal-crimson-on-wool")
    pale, mid, deep = (planned(recipe, 100.0, depth=depth) for depth in ("low", "aim", "high"))
    assert [one.dose("cochineal").mass_g.aim for one in (pale, mid, deep)] == pytest.approx([3.0, 4.0, 5.0])
    assert pale.dose("alum").mass_g == mid.dose("alum").mass_g == deep.dose("alum").mass_g


def test_refreshes_are_unrolled_and_what_follows_waits_for_the_last_straining():
    plan = planned(house_recipe("madder-brick-red-on-wool"))
    liquor = [step.name for step in plan.steps if step.lane == "liquor"]
    assert liquor == ["extract", "strain", "extract again", "strain again", "extract 3", "strain 3"]
    assert plan.step("dye").after == ("mordant", "strain 3")
    assert [plan.step(name).again for name in liquor] == [0, 0, 1, 1, 2, 2]
    assert plan.step("extract again").fresh_water
    assert plan.step("extract again").add == ()
    assert plan.step("strain 3").into == "dye pot"
    assert not plan.step("dye").fresh_water


def test_strained_liquor_and_its_top_up_make_the_dye_bath():
    plan = planned(house_recipe("madder-brick-red-on-wool"))
    liquor_l = sum(step.liquor_l for step in plan.steps if step.stage == "strain")
    dye = plan.step("dye")
    assert dye.water_l == pytest.approx(7.2)
    # 120 g of spent root keeps about 4.2 times its weight of liquor once (`dyeing.retention`).
    assert dye.water_l - liquor_l == pytest.approx(0.504)
    assert "about 505 mL" in dye.say


@settings(max_examples=30)
@given(st.floats(30, 600), st.sampled_from([file for file in HOUSE if "weld" in file or "madder" in file]))
def test_the_strained_liquor_never_runs_over_the_dye_bath(mass_g, name):
    plan = planned(house_recipe(name), mass_g, Kitchen(pots=(Pot("a", 9.0), Pot("b", 9.0), Pot("c", 9.0))))
    for user in {step.into for step in plan.steps if step.into}:
        liquor_l = sum(step.liquor_l for step in plan.steps if step.into == user)
        dye = next(step for step in plan.steps if step.vessel == user)
        assert liquor_l <= dye.water_l + 0.11
        assert dye.water_l <= 6.0 + 1e-9


def test_a_fresh_herb_bath_is_cut_to_what_the_dye_bath_takes():
    plan = planned(house_recipe("fresh-weld-yellow-on-wool"), kitchen=Kitchen())
    extract = next(bath for bath in plan.baths if bath.step == "extract")
    assert extract.water_l == pytest.approx(3.6)
    assert "3.6 L each time instead of 5.3 L" in extract.say
    assert plan.dose("weld").percent_wof.aim == pytest.approx(550.0)


def test_three_madder_baths_are_three_fillings_with_their_portions():
    plan = planned(house_recipe("madder-red-over-tannin-and-alum-on-cotton"), 400.0)
    # Mairet 1916, ch. VII no. 11: 2, 3 and 3 oz to the pound in three baths: 12.5, 18.75 and 18.75 %.
    baths = [plan.step(f"{count} madder") for count in ("first", "second", "third")]
    assert [step.add[0].mass_g for step in baths] == pytest.approx([50.0, 75.0, 75.0])
    assert [step.fresh_water for step in baths] == [True, True, True]
    assert [step.add[0].portion for step in baths] == ["first portion", "second portion", "third portion"]


def test_a_bagged_dyestuff_stays_in_the_bath_the_fibre_enters():
    plan = planned(house_recipe("logwood-purple-on-wool"))
    assert plan.step("soak").add[0].bagged
    assert not plan.step("dye").fresh_water
    assert not any(step.stage == "strain" for step in plan.steps)


@pytest.mark.parametrize(("metres", "most_c"), [(0.0, 97.97), (1500.0, 92.98), (3000.0, 87.97)])
def test_no_temperature_is_planned_above_two_degrees_under_the_boil(metres, most_c):
    # Standard atmosphere and IAPWS-IF97: water boils at 99.97, 94.98 and 89.97 degC at 0, 1500 and 3000 m.
    plan = planned(house_recipe("cochineal-crimson-on-wool"), kitchen=replace(KITCHEN, elevation_m=metres))
    hottest = max(heat.temperature_c or 0.0 for step in plan.steps for heat in step.heat)
    assert hottest == pytest.approx(most_c, abs=0.02)


def test_a_temperature_above_the_boil_here_is_one_sentence():
    heat = [{"to": "98 degC"}, {"hold": "60 min"}]
    step = a_step("mordant", add=["alum"], enter=["fibre"], heat=heat)
    recipe = a_recipe([an_ingredient("alum", "12 %")], [step])
    [sentence] = planned(recipe, kitchen=replace(KITCHEN, elevation_m=1500.0)).warnings
    assert sentence == ("mordant: 98 °C cannot be kept at 1500 m, where water boils at 95 °C; use 93 °C.")


def test_a_barometer_beats_the_elevation():
    plan = planned(alum_only(), kitchen=replace(KITCHEN, station_pressure_kpa=97.0))
    assert plan.boiling_c == pytest.approx(98.76, abs=0.01)  # IAPWS-IF97
    assert plan.boiling_margin_c < planned(alum_only()).boiling_margin_c


def test_a_kitchen_without_scales_is_told_so_and_no_dose_is_guessed():
    plan = planned(alum_only(), kitchen=Kitchen())
    [dose] = plan.doses
    assert dose.weigh.how == "no scale"
    assert dose.weigh.sd_g is None
    assert any("lists no scale" in sentence for sentence in plan.warnings)


def test_pots_are_shared_only_by_vessels_that_follow_each_other():
    plan = planned(house_recipe("madder-brick-red-on-wool"))
    pot = {vessel.name: vessel.pot for vessel in plan.vessels}
    assert pot["wash pot"] == pot["mordant pot"]
    assert len({pot["mordant pot"], pot["extract pot"], pot["dye pot"]}) == 3
    assert [vessel.letter for vessel in plan.vessels] == ["A", "B", "C", "D", "E"]


def test_too_few_pots_is_one_sentence():
    plan = planned(house_recipe("madder-brick-red-on-wool"), kitchen=Kitchen(pots=KITCHEN.pots[:2]))
    [sentence] = [one for one in plan.warnings if "in use when" in one]
    assert "lists 2 pots" in sentence


def test_iron_has_a_pot_nothing_else_is_done_in():
    plan = planned(house_recipe("iron-saddening"))
    pot = {vessel.name: vessel.pot for vessel in plan.vessels}
    assert pot["iron pot"] == "iron pot"
    assert list(pot.values()).count("iron pot") == 1
    lonely = planned(house_recipe("cutch-brown-saddened-on-wool"), kitchen=Kitchen(pots=KITCHEN.pots[:1]))
    assert any("iron wants a pot of its own" in sentence for sentence in lonely.warnings)


def test_bare_copper_is_the_last_choice_and_is_warned_of():
    copper = Pot("copper pan", 12.0, material="copper")
    assert planned(alum_only(), kitchen=Kitchen(pots=(copper, KITCHEN.pots[0]))).baths[0].pot == "big pot"
    [sentence] = [
        s for s in planned(alum_only(), kitchen=Kitchen(pots=(copper,))).warnings if "bare copper" in s
    ]
    assert "shifts shades" in sentence


@pytest.mark.parametrize("name", ["chrome", "bichromate of potash", "stannous chloride", "oxalic acid"])
def test_a_refused_substance_is_never_planned_and_a_safer_way_is_named(name):
    recipe = a_recipe([an_ingredient("mordant", "3 %", name)], [a_step("mordant", add=["mordant"])])
    with pytest.raises(Refused, match=r"refused: .*; instead, ") as caught:
        planned(recipe)
    assert "\n" not in str(caught.value)


def test_copper_is_asked_about():
    recipe = a_recipe([an_ingredient("blue", "2 %", "blue vitriol")], [a_step("mordant", add=["blue"])])
    assert any("until you choose it" in question for question in planned(recipe).questions)


def test_an_unknown_substance_is_planned_and_said_loudly():
    recipe = a_recipe([an_ingredient("x", "2 %", "frobnium salt")], [a_step("mordant", add=["x"])])
    plan = planned(recipe)
    assert not plan.doses[0].known
    assert plan.warnings[0].startswith('NOT KNOWN: nothing is known here of "frobnium salt"')


@pytest.mark.parametrize(
    ("percent", "form", "warned"), [(4, "", False), (5, "", True), (3, " monohydrate", True)]
)
def test_iron_above_four_per_cent_is_warned_of_whatever_the_form(percent, form, warned):
    # A gram of the monohydrate holds the iron of 1.636 g of the crystals (molar masses).
    ingredient = an_ingredient("iron", f"{percent} %", f"ferrous sulphate{form}", "modifier")
    plan = planned(a_recipe([ingredient], [a_step("sadden", "modify", add=["iron"])]))
    assert any("hardens the fibre" in one for one in plan.warnings) is warned


def test_fibre_the_recipe_is_not_meant_for_is_warned_of():
    plan = work_out(alum_only(), [FibreLot("sheet", "cotton", 200.0, air_dry=True)], KITCHEN)
    assert any("meant for wool; the sheet is cotton" in one for one in plan.warnings)


def test_washed_and_air_dry_is_asked_until_it_is_answered():
    asked = work_out(alum_only(), [FibreLot("skein", "wool", 200.0)], KITCHEN)
    assert asked.questions == ("Is the skein, 200 g, washed and air-dry?",)
    assert planned(alum_only()).questions == ()


@pytest.mark.parametrize(
    ("lots", "words"),
    [
        ([], "no fibre"),
        ([wool(0.0)], "more than nothing"),
        ([wool(float("nan"))], "more than nothing"),
        ([wool(100.0), wool(50.0)], "Two lots"),
        ([FibreLot("skein", "wool", 212.0, air_dry=False, damp_mass_g=212.0)], "for a day"),
        ([wool(148.0, damp_mass_g=120.0)], "must be the larger"),
    ],
)
def test_fibre_that_nothing_can_be_reckoned_on_is_refused_in_one_sentence(lots, words):
    with pytest.raises(PlanError, match=words):
        work_out(alum_only(), lots, KITCHEN)


def test_several_lots_are_dosed_together():
    lots = [replace(wool(165.0), name="large skein"), replace(wool(75.0), name="small skein")]
    assert work_out(alum_only(), lots, KITCHEN).dose("alum").mass_g.aim == pytest.approx(28.8)


def test_a_jar_that_holds_too_little_or_another_form_is_told():
    low = replace(KITCHEN, jars=(Jar("alum jar", "alum", mass_left_g=10.0),))
    assert any("your jars hold 10 g" in one for one in planned(alum_only(), kitchen=low).warnings)
    dried = replace(KITCHEN, jars=(Jar("alum jar", "alum", form="dried alum"),))
    # A gram of dried alum is 1.837 g of the crystals (molar masses): 28.8 g becomes 15.7 g.
    assert any("weigh 15.7 g of it instead" in one for one in planned(alum_only(), kitchen=dried).warnings)


def test_what_a_recipe_weighs_but_never_adds_is_told():
    step = a_step("mordant", add=[{"alum": "half"}])
    plan = planned(a_recipe([an_ingredient("alum", "12 %")], [step]))
    assert "1/2 of the alum is never added by the recipe." in plan.warnings


def test_a_bath_that_no_fibre_enters_is_told_and_one_that_it_enters_is_not():
    alum = an_ingredient("alum", "12 %")
    told = planned(a_recipe([alum], [a_step("mordant", add=["alum"])])).warnings
    assert any("puts no fibre into “mordant”" in one and 'enter = ["fibre"]' in one for one in told)
    told = planned(a_recipe([alum], [a_step("mordant", add=["alum"], enter=["fibre"])])).warnings
    assert not any("puts no fibre" in one for one in told)


def test_the_day_is_longer_on_a_weak_burner_than_the_recipe_says():
    weak = replace(KITCHEN, burners=(replace(KITCHEN.burners[0], power_w=500.0),))
    assert end_min(planned(alum_only(), kitchen=weak).timetable) > end_min(planned(alum_only()).timetable)


def test_an_overnight_rest_takes_a_night():
    step = a_step("mordant", add=["alum"], heat=[{"rest": "overnight"}])
    plan = planned(a_recipe([an_ingredient("alum", "12 %")], [step]))
    assert 12 * 60 <= end_min(plan.timetable) <= 13 * 60


def test_one_burner_makes_the_day_longer_and_says_by_how_much():
    recipe = house_recipe("madder-brick-red-on-wool")
    beside = replace(KITCHEN, burners=(*KITCHEN.burners, *KITCHEN.burners))
    alone, both = planned(recipe), planned(recipe, kitchen=beside)
    [sentence] = [one for one in alone.warnings if "burner" in one]
    later_min = end_min(alone.timetable) - end_min(both.timetable)
    assert f"the day is {show_duration(later_min)} longer" in sentence
    assert not [one for one in both.warnings if "burner" in one]
    lit = sorted((row.lit_min, row.off_min) for row in alone.timetable if row.lit_min is not None)
    assert all(off <= later for (_, off), (later, _) in pairwise(lit))


def test_a_kitchen_that_lists_no_burner_is_not_limited():
    plan = planned(house_recipe("madder-brick-red-on-wool"), kitchen=replace(KITCHEN, burners=()))
    assert not [one for one in plan.warnings if "burner" in one]


def test_the_json_answers_with_every_promised_key():
    two = replace(KITCHEN, burners=(*KITCHEN.burners, Burner("back", 1200.0, "electric")))
    answer = plan_as_json(planned(house_recipe("madder-brick-red-on-wool"), kitchen=two))
    assert answer["fibre"]["mass_g"] == 240.0
    for dose in answer["doses"]:
        assert {"ingredient", "substance", "role", "percent_wof", "mass_g", "weigh"} <= set(dose)
        assert set(dose["percent_wof"]) == set(dose["mass_g"]) == {"low", "aim", "high"}
        assert {"how", "sd_g", "say"} <= set(dose["weigh"])
    for bath in answer["baths"]:
        assert {"step", "vessel", "water_l", "fits"} <= set(bath)
    assert answer["timetable"]
    assert answer["reminders"]
    assert answer["warnings"] == []


def test_hot_liquor_is_reminded_of_where_it_is_strained():
    plan = planned(house_recipe("madder-brick-red-on-wool"))
    [scald] = [one for one in plan.reminders if one.step == "strain" and "70 °C" in one.text]
    assert scald.severity >= 3


def test_worst_reminders_stand_first_at_each_step():
    plan = planned(house_recipe("cutch-brown-saddened-on-wool"), kitchen=with_child(KITCHEN))
    for step in plan.steps:
        ranks = [one.severity for one in plan.reminders if one.step == step.name]
        assert ranks == sorted(ranks, reverse=True)


def test_a_recipe_in_any_order_is_planned_in_an_order_it_can_be_done(tmp_path):
    text = (RECIPES / "madder-brick-red-on-wool.toml").read_text(encoding="utf-8")
    head, *steps = text.split("[[step]]")
    file = tmp_path / "r.toml"
    file.write_text(head + "".join("[[step]]" + step for step in reversed(steps)), encoding="utf-8")
    plan = planned(load_recipe(file))
    names = [step.name for step in plan.steps]
    assert all(names.index(one) < names.index(step.name) for step in plan.steps for one in step.after)
    straight = planned(house_recipe("madder-brick-red-on-wool"))
    assert {step.name for step in straight.steps} == set(names)
    assert sum(bath.water_l for bath in plan.baths) == pytest.approx(sum(b.water_l for b in straight.baths))


@st.composite
def kitchens(draw):
    volumes = draw(st.lists(st.floats(0.5, 30), max_size=5))
    return Kitchen(
        scales=tuple(
            Scale(f"s{i}", d)
            for i, d in enumerate(draw(st.lists(st.sampled_from([0.1, 1.0, 5.0]), max_size=2)))
        ),
        pots=tuple(Pot(f"pot {i}", volume) for i, volume in enumerate(volumes)),
        burners=KITCHEN.burners if draw(st.booleans()) else (),
        elevation_m=draw(st.none() | st.floats(0, 4000)),
    )


@settings(max_examples=60)
@given(st.sampled_from(HOUSE), st.floats(5, 5000), kitchens(), st.sampled_from(["low", "aim", "high"]))
def test_any_recipe_plans_in_any_kitchen(name, mass_g, kitchen, depth):
    plan = planned(house_recipe(name), mass_g, kitchen, depth=depth)
    volume = {pot.name: pot.volume_l for pot in kitchen.pots}
    for bath in plan.baths:
        assert bath.water_l > 0
        assert not bath.pot or bath.water_l <= volume[bath.pot] * 2 / 3 + 1e-9
    for dose in plan.doses:
        assert dose.mass_g.low <= dose.mass_g.aim * (1 + 1e-12)
        assert dose.mass_g.aim <= dose.mass_g.high * (1 + 1e-12)
        assert (dose.weigh.sd_g is None) == (not kitchen.scales)
    assert plan_from_document(tomllib.loads(write_document(plan_for_log(plan)))) == plan
    for step in plan.steps:
        for heat in step.heat:
            assert heat.temperature_c is None or heat.temperature_c <= plan.boiling_c - 2 + 1e-9


def test_a_fine_scale_is_chosen_where_it_bears_the_dose():
    kitchen = replace(KITCHEN, scales=(Scale("s", 1.0, 5000.0), LETTER_SCALE))
    plan = planned(house_recipe("weld-yellow-on-wool"), kitchen=kitchen)
    assert "your 0.1 g scale" in plan.dose("chalk").weigh.say
    heavy = planned(house_recipe("fresh-weld-yellow-on-wool"), kitchen=kitchen)
    assert "your 1 g scale" in heavy.dose("weld").weigh.say


def test_how_slowly_the_dyers_own_pots_cool_goes_with_the_plan_and_into_the_log() -> None:
    own = replace(KITCHEN, own=Own(cooling=1.4))
    plan = work_out(house_recipe("madder-brick-red-on-wool"), (wool(240.0),), own)
    assert plan.cooling == plan_from_document(plan_for_log(plan)).cooling == 1.4
    assert improvised([wool(60.0)], own).cooling == 1.4
    assert work_out(house_recipe("madder-brick-red-on-wool"), (wool(240.0),), KITCHEN).cooling == 1.0
