"""The Day book: every day there is a log of, what could not be read, finding, the way there and back, by keys and touch."""

from datetime import timedelta

import pytest
from ui.at_places import in_a_room
from ui.test_bench import a_day

from dyesession.ui.screens.page import PageScreen


@in_a_room()
async def test_tab_leads_round_the_places_and_q_back_to_the_bench(room):
    await room.press("tab")
    assert room.place == "Day book"
    for _ in range(4):
        await room.press("tab")
        if room.place == "Bench":
            break
    assert room.place == "Bench"
    await room.press("tab", "q")
    assert room.place == "Bench" and room.app.is_running


@in_a_room()
async def test_the_bench_leads_on_by_a_line_too(room):
    await room.press("end")
    while not room.view.cursor.endswith("Day book"):
        await room.press("up")
    await room.press("enter")
    assert room.place == "Day book"


@in_a_room(size=(120, 40))
async def test_the_places_are_reached_by_touch(room):
    await room.touch("tab next place")
    assert room.place == "Day book"
    await room.touch("q leave")
    assert room.place == "Bench"
    await room.press("end")
    await room.touch("Day book   what")
    if room.place == "Bench":
        await room.touch("Day book   what")
    assert room.place == "Day book"


@in_a_room()
async def test_a_new_workroom_shows_the_demo_days_and_says_so(room):
    await room.press("tab")
    assert room.view.days and all(one.mark == "demo" for one in room.view.days)
    assert "all of them demo days" in room.text()
    dates = [one.date for one in room.view.days]
    assert dates == sorted(dates, reverse=True)


def test_an_empty_day_book_says_one_clear_next_step(tmp_path, monkeypatch):
    monkeypatch.setattr("dyesession.cli.workroom.shipped_logs", lambda: tmp_path / "none")

    @in_a_room()
    async def look(room):
        await room.press("tab")
        assert "Nothing stands in your day book yet" in room.text()
        assert room.view.frame.next_act.act == "go to the Bench and work a recipe out"
        await room.press("space")
        assert room.place == "Bench"

    look(tmp_path)


def test_what_cannot_be_read_is_listed_with_its_reason(tmp_path):
    a_day(tmp_path, close=True)
    (tmp_path / "logs" / "2026-01-01-torn-aaaa.toml").write_text("format = 1\nsession = ", "utf-8")
    (tmp_path / "logs" / "shopping.toml").write_text('milk = "two"\n', "utf-8")

    @in_a_room()
    async def look(room):
        await room.press("tab")
        assert [one.recipe for one in room.view.days] == ["Onion skins in one pot"]
        assert {one.file for one in room.view.aside} == {"2026-01-01-torn-aaaa.toml", "shopping.toml"}
        assert all(one.reason for one in room.view.aside)
        await room.press("end", "enter")
        assert isinstance(room.app.screen, PageScreen)

    look(tmp_path)


def test_a_half_synchronised_copy_is_told(tmp_path):
    log = a_day(tmp_path, close=True)
    whole = log.read_text("utf-8")
    copy = log.with_name(f"{log.stem} (conflict).toml")
    copy.write_text(whole[: whole.rindex("\n[[event]]") + 1], "utf-8")

    @in_a_room()
    async def look(room):
        await room.press("tab")
        assert len(room.view.days) == 1
        assert "copy" in room.view.aside[0].reason

    look(tmp_path)


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("weld", {"Weld yellow on wool"}),
        ("dyestuff weld", {"Weld yellow on wool"}),
        ("near #8f4030 within 3", {"Onion skins in one pot"}),
        ("fibre silk", set()),
        ("since 2020-01, verdict zzz", set()),
        ("dyestuff onion and fibre wool", {"Onion skins in one pot"}),
    ],
)
def test_days_are_found(tmp_path, typed, found):
    a_day(tmp_path, close=True, colour="#8f4030", ago=timedelta(days=4))
    a_day(tmp_path, "weld-yellow-on-wool", close=True, ago=timedelta(days=9))

    @in_a_room()
    async def look(room):
        await room.press("tab", "/")
        assert "dyestuff madder" in room.flat(), "examples are shown"
        await room.type(typed)
        await room.press("enter")
        assert {one.recipe for one in room.view.days} == found
        await room.press("escape")
        assert len(room.view.days) == 2

    look(tmp_path)


@in_a_room()
async def test_a_condition_that_cannot_be_understood_is_one_sentence_and_stays_typed(room):
    await room.press("tab", "/")
    await room.type("since yesterday")
    await room.press("enter")
    assert "is no date" in room.flat() and room.view.frame.entry.typed == "since yesterday"
    await room.press("escape")
    assert room.view.frame.entry is None


