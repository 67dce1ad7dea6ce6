"""What is said of a situation: worst first, short, once, and only what can apply."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.care import (
    ACTIONS,
    BURNERS,
    TRIGGERS,
    Household,
    OtherVessel,
    Situation,
    reminders,
    reminders_over,
)
from dyesession.substances import load

TODDLER = Household(child_kg=12.0)


def _of(trigger, situation):
    return [r for r in reminders(situation) if r.trigger == trigger]


def test_nothing_is_said_of_a_situation_nobody_has_described():
    assert reminders(Situation()) == ()


def test_an_ordinary_cold_rinse_is_left_in_peace():
    bowl = Situation(
        stage="rinse", actions=("rinses", "lifts"), temperature_c=30.0, volume_l=4.0, capacity_l=8.0
    )
    assert reminders(bowl) == ()


def test_the_worst_is_said_first():
    situation = Situation(
        letter="B",
        actions=("adds", "strains"),
        adding=(("cochineal", 12.0), ("alum", 29.0)),
        contents=(("bleach", 20.0),),
        temperature_c=70.0,
        volume_l=2.0,
        household=Household(insect_allergy=True),
    )
    severities = [r.severity for r in reminders(situation)]
    assert severities[0] == 4
    assert severities == sorted(severities, reverse=True)


def test_alum_counts_as_an_acid_beside_bleach():
    lines = _of("never mix", Situation(letter="B", adding=(("alum", 29.0),), contents=(("bleach", 20.0),)))
    assert [r.hazard for r in lines] == ["chlorine gas"]
    assert lines[0].severity == 4


def test_bleach_in_another_pot_of_the_room_is_enough():
    others = (OtherVessel("C", (("bleach", 20.0),)),)
    situation = Situation(letter="B", contents=(("ammonia", 50.0),), other_vessels=others)
    (line,) = _of("never mix", situation)
    assert line.text == "B's 50 g ammonia and C's 20 g bleach in one room: chloramine gas. One must go."
    assert line.severity == 4


def test_two_other_pots_with_bleach_and_ammonia_are_spoken_of_whatever_this_step_does():
    others = (OtherVessel("C", (("bleach", 20.0),)), OtherVessel("D", (("ammonia", 50.0),)))
    assert len(_of("never mix", Situation(letter="B", other_vessels=others))) == 1


def test_an_alum_pot_beside_a_vat_is_a_warning_and_alum_in_the_vat_is_worse():
    vat = (("sodium dithionite", 10.0),)
    beside = Situation(letter="A", contents=(("alum", 29.0),), other_vessels=(OtherVessel("C", vat),))
    inside = Situation(letter="C", adding=(("alum", 29.0),), contents=vat)
    assert [r.severity for r in _of("never mix", beside)] == [3]
    assert [r.severity for r in _of("never mix", inside)] == [4]
    assert "Air the vat first." in _of("never mix", inside)[0].text


def test_pouring_an_acid_bath_on_a_vat_counts_as_meeting_in_one_vessel():
    situation = Situation(
        letter="A",
        actions=("pours",),
        into="C",
        contents=(("vinegar", 100.0),),
        other_vessels=(OtherVessel("C", (("thiourea dioxide", 10.0),)),),
    )
    (line,) = _of("never mix", situation)
    assert line.severity == 4
    assert line.text.startswith("Never 100 g vinegar with 10 g thiourea dioxide in C: sulphur dioxide.")


def test_pouring_chalky_liquor_into_an_alum_bath_foams_in_the_bath_it_meets():
    situation = Situation(
        letter="A",
        actions=("strains",),
        into="C",
        contents=(("chalk", 10.0),),
        other_vessels=(OtherVessel("C", (("alum", 29.0),)),),
    )
    (line,) = _of("foam", situation)
    assert line.text == "10 g chalk on alum in C: up to 2.4 L gas, room not known. Small portions."
    assert line.severity == 3


def test_foam_that_fits_the_headspace_is_only_a_plain_word():
    situation = Situation(adding=(("chalk", 2.0),), contents=(("alum", 29.0),), volume_l=4.0, capacity_l=10.0)
    assert [r.severity for r in _of("foam", situation)] == [2]


def test_chalk_and_tartar_added_in_one_step_foam_without_any_bath():
    assert len(_of("foam", Situation(adding=(("chalk", 2.0), ("tartar", 6.0))))) == 1


def test_chalk_and_acid_that_stand_together_already_have_had_their_foam():
    assert _of("foam", Situation(contents=(("chalk", 2.0), ("tartar", 6.0)))) == []


def test_between_45_and_60_degrees_the_time_to_a_burn_is_told():
    (line,) = _of("hot liquor", Situation(letter="B", actions=("lifts",), temperature_c=52.0))
    assert line.text == "B is at 52 °C: it burns in 1.5 min. Lift with tongs and let it drip."
    assert line.severity == 2


def test_just_above_45_degrees_no_time_of_hours_is_told():
    (line,) = _of("hot liquor", Situation(letter="B", actions=("lifts",), temperature_c=46.0))
    assert line.text == "B is at 46 °C: too hot for a hand to stay in. Lift with tongs and let it drip."
    assert line.severity == 1


def test_at_sixty_degrees_one_second_burns():
    (line,) = _of("hot liquor", Situation(letter="B", actions=("pours",), temperature_c=60.0))
    assert "one second burns" in line.text
    assert line.severity == 3


def test_dried_iron_is_stronger_so_less_of_it_makes_a_child_ill():
    dried = Situation(adding=(("ferrous sulphate monohydrate", 2.0),), household=TODDLER)
    assert "0.7 g swallowed" in _of("iron at home", dried)[0].text


def test_three_per_cent_of_dried_iron_is_as_much_as_five_of_the_crystals():
    dried = Situation(wof_percent=(("ferrous sulphate monohydrate", 3.0),))
    assert len(_of("iron dose", dried)) == 1
    assert _of("iron dose", Situation(wof_percent=(("ferrous sulphate monohydrate", 2.0),))) == []


def test_of_an_iron_liquor_of_unknown_strength_no_gram_is_named():
    line = _of("iron at home", Situation(adding=(("rusty nail liquor", 100.0),), household=TODDLER))[0]
    assert "even a little can make a 12 kg child ill" in line.text


def test_the_lighter_of_child_and_pet_is_spoken_of():
    small_dog = Household(child_kg=30.0, pet_kg=6.0)
    assert (
        "0.6 g swallowed can make a 6 kg pet ill"
        in _of("iron at home", Situation(adding=(("iron", 2.0),), household=small_dog))[0].text
    )


def test_an_allergic_dyer_is_stopped_before_even_whole_cochineal():
    situation = Situation(
        letter="B", actions=("adds",), adding=(("lac", 12.0),), household=Household(insect_allergy=True)
    )
    assert _of("insect dye", situation)[0].severity == 4


def test_copper_plates_iron_and_alum_eats_aluminium():
    copper = Situation(material="iron", contents=(("copper sulphate", 4.0),))
    alum = Situation(material="bare aluminium", contents=(("alum", 29.0),))
    assert "plates it with copper" in _of("metal pot", copper)[0].text
    assert "eats it" in _of("metal pot", alum)[0].text


@pytest.mark.parametrize(
    "material", ["stainless steel", "enamel on iron", "non-stick aluminium", "lined copper", ""]
)
def test_a_covered_metal_is_no_bare_metal(material):
    situation = Situation(material=material, contents=(("alum", 29.0), ("weld", 50.0)))
    assert _of("metal pot", situation) == []
    assert _of("pot shifts the shade", situation) == []


def test_a_galvanised_bucket_is_zinc():
    assert len(_of("metal pot", Situation(material="galvanised iron", contents=(("lye", 5.0),)))) == 1


def test_several_powders_share_one_line():
    adding = (("alum", 29.0), ("citric acid", 4.0), ("soda ash", 3.0))
    (line,) = _of("dust", Situation(letter="B", actions=("weighs powder",), adding=adding))
    assert line.text.startswith("29 g alum and 2 more for B")


def test_the_second_half_of_a_dose_is_called_more_of_it():
    half = Situation(letter="B", actions=("adds",), adding=(("iron", 1.2),), contents=(("copperas", 1.2),))
    assert _of("dust", half)[0].text.startswith("1.2 g more iron for B")


def test_a_neutral_wash_asks_for_no_goggles_only_to_be_poured_low():
    wash = Situation(letter="A", actions=("adds",), adding=(("neutral textile wash", 14.0),))
    (line,) = reminders(wash)
    assert line.text == "14 g wash for A: hard on eyes until it is in the water, so pour it low."
    assert line.severity == 1


@pytest.mark.parametrize(
    ("named", "said"),
    [
        ("vinegar", False),
        ("30 % vinegar", True),
        ("acetic acid 5 %", False),
        ("acetic acid", True),
        ("peroxide", True),
        ("3 % peroxide", True),  # a sheet for under 8 % still warns of eyes
    ],
)
def test_goggles_go_by_the_strength_a_name_gives_and_by_the_strongest_where_it_gives_none(named, said):
    situation = Situation(letter="B", actions=("adds",), adding=((named, 50.0),))
    assert bool(_of("goggles", situation)) == said


def test_kitchen_strength_acetic_acid_is_not_off():
    weak = Situation(letter="B", actions=("adds",), adding=(("acetic acid 5 %", 50.0),))
    assert _of("off unless chosen", weak) == _of("too strong", weak) == []


def test_chips_and_whole_pieces_are_weighed_without_a_mask():
    for name in ("logwood chips", "walnut hulls", "onion skins", "chalk", "tartar"):
        assert _of("dust", Situation(actions=("weighs powder",), adding=((name, 60.0),))) == [], name
    for name in ("logwood extract", "walnut hull powder", "alum", "copperas"):
        assert _of("dust", Situation(actions=("weighs powder",), adding=((name, 60.0),))), name


def test_never_for_food_is_said_at_the_first_dye_of_the_day_and_not_at_every_jar():
    alum = Situation(letter="B", actions=("adds",), adding=(("alum", 29.0), ("tartar", 14.0)))
    madder = Situation(
        letter="C",
        actions=("adds",),
        adding=(("madder", 120.0),),
        other_vessels=(OtherVessel("A", (("wash", 14.0),)), OtherVessel("B", (("alum", 29.0),))),
    )
    only_wash = Situation(
        letter="C",
        actions=("adds",),
        adding=(("madder", 120.0),),
        other_vessels=(OtherVessel("A", (("wash", 14.0),)),),
    )
    assert len(_of("not food", alum)) == len(_of("not food", only_wash)) == 1
    assert _of("not food", madder) == []


def test_a_bath_that_is_yet_to_be_heated_is_not_hot_when_the_powder_goes_in():
    cold = Situation(letter="B", actions=("adds", "heats"), adding=(("alum", 29.0),), temperature_c=98.0)
    assert _of("powder at the boil", cold) == []


def test_a_planned_heat_is_where_the_pot_goes_and_a_read_one_where_it_is():
    planned = Situation(letter="D", actions=("heats", "lifts"), temperature_c=80.0)
    read = Situation(letter="D", actions=("lifts",), temperature_c=80.0, temperature_how="read")
    assert _of("hot liquor", planned)[0].text.startswith("D goes to 80 °C")
    assert _of("hot liquor", read)[0].text.startswith("D is at 80 °C")


def test_a_camp_stove_is_not_spoken_of_while_nothing_is_heated():
    entering = Situation(letter="B", burner="camp stove", actions=("enters",), temperature_c=20.0)
    assert _of("fuel stove indoors", entering) == []


def test_over_the_moments_of_a_step_each_thing_is_said_once_at_its_worst():
    begins = Situation(letter="D", actions=("lifts",), temperature_c=50.0)
    ends = Situation(letter="D", actions=("lifts",), temperature_c=80.0)
    (line,) = [r for r in reminders_over((begins, ends)) if r.trigger == "hot liquor"]
    assert "80 °C" in line.text
    assert reminders_over((ends, ends)) == reminders(ends)
    assert reminders_over(()) == ()


def test_only_the_worst_harm_of_a_bare_pot_is_told():
    lye_and_soda = Situation(material="aluminium", contents=(("lye", 5.0), ("soda ash", 5.0)))
    (line,) = _of("metal pot", lye_and_soda)
    assert "hydrogen" in line.text


@pytest.mark.parametrize(("stuff", "metal"), [("soda ash", "aluminium"), ("ammonia", "copper")])
def test_soda_eats_aluminium_and_ammonia_copper(stuff, metal):
    assert "eats it" in _of("metal pot", Situation(material=metal, contents=((stuff, 5.0),)))[0].text


def test_hostile_names_are_shown_short_on_one_line_and_printable():
    (line,) = _of("unknown substance", Situation(adding=(("evil\x1b[31m\nname " * 9, 1.0),)))
    assert line.text.isprintable()
    assert len(line.text) <= 100


_CONTENTS = st.lists(
    st.tuples(st.sampled_from(sorted(load())) | st.text(max_size=40), st.none() | st.floats(0.05, 1500.0)),
    max_size=4,
).map(tuple)

_SITUATIONS = st.builds(
    Situation,
    stage=st.sampled_from(["", "scour", "mordant", "extract", "dye", "modify", "rinse"]),
    actions=st.lists(st.sampled_from(ACTIONS), max_size=4).map(tuple),
    letter=st.sampled_from("BCK"),
    material=st.sampled_from(["", "stainless steel", "iron", "copper", "aluminium", "zinc"]),
    volume_l=st.none() | st.floats(0.1, 30.0),
    capacity_l=st.none() | st.floats(1.0, 40.0),
    temperature_c=st.none() | st.floats(0.0, 105.0),
    contents=_CONTENTS,
    adding=_CONTENTS,
    pouring=_CONTENTS,
    pouring_from=st.sampled_from(["", "weld bath 2"]),
    look_again_in_days=st.none() | st.floats(-400.0, 200.0),
    into=st.sampled_from(["", "D"]),
    other_vessels=st.lists(st.builds(OtherVessel, st.just("D"), _CONTENTS), max_size=1).map(tuple),
    household=st.builds(Household, st.none() | st.floats(3.0, 60.0), st.none(), pets=st.booleans()),
    burner=st.sampled_from(BURNERS),
    lid_on=st.booleans(),
    fibres=st.sampled_from([(), ("wool",), ("silk", "linen")]),
    cooling_min=st.none() | st.just((126.0, 216.0)),
)


@given(_SITUATIONS)
def test_whatever_happens_the_lines_are_short_calm_sourced_and_said_once(situation):
    said = reminders(situation)
    assert len({r.text for r in said}) == len(said)
    assert [r.severity for r in said] == sorted((r.severity for r in said), reverse=True)
    for reminder in said:
        assert reminder.trigger in TRIGGERS
        assert 1 <= reminder.severity <= 4
        assert reminder.source.strip()
        assert reminder.hazard
        assert "!" not in reminder.text or "!" in str(situation)
        assert len(reminder.text) <= 100, reminder.text


@given(_SITUATIONS)
def test_the_same_situation_is_always_told_the_same(situation):
    assert reminders(situation) == reminders(situation)


@given(_SITUATIONS)
def test_every_line_names_a_pot_or_a_kept_bath(situation):
    names = "|".join({situation.letter, "D", "weld bath 2", "the kept bath"})
    for reminder in reminders(situation):
        assert re.search(rf"\b({names})\b", reminder.text), reminder.text


def test_an_alum_pot_and_a_vat_are_left_alone_while_the_work_is_at_a_third_vessel():
    others = (OtherVessel("C", (("sodium dithionite", 10.0),)), OtherVessel("D", (("alum", 29.0),)))
    assert reminders(Situation(letter="B", contents=(("madder", 120.0),), other_vessels=others)) == ()
