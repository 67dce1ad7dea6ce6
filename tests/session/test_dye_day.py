"""A whole day at the engine: what the trade expects of each step."""

import pytest
from days import Day, madder_plan

from dyesession.care import Household
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.engine import Refused
from dyesession.session.fold import fold, opening_state
from dyesession.session.suggest import Wait, rings


def test_space_and_honest_answers_bring_the_day_home() -> None:
    day = Day()
    day.home()
    assert {one.status for one in day.state.steps} == {"complete"}
    assert [one.label.rsplit(" ", 1)[0] for one in day.state.kept] == ["alum bath", "madder bath"]
    assert not day.state.flags


def test_fibre_and_liquor_run_at_the_same_time() -> None:
    day = Day()
    day.until(Wait)
    running = {one.name for one in day.state.steps if one.status == "running"}
    assert running == {"scour", "extract"}


def test_a_hold_starts_when_the_temperature_is_reached() -> None:
    day = Day()
    while not isinstance(day.suggest(), Wait):
        day.space()
    scour = day.state.step("scour")
    assert scour and scour.countdown and scour.countdown.kind == "rise"
    day.pass_minutes(21)
    day.do(e.Reached("wash pot", 60.0, "read"))
    scour = day.state.step("scour")
    assert scour and scour.countdown and scour.countdown.kind == "hold"
    assert scour.countdown.deadline_s == pytest.approx(21 * 60 + 30 * 60)


def test_a_reading_at_the_wanted_heat_starts_the_hold() -> None:
    day = Day()
    while not isinstance(day.suggest(), Wait):
        day.space()
    day.do(e.Read("wash pot", temperature_c=48.0))
    assert day.state.step("scour").countdown.kind == "rise"  # type: ignore[union-attr]
    day.do(e.Read("wash pot", temperature_c=59.5))
    assert day.state.step("scour").countdown.kind == "hold"  # type: ignore[union-attr]


def test_pausing_moves_a_deadline_by_as_long_as_it_stood_still() -> None:
    day = Day()
    while not isinstance(day.suggest(), Wait):
        day.space()
    before = day.state.step("scour").countdown.deadline_s  # type: ignore[union-attr]
    day.do(e.Paused("scour"))
    day.pass_minutes(17)
    day.do(e.Resumed("scour"))
    after = day.state.step("scour").countdown.deadline_s  # type: ignore[union-attr]
    assert after - before == pytest.approx(17 * 60)


def test_extending_gives_a_hold_longer_and_it_rings_anew() -> None:
    day = Day()
    day.until(Wait)
    day.space()
    ring = rings(day.state, day.now_s)[0]
    day.do(e.Acknowledged(ring.countdown))
    assert not rings(day.state, day.now_s)
    day.do(e.Extended(ring.step, 10))
    assert not rings(day.state, day.now_s)
    day.pass_minutes(10.1)
    assert ring.step in [one.step for one in rings(day.state, day.now_s)]


def test_a_hot_pot_nobody_answers_becomes_an_alarm_and_stays_one_until_seen() -> None:
    day = Day()
    day.until(Wait)
    day.space()
    assert rings(day.state, day.now_s)[0].severity == "prompt"
    day.pass_minutes(6)
    loudest = rings(day.state, day.now_s)[0]
    assert loudest.severity == "alarm" and loudest.over_s >= 6 * 60
    day.pass_minutes(300)
    assert rings(day.state, day.now_s)[0].severity == "alarm"


def test_space_on_a_dose_logs_it_as_planned_and_a_weighing_as_weighed() -> None:
    day = Day()
    added = day.until(e.Added)
    assert isinstance(added, e.Added) and added.how == "planned"
    day.do(e.Weighed(added.ingredient, 15.0, 1.0))
    again = day.suggest()
    assert isinstance(again, e.Added) and (again.mass_g, again.how) == (15.0, "weighed")


def test_fibre_is_lifted_before_anything_is_added() -> None:
    day = Day()
    day.until(Wait)
    with pytest.raises(Refused, match="Lift large skein and small skein out of the wash pot"):
        day.do(e.Added("wash", "wash pot", 1.0))


def test_a_step_before_its_time_needs_a_reason_which_is_logged() -> None:
    day = Day()
    with pytest.raises(Refused, match="comes after scour"):
        day.do(e.Begun("mordant"))
    day.do(e.Begun("mordant", early="already scoured"))
    assert isinstance(day.entries[-1].event, e.Begun) and day.entries[-1].event.early == "already scoured"


def test_stopping_refreshes_sooner_leaves_out_what_comes_after() -> None:
    day = Day()
    while (second := day.state.step("strain")) and second.status != "complete":
        day.space()
    day.do(e.Skipped("extract again", "strong enough"))
    left_out = {one.name for one in day.state.steps if one.status == "skipped"}
    assert left_out == {"extract again", "strain again", "extract 3", "strain 3"}
    day.home()


def test_one_refresh_more_is_put_before_the_dyeing() -> None:
    day = Day()
    while (third := day.state.step("strain 3")) and third.status != "complete":
        day.space()
    day.do(e.Replanned("refresh", "strain 3", "still giving colour"))
    dye = day.state.step("dye")
    assert dye and "strain 4" in dye.plan.after and not day.state.ready(dye)
    day.home()
    assert {one.status for one in day.state.steps} == {"complete"}


