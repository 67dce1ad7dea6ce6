"""The Bench: what it greets with, what it finds in the workroom, what each line does, by keys alone and by touch alone."""

from datetime import timedelta
from pathlib import Path

import pytest
from days import MORNING
from ui.at_places import Room, in_a_room

from dyesession.account.live import reckoner_for
from dyesession.clock import SteppingClock
from dyesession.kitchen.model import Kitchen
from dyesession.plan import lots_from_text, work_out
from dyesession.recipe import load_recipe
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.opening import begin_day
from dyesession.session.suggest import Wait, suggest
from dyesession.storage import DISK
from dyesession.ui.screens.page import PageScreen
from dyesession.ui.screens.stove import StoveScreen

ROOT = Path(__file__).resolve().parents[2]


def a_day(folder, recipe="onion-skins-in-one-pot", *, ago=timedelta(0), acts=2, until=None, close=False, colour=""):
    """A day in the workroom's logs: so many acts done, or up to a kind of act, or done to its end."""
    kitchen, clock = Kitchen(), SteppingClock(MORNING - ago)
    found = load_recipe(ROOT / "recipes" / f"{recipe}.toml")
    plan = work_out(found, lots_from_text(["100 g dry wool"], "wool"), kitchen)
    session = begin_day(DISK, folder / "logs", found, plan, kitchen, clock, reckoner_for)
    done, last = 0, None
    while (close or (not isinstance(last, until) if until else done < acts)) and session.snapshot.state.status != "complete":
        act = suggest(session.snapshot.state, session.now_s(), session.household)
        if isinstance(act, Wait):
            clock.advance(max(60.0, (act.until_s or 0.0) - session.now_s()))
            continue
        if colour and isinstance(act, e.Closed):
            session.do(e.Read(lot="wool", colour=colour, wet=False)).result(10)
        last = act.honest_answer() if isinstance(act, Ask) else act
        session.do(last).result(10)
        clock.advance(5.0)
        done += 1
    session.close()
    return Path(session.snapshot.path)


@in_a_room()
async def test_an_empty_workroom_greets_with_one_clear_next_step(room):
    assert "Welcome to your bench" in room.text()
    assert room.view.done and all(one.demo for one in room.view.done), "the demo season, marked as such"
    assert room.view.frame.next_act.act == "work out Madder brick red on wool"
    assert not room.logs() and list(room.folder.iterdir()) == []
    await room.press("space")
    assert room.place == "Working out"
    assert list(room.folder.iterdir()) == [], "looking round writes nothing"


@in_a_room()
async def test_every_recipe_that_comes_with_the_program_is_offered(room):
    names = {one.name for one in room.view.recipes}
    assert len(names) == len(list((ROOT / "recipes").glob("*.toml")))
    assert "Weld yellow on wool" in names


def test_an_open_day_is_offered_first_and_taken_up_with_one_key(tmp_path):
    log = a_day(tmp_path)
    before = log.read_bytes()

    @in_a_room()
    async def take_up(room):
        assert room.view.frame.next_act.act == "take up Onion skins in one pot where it stands"
        assert room.view.cursor == f"day:{log}" and "Welcome" not in room.text()
        assert log.read_bytes() == before, "looking at a log changes nothing"
        await room.press("space")
        assert isinstance(room.app.screen, StoveScreen) and room.app.session.snapshot.path == str(log)
        await room.press("q")
        assert room.place == "Bench" and room.app.is_running
        assert room.view.frame.next_act.act == "go to the stove: Onion skins in one pot"
        await room.press("space")
        assert isinstance(room.app.screen, StoveScreen)

    take_up(tmp_path)


def test_the_open_day_shows_its_pots_and_what_is_overdue(tmp_path):
    a_day(tmp_path, until=e.Lit)

    @in_a_room(size=(200, 60))
    async def look(room):
        await room.press("space", "q")
        assert any("heating to" in one.says for one in room.view.under_way[0].pots)
        room.clock.advance(3 * 3600)
        await room.settle()
        pot = next(one for one in room.view.under_way[0].pots if one.over)
        assert "due since" in pot.says and "RINGING" in room.text()
        await room.press("space")
        acknowledged = [one for one in room.app.session.snapshot.entries if isinstance(one.event, e.Acknowledged)]
        assert acknowledged, "space says: seen, on the Bench as at the Stove"
        assert room.place == "Bench"

    look(tmp_path)


def test_a_day_that_is_over_is_listed_with_the_colour_that_was_read(tmp_path):
    a_day(tmp_path, close=True, colour="#8f4030", ago=timedelta(days=4))

    @in_a_room()
    async def look(room):
        assert room.view.done[0].recipe == "Onion skins in one pot" and not room.view.under_way
        assert room.view.done[0].swatches[0].colour == "#8f4030"
        want = next(one for one in room.view.wants if one.key.startswith("dry:"))
        assert "dry by now" in want.what
        await room.press("home")
        while room.view.cursor != want.key:
            await room.press("down")
        await room.press("enter")
        assert room.place == "Colour" and "noted on its day" in room.flat()
        await room.press("q")
        assert room.place == "Bench"

    look(tmp_path)


