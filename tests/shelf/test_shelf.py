"""The bath shelf, folded from the logs of several days: what stands, what was drawn, what waits."""

import json
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from functools import cache

import pytest
from daybook.logged import logged
from days import Day, dose, madder_plan
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.account import Account, Band90, reckon
from dyesession.care import Household, label_lines, label_of
from dyesession.plan.model import FibreLot
from dyesession.session import events as e
from dyesession.session.from_shelf import NOTHING_STANDS
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State
from dyesession.shelf import (
    KeptBath,
    Shelf,
    bath_sentences,
    discarding,
    pooling,
    shelf_as_json,
    shelf_lines,
    shelf_of,
    stored_of,
    told_to,
)
from dyesession.shelf.drawing import standing_baths
from dyesession.shelf.for_the_day import from_shelf
from dyesession.shelf.model import Inside
from dyesession.shelf.tracing import traced

TODAY = date(2026, 3, 16)
FIRST, SECOND, THIRD = "2026-03-14-first-k7q2", "2026-03-15-second-m3xz", "2026-03-16-third-a2b3"

_ACCOUNTS: dict[str, Account] = {}


def once(day: LoggedDay) -> Account:
    """Each day is reckoned once for the whole file."""
    key = f"{day.name} {len(day.entries)}"
    if key not in _ACCOUNTS:
        _ACCOUNTS[key] = reckon(day.plan, day.entries, day.opened)
    return _ACCOUNTS[key]


def named(day: Day, name: str, **header: object) -> LoggedDay:
    return replace(logged(day, dict(header)), name=name, path=f"logs/{name}.toml")


def a_whole_day() -> Day:
    day = Day()
    day.home()
    return day


@cache
def the_first() -> LoggedDay:
    return named(a_whole_day(), FIRST)


@pytest.fixture
def first() -> LoggedDay:
    return the_first()


def kept_label(day: LoggedDay, vessel: str) -> str:
    return next(
        one.event.label for one in day.entries if isinstance(one.event, e.Kept) and one.event.vessel == vessel
    )


def drawing(days_on: int, label: str, litres: float | None, keeper: str = FIRST) -> Day:
    """A later day on which a kept bath is poured into the dye pot and nothing else is done yet."""
    day = Day()
    day.clock.advance(days_on * 86400)
    day.opened = day.clock.now()
    day.state = replace(day.state, instant=day.opened)
    day.do(e.Drawn("dye pot", label, keeper, litres, ("madder",)))
    return day


def shelf(*days: LoggedDay, today: date = TODAY) -> Shelf:
    return shelf_of(days, today, reckoned=once)


def test_a_kept_dye_bath_says_what_is_in_it_how_sure_and_what_it_went_through(first: LoggedDay) -> None:
    label = kept_label(first, "dye pot")
    bath = shelf(first).bath(label)
    assert bath is not None and bath.volume_l is not None
    [madder] = [one for one in bath.dye if one.ingredient == "madder"]
    account = once(first).bath(label)
    assert madder.grams == account.grams("madder") and madder.substance == "madder root"
    assert madder.grams.low < madder.grams.mean < madder.grams.high <= 120.0 and madder.of_g == 120.0
    assert bath.volume_l == account.volume_l
    assert (bath.uses, bath.hue_may_drift) == (1, True)
    assert bath.went_through == ("165 g wool", "75 g wool")
    assert "its hue may drift" in " ".join(bath_sentences(bath))


def test_an_alum_bath_says_what_recharges_it(first: LoggedDay) -> None:
    bath = shelf(first).bath(kept_label(first, "mordant pot"))
    [alum] = [one for one in bath.recharge if one.ingredient == "alum"]
    assert alum.fibre_g == 240.0 and alum.wanted_g == 28.8
    assert alum.add.mean == pytest.approx(28.8 - alum.left.mean)
    assert (alum.add.low, alum.add.high) == (
        pytest.approx(28.8 - alum.left.high), pytest.approx(28.8 - alum.left.low),
    )  # fmt: skip
    assert bath.would_do is None and [one.ingredient for one in bath.mordant] == ["alum"]
    assert "this is no promise" in " ".join(bath_sentences(bath))