@pytest.mark.parametrize("size", [(60, 18), (80, 24), (200, 60), (3, 2)])
def test_the_day_book_stands_in_every_window(tmp_path, size):
    @in_a_room(size=size)
    async def look(room):
        await room.press("tab", "down", "end", "home")
        assert size[0] < 40 or "NEXT" in room.text()

    look(tmp_path)


def onto_the_day(folder, **options):
    """A closed day in the workroom; answers with its log."""
    return a_day(folder, close=True, colour="#8f4030", ago=timedelta(days=9), **options)


async def at_the_day(room):
    await room.press("tab", "space")
    assert room.place == "Day", room.text()


async def choose(room, words):
    """Mark and choose the line that begins with some words."""
    await room.press("home")
    for _ in range(120):
        if words in marked(room):
            await room.press("enter")
            return
        await room.press("down")
    raise AssertionError(f"no line {words!r}:\n{room.text()}")


def marked(room):
    """The marked line as it is drawn."""
    return " ".join(line for line in room.text().split("\n") if "▸" in line)


def test_a_day_is_laid_open_with_its_shade_its_lanes_and_what_went_otherwise(tmp_path):
    onto_the_day(tmp_path)

    @in_a_room(size=(200, 120))
    async def look(room):
        await at_the_day(room)
        text = room.text()
        for words in ("#8f4030", "still wanted", "otherwise than planned", "a line as planned", "doses", "bath in the"):
            assert words in text, words
        await choose(room, "The whole review")
        assert isinstance(room.app.screen, PageScreen) and "Steps, planned and actual" in room.text()
        await room.press("x", "q")
        assert room.place == "Day book"

    look(tmp_path)


def test_aftercare_is_typed_and_goes_into_the_closed_day_s_log(tmp_path):
    log = a_day(tmp_path, close=True, ago=timedelta(days=9))
    before = log.read_text("utf-8")

    @in_a_room(size=(120, 40))
    async def note(room):
        await room.press("tab")
        assert room.view.days[0].due == 4
        await room.press("space")
        await choose(room, "dry shade")
        await room.type("brick, a little pale, #8b3a2b")
        assert "#8b3a2b" in room.view.frame.entry.echo
        await room.press("enter")
        assert "Noted in this day's log" in room.flat()
        assert "dry shade" not in [one.does for one in room.view.sections[1].items]
        await choose(room, "Note some aftercare")
        await room.type("second wash: runs a little")
        await room.press("enter")
        await room.press("q")
        assert room.view.days[0].due == 2 and room.view.days[0].swatches[0].colour == "#8b3a2b"

    note(tmp_path)
    after = log.read_text("utf-8")
    assert after.startswith(before) and after.count('kind = "cared"') == 2
    assert 'colour = "#8b3a2b"' in after and "runs a little" in after


def test_aftercare_that_says_nothing_is_refused_and_nothing_is_written(tmp_path):
    log = a_day(tmp_path, close=True, ago=timedelta(days=9))
    before = log.read_bytes()

    @in_a_room(size=(120, 40))
    async def note(room):
        await at_the_day(room)
        await choose(room, "second wash")
        await room.press("enter")
        assert "Say what came of" in room.flat() and room.view.frame.entry is not None
        await room.press("escape")
        await choose(room, "Note some aftercare")
        await room.type("haircut: short")
        await room.press("enter")
        assert "names no aftercare" in room.flat()

    note(tmp_path)
    assert log.read_bytes() == before


@in_a_room(size=(120, 40))
async def test_nothing_is_written_into_a_demo_day(room):
    await at_the_day(room)
    assert not any(one.key.startswith("care") for section in room.view.sections for one in section.items)


def test_a_colour_is_repeated_into_a_recipe_and_into_working_out(tmp_path):
    onto_the_day(tmp_path)

    @in_a_room(size=(120, 50))
    async def repeat(room):
        await at_the_day(room)
        await choose(room, "Repeat this colour")
        assert room.place == "Repeat this colour" and room.view.frame.entry.wants == "fibre"
        await room.type("90 g silk")
        assert room.view.frame.entry.echo == "= 90 g silk"
        await room.press("enter")
        assert "other this time" in room.text() and "fibre" in room.text()
        await choose(room, "depth:")
        await room.type("0.5")
        await room.press("enter")
        assert "half of it" in room.text()
        await choose(room, "Write this recipe down")
        written = list((room.folder / "recipes").glob("*.toml"))
        assert len(written) == 1 and f"Written: {written[0].name}" in room.flat()
        await choose(room, "Write this recipe down")
        assert len(list((room.folder / "recipes").glob("*.toml"))) == 2, "nothing is written over"
        await choose(room, "Work it out now")
        assert room.place == "Working out" and room.view.lots[0].says.startswith("90 g silk")
        await room.press("q", "q", "q", "q")
        assert room.place == "Bench" and any(one.own for one in room.view.recipes), "it is offered at once"

    repeat(tmp_path)


