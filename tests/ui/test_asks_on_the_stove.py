"""A question on the real Stove cannot be passed blindly: by no key, no bounce, no hand that was too quick."""

import asyncio
from pathlib import Path
from typing import Any

import pytest
from textual.events import Key
from ui.test_stove_app import Stove, at_the_stove, shown

from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.suggest import Wait, suggest
from dyesession.ui.app import DyeApp
from dyesession.ui.messages import Entered, Typed
from dyesession.ui.pressing import ASK_REST_S
from dyesession.ui.screens.stove import StoveScreen

TIMES = 1000
BLIND = ("space", "enter", "y", "x")  # x: any act that a key held down may be


def facts(stove: Stove) -> list[str]:
    return [one.event.kind for one in stove.session.snapshot.entries if one.event.kind not in e.PROGRAM_KINDS]


async def blindly(stove: Stove, pilot: Any, key: str) -> list[str]:
    """Hammer on one key; the facts that came of it."""
    before = len(facts(stove))
    if type(stove.app.screen) is StoveScreen:
        stove.app.screen.__class__ = Counting
    character = {"space": " ", "enter": None}.get(key, key)
    for _ in range(TIMES):
        stove.app.post_message(Key(key, character))
    await stove.settle(pilot)
    assert stove.app.screen.heard >= TIMES  # type: ignore[attr-defined]
    return facts(stove)[before:]


class Counting(StoveScreen):
    """The Stove's own screen, with a count of the keys that came to it."""

    heard = 0

    def on_key(self, event: Key) -> None:
        self.heard += 1
        super().on_key(event)


async def at_the_question(stove: Stove, pilot: Any) -> Ask:
    to_the_brink(stove)
    await stove.settle(pilot)
    await stove.press(pilot, "escape", "space")
    ask = stove.app.suggestion()
    assert isinstance(ask, Ask)
    return ask


@pytest.mark.parametrize("key", BLIND)
def test_a_thousand_times_one_key_passes_no_question(tmp_path: Path, key: str) -> None:
    async def press() -> None:
        stove = Stove(tmp_path)
        async with stove.app.run_test(size=(80, 24)) as pilot:
            await at_the_question(stove, pilot)
            assert await blindly(stove, pilot, key) == []
            assert isinstance(stove.app.suggestion(), Ask) and "ASK" in shown(stove.app)
        stove.session.close()

    asyncio.run(press())


@pytest.mark.parametrize("key", ["space", "enter", "y"])
def test_a_key_held_down_while_the_question_comes_up_passes_nothing(tmp_path: Path, key: str) -> None:
    """Autorepeat: the key that did the act before goes on through the question, a hundred times a second."""

    async def press() -> None:
        stove = Stove(tmp_path)
        to_the_brink(stove)
        stove.app = DyeApp(stove.session)  # with the bounce and the rest that a dyer gets
        async with stove.app.run_test(size=(80, 24)) as pilot:
            await stove.settle(pilot)
            await stove.press(pilot, "escape", "space")
            assert isinstance(stove.app.suggestion(), Ask)
            assert await blindly(stove, pilot, key) == []
        stove.session.close()

    asyncio.run(press())


@at_the_stove
async def test_the_twin_that_lets_enter_answer_is_caught(tmp_path: Path) -> None:
    """Sabotage: Enter alone answers with what was planned. The thousand presses must see it."""

    class Obliging(Counting):
        def _answer(self, key: str) -> bool:
            if key == "enter" and self.view.ask is not None:
                self.post_message(Typed("70"))
                self.post_message(Entered("70"))
                return True
            return super()._answer(key)

    stove = Stove(tmp_path)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        await at_the_question(stove, pilot)
        stove.app.screen.__class__ = Obliging
        assert "confirmed" in await blindly(stove, pilot, "enter")
    stove.session.close()


