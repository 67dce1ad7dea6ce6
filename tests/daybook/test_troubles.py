"""What went wrong, by what the log shows: a cause that is seen stands first and says what was seen."""

from typing import Any

import pytest
from daybook.logged import logged
from days import Day, madder_plan
from histories import moves, play
from hypothesis import given, settings

from dyesession.daybook.causes_colour import CAUSES as OF_COLOUR
from dyesession.daybook.causes_fibre import CAUSES as OF_FIBRE
from dyesession.daybook.troubles import (
    SYMPTOMS,
    WORDS,
    Cause,
    NoSuchTrouble,
    Symptom,
    symptom_named,
    trouble_lines,
    troubles_as_json,
    what_went_wrong,
)
from dyesession.kitchen.model import Kitchen, Pot
from dyesession.plan import improvised
from dyesession.plan.model import FibreLot, PlannedVessel
from dyesession.session import events as e
from dyesession.session.typed import Hand, understand

SOURCES = (
    "Mairet",
    "Beech",
    "Saha",
    "Industria Textila",
    "Benli",
    "practice, no source",
    "arithmetic",
    "derived",
    "judgement",
)
KITCHEN = Kitchen(pots=(Pot("big pot", 12.0, material="stainless"), Pot("kettle", 8.0, material="copper")))


def causes(day: Day, what: Symptom, header: dict[str, Any] | None = None) -> tuple[Cause, ...]:
    [trouble] = what_went_wrong(logged(day, header), what)
    return trouble.causes


def cause(day: Day, what: Symptom, words: str, header: dict[str, Any] | None = None) -> Cause:
    return next(one for one in causes(day, what, header) if words in one.why)


def a_free_day(kind: str = "wool", kitchen: Kitchen = KITCHEN) -> Day:
    return Day(improvised((FibreLot("skein", kind, 100.0, air_dry=True),), kitchen))


def stage(day: Day, text: str) -> None:
    """Name a stage and see it through."""
    day.do(understand("stage", text, day.state, Hand()).event)
    wanted = day.state.steps[-1].name
    for _ in range(200):
        step = day.state.step(wanted)
        if step and step.status == "complete":
            return
        day.space()
    raise AssertionError(f"{wanted} is never over")


def to_heat(day: Day, step: str) -> str:
    """Press on until a step's pot is on the heat and counting; its vessel."""
    while (one := day.state.step(step)) and one.countdown is None:
        day.space()
    assert one and one.plan.vessel
    return one.plan.vessel


@pytest.mark.parametrize("what", SYMPTOMS)
def test_every_cause_has_a_source_and_a_mend_with_its_source(what: Symptom) -> None:
    usual = {**OF_FIBRE, **OF_COLOUR}[what]
    assert len(usual) >= 3
    for one in usual:
        assert one.why and one.mend.endswith(".")
        assert any(word in one.source for word in SOURCES), one.source
        assert any(word in one.mend_source for word in SOURCES), one.mend_source


def test_a_bath_that_rose_too_fast_is_seen_and_stands_first() -> None:
    day = Day()
    pot = to_heat(day, "mordant")
    day.pass_minutes(12)
    day.do(e.Read(pot, temperature_c=84.0))
    first = causes(day, "streaks")[0]
    assert first.standing == "shown" and "rose 5.75 °C a minute, from 15 °C to 84 °C" in first.seen
    assert "Beech" in first.source


def test_a_slow_rise_speaks_against_it() -> None:
    day = Day()
    pot = to_heat(day, "mordant")
    day.pass_minutes(60)
    day.do(e.Read(pot, temperature_c=84.0))
    assert cause(day, "streaks", "rose too fast").standing == "spoken against"


def test_a_rise_nobody_read_is_not_made_up() -> None:
    day = Day()
    day.home()
    assert cause(day, "streaks", "rose too fast").standing == "not said"


def test_dry_fibre_in_the_dye_bath_is_seen() -> None:
    day = a_free_day()
    stage(day, "dye in A with cutch 20 %, 3 l, to 80, hold 30")
    assert "Fibre went dry into dye" in cause(day, "streaks", "went in dry").seen
    wet = Day()
    wet.home()
    assert cause(wet, "streaks", "went in dry").standing == "spoken against"


def test_a_crowded_pot_is_seen_by_its_ratio() -> None:
    day = a_free_day()
    stage(day, "dye in A with cutch 20 %, 0.9 l, to 80, hold 30")
    assert cause(day, "streaks", "too full").seen == "dye was 1:9."


def test_a_hot_bath_that_the_fibre_entered_is_seen() -> None:
    day = a_free_day()
    day.do(e.Filled("big pot", 3.0))
    day.do(e.Read("big pot", temperature_c=72.0))
    stage(day, "dye in A with cutch 20 %, to 80, hold 30")
    assert cause(day, "streaks", "into a hot bath").standing == "shown"


