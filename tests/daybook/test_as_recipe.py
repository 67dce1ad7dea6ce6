"""A day repeated as a recipe: improvised or planned, its doses by share of the fibre, its heat as it was."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from daybook.logged import logged
from days import Day, madder_plan
from histories import moves, play
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.daybook.as_recipe import NothingToRepeat, recipe_from_day
from dyesession.daybook.doses import dose_reviews
from dyesession.errors import UserError
from dyesession.kitchen.model import Kitchen, Pot, Scale
from dyesession.plan import improvised, work_out
from dyesession.plan.model import FibreLot
from dyesession.recipe import Recipe, check_recipe, load_recipe, recipe_from_document
from dyesession.session import events as e
from dyesession.session.engine import Refused
from dyesession.session.suggest import Wait
from dyesession.session.typed import Hand, understand
from dyesession.tomlfile import write_document

KITCHEN = Kitchen(
    scales=(Scale("kitchen scale", 0.1, 5000.0),),
    pots=(Pot("big pot", 12.0, material="stainless"), Pot("small pot", 5.0, material="stainless")),
)
NO_POTS = Kitchen(scales=KITCHEN.scales)
LOTS = (
    FibreLot("large skein", "wool", 165.0, air_dry=True),
    FibreLot("small skein", "wool", 75.0, air_dry=True),
)


def a_day() -> Day:
    return Day(improvised(LOTS, KITCHEN))


def name(day: Day, text: str) -> None:
    day.do(understand("stage", text, day.state, Hand()).event)


def until_over(day: Day, step: str) -> None:
    for _ in range(400):
        found = day.state.step(step)
        if found and found.status == "complete":
            return
        day.space()
    raise AssertionError(f"{step} is never over")


def read_back(document: dict[str, Any], folder: Path) -> Recipe:
    """The recipe as a file, looked through and loaded; no fault in it."""
    file = folder / "repeated.toml"
    file.write_text(write_document(document), encoding="utf-8")
    assert check_recipe(file) == []
    assert replace(load_recipe(file), path="") == recipe_from_document(document, "here")
    return load_recipe(file)


def grams_in(day: Day) -> dict[str, float]:
    found: dict[str, float] = {}
    for one in day.entries:
        if isinstance(one.event, e.Added):
            found[one.event.ingredient] = found.get(one.event.ingredient, 0.0) + one.event.mass_g
    return found


STAGES = (
    "scour in A with wash 2 g/l, 8 l, to 60 over 30, hold 30",
    "mordant in the mordant pot with alum 12 % and tartar 6 %, 7 l, to 85 over 45, hold 60",
    "extract in B with madder 50 %, 3 l, to 70 over 40, hold 60, into A",
    "extract again in B, into A, to 70, hold 60",
    "dye in A, 7.2 l, to 80 over 60, hold 60",
    "sadden in the iron pot with iron 2 %, 7 l, to 60, hold 15",
    "rinse in the rinse bowl 5 l",
    "dry overnight",
)


def the_whole_improvised_day() -> Day:
    day = a_day()
    for text in STAGES:
        name(day, text)
        until_over(day, day.state.steps[-1].name)
    day.home()
    return day


def test_an_improvised_day_becomes_a_recipe_that_gives_the_same_doses_at_another_weight(
    tmp_path: Path,
) -> None:
    day = the_whole_improvised_day()
    recipe = read_back(recipe_from_day(logged(day), "Red saddened"), tmp_path)
    grams = grams_in(day)
    for fibre_g in (240.0, 97.0, 1000.0):
        plan = work_out(recipe, [FibreLot("other wool", "wool", fibre_g, air_dry=True)], NO_POTS)
        assert {one.ingredient: one.mass_g.aim for one in plan.doses} == {
            key: pytest.approx(value * fibre_g / 240.0, rel=1e-5) for key, value in grams.items()
        }


def test_the_steps_their_order_and_their_pots_are_those_of_the_day(tmp_path: Path) -> None:
    recipe = read_back(recipe_from_day(logged(the_whole_improvised_day())), tmp_path)
    steps = {one.name: one for one in recipe.steps}
    assert list(steps) == ["scour", "mordant", "extract", "dye", "sadden", "rinse", "dry"]
    assert steps["extract"].refreshes == 1 and steps["extract"].into == "big pot"
    assert set(steps["dye"].after) == {"mordant", "extract"}
    assert steps["sadden"].after == ("dye",) and steps["dry"].after == ("rinse",)
    assert steps["mordant"].vessel == "mordant pot"
    assert recipe.liquor_ratio == pytest.approx(30.0)


def test_a_repeated_recipe_plans_the_water_of_the_day_again(tmp_path: Path) -> None:
    recipe = read_back(recipe_from_day(logged(the_whole_improvised_day())), tmp_path)
    plan = work_out(recipe, list(LOTS), NO_POTS)
    water = {one.name: one.water_l for one in plan.steps}
    assert water["mordant"] == pytest.approx(7.0, rel=1e-3)
    assert water["extract"] == pytest.approx(3.0, rel=1e-3) == water["extract again"]
    assert water["dye"] == pytest.approx(7.2, rel=1e-3)


def test_heat_is_what_was_read_and_minutes_are_those_that_passed(tmp_path: Path) -> None:
    day = a_day()
    name(day, "mordant in A with alum 12 %, 7 l, to 85 over 45, hold 60")
    while not isinstance(day.suggest(), Wait):
        day.space()
    day.pass_minutes(52)
    day.do(e.Read("big pot", temperature_c=84.4))
    day.pass_minutes(20)
    day.do(e.Paused("mordant"))
    day.pass_minutes(500)
    day.do(e.Resumed("mordant"))
    day.pass_minutes(55)
    day.do(e.Finished("mordant"))
    [mordant] = read_back(recipe_from_day(logged(day)), tmp_path).steps
    assert [(one.kind, one.temperature_c, one.minutes) for one in mordant.heat] == [
        ("to", 84.0, 52.0),
        ("hold", None, 75.0),
    ]


def test_a_dye_step_that_the_eye_ended_is_held_as_long_as_the_eye_let_it(tmp_path: Path) -> None:
    day = Day()
    while (dye := day.state.step("dye")) and dye.held_since_s is None:
        day.space()
    day.pass_minutes(37)
    day.do(e.OnShade("dye"))
    day.home()
    recipe = read_back(recipe_from_day(logged(day)), tmp_path)
    dyed = next(one for one in recipe.steps if one.name == "dye")
    assert dyed.heat[-1].minutes == 37.0 and dyed.judge is not None


def test_a_planned_day_done_as_planned_repeats_its_plan(tmp_path: Path) -> None:
    day = Day()
    day.home()
    say = {"name": "dye", "say": "Turn gently, never stir."}
    document = recipe_from_day(logged(day, {"recipe": {"name": "x", "step": [say]}}))
    recipe = read_back(document, tmp_path)
    plan, was = work_out(recipe, list(day.plan.lots), NO_POTS), madder_plan()
    for dose in was.doses:
        assert plan.dose(dose.ingredient).mass_g.aim == pytest.approx(dose.mass_g.aim, rel=1e-5)
        assert plan.dose(dose.ingredient).role == dose.role
    assert {one.name: one.stage for one in recipe.steps} == {
        one.of: one.stage for one in was.steps if one.stage != "strain"
    }
    assert next(one for one in recipe.steps if one.name == "extract").refreshes == 2
    assert next(one for one in recipe.steps if one.name == "dye").say == "Turn gently, never stir."


def test_what_was_left_out_is_left_out_and_nothing_waits_for_it(tmp_path: Path) -> None:
    day = Day()
    day.do(e.Skipped("scour", "washed yesterday"))
    while (one := day.state.step("strain")) and one.status != "complete":
        day.space()
    day.do(e.Skipped("extract again", "strong enough"))
    day.home()
    recipe = read_back(recipe_from_day(logged(day)), tmp_path)
    assert [one.name for one in recipe.steps] == ["mordant", "extract", "dye", "rinse", "dry"]
    extract = next(one for one in recipe.steps if one.name == "extract")
    assert extract.refreshes == 0 and extract.into == "dye pot"
    assert "wash" not in [one.name for one in recipe.ingredients]


def test_a_late_skein_counts_by_its_share_and_makes_no_step_of_its_own(tmp_path: Path) -> None:
    day = Day()
    until_over(day, "mordant")
    day.do(e.Replanned("lot joins", why="found it", lot="found skein", fibre="wool", mass_g=60.0))
    day.home()
    recipe = read_back(recipe_from_day(logged(day)), tmp_path)
    assert [one.stage for one in recipe.steps].count("mordant") == 1
    plan = work_out(recipe, [FibreLot("wool", "wool", 100.0, air_dry=True)], NO_POTS)
    assert plan.dose("alum").mass_g.aim == pytest.approx(12.0, rel=1e-5)


def test_an_ingredient_added_in_two_steps_is_shared_between_them_exactly(tmp_path: Path) -> None:
    day = a_day()
    name(day, "dye in A with cutch 10 %, 7 l, to 80, hold 30")
    until_over(day, "dye")
    name(day, "dye in A with cutch 7 %, to 80, hold 30")
    until_over(day, "dye 2")
    recipe = read_back(recipe_from_day(logged(day)), tmp_path)
    shares = [one.add[0].share for one in recipe.steps]
    assert sum(shares) == 1 and float(shares[0]) == pytest.approx(10 / 17)


def test_a_day_on_which_nothing_was_done_is_no_recipe() -> None:
    with pytest.raises(NothingToRepeat, match="nothing to repeat"):
        recipe_from_day(logged(a_day()))


NAMED = (
    *STAGES,
    "dye in B with cutch 10 %, small skein",
    "wet in A 3 l",
    "rest, 30 min",
    "extract in A with weld 30 %, 4 l",
)


@given(st.lists(st.sampled_from(NAMED) | st.just("space") | st.just("space"), min_size=5, max_size=80))
@settings(max_examples=120, deadline=None)
def test_whatever_was_improvised_makes_a_sound_recipe_with_its_doses(history: list[str]) -> None:
    day = a_day()
    for move in history:
        if move == "space":
            day.space()
            continue
        try:
            name(day, move)
        except (Refused, UserError):
            continue
    try:
        document = recipe_from_day(logged(day))
    except NothingToRepeat:
        return
    recipe = recipe_from_document(document, "here")
    plan = work_out(recipe, list(LOTS), NO_POTS)
    assert all(dose.mass_g.aim > 0 for dose in plan.doses)


@given(moves)
@settings(max_examples=150, deadline=None)
def test_any_history_of_a_planned_day_makes_a_sound_recipe_or_none(history: list[Any]) -> None:
    day = Day()
    play(day, history)
    try:
        document = recipe_from_day(logged(day))
    except NothingToRepeat:
        return
    recipe = recipe_from_document(document, "here")
    assert all(one.dose is not None for one in recipe.ingredients)


def test_what_came_in_at_the_stove_is_looked_back_on_by_its_substance_and_role() -> None:
    day = the_whole_improvised_day()
    events = [one.event for one in day.entries]
    found = {one.ingredient: one for one in dose_reviews(day.plan, events, day.state.doses)}
    assert (found["iron"].substance, found["iron"].role) == ("iron", "modifier")
    assert found["alum"].planned_g is None and found["alum"].added_g == pytest.approx(28.8)
