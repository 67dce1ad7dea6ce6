"""Every place before the Stove, at every size, against a plain-text snapshot that a person can read."""

import asyncio
import functools
import re

import pytest
from ui.on_screen import SNAPSHOTS, compare

from dyesession.ui.contact_sheet import SIZES, FixtureApp, screen_of, shown
from dyesession.ui.leaf_fixtures import LEAF_FIXTURES
from dyesession.ui.place_fixtures import PLACE_FIXTURES

FIXTURES = {**PLACE_FIXTURES, **LEAF_FIXTURES}


@functools.cache
def places(size, depth=None, dark=True):
    """Every fixture's screen at a size, one laid over the other in one app."""

    async def show_all():
        app = FixtureApp(next(iter(FIXTURES.values())), dark, depth)
        texts = {}
        async with app.run_test(size=size) as pilot:
            for name, view in FIXTURES.items():
                await app.push_screen(screen_of(view))
                await pilot.pause()
                texts[name] = shown(app)
                app.pop_screen()
        return texts

    return asyncio.run(show_all())


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
@pytest.mark.parametrize("name", FIXTURES)
def test_a_place_looks_as_it_did(name, size):
    compare(f"places/{name}-{size[0]}x{size[1]}", places(size)[name])


def test_there_is_no_snapshot_of_a_place_without_a_fixture():
    wanted = {f"{name}-{width}x{height}" for name in FIXTURES for width, height in SIZES}
    assert {path.stem for path in (SNAPSHOTS / "places").glob("*.txt")} == wanted


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
@pytest.mark.parametrize("name", FIXTURES)
def test_every_place_shows_its_title_and_what_comes_next(name, size):
    text = places(size)[name]
    assert FIXTURES[name].frame.title in text or FIXTURES[name].frame.ringing is not None
    assert "NEXT" in text or FIXTURES[name].frame.entry is not None


@pytest.mark.parametrize("depth", ["16", "none"])
@pytest.mark.parametrize("dark", [True, False], ids=["dark", "light"])
def test_a_poorer_terminal_or_the_other_theme_says_the_same(dark, depth):
    """A swatch's figure stands for it where it cannot be shown; there is then room for more words, never fewer."""
    few, full = places((80, 24), depth, dark), places((80, 24))
    for name, text in full.items():
        missing = set(re.findall(r"[\w±#]+", text)) - set(re.findall(r"[\w±#]+", few[name]))
        assert not missing, (name, missing)
