"""The keys of all screens together: no key does two things, each place explains its own, no palette beside them."""

from pathlib import Path

import pytest
from ui.at_places import in_a_room

from dyesession.ui.app import DyeApp
from dyesession.ui.explained_places import EXPLAINED, help_of
from dyesession.ui.key_page import key_page, renewed
from dyesession.ui.keys import BY_KEY
from dyesession.ui.place_keys import BY_PLACE_KEY, EVERYWHERE, PHOTO, PLACE_KEYS, ROUND

README = Path(__file__).resolve().parents[2] / "README.md"
# One word for one act on both sides, but where the act itself is named by what comes next, or by where one is.
SAID_OTHERWISE = {"space": ("done", "next"), "q": ("quit", "leave")}


def test_a_key_that_the_stove_has_too_means_the_same_elsewhere() -> None:
    shared = set(BY_KEY) & set(BY_PLACE_KEY)
    assert {"space", "-", "escape", "?", "q", "c"} == shared
    for key in shared:
        words = BY_KEY[key].word, BY_PLACE_KEY[key].word
        assert words[0] == words[1] or words == SAID_OTHERWISE[key]


def test_no_key_and_no_act_stands_twice_in_the_table_of_the_places() -> None:
    assert len(BY_PLACE_KEY) == len(PLACE_KEYS)
    acts = [key.act for key in PLACE_KEYS if key.act is not None]
    assert len(set(acts)) == len(acts)
    assert "y" not in BY_PLACE_KEY


def test_the_readme_s_table_of_keys_is_the_program_s() -> None:
    readme = README.read_text("utf-8")
    assert renewed(readme) == readme, "renew it: python -m dyesession.ui.key_page"
    assert key_page().count("\n") + 1 == 2 + len(set(BY_KEY) | set(BY_PLACE_KEY))


@pytest.mark.parametrize("place", EXPLAINED)
def test_the_page_of_a_place_names_every_key_that_is_live_there_and_no_other(place: str) -> None:
    _, _, table = help_of(place).partition("\nkeys\n\n")
    named = {line.split()[0] for line in table.splitlines() if line}
    assert named == {key.key for key in PLACE_KEYS if place in key.places}


def test_every_place_has_its_page() -> None:
    assert {*EXPLAINED, PHOTO} == set(EVERYWHERE)


def test_there_is_no_command_palette() -> None:
    assert not DyeApp.ENABLE_COMMAND_PALETTE


@in_a_room(size=(100, 40), kitchen=True)
async def test_the_question_mark_explains_each_place_of_the_round_and_leads_back(room) -> None:
    for place in ROUND:
        assert room.place == place
        await room.press("?")
        first = help_of(place).split("\n")[0].split(".")[0]
        assert " ".join(first.split()[:5]) in room.flat()
        await room.press("q")
        assert room.place == place
        await room.press("tab")
