"""The Bath shelf: what stands there, and every act on a kept bath, by keys and by touch; each in a log."""

from datetime import timedelta

import pytest
from ui.at_places import Room, in_a_room
from ui.test_bench import a_day
from ui.test_book import choose, marked

from dyesession.session import events as e
from dyesession.session.opening import read_day
from dyesession.storage import DISK
from dyesession.ui.screens.stove import StoveScreen


def kept(folder, ago=3):
    """A closed madder day that put its baths by."""
    return a_day(folder, "madder-brick-red-on-wool", close=True, ago=timedelta(days=ago))


async def at_the_shelf(room):
    await room.press("tab", "tab")
    assert room.place == "Bath shelf", room.text()


async def at_a_bath(room):
    await at_the_shelf(room)
    for _ in range(30):
        if room.view.cursor.startswith("bath:"):
            break
        await room.press("down")
    await room.press("enter")
    assert room.place == "Kept bath", room.text()


def events_of(log):
    return [one.event for one in read_day(DISK, log).entries]


def newest(room, *old):
    return next(one for one in room.logs() if one not in old)


def test_an_empty_shelf_says_one_clear_next_step(tmp_path, monkeypatch):
    monkeypatch.setattr("dyesession.cli.workroom.shipped_logs", lambda: tmp_path / "none")

    @in_a_room()
    async def look(room):
        await at_the_shelf(room)
        assert "Nothing stands on your shelf" in room.flat()
        assert room.view.frame.next_act.act == "go to the Bench and begin a day"
        await room.press("space")
        assert room.place == "Bench"

    look(tmp_path)


def test_a_kept_bath_says_what_is_in_it_how_sure_that_is_and_when_to_look_again(tmp_path):
    kept(tmp_path)

    @in_a_room(size=(200, 60))
    async def look(room):
        await at_the_shelf(room)
        text = room.flat()
        for words in ("kept baths", "±", "look again by", "the colour of", "its hue may drift", "pH"):
            assert words in text, words

    look(tmp_path)


def test_throwing_away_tells_first_what_may_go_where_and_writes_only_when_it_is_done(tmp_path):
    log = kept(tmp_path)

    @in_a_room(size=(120, 50))
    async def throw(room):
        await at_a_bath(room)
        baths = len(room.app._places[-2].screen.view.sections[0].items)
        await choose(room, "Throw it away")
        assert "first bear in mind" in room.text() and room.logs() == [log]
        await choose(room, "Not now")
        assert room.logs() == [log]
        await choose(room, "Throw it away")
        await choose(room, "It is done")
        assert room.place == "Bath shelf" and "stands on the shelf no longer" in room.flat()
        assert any(isinstance(one, e.Discarded) for one in events_of(newest(room, log)))
        assert len(room.view.sections[0].items) < baths or room.view.sections[0].head != "kept baths"

    throw(tmp_path)


def test_topping_up_reads_water_and_what_recharges_it(tmp_path):
    log = kept(tmp_path)

    @in_a_room(size=(120, 50))
    async def top(room):
        await at_a_bath(room)
        await choose(room, "Top it up")
        await room.type("half of it")
        await room.press("enter")
        assert "does not say how much of what" in room.flat() and room.view.frame.entry is not None
        await room.press("escape")
        await choose(room, "Top it up")
        await room.type("1 l, 10 g alum")
        assert room.view.frame.entry.echo.startswith("= 1 L and 10 g")
        await room.press("enter")
        await choose(room, "It is done")
        told = events_of(newest(room, log))
        assert any(isinstance(one, e.ToppedUp) and one.volume_l == 1.0 for one in told)
        assert any(isinstance(one, e.Added) and one.mass_g == 10.0 for one in told)

    top(tmp_path)


def test_what_a_bath_is_seen_to_be_is_written_down(tmp_path):
    log = kept(tmp_path)

    @in_a_room(size=(120, 50))
    async def say(room):
        await at_a_bath(room)
        await choose(room, "Say what it is now")
        await room.type("1.5 l, pH 6.8, stands in the cellar")
        await room.press("enter")
        await choose(room, "It is done")
        told = events_of(newest(room, log))
        read = next(one for one in told if isinstance(one, e.Read))
        assert (read.volume_l, read.ph) == (1.5, 6.8)
        assert any(isinstance(one, e.Kept) and one.place == "in the cellar" for one in told)
        assert "in the cellar" in room.flat()

    say(tmp_path)


def test_an_entry_is_put_right_in_the_log_that_was_wrong(tmp_path):
    log = kept(tmp_path)
    before = log.read_text("utf-8")

    @in_a_room(size=(120, 50))
    async def correct(room):
        await at_a_bath(room)
        await choose(room, "Put an entry right")
        await choose(room, "how much was kept")
        await room.type("1.2 l")
        await room.press("enter")
        assert room.place == "Bath shelf" and "put right" in room.flat()
        assert room.logs() == [log]

    correct(tmp_path)
    after = log.read_text("utf-8")
    assert after.startswith(before) and 'kind = "corrected"' in after[len(before) :]


def test_two_baths_are_poured_together_after_what_to_bear_in_mind(tmp_path):
    logs = [kept(tmp_path, 3), kept(tmp_path, 2)]

    @in_a_room(size=(120, 50))
    async def pour(room):
        await at_a_bath(room)
        await choose(room, "Pour it into another bath")
        await room.press("home", "enter")
        assert "It is done" in room.text(), room.text()
        await choose(room, "It is done")
        told = events_of(newest(room, *logs))
        assert sum(isinstance(one, e.Drawn) for one in told) == 2

    pour(tmp_path)


