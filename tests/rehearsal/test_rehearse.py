"""A whole day rehearsed: it comes home in good order, asks seldom, rings seldom, and says that it is no real
day.
"""

import json
import re
import time
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from days import MORNING
from hypothesis import given
from hypothesis import strategies as st

from dyesession.care import ASKS_PER_DAY, Household
from dyesession.kitchen import load_kitchen
from dyesession.kitchen.model import Kitchen
from dyesession.plan import lots_from_text
from dyesession.recipe import load_recipe
from dyesession.rehearsal import (
    RehearsalError,
    Rehearsed,
    rehearse,
    rehearsed_as_json,
    rehearsed_lines,
)
from dyesession.rehearsal.model import most_within
from dyesession.session import events as e
from dyesession.session.log import check_log
from dyesession.session.opening import read_day
from dyesession.session.suggest import Ring
from dyesession.storage import DISK

ROOT = Path(__file__).resolve().parents[2]
RECIPES = sorted(one.stem for one in (ROOT / "recipes").glob("*.toml"))
LONGEST_S = 2.0
MOST_CALLS = 10  # more in ten minutes nobody can answer; our own choice, no source


def kitchen() -> Kitchen:
    return load_kitchen(ROOT / "dyesession" / "kitchen" / "example.toml")


def rehearsed(name: str, into: Path | None = None, at: Kitchen | None = None) -> Rehearsed:
    recipe = load_recipe(ROOT / "recipes" / f"{name}.toml")
    lots = lots_from_text(["165 g dry large skein", "75 g dry small skein"], recipe.fibre[0])
    return rehearse(recipe, lots, at or kitchen(), into, storage=DISK, start=MORNING)


@pytest.fixture(scope="module")
def madder(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Rehearsed]:
    yield rehearsed("madder-brick-red-on-wool", tmp_path_factory.mktemp("rehearsals"))


@pytest.mark.parametrize("name", RECIPES)
def test_every_recipe_comes_home_with_few_questions_and_few_calls(name: str) -> None:
    started_s = time.process_time()
    day = rehearsed(name)
    assert time.process_time() - started_s < LONGEST_S
    assert day.timeline[-1].kind == "closed"
    assert len(day.questions) <= ASKS_PER_DAY
    assert day.most_calls_in_ten_min <= MOST_CALLS
    assert day.alarms == ()


def test_the_log_is_marked_as_a_rehearsal_and_passes_check(madder: Rehearsed) -> None:
    assert madder.path is not None
    assert check_log(madder.path) == []
    assert read_day(DISK, madder.path).rehearsal


def test_a_rehearsal_that_is_not_kept_leaves_no_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    assert rehearsed("iron-saddening").path is None
    assert list(tmp_path.iterdir()) == []


def test_mordant_and_extract_are_under_way_at_the_same_time(madder: Rehearsed) -> None:
    begun = {one.step: one.minute for one in madder.timeline if one.kind == "begun"}
    done = {one.step: one.minute for one in madder.timeline if one.kind in ("finished", "strained")}
    assert begun["extract"] < done["scour"] and begun["mordant"] < done["extract again"]


def test_time_runs_forwards_and_every_step_has_its_lane(madder: Rehearsed) -> None:
    minutes = [one.minute for one in madder.timeline]
    assert minutes == sorted(minutes)
    assert {one.lane for one in madder.timeline if one.kind == "begun"} == {"fibre", "liquor"}
    assert all(one.lane == "liquor" for one in madder.timeline if one.kind in ("strained", "refreshed"))


def test_doses_are_weighed_on_the_finest_scale_that_carries_them(madder: Rehearsed) -> None:
    assert madder.path is not None
    weighed = [one.event for one in read_day(DISK, madder.path).entries if isinstance(one.event, e.Weighed)]
    assert {one.ingredient: one.resolution_g for one in weighed} == dict.fromkeys(
        ("wash", "alum", "tartar", "madder"), 0.1
    )


def test_a_kitchen_without_scales_puts_in_what_is_planned_and_forges_no_weighing() -> None:
    day = rehearsed("madder-brick-red-on-wool", at=Kitchen())
    assert not any(one.kind == "weighed" for one in day.timeline)
    assert all("planned" in one.what for one in day.timeline if one.kind == "added")


