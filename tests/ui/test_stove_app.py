"""The day on the real screens, headless: keys in, facts out, the clock stepped by hand."""

import asyncio
import functools
from collections.abc import Awaitable, Callable
from pathlib import Path
from typing import Any

import pytest
from days import MORNING

from dyesession.account.live import reckoner_for
from dyesession.care import DISCLAIMER_SHORT
from dyesession.clock import SteppingClock
from dyesession.kitchen import load_kitchen
from dyesession.plan import lots_from_text, work_out
from dyesession.recipe import load_recipe
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.opening import begin_day
from dyesession.session.suggest import Wait
from dyesession.storage import DISK, Storage
from dyesession.ui.app import DyeApp

ROOT = Path(__file__).resolve().parents[2]


def shown(app: DyeApp) -> str:
    """What stands on the screen, as text: the one place in the tests that looks under the framework's floor."""
    strips = app.screen._compositor.render_strips()
    return "\n".join("".join(part.text for part in strip).rstrip() for strip in strips)


def at_the_stove(test: Callable[..., Awaitable[None]]) -> Callable[..., None]:
    @functools.wraps(test)
    def run(tmp_path: Path) -> None:
        asyncio.run(test(tmp_path))

    del run.__wrapped__  # type: ignore[attr-defined]
    return run


class Stove:
    """An app on a stepping clock."""

    def __init__(self, folder: Path, storage: Storage = DISK) -> None:
        recipe = load_recipe(ROOT / "recipes" / "madder-brick-red-on-wool.toml")
        kitchen = load_kitchen(ROOT / "dyesession" / "kitchen" / "example.toml")
        lots = lots_from_text(["165 g dry large skein", "75 g dry small skein"], "wool")
        self.clock = SteppingClock(MORNING)
        plan = work_out(recipe, lots, kitchen)
        self.session = begin_day(storage, folder, recipe, plan, kitchen, self.clock, reckoner_for)
        self.app = DyeApp(self.session, bounce_s=0.0)

    async def press(self, pilot: Any, *keys: str) -> None:
        for key in keys:
            self.clock.advance(0.5)
            await pilot.press(key)
            await self.settle(pilot)

    async def settle(self, pilot: Any) -> None:
        self.session.tick().result(10)
        await pilot.pause()
        self.app.look()
        await pilot.pause()

    async def on(self, pilot: Any, minutes: float) -> None:
        self.clock.advance(minutes * 60)
        await self.settle(pilot)

    async def until(self, pilot: Any, wanted: type[object], most: int = 200) -> Any:
        for _ in range(most):
            suggestion = self.app.suggestion()
            if isinstance(suggestion, wanted):
                return suggestion
            if isinstance(suggestion, Wait):
                await self.on(pilot, max(0.1, ((suggestion.until_s or 60) - self.session.now_s()) / 60))
            elif isinstance(suggestion, Ask):
                await self.press(pilot, "7", "0", "enter")
            else:
                await self.press(pilot, "space")
        raise AssertionError(f"no {wanted.__name__}: {self.app.suggestion()}\n{shown(self.app)}")


@at_the_stove
async def test_space_does_the_next_right_thing_and_it_is_on_disk(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        await stove.press(pilot, "space")
        assert stove.session.snapshot.entries[0].event.kind == "begun"
        assert "begun" in Path(stove.session.snapshot.path).read_text("utf-8")
        assert "fill A" in shown(stove.app)
    stove.session.close()


@at_the_stove
async def test_a_typed_number_is_said_back_before_it_counts(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        added = await stove.until(pilot, e.Added)
        await stove.press(pilot, "w", *"15", "space", "g")
        assert f"15 g {added.ingredient} weighed" in shown(stove.app)
        assert not any(isinstance(one.event, e.Weighed) for one in stove.session.snapshot.entries)
        await stove.press(pilot, "enter")
        again = stove.app.suggestion()
        assert isinstance(again, e.Added) and (again.mass_g, again.how) == (15.0, "weighed")
    stove.session.close()


@at_the_stove
async def test_the_whole_day_by_keys_alone(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        await stove.until(pilot, e.Closed)
        await stove.press(pilot, "space")
        assert stove.session.snapshot.state.status == "complete"
        assert not stove.session.snapshot.state.flags
        last = " ".join(shown(stove.app).split())
        assert "the day is closed" in last and "q quit" in last and "t temperature" not in last
    stove.session.close()


@at_the_stove
async def test_a_note_may_hold_anything_and_is_shown_as_it_is(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        await stove.press(pilot, "n", *"lot ", "left_square_bracket", "slash", "right_square_bracket", "enter")
        noted = [one.event for one in stove.session.snapshot.entries if isinstance(one.event, e.Noted)]
        assert noted[0].text == "lot [/]"
        assert "lot [/]" in shown(stove.app)
    stove.session.close()


@at_the_stove
async def test_a_refusal_is_one_line_and_changes_nothing(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    async with stove.app.run_test(size=(100, 30)) as pilot:
        await stove.press(pilot, "z", *"9 strike because no", "enter")
        assert "There is no entry 9" in shown(stove.app)
        assert stove.session.snapshot.entries == ()
    stove.session.close()


@pytest.mark.parametrize("size", [(40, 10), (60, 18), (80, 24), (200, 60)])
def test_every_size_shows_the_next_act(tmp_path: Path, size: tuple[int, int]) -> None:
    async def look() -> None:
        stove = Stove(tmp_path)
        async with stove.app.run_test(size=size) as pilot:
            await stove.press(pilot, "space", "space")
            assert "weigh and add" in shown(stove.app).replace("\n", " ") or "ADD" in shown(stove.app).upper()
        stove.session.close()

    asyncio.run(look())


@pytest.mark.parametrize(("number", "told"), [("", True), ("0123 456", False)])
def test_a_day_without_a_number_says_where_it_goes_until_the_first_act_and_no_longer(
    tmp_path: Path, number: str, told: bool
) -> None:
    async def look() -> None:
        stove = Stove(tmp_path)
        stove.session.poison_centre = number
        async with stove.app.run_test(size=(80, 24)) as pilot:
            await stove.settle(pilot)
            first = " ".join(shown(stove.app).split())
            assert "Labels, safety data sheets, local rules and licensed practitioners outrank it" in first
            assert ("My kitchen keeps it" in first) is told
            await stove.press(pilot, "space")
            assert "My kitchen" not in shown(stove.app) and "outrank it" not in shown(stove.app)
        stove.session.close()

    asyncio.run(look())


@at_the_stove
async def test_the_log_opens_with_what_outranks_it(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    head = Path(stove.session.snapshot.path).read_text("utf-8")
    assert f'mind = "{DISCLAIMER_SHORT}"' in head
    stove.session.close()


@at_the_stove
async def test_a_tick_that_comes_after_the_last_screen_is_gone_is_no_fault(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        await stove.settle(pilot)
    assert not stove.app.screen_stack
    stove.app.look()
    stove.session.close()
