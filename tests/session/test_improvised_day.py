"""A day without a recipe: stages come as the dyer names them, and the same engine carries them."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from days import MORNING, Day
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.clock import Instant, SteppingClock
from dyesession.errors import UserError
from dyesession.kitchen.model import Burner, Kitchen, Pot, Scale
from dyesession.plan import improvised
from dyesession.plan.model import FibreLot, Plan, PlannedStep
from dyesession.plan.trouble import PlanError
from dyesession.recipe.model import Heat
from dyesession.session import events as e
from dyesession.session.engine import Refused
from dyesession.session.fold import fold, opening_state
from dyesession.session.log import check_log
from dyesession.session.opening import begin_improvised, read_day, resume_day
from dyesession.session.suggest import Wait
from dyesession.session.typed import Hand, understand
from dyesession.session.words import suggestion_words
from dyesession.storage import DISK

KITCHEN = Kitchen(
    scales=(Scale("kitchen scale", 1.0, 5000.0),),
    pots=(Pot("big pot", 12.0, 28.0, True, "stainless"), Pot("small pot", 5.0, 20.0, True, "stainless")),
    burners=(Burner("front", 1800.0, "electric"),),
    elevation_m=400.0,
)
LOTS = (
    FibreLot("large skein", "wool", 165.0, air_dry=True),
    FibreLot("small skein", "wool", 75.0, air_dry=True),
)


def a_day() -> Day:
    return Day(improvised(LOTS, KITCHEN))


def name(day: Day, text: str) -> None:
    day.do(understand("stage", text, day.state, Hand()).event)


def until_over(day: Day, step: str) -> None:
    for _ in range(300):
        found = day.state.step(step)
        if found and found.status == "complete":
            return
        day.space()
    raise AssertionError(f"{step} is never over")


def test_a_day_without_a_recipe_waits_for_the_first_stage_and_says_how_to_name_one() -> None:
    day = a_day()
    wait = day.suggest()
    assert wait == Wait(None)
    assert suggestion_words(day.state, wait) == (
        "say what comes first, for example: mordant in A with alum 12 %, to 85 °C, hold 60 min"
    )


def test_a_stage_is_begun_filled_dosed_entered_heated_and_held_as_any_other() -> None:
    day = a_day()
    name(day, "mordant in A with alum 12 % and tartar 6 %, 7 l, to 85 °C over 45 min, hold 60 min")
    acts = []
    while not isinstance(day.suggest(), Wait):
        acts.append(day.space())
    assert [one.kind for one in acts if not isinstance(one, Wait)] == [  # type: ignore[union-attr]
        "begun", "filled", "added", "added", "entered", "entered", "lit",
    ]  # fmt: skip
    assert [(one.ingredient, one.mass_g) for one in acts if isinstance(one, e.Added)] == [
        ("alum", pytest.approx(28.8)),
        ("tartar", pytest.approx(14.4)),
    ]
    mordant = day.state.step("mordant")
    assert mordant and mordant.countdown and mordant.countdown.target_c == 85.0
    assert mordant.countdown.length_s == 45 * 60


def test_water_that_is_not_said_is_the_usual_ratio_as_far_as_the_pot_holds_it() -> None:
    day = a_day()
    name(day, "mordant in A with alum 12 %")
    assert day.state.step("mordant").plan.water_l == pytest.approx(7.2)  # type: ignore[union-attr]
    name(day, "dye in B with cutch 15 %")
    assert day.state.step("dye").plan.water_l == pytest.approx(5.0 * 2 / 3)  # type: ignore[union-attr]


def test_no_stage_is_hotter_than_water_boils_in_this_kitchen() -> None:
    day = a_day()
    name(day, "dye in A with cutch 15 %, to boiling, hold 30")
    heat = day.state.step("dye").plan.heat[0]  # type: ignore[union-attr]
    assert heat.temperature_c == pytest.approx(day.plan.boiling_c - 2.0)


def test_dyestuff_is_extracted_strained_and_extracted_again_and_the_liquor_dyes() -> None:
    day = a_day()
    name(day, "extract in B with madder 50 %, 3 l, to 70, hold 60, into A")
    assert [one.name for one in day.state.steps] == ["extract", "strain extract"]
    until_over(day, "strain extract")
    name(day, "extract again in B, into A, to 70, hold 60")
    again = day.state.step("extract again")
    assert again and again.plan.again == 1 and again.plan.of == "extract" and again.plan.water_l == 3.0
    until_over(day, "strain extract again")
    assert any(isinstance(one.event, e.Refreshed) for one in day.entries)
    name(day, "dye in A, 7.2 l, to 80 over 60, hold 60")
    until_over(day, "dye")
    assert any(isinstance(one.event, e.ToppedUp) and one.event.vessel == "big pot" for one in day.entries)
    pulls = day.state.dyestuff("madder")
    assert pulls and pulls.pulls == 2 and pulls.mass_g == pytest.approx(120.0)


def test_a_dyeing_without_a_hold_is_ended_by_the_eye() -> None:
    day = a_day()
    name(day, "dye in A with cutch 15 %, to 80")
    seen = day.until(e.OnShade)
    assert isinstance(seen, e.OnShade)


def test_a_step_under_way_with_the_same_fibre_is_waited_for() -> None:
    day = a_day()
    name(day, "mordant in A with alum 12 %, to 85, hold 60")
    while not isinstance(day.suggest(), Wait):
        day.space()
    name(day, "dye in B with cutch 15 %, to 80, hold 30")
    dye = day.state.step("dye")
    assert dye and dye.plan.after == ("mordant",) and not day.state.ready(dye)


def test_one_skein_can_be_named_alone() -> None:
    day = a_day()
    name(day, "dye in A with cutch 15 %, small skein, to 80, hold 30")
    dye = day.state.step("dye")
    assert dye and dye.plan.enter == ("small skein",)
    assert dye.plan.add[0].mass_g == pytest.approx(75 * 0.15)
    until_over(day, "dye")
    assert day.state.step("dye").entered == ("small skein",)  # type: ignore[union-attr]


def test_doses_by_the_litre_and_by_another_ingredient_are_worked_out_at_once() -> None:
    day = a_day()
    name(day, "scour in A with wash 2 g/l, 8 l, to 60, hold 30")
    assert day.state.step("scour").plan.add[0].mass_g == pytest.approx(16.0)  # type: ignore[union-attr]
    name(day, "mordant in B with alum 12 %, soda ash 6.25 % of alum")
    assert day.state.step("mordant").plan.add[1].mass_g == pytest.approx(1.8)  # type: ignore[union-attr]


def test_the_same_stuff_by_another_name_is_one_ingredient() -> None:
    day = a_day()
    name(day, "mordant in A with alum 6 %")
    name(day, "mordant in B with potassium alum 6 %")
    assert day.state.substances == (("alum", "alum"),)


def test_what_nothing_is_known_of_is_said_loudly() -> None:
    day = a_day()
    said = understand("stage", "dye in A with moonweed 10 %", day.state, Hand()).echo
    assert "NOT KNOWN: moonweed" in said


def test_when_nothing_more_is_named_the_fibre_dries_and_no_hand_on_the_space_bar_closes_the_day() -> None:
    day = a_day()
    name(day, "mordant in A with alum 12 %, to 85, hold 60")
    until_over(day, "mordant")
    while any(one.place == "big pot" for one in day.state.lots):
        assert not isinstance(day.space(), e.Closed)
    drying = day.suggest()
    assert suggestion_words(day.state, drying) == "let the fibre dry overnight, or name the next stage"
    while not isinstance(day.suggest(), Wait):
        day.space()
    assert day.state.status == "open" and day.state.vessel("big pot").bath is not None  # type: ignore[union-attr]
    name(day, "dye in A with cutch 15 %, to 80, hold 30")
    until_over(day, "dye")
    day.home()
    assert day.state.status == "complete"


def test_what_is_heated_stands_in_a_pot() -> None:
    with pytest.raises(UserError, match="Say in which pot"):
        name(a_day(), "dry, to 60, hold 20")
    plan = improvised(LOTS, KITCHEN)
    heated = PlannedStep(
        "dry", "dry", "fibre", None, "dry", heat=(Heat("to", 60.0), Heat("rest", minutes=30.0))
    )
    day = Day(replace(plan, steps=(heated,)))
    day.home()
    assert day.state.step("dry").plan.heat == (Heat("rest", minutes=30.0),)  # type: ignore[union-attr]


def test_a_lot_can_join_and_a_dose_change_on_an_improvised_day_too() -> None:
    day = a_day()
    name(day, "mordant in A with alum 12 %, to 85, hold 60")
    until_over(day, "mordant")
    day.do(e.Replanned("lot joins", why="found it", lot="found skein", fibre="wool", mass_g=60.0))
    own = day.state.step("mordant found skein")
    assert own and own.plan.add[0].mass_g == pytest.approx(7.2)
    name(day, "dye in A with cutch 15 %, to 80, hold 30")
    day.home()
    assert set(day.state.step("dye").entered) == {"large skein", "small skein", "found skein"}  # type: ignore[union-attr]


STAGES = (
    "scour in A with wash 2 g/l, 8 l, to 60, hold 30, cool to 40",
    "wet in B 3 l",
    "mordant in A with alum 12 % and tartar 6 %, to 85 over 45, hold 60, rest overnight",
    "mordant in the bucket with alum 5 %",
    "extract in B with madder 50 %, into A, to 70, hold 60",
    "extract again in B, into A",
    "soak in B with weld 30 %, overnight",
    "dye in A, to 80 over 60, hold 60",
    "dye in A with cutch 10 %, small skein",
    "sadden in the iron pot with iron 2 %, 7 l, to 60, hold 15",
    "rinse in the rinse bowl 5 l",
    "rest, 30 min",
    "dry overnight",
    "dry",
)
moves: st.SearchStrategy[list[Any]] = st.lists(
    st.sampled_from(STAGES) | st.just("space") | st.just("space") | st.floats(0, 90), max_size=60
)


@given(st.sampled_from(STAGES), moves)
@settings(max_examples=120, deadline=None)
def test_an_improvised_day_gets_home_from_anywhere(first: str, history: list[Any]) -> None:
    day = a_day()
    for move in (first, *history):
        if move == "space":
            day.space()
        elif isinstance(move, float):
            day.pass_minutes(move)
        else:
            try:
                name(day, move)
            except (Refused, UserError):
                continue
    if not day.state.steps:
        return
    day.home(most=1500)
    assert not day.state.flags
    assert {one.place for one in day.state.lots} == {"done"}
    assert fold(opening_state(day.plan), day.entries, day.opened) == day.state


def nothing_reckoned(plan: Plan, opened: Instant) -> Any:
    return lambda entries: (None, None)


def test_an_improvised_day_is_logged_and_taken_up_again_where_it_stood(tmp_path: Path) -> None:
    clock = SteppingClock(MORNING)
    session = begin_improvised(DISK, tmp_path, LOTS, KITCHEN, clock, nothing_reckoned)
    path = Path(session.snapshot.path)
    assert "improvised" in path.name
    text = "mordant in A with alum 12 %, iron 1 %, 7 l, to 85 over 45, hold 60"
    session.do(understand("stage", text, session.snapshot.state, Hand()).event).result(10)
    session.do(e.Begun("mordant")).result(10)
    before = session.snapshot.state
    session.close()
    assert check_log(path) == []
    day = read_day(DISK, path)
    assert day.improvised and day.plan.steps == ()
    again = resume_day(DISK, path, clock, KITCHEN.household, nothing_reckoned)
    assert again.snapshot.state == before
    again.close()


def test_an_improvised_day_wants_a_sound_weight(tmp_path: Path) -> None:
    damp = (FibreLot("wool", "wool", 212.0, air_dry=False),)
    with pytest.raises(PlanError, match="air-dry"):
        begin_improvised(DISK, tmp_path, damp, KITCHEN, SteppingClock(MORNING), nothing_reckoned)
    assert list(tmp_path.iterdir()) == []
