"""A whole dye day by typed lines alone: closed in the middle of a hold, taken up on the same second, closed
at last.
"""

import pytest
from line import whole_day as w
from line.lined import LinedDay, typed_after

from dyesession.daybook import review
from dyesession.session import events as e
from dyesession.session.fold import fold, opening_state
from dyesession.session.log import check_log
from dyesession.session.opening import read_day
from dyesession.storage import DISK

UNTIL_CALLED_AWAY = (w.SCOUR_AND_EXTRACT, w.MORDANT_BESIDE_THE_EXTRACT, w.REFRESH, w.DYE_UNTIL_CALLED_AWAY)
AWAY_S = 400.0


def left_s(day: LinedDay) -> float:
    """Seconds left of the dye step's hold."""
    step = day.session.snapshot.state.step("dye")
    assert step is not None and step.countdown is not None and step.countdown.kind == "hold"
    return step.countdown.left_s(day.session.now_s())


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> tuple[LinedDay, list[str], list[str], float]:
    """The day, what was printed before and after it was taken up again, and the seconds that were lost by
    that.
    """
    day = LinedDay(tmp_path_factory.mktemp("day"))
    before = [line for part in UNTIL_CALLED_AWAY for line in day.type(w.typed(part))]
    left_before_s = left_s(day)
    day.reopen(AWAY_S)
    lost_s = left_before_s - AWAY_S - left_s(day)
    after = [line for part in (w.DYE_ON, w.RINSE_KEEP_CLOSE) for line in day.type(w.typed(part))]
    day.session.close()
    return day, before, after, lost_s


Told = tuple[LinedDay, list[str], list[str], float]


def test_mordant_and_extract_run_at_the_same_time(told: Told) -> None:
    assert any(
        "; C, the extract pot: extract, keep" in line and "B, the mordant pot" in line for line in told[1]
    )


def test_each_step_begun_shows_its_care(told: Told) -> None:
    begun = typed_after(
        told[1], "begin strain again" if "> begin strain again" in told[1] else "begin mordant"
    )
    assert any(line.startswith("CARE ") for line in begun)


def test_the_account_is_said_after_a_strain(told: Told) -> None:
    said = typed_after(told[1], "strain C 1.9 l")
    assert any(line.startswith("The dye pot holds the colour of ") and line.endswith("a guess.") for line in said), said


def test_a_day_taken_up_in_the_middle_of_a_hold_stands_on_the_same_second(told: Told) -> None:
    _, before, after, lost_s = told
    assert lost_s == pytest.approx(0.0, abs=1e-6)
    assert any("keep at 80 °C until 09:04" in line for line in before)
    assert any("D, the dye pot" in line and "keep at 80 °C until 09:04" in line for line in after)


def test_taken_up_again_it_says_where_everything_is_before_it_asks_anything(told: Told) -> None:
    after = told[2]
    opening = after[: next(i for i, line in enumerate(after) if line.startswith("> "))]
    assert any("snippet 1" in line and line.startswith("D, the dye pot") for line in opening)
    assert any(line.startswith("Put in last: ") for line in opening)
    assert any("opened again after" in line for line in opening)


def test_quitting_says_in_one_line_that_the_clocks_go_on(told: Told) -> None:
    day, before, _, _ = told
    assert typed_after(before, "quit") == [
        f"The clocks go on. To take the day up again: dyesession resume {day.path}"
    ]


def test_the_log_passes_check_and_holds_the_day(told: Told) -> None:
    day = told[0]
    assert check_log(day.path) == []
    book = read_day(DISK, day.path)
    state = fold(opening_state(book.plan), book.entries, book.opened)
    assert state.status == "complete"
    assert state.verdict == "a warm brick red, level"
    assert state.flags == ()
    facts = [one.event for one in book.entries if one.event.kind not in e.PROGRAM_KINDS]
    assert {one.kind for one in facts} >= {
        "begun", "weighed", "filled", "added", "entered", "lit", "reached", "read", "acknowledged",
        "confirmed",
        "put-off", "strained", "refreshed", "skipped", "lifted", "topped-up", "dipped", "on-shade",
        "finished",
        "kept", "discarded", "noted", "corrected", "closed",
    }  # fmt: skip


def test_the_log_holds_what_was_typed_in_grams_litres_and_degrees(told: Told) -> None:
    book = read_day(DISK, told[0].path)
    events = [one.event for one in book.entries]
    weighed = {one.ingredient: one.mass_g for one in events if isinstance(one, e.Weighed)}
    assert weighed["madder"] == pytest.approx(4.25 * 28.349523125)
    assert [one.volume_l for one in events if isinstance(one, e.Strained)] == [1.8, 1.9]
    assert [one.temperature_c for one in events if isinstance(one, e.Confirmed)] == [70.0, 68.0]
    assert [one.text for one in events if isinstance(one, e.Noted)] == ["the water was hard today"]


def test_the_review_shows_the_day(told: Told) -> None:
    shown = review(read_day(DISK, told[0].path))
    by_name = {one.name: one for one in shown.steps}
    assert by_name["extract 3"].status == "skipped" and by_name["extract 3"].why == "strong enough"
    assert by_name["dye"].actual.held_min == pytest.approx(61, abs=2)
    assert [one.entry_kind for one in shown.corrections] == ["kept"]
    assert shown.verdict == "a warm brick red, level"


def test_nothing_printed_could_act_on_a_terminal(told: Told) -> None:
    for line in (*told[1], *told[2]):
        assert line.isprintable()
        assert not any("─" <= one <= "▟" for one in line), "no drawing"
