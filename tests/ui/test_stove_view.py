"""The view: clocks as they are read, and which pot wants the dyer first."""

import re
from dataclasses import FrozenInstanceError, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.ui.fixtures import FIXTURES, FOUR_POTS
from dyesession.ui.stove_view import Clock, Pot, by_loudness, countdown_clock


@pytest.mark.parametrize(
    ("left_s", "clock"),
    [
        (24 * 60, Clock("24", "min")),
        (23 * 60 + 1, Clock("24", "min")),
        (10 * 60 + 1, Clock("11", "min")),
        (10 * 60, Clock("10:00")),
        (492, Clock("8:12")),
        (491.2, Clock("8:12")),
        (5, Clock("0:05")),
        (0, Clock("0:00")),
        (-1, Clock("DUE", "now")),
        (-59.9, Clock("DUE", "now")),
        (-180, Clock("3", "min over")),
        (5 * 3600, Clock("300", "min")),
        (11.2 * 3600, Clock("12", "hours")),
        (-7 * 3600, Clock("7", "hours over")),
    ],
)
def test_a_clock_shows_whole_minutes_above_ten_then_seconds(left_s, clock):
    assert countdown_clock(left_s) == clock


@given(st.floats(-1e6, 1e6))
def test_a_countdown_never_says_more_is_over_or_less_is_left_than_is_true(left_s):
    clock = countdown_clock(left_s)
    if clock.text == "DUE":
        assert -60 < left_s < 0
        return
    minutes, _, seconds = clock.text.partition(":")
    shown_s = int(minutes) * (3600 if "hour" in clock.unit else 60) + int(seconds or 0)
    coarse_s = 3600 if "hour" in clock.unit else 60 if clock.unit else 1
    if left_s < 0:
        assert shown_s <= -left_s < shown_s + coarse_s
    else:
        assert left_s <= shown_s <= left_s + coarse_s


@given(st.floats(0, 18_000))
def test_no_clock_is_wider_than_the_room_kept_for_it(left_s):
    assert re.fullmatch(r"\d{1,3}|\d{1,2}:\d\d", countdown_clock(left_s).text)


def test_what_is_overdue_comes_first_and_what_waits_last():
    pots = (
        Pot("A", "waits"),
        Pot("B", "runs later", clock=Clock("24", "min"), state="running", loudness=2),
        Pot("C", "runs sooner", clock=Clock("8:12"), state="running", loudness=1),
        Pot("D", "is over", clock=Clock("3", "min over"), state="overdue", loudness=9),
        Pot("E", "is due", clock=Clock("DUE", "now"), state="due"),
    )
    assert [pot.letter for pot in by_loudness(pots)] == ["D", "E", "C", "B", "A"]


def test_a_view_cannot_be_changed_and_equal_views_are_equal():
    with pytest.raises(FrozenInstanceError):
        FOUR_POTS.title = "another"  # type: ignore[misc]
    assert replace(FOUR_POTS) == FOUR_POTS
    assert len(set(map(hash, FIXTURES.values()))) == len(FIXTURES)
