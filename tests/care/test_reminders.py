"""Every trigger has a situation that raises it and one, a step away, that does not."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.care import ACTIONS, BURNERS, TRIGGERS, Household, OtherVessel, Situation, reminders
from dyesession.substances import load

TODDLER = Household(child_kg=12.0)

# trigger: (what raises it, what its line must say, what is near and must not raise it)
CASES = {
    "fuel stove indoors": (
        Situation(letter="B", burner="camp stove", indoors=True),
        "Camp stove under B",
        Situation(letter="B", burner="camp stove", indoors=False),
    ),
    "never mix": (
        Situation(letter="B", adding=(("vinegar", 50.0),), contents=(("bleach", 20.0),)),
        "Never 50 g vinegar with 20 g bleach in B: chlorine gas.",
        Situation(letter="B", adding=(("vinegar", 50.0),), contents=(("soap", 20.0),)),
    ),
    "refused": (
        Situation(letter="B", adding=(("bichromate of potash", 3.0),)),
        "3 g chrome in B: refused.",
        Situation(letter="B", adding=(("alum", 3.0),)),
    ),
    "unknown substance": (
        Situation(letter="B", adding=(("fairy dust", 12.0),)),
        "Unknown: 12 g fairy dust in B.",
        Situation(letter="B", adding=(("madder", 12.0),)),
    ),
    "insect dye": (
        Situation(letter="B", actions=("grinds",), adding=(("cochineal", 12.0),)),
        "12 g cochineal for B",
        Situation(letter="B", actions=("adds",), adding=(("cochineal", 12.0),)),
    ),
    "hot liquor": (
        Situation(letter="B", actions=("strains",), temperature_c=70.0, volume_l=2.0),
        "B, 2.0 L, is at 70 °C: one second burns.",
        Situation(letter="B", actions=("strains",), temperature_c=44.0, volume_l=2.0),
    ),
    "foam": (
        Situation(
            letter="B", adding=(("chalk", 20.0),), contents=(("alum", 29.0),), volume_l=8.0, capacity_l=10.0
        ),
        "20 g chalk on alum in B: up to 4.8 L gas, 2.0 L free.",
        Situation(
            letter="B", adding=(("chalk", 20.0),), contents=(("madder", 29.0),), volume_l=8.0, capacity_l=10.0
        ),
    ),
    "lye into water": (
        Situation(letter="B", adding=(("caustic soda", 5.0),), temperature_c=60.0),
        "5 g lye for B, now 60 °C",
        Situation(letter="B", adding=(("soda ash", 5.0),), temperature_c=60.0),
    ),
    "damp powder": (
        Situation(letter="B", adding=(("dithionite", 10.0),)),
        "10 g dithionite for B",
        Situation(letter="B", adding=(("fructose", 10.0),)),
    ),
    "iron at home": (
        Situation(letter="B", adding=(("iron", 2.4),), household=TODDLER),
        "2.4 g iron for B: lock the rest up; 1.2 g swallowed can make a 12 kg child ill.",
        Situation(letter="B", adding=(("iron", 2.4),)),
    ),
    "off unless chosen": (
        Situation(letter="B", adding=(("bluestone", 4.0),)),
        "4 g copper sulphate for B: off unless you chose it.",
        Situation(letter="B", adding=(("iron", 4.0),)),
    ),
    "metal pot": (
        Situation(letter="B", material="aluminium", contents=(("lye", 5.0),)),
        "5 g lye in bare aluminium B: makes hydrogen",
        Situation(letter="B", material="enamelled iron", contents=(("alum", 29.0),)),
    ),
    "near a flame": (
        Situation(letter="B", burner="gas ring", contents=(("methylated spirit", 50.0),)),
        "50 g alcohol in B",
        Situation(letter="B", contents=(("methylated spirit", 50.0),)),
    ),
    "ammonia fumes": (
        Situation(letter="B", contents=(("ammonia", 50.0),), temperature_c=40.0),
        "50 g ammonia in B at 40 °C",
        Situation(letter="B", contents=(("soda ash", 50.0),), temperature_c=40.0),
    ),
    "open air": (
        Situation(letter="B", adding=(("thiox", 10.0),), indoors=True),
        "10 g thiourea dioxide for B",
        Situation(letter="B", adding=(("thiox", 10.0),), indoors=False),
    ),
    "heavy pot": (
        Situation(letter="B", actions=("pours",), volume_l=10.0, capacity_l=12.0),
        "about 12 kg",
        Situation(letter="B", actions=("lifts",), volume_l=10.0, capacity_l=12.0),
    ),
    "boil-over": (
        Situation(letter="B", stage="extract", adding=(("madder", 120.0),), temperature_c=95.0),
        "120 g madder at 95 °C in B can boil over",
        Situation(letter="B", stage="extract", adding=(("madder", 120.0),), temperature_c=70.0),
    ),
    "powder at the boil": (
        Situation(letter="B", actions=("adds",), adding=(("tartar", 14.0),), temperature_c=97.0),
        "Off the heat before 14 g tartar goes in B: it flashes up at 97 °C.",
        Situation(letter="B", actions=("adds",), adding=(("tartar", 14.0),), temperature_c=85.0),
    ),
    "full pot": (
        Situation(letter="B", actions=("heats",), volume_l=7.5, capacity_l=10.0),
        "B holds 7.5 L of 10.0 L: on the heat, 6.7 L is enough.",
        Situation(letter="B", actions=("heats",), volume_l=6.7, capacity_l=10.0),
    ),
    "goggles": (
        Situation(letter="B", actions=("adds",), adding=(("slaked lime", 8.0),)),
        "Goggles on for 8 g slaked lime in B",
        Situation(letter="B", actions=("adds",), adding=(("chalk", 8.0),)),
    ),
    "madder dust": (
        Situation(letter="B", actions=("weighs powder",), adding=(("madder", 120.0),)),
        "120 g madder for B: keep its dust down",
        Situation(letter="B", actions=("strains",), contents=(("madder", 120.0),)),
    ),
    "dust": (
        Situation(letter="B", actions=("weighs powder",), adding=(("alum", 29.0),)),
        "29 g alum for B: mask on",
        Situation(letter="B", actions=("weighs powder",), adding=(("washing soda", 29.0),)),
    ),
    "iron dose": (
        Situation(letter="B", wof_percent=(("copperas", 5.5),)),
        "5.5 % iron in B is over the limit of 4 %",
        Situation(letter="B", wof_percent=(("copperas", 4.0), ("alum", 12.0))),
    ),
    "hot alkali on wool": (
        Situation(letter="B", contents=(("soda ash", 10.0),), temperature_c=80.0, fibres=("lambswool",)),
        "10 g soda ash in B at 80 °C harms the lambswool",
        Situation(letter="B", contents=(("soda ash", 10.0),), temperature_c=80.0, fibres=("linen",)),
    ),
    "vent the lid": (
        Situation(letter="B", contents=(("bran", 50.0),), lid_on=True),
        "B is lidded and 50 g bran",
        Situation(letter="B", contents=(("bran", 50.0),), lid_on=False),
    ),
    "walnut stain": (
        Situation(letter="B", actions=("lifts",), contents=(("walnut hulls", 240.0),)),
        "240 g walnut in B stains skin",
        Situation(letter="B", actions=("heats",), contents=(("walnut hulls", 240.0),)),
    ),
    "hot vinegar": (
        Situation(letter="B", adding=(("vinegar", 120.0),), temperature_c=80.0),
        "120 g vinegar in B at 80 °C",
        Situation(letter="B", adding=(("vinegar", 120.0),), temperature_c=30.0),
    ),
    "iron and tannin": (
        Situation(letter="B", adding=(("iron", 2.4),), contents=(("gall nut", 12.0),)),
        "2.4 g iron with 12 g gall nut in B is ink",
        Situation(letter="B", adding=(("iron", 2.4),), contents=(("weld", 12.0),)),
    ),
    "pot shifts the shade": (
        Situation(letter="B", material="cast iron", contents=(("weld", 120.0),)),
        "120 g weld in bare iron B: the pot itself saddens the shade.",
        Situation(letter="B", material="stainless steel", contents=(("weld", 120.0),)),
    ),
    "cool-down": (
        Situation(letter="B", actions=("lifts",), temperature_c=90.0, cooling_min=(126.0, 216.0)),
        "B takes 2.1 h to 3.6 h to fall from 90 °C to 40 °C",
        Situation(letter="B", actions=("heats",), temperature_c=90.0, cooling_min=(126.0, 216.0)),
    ),
    "not food": (
        Situation(letter="B", actions=("adds",), adding=(("tartar", 14.0),)),
        "14 g tartar goes in B",
        Situation(letter="B", actions=("adds",), adding=(("neutral textile wash", 14.0),)),
    ),
}


def _of(trigger, situation):
    return [r for r in reminders(situation) if r.trigger == trigger]


def test_every_trigger_has_its_case():
    assert set(CASES) == set(TRIGGERS)


@pytest.mark.parametrize("trigger", CASES)
def test_it_is_said_when_it_applies_with_pot_and_amount(trigger):
    situation, said, _ = CASES[trigger]
    lines = [r.text for r in _of(trigger, situation)]
    assert any(said in line for line in lines), lines


@pytest.mark.parametrize("trigger", CASES)
def test_it_is_not_said_a_step_away(trigger):
    assert _of(trigger, CASES[trigger][2]) == []


@pytest.mark.parametrize("trigger", CASES)
def test_it_never_looks_the_same_in_another_pot(trigger):
    situation = CASES[trigger][0]
    names = {f: getattr(situation, f) for f in situation.__dataclass_fields__}
    elsewhere = Situation(**{**names, "letter": "D"})
    assert {r.text for r in _of(trigger, situation)}.isdisjoint(r.text for r in _of(trigger, elsewhere))


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
        assert "!" not in reminder.text or "!" in str(situation.adding + situation.contents)
        assert len(reminder.text) <= 100, reminder.text


@given(_SITUATIONS)
def test_the_same_situation_is_always_told_the_same(situation):
    assert reminders(situation) == reminders(situation)


@given(_SITUATIONS)
def test_every_line_names_a_pot(situation):
    letters = "|".join({situation.letter, "D"})
    for reminder in reminders(situation):
        assert re.search(rf"\b({letters})\b", reminder.text), reminder.text


def test_an_alum_pot_and_a_vat_are_left_alone_while_the_work_is_at_a_third_vessel():
    others = (OtherVessel("C", (("sodium dithionite", 10.0),)), OtherVessel("D", (("alum", 29.0),)))
    assert reminders(Situation(letter="B", contents=(("madder", 120.0),), other_vessels=others)) == ()
