"""A day looked back on: planned beside actual, shown then beside reckoned now, nothing hidden and nothing
made up.
"""

import json
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest
from days import MORNING, Day
from histories import moves, play
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.account.live import reckoner_for
from dyesession.daybook import Review, review, review_as_json, review_lines
from dyesession.kitchen import kitchen_for_log
from dyesession.kitchen.model import Jar, Kitchen
from dyesession.session import events as e
from dyesession.session.fold import Entry
from dyesession.session.opening import LoggedDay
from dyesession.session.suggest import Wait


def logged(day: Day, *, rehearsal: bool = False) -> LoggedDay:
    """The day as its log would tell it."""
    return LoggedDay(
        name="2026-03-14-madder-brick-k7q2",
        path="logs/2026-03-14-madder-brick-k7q2.toml",
        recipe=day.plan.recipe,
        rehearsal=rehearsal,
        plan=day.plan,
        opened=day.opened,
        entries=day.entries,
        header={},
        program="dyesession 0.1.0",
    )


class ShownDay(Day):
    """A day whose account is written down after every fact, as the running session does it."""

    def __init__(self) -> None:
        super().__init__()
        self._reckoner = reckoner_for(self.plan, self.opened)

    def do(self, command: e.Event, happened: Any = None) -> Any:
        super().do(command, happened)
        _, told = self._reckoner(self.entries)
        if told is not None:
            self.entries = (*self.entries, Entry(self.state.n + 1, self.clock.now(), told))
            self.state = replace(self.state, n=self.state.n + 1, instant=self.clock.now())
        return self.state


def whole_day(day: Day | None = None) -> Day:
    day = day or Day()
    day.home()
    return day


def step(found: Review, name: str) -> Any:
    return next(one for one in found.steps if one.name == name)


def test_every_step_stands_beside_its_plan() -> None:
    found = review(logged(whole_day()))
    assert [one.name for one in found.steps] == [one.name for one in whole_day().plan.steps]
    assert all(one.status == "complete" for one in found.steps)
    mordant = step(found, "mordant")
    assert mordant.planned.held_min == 60 and mordant.actual.held_min == pytest.approx(60, abs=0.1)
    assert mordant.planned.temperature_c == 85


def test_a_hold_that_was_left_longer_shows_as_held_longer() -> None:
    day = Day()
    day.do(e.Begun("mordant", early="scoured yesterday"))
    for fact in (
        e.Filled("mordant pot", 7.2),
        e.Added("alum", "mordant pot", 29),
        e.Added("tartar", "mordant pot", 14),
        e.Entered("large skein", "mordant pot"),
        e.Entered("small skein", "mordant pot"),
        e.Lit("mordant pot"),
        e.Reached("mordant pot", 84.0, "read"),
    ):
        day.do(fact)
    day.pass_minutes(95)
    day.do(e.Finished("mordant"))
    found = step(review(logged(day)), "mordant")
    assert found.actual.held_min == pytest.approx(95)
    assert (found.actual.temperature_c, found.actual.temperature_how) == (84.0, "read")
    assert found.early == "scoured yesterday"


def test_a_pause_does_not_count_as_held() -> None:
    day = Day()
    day.until(Wait)
    while (one := day.state.step("scour")) and (not one.countdown or one.countdown.kind != "hold"):
        day.space()
    day.pass_minutes(10)
    day.do(e.Paused("scour"))
    day.pass_minutes(40)
    day.do(e.Resumed("scour"))
    day.pass_minutes(5)
    day.do(e.Finished("scour"))
    assert step(review(logged(day)), "scour").actual.held_min == pytest.approx(15, abs=0.1)


def test_a_step_left_out_says_why_and_has_no_times() -> None:
    day = Day()
    day.do(e.Skipped("scour", "washed yesterday"))
    found = step(review(logged(day)), "scour")
    assert (found.status, found.why) == ("skipped", "washed yesterday")
    assert found.actual.start is None and found.actual.end_min is None


def test_a_step_that_came_in_at_the_stove_has_no_plan() -> None:
    day = Day()
    day.until(e.Strained)
    day.space()
    day.do(e.Replanned("refresh", "strain", "still red"))
    added = [one for one in review(logged(day)).steps if one.planned is None]
    assert [one.name for one in added] == ["extract 4", "strain 4"]


