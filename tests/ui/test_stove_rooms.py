"""Where everything goes: inside the window, never on top of one another, and what gives way first."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ui.on_screen import drawn, text_of

from dyesession.ui.fixtures import ALARM, ASK_NUMBER, ASK_POT, AWAY, FIXTURES, FOUR_POTS, THREE_POTS, TWO_POTS
from dyesession.ui.stove_rooms import arrange, liquor_cells, pot_widths
from dyesession.ui.stove_view import Clock, Pot

VIEWS = st.sampled_from(list(FIXTURES.values()))


def boxes_of(arrangement):
    return [*arrangement.boxes.values(), *(place.box for place in arrangement.pots)]


def cells_of(box):
    return {(x, y) for x in range(box.x, box.x + box.width) for y in range(box.y, box.y + box.height)}


@settings(max_examples=150)
@given(VIEWS, st.integers(1, 220), st.integers(1, 70), st.booleans())
def test_everything_is_in_the_window_and_nothing_lies_on_anything(view, width, height, note):
    view = replace(view, note="a note") if note else view
    taken = set()
    for box in boxes_of(arrange(view, width, height)):
        assert box.x >= 0 and box.y >= 0 and box.width > 0 and box.height > 0
        assert box.x + box.width <= width and box.y + box.height <= height
        cells = cells_of(box)
        assert not cells & taken
        taken |= cells


@settings(max_examples=60, deadline=None)
@given(VIEWS, st.integers(60, 220), st.integers(18, 70))
def test_the_next_act_the_alarm_and_every_pot_are_on_every_ordinary_window(view, width, height):
    arrangement = arrange(view, width, height)
    assert ("ask" if view.ask else "next") in arrangement.boxes
    assert ("ringing" in arrangement.boxes) == (view.ringing is not None)
    over_the_pots = view.away or view.where is not None or view.offers
    if not over_the_pots and not (view.ask and height < 22):
        shown = {place.pot.letter for place in arrangement.pots} | {pot.letter for pot in arrangement.lines}
        assert shown == {pot.letter for pot in view.pots}


@settings(max_examples=40, deadline=None)
@given(VIEWS, st.integers(1, 80), st.integers(1, 24))
def test_no_window_is_too_small_to_draw(view, width, height):
    for strips in drawn(view, width, height).values():
        assert len({strip.cell_length for strip in strips}) <= 1


@pytest.mark.parametrize("size", [(40, 10), (59, 40), (100, 17), (20, 6)])
def test_below_sixty_by_eighteen_there_is_the_loudest_clock_and_the_next_act(size):
    assert set(arrange(THREE_POTS, *size).boxes) == {"loudest", "next"}
    words = text_of(drawn(THREE_POTS, *size))
    assert "extract pot" in words or "B" in words
    assert "mordant" not in words


def test_a_tiny_window_still_shows_what_rings_and_what_is_asked():
    assert set(arrange(ALARM, 40, 12).boxes) == {"ringing", "loudest", "next"}
    assert "How hot is A" in text_of(drawn(ASK_NUMBER, 40, 10))
    assert "84" in text_of(drawn(ASK_NUMBER, 40, 10))


def test_the_second_sentence_goes_before_the_first():
    assert "Extracting again" in text_of(drawn(TWO_POTS, 80, 24))
    small = text_of(drawn(TWO_POTS, 60, 18))
    assert "71 ± 13 g" in small.replace("\u00a0", " ")
    assert "Extracting again" not in small


def test_finished_parts_of_the_lanes_give_way_first():
    wide, small = text_of(drawn(TWO_POTS, 140, 24)), text_of(drawn(TWO_POTS, 80, 24))
    assert "scour ✓" in wide and "soak ✓" in wide
    assert "scour" not in small and "✓ 2" in small and "✓ 3" in small
    assert "extract again ●" in small


def test_a_third_pot_becomes_a_line_with_its_clock():
    running = (*TWO_POTS.pots, Pot("C", "dye pot", clock=Clock("55", "min"), state="running", loudness=9))
    arrangement = arrange(replace(TWO_POTS, pots=running), 60, 18)
    assert [place.pot.letter for place in arrangement.pots] == ["A", "B"]
    assert [pot.letter for pot in arrangement.lines] == ["C"]
    assert "55 min" in text_of(drawn(replace(TWO_POTS, pots=running), 60, 18))


def test_the_loudest_pots_keep_their_pictures():
    pots = tuple(replace(pot, state="overdue") if pot.letter == "D" else pot for pot in FOUR_POTS.pots)
    arrangement = arrange(replace(FOUR_POTS, pots=pots), 60, 24)
    assert [place.pot.letter for place in arrangement.pots] == ["B", "D"]


def test_four_pots_stand_side_by_side_at_eighty_columns():
    assert [place.pot.letter for place in arrange(FOUR_POTS, 80, 24).pots] == ["A", "B", "C", "D"]


def test_rarer_keys_give_way_and_more_and_help_stay():
    words = text_of({"keys": drawn(TWO_POTS, 60, 18)["keys"]})
    assert ". more" in words and "? help" in words and "space done" in words
    assert "colour" not in words
    assert "c colour" in text_of({"keys": drawn(TWO_POTS, 140, 40)["keys"]})


def test_a_wide_window_adds_the_curve_the_bars_and_the_shade():
    assert {"curve", "bars", "shade"} <= set(arrange(TWO_POTS, 200, 60).boxes)
    assert not {"curve", "bars", "shade"} & set(arrange(TWO_POTS, 80, 60).boxes)


@pytest.mark.parametrize("view", [ASK_NUMBER, ASK_POT], ids=["number", "letter"])
@pytest.mark.parametrize("size", [(60, 18), (80, 24), (200, 60)])
def test_an_ask_is_shown_whole_with_its_reason(view, size):
    strips = drawn(view, *size)["ask"]
    words = " ".join(" ".join(strip.text.strip("║ ") for strip in strips).split()).replace("\u00a0", " ")
    assert view.ask.question in words and view.ask.why in words and "not now" in words


@given(st.sampled_from(["24", "9:59", "0:00", "120"]), st.sampled_from(["2:11", "17", "5:00"]))
def test_nothing_moves_when_a_number_changes(one, other):
    first = arrange(TWO_POTS, 80, 24)
    clocks = (Clock(one, "min"), Clock(other))
    pots = tuple(replace(pot, clock=clock) for pot, clock in zip(TWO_POTS.pots, clocks, strict=True))
    second = arrange(replace(TWO_POTS, pots=pots), 80, 24)
    assert first.boxes == second.boxes
    assert [(place.box, place.face) for place in first.pots] == [(p.box, p.face) for p in second.pots]


@given(st.integers(1, 6), st.integers(20, 220), st.integers(4, 20))
def test_pots_fit_beside_one_another(many, width, rows):
    pots = tuple(Pot(letter, "pot", clock=Clock("1:00") if index % 2 else None)
                 for index, letter in enumerate("ABCDEF"[:many]))  # fmt: skip
    widths = pot_widths(pots, max(width, 20 * many), rows)
    assert sum(widths) <= max(width, 20 * many)
    assert all(liquor_cells(each) >= 8 for each in widths)


def test_from_across_the_room_there_is_no_room_for_sentences():
    assert set(arrange(AWAY, 80, 24).boxes) == {"away", "next", "keys"}
