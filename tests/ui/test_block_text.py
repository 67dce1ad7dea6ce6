"""Letters of blocks: every one legible, none alike, all rows equally wide."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.ui.block_text import (
    BIG,
    CLOCK_FACES,
    NARROW,
    SMALL,
    SNUG,
    block_rows,
    block_width,
    even_face,
    faces_up_to,
    largest_face,
)

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
FACES = [SMALL, BIG, SNUG, NARROW, even_face(3), even_face(4), even_face(7)]


@pytest.mark.parametrize("face", FACES)
def test_no_two_letters_look_alike(face):
    shapes = {block_rows(letter, face) for letter in LETTERS.replace("0", "")}
    assert len(shapes) == len(LETTERS) - 1  # nought is the letter O, as on most clocks


@given(st.text(alphabet=LETTERS + " .:±%?°-", min_size=1, max_size=12), st.sampled_from(FACES))
def test_all_rows_are_as_wide_as_promised(text, face):
    rows = block_rows(text, face)
    if rows is None:
        assert not text.split()
        return
    assert len(rows) == face.rows
    assert {len(row) for row in rows} == {block_width(text, face)}
    assert set("".join(rows)) <= set(" ▀▄█")


def test_a_countdown_in_the_small_face_is_the_one_we_drew():
    assert block_rows("8:12", SMALL) == ("█▀█ ▄ ▀█  ▀▀█", "█▀█ ▄  █  █▀▀", "▀▀▀   ▀▀▀ ▀▀▀")


def test_accents_are_taken_off_and_small_letters_made_large():
    assert block_rows("Évier", SMALL) == block_rows("EVIER", SMALL)


@pytest.mark.parametrize("text", ["", "   ", "茜", "\x1b[2J"])
def test_what_has_no_bitmap_is_not_drawn_in_blocks(text):
    assert block_rows(text, SMALL) is None
    assert block_width(text, BIG) is None


def test_the_largest_face_that_fits_is_taken():
    assert largest_face("0:00", 60, 12) == even_face(4)
    assert largest_face("0:00", 27, 5) == BIG
    assert largest_face("0:00", 22, 5) == SNUG
    assert largest_face("0:00", 17, 5) == NARROW
    assert largest_face("0:00", 15, 5) is None


def test_a_clock_with_a_room_to_itself_fills_it():
    assert largest_face("24", 80, 17, faces_up_to(17)) == even_face(6)
    assert all(face in CLOCK_FACES for face in faces_up_to(5))