def test_what_a_bath_would_still_do_is_half_the_first_depth_at_the_partition_the_first_dyeing_showed(
    first: LoggedDay,
) -> None:
    bath = shelf(first).bath(kept_label(first, "dye pot"))
    would = bath.would_do
    assert would is not None and would.fibre == "alumed wool"
    assert would.low < would.depth < would.high and abs(would.depth - 0.5) < 0.1
    account = once(first)
    taken_g = sum(t.grams.mean for f in account.fibres if not f.snippet for t in f.taken)
    left_g, litres = bath.dye[0].grams.mean, bath.volume_l.mean
    share = taken_g / (taken_g + left_g)
    ratio = 1000 * litres / 240
    partition = ratio * share / (1 - share)
    kg = would.fibre_g / 1000
    assert would.depth == pytest.approx(
        left_g * partition / (partition * kg + litres) / (taken_g * 1000 / 240), rel=1e-6
    )


def test_the_date_to_look_again_comes_from_what_was_put_in_and_not_from_traces(first: LoggedDay) -> None:
    found = shelf(first)
    dye, alum = (found.bath(kept_label(first, pot)) for pot in ("dye pot", "mordant pot"))
    assert (dye.look_again - dye.kept_at.date()).days == 2
    assert (alum.look_again - alum.kept_at.date()).days == 14
    late = shelf(first, today=TODAY + timedelta(days=30)).bath(dye.label)
    assert late.past and any("past its date" in one for one in late.cautions)
    assert not shelf(first, today=dye.look_again).bath(dye.label).past


def test_a_reading_of_the_ph_stands_until_something_is_poured_in() -> None:
    def with_ph(then: e.Event | None) -> Shelf:
        day = Day()
        while not isinstance(day.suggest(), e.Kept):
            day.space()
        day.do(e.Read("dye pot", ph=5.5))
        if then is not None:
            day.do(then)
        day.home()
        return shelf_of([named(day, FIRST)], TODAY)

    def dye_bath(found: Shelf) -> KeptBath:
        return next(one for one in found.baths if one.dye and one.uses)

    assert dye_bath(with_ph(None)).ph == 5.5
    assert dye_bath(with_ph(e.ToppedUp("dye pot", volume_l=1.0))).ph is None


def test_a_draw_on_another_day_leaves_the_rest_with_its_share_of_the_colour(first: LoggedDay) -> None:
    label = kept_label(first, "dye pot")
    before = shelf(first).bath(label)
    whole_l = next(one for one in traced(first).put_by if one.label == label).bath.bath.volume_l
    second = named(drawing(1, label, whole_l / 4), SECOND)
    after = shelf(first, second).bath(label)
    assert after.dye[0].grams.mean == pytest.approx(0.75 * before.dye[0].grams.mean)
    assert after.volume_l.mean == pytest.approx(before.volume_l.mean - whole_l / 4)
    assert [one.session for one in after.draws] == [SECOND] and not after.troubles


def test_a_bath_that_was_poured_in_whole_stands_no_longer(first: LoggedDay) -> None:
    label = kept_label(first, "dye pot")
    second = named(drawing(1, label, None), SECOND)
    assert shelf(first, second).bath(label) is None
    assert shelf(first, named(drawing(1, label, None, keeper=""), SECOND)).bath(label) is None


def test_two_sessions_that_draw_more_than_there_is_are_both_told(first: LoggedDay) -> None:
    label = kept_label(first, "dye pot")
    days = [first, named(drawing(1, label, 5.0), SECOND), named(drawing(2, label, 5.0), THIRD)]
    found = shelf(*days)
    for session in (SECOND, THIRD):
        [told] = told_to(found, session)
        assert "5 L by" in told and SECOND in told and THIRD in told and "correction" in told
    assert told_to(found, "2026-01-01-other-aaaa") == ()
    assert found.bath(label).troubles
    assert any("Does not add up" in one for one in shelf_lines(found, 80))


def test_a_draw_put_right_by_a_correction_is_told_no_longer(first: LoggedDay) -> None:
    label = kept_label(first, "dye pot")
    third = drawing(2, label, 5.0)
    third.do(e.Corrected(1, "the other jar", changes=({"key": "volume_l", "value": 1.0},)))
    found = shelf(first, named(drawing(1, label, 5.0), SECOND), named(third, THIRD))
    assert not found.told and found.bath(label) is not None


def test_a_draw_from_a_bath_whose_log_is_not_here_is_said(first: LoggedDay) -> None:
    found = shelf(first, named(drawing(1, "weld bath 9", 1.0, keeper="2026-01-01-gone-aaaa"), SECOND))
    [told] = told_to(found, SECOND)
    assert "no log here put by" in told