def test_hot_liquor_is_strained_after_its_temperature_was_read(madder: Rehearsed) -> None:
    strains = [one for one in madder.questions if one.step.startswith("strain")]
    assert [one.answer for one in strains] == ["70", "70", "70"]
    assert sum(one.asks for one in madder.care) == len(madder.questions)


def test_a_bath_that_is_still_too_hot_is_given_longer(madder: Rehearsed) -> None:
    scour = [one.kind for one in madder.timeline if one.step == "scour"]
    assert "extended" in scour
    assert scour.index("extended") < scour.index("finished")


def test_a_snippet_is_dipped_and_looked_at_before_the_dye_step_ends(madder: Rehearsed) -> None:
    snippet = [one for one in madder.timeline if "snippet 1" in one.what]
    assert [one.kind for one in snippet] == ["dipped", "lifted"]
    ended = next(one.minute for one in madder.timeline if one.kind == "on-shade")
    assert snippet[-1].minute < ended


def test_each_strain_changes_what_the_account_says(madder: Rehearsed) -> None:
    dye_pot = [one.text for one in madder.account if one.text.startswith("The dye pot holds the colour of")]
    assert len(dye_pot) >= 3 and all(was != now for was, now in pairwise(dye_pot))
    assert any("strained in from the extract pot: +" in line for line in madder.ledger)
    assert any("taken up by the fibre: -" in line for line in madder.ledger)


def test_every_step_shows_its_reminders(madder: Rehearsed) -> None:
    care = {one.step: one.texts for one in madder.care}
    assert any("second burns" in text for text in care["strain"])
    assert set(care) >= {one.name for one in madder.plan.steps}


def test_the_same_day_rehearsed_twice_is_the_same_day() -> None:
    one, other = (rehearsed_as_json(rehearsed("weld-yellow-on-wool")) for _ in range(2))
    assert one.pop("session") != other.pop("session")
    assert one == other


def test_json_holds_what_is_promised(madder: Rehearsed) -> None:
    tables = json.loads(json.dumps(rehearsed_as_json(madder)))
    assert tables["rehearsal"] is True and tables["log"] == str(madder.path)
    assert {one["ingredient"] for one in tables["weighing"]} == {"wash", "alum", "tartar", "madder"}
    assert {"step", "texts", "asks"} == set(tables["reminders"][0])
    assert {"at", "minute", "lane", "step", "vessel", "kind", "what"} == set(tables["timeline"][0])
    assert tables["most_calls_in_ten_min"] == madder.most_calls_in_ten_min


def test_the_printed_day_fits_the_width_and_names_every_step(madder: Rehearsed) -> None:
    lines = rehearsed_lines(madder, 60)
    assert all(len(line) <= 60 for line in lines[2:])
    text = " ".join(lines)
    assert all(f"{one.name} begun" in text for one in madder.plan.steps)


