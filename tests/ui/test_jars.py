"""Jars: what is left, what the next colours take and cost, what to buy; by touch and by keys, nothing kept but paper."""

from jars_used import KITCHEN, used_once
from ui.at_places import in_a_room
from ui.test_book import choose

TWO_JARS = f'{KITCHEN}[[jar]]\nsubstance = "walnut hulls"\n'


async def touched(room, words):
    await room.touch(words)
    if f"▸ {words}" in room.text():
        await room.touch(f"▸ {words}")


async def a_colour(room, recipe, fibre):
    await choose(room, "A colour that comes next" if not room.app.next_plans else "Another colour")
    await choose(room, recipe)
    await room.type(fibre)
    await room.press("enter")


def test_the_jars_are_opened_from_the_bench_and_the_next_three_colours_are_counted_off_them(tmp_path):
    used_once(tmp_path, TWO_JARS)

    @in_a_room(size=(120, 50))
    async def look(room):
        await room.press("end", "enter")
        assert room.place == "Jars" and "2 jars" in room.text()
        assert "230 g left (350 g on 2026-03-01, 120 g used since on one day)" in room.flat()
        await touched(room, "A colour that comes next")
        await touched(room, "Madder brick red on wool")
        await room.type("a lot of it")
        await room.press("enter")
        assert room.view.frame.entry is not None and not room.app.next_plans, "what is no fibre is refused"
        await room.press("escape")
        await choose(room, "Madder brick red on wool")
        await room.type("240 g wool")
        assert room.view.frame.entry.echo == "= 240 g wool"
        await room.press("enter")
        assert "5.40, 2.25 for 100 g of fibre" in room.flat() and "These plans take 120 g, then 110 g." in room.flat()
        await a_colour(room, "Weld yellow on wool", "100 g wool")
        await a_colour(room, "Madder brick red on wool", "300 g wool")
        assert "To buy: 40 g madder root, 1.80." in room.flat(), room.text()
        assert "Another colour" not in room.text(), "three are thought ahead"
        await room.press("space")
        [paper] = (tmp_path / "papers").iterdir()
        assert "To buy: 40 g madder root" in paper.read_text("utf-8") and paper.name in room.flat()
        await choose(room, "Leave out Madder brick red on wool")
        assert len(room.app.next_plans) == 2 and "40 g madder root" not in room.flat()
        await room.press("q", "end", "enter")
        assert len(room.view.sections[0].items) == 4, "the plans are there again when one comes back"

    look(tmp_path)


@in_a_room()
async def test_without_jars_it_says_where_they_are_written_down(room):
    await room.press("end", "enter")
    assert "No jar is written down" in room.flat() and "Press m on the Bench" in room.flat()
    await room.press("q")
    assert room.place == "Bench"
