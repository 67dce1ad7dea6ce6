"""Your own numbers on the screens: the Bench offers them, the Day book leads there, Working out and a day rest on them."""

import tomllib
from functools import cache
from pathlib import Path

from daybook.written import written
from days import Day, weighed_wet
from ui.at_places import ROOT, in_a_room

from dyesession.cli.learn import learnt_for
from dyesession.cli.workroom import Workroom
from dyesession.daybook.learned_text import told_number
from dyesession.ui.screens.page import PageScreen

NAME = "2026-03-14-a-day-k7q2"


@cache
def weighed() -> Day:
    """The madder day with a wet skein on the scales."""
    return weighed_wet()


def a_taught_room(folder):
    (folder / "logs").mkdir()
    written(weighed(), folder / "logs", NAME)
    return learnt_for(Workroom(folder))


async def mark(room, key):
    """Go to a line by the arrows."""
    await room.press("home")
    for _ in range(80):
        if room.view.cursor == key:
            return
        await room.press("down")
    raise AssertionError(f"no line {key}:\n{room.text()}")


def test_the_bench_offers_what_the_last_day_taught_and_the_day_book_leads_there_too(tmp_path):
    learned = a_taught_room(tmp_path)
    told = told_number(learned.numbers[0])

    @in_a_room(size=(120, 40))
    async def look(room):
        assert any(one.key == "taught" for one in room.view.wants)
        await room.touch("Your own numbers: 1 learned   by")
        if room.place == "Bench":
            await room.touch("Your own numbers: 1 learned   by")
        assert room.place == "Your own numbers", room.text()
        assert told.title in room.flat() and told.yours in room.flat() and told.guess in room.flat()
        assert NAME in room.flat() and "not learned yet, and what would teach it" in room.flat()
        await room.press("q", "tab")
        assert room.place == "Day book"
        await mark(room, "own")
        await room.press("enter")
        assert room.place == "Your own numbers"
        await mark(room, "number:0")
        await room.press("space")
        assert isinstance(room.app.screen, PageScreen) and NAME in room.flat()

    look(tmp_path)


def test_a_day_from_working_out_starts_from_them_and_says_so(tmp_path):
    learned = a_taught_room(tmp_path)
    told = told_number(learned.numbers[0])

    @in_a_room(size=(120, 40))
    async def look(room):
        room.app.work_out(ROOT / "recipes" / "onion-skins-in-one-pot.toml")
        await room.settle()
        await room.type("100 g dry wool")
        await room.press("enter")
        await room.press("end", "up", "up")
        assert room.view.cursor == "own" and "This day rests on one of your own numbers" in room.flat() and NAME in room.flat()
        assert told.yours in room.flat(), "the marked line's reasons stand beside it"
        await room.press("space")
        await starts_from_them(room, learned)

    look(tmp_path)


def test_a_day_without_a_recipe_starts_from_them(tmp_path):
    learned = a_taught_room(tmp_path)

    @in_a_room()
    async def look(room):
        await room.press("+")
        await room.type("60 g wool")
        await room.press("enter")
        await starts_from_them(room, learned)

    look(tmp_path)


async def starts_from_them(room, learned):
    """The day that was begun has the number in its log's head, with its days."""
    assert room.app.day is not None
    tables = tomllib.loads(Path(room.app.day.session.snapshot.path).read_text("utf-8"))["prior"]
    number = learned.number("liquor held", "wool")
    assert [one["name"] for one in tables] == ["liquor held by wool"] and tables[0]["from"] == [NAME]
    assert abs(tables[0]["centre"] - number.next_day.centre) < 1e-4


@in_a_room()
async def test_beside_demo_days_the_page_says_that_they_teach_nobody(room):
    assert not any(one.key == "taught" for one in room.view.wants)
    await room.press("tab")
    await mark(room, "own")
    await room.press("enter")
    assert room.place == "Your own numbers"
    assert "none of it is used for a day of your own" in room.flat()