def test_a_kept_bath_wants_to_be_looked_at_once_its_days_are_over(tmp_path):
    a_day(tmp_path, "madder-brick-red-on-wool", close=True, ago=timedelta(days=30))

    @in_a_room()
    async def look(room):
        kept = [one for one in room.view.wants if one.key.startswith("kept:")]
        assert kept and "look at it" in kept[0].what and "no source" in kept[0].why

    look(tmp_path)


def test_what_cannot_be_read_is_told_and_hurts_nothing_else(tmp_path):
    (tmp_path / "logs").mkdir()
    (tmp_path / "logs" / "2026-01-01-torn-aaaa.toml").write_text("format = 1\nsession = ", "utf-8")
    (tmp_path / "recipes").mkdir()
    (tmp_path / "recipes" / "mine.toml").write_text('format = 1\nname = "Mine"\nfibr = ["wool"]\n', "utf-8")

    @in_a_room()
    async def look(room):
        said = [one.what for one in room.view.wants]
        assert any("log 2026-01-01-torn-aaaa cannot be read" in one for one in said)
        assert any("recipe “Mine” cannot be read" in one for one in said)
        await room.press("home", "enter")
        assert isinstance(room.app.screen, PageScreen)
        await room.press("x", "down", "enter")
        assert "torn" in room.text() or "mine.toml" in room.text()

    look(tmp_path)


def test_a_rehearsal_is_neither_an_open_day_nor_a_day_that_was_dyed(tmp_path):
    found = load_recipe(ROOT / "recipes" / "onion-skins-in-one-pot.toml")
    plan = work_out(found, lots_from_text(["100 g dry wool"], "wool"), Kitchen())
    clock = SteppingClock(MORNING)
    begin_day(DISK, tmp_path / "logs", found, plan, Kitchen(), clock, reckoner_for, rehearsal=True).close()

    @in_a_room()
    async def look(room):
        assert not room.view.under_way and not room.view.done

    look(tmp_path)


@in_a_room()
async def test_a_recipe_is_found_by_a_word(room):
    await room.press("/")
    await room.type("weld")
    assert {one.name for one in room.view.recipes} == {"Weld yellow on wool", "Fresh weld yellow on wool"}
    await room.press("enter", "enter")
    assert room.place == "Working out"


@in_a_room()
async def test_escape_gives_all_recipes_back(room):
    await room.press("/")
    await room.type("zzz")
    assert room.view.recipes == ()
    await room.press("escape")
    assert len(room.view.recipes) > 5


@in_a_room()
async def test_q_leaves_from_the_bench(room):
    await room.press("q")
    assert not room.app.is_running or room.app.return_code == 0


@in_a_room()
async def test_the_alarm_rings_on_trial_until_it_is_seen(room):
    rung = []
    room.app.bell = lambda: rung.append(room.clock.now().at)
    await room.press("r")
    assert "RINGING" in room.text() and "on trial" in room.flat() and len(rung) == 1
    room.clock.advance(6)
    await room.settle()
    assert len(rung) == 2, "it rings again until it is seen"
    await room.press("space")
    assert "RINGING" not in room.text() and room.place == "Bench"
    room.clock.advance(60)
    await room.settle()
    assert len(rung) == 2


@in_a_room()
async def test_the_help_page_explains_the_bench_and_names_every_key(room):
    await room.press("?")
    assert isinstance(room.app.screen, PageScreen) and "under way" in room.text()


@pytest.mark.parametrize("size", [(40, 10), (60, 18), (80, 24), (200, 60), (3, 2)])
def test_every_size_shows_the_next_act_or_at_least_does_not_fall_over(tmp_path, size):
    @in_a_room(size=size)
    async def look(room):
        assert size[0] < 40 or "NEXT" in room.text()
        await room.press("down", "up", "end", "home")
        assert room.app.is_running

    look(tmp_path)


def test_a_day_begun_and_left_by_touch_alone(tmp_path):
    @in_a_room(size=(120, 34), kitchen=True)
    async def touch(room):
        await room.touch("Onion skins in one pot")
        await room.touch("NEXT")
        assert room.place == "Working out"
        for figure in ("1 ", "0 ", "0 "):
            await room.touch(f" {figure}", last=True)
        await room.touch("  g  ", last=True)
        await room.touch("  wool  ", last=True)
        assert room.view.frame.entry.typed == "100 g wool "
        await room.touch("✓ it counts")
        await room.touch("yes: washed")
        assert room.view.lots[0].says == "100 g wool, washed and air-dry"
        await room.touch("NEXT")
        assert isinstance(room.app.screen, StoveScreen)
        await room.touch("NEXT")
        assert room.app.session.snapshot.entries[0].event.kind == "begun"
        await room.touch("q quit")
        assert room.place == "Bench"

    touch(tmp_path)


def test_a_day_in_use_elsewhere_is_one_sentence(tmp_path):
    log = a_day(tmp_path)
    holder = Room(tmp_path).disk.resume(log)
    try:

        @in_a_room()
        async def take_up(room):
            await room.press("space")
            assert room.place == "Bench" and room.app.day is None
            assert ("process" in room.flat() and "read-only" in room.flat()) or "look" in room.flat()

        take_up(tmp_path)
    finally:
        holder.close()
