import pytest

from dyesession.colour.trouble import Unlike
from dyesession.colour.typed import read_colour
from dyesession.daybook.fastness import (
    COMES_OFF,
    NOTHING_TO_TELL,
    NoSuchTest,
    before_of,
    begun,
    test_named,
    tried,
)
from dyesession.session import events as e

named = test_named  # pytest would run it
del test_named


def test_a_rub_is_graded_on_the_white_cloth_and_a_clean_one_is_fit_for_use() -> None:
    found = tried(named("rub"), read_colour("lab(95 0 2)"), read_colour("lab(95 0 2)"))
    assert found.words == f"staining: {NOTHING_TO_TELL}" and found.advice == "Fit for use."


def test_a_stained_cloth_sends_the_skein_back_to_the_wash() -> None:
    found = tried(named("rub test"), read_colour("lab(95 0 2)"), read_colour("lab(80 14 10)"), "large skein")
    assert found.grade.grade < 3 and found.words.startswith("staining: about grade") and found.advice == COMES_OFF
    assert found.entry == e.Cared(
        "rub test", "large skein", before="lab(95 0 2) D65/2 ± 0.5 dry", after="lab(80 14 10) D65/2 ± 0.5 dry",
        grade=found.words,
    )  # fmt: skip


def test_a_fading_strand_is_graded_by_its_change() -> None:
    found = tried(named("window"), read_colour("lab(42 45 30)"), read_colour("lab(46 41 27)"))
    assert found.words == "change: about grade 2-3" and "indoors" in found.advice


def test_a_phones_photo_gives_a_word_and_no_grade() -> None:
    before, after = (read_colour(f"lab({lab}) ± 4.5, photo with card") for lab in ("95 0 2", "74 20 14"))
    assert tried(named("rub"), before, after).words == "staining: strong"
    eye = tried(named("wash"), read_colour("#8b3a2b"), read_colour("#e0a090"))
    assert "grade" not in eye.words


def test_below_what_the_readings_can_tell_nothing_is_claimed() -> None:
    before, after = (read_colour(f"lab({lab}) ± 4.5, photo with card") for lab in ("95 0 2", "93 1 3"))
    assert NOTHING_TO_TELL in tried(named("rub"), before, after).words


def test_a_wet_strand_is_not_graded() -> None:
    with pytest.raises(Unlike):
        tried(named("wash"), read_colour("lab(42 45 30)"), read_colour("lab(40 44 30) wet"))


def test_a_test_begun_earlier_is_found_by_its_lot() -> None:
    from days import Day

    day = Day()
    day.do(begun(named("window"), read_colour("lab(42 45 30)"), "large skein"))
    found = before_of(day.entries, named("window"), "large skein")
    assert found is not None and found.lab == (42.0, 45.0, 30.0)
    assert before_of(day.entries, named("window"), "small skein") is None
    assert before_of(day.entries, named("rub"), "large skein") is None


def test_an_unknown_test_is_one_sentence() -> None:
    with pytest.raises(NoSuchTest, match="for example"):
        named("boil")
