"""The kitchen made of numbers that a rehearsal reads: warm pots, wet wool, liquor left in the sieve."""

import pytest
from days import Day
from histories import moves, play
from hypothesis import given, settings

from dyesession.kitchen.model import Kitchen, Scale
from dyesession.rehearsal import dyer
from dyesession.rehearsal.world import TAP_C, World
from dyesession.session import events as e
from dyesession.session.asking import Ask


def worked(day: Day, *facts: e.Event) -> World:
    """A world to which these facts happened, one after the other."""
    world = World()
    for fact in facts:
        before, now_s = day.state, day.now_s
        day.do(fact)
        world.after(fact, before, now_s)
    return world


def test_a_pot_on_the_heat_climbs_to_what_its_step_wants_in_the_planned_time() -> None:
    day = Day()
    world = worked(
        day,
        e.Begun("extract"),
        e.Filled("extract pot", 2.4),
        e.Added("madder", "extract pot", 120.0),
        e.Lit("extract pot"),
    )
    lit_s = day.now_s
    assert world.temperature_c("extract pot", lit_s) == TAP_C
    assert world.temperature_c("extract pot", lit_s + 20 * 60) == pytest.approx((TAP_C + 70) / 2, abs=1)
    assert world.temperature_c("extract pot", lit_s + 3600) == 70.0


def test_a_pot_off_the_heat_cools_and_never_below_the_room() -> None:
    day = Day()
    world = worked(
        day,
        e.Begun("extract"),
        e.Filled("extract pot", 2.4),
        e.Added("madder", "extract pot", 120.0),
        e.Lit("extract pot"),
    )
    day.pass_minutes(60)
    before, now_s = day.state, day.now_s
    world.after(e.Lit("extract pot", on=False), before, now_s)
    warm = [world.temperature_c("extract pot", now_s + minutes * 60) for minutes in (0, 30, 60, 600, 6000)]
    assert warm[0] == 70.0 and warm == sorted(warm, reverse=True) and warm[-1] >= 20.0 and warm[1] < 70.0


def test_the_spent_dyestuff_keeps_liquor_back_once_and_gives_it_up_to_fresh_water() -> None:
    day = Day()
    facts = [e.Begun("extract"), e.Filled("extract pot", 2.4), e.Added("madder", "extract pot", 120.0)]
    world = worked(day, *facts)
    first_l = world.strained_l(day.state, "extract pot")
    assert first_l == pytest.approx(2.4 - 120 * 0.9 * 4.2 / 1000, abs=0.01)
    for fact in (e.Strained("extract pot", "dye pot", first_l), e.Refreshed("extract pot", 2.4)):
        before, now_s = day.state, day.now_s
        day.do(fact)
        world.after(fact, before, now_s)
    assert world.strained_l(day.state, "extract pot") == pytest.approx(2.4, abs=0.02)
    assert world.volume_l("dye pot") == pytest.approx(first_l, abs=0.1)


def test_wet_wool_weighs_some_four_times_its_dry_weight_and_takes_that_water_along() -> None:
    day = Day()
    world = worked(day, e.Begun("scour"), e.Filled("wash pot", 7.2), e.Entered("large skein", "wash pot"))
    wet_g = world.wet_mass_g(day.state, "large skein")
    assert wet_g == pytest.approx(165 / 1.16 * 4.9, abs=5)
    before, now_s = day.state, day.now_s
    world.after(e.Lifted("large skein", "wash pot"), before, now_s)
    assert world.volume_l("wash pot") == pytest.approx(7.2 - 165 / 1.16 * 3.9 / 1000, abs=0.1)


@settings(max_examples=30, deadline=None)
@given(moves)
def test_whatever_happens_no_pot_holds_less_than_nothing_and_none_boils_over_its_heat(
    history: list[object],
) -> None:
    day, world = Day(), World()
    play(day, history)
    state = day.state
    for entry in day.entries:
        world.after(entry.event, state, state.seconds(entry.instant))
    for vessel in state.vessels:
        assert world.volume_l(vessel.name) >= 0
        assert 0 <= world.temperature_c(vessel.name, day.now_s + 3600) <= 105


def test_a_dose_too_small_for_the_scale_is_not_forged_into_a_weighing() -> None:
    coarse = Kitchen(scales=(Scale("kitchen", 5.0),))
    act = e.Added("iron", "dye pot", 0.4)
    assert dyer.facts_for(act, Day().state, World(), coarse, 0.0) == [act]
    fine = Kitchen(scales=(Scale("kitchen", 5.0), Scale("letter", 0.1, 200.0)))
    assert dyer.facts_for(act, Day().state, World(), fine, 0.0)[0] == e.Weighed("iron", 0.4, 0.1)


def test_a_scale_is_never_loaded_beyond_what_it_carries() -> None:
    scales = Kitchen(scales=(Scale("letter", 0.1, 100.0), Scale("kitchen", 1.0, 5000.0)))
    assert dyer.finest_scale(scales, 50) == scales.scales[0]
    assert dyer.finest_scale(scales, 150) == scales.scales[1]
    assert dyer.finest_scale(scales, 9000) is None


def test_an_honest_answer_is_what_the_thermometer_shows_or_the_pot_that_is_meant() -> None:
    act = e.Discarded("dye pot")
    hot = Ask("k", "temperature", "dye pot", "How hot?", "Hot.", act, planned_c=80.0)
    assert dyer.answer(hot, World(), 0.0, Kitchen()) == hot.answered(temperature_c=TAP_C)
    assert dyer.answer(hot, World(), 0.0, Kitchen(thermometer=False)) == hot.not_now()
    which = Ask("k", "pot", "dye pot", "Which?", "Iron.", act, expected="D")
    assert dyer.answer(which, World(), 0.0, Kitchen(thermometer=False)) == which.answered(letter="D")
