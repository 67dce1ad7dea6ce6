"""Baths put by, opened again, poured in and thrown away; and when each is to be looked at."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.care import Household, Situation, keeping, reminders
from dyesession.care.keeping import FORMS, PLACES
from dyesession.substances import load

CONTENTS = st.lists(st.tuples(st.sampled_from(sorted(load())), st.none()), max_size=4).map(tuple)


def _texts(situation):
    return {r.trigger: r.text for r in reminders(situation)}


@pytest.mark.parametrize(
    ("contents", "place", "form", "days"),
    [
        ((("madder", None),), "room", "bath", 2),
        ((("madder", None),), "cold", "bath", 7),
        ((("madder", None),), "frozen", "bath", 90),
        ((("alum", 29.0), ("tartar", 14.0)), "room", "bath", 14),
        ((("alum", 29.0), ("weld", None)), "room", "bath", 2),
        ((("iron", 2.4),), "room", "bath", 2),
        ((("gall nut", 12.0),), "room", "bath", 2),
        ((("indigo", 5.0), ("slaked lime", 10.0), ("fructose", 20.0)), "room", "bath", 7),
        ((("alum", 100.0),), "room", "stock", 180),
        ((("soda ash", 100.0),), "room", "stock", 180),
        ((("citric acid", 100.0),), "room", "stock", 30),
        ((("tannic acid", 10.0),), "room", "stock", 7),
        ((("iron", 10.0),), "room", "stock", 7),
        ((("alum", 500.0),), "room", "dry", 730),
        ((), "room", "bath", 2),
        ((("fairy dust", 1.0),), "room", "bath", 2),
    ],
)
def test_a_jar_is_looked_at_again_when_the_worst_keeping_thing_in_it_asks(contents, place, form, days):
    assert keeping(contents, place, form).days == days


@given(CONTENTS, CONTENTS, st.sampled_from(PLACES), st.sampled_from(FORMS))
def test_more_in_the_jar_never_makes_it_keep_longer(one, other, place, form):
    both = keeping((*one, *other), place, form)
    assert both.days <= max(keeping(one, place, form).days, keeping(other, place, form).days)
    if one:
        assert both.days <= keeping(one, place, form).days


@given(CONTENTS, st.sampled_from(PLACES), st.sampled_from(FORMS))
def test_every_keeping_time_says_that_nobody_published_it(contents, place, form):
    found = keeping(contents, place, form)
    assert "no source" in found.source
    assert 0 < found.days <= found.most_days


def test_a_place_nobody_knows_is_an_error_not_a_guess():
    with pytest.raises(ValueError, match="cellar"):
        keeping((), "cellar")


def test_a_bath_put_by_is_told_label_lid_bottle_and_day():
    said = _texts(Situation(letter="D", actions=("keeps",), contents=(("madder", None),)))
    assert said["put by"] == ("D put by: labelled, lid loose, never a drink bottle; look again in 2 days.")


def test_the_dyers_own_date_goes_before_the_usual_one():
    own = Situation(letter="D", actions=("keeps",), contents=(("madder", None),), look_again_in_days=1.0)
    assert _texts(own)["put by"].endswith("look again in 1 day.")


def test_a_plant_bath_put_by_under_a_tight_lid_is_vented_and_never_tasted():
    tight = Situation(letter="D", actions=("keeps",), contents=(("weld", None),), lid_on=True)
    assert set(_texts(tight)) == {"put by", "sealed and warm", "vent the lid"}
    loose = Situation(letter="D", actions=("keeps",), contents=(("weld", None),))
    assert set(_texts(loose)) == {"put by"}


def test_a_kept_bath_past_its_date_is_opened_outdoors_and_one_in_time_only_away_from_the_face():
    def opened(days):
        return Situation(
            actions=("opens",), pouring=(("weld", None),), pouring_from="weld bath 2", look_again_in_days=days
        )

    assert _texts(opened(-4.0))["past its date"] == (
        "weld bath 2: 4 days past its date. Look outdoors: foul or fuzzy, out; else relabel."
    )
    assert "opened again" not in _texts(opened(-4.0))
    assert set(_texts(opened(1.0))) == {"opened again"}


def test_a_kept_bath_of_alum_alone_does_not_rot():
    alum = Situation(actions=("opens",), pouring=(("alum", 29.0),), pouring_from="alum bath")
    assert reminders(alum) == ()


def test_a_kept_bath_of_which_nothing_is_known_is_opened_as_if_it_could_rot():
    assert "opened again" in _texts(Situation(actions=("opens",), pouring_from="an old jar"))


@pytest.mark.parametrize(
    ("contents", "said"),
    [
        ((("chrome", 1.0), ("alum", 29.0)), "none of it down any drain"),
        ((("copper sulphate", 1.0), ("lye", 29.0)), "no septic tank, pond or storm drain"),
        ((("dithionite", 1.0), ("slaked lime", 10.0)), "until no yellow-green is left"),
        ((("slaked lime", 10.0),), "apart from acid and bleach"),
        ((("alum", 29.0), ("madder", None)), "where local rules allow; not to a septic tank"),
        ((("weld", None),), "Plants to the compost"),
    ],
)
def test_a_bath_thrown_away_goes_as_the_worst_thing_in_it_must(contents, said):
    line = _texts(Situation(letter="B", actions=("discards",), contents=contents))["thrown away"]
    assert said in line
    assert "local rules" in line.lower() or "hazardous-waste" in line


def test_plain_water_is_poured_away_without_a_word():
    assert reminders(Situation(letter="B", actions=("discards",))) == ()


def test_what_is_locked_up_and_looks_like_juice_is_told_only_where_somebody_small_lives():
    kept = {"letter": "D", "actions": ("keeps",), "contents": (("cochineal", None),)}
    assert "looks like juice" not in _texts(Situation(**kept))
    small = Situation(**kept, household=Household(pet_kg=4.0))
    (line,) = [r for r in reminders(small) if r.trigger == "looks like juice"]
    assert line.private and "to a pet" in line.text
