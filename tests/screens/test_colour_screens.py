"""Colour's pages and the photo page at every size against plain-text snapshots that a person can read."""

import asyncio
import functools
import re
from pathlib import Path

import pytest
from ui import on_screen

from dyesession.ui.colour_fixtures import COLOUR_FIXTURES, PHOTO_PAGE
from dyesession.ui.colour_rows import colour_aside, colour_rows
from dyesession.ui.contact_sheet import SIZES, FixtureApp, shown
from dyesession.ui.ink import width_of
from dyesession.ui.theme import palette_for
from dyesession.ui.widgets.photo import draw_photo

HERE = Path(__file__).parent / "colour"
PAGES = {**COLOUR_FIXTURES, "photo": PHOTO_PAGE}


@functools.cache
def pages(size, depth=None, dark=True):
    async def show(view):
        app = FixtureApp(view, dark, depth)
        async with app.run_test(size=size) as pilot:
            await pilot.pause()
            return shown(app)

    return {name: asyncio.run(show(view)) for name, view in PAGES.items()}


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
@pytest.mark.parametrize("name", PAGES)
def test_a_page_looks_as_it_did(name, size, monkeypatch):
    monkeypatch.setattr(on_screen, "SNAPSHOTS", HERE)
    on_screen.compare(f"{name}-{size[0]}x{size[1]}", pages(size)[name])


def test_there_is_no_snapshot_without_a_page():
    wanted = {f"{name}-{width}x{height}" for name in PAGES for width, height in SIZES}
    assert {path.stem for path in HERE.glob("*.txt")} == wanted


@pytest.mark.parametrize("depth", ["16", "none"])
@pytest.mark.parametrize("dark", [True, False], ids=["dark", "light"])
def test_a_poorer_terminal_or_the_other_theme_keeps_every_figure(dark, depth):
    full, few = pages((200, 60)), pages((200, 60), depth, dark)
    for name in COLOUR_FIXTURES:
        hexes = sorted(re.findall(r"#[0-9a-f]{6}", full[name]))
        assert hexes and sorted(re.findall(r"#[0-9a-f]{6}", few[name])) == hexes


@pytest.mark.parametrize("depth", ["16", "none"])
def test_where_no_dyed_colour_can_be_shown_none_is(depth):
    palette = palette_for(True, depth)
    for view in COLOUR_FIXTURES.values():
        inks = [ink for row in colour_rows(view, 76, palette) for _, ink in row.line]
        inks += [ink for line in colour_aside(view, 76, 8, palette) for _, ink in line]
        assert not any(ink.ground.startswith("#") for ink in inks)
    cells = {text for line in draw_photo(PHOTO_PAGE, 60, 18, palette) for text, _ in line}
    assert not any("▀" in one for one in cells)


def test_a_swatch_stands_in_mid_grey_and_its_figure_beside_it():
    palette = palette_for(True, "full")
    rows = colour_rows(COLOUR_FIXTURES["colour-missed"], 76, palette)
    coloured = [row for row in rows if any(ink.ground.startswith("#") for _, ink in row.line)]
    assert len(coloured) >= 8
    for row in coloured:
        grounds = [ink.ground for _, ink in row.line]
        at = next(i for i, one in enumerate(grounds) if one.startswith("#"))
        assert grounds[at - 1] == grounds[at + 1] == "grey_field"
    first = next(row for row in coloured if row.key == "sample")
    assert any(text.strip() == "#c1564a" for text, _ in first.line)


@pytest.mark.parametrize("width", [12, 37, 57, 76, 110, 196])
def test_no_line_is_wider_than_its_window(width):
    palette = palette_for(True, "full")
    for view in COLOUR_FIXTURES.values():
        assert width < 57 or all(width_of(row.line) <= width for row in colour_rows(view, width, palette))
        assert all(width_of(line) <= width for line in colour_aside(view, width, 9, palette))
