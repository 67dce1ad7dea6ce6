"""The tour: a whole day on the real screens by itself, in a borrowed folder, and the workroom as it was."""

import asyncio
import functools
from pathlib import Path

import pytest
from days import MORNING
from textual.events import MouseUp

from dyesession.cli import main
from dyesession.cli.dyers_folder import DyersFolder
from dyesession.cli.tour import lay_out, printed_walk
from dyesession.cli.workroom import Workroom
from dyesession.clock import SteppingClock
from dyesession.rehearsal.told import FIRST_TIME
from dyesession.session.log import check_log
from dyesession.storage import DISK
from dyesession.ui import tour_walk
from dyesession.ui.contact_sheet import shown
from dyesession.ui.ink import width_of
from dyesession.ui.theme import DARK
from dyesession.ui.tour import TourApp
from dyesession.ui.tour_walk import Say
from dyesession.ui.widgets.caption import CaptionPart, caption_rows, draw_caption

MOST_FRAMES = 20_000
STOPS = [text for name, text in vars(tour_walk).items() if name.isupper() and isinstance(text, str) and " " in text]


def app_in(folder: Path) -> TourApp:
    lay_out(folder, DISK)
    clock = SteppingClock(MORNING)
    return TourApp(DyersFolder(Workroom(folder), DISK, clock), clock, paced=False)


def touch(x: int, y: int) -> MouseUp:
    return MouseUp(None, x, y, 0, 0, 1, False, False, False, x, y)


async def _walk(folder: Path) -> dict[str, str]:
    """The screen at every caption that is meant to be read, by the caption."""
    app, seen = app_in(folder), {}
    async with app.run_test(size=(80, 24)) as pilot:
        for _ in range(MOST_FRAMES):
            if app.over:
                break
            app.go_on()
            if app.is_read:
                await pilot.pause()
                await app.workers.wait_for_complete()
                app.go_on()
                await pilot.pause()
                seen[app.caption] = shown(app).replace("\N{NO-BREAK SPACE}", " ")
            elif not app.passes:
                await pilot.pause()
            app.hasten()
    app.close_day()
    return seen


@functools.cache
def walked(folder: Path) -> dict[str, str]:
    return asyncio.run(_walk(folder))


@pytest.fixture(scope="module")
def borrowed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("borrowed")


def test_it_leads_from_the_bench_over_a_whole_day_and_back(borrowed: Path) -> None:
    seen = walked(borrowed)
    assert next(iter(seen)) == tour_walk.BENCH and list(seen)[-1] == tour_walk.END
    for caption in (tour_walk.LIST, tour_walk.STOVE, tour_walk.ACCOUNT, tour_walk.ALARM, tour_walk.HOME):
        assert caption in seen
    assert {FIRST_TIME[kind] for kind in ("weighed", "strained", "on-shade", "kept", "closed")} <= set(seen)


def test_every_caption_stands_whole_above_its_keys_on_the_real_screens(borrowed: Path) -> None:
    for caption, screen in walked(borrowed).items():
        assert " ".join(screen.split()).endswith(f"{caption} space on p stand still q leave"), screen


def test_the_screens_are_those_of_a_real_day(borrowed: Path) -> None:
    seen = walked(borrowed)
    assert "NEXT" in seen[tour_walk.BENCH] and "alum" in seen[tour_walk.LIST]
    assert "±" in seen[tour_walk.WHY] and "Bath account" in seen[tour_walk.ACCOUNT]
    assert "RINGING" in seen[tour_walk.ALARM] and "ASK" in seen[FIRST_TIME["asked"]]
    assert "Madder brick red on wool" in seen[tour_walk.HOME] and "dyed before" in seen[tour_walk.HOME]


