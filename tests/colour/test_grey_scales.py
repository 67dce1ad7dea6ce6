from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.colour.cielab import Lab
from dyesession.colour.grey_scales import change_of_colour, shown, staining
from dyesession.colour.trouble import Unlike
from tests.colour.shades_of_cloth import MADDER, any_lab, read

WHITE = Lab(95.0, 0.0, 2.0)


@given(any_lab, any_lab)
def test_grades_run_from_1_to_5_in_halves(before: Lab, after: Lab) -> None:
    for graded in (change_of_colour, staining):
        found = graded(read(before), read(after))
        assert found.grade in (1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5)
        assert abs(found.exact - found.grade) <= 0.52 or found.exact < 1


@given(st.floats(0, 40), st.floats(0.01, 10))
def test_more_change_is_no_better_a_grade(change: float, more: float) -> None:
    for graded in (change_of_colour, staining):
        little, much = (
            graded(read(WHITE), read(WHITE._replace(lightness=WHITE.lightness - step)))
            for step in (change, change + more)
        )
        assert much.grade <= little.grade or 4.0 <= change + more <= 4.3  # the standard's own small step


def test_no_change_is_grade_5() -> None:
    assert change_of_colour(read(MADDER), read(MADDER)).grade == 5
    assert staining(read(WHITE), read(WHITE)).grade == 5


def test_an_instruments_grade_is_about_a_grade() -> None:
    assert change_of_colour(read(MADDER), read(Lab(44.5, 45.0, 30.0))).words == "about grade 3-4"
    assert shown(4.0) == "4" and shown(1.5) == "1-2"


@pytest.mark.parametrize(
    ("step", "words"), [(0.1, "none to be seen"), (1.7, "slight"), (3.4, "clear"), (9.6, "strong")]
)
def test_a_phones_photo_gives_a_word_and_no_grade(step: float, words: str) -> None:
    photo = replace(read(MADDER), by="photo with card")
    faded = replace(photo, lab=MADDER._replace(lightness=MADDER.lightness + step))
    for pair in ((photo, faded), (read(MADDER), faded)):
        found = change_of_colour(*pair).words
        assert found == words and not any(one.isdigit() for one in found)


def test_a_wet_cloth_is_not_graded() -> None:
    with pytest.raises(Unlike):
        staining(read(WHITE), replace(read(WHITE), wet=True))
