"""The dyer's own numbers where they are told: what is still lacking, what a plan rests on, a day without a recipe."""

from dataclasses import replace
from pathlib import Path

import pytest
from daybook.logged import logged
from daybook.test_learning import read_day
from days import Day

from dyesession.account import unknowns as u
from dyesession.daybook.day_line import DayLine, day_line
from dyesession.daybook.dyers_numbers import Learnt
from dyesession.daybook.learned_text import learned_lines, told_number
from dyesession.daybook.learning import DayTold, learnt, learnt_from
from dyesession.daybook.own_book import NewlyTaught, newest_over
from dyesession.daybook.own_numbers import own_kitchen, start_freely, used_for
from dyesession.daybook.own_reasons import of_dose, used_explained, used_line, used_lines
from dyesession.daybook.seen import About, Seen
from dyesession.daybook.untaught import ASKS, untaught
from dyesession.kitchen.loading import load_kitchen
from dyesession.plan import lots_from_text, work_out
from dyesession.plan.explained import Worked
from dyesession.plan.explained_day import explain_row
from dyesession.recipe.loading import load_recipe

ROOT = Path(__file__).resolve().parents[2]
OF_BATHS = {"exhaustion", "uptake rate", "kept share", "stiffening", "liquor held"}  # what comes with each pair too


@pytest.fixture(scope="module")
def taught() -> Learnt:
    return learnt([read_day("2026-03-14-a-day"), read_day("2026-03-15-another")])


@pytest.fixture(scope="module")
def line() -> DayLine:
    run = Day()
    run.home()
    return day_line(logged(run), "2026-03-14-a-day.toml")


def with_heat(watts: float = 900.0, slower: float = 1.4) -> Learnt:
    """What a thermometer taught of stove and pots."""
    stove, pot = About("stove power"), About("cooling", "big pot")
    return learnt_from(
        DayTold(f"2026-03-1{day}-a-day", f"2026-03-1{day}", (Seen(stove, watts, 0.05, f"2026-03-1{day}-a-day"),
                Seen(pot, slower, 0.05, f"2026-03-1{day}-a-day")))
        for day in range(1, 5)
    )  # fmt: skip


def test_without_a_day_every_kind_of_number_is_lacking_with_its_reading() -> None:
    lacking = untaught(Learnt(), ())
    assert [one.what for one in lacking] == list(ASKS) and all(one.reading and not one.of for one in lacking)
    printed = " ".join(" ".join(learned_lines(Learnt(), 80, False, lacking)).split())
    assert all(one.reading in printed for one in lacking)


def test_what_was_dyed_and_not_read_is_named_and_what_was_learned_is_not(taught: Learnt, line: DayLine) -> None:
    before = {one.what: one.of for one in untaught(Learnt(), (line,))}
    assert before["exhaustion"] == ("madder root on wool",) and before["liquor held"] == ("wool",)
    after = {one.what: one.of for one in untaught(taught, (line,))}
    assert "exhaustion" not in after and "kept share" not in after and "liquor held" not in after
    assert after["depth exponent"] == ("madder root on wool",) and "stove power" in after


def test_the_reading_that_is_named_teaches_the_number(taught: Learnt) -> None:
    """`read_day` holds the used bath beside before, a strain beside the first, and weighs a wet skein."""
    assert {one.about.what for one in taught.numbers} == OF_BATHS


def test_a_plan_names_the_numbers_it_rests_on_with_their_band_and_their_days(taught: Learnt) -> None:
    plan = read_day("2026-03-16-plan").plan
    used = used_for(plan, taught)
    assert {one.about.what for one in used} == OF_BATHS
    assert used_line(plan, taught) == (
        "This day rests on 5 of your own numbers, from 2 days: 2026-03-14-a-day, 2026-03-15-another."
    )
    assert used_line(plan, Learnt()) == "" and used_lines(plan, Learnt(), 80) == []
    said = " ".join(one.says for one in used_explained(plan, taught).because)
    printed = " ".join(" ".join(used_lines(plan, taught, 80)).split())
    for one in used:
        told = told_number(one)
        assert told.title in said and told.yours in said and told.guess in said
        assert f"{told.title}: {told.yours}" in printed


def test_a_dyestuff_s_dose_tells_what_its_account_starts_from_and_a_mordant_s_does_not(taught: Learnt) -> None:
    plan = read_day("2026-03-16-plan").plan
    because = of_dose(plan, taught, "madder")
    assert len(because) == 4 and all("2026-03-14-a-day" in one.source for one in because)
    assert of_dose(plan, taught, "alum") == ()


def test_times_that_rest_on_one_s_own_stove_and_pots_say_so() -> None:
    kitchen = load_kitchen(ROOT / "dyesession/kitchen/example.toml")
    recipe = load_recipe(ROOT / "recipes" / "madder-brick-red-on-wool.toml")
    lots = lots_from_text(["240 g dry wool"], "wool")
    own = own_kitchen(kitchen, with_heat())
    plan = work_out(recipe, lots, own)
    rows = {row.step: explain_row(Worked(plan, recipe, own), row) for row in plan.timetable}
    rises = [one for row in rows.values() for one in row.because if "no faster than" in one.says]
    assert rises and all("heat your stove puts into a bath" in one.says and "W" in one.says for one in rises)
    assert all("from 4 days: 2026-03-11-a-day" in one.source for one in rises)
    guessed = {row.step: row for row in work_out(recipe, lots, kitchen).timetable}
    slower = [
        row.step for row in plan.timetable if row.end_min - row.start_min > guessed[row.step].end_min - guessed[row.step].start_min
    ]
    assert slower, "900 W bring seven litres up more slowly than the ring's rating says"


def test_a_day_without_a_recipe_starts_from_the_numbers_of_what_it_comes_upon(taught: Learnt) -> None:
    own = start_freely(taught)
    assert "kept share of madder root" in own.starting.priors and own.tables
    found = u.by_substance(own.starting, {"ground madder": "madder root"}, ("wool", "silk"))
    mine = found.priors["partition of ground madder on wool"]
    number = taught.number("exhaustion", "madder root", "wool")
    assert number is not None and mine.centre == number.next_day.centre
    assert "partition of ground madder on silk" not in found.priors, "nothing was learned of silk"
    assert found.beside["partition of ground madder on wool"].of == "rate of ground madder" and number.at
    assert "rate of ground madder" in found.priors
    known = u.with_all(u.Unknowns({}, {}), u.priors_of(("wool",), {"ground madder": "madder root"}), found)
    usual = u.with_all(u.Unknowns({}, {}), u.priors_of(("wool",), {"ground madder": "madder root"}), u.Starting())
    name = "kept share of ground madder"
    assert max(known[name]) - min(known[name]) < max(usual[name]) - min(usual[name])


def test_the_newest_day_is_the_dyer_s_own_that_was_closed_last(line: DayLine) -> None:
    days = tuple(
        replace(line, session=name, closed=closed, demo=demo)
        for name, closed, demo in (("a", "2026-03-01", False), ("b", "2026-03-09", False), ("c", "", False),
                                   ("d", "2026-03-20", True))
    )  # fmt: skip
    newest = newest_over(days)
    assert newest is not None and newest.session == "b" and newest_over(days[2:]) is None


def test_what_a_day_taught_is_news_for_a_week(taught: Learnt) -> None:
    from datetime import date

    found = NewlyTaught("a", "Madder", "2026-03-14T18:00:00+01:00", taught.numbers, taught.numbers[:1])
    assert found.in_short == "1 learned and 4 surer"
    assert found.is_news(date(2026, 3, 21)) and not found.is_news(date(2026, 3, 22))
