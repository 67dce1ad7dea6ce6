"""A correction that cannot be is refused before it is written; one that stands in a log all the same breaks
nothing.
"""

from typing import Any

import pytest
from days import Day

from dyesession.session import events as e
from dyesession.session.fold import Entry, correction_misfit, fold, opening_state


def weighed() -> Day:
    day = Day()
    day.do(e.Weighed("alum", 29.0))
    day.do(e.Read("wash pot", temperature_c=20.0))
    return day


def setting(key: str, value: Any) -> e.Corrected:
    return e.Corrected(1, "misread", changes=({"key": key, "value": value},))


@pytest.mark.parametrize(
    "correction",
    [
        setting("mass_g", 28.0),
        setting("mass_g", 28),
        setting("ingredient", "tartar"),
        e.Corrected(1, "misread", strike=True),
        setting("resolution_g", 1.0),
    ],
)
def test_a_sound_correction_is_taken(correction: e.Corrected) -> None:
    assert correction_misfit(weighed().entries, correction) is None


@pytest.mark.parametrize(
    ("correction", "why"),
    [
        (setting("mass_g", "heavy"), "a figure was expected"),
        (setting("mass_g", -5.0), "cannot be"),
        (setting("mass_g", float("nan")), "cannot be"),
        (setting("ingredient", 5), "words were expected"),
        (setting("colour", "red"), "has no"),
        (e.Corrected(9, "misread", strike=True), "no entry 9"),
    ],
)
def test_a_correction_that_cannot_be_says_why(correction: e.Corrected, why: str) -> None:
    said = correction_misfit(weighed().entries, correction)
    assert said is not None and why in said


def test_the_programs_own_entries_and_corrections_are_not_corrected() -> None:
    day = weighed()
    day.do(setting("mass_g", 28.0))
    assert correction_misfit(day.entries, e.Corrected(3, "no", strike=True)) is not None


@pytest.mark.parametrize("value", ["heavy", True, [1, 2]])
def test_a_log_with_an_impossible_correction_still_opens_and_flags_the_entry(value: Any) -> None:
    day = weighed()
    entries = (*day.entries, Entry(3, day.clock.now(), setting("mass_g", value)))
    state = fold(opening_state(day.plan), entries, day.opened)
    assert [one.n for one in state.flags] == [1]
    assert state.weighed == ()
