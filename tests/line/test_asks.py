"""A question before a hazard is answered with its figure or letter, or put off; never passed blindly."""

from dataclasses import replace
from pathlib import Path

import pytest
from line.lined import LinedDay, typed_after

from dyesession.account.live import reckoner_for
from dyesession.care import NO_NUMBER, Household
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.opening import resume_day
from dyesession.session.suggest import suggest
from dyesession.storage import DISK


def at_the_ask(folder: Path) -> LinedDay:
    day = LinedDay(folder)
    day.spaces_until("ASK How hot is C")
    return day


def asked(day: LinedDay) -> bool:
    state = day.session.snapshot.state
    return isinstance(suggest(state, day.session.now_s(), day.session.household), Ask)


def test_blank_lines_and_yes_pass_no_question_however_often(tmp_path: Path) -> None:
    day = at_the_ask(tmp_path)
    day.by_hand_s = 0.0  # a held key: nothing else falls due meanwhile
    entries = len(day.session.snapshot.entries)
    out = day.type(["", " ", "y", "yes", "yyyyyyyyyyyy"] * 200)
    facts = [one for one in day.session.snapshot.entries[entries:] if one.event.kind not in e.PROGRAM_KINDS]
    assert facts == []
    assert sum(line.startswith("That answers nothing") for line in out) == 1000


def test_a_figure_answers_the_question_and_is_said_back(tmp_path: Path) -> None:
    day = at_the_ask(tmp_path)
    out = day.type(["158 F"])
    assert "C, the extract pot: 70 °C." in typed_after(out, "158 F")
    confirmed = [one.event for one in day.session.snapshot.entries if isinstance(one.event, e.Confirmed)]
    assert [one.temperature_c for one in confirmed] == [70.0]


def test_not_now_is_written_down_and_the_dyer_goes_on(tmp_path: Path) -> None:
    day = at_the_ask(tmp_path)
    out = day.type(["-"])
    assert any(isinstance(one.event, e.PutOff) for one in day.session.snapshot.entries)
    assert out[-2] == "NEXT strain C into the dye pot."


def test_a_temperature_typed_as_a_reading_answers_the_question_too(tmp_path: Path) -> None:
    day = at_the_ask(tmp_path)
    day.type(["temperature C 72"])
    last = [one.event for one in day.session.snapshot.entries if isinstance(one.event, e.Confirmed)]
    assert [one.temperature_c for one in last] == [72.0]


@pytest.mark.parametrize("answer", ["hot", "106", "-5", "1,000", "82 x"])
def test_what_is_no_temperature_leaves_the_question_standing(tmp_path: Path, answer: str) -> None:
    day = at_the_ask(tmp_path)
    out = day.type([answer])
    assert any(line.startswith("Not done: ") for line in typed_after(out, answer))
    assert asked(day)


@pytest.mark.parametrize("reading", ["temperature C -3", "temperature C -82"])
def test_a_reading_below_nought_answers_no_question(tmp_path: Path, reading: str) -> None:
    day = at_the_ask(tmp_path)
    day.type([reading, reading])
    assert not [one for one in day.session.snapshot.entries if isinstance(one.event, e.Confirmed)]
    assert asked(day)


def test_a_question_stands_before_a_typed_act_and_the_act_follows_its_answer(tmp_path: Path) -> None:
    day = LinedDay(tmp_path)
    day.spaces_until("NEXT strain C into the dye pot, at")
    out = day.type(["strain C into D 1.8 l", "", "71"])
    assert typed_after(out, "strain C into D 1.8 l")[1].startswith("ASK How hot is C")
    assert typed_after(out, "")[0].startswith("That answers nothing")
    assert any("C strained into D, 1.8 L." in line for line in typed_after(out, "71"))


def test_iron_asks_for_its_pot_and_the_wrong_letter_does_not_do(tmp_path: Path) -> None:
    day = LinedDay(tmp_path, "iron-saddening")
    out = day.spaces_until("ASK")
    question = next(line for line in out if line.startswith("ASK"))
    assert "into which pot?" in question
    ask = suggest(day.session.snapshot.state, day.session.now_s(), day.session.household)
    assert isinstance(ask, Ask)
    wrong = next(one.letter for one in day.session.snapshot.state.vessels if one.letter != ask.expected)
    assert typed_after(day.type([wrong]), wrong)[0].startswith("Not done: ")
    assert asked(day)
    day.type([ask.expected.lower()])
    confirmed = [one.event for one in day.session.snapshot.entries if isinstance(one.event, e.Confirmed)]
    assert [one.answer for one in confirmed] == [ask.expected]


def test_the_first_aid_of_a_question_names_the_kitchens_own_number(tmp_path: Path) -> None:
    day = LinedDay(tmp_path)
    day.session.close()
    day.session = resume_day(
        DISK, day.path, day.clock, day.kitchen.household, reckoner_for, poison_centre="0123 456"
    )
    out = day.spaces_until("ASK How hot is C")
    at = next(i for i, line in enumerate(out) if line.startswith("ASK How hot is C"))
    assert out[at + 1].startswith("FIRST AID Scalded: cool running water")
    assert "your poison centre (0123 456)" in out[at + 1]
    assert NO_NUMBER not in out
    assert "0123 456" not in day.path.read_text("utf-8")


def test_a_day_begun_without_a_number_says_once_where_it_goes(tmp_path: Path) -> None:
    day = LinedDay(tmp_path)
    day.kitchen = replace(day.kitchen, poison_centre="")
    assert not day.session.poison_centre
    assert day.type([""]).count(NO_NUMBER) == 1
    assert day.type([""]).count(NO_NUMBER) == 0


def test_what_concerns_who_lives_here_is_said_aloud_and_never_written_down(tmp_path: Path) -> None:
    day = LinedDay(tmp_path, "iron-saddening", household=Household(child_kg=12.0))
    out = day.spaces_until("ASK")
    told = [line for line in out if line.startswith("CARE") and "12 kg child" in line]
    assert len(told) == 1 and "1.2 g swallowed" in told[0]
    after = out[out.index(told[0]) + 1]
    assert after.startswith("FIRST AID Any swallowed")
    assert "12 kg" not in day.path.read_text("utf-8")


def test_keeping_a_bath_is_cautioned_though_no_step_is_under_way(tmp_path: Path) -> None:
    day = LinedDay(tmp_path)
    out = day.spaces_until("NEXT keep")
    at = next(i for i, line in enumerate(out) if line.startswith("NEXT keep"))
    assert any("put by: labelled, lid loose, never a drink bottle" in line for line in out[at - 4 : at])
