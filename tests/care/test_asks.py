"""The few questions that a hazard hangs on."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.care import ACTIONS, ASKS_PER_DAY, ASKS_PER_DAY_SOURCE, OtherVessel, Situation, ask_before


def test_straining_a_hot_bath_asks_how_hot_it_is():
    need = ask_before(Situation(letter="B", actions=("strains",), temperature_c=70.0, volume_l=2.0))
    assert need.kind == "temperature"
    assert need.question == "How hot is B, 2.0 L, before you strain it? (planned 70 °C)"
    assert need.why == "At 70 °C one second burns."
    assert need.expects[0] < 70.0 < need.expects[1]


def test_a_temperature_that_was_read_is_called_read():
    need = ask_before(Situation(letter="B", actions=("lifts",), temperature_c=84.0, temperature_how="read"))
    assert "lift from it" in need.question
    assert "(read 84 °C)" in need.question


@pytest.mark.parametrize("action", ["strains", "pours", "moves", "lifts"])
def test_sixty_degrees_is_asked_about_and_fifty_nine_is_not(action):
    assert ask_before(Situation(actions=(action,), temperature_c=60.0)) is not None
    assert ask_before(Situation(actions=(action,), temperature_c=59.9)) is None


def test_heating_or_entering_a_hot_bath_asks_nothing():
    assert ask_before(Situation(actions=("heats", "enters"), temperature_c=90.0)) is None


def test_iron_asks_for_the_letter_of_its_pot():
    need = ask_before(
        Situation(letter="D", actions=("adds",), adding=(("copperas", 2.4),), temperature_c=40.0)
    )
    assert need.kind == "pot"
    assert need.expects == ("D",)
    assert need.question == "2.4 g iron: into which pot? (bath 40 °C)"


def test_weighing_iron_or_adding_alum_asks_for_no_pot():
    assert ask_before(Situation(actions=("weighs powder",), adding=(("copperas", 2.4),))) is None
    assert ask_before(Situation(actions=("adds",), adding=(("alum", 29.0),))) is None


def test_chalk_on_alum_asks_only_when_the_foam_could_go_over_the_rim():
    def chalk(mass_g):
        return Situation(
            letter="B",
            actions=("adds",),
            adding=(("chalk", mass_g),),
            contents=(("alum", 29.0),),
            volume_l=8.0,
            capacity_l=10.0,
        )

    assert ask_before(chalk(8.0)) is None
    need = ask_before(chalk(20.0))
    assert need.expects == ("B",)
    assert "4.8 L of gas" in need.why
    assert "2.0 L is free" in need.why


def test_a_pot_of_unknown_size_is_asked_about_rather_than_hoped_for():
    need = ask_before(Situation(adding=(("chalk", 2.0),), contents=(("alum", 29.0),)))
    assert need.hazard == "foam over the rim"
    assert "not known" in need.why


def test_pouring_into_another_bath_asks_for_that_baths_letter():
    need = ask_before(
        Situation(
            letter="A",
            actions=("pours",),
            into="C",
            contents=(("soda ash", 10.0),),
            other_vessels=(OtherVessel("C", (("alum", 29.0),)),),
        )
    )
    assert need.expects == ("C",)
    assert need.question.startswith("10 g soda ash")


def test_the_worst_hazard_is_the_one_asked_about():
    need = ask_before(Situation(actions=("strains", "adds"), adding=(("iron", 2.4),), temperature_c=85.0))
    assert need.hazard == "scald"
    assert need.rank == 2


def test_two_things_that_must_not_meet_are_asked_about_before_anything_else():
    vat = (("sodium dithionite", 10.0),)
    need = ask_before(
        Situation(
            letter="C", actions=("adds",), adding=(("vinegar", 50.0),), contents=vat, temperature_c=60.0
        )
    )
    assert need.rank == 1
    assert need.expects == ("C",)
    assert need.question == "This must not be: sulphur dioxide. Which pot is it really for? (bath 60 °C)"
    assert need.why.startswith("Never 50 g vinegar with 10 g dithionite in C: sulphur dioxide.")


def test_a_kept_bath_is_asked_about_before_it_is_poured_on_what_it_must_not_meet():
    need = ask_before(
        Situation(
            letter="C",
            actions=("pours",),
            pouring=(("alum", None),),
            pouring_from="alum bath",
            contents=(("thiox", 9.0),),
        )
    )
    assert (need.rank, need.expects) == (1, ("C",))


def test_pouring_a_pot_into_the_wrong_one_asks_for_the_pot_it_would_go_into():
    need = ask_before(
        Situation(
            letter="A",
            actions=("pours",),
            into="C",
            contents=(("vinegar", 50.0),),
            other_vessels=(OtherVessel("C", (("sodium dithionite", 10.0),)),),
        )
    )
    assert (need.rank, need.expects) == (1, ("C",))


def test_what_has_met_already_or_stands_in_two_pots_is_not_asked_about():
    met = Situation(
        letter="C", actions=("enters",), contents=(("vinegar", 50.0), ("sodium dithionite", 10.0))
    )
    apart = Situation(
        letter="A",
        actions=("adds",),
        adding=(("alum", 29.0),),
        other_vessels=(OtherVessel("C", (("sodium dithionite", 10.0),)),),
    )
    assert ask_before(met) is None
    assert ask_before(apart) is None


def test_a_kept_iron_bath_asks_for_its_pot_as_fresh_iron_does():
    need = ask_before(
        Situation(letter="D", actions=("pours",), pouring=(("copperas", None),), pouring_from="iron bath")
    )
    assert need.question == "iron: into which pot?"
    assert need.expects == ("D",)


def test_four_asks_a_day_and_where_the_number_comes_from():
    assert ASKS_PER_DAY == 4
    assert "own choice" in ASKS_PER_DAY_SOURCE


@given(
    st.lists(st.sampled_from(ACTIONS), max_size=4).map(tuple),
    st.none() | st.floats(0.0, 105.0),
    st.sampled_from([(), (("iron", 2.4),), (("chalk", 20.0),), (("fairy dust", None),)]),
    st.sampled_from([(), (("alum", None),), (("madder", 120.0),)]),
)
def test_every_question_names_the_pot_and_wants_number_or_letter(actions, temperature_c, adding, contents):
    need = ask_before(
        Situation(letter="K", actions=actions, temperature_c=temperature_c, adding=adding, contents=contents)
    )
    if need is None:
        return
    assert len(need.question) <= 100
    assert "!" not in need.question + need.why
    if need.kind == "temperature":
        assert "K" in need.question
        low, high = need.expects
        assert low <= temperature_c <= high
    else:
        assert need.kind == "pot"
        assert need.expects == ("K",)
