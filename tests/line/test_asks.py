"""A question before a hazard is answered with its figure or letter, or put off; never passed blindly."""

from pathlib import Path

import pytest
from line.lined import LinedDay, typed_after

from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.suggest import suggest


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


def test_a_question_stands_before_a_typed_act_and_the_act_follows_its_answer(tmp_path: Path) -> None:
    day = LinedDay(tmp_path)
    day.spaces_until("NEXT strain C into the dye pot, at")
    out = day.type(["strain C into D 1.8 l", "", "71"])
    assert typed_after(out, "strain C into D 1.8 l")[0].startswith("ASK How hot is C")
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