def test_doses_show_what_was_weighed_beside_what_was_planned() -> None:
    day = Day()
    for fact in (
        e.Begun("mordant", early="so"),
        e.Weighed("alum", 30.0, 1.0),
        e.Filled("mordant pot", 7.2),
        e.Added("alum", "mordant pot", 30.0, "weighed"),
        e.Added("tartar", "mordant pot", 14.4),
        e.Added("salt", "mordant pot", 5.0, "weighed"),
    ):
        day.do(fact)
    doses = {one.ingredient: one for one in review(logged(day)).doses}
    assert (doses["alum"].weighed_g, doses["alum"].added_g, doses["alum"].how) == (30.0, 30.0, "weighed")
    assert doses["alum"].off_percent == pytest.approx(100 * 1.2 / 28.8)
    assert (doses["tartar"].weighed_g, doses["tartar"].how) == (None, "planned")
    assert doses["madder"].added_g is None and doses["madder"].how == ""
    assert doses["salt"].planned_g is None and doses["salt"].off_percent is None


def test_shown_then_and_reckoned_now_agree_where_nothing_was_corrected() -> None:
    found = review(logged(whole_day(ShownDay())))
    dye_pot = next(one for one in found.baths if one.vessel == "dye pot" and not one.kept)
    now = {(one.after, one.lot): one for one in dye_pot.reckoned_now}
    assert len(dye_pot.shown_then) > 10
    for shown in dye_pot.shown_then:
        assert now[shown.after, shown.lot].mass_g == shown.mass_g
        assert now[shown.after, shown.lot].volume_l == shown.volume_l


def test_after_a_correction_shown_then_stays_and_reckoned_now_moves() -> None:
    day = ShownDay()
    day.until(e.Strained)
    day.do(e.Strained("extract pot", "dye pot", 1.2, "read"))
    strained = next(one for one in day.entries if isinstance(one.event, e.Strained))
    day.do(e.Corrected(strained.n, "misread the jug", changes=({"key": "volume_l", "value": 1.9},)))
    dye_pot = next(one for one in review(logged(day)).baths if one.vessel == "dye pot")
    then = next(one for one in dye_pot.shown_then if one.after == strained.n)
    now = next(one for one in dye_pot.reckoned_now if one.after == strained.n)
    assert (then.volume_l, now.volume_l) == (pytest.approx(1.2, abs=0.1), pytest.approx(1.9, abs=0.1))
    assert now.mass_g is not None and then.mass_g is not None and now.mass_g > then.mass_g


def test_a_correction_shows_what_stood_there_what_stands_now_and_why() -> None:
    day = Day()
    day.do(e.Weighed("alum", 92.0))
    day.do(e.Corrected(1, "misread", changes=({"key": "mass_g", "value": 30.0},)))
    day.do(e.Corrected(1, "misread again", changes=({"key": "mass_g", "value": 29.0},)))
    day.do(e.Noted("wrong day"))
    day.do(e.Corrected(4, "another day", strike=True))
    first, second, third = review(logged(day)).corrections
    assert (first.was, first.now, first.why, first.counts) == (
        {"mass_g": 92.0},
        {"mass_g": 30.0},
        "misread",
        False,
    )
    assert (second.now, second.counts, second.entry_kind) == ({"mass_g": 29.0}, True, "weighed")
    assert (third.was, third.now) == ({"text": "wrong day"}, None)
    assert review(logged(day)).notes == ()


def test_an_entry_that_no_longer_fits_is_flagged_beside_the_day() -> None:
    day = Day()
    day.do(e.Begun("scour"))
    day.do(e.Filled("wash pot", 7.2))
    day.do(e.ToppedUp("wash pot", to_l=8.0))
    day.do(e.Corrected(2, "that was another pot", strike=True))
    day.entries = (*day.entries[:3], replace(day.entries[3], trouble="edited by hand"))
    found = review(logged(day))
    assert [(one.n, "nothing in the wash pot" in one.text) for one in found.flags] == [(3, True), (4, False)]
    assert found.flags[1].text == "edited by hand"


def test_reminders_questions_and_alarms_are_all_there() -> None:
    day = whole_day()
    found = review(logged(day))
    assert {one.step for one in found.reminders} >= {"mordant", "strain", "dye"}
    asked = [one.event for one in day.entries if isinstance(one.event, e.Confirmed | e.PutOff)]
    assert len(found.asks) == len(asked) > 0
    assert all(one.answer for one in found.asks)


def test_not_now_stands_as_the_answer() -> None:
    day = Day()
    while not hasattr(ask := day.suggest(), "not_now"):
        day.space()
    day.do(ask.not_now())
    assert [one.answer for one in review(logged(day)).asks] == ["not now"]


