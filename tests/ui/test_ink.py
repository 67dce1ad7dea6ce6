"""Lines of inked text are never wider than asked, whatever is in them, and cut where a reader would cut."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from dyesession.ui.ink import (
    STRONG,
    TEXT,
    changed_cells,
    cut,
    cut_line,
    fill,
    say,
    shorten,
    spread,
    strip_of,
    tail,
    whole_clauses,
    width_of,
    wrap,
)
from dyesession.ui.sheet import Sheet
from dyesession.ui.theme import DARK

TEXTS = st.text(st.one_of(st.characters(), st.sampled_from("茜染🌀e\u0301 ,;")), max_size=40)
WIDTHS = st.integers(0, 30)


def text_of(line):
    return "".join(text for text, _ in line)


@given(TEXTS, WIDTHS)
def test_a_cut_text_fits(text, width):
    for shortened in (cut(text, width), shorten(text, width), whole_clauses(text, width), tail(text, width)):
        assert cell_len(shortened) <= width


@given(TEXTS, TEXTS, WIDTHS)
def test_a_line_is_filled_to_its_width_exactly(one, other, width):
    line = (say(one), say(other, STRONG))
    assert width_of(cut_line(line, width)) <= width
    assert width_of(fill(line, width)) == width
    assert width_of(spread((say(one),), (say(other),), width)) == width
    assert strip_of(line, width, DARK).cell_length == width


def test_what_is_cut_off_behind_a_piece_that_just_fits_leaves_an_ellipsis():
    assert "".join(text for text, _ in cut_line((say("mask on"), say(" and gloves")), 7)) == "mask o…"
    assert "".join(text for text, _ in wrap([say("never for food at all")], 9, 1)[0]) == "never fo…"


def cells_of(line, width):
    """Each cell of a line with its ink; a wide character fills its first and leaves the second empty."""
    found = []
    for text, ink in fill(line, width):
        for char in text:
            taken = cell_len(char)
            if taken == 0 and found:
                found[-1] = (found[-1][0] + char, ink)
            found += [(char, ink), *[("", ink)] * (taken - 1)] if taken else []
    return found


PIECES = st.lists(st.tuples(TEXTS, st.sampled_from([TEXT, STRONG])).map(lambda piece: say(*piece)), max_size=4)


@given(PIECES, PIECES, PIECES, WIDTHS)
def test_outside_the_cells_that_changed_a_line_is_what_it_was(before, after, common, width):
    was, now = ((*common[:2], *one, *common[2:]) for one in (before, after))
    changed = changed_cells(was, now, width)
    old, new = cells_of(was, width), cells_of(now, width)
    assert [old[x] for x in range(width) if x not in changed] == [new[x] for x in range(width) if x not in changed]
    assert 0 <= changed.start <= changed.stop <= width
    assert not changed_cells(was, was, width)


def test_of_a_line_that_counts_only_the_count_has_changed():
    was, now = ((say("boil "), say(f"{n} min", STRONG), say(" on heat")) for n in (10, 9))
    assert changed_cells(was, now, 40) == range(5, 40)
    was, now = ((say("boil "), say(f"{n} min", STRONG), say(" on heat")) for n in (10, 11))
    assert changed_cells(was, now, 40) == range(5, 11)


@given(TEXTS, TEXTS, st.integers(1, 30), st.integers(1, 4))
def test_a_paragraph_stays_in_its_rectangle(one, other, width, rows):
    lines = wrap([say(one), say(other, STRONG)], width, rows)
    assert len(lines) <= rows
    assert all(width_of(line) <= width for line in lines)


@given(st.lists(st.text(alphabet="abc", min_size=1, max_size=6), min_size=1, max_size=12))
def test_no_word_is_lost_while_there_are_rows(words):
    lines = wrap([say(" ".join(words))], 8)
    assert " ".join(text_of(line) for line in lines).split() == words


def test_an_ellipsis_says_that_something_is_missing():
    assert cut("extract pot", 8) == "extract…"
    assert text_of(wrap([say("strain B into the dye pot")], 12, 1)[0]) == "strain B in…"


def test_whole_clauses_go_before_words():
    second = "read 84 °C, 3 min ago; 3.9 L; alum 29 g"
    assert shorten(second, 30) == "read 84 °C, 3 min ago; 3.9 L"
    assert shorten(second, 27) == "read 84 °C, 3 min ago"
    assert shorten("85 °C, was until 11:50", 18) == "85 °C, was until…"
    assert whole_clauses(second, 4) == ""


def test_a_figure_is_not_parted_from_its_unit_or_its_band():
    lines = wrap([say("Extracting again would bring 15 ± 7 g more")], 33)
    assert [text_of(line).replace("\u00a0", " ") for line in lines] == [
        "Extracting again would bring",
        "15 ± 7 g more",
    ]


@given(TEXTS, st.integers(-5, 12), st.integers(-3, 4), st.integers(0, 10), st.integers(0, 3))
def test_a_sheet_keeps_its_size_whatever_is_put_on_it(text, x, y, width, height):
    sheet = Sheet(width, height)
    sheet.put(x, y, text, TEXT)
    sheet.put_over(x + 1, y, text, "strong")
    sheet.put(x + 3, y, text[::-1], TEXT)
    assert [width_of(line) for line in sheet.lines()] == [width] * height


@pytest.mark.parametrize("width", [-81, -1, 0])
def test_where_there_is_less_than_no_room_nothing_is_said_and_nothing_hangs(width):
    assert shorten("a long clause, and another", width) == whole_clauses("a long clause", width) == ""
