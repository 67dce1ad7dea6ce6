"""Every fixture at every size against a plain-text snapshot that a person can read."""

import re

import pytest
from ui.on_screen import SNAPSHOTS, compare, screens

from dyesession.ui.contact_sheet import SIZES
from dyesession.ui.fixtures import FIXTURES


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
@pytest.mark.parametrize("name", FIXTURES)
def test_a_screen_looks_as_it_did(name, size):
    compare(f"{name}-{size[0]}x{size[1]}", screens(size)[name])


def test_there_is_no_snapshot_without_a_fixture():
    wanted = {f"{name}-{width}x{height}" for name in FIXTURES for width, height in SIZES}
    assert {path.stem for path in SNAPSHOTS.glob("*.txt")} == wanted


@pytest.mark.parametrize("depth", ["16", "none"])
@pytest.mark.parametrize("dark", [True, False], ids=["dark", "light"])
def test_a_poorer_terminal_or_the_other_theme_shows_the_same_words(dark, depth):
    few, full = screens((80, 24), depth, dark), screens((80, 24))
    for name, text in full.items():
        assert re.findall(r"[\w±]+", few[name]) == re.findall(r"[\w±]+", text), name
