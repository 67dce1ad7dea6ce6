"""The line of first aid under a step's reminders."""

import pytest
from care.cases import CASES
from hypothesis import given
from hypothesis import strategies as st

from dyesession.care import FIRST_AID_KEYS, Household, Situation, first_aid_for, reminders
from dyesession.care.first_aid import FIRST_AID_URGENCY
from dyesession.substances import load

CASE = st.sampled_from(sorted(CASES))


def test_every_kind_of_first_aid_has_its_short_line():
    assert set(FIRST_AID_URGENCY) == set(FIRST_AID_KEYS)


@given(CASE)
def test_wherever_there_is_a_caution_the_number_is_printed_with_it(trigger):
    line = first_aid_for(CASES[trigger][0], "0123 456")
    assert "your poison centre (0123 456)" in line
    assert len(line) <= 140
    assert "!" not in line and "{" not in line


@given(CASE)
def test_without_a_number_the_line_sends_to_a_centre_or_the_emergency_number(trigger):
    assert "your poison centre or the emergency number" in first_aid_for(CASES[trigger][0])


def test_where_there_is_no_caution_there_is_no_first_aid():
    assert reminders(Situation()) == ()
    assert first_aid_for(Situation(), "0123 456") == ""


@pytest.mark.parametrize(
    ("situation", "begins"),
    [
        (Situation(actions=("strains",), temperature_c=70.0), "Scalded: cool running water at once"),
        (
            Situation(
                actions=("weighs powder", "lifts"),
                adding=(("iron", 2.4),),
                temperature_c=50.0,
                household=Household(child_kg=12.0),
            ),
            "Any swallowed: ring",
        ),
        (Situation(adding=(("vinegar", 50.0),), contents=(("bleach", 20.0),)), "Choking or dizzy: out"),
        (Situation(actions=("adds",), adding=(("slaked lime", 8.0),)), "In an eye: running water"),
        (Situation(actions=("adds",), adding=(("lye", 8.0),)), "On skin or in an eye: wet things off"),
        (Situation(actions=("grinds",), adding=(("cochineal", 12.0),)), "Tight chest or swelling"),
        (Situation(actions=("weighs powder",), adding=(("alum", 29.0),)), "In an eye or on skin"),
        (Situation(adding=(("bichromate", 3.0),)), "Swallowed, breathed or on skin"),
    ],
)
def test_the_line_is_of_the_worst_harm_of_the_step(situation, begins):
    assert first_aid_for(situation).startswith(begins)


def test_of_two_powders_the_more_pressing_one_decides():
    both = Situation(actions=("weighs powder",), adding=(("alum", 29.0), ("iron", 2.4)))
    assert first_aid_for(both).startswith("Any swallowed")


@given(st.text(max_size=40))
def test_whatever_stands_for_a_number_stays_on_one_printable_line(number):
    assert first_aid_for(CASES["dust"][0], number).isprintable()


def test_every_key_a_substance_carries_is_ranked():
    assert {one.first_aid for one in load().values()} <= set(FIRST_AID_URGENCY)
