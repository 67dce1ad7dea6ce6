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