@at_the_stove
async def test_not_now_works_is_logged_and_lets_the_dyer_go_on(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        ask = await at_the_question(stove, pilot)
        await stove.press(pilot, "minus")
        assert facts(stove)[-1] == "put-off"
        assert "put-off" in Path(stove.session.snapshot.path).read_text("utf-8")
        assert stove.app.suggestion() == ask.then
        await stove.press(pilot, "space")
        assert facts(stove)[-1] == ask.then.kind
    stove.session.close()


@at_the_stove
async def test_every_question_of_the_day_can_be_put_off_and_the_day_still_ends(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        asked = 0
        while not isinstance(suggestion := until_asked_or_closed(stove), e.Closed):
            assert isinstance(suggestion, Ask)
            asked += 1
            await stove.settle(pilot)
            await stove.press(pilot, "minus")
        await stove.settle(pilot)
        await stove.press(pilot, "space")
        assert stove.session.snapshot.state.status == "complete"
        assert facts(stove).count("put-off") == asked and asked >= 2 and "confirmed" not in facts(stove)
    stove.session.close()


@at_the_stove
async def test_an_act_by_its_own_key_meets_the_question_too_and_follows_its_answer(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    while not _hot_with_fibre(stove):
        go_on(stove)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        await stove.settle(pilot)
        before = facts(stove)
        await stove.press(pilot, "escape", "l")
        assert "before you lift from it" in shown(stove.app) and facts(stove) == before
        assert await blindly(stove, pilot, "l") == []
        await stove.press(pilot, *"84", "enter")
        assert facts(stove) == [*before, "confirmed", "lifted"]
    stove.session.close()


@at_the_stove
async def test_an_act_that_waits_for_an_answer_can_be_put_down(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    while not _hot_with_fibre(stove):
        go_on(stove)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        await stove.settle(pilot)
        before, waited = facts(stove), stove.app.suggestion()
        await stove.press(pilot, "escape", "l", "escape")
        assert facts(stove) == before and stove.app.suggestion() == waited
    stove.session.close()


@at_the_stove
async def test_an_answer_half_typed_when_an_alarm_comes_up_is_no_answer_to_anything_else(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        ask = await at_the_question(stove, pilot)
        await stove.press(pilot, "7", "0")
        await stove.on(pilot, 120)
        assert "RINGING" in shown(stove.app) and not isinstance(stove.app.suggestion(), Ask)
        before = facts(stove)
        await stove.press(pilot, "enter")
        assert facts(stove) == before and "type it again" in " ".join(shown(stove.app).split())
        await stove.until(pilot, Ask)
        again = stove.app.suggestion()
        assert isinstance(again, Ask) and again.key == ask.key
        await stove.press(pilot, "7", "0", "enter")
        assert "confirmed" in facts(stove)[len(before) :]
    stove.session.close()


def _hot_with_fibre(stove: Stove) -> bool:
    state = stove.session.snapshot.state
    vessel = state.vessel("mordant pot")
    return vessel is not None and vessel.reached_c is not None and bool(state.lots_in("mordant pot"))


@at_the_stove
async def test_a_temperature_far_off_is_asked_for_once_more_by_its_number(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    async with stove.app.run_test(size=(100, 30)) as pilot:
        await at_the_question(stove, pilot)
        before = facts(stove)
        await stove.press(pilot, "7", "enter")
        assert "7 °C, where 70 °C was looked for" in shown(stove.app)
        assert facts(stove) == before
        await stove.press(pilot, "enter")
        assert facts(stove) == [*before, "confirmed"]
    stove.session.close()


@at_the_stove
async def test_what_is_pressed_as_the_question_appears_answers_nothing(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    to_the_brink(stove)
    stove.app = DyeApp(stove.session)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        await stove.settle(pilot)
        await stove.press(pilot, "escape", "space")
        assert isinstance(stove.app.suggestion(), Ask)
        before = facts(stove)
        await pilot.press("minus", "7", "0", "enter")
        await stove.settle(pilot)
        assert facts(stove) == before
        await asyncio.sleep(ASK_REST_S)
        await pilot.press("7", "0", "enter")
        await stove.settle(pilot)
        assert facts(stove) == [*before, "confirmed"]
    stove.session.close()


@pytest.mark.parametrize("size", [(60, 18), (80, 24), (200, 60)])
def test_a_grave_caution_and_its_question_bring_first_aid_and_the_kitchens_number(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    async def look() -> None:
        stove = Stove(tmp_path)
        stove.session.poison_centre = "0123 456 789"
        async with stove.app.run_test(size=size) as pilot:
            await at_the_question(stove, pilot)
            asked = " ".join(shown(stove.app).replace("║", " ").split())
            assert "Scalded: cool running water at once" in asked and "(0123 456 789)" in asked
            await stove.press(pilot, *"68", "enter")
            cared = " ".join(shown(stove.app).split())
            assert "one second burns. Strain with a ladle, away from you. Scalded: cool running water" in cared
            assert "Poison centre 0123 456 789." in cared
        assert "0123 456 789" not in Path(stove.session.snapshot.path).read_text("utf-8")
        stove.session.close()

    asyncio.run(look())


def to_the_brink(stove: Stove) -> None:
    """On to where one more press of the space bar brings the first question up."""
    while True:
        suggestion = suggest(stove.session.snapshot.state, stove.session.now_s(), stove.session.household)
        if isinstance(suggestion, e.Begun) and suggestion.step == "strain":
            return
        go_on(stove)


def go_on(stove: Stove) -> None:
    """Do what comes next, straight in the day; wait where there is nothing to do, answer what is asked."""
    suggestion = suggest(stove.session.snapshot.state, stove.session.now_s(), stove.session.household)
    if isinstance(suggestion, Wait):
        stove.clock.advance(max(1.0, (suggestion.until_s or 0.0) - stove.session.now_s()))
    else:
        fact = suggestion.honest_answer() if isinstance(suggestion, Ask) else suggestion
        stove.session.do(fact).result(10)


def until_asked_or_closed(stove: Stove) -> Any:
    for _ in range(300):
        suggestion = stove.app.suggestion()
        if isinstance(suggestion, Ask | e.Closed):
            return suggestion
        go_on(stove)
    raise AssertionError(f"neither asked nor closed: {stove.app.suggestion()}")
