"""Every row of a kept bath by touch, and what must not be poured together, on a shelf of baths made by hand."""

from dataclasses import replace
from datetime import date, datetime
from pathlib import Path

from ui.at_places import in_a_room

from dyesession.account import Band90
from dyesession.session import events as e
from dyesession.shelf import KeptBath, Shelf
from dyesession.shelf.model import Inside

MADDER = KeptBath(
    "2026-03-11-madder-k7q2", "madder bath", "madder brick red", datetime(2026, 3, 11, 18), 3, Band90(4.0, 3.8, 4.2),
    (Inside("madder", "madder root", "dyestuff", Band90(30.0, 20.0, 40.0), 120.0),
     Inside("alum", "potassium alum", "mordant", Band90(6.0, 4.0, 8.0))),
    1, True, ("240 g wool",), 5.2, date(2026, 3, 11), date(2026, 3, 20), "our own choice, no source", False, "modelled",
    (), left_l=4.0, entry=40,
)  # fmt: skip


def of(label, *substances):
    inside = tuple(Inside(one, one, "modifier", Band90(3.0, 2.0, 4.0)) for one in substances)
    return replace(MADDER, label=label, inside=inside)


IRON, SOUR, BLEACH = of("iron bath", "ferrous sulphate"), of("sour bath", "citric acid"), of("bleach bath", "bleach")

# What is touched one after the other, and what then stands on the screen; each begins on the bath's own page.
ROWS = (
    (("Draw from it",), "how much"),
    (("Pour it into another bath",), "pour madder bath into which bath?"),
    (("Pour it into another bath", "iron bath"), "iron bath has iron in it"),
    (("Top it up",), "what goes in"),
    (("Say what it is now",), "it is now"),
    (("Put an entry right", "how much was kept by"), "what the entry should have said"),
    (("Write its label",), "Written:"),
    (("Throw it away safely",), "madder bath thrown away"),
)


def on_the_shelf(room, *baths):
    """The workroom's shelf is these baths; acts are kept in a list and not in files."""
    acts = []
    room.disk.shelf = lambda: Shelf(baths)
    room.disk.keep_shelf_act = lambda act: acts.append(act) or Path("2026-03-14-shelf-abcd.toml")
    return acts


async def touched(room, words):
    """A line is marked by the first touch, and chosen by the second."""
    await room.touch(words)
    if f"▸ {words}" in room.text():
        await room.touch(f"▸ {words}")


async def at(room, label):
    await room.press("tab", "tab")
    await touched(room, label)
    assert room.place == "Kept bath", room.text()


def test_every_row_of_a_kept_bath_is_touched(tmp_path):
    @in_a_room(size=(110, 40))
    async def touch(room):
        on_the_shelf(room, MADDER, IRON)
        await at(room, "madder bath")
        for rows, then in ROWS:
            for one in rows:
                await touched(room, one)
            assert then in room.flat(), f"{rows}:\n{room.text()}"
            if room.view.frame.entry is not None:
                await room.press("escape")
            if "Not now" in room.text():
                await touched(room, "Not now")
        assert not room.logs()

    touch(tmp_path)


def test_a_draw_is_typed_on_the_pad_and_minded_before_it_is_poured(tmp_path):
    @in_a_room(size=(110, 40))
    async def draw(room):
        on_the_shelf(room, replace(MADDER, inside=(*MADDER.inside, *IRON.inside)))
        await at(room, "madder bath")
        await touched(room, "Draw from it")
        await room.tap("2", "l", "enter")
        await touched(room, "A new day by a recipe")
        for words in ("first bear in mind", "has iron in it", "Mark pot", "brings 6 ± 2 g alum of 2026-03-11"):
            assert words in room.flat(), room.text()
        assert room.app.draw_for_the_day is None, "nothing is decided yet"
        await touched(room, "Choose the recipe")
        assert room.place == "Bench" and room.app.draw_for_the_day is not None

    draw(tmp_path)


def test_what_must_never_be_poured_together_is_refused_and_iron_is_told_and_goes_in(tmp_path):
    @in_a_room(size=(110, 40))
    async def pour(room):
        acts = on_the_shelf(room, SOUR, BLEACH, IRON)
        await at(room, "sour bath")
        await touched(room, "Pour it into another bath")
        await touched(room, "bleach bath")
        assert "must not be poured together" in room.flat() and not acts
        await touched(room, "iron bath")
        assert "iron bath has iron in it" in room.flat() and not acts
        await touched(room, "It is done")
        assert room.place == "Bath shelf" and [one.kind for one in acts[0].events] == ["drawn", "drawn", "kept"]
        assert isinstance(acts[0].events[1], e.Drawn) and acts[0].events[1].label == "sour bath"

    pour(tmp_path)