def test_a_day_that_does_not_end_is_said_and_not_gone_on_for_ever(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("dyesession.rehearsal.under_way.MOST_MOVES", 5)
    with pytest.raises(RehearsalError, match="does not come to an end"):
        rehearsed("iron-saddening")


@given(st.lists(st.floats(0, 100), max_size=30))
def test_the_busiest_ten_minutes_are_never_fewer_than_one_call_nor_more_than_all(
    minutes: list[float],
) -> None:
    most = most_within(tuple(minutes), 10.0)
    assert (1 if minutes else 0) <= most <= len(minutes)
    if minutes and max(minutes) - min(minutes) < 10:
        assert most == len(minutes)


def test_a_dyer_without_a_thermometer_reads_no_degrees_and_comes_home_all_the_same() -> None:
    day = rehearsed("madder-brick-red-on-wool", at=replace(kitchen(), thermometer=False))
    assert day.timeline[-1].kind == "closed"
    assert not any(one.kind == "read" for one in day.timeline)
    assert {one.answer for one in day.questions} == {"not now"}


@pytest.mark.parametrize("name", RECIPES)
def test_every_recipe_lists_the_days_reminders_and_counts_what_is_to_be_confirmed(name: str) -> None:
    day = rehearsed(name)
    lines = rehearsed_lines(day, 10_000)
    assert lines[1] == (
        f"{day.reminder_count} reminders, {len(day.questions)} confirmation{'s' * (len(day.questions) != 1)}"
        f" ({ASKS_PER_DAY} at most in an ordinary day), 0 alarms"
    )
    assert day.reminder_count >= 3 and 1 <= len(day.questions) <= ASKS_PER_DAY
    for one in day.care:
        assert all(f"  {text}" in lines for text in one.texts), one.step
    heading = lines.index(f"Confirmations: {len(day.questions)}")
    assert len(lines[heading + 1 :]) == len(day.questions)
    tables = rehearsed_as_json(day)
    assert tables["confirmation_count"] == len(day.questions) == sum(one["asks"] for one in tables["reminders"])
    assert tables["reminder_count"] == sum(len(one["texts"]) for one in tables["reminders"])


@pytest.mark.parametrize("name", RECIPES)
def test_no_step_of_a_rehearsed_day_says_the_same_thing_twice(name: str) -> None:
    """Not even in other figures: two sentences that differ in numbers alone are one sentence said twice."""
    for one in rehearsed(name).care:
        shapes = [re.sub(r"\d[\d.]*", "#", text) for text in one.texts]
        assert len(set(shapes)) == len(shapes), (one.step, one.texts)


def test_what_is_put_by_after_the_last_step_is_cautioned_too(madder: Rehearsed) -> None:
    closing = next(one for one in madder.care if one.step == "closing")
    assert any("put by: labelled, lid loose" in text for text in closing.texts)


# How often a day may call: the check, and a day that calls too often, which it must catch.


def calls_seldom(day: Rehearsed) -> bool:
    """Ten calls at most in any ten minutes, and no hot pot left until it is an alarm."""
    return day.most_calls_in_ten_min <= MOST_CALLS and day.alarms == ()


@pytest.mark.parametrize("name", RECIPES)
def test_no_rehearsed_day_calls_more_than_ten_times_in_ten_minutes(name: str) -> None:
    day = rehearsed(name)
    assert calls_seldom(day) and day.calls, "and it does call"


def test_the_twin_that_rings_again_at_every_look_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    """Sabotage: what rings is forgotten at once, so that every look at the clock is a new call."""
    monkeypatch.setattr("dyesession.rehearsal.under_way.LOOK_EVERY_S", 20.0)
    seen: list[object] = []

    def forgetful(state: object, now_s: float) -> tuple[Ring, ...]:
        seen.append(now_s)
        ring = Ring(f"extract/{len(seen)}", "extract", "extract pot", "prompt", 0.0)
        return (ring,) if len(seen) > 5 else ()

    monkeypatch.setattr("dyesession.rehearsal.under_way.rings", forgetful)
    assert not calls_seldom(rehearsed("madder-brick-red-on-wool"))


def test_the_twin_whose_dyer_leaves_a_hot_pot_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    """Sabotage: every act takes seven minutes, so a pot is left on the ring until it is an alarm."""
    monkeypatch.setattr("dyesession.rehearsal.dyer.TAKES_MIN", {})
    monkeypatch.setattr("dyesession.rehearsal.dyer.USUAL_MIN", 7.0)
    day = rehearsed("madder-brick-red-on-wool")
    assert day.alarms and not calls_seldom(day)
    assert all(re.match(r"[A-F], the .*: .*, .* over\.", one.what) for one in day.alarms), day.alarms


def test_what_concerns_who_lives_here_is_printed_and_handed_to_no_other_program() -> None:
    day = rehearsed("iron-saddening", at=replace(kitchen(), household=Household(child_kg=12.0)))
    assert any("can make a 12 kg child ill" in line for line in rehearsed_lines(day, 10_000))
    assert "12 kg" not in json.dumps(rehearsed_as_json(day))
    assert not any("child ill" in line for line in rehearsed_lines(rehearsed("iron-saddening", at=Kitchen()), 10_000))