def test_an_alarm_says_how_overdue_and_when_it_was_seen() -> None:
    day = Day()
    day.until(Wait)
    day.pass_minutes(45)
    key = next(one.countdown.key for one in day.state.steps if one.countdown)
    day.do(e.AlarmRaised(key, "wash pot", 900.0))
    assert review(logged(day)).alarms[0].acknowledged is None
    day.pass_minutes(3)
    day.do(e.Acknowledged(key))
    (alarm,) = review(logged(day)).alarms
    assert (alarm.step, alarm.vessel, alarm.over_s) == ("scour", "wash pot", 900.0)
    assert alarm.acknowledged is not None and alarm.acknowledged - alarm.at == timedelta(minutes=3)


def test_an_open_day_has_no_end_and_no_verdict() -> None:
    day = Day()
    day.do(e.Begun("scour"))
    found = review(logged(day, rehearsal=True))
    assert (found.status, found.closed, found.verdict, found.rehearsal) == ("open", None, "", True)
    assert step(found, "scour").actual.end is None


def test_a_day_on_which_nothing_was_done_can_be_looked_back_on() -> None:
    found = review(logged(Day()))
    assert found.opened == MORNING and found.baths == () and found.reminders == ()
    assert review_lines(found, 80)[0].endswith("Madder brick red on wool")


def test_kept_baths_and_aftercare_are_listed() -> None:
    day = whole_day()
    day.do(e.Cared("dry shade", "large skein", "brick, a little lighter"))
    found = review(logged(day))
    assert any(one.liquor_of == ("madder",) for one in found.kept_baths)
    assert [one.text for one in found.aftercare] == ["aftercare, dry shade: brick, a little lighter"]


PROMISED = {
    "session",
    "recipe",
    "opened",
    "closed",
    "rehearsal",
    "program",
    "steps",
    "doses",
    "baths",
    "reminders",
    "asks",
    "alarms",
    "corrections",
    "flags",
    "notes",
    "kept_baths",
}


def test_json_holds_what_is_promised_and_nothing_a_reader_cannot_read() -> None:
    tables = json.loads(json.dumps(review_as_json(review(logged(whole_day(ShownDay())))), allow_nan=False))
    assert set(tables) >= PROMISED
    assert tables["opened"] == "2026-03-14T09:02:11.000+01:00"
    assert {"name", "stage", "status", "why", "planned", "actual"} <= set(tables["steps"][0])
    assert {"start", "end", "held_min", "temperature_c"} <= set(tables["steps"][0]["actual"])
    assert {"mass_g", "added_g", "how"} == set(tables["doses"][0]["weighed"])
    assert {"vessel", "kept", "shown_then", "reckoned_now"} == set(tables["baths"][0])


@settings(max_examples=25, deadline=None)
@given(moves, st.integers(40, 120))
def test_any_history_can_be_looked_back_on_and_printed_within_the_width(
    history: list[Any], width: int
) -> None:
    day = Day()
    play(day, history)
    found = review(logged(day))
    json.dumps(review_as_json(found), allow_nan=False)
    lines = review_lines(found, width)
    assert all(len(line) <= width for line in lines)
    for one in found.steps:
        assert one.actual.held_min is None or one.actual.held_min >= 0
        if one.actual.start_min is not None and one.actual.end_min is not None:
            assert one.actual.end_min >= one.actual.start_min


def test_the_printed_review_names_the_steps_the_doses_and_the_correction() -> None:
    day = whole_day()
    alum = next(
        one.n for one in day.entries if isinstance(one.event, e.Added) and one.event.ingredient == "alum"
    )
    day.do(e.Corrected(alum, "misread the scale", changes=({"key": "mass_g", "value": 31.0},)))
    text = "\n".join(review_lines(review(logged(day)), 100))
    assert "mordant (mordant pot): complete. " in text
    assert "alum: planned 28.8 g, put in 31 g (+8 %), planned" in text
    assert f"entry {alum} (added): mass_g was 28.8, is 31.0; misread the scale" in text


def test_a_day_tells_what_its_colour_cost_by_the_prices_of_its_own_kitchen() -> None:
    day = Day()
    day.home()
    jars = (Jar("madder, autumn", "madder root", price_per_100_g=4.5), Jar("alum", "potassium alum", price_per_100_g=2.0))
    header = {"kitchen": kitchen_for_log(Kitchen(jars=jars))}
    priced = review(replace(logged(day), header=header))
    # 120 g at 4.50 and 28.8 g at 2.00 for 100 g, over 240 g of fibre
    assert priced.cost.startswith("5.98, 2.49 for 100 g of fibre; without ") and "cream of tartar" in priced.cost
    assert any("Cost, by the prices" in one for one in review_lines(priced, 100))
    assert review(logged(day)).cost == "" and not any("Cost" in one for one in review_lines(review(logged(day)), 100))
