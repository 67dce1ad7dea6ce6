"""An alarm latches: on every screen it stands, with pot, what and how overdue, until it is seen."""

import re

import pytest
from ui.at_places import in_a_room
from ui.test_bench import a_day

from dyesession.session import events as e
from dyesession.session.suggest import ALARM_AFTER_S, rings
from dyesession.ui.app import DyeApp

OVERDUE_MIN = 29
PLACES = 5  # the round of places, once round and the first again
SAYS = ("RINGING", "B: the dye pot: should be at", "90 °C,", " min over.", "See whether B is at 90 °C")


def block(room):
    """The words of the block that rings, without its large letters and what stands at its right end."""
    text = re.sub(r"[▀▄█]+|\d\d:\d\d|space: seen", " ", room.text().split("\n\n")[0])
    return " ".join(text.split())


def in_full(room):
    """Whether the screen says which pot, what, how overdue and what to do; each thing once."""
    flat = block(room)
    return all(one in flat for one in SAYS) and flat.count("min over.") == 1


async def overdue(room):
    """The open day taken up, its pot left on the ring half an hour too long."""
    await room.press("space", "escape")
    day = room.app.session.snapshot.state
    due_s = min(one.countdown.deadline_s for one in day.steps if one.countdown)
    room.clock.advance(due_s - room.app.session.now_s() + OVERDUE_MIN * 60)
    await room.settle()


async def every_screen(room):
    """From screen to screen; the name of each. `tab` leads on from place to place."""
    yield "Stove"
    for key, name in (("?", "help"), ("b", "bath account"), (".", "more")):
        await room.press(key)
        yield name
        await room.press("escape")
    await room.press("q")
    yield "Bench"
    for key, name in (("?", "help on the Bench"), ("m", "My kitchen")):
        await room.press(key)
        yield name
        await room.press("escape" if "help" in name else "q")
    for _ in range(PLACES):
        await room.press("tab")
        yield room.place


async def screens_that_ring(room):
    """The names of all screens, and of those that ring in full."""
    names, ringing = [], []
    async for name in every_screen(room):
        names.append(name)
        if in_full(room):
            ringing.append(name)
    return names, ringing


def left_too_long(tmp_path, size, look):
    a_day(tmp_path, until=e.Lit)

    @in_a_room(size=size)
    async def inside(room):
        await overdue(room)
        await look(room)

    inside(tmp_path)


@pytest.mark.parametrize("size", [(60, 18), (80, 24), (200, 60)])
def test_it_stands_on_every_screen(tmp_path, size):
    async def look(room):
        names, ringing = await screens_that_ring(room)
        assert ringing == names and len(names) >= 8

    left_too_long(tmp_path, size, look)


def test_the_twin_that_rings_at_the_stove_alone_is_caught(tmp_path, monkeypatch):
    """Sabotage: away from the Stove nothing rings."""
    honest = DyeApp.ringing
    monkeypatch.setattr(
        DyeApp, "ringing", lambda app: honest(app) if app.screen_stack and app.day and app.screen is app.day.screen else None
    )

    async def look(room):
        names, ringing = await screens_that_ring(room)
        assert ringing != names

    left_too_long(tmp_path, (80, 24), look)


async def stays(room):
    """Whether it still rings after an hour in which nobody came, in full and with the hour counted."""
    for _ in range(6):
        room.clock.advance(600)
        await room.settle()
    return in_full(room) and "90 °C, 1 h 28 min over" in block(room)


def test_it_latches_until_it_is_seen_and_is_counted_on(tmp_path):
    async def look(room):
        assert await stays(room)
        raised = [one for one in room.app.session.snapshot.entries if isinstance(one.event, e.AlarmRaised)]
        assert len(raised) == 1 and raised[0].event.over_s >= ALARM_AFTER_S
        await room.press("space")
        assert "the dye pot: should be" not in room.flat()
        seen = [one for one in room.app.session.snapshot.entries if isinstance(one.event, e.Acknowledged)]
        assert len(seen) == 1

    left_too_long(tmp_path, (80, 24), look)


def test_the_twin_that_gives_up_after_an_hour_is_caught(tmp_path, monkeypatch):
    """Sabotage: what nobody answers for an hour is no longer called out."""

    def giving_up(state, now_s):
        return tuple(one for one in rings(state, now_s) if one.over_s < 3600)

    monkeypatch.setattr("dyesession.ui.stove_day.rings", giving_up)
    monkeypatch.setattr("dyesession.ui.from_session.rings", giving_up)

    async def look(room):
        assert not await stays(room)

    left_too_long(tmp_path, (80, 24), look)