def test_a_bath_kept_again_after_a_second_dyeing_remembers_where_it_came_from(first: LoggedDay) -> None:
    label = kept_label(first, "dye pot")
    day = drawing(1, label, None)
    day.do(e.Entered("small skein", "dye pot"))
    day.do(e.Lifted("small skein", "dye pot"))
    day.do(e.Kept("dye pot", "second use", 6.0))
    found = shelf(first, named(day, SECOND))
    bath = found.bath("second use")
    assert found.bath(label) is None and bath.drawn_from == (f"{label} ({FIRST})",)
    assert bath.went_through == ("165 g wool", "75 g wool", "75 g wool") and bath.how == "guess"
    assert bath.dye[0].substance == "madder root" and bath.dye[0].grams.mean > 0


def test_a_second_dyeing_takes_its_share_by_the_starting_guess(first: LoggedDay) -> None:
    label = kept_label(first, "dye pot")
    before = shelf(first).bath(label).dye[0].grams
    plan = replace(
        madder_plan(),
        steps=tuple(replace(one, after=(), add=()) for one in madder_plan().steps if one.name == "dye"),
    )
    day = Day(plan)
    day.clock.advance(86400)
    day.opened = day.clock.now()
    day.do(e.Drawn("dye pot", label, FIRST, None, ("madder",)))
    day.do(e.Begun("dye", early="the bath is there"))
    day.do(e.Entered("small skein", "dye pot"))
    day.do(e.Lifted("small skein", "dye pot"))
    day.do(e.Kept("dye pot", "second use", 7.0))
    after = shelf(first, named(day, SECOND)).bath("second use")
    left = after.dye[0].grams
    partition = 30.0 * 0.85 / 0.15  # madder on wool: 85 % taken at 1:30
    share_left = 1 - partition / (partition + 7.0 / 0.075)
    assert left.mean == pytest.approx(before.mean * share_left)
    assert left.low < left.mean < left.high and left.high < before.high
    assert after.uses == 2


def test_a_bath_thrown_away_stands_no_longer(first: LoggedDay) -> None:
    day = a_whole_day()
    label = kept_label(first, "dye pot")
    day.do(e.Discarded(label=label))
    assert shelf_of([named(day, FIRST)], TODAY).bath(label) is None


def test_a_rehearsal_never_reaches_the_shelf(first: LoggedDay) -> None:
    assert shelf(replace(first, rehearsal=True)) == Shelf()


def mordanted_only() -> Day:
    """The two skeins mordanted, the day stopped before the dye bath."""
    day = Day()
    while (step := day.state.step("mordant")) is None or step.status != "complete":
        day.space()
    day.do(e.Stopped("no time to dye"))
    return day


def test_mordanted_fibre_waits_until_a_later_day_takes_it() -> None:
    mordanted = named(mordanted_only(), FIRST)
    found = shelf(mordanted)
    assert [(one.lot, one.mass_g) for one in found.waiting] == [("large skein", 165.0), ("small skein", 75.0)]
    assert found.waiting[0].how == "potassium alum 12 %, cream of tartar 6 %"
    lot = FibreLot("large skein", "wool", 163.0, mordanted="alum")
    later = Day(replace(madder_plan(), lots=(lot,)))
    later.clock.advance(86400)
    later.opened = later.clock.now()
    assert [one.lot for one in shelf(mordanted, named(later, SECOND)).waiting if one.session == FIRST] == [
        "small skein"
    ]
    text = "\n".join(shelf_lines(found, 200))
    assert "the small skein, 75 g wool, mordanted with potassium alum 12 %" in text


def test_a_day_still_open_leaves_nothing_waiting() -> None:
    day = Day()
    while (step := day.state.step("mordant")) is None or step.status != "complete":
        day.space()
    assert shelf(named(day, SECOND)).waiting == ()


def test_pouring_two_baths_together_is_looked_at_for_iron_and_what_never_mixes(first: LoggedDay) -> None:
    found = shelf(first)
    dye, alum = found.bath(kept_label(first, "dye pot")), found.bath(kept_label(first, "mordant pot"))
    assert any("drifted" in one.trigger for one in pooling(dye, alum))
    bleach = replace(alum, inside=(replace(alum.inside[0], substance="chlorine bleach"),))
    vinegar = replace(dye, inside=(replace(dye.inside[0], substance="vinegar"),))
    worst = pooling(vinegar, bleach)[0]
    assert worst.severity == 4
    assert discarding(dye) and discarding(dye)[0].hazard == "waste"


