"""The dyer's own questions, each answered in a sentence; and figures that can hardly be, asked about in words."""

import pytest
from line.lined import LinedDay, typed_after

from dyesession.session import events as e


@pytest.fixture(scope="module")
def strained(tmp_path_factory):
    day = LinedDay(tmp_path_factory.mktemp("strained"))
    day.spaces_until("NEXT begin: extract again")
    return day


def facts(day):
    return [one.event for one in day.session.snapshot.entries if one.event.kind not in e.PROGRAM_KINDS]


def test_a_level_above_the_brim_is_asked_about_and_kept_as_a_note_when_insisted_on(strained):
    before = facts(strained)
    out = strained.type(["volume D 40 l", "where", "volume D 40 l"])
    asked = typed_after(out, "volume D 40 l")[0]
    assert "40 L in the dye pot, whose brim is at 12 L" in asked and "Type it again" in asked
    [noted] = facts(strained)[len(before) :]
    assert isinstance(noted, e.Noted) and noted.doubted and "40" in noted.text
    assert strained.session.snapshot.state.vessel("dye pot").bath.volume_l != 40.0


def test_an_ordinary_level_is_taken_without_a_word(strained):
    out = strained.type(["volume D 1.9 l"])
    assert not any("Type it again" in line for line in out)
    assert isinstance(facts(strained)[-1], e.Read) and facts(strained)[-1].volume_l == 1.9


def test_how_to_take_a_strength_is_told_in_two_lines(strained):
    out = typed_after(strained.type(["strength"]), "strength")
    assert len(out[:2]) == 2 and "1:2 of the first strain" in out[0] and "Three white dishes" in out[1]


def test_what_would_this_old_bath_still_do_for_that_silk(strained):
    answer = typed_after(strained.type(["would D 80 g silk"]), "would D 80 g silk")[0]
    assert answer.startswith("80 g of silk, mordanted as the first was, would take up ")
    assert "of madder from the dye pot" in answer and "% of its weight" in answer


@pytest.mark.parametrize("line", ["would", "would D", "would D 80 g marble", "would D silk"])
def test_a_question_that_lacks_its_fibre_says_what_is_wanted(strained, line):
    assert typed_after(strained.type([line]), line)[0].startswith("Not done: ")


def test_the_account_says_whether_to_extract_again_while_the_dyestuff_is_in_the_sieve(strained):
    out = typed_after(strained.type(["account D"]), "account D")
    assert any(": one more refresh would bring about" in line for line in out)
    assert any("a guess" in line for line in out)


def test_is_it_dark_enough_wet_has_its_answer_in_the_dye_bath(tmp_path):
    day = LinedDay(tmp_path)
    day.spaces_until("NEXT look at the shade in D")
    out = typed_after(day.type(["dark D"]), "dark D")
    assert "of the madder it would take in the end" in out[0] and "a guess" in out[0]
    assert any("Wet fibre looks darker than it dries" in line for line in out)
    dried = typed_after(day.type(["dried D 60 %"]), "dried D 60 %")
    assert any("By the dried snippet the large skein stands at 60 ± " in line for line in dried)
    assert typed_after(day.type(["dried D"]), "dried D")[0].startswith("Not done: ")
    drawn = next(line for line in typed_after(day.type(["account D"]), "account D") if line.startswith("Over the day: "))
    assert "g/L" in drawn and len(set(drawn) & set("▁▂▃▄▅▆▇█")) >= 3