def test_a_bath_is_drawn_into_the_day_that_is_open(tmp_path):
    log = kept(tmp_path)
    a_day(tmp_path, until=e.Lit)

    @in_a_room(size=(120, 50))
    async def draw(room):
        await room.press("space", "q")
        await at_a_bath(room)
        await choose(room, "Draw from it")
        await room.type("900 l")
        await room.press("enter")
        assert room.view.frame.entry is not None and "cannot be drawn" in room.flat()
        await room.press("escape")
        await choose(room, "Draw from it")
        await room.type("0.5 l")
        await room.press("enter")
        assert "of the day that is open" in room.text()
        await choose(room, "the dye pot")
        assert "first bear in mind" in room.text() and "brings" in room.flat() and "has drifted" in room.flat()
        assert not any(isinstance(one.event, e.Drawn) for one in room.app.session.snapshot.entries)
        await choose(room, "Pour it into the dye pot")
        assert "of the open day" in room.flat()
        drew = next(one.event for one in room.app.session.snapshot.entries if isinstance(one.event, e.Drawn))
        assert drew.volume_l == 0.5 and drew.session == log.stem

    draw(tmp_path)


def test_a_bath_is_drawn_into_a_new_day_without_a_recipe(tmp_path):
    kept(tmp_path)

    @in_a_room(size=(120, 50))
    async def draw(room):
        await at_a_bath(room)
        await choose(room, "Draw from it")
        await room.press("enter")
        await choose(room, "A new day without a recipe")
        await room.type("75 g wool")
        await room.press("enter")
        assert "first bear in mind" in room.text() and len(room.logs()) == 1
        await choose(room, "Begin the day and pour it in")
        assert isinstance(room.app.screen, StoveScreen)
        told = [one.event for one in room.app.session.snapshot.entries]
        assert any(isinstance(one, e.Drawn) for one in told)

    draw(tmp_path)


def test_a_bath_is_drawn_into_a_new_day_by_a_recipe(tmp_path):
    kept(tmp_path)

    @in_a_room(size=(120, 50))
    async def draw(room):
        await at_a_bath(room)
        await choose(room, "Draw from it")
        await room.press("enter")
        await choose(room, "A new day by a recipe")
        await choose(room, "Choose the recipe")
        assert room.place == "Bench" and "as its dyeing begins" in room.flat()
        while not room.view.cursor.endswith("madder-brick-red-on-wool.toml"):
            await room.press("down")
        await room.press("enter")
        await room.type("75 g dry wool")
        await room.press("enter")
        for _ in range(8):
            if isinstance(room.app.screen, StoveScreen):
                break
            await room.press("enter" if "enter on the line" in room.flat() else "space")
        state = room.app.session.snapshot.state
        assert state.step("dye").draw is not None and "goes in when dye begins" in room.flat()
        assert all(one.bath is None for one in state.vessels)

    draw(tmp_path)


def test_two_days_that_draw_more_than_there_is_are_both_told(tmp_path):
    log = kept(tmp_path, 5)

    label = next(one.label for one in events_of(log) if isinstance(one, e.Kept))
    known, sessions = [log], []
    for ago in (3, 2):  # both are open before either draws, as on two machines
        a_day(tmp_path, ago=timedelta(days=ago), acts=1)
        known.append(next(one for one in sorted((tmp_path / "logs").glob("*.toml")) if one not in known))
        sessions.append(Room(tmp_path).disk.resume(known[-1]))
    for session in sessions:
        session.do(e.Drawn("bowl", label, log.stem, 2.0, ())).result()
        session.close()
    _, first, second = known

    @in_a_room(size=(120, 60))
    async def look(room):
        await at_the_shelf(room)
        assert "does not add up" in room.text()
        assert first.stem in room.flat() and second.stem in room.flat()

    look(tmp_path)


def test_the_label_is_written_as_a_drawing_and_a_text(tmp_path):
    kept(tmp_path)

    @in_a_room(size=(120, 50))
    async def label(room):
        await at_a_bath(room)
        await choose(room, "Write its label")
        assert "Written:" in room.flat()

    label(tmp_path)
    assert {one.suffix for one in (tmp_path / "papers").iterdir()} == {".svg", ".txt"}


@in_a_room(size=(120, 50))
async def test_a_demo_bath_is_only_looked_at(room):
    await at_a_bath(room)
    await choose(room, "Throw it away")
    assert "is a demo bath" in room.flat() and not room.logs()


def test_a_bath_is_thrown_away_by_touch_alone(tmp_path):
    log = kept(tmp_path)

    @in_a_room(size=(120, 50))
    async def touch(room):
        await room.touch("tab next place")
        await room.touch("tab next place")
        await room.touch("NEXT")
        assert room.place == "Kept bath"
        await room.touch("Throw it away")
        await room.touch(f"▸ {'Throw it away'}")
        assert "It is done" in marked(room)
        await room.touch("▸ It is done")
        assert room.place == "Bath shelf" and len(room.logs()) == 2 and log in room.logs()

    touch(tmp_path)


@pytest.mark.parametrize("size", [(60, 18), (80, 24), (200, 60), (3, 2)])
def test_the_shelf_stands_in_every_window(tmp_path, size):
    @in_a_room(size=size)
    async def look(room):
        await room.press("tab", "tab", "down", "end", "home")
        assert size[0] < 40 or "NEXT" in room.text()

    look(tmp_path)