def test_a_bath_has_its_label(first: LoggedDay) -> None:
    bath = shelf(first).bath(kept_label(first, "dye pot"))
    label = label_of(stored_of(bath, "01 234", Household()))
    rows = dict(label.rows())
    assert label.heading == "NOT FOOD: DYE" and FIRST in rows["log"]
    assert "165 g wool and 75 g wool" in rows["went through"] and rows["swallowed"]
    assert "madder" in rows["left in it"] and "look again" in rows
    assert label_lines(label)


def test_the_shelf_is_told_in_lines_that_fit_and_in_json(first: LoggedDay) -> None:
    found = shelf(first, named(mordanted_only(), SECOND))
    for width in (40, 80, 120):
        assert all(len(one) <= width for one in shelf_lines(found, width))
    told = json.loads(json.dumps(shelf_as_json(found)))
    assert {one["label"] for one in told["baths"]} >= {one.label for one in found.baths}
    assert told["baths"][0]["inside"][0]["grams"]["low"] is not None
    assert shelf_lines(Shelf(), 80) == ["Nothing stands on the shelf, and no mordanted fibre waits."]


@settings(max_examples=60, deadline=None)
@given(st.lists(st.one_of(st.none(), st.floats(0.1, 6.0)), max_size=5))
def test_what_is_left_and_what_was_drawn_come_to_what_was_kept(draws: list[float | None]) -> None:
    first = the_first()
    label = kept_label(first, "dye pot")
    days = [traced(first)]
    for index, litres in enumerate(draws):
        days.append(traced(named(drawing(index + 1, label, litres), f"2026-04-{index + 1:02}-x-aaaa")))
    baths, told = standing_baths(days)
    bath = next(one for one in baths if one.put_by.label == label)
    wanted = sum(one for one in draws if one is not None)
    assert 0.0 <= bath.left_l <= bath.whole_l
    assert bath.left_l == (0.0 if None in draws else pytest.approx(max(0.0, bath.whole_l - wanted)))
    if None in draws and draws.index(None) < len(draws) - 1:
        assert told
    elif None not in draws:
        assert bool(told) or wanted <= bath.whole_l * 1.05 + 0.1
        assert not told or wanted > bath.whole_l
    assert len(bath.draws) == len(draws)


def test_nothing_here_asks_what_time_it_is(first: LoggedDay) -> None:
    assert shelf(first, today=date(2030, 1, 1)).baths[0].age_days > 1000
    assert datetime(2026, 3, 14, tzinfo=UTC) < shelf(first).baths[0].kept_at
    assert isinstance(traced(first).last, State)


def test_a_shelf_needs_no_dose_of_a_recipe() -> None:
    plan = replace(madder_plan(), doses=(dose("madder", "madder root", "dyestuff", 50.0, 120.0),))
    day = Day(plan)
    day.home()
    assert shelf_of([named(day, FIRST)], TODAY).baths


def test_a_demo_season_is_shown_as_it_stood_and_a_dyer_s_own_shelf_as_it_stands(first: LoggedDay) -> None:
    demo = replace(first, header={**first.header, "demo": True})
    later = date(2030, 1, 1)
    shown = shelf(demo, today=later)
    assert shown.stood_on == date(2026, 3, 18) and {one.age_days for one in shown.baths} == {3}
    assert any("kept by nobody, as they stood on 2026-03-18" in one for one in shelf_lines(shown, 200))
    assert shelf(demo, today=date(2026, 3, 16)).stood_on == date(2026, 3, 16), "never a day that is still to come"
    own = shelf(first, today=later)
    assert own.stood_on is None and own.baths[0].past and "nobody" not in " ".join(shelf_lines(own, 200))


def test_a_day_is_not_offered_what_demo_days_kept_or_mordanted(first: LoggedDay) -> None:
    demo = replace(first, header={**first.header, "demo": True})
    assert from_shelf([first], TODAY).baths and from_shelf([demo], TODAY) == NOTHING_STANDS


def test_traces_of_a_wash_are_not_told_and_what_little_colour_is_left_is(first: LoggedDay) -> None:
    bath = shelf(first).bath(kept_label(first, "dye pot"))
    assert bath is not None
    trace = Inside("wash", "neutral textile wash", "scour", Band90(0.04, 0.0, 0.1))
    pale = Inside("weld", "dried weld", "dyestuff", Band90(0.01, 0.0, 0.1), 50.0)
    said = bath_sentences(replace(bath, inside=(pale, trace)))[0]
    assert "weld" in said and "wash" not in said
