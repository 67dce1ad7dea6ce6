"""The account, the heat and the doubts on the real Stove."""

import asyncio
import re
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path
from typing import Any

import pytest
from ui.test_asks_on_the_stove import facts, go_on
from ui.test_stove_app import Stove, at_the_stove, shown

from dyesession.session import events as e
from dyesession.session.suggest import suggest


def onward(stove: Stove, step: str) -> None:
    """On to where a step is about to begin."""
    for _ in range(400):
        next_act = suggest(stove.session.snapshot.state, stove.session.now_s(), stove.session.household)
        if isinstance(next_act, e.Begun) and next_act.step == step:
            return
        go_on(stove)
    raise AssertionError(f"{step} never begins")


@asynccontextmanager
async def about_to_begin(
    step: str, folder: Path, size: tuple[int, int] = (80, 24)
) -> AsyncIterator[tuple[Stove, Any]]:
    """The Stove where a step is about to begin, the page about the gap put away."""
    stove = Stove(folder)
    onward(stove, step)
    async with stove.app.run_test(size=size) as pilot:
        await stove.settle(pilot)
        await stove.press(pilot, "escape")
        yield stove, pilot
    stove.session.close()


def flat(stove: Stove) -> str:
    return " ".join(shown(stove.app).replace("\N{NO-BREAK SPACE}", " ").split())


@at_the_stove
async def test_while_the_dyestuff_is_in_the_sieve_the_stove_says_what_a_refresh_would_bring(tmp_path: Path) -> None:
    async with about_to_begin("extract 3", tmp_path) as (stove, _):
        said = flat(stove)
        for part in ("Again? Match a", "strain", "first: ", "% more for 100 min", "heat, a guess."):
            assert part in said


@pytest.mark.parametrize(("size", "drawn"), [((60, 18), False), ((80, 24), False), ((200, 60), True)])
def test_the_old_bath_answers_for_any_fibre_and_its_strength_is_drawn_where_there_is_room(
    tmp_path: Path, size: tuple[int, int], drawn: bool
) -> None:
    async def look() -> None:
        async with about_to_begin("rinse", tmp_path, size) as (stove, pilot):
            assert (re.search("strength today [▁-█]{16}", flat(stove)) is not None) == drawn
            before = facts(stove)
            await stove.press(pilot, "b", "1")
            assert "What would it still do? For example 80 g silk" in flat(stove)
            await stove.press(pilot, *"80", "space", *"g", "space", *"marble", "enter")
            assert "is no fibre known here" in flat(stove)
            await stove.press(pilot, "escape", *"3", "space", *"oz", "space", *"silk", "enter")
            assert re.search(r"85 g of silk, mordanted as the first was, would take up .* of madder", flat(stove))
            assert facts(stove) == before

    asyncio.run(look())


@at_the_stove
async def test_a_dried_snippet_says_how_far_along_the_skeins_are_and_nothing_is_written(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    for _ in range(400):
        account = stove.session.snapshot.account
        if any(one.place == "dye pot" and one.taken and one.taken[0].grams.mean > 1.0 for one in account.fibres):
            break
        go_on(stove)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        await stove.settle(pilot)
        await stove.press(pilot, "escape")
        before = facts(stove)
        await stove.press(pilot, "b", "2")
        assert "How deep, dry, of the depth you want? For example 70 %" in flat(stove)
        await stove.press(pilot, *"60", "space", "%", "enter")
        assert re.search(r"By the dried snippet the large skein stands at 60 ± \d+ %", flat(stove))
        await stove.press(pilot, "b", "2", *"darker", "enter")
        assert "says nothing of a dried snippet" in flat(stove)
        assert facts(stove) == before
    stove.session.close()


@pytest.mark.parametrize("size", [(60, 18), (80, 24), (200, 60)])
def test_a_level_above_the_brim_is_asked_about_and_kept_as_a_note(tmp_path: Path, size: tuple[int, int]) -> None:
    async def look() -> None:
        async with about_to_begin("extract again", tmp_path, size) as (stove, pilot):
            before = facts(stove)
            await stove.press(pilot, "v", *"D", "space", *"40", "enter")
            assert "40 L in the dye pot, whose brim is at 12 L: is that the figure meant?" in flat(stove)
            assert "Enter once more keeps it as a note" in flat(stove)
            assert facts(stove) == before
            await stove.press(pilot, "enter")
            assert facts(stove) == [*before, "noted"]
            assert stove.session.snapshot.state.vessel("dye pot").bath.volume_l != 40.0

    asyncio.run(look())


@at_the_stove
async def test_a_doubted_figure_can_be_typed_anew(tmp_path: Path) -> None:
    async with about_to_begin("extract again", tmp_path) as (stove, pilot):
        before = facts(stove)
        await stove.press(pilot, "v", *"D", "space", *"40", "enter", "backspace", "backspace", *"4", "enter")
        assert facts(stove) == [*before, "read"]
        assert stove.session.snapshot.entries[-1].event.kind in ("read", "account")


@at_the_stove
async def test_the_strength_key_says_how_to_take_one_and_takes_it(tmp_path: Path) -> None:
    async with about_to_begin("strain again", tmp_path) as (stove, pilot):
        await stove.press(pilot, "s")
        assert "One spoon of the stronger and 2 of water look like it: type 1:2" in flat(stove)
        await stove.press(pilot, *"C", "space", *"1", "colon", *"2")
        assert "33 % of first strain, dilution match" in flat(stove)
        await stove.press(pilot, "enter")
        assert "if they had, type “cooled” behind it" in flat(stove)
        await stove.press(pilot, "comma", "space", *"cooled", "enter")
        read = [one.event for one in stove.session.snapshot.entries if isinstance(one.event, e.Read)][-1]
        assert (read.vessel, read.method, read.how) == ("extract pot", "dilution match, samples cooled", "matched")


@at_the_stove
async def test_the_account_page_says_it_as_the_dyer_doses_and_draws_the_day(tmp_path: Path) -> None:
    async with about_to_begin("rinse", tmp_path, (120, 100)) as (stove, pilot):
        await stove.press(pilot, "b")
        page: Any = flat(stove)
        assert "holds the colour of" in page and "WOF of the 50 % planned" in page and "g/L" in page
        assert "strength over the day" in page and "of your 120 g madder" in page
        assert "would take in the end" in page and "strained in from the extract pot" in page


@at_the_stove
async def test_two_readings_say_when_a_pot_is_at_its_heat(tmp_path: Path) -> None:
    stove = Stove(tmp_path)
    while not stove.session.snapshot.state.vessel("extract pot").on_heat:
        go_on(stove)
    async with stove.app.run_test(size=(200, 60)) as pilot:
        await stove.settle(pilot)
        await stove.press(pilot, "escape")
        await stove.on(pilot, 5)
        await stove.press(pilot, "t", *"C", "space", *"28", "enter")
        assert "70 °C in about" not in flat(stove)
        await stove.on(pilot, 10)
        await stove.press(pilot, "t", *"C", "space", *"46", "enter")
        assert "70 °C in about 14 min (12 to 16 min)" in flat(stove)
        assert "C extract pot, temperature" in flat(stove), "its curve is the one that is drawn"
    stove.session.close()
