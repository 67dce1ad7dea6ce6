"""What holds after every history, however odd: the engine's own promises, as properties."""

from typing import Any

from days import Day
from histories import moves, play
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.session import events as e
from dyesession.session.fold import Entry, fold, opening_state
from dyesession.session.state import DONE, ENDED, OUT_DRY, OUT_WET

OUT = {OUT_DRY, OUT_WET, DONE}


@given(moves)
@settings(max_examples=300, deadline=None)
def test_space_and_honest_answers_get_home_from_anywhere(history: list[Any]) -> None:
    day = Day()
    play(day, history)
    day.home()
    assert day.state.status == "complete"
    assert all(one.place in OUT for one in day.state.lots)


@given(moves)
@settings(max_examples=100, deadline=None)
def test_the_fold_of_the_facts_is_the_state(history: list[Any]) -> None:
    day = Day()
    play(day, history)
    opening = opening_state(day.plan)
    if not any(isinstance(one.event, e.Corrected) for one in day.entries):
        assert fold(opening, day.entries, day.opened) == day.state
    told = _with_testimony(day.entries)
    without = fold(opening, day.entries, day.opened)
    with_it = fold(opening, told, day.opened)
    assert (with_it.steps, with_it.vessels, with_it.lots) == (without.steps, without.vessels, without.lots)


def _with_testimony(entries: tuple[Entry, ...]) -> tuple[Entry, ...]:
    told: list[Entry] = []
    for one in entries:
        told += [one, Entry(one.n, one.instant, e.Accounted(one.n, ({"vessel": "dye pot", "volume_l": 1.8},)))]
    return tuple(told)


@given(moves)
@settings(max_examples=100, deadline=None)
def test_a_refused_command_says_why_in_one_sentence(history: list[Any]) -> None:
    for _, sentence in play(Day(), history):
        assert sentence[0].isupper() or not sentence[0].isalpha()
        assert sentence.endswith(".") and "\n" not in sentence


@given(moves)
@settings(max_examples=100, deadline=None)
def test_a_lot_is_in_one_place_and_nothing_is_lifted_that_is_not_there(history: list[Any]) -> None:
    day = Day()
    play(day, history)
    names = {one.name for one in day.state.vessels} | OUT
    inside: dict[str, str] = {}
    for entry in day.entries:
        if isinstance(entry.event, e.Entered):
            assert entry.event.lot not in inside
            inside[entry.event.lot] = entry.event.vessel
        elif isinstance(entry.event, e.Dipped):
            assert entry.event.snippet not in inside
            inside[entry.event.snippet] = entry.event.vessel
        elif isinstance(entry.event, e.Lifted):
            assert inside.pop(entry.event.lot) == entry.event.vessel
    assert all(one.place in names for one in day.state.lots)
    assert not day.state.flags


@given(moves)
@settings(max_examples=100, deadline=None)
def test_a_step_begins_before_its_time_only_with_a_reason_in_the_log(history: list[Any]) -> None:
    day = Day()
    play(day, history)
    ended: set[str] = set()
    state = opening_state(day.plan)
    for entry in day.entries:
        event = entry.event
        if isinstance(event, e.Begun) and not event.early:
            step = state.step(event.step)
            assert step is None or set(step.plan.after) <= ended or any(
                isinstance(one.event, e.Replanned) for one in day.entries
            )
        state = fold(opening_state(day.plan), day.entries[: entry.n], day.opened)
        ended = {one.name for one in state.steps if one.status in ENDED}


@given(moves, st.floats(0.5, 600))
@settings(max_examples=100, deadline=None)
def test_a_deadline_moves_by_exactly_as_long_as_it_was_paused(history: list[Any], minutes: float) -> None:
    day = Day()
    play(day, history)
    running = [one for one in day.state.steps if one.status == "running" and one.countdown]
    if not running or day.state.status != "open":
        return
    name, before = running[0].name, running[0].countdown
    day.do(e.Paused(name))
    day.pass_minutes(minutes)
    day.do(e.Resumed(name))
    after = day.state.step(name)
    assert before and after and after.countdown
    assert abs(after.countdown.deadline_s - before.deadline_s - minutes * 60) < 0.01


@given(moves)
@settings(max_examples=60, deadline=None)
def test_session_time_never_runs_backwards(history: list[Any]) -> None:
    day = Day()
    times = [0.0]
    for move in history:
        play(day, [move])
        times.append(day.state.now_s)
    assert times == sorted(times)


@given(moves, st.data())
@settings(max_examples=80, deadline=None)
def test_a_correction_drops_nothing_and_flags_what_no_longer_fits(history: list[Any], data: Any) -> None:
    day = Day()
    play(day, history)
    if not day.entries:
        return
    struck = data.draw(st.integers(1, len(day.entries)))
    day.do(e.Corrected(struck, "that was not so", strike=True))
    state = fold(opening_state(day.plan), day.entries, day.opened)
    assert state.n == len(day.entries)
    assert all(0 < one.n <= state.n and one.text for one in state.flags)
    assert state.now_s >= 0
