"""The whole job, from the Bench to the closed day: by touch alone and by keys alone; and a day without a recipe that is
repeated as one.
"""

from pathlib import Path

import pytest
from ui.at_places import Room, in_a_room

from dyesession.daybook.repeating import repeat
from dyesession.plan import lots_from_text
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.opening import read_day
from dyesession.session.suggest import Wait
from dyesession.storage import DISK


async def to_the_end(room: Room, do_next, answer, most=150):
    """Do what NEXT says until the day is closed; `do_next` and `answer` are all the hands there are."""
    session = room.app.session
    for _ in range(most):
        if session.snapshot.state.status == "complete":
            return session.snapshot
        suggestion = room.app.suggestion()
        room.clock.advance(2.0)
        if isinstance(suggestion, Wait):
            room.clock.advance(max(6.0, (suggestion.until_s or 0.0) - session.now_s()))
            await room.settle()
        elif isinstance(suggestion, Ask):
            await room.settle()
            await answer(suggestion)
        else:
            await do_next()
    raise AssertionError(f"never closed: {room.app.suggestion()}\n{room.text()}")


def by_touch(room):
    async def do_next():
        await room.touch("RINGING" if "RINGING" in room.text() else "NEXT")

    async def answer(ask):
        if ask.kind == "temperature":
            await room.tap("7", "0", "enter")
        else:
            await room.touch(f" {ask.expected.lower()} ", last=True)

    return do_next, answer


def by_keys(room):
    async def answer(ask):
        await room.press(*(["7", "0", "enter"] if ask.kind == "temperature" else [ask.expected.lower()]))

    return lambda: room.press("space"), answer


def no_keys(room, monkeypatch):
    """From here on a key pressed is a mistake of the test."""

    async def never(*keys):
        raise AssertionError(f"pressed {keys}: this hand has no keyboard")

    monkeypatch.setattr(room.pilot, "press", never)


@in_a_room(kitchen=True)
async def test_the_whole_job_by_touch_alone(room):
    with pytest.MonkeyPatch.context() as patch:
        no_keys(room, patch)
        await room.touch("↓")
        await room.touch("Onion skins in one pot")
        await room.touch("NEXT")
        assert room.place == "Working out", room.text()
        await room.tap("1", "0", "0", "g", "wool", "enter")
        await room.touch("yes: washed")
        await room.touch("NEXT")
        day = await to_the_end(room, *by_touch(room))
    assert day.state.status == "complete" and not day.state.flags
    assert any(isinstance(one.event, e.Closed) for one in day.entries)


@in_a_room(kitchen=True)
async def test_the_whole_job_by_keys_alone(room):
    await room.press("/")
    await room.type("onion")
    await room.press("enter", "space")
    assert room.place == "Working out"
    await room.type("100 g wool")
    await room.press("enter", "enter", "space")
    day = await to_the_end(room, *by_keys(room))
    assert day.state.status == "complete" and not day.state.flags


@in_a_room(kitchen=True)
async def test_a_day_without_a_recipe_by_touch_alone_is_repeated_as_a_recipe(room):
    with pytest.MonkeyPatch.context() as patch:
        no_keys(room, patch)
        await room.touch("+ no recipe")
        await room.tap("1", "0", "0", "g", "wool", "enter")
        assert "say what comes first" in room.flat()
        await room.touch("NEXT")
        await room.touch("dye in")
        await room.touch("A, the big pot")
        await room.touch("madder …")
        await room.tap("1", "5", "%", ", to", "8", "0", "°C", ", hold", "3", "0", "min")
        assert "= dye in the big pot: madder 15 g, to 80 °C, hold 30 min" in room.flat()
        assert not room.app.session.snapshot.state.steps, "nothing counts before it is said back"
        await room.tap("enter")
        day = await to_the_end(room, *by_touch(room))
    assert not day.state.flags
    room.app.close_day()
    again = repeat(read_day(DISK, Path(day.path)), lots_from_text(["60 g dry wool"], "wool"), room.disk.kitchen())
    madder = next(one for one in again.document["ingredient"] if one["name"] == "madder")
    assert madder["dose"] == "15 %"
    assert again.plan.doses[0].mass_g.aim == pytest.approx(9.0)


@in_a_room(kitchen=True)
async def test_fibre_without_a_weight_begins_no_day_and_says_an_example(room):
    await room.press("+")
    await room.type("some wool")
    await room.press("enter")
    assert not room.logs() and "for example" in room.view.frame.note
    await room.press("escape")
    assert room.view.frame.entry is None
