"""Working out at the screen: what the pattern needs, the day rehearsed, the weighing list on paper."""

from textual.containers import VerticalScroll
from textual.events import Key
from ui.at_places import in_a_room


async def at_madder(room, weight="240 g dry wool"):
    await room.press("space")
    assert room.place == "Working out"
    if weight:
        await room.type(weight)
        await room.press("enter")
    else:
        await room.press("escape")


async def choose(room, key):
    """Put the mark on a line and choose it."""
    await room.press("home")
    for _ in range(60):
        if room.view.cursor == key:
            await room.press("enter")
            return
        await room.press("down")
    raise AssertionError(f"no line {key} in Working out:\n{room.text()}")


@in_a_room(kitchen=True)
async def test_a_pattern_by_length_is_held_against_the_yarn_that_was_typed(room):
    await at_madder(room)
    await choose(room, "pattern")
    assert "5 oz of double knitting" in room.flat()
    await room.type("400 m")
    await room.press("enter")
    assert room.view.frame.entry.typed == "240 g, "
    await room.type("200 m/100 g")
    await room.press("enter")
    assert "needed: 200 g ± 22 g, about 400 m" in room.flat()
    assert "enough: 40 g ± 22 g to spare" in room.flat()
    assert "Madder brick red on wool, on 222 g" in room.flat() and "alum: 26.7 g" in room.flat()
    await room.press("space")
    assert room.place == "Working out" and room.view.frame.entry is None


@in_a_room(kitchen=True)
async def test_ounces_of_a_named_thickness_and_pieces_with_a_swatch_are_asked_for_in_turn(room):
    await at_madder(room, weight="")
    await choose(room, "pattern")
    await room.type("2 of 50 x 60 cm")
    await room.press("enter")
    assert "15 x 15 cm, 9 g" in room.flat()
    await room.type("a corner")
    await room.press("enter")
    assert "no swatch" in room.flat()
    for _ in range(len("a corner")):
        await room.press("backspace")
    await room.type("15 x 15 cm, 9 g")
    await room.press("enter")
    await room.type("200 g")
    await room.press("enter")
    assert "short: by 40 g ±" in room.flat() and "would make it safe" in room.flat()


@in_a_room(kitchen=True)
async def test_the_day_can_be_rehearsed_before_the_ring_is_lit_and_nothing_of_it_is_kept(room):
    await at_madder(room)
    await choose(room, "rehearse")
    assert "Madder brick red on wool, rehearsed" in room.flat() and "To weigh" in room.flat()
    assert room.logs() == []


@in_a_room(kitchen=True)
async def test_the_weighing_list_is_written_as_a_page_and_as_text_and_where_is_said(room):
    await at_madder(room)
    await choose(room, "paper")
    assert "Written:" in room.flat() and "papers" in room.flat()
    page, text = sorted((room.folder / "papers").iterdir())
    assert page.suffix == ".html" and text.suffix == ".txt"
    assert "://" not in page.read_text("utf-8") and "alum" in text.read_text("utf-8")


@in_a_room(kitchen=True)
async def test_a_held_arrow_goes_through_a_long_page_line_by_line(room):
    await at_madder(room)
    await choose(room, "rehearse")
    for _ in range(8):  # as fast as a held key comes
        room.app.post_message(Key("down", None))
    await room.pilot.pause()
    assert room.app.screen.query_one(VerticalScroll).scroll_offset.y == 8
