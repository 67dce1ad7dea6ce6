"""What two readings of a pot say: when it is at its heat, where its ring settles, whether it climbs too fast."""

import re
from dataclasses import replace

import pytest
from days import Day, madder_plan

from dyesession.dyeing.eta import Reading, time_constant_prior_min, time_to_temperature
from dyesession.session import events as e
from dyesession.session.heating_up import heat_said


def rising(readings, capacity_l=7.2, fibre=True, cooling=1.0):
    """The mordant pot on its way to 85 °C, with readings as (minutes after it was lit, °C)."""
    plan = replace(madder_plan(), cooling=cooling)
    if not fibre:
        plan = replace(plan, lots=tuple(replace(one, kind="cotton") for one in plan.lots))
    day = Day(plan)
    while not (isinstance(lit := day.suggest(), e.Lit) and lit.vessel == "mordant pot" and lit.on):
        day.space()
    day.do(lit)
    begun = day.now_s
    for minute, temperature_c in readings:
        day.clock.advance(begun + 60 * minute - day.now_s)
        day.do(e.Read("mordant pot", temperature_c=temperature_c))
    return day


def said(day):
    return heat_said(day.state, day.entries, day.state.vessel("mordant pot"), day.now_s)


def test_time_to_its_heat_is_the_sciences_own_figure():
    day = rising([(5, 30.0), (15, 48.0)])
    found = time_to_temperature(85.0, Reading(5, 30.0), Reading(15, 48.0), time_constant_prior_min(7.2, False), False)
    about = re.search(r"85 °C in about (\d+) min \((\d+) to (\d+) min\)", said(day).text)
    assert about is not None, said(day)
    assert [int(one) for one in about.groups()] == [round(found.about_min), round(found.not_before_min), round(found.late_min)]
    assert said(day).short == about[0]


def test_the_pots_own_way_of_cooling_takes_the_place_of_the_usual_one():
    """A pot that cools twice as slowly loses less on the way up: it is there sooner."""
    readings = [(5, 30.0), (20, 48.0)]
    usual, slow = said(rising(readings)).short, said(rising(readings, cooling=2.0)).short
    constant = 2.0 * time_constant_prior_min(7.2, False)
    found = time_to_temperature(85.0, Reading(5, 30.0), Reading(20, 48.0), constant, False)
    assert f"about {round(found.about_min)} min" in slow, slow
    assert f"about {round(found.about_min)} min" not in usual, usual


def test_minutes_that_pass_after_the_second_reading_are_taken_off():
    day = rising([(5, 30.0), (15, 48.0)])
    before = int(re.search(r"about (\d+) min", said(day).text)[1])
    day.clock.advance(600)
    assert int(re.search(r"about (\d+) min", said(day).text)[1]) == pytest.approx(before - 10, abs=1)


def test_a_ring_too_weak_is_said_to_settle_and_never_to_get_there():
    day = rising([(5, 50.0), (65, 60.2)])
    assert re.fullmatch(r"this ring will settle at \d\d ± \d+ °C and never reach 85 °C", said(day).short), said(day)
    assert said(day).more == "turn it up, or put the lid on"


@pytest.mark.parametrize("readings", [[], [(5, 30.0)], [(5, 30.0), (8, 44.0)], [(5, 30.0), (15, 36.0)]])
def test_without_two_readings_far_enough_apart_nothing_is_said(readings):
    assert said(rising(readings)).text == ""


def test_a_climb_too_steep_for_wool_is_said_for_wool_and_not_for_cotton():
    fast = [(2, 25.0), (8, 50.0)]
    day = rising(fast)
    for lot in ("large skein", "small skein"):
        assert day.state.lot(lot).place == "mordant pot"
    assert "faster than wool likes" in said(day).text
    assert "faster than wool" not in said(rising(fast, fibre=False)).text
    assert "faster than wool" not in said(rising([(5, 30.0), (15, 44.0)])).text


def test_a_heat_above_the_boil_here_says_that_it_boils_first():
    plan = replace(madder_plan(), boiling_c=84.0)
    day = Day(plan)
    while not (isinstance(lit := day.suggest(), e.Lit) and lit.vessel == "mordant pot" and lit.on):
        day.space()
    day.do(lit)
    for minute, temperature_c in ((5, 30.0), (15, 48.0)):
        day.clock.advance(60 * 5 if minute == 5 else 600)
        day.do(e.Read("mordant pot", temperature_c=temperature_c))
    assert "it boils at 84 °C here, before that" in said(day).text