def test_a_short_mordant_and_all_the_dyestuff_at_once_are_seen() -> None:
    day = a_free_day()
    stage(day, "mordant in A with alum 12 %, 3 l, to 85 over 45, hold 20")
    stage(day, "dye in B with madder extract 5 %, 3 l, to 80, hold 30")
    assert cause(day, "streaks", "mordant was short").seen == "The mordant was held 20 min."
    assert "5 g, went in at once" in cause(day, "streaks", "went in at once").seen


def test_hot_wool_into_a_cold_rinse_felts_and_cotton_does_not() -> None:
    day = a_free_day()
    stage(day, "dye in A with cutch 20 %, 3 l, to 85, hold 30")
    day.do(e.Read("big pot", temperature_c=83.0))
    day.do(e.Lifted("skein", "big pot"))
    day.do(understand("stage", "rinse in the bowl 5 l", day.state, Hand()).event)
    while not day.state.vessel("bowl") or not day.state.vessel("bowl").bath:  # type: ignore[union-attr]
        day.space()
    day.do(e.Read("bowl", temperature_c=14.0))
    day.home()
    shock = cause(day, "felting", "colder water")
    assert shock.standing == "shown" and "83 °C and the rinse read 14 °C" in shock.seen
    assert causes(a_free_day("cotton"), "felting") == ()


def test_the_boil_and_a_hot_scour_are_seen_only_where_they_were_read_or_planned() -> None:
    day = Day()
    pot = to_heat(day, "scour")
    day.do(e.Read(pot, temperature_c=74.0))
    assert cause(day, "felting", "scour was too hot").seen == "scour came to 74 °C, read."
    day = Day()
    day.home()
    assert "was planned for" in cause(day, "felting", "boil moved it").seen
    assert cause(day, "felting", "boil moved it").standing == "not said"


def test_too_much_alum_makes_wool_sticky_and_too_little_lets_it_bleed() -> None:
    much, little = a_free_day(), a_free_day()
    stage(much, "mordant in A with alum 25 %, 3 l, to 85, hold 60")
    stage(little, "mordant in A with alum 3 %, 3 l, to 85, hold 60")
    stage(little, "dye in A with madder extract 4 %, to 80, hold 60")
    assert cause(much, "stickiness", "More alum").standing == "shown"
    assert cause(little, "bleeding", "too little mordant").seen == "3 % of alum went in."
    assert cause(little, "too pale", "Too little mordant").standing == "shown"


def test_dyestuffs_that_need_no_mordant_are_not_blamed_for_having_none() -> None:
    walnut, madder = a_free_day(), a_free_day()
    stage(walnut, "dye in A with walnut hull 40 %, 3 l, to 85, hold 60")
    stage(madder, "dye in A with madder 50 %, 3 l, to 80, hold 60")
    assert not [one for one in causes(walnut, "bleeding") if "too little mordant" in one.why]
    assert "madder wants one" in cause(madder, "bleeding", "too little mordant").seen


def test_soap_in_hard_water_is_seen_from_the_kitchen_in_the_log() -> None:
    day = a_free_day()
    stage(day, "scour in A with soap 2 g/l, 3 l, to 50, hold 20")
    hard = {"kitchen": {"water": {"hardness_mg_l": 210.0}}}
    assert cause(day, "stickiness", "scum", hard).standing == "shown"
    assert cause(day, "stickiness", "scum").standing == "not said"


def test_a_day_that_was_never_rinsed_bleeds() -> None:
    day = a_free_day()
    stage(day, "dye in A with cutch 120 %, 3 l, to 80, hold 30")
    day.home()
    assert cause(day, "bleeding", "rinsed too little").seen == "No rinse is in the log."
    assert cause(day, "bleeding", "very deep").standing == "shown"


def test_too_pale_looks_at_the_dose_the_pulls_the_hold_the_heat_and_the_water() -> None:
    day = Day()
    added = day.until(e.Added)
    while not (isinstance(added, e.Added) and added.ingredient == "madder"):
        day.space()
        added = day.until(e.Added)
    day.do(e.Weighed("madder", 80.0, 1.0))
    while (one := day.state.step("strain")) and one.status != "complete":
        day.space()
    day.do(e.Skipped("extract again", "in a hurry"))
    pot = to_heat(day, "dye")
    day.do(e.Reached(pot, 68.0, "read"))
    day.pass_minutes(35)
    day.do(e.OnShade("dye"))
    day.home()
    found = {one.why: one for one in causes(day, "too pale") if one.standing == "shown"}
    seen = " ".join(one.seen for one in found.values())
    assert "33.3 % of madder went in, of 50 % planned" in seen
    assert "extracted once" in seen
    assert "held 35 min of 1 h planned" in seen
    assert "came to 68 °C, with 80 °C planned" in seen


