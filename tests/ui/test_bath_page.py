"""The Bath account's page: every line of the ledger, in a window of any size, and no range that could be misread."""

import re
from pathlib import Path

import pytest
from ui.at_places import in_a_room
from ui.test_bench import a_day

from dyesession.account import reckon
from dyesession.session import events as e
from dyesession.session.fold import fold, opening_state
from dyesession.session.opening import read_day
from dyesession.storage import DISK
from dyesession.ui.bath_page import NOTHING, ledger_page
from dyesession.ui.screens.page import PageScreen

LOG = next((Path(__file__).resolve().parents[2] / "logs").glob("*madder-brick-red.toml"))


@pytest.fixture(scope="module")
def page():
    day = read_day(DISK, LOG)
    account = reckon(day.plan, day.entries, day.opened)
    return account, ledger_page(account, fold(opening_state(day.plan), day.entries, day.opened))


def test_every_line_of_the_ledger_stands_there_with_its_time(page):
    account, text = page
    moved = text.split("how it came to that\n")[1].splitlines()
    assert len(moved) == len(account.lines) > 20
    assert all(re.match(r"(\d\d:\d\d|\w)", line) for line in moved)
    assert all(one.what in text for one in account.lines)


def test_what_stands_comes_first_and_says_what_it_is(page):
    account, text = page
    head = text.split("\n\n")[0]
    assert head.startswith("as it stands") and head.count("\n") == len(account.baths)
    assert "±" in head or " to " in head


def test_what_went_out_is_told_by_a_word_and_never_by_a_dash_before_a_range(page):
    _, text = page
    assert not re.search(r"[-+]\d", text.split("how it came to that")[1])
    assert " out " in text and "; in " in text and "0.0 ± " not in text


def test_before_the_first_water_one_sentence_says_so():
    day = read_day(DISK, LOG)
    assert ledger_page(reckon(day.plan, (), day.opened), opening_state(day.plan)) == NOTHING


@pytest.mark.parametrize("size", [(60, 18), (80, 24), (200, 60)])
def test_the_account_opens_at_the_stove_and_scrolls(tmp_path, size):
    a_day(tmp_path, "madder-brick-red-on-wool", until=e.Lifted)

    @in_a_room(size=size)
    async def look(room):
        await room.press("space")
        if "take up" not in room.text():
            await room.press("b")
        assert isinstance(room.app.screen, PageScreen), room.text()
        first = room.text()
        await room.press("end")
        assert room.app.session.snapshot.account.lines[-1].what.split()[0] in room.text()
        assert "how it came to that" in first or room.text() != first
        await room.press("x")
        assert not isinstance(room.app.screen, PageScreen)

    look(tmp_path)