def test_a_depth_nobody_can_tell_is_one_sentence(tmp_path):
    onto_the_day(tmp_path)

    @in_a_room(size=(120, 50))
    async def repeat(room):
        await at_the_day(room)
        await choose(room, "Repeat this colour")
        await room.press("enter")
        await choose(room, "depth:")
        await room.type("40")
        await room.press("enter")
        assert "is no depth that can be told" in room.flat() and room.view.frame.entry.typed == "40"

    repeat(tmp_path)


def test_two_days_are_put_side_by_side(tmp_path):
    onto_the_day(tmp_path)
    a_day(tmp_path, "weld-yellow-on-wool", close=True, colour="#d8b832", ago=timedelta(days=20))

    @in_a_room(size=(120, 60))
    async def compare(room):
        await at_the_day(room)
        await choose(room, "Compare with another day")
        assert "Weld yellow on wool" in room.text()
        await room.press("enter")
        assert "what matters most for the colour first" in room.text()
        assert "#8f4030" in room.text() and "#d8b832" in room.text()
        await room.press("space")
        assert "with which day?" in room.text()
        await room.press("q")
        assert room.place == "Day"

    compare(tmp_path)


def test_what_went_wrong_gives_causes_and_mends_with_their_source(tmp_path):
    onto_the_day(tmp_path)

    @in_a_room(size=(120, 60))
    async def ask(room):
        await at_the_day(room)
        await choose(room, "What went wrong?")
        for trouble in ("streaks", "felting", "stickiness", "bleeding", "too pale", "too dull", "wrong hue"):
            assert trouble in room.text()
        await choose(room, "streaks")
        assert "cause" in room.text() and "mend" in room.text() and "(" in room.text()
        await room.press("space")
        assert "what is it?" in room.text()

    ask(tmp_path)


def test_tags_and_the_whole_day_are_written_to_be_printed(tmp_path):
    log = onto_the_day(tmp_path)

    @in_a_room(size=(120, 50))
    async def print_it(room):
        await at_the_day(room)
        await choose(room, "Print the skeins' tags")
        assert "Written:" in room.flat() and "papers" in room.flat()
        await choose(room, "Print the whole day")

    print_it(tmp_path)
    papers = {one.name for one in (tmp_path / "papers").iterdir()}
    assert papers == {f"{log.stem}-tags.html", f"{log.stem}-tags.txt", f"{log.stem}.html"}
    assert "#8f4030" in (tmp_path / "papers" / f"{log.stem}-tags.txt").read_text("utf-8")


def test_an_open_day_is_taken_up_from_the_day_book(tmp_path):
    a_day(tmp_path)

    @in_a_room(size=(120, 50))
    async def take_up(room):
        await at_the_day(room)
        await choose(room, "Take it up")
        assert room.app.day is not None

    take_up(tmp_path)


def test_a_day_is_looked_back_on_cared_for_and_repeated_by_touch_alone(tmp_path):
    a_day(tmp_path, close=True, ago=timedelta(days=9))

    async def twice(room, words):
        """A first touch marks, a second one chooses."""
        await room.touch(words)
        if not room.view.frame.entry and words in marked(room):
            await room.touch(f"▸ {words}")

    @in_a_room(size=(120, 60))
    async def touch(room):
        await room.touch("tab next place")
        await room.touch("NEXT")
        assert room.place == "Day"
        await twice(room, "! second wash")
        await room.touch(" clean ", last=True)
        await room.touch("✓ it counts")
        assert "Noted in this day's log" in room.flat()
        await twice(room, "Repeat this colour")
        await room.touch("✓ it counts")
        await twice(room, "Work it out now")
        assert room.place == "Working out"
        await room.touch("q leave")
        await room.touch("q leave")
        await room.touch("q leave")
        assert room.place == "Day book"

    touch(tmp_path)


def test_a_text_is_ended_by_touch_in_the_narrowest_window_too(tmp_path):
    a_day(tmp_path, close=True, ago=timedelta(days=9))

    @in_a_room(size=(60, 18))
    async def touch(room):
        await at_the_day(room)
        await room.touch("NEXT")
        await room.touch(" clean ", last=True) if " clean " in room.text() else await room.touch(" even ", last=True)
        await room.touch(" ✓ ", last=True)
        assert "Noted in this day's log" in room.flat()

    touch(tmp_path)