def test_a_second_lot_in_the_same_bath_had_what_the_first_left() -> None:
    day = Day()
    while (dye := day.state.step("dye")) and dye.countdown is None:
        day.space()
    day.do(
        e.Replanned("lot joins", why="found it", lot="late", fibre="wool", mass_g=60.0, mordanted="bought")
    )
    day.home()
    assert "dye late was done in a bath that had dyed before" in cause(day, "too pale", "exhaust bath").seen
    assert cause(day, "wrong hue", "another mixture").standing == "shown"


def test_madder_that_was_read_too_hot_is_dull_and_what_was_planned_speaks_for_nothing() -> None:
    day = Day()
    pot = to_heat(day, "dye")
    assert cause(day, "too dull", "Madder brings its browns").standing == "not said"
    day.do(e.Read(pot, temperature_c=94.0))
    assert cause(day, "too dull", "Madder brings its browns").seen == "dye came to 94 °C, read."


def test_a_bare_copper_kettle_and_iron_shift_the_hue() -> None:
    day = a_free_day()
    stage(day, "dye in B with weld 60 %, 3 l, to 80, hold 40")
    stage(day, "sadden in A with iron 2 %, 3 l, to 60, hold 15")
    assert cause(day, "wrong hue", "bare metal").seen == "dye stood in bare copper, the kettle."
    assert cause(day, "wrong hue", "Iron went in").seen == "2 % of iron went in."
    steel = Day()
    steel.home()
    assert cause(steel, "wrong hue", "bare metal").standing == "spoken against"


def test_a_shade_looked_at_dry_is_not_blamed_on_the_wet() -> None:
    day = Day()
    day.home()
    assert cause(day, "wrong hue", "judged wet").standing == "not said"
    day.do(e.Cared("dry shade", "large skein", colour="#8b3a2b"))
    assert cause(day, "wrong hue", "judged wet").standing == "spoken against"


def test_insect_reds_and_madder_are_looked_at_for_acid_lime_and_soft_water() -> None:
    day = a_free_day()
    stage(day, "dye in A with cochineal 5 %, vinegar 10 %, 3 l, to 85, hold 45")
    assert cause(day, "wrong hue", "insect reds").seen == "Vinegar went in today."
    red = Day()
    red.home()
    soft, limed = {"kitchen": {"water": {"hardness_mg_l": 30.0}}}, a_free_day()
    assert cause(red, "wrong hue", "soft water", soft).standing == "shown"
    stage(limed, "dye in A with madder 50 %, chalk 2 %, 3 l, to 80, hold 45")
    assert cause(limed, "wrong hue", "soft water", soft).standing == "spoken against"


def test_troubles_are_understood_in_the_words_people_use() -> None:
    assert [symptom_named(one) for one in ("Streaky", "too-pale", "pale", "rubs off", "MUDDY")] == [
        "streaks", "too pale", "too pale", "bleeding", "too dull",
    ]  # fmt: skip
    assert set(WORDS.values()) == set(SYMPTOMS)
    with pytest.raises(NoSuchTrouble, match="expected one of streaks, felting"):
        symptom_named("haunted")


def test_one_trouble_shows_all_its_causes_and_all_troubles_only_what_the_log_shows() -> None:
    day = Day()
    pot = to_heat(day, "mordant")
    day.pass_minutes(12)
    day.do(e.Read(pot, temperature_c=84.0))
    one = "\n".join(trouble_lines(what_went_wrong(logged(day), "streaks"), 80))
    every = trouble_lines(what_went_wrong(logged(day)), 80)
    assert "The log does not say." in one and "hardly:" in one
    assert every[0] == "streaks" and not any("does not say" in line or "hardly" in line for line in every)
    assert max(map(len, every)) <= 80
    clean = trouble_lines(what_went_wrong(logged(Day())), 80)
    assert clean[0].startswith("The log shows none of the usual causes; name the trouble")


@given(moves)
@settings(max_examples=120, deadline=None)
def test_any_history_can_be_looked_through(history: list[Any]) -> None:
    day = Day()
    play(day, history)
    found = what_went_wrong(logged(day))
    assert [one.what for one in found] == list(SYMPTOMS)
    for trouble in found:
        standings = [one.standing for one in trouble.causes]
        assert standings == sorted(standings, key=("shown", "not said", "spoken against").index)
        assert all(one.seen for one in trouble.causes if one.standing != "not said")
    assert len(troubles_as_json(found)) == len(SYMPTOMS)
    assert trouble_lines(found, 80)


def test_the_pots_of_the_plan_are_those_looked_at() -> None:
    plan = madder_plan()
    vessels = tuple(
        PlannedVessel(
            one.name, one.letter, one.pot, one.capacity_l, "iron" if one.name == "dye pot" else one.material
        )
        for one in plan.vessels
    )
    day = Day(plan.__class__(**{**vars(plan), "vessels": vessels}))
    day.home()
    assert cause(day, "too dull", "bare metal").seen == "dye stood in bare iron, the dye pot."
