"""At the lift the Stove asks what goes in next while the bath is hot, in the smallest window too."""

from dataclasses import replace
from datetime import date

import pytest
from days import NOBODY, Day
from ui.on_screen import on_screen

from dyesession.account import reckon
from dyesession.session import events as e
from dyesession.session.from_shelf import FromShelf, ShelfFibre
from dyesession.session.session import Snapshot
from dyesession.session.suggest import Wait
from dyesession.ui.contact_sheet import FixtureApp, shown
from dyesession.ui.from_pots import pot_line
from dyesession.ui.from_session import Mode, stove_view

SILK = ShelfFibre("silk hank", "silk", 40.0, "alum 15 %", date(2026, 2, 1), "2026-02-01-silk-aaaa")
WOOL = ShelfFibre("third skein", "wool", 60.0, "alum 12 %", date(2026, 3, 2), "2026-03-02-wool-bbbb")
ASKS = "D is still hot: what goes in next? third skein, 60 g wool"


@pytest.fixture(scope="module")
def lifted():
    """The dye pot straight after the lift, and the moment before it."""
    day = Day()
    while (step := day.state.step("dye")) is None or step.status != "complete":
        day.space()
    before = day.state
    for one in day.state.lots_in("dye pot"):
        day.do(e.Lifted(one.name, "dye pot"))
    account = reckon(day.plan, day.entries, day.opened)
    shelf = FromShelf(fibre=(SILK, WOOL))
    return day, before, Snapshot(day.plan, "today", day.plan.recipe, "", day.state, day.entries, account, shelf=shelf)


def view_of(snapshot, day, mode=None):
    return stove_view(snapshot, day.now_s, day.suggest(), mode or Mode(), NOBODY)


@pytest.mark.parametrize("size", [(80, 24), (60, 18)])
def test_the_hot_bath_asks_for_the_mordanted_skein_of_its_own_kind_first(lifted, size):
    day, before, snapshot = lifted

    @on_screen
    async def look():
        app = FixtureApp(view_of(snapshot, day))
        async with app.run_test(size=size) as pilot:
            await pilot.pause()
            text = " ".join(shown(app).replace("\N{NO-BREAK SPACE}", " ").split())
            assert ASKS in text, shown(app)
            app.screen.show(view_of(replace(snapshot, state=before), day))
            await pilot.pause()
            assert "what goes in next" not in shown(app), "while the fibre is in, nothing is asked"

    look()


def test_what_was_just_typed_is_answered_first_and_without_waiting_fibre_nothing_is_asked(lifted):
    day, _, snapshot = lifted
    assert view_of(snapshot, day, Mode(note="D has pH 4.5")).note == "D has pH 4.5"
    assert view_of(replace(snapshot, shelf=FromShelf()), day).note == ""


def test_that_there_is_nothing_to_do_is_said_no_longer_once_there_is(lifted):
    day, _, snapshot = lifted
    idle = Mode(note="Nothing to do until 12:00.")
    assert not isinstance(day.suggest(), Wait)
    assert "Nothing to do" not in view_of(snapshot, day, idle).note
    waiting = stove_view(snapshot, day.now_s, Wait(day.now_s + 60, "dye"), idle, NOBODY)
    assert waiting.note == idle.note


def test_a_rest_over_night_is_said_to_run_until_morning():
    day = Day()
    while (step := day.state.step("dry")) is None or step.status != "running":
        day.space()
    assert pot_line(day.state, replace(step, countdown=replace(step.countdown, overnight=True)), day.now_s) == "dry until morning"