def test_the_eye_may_end_the_dyeing_but_not_before_its_least_time() -> None:
    day = Day()
    while (dye := day.state.step("dye")) and dye.held_since_s is None:
        day.space()
    day.pass_minutes(10)
    with pytest.raises(Refused, match="at least 30 min"):
        day.do(e.OnShade("dye"))
    day.pass_minutes(25)
    day.do(e.OnShade("dye"))
    assert day.state.step("dye").status == "complete"  # type: ignore[union-attr]


def test_a_snippet_is_dipped_and_lifted_beside_the_skeins() -> None:
    day = Day()
    while (dye := day.state.step("dye")) and dye.held_since_s is None:
        day.space()
    day.do(e.Dipped("snippet 1", "dye pot"))
    day.pass_minutes(15)
    day.do(e.Lifted("snippet 1", "dye pot"))
    snippet = day.state.lot("snippet 1")
    assert snippet and snippet.snippet and snippet.place == "out wet"
    day.home()


def test_an_overnight_step_ends_in_the_morning() -> None:
    day = Day()
    while (dry := day.state.step("dry")) and dry.countdown is None:
        day.space()
    while not isinstance(wait := day.suggest(), Wait):
        day.space()
    assert isinstance(wait, Wait) and wait.until_s is not None
    day.clock.advance(wait.until_s - day.now_s)
    assert day.clock.now().at.hour == 7


def test_skeins_are_lifted_from_the_rinse_when_drying_begins() -> None:
    day = Day()
    while (dry := day.state.step("dry")) and dry.status == "waiting":
        day.space()
    assert {one.place for one in day.state.lots} == {"rinse bowl"}
    assert [type(day.space()) for _ in day.state.lots] == [e.Lifted, e.Lifted]
    assert {one.place for one in day.state.lots} == {"out wet"}
    while (dry := day.state.step("dry")) and dry.status != "complete":
        day.space()
    assert {one.place for one in day.state.lots} == {"out dry"}


def test_drying_takes_no_fibre_out_of_a_pot_that_is_at_work() -> None:
    day = Day()
    while (dye := day.state.step("dye")) and dye.held_since_s is None:
        day.space()
    day.do(e.Begun("dry", early="the other washing dries too"))
    while not isinstance(day.suggest(), Wait):
        assert not isinstance(day.space(), e.Lifted)
    assert {one.place for one in day.state.lots} == {"dye pot"}


def test_a_step_left_out_lets_nothing_begin_before_what_it_came_after() -> None:
    day = Day()
    day.until(Wait)
    day.do(e.Skipped("strain 3", "two are enough"))
    day.do(e.Skipped("mordant", "mordanted already"))
    dye = day.state.step("dye")
    assert dye and not day.state.ready(dye)
    with pytest.raises(Refused, match="comes after mordant and strain 3"):
        day.do(e.Begun("dye"))
    day.home()


def test_breaking_off_turns_every_ring_off_and_needs_clearing() -> None:
    day = Day()
    day.until(Wait)
    day.do(e.Aborted("boiled over"))
    assert not any(one.on_heat for one in day.state.vessels)
    with pytest.raises(Refused, match="broken off"):
        day.do(e.Filled("dye pot", 2.0))
    assert day.suggest() == e.Cleared()
    day.home()


def test_a_day_ended_early_lifts_the_fibre_empties_the_pots_and_closes() -> None:
    day = Day()
    day.until(Wait)
    day.do(e.Stopped("called away"))
    day.home()
    assert day.state.status == "complete"
    assert all(one.bath is None for one in day.state.vessels)


def test_a_closed_day_takes_aftercare_but_no_dyeing() -> None:
    day = Day()
    day.home()
    day.do(e.Cared("dry shade", "large skein", colour="#8b3a2b"))
    with pytest.raises(Refused, match="closed"):
        day.do(e.Filled("dye pot", 1.0))


def test_a_correction_refolds_what_follows_and_flags_what_no_longer_fits() -> None:
    day = Day()
    while not isinstance(day.entries[-1].event if day.entries else None, e.Lifted):
        day.space()
    lifted = day.entries[-1]
    entered = next(one.n for one in day.entries if isinstance(one.event, e.Entered))
    day.do(e.Corrected(entered, "that skein stayed on the table", strike=True))
    state = fold(opening_state(day.plan), day.entries, day.opened)
    flagged = {one.n: one.text for one in state.flags}
    assert "not in the wash pot" in flagged[lifted.n]
    assert entered not in flagged and state.n == day.state.n


def test_a_corrected_weight_replaces_the_weight_that_was_typed() -> None:
    day = Day()
    added = day.until(e.Added)
    assert isinstance(added, e.Added)
    day.do(added)
    changes = ({"key": "mass_g", "value": 20.0}, {"key": "how", "value": "weighed"})
    day.do(e.Corrected(day.state.n, "misread the scale", changes=changes))
    state = fold(opening_state(day.plan), day.entries, day.opened)
    wash_pot = state.vessel("wash pot")
    assert wash_pot and wash_pot.bath and wash_pot.bath.contents[0].mass_g == 20.0


def test_straining_a_hot_bath_asks_and_space_cannot_pass() -> None:
    day = Day()
    ask = day.until(Ask)
    assert isinstance(ask, Ask) and ask.kind == "temperature"
    day.do(ask.not_now())
    assert day.suggest() == ask.then


def test_no_more_than_four_asks_in_an_ordinary_day() -> None:
    day = Day(household=Household(child_kg=12.0, children=True))
    day.home()
    assert len(day.state.answered) <= 4
    assert day.plan == madder_plan()