def test_it_leads_round_the_other_places_too_and_each_shows_the_day_just_dyed(borrowed: Path) -> None:
    seen = walked(borrowed)
    assert "Day book" in seen[tour_walk.BOOK] and "Madder brick red on wool" in seen[tour_walk.BOOK]
    assert "Bath shelf" in seen[tour_walk.SHELF] and "madder" in seen[tour_walk.SHELF]
    assert "Colour" in seen[tour_walk.COLOUR].splitlines()[0]


def test_its_log_lies_in_the_borrowed_folder_and_is_sound(borrowed: Path) -> None:
    walked(borrowed)
    (log,) = (borrowed / "logs").glob("*.toml")
    assert check_log(log) == []


def all_files(folder: Path) -> dict[str, tuple[bytes, int]]:
    return {
        str(one.relative_to(folder)): (one.read_bytes() if one.is_file() else b"", one.stat().st_mtime_ns)
        for one in sorted(folder.rglob("*"))
    }


def test_the_workroom_is_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    room, lent = tmp_path / "room", tmp_path / "lent"
    for name in ("recipes/own.toml", "logs/2026-03-14-own-k7q2.toml", "kitchen.toml"):
        (room / name).parent.mkdir(parents=True, exist_ok=True)
        (room / name).write_text("format = 1\n", "utf-8")
    lent.mkdir()
    monkeypatch.setenv("DYESESSION_WORKROOM", str(room))
    monkeypatch.setattr("tempfile.tempdir", str(lent))
    monkeypatch.chdir(room)
    before = all_files(room)
    assert main(["tour", "--plain"]) == 0
    assert "of its own" not in capsys.readouterr().err
    assert all_files(room) == before
    assert list(lent.iterdir()) == []


def test_without_a_screen_it_prints_a_short_walk(tmp_path: Path) -> None:
    lines = list(printed_walk(tmp_path, DISK, MORNING))
    assert len(lines) < 80 and max(map(len, lines)) <= 80
    text = " ".join(" ".join(lines).split())
    for kind in ("weighed", "strained", "kept", "closed"):
        assert FIRST_TIME[kind] in text
    assert "± " in text and "madder 120 g" in text


def test_the_looker_on_has_three_keys_and_no_other_reaches_the_screens(tmp_path: Path) -> None:
    async def look_on() -> None:
        app = app_in(tmp_path)
        async with app.run_test(size=(80, 24)) as pilot:
            while app.caption != tour_walk.BENCH:
                app.go_on()
                await pilot.pause()
            await pilot.press("p")
            for _ in range(200):
                app.go_on()
            assert app.caption == tour_walk.BENCH and "p go on" in shown(app)
            await pilot.press("m", "enter", "down", "r")
            await pilot.pause()
            assert app.screen.name == "Bench" and app.ringing() is None
            await pilot.press("space")
            app.go_on()
            app.go_on()
            assert app.caption == tour_walk.CHOSEN
            await pilot.press("q")
        assert app.return_code == 0

    asyncio.run(look_on())


def test_a_touch_goes_on_and_a_touch_on_the_last_word_leaves(tmp_path: Path) -> None:
    async def look_on() -> None:
        app = app_in(tmp_path)
        async with app.run_test(size=(80, 24)) as pilot:
            while app.caption != tour_walk.BENCH:
                app.go_on()
                await pilot.pause()
            app.post_message(touch(10, 8))
            await pilot.pause()
            app.go_on()
            assert app.caption == tour_walk.CHOSEN and app.screen.name == "Bench"
            app.post_message(touch(76, 23))
            await pilot.pause()
        assert app.return_code == 0

    asyncio.run(look_on())


@pytest.mark.parametrize("width", [60, 80, 200])
@pytest.mark.parametrize("text", [*STOPS, *FIRST_TIME.values()])
def test_every_caption_fits_its_band(text: str, width: int) -> None:
    lines = draw_caption(CaptionPart(Say(text).text), width, caption_rows(width), DARK)
    assert len(lines) == caption_rows(width)
    assert all(width_of(line) == width for line in lines)
    assert "…" not in "".join(piece for line in lines for piece, _ in line)
