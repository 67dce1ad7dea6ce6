"""A dyer's app from the Bench on, headless: a workroom in a folder of its own, a clock stepped by hand."""

import asyncio
import functools
from pathlib import Path

from days import MORNING

from dyesession.cli.dyers_folder import DyersFolder
from dyesession.cli.workroom import Workroom
from dyesession.clock import SteppingClock
from dyesession.storage import DISK
from dyesession.ui.app import DyeApp
from dyesession.ui.contact_sheet import shown
from dyesession.ui.widgets.pad import placed

ROOT = Path(__file__).resolve().parents[2]
EXAMPLE_KITCHEN = ROOT / "dyesession" / "kitchen" / "example.toml"
NAMED = {"/": "slash", "?": "question_mark", "-": "minus", ".": "full_stop", " ": "space", ",": "comma", "%": "percent_sign"}


class Room:
    """The app, its workroom, its clock."""

    def __init__(self, folder, size=(80, 24), kitchen=False):
        self.folder, self.size = folder, size
        if kitchen:
            (folder / "kitchen.toml").write_text(EXAMPLE_KITCHEN.read_text("utf-8"), "utf-8")
        self.clock = SteppingClock(MORNING)
        self.disk = DyersFolder(Workroom(folder), DISK, self.clock)
        self.app = DyeApp(workroom=self.disk, bounce_s=0.0)

    async def settle(self):
        for _ in range(3):
            await self.pilot.pause()
            await self.app.workers.wait_for_complete()
        if self.app.day is not None:
            self.app.day.session.tick().result(10)
        await self.pilot.pause()
        self.app.look()
        await self.pilot.pause()

    async def press(self, *keys):
        """Press keys by name; what stands between them is carried out first."""
        for key in keys:
            self.clock.advance(0.5)
            await self.pilot.press(NAMED.get(key, key))
            await self.settle()

    async def type(self, text):
        await self.pilot.press(*[NAMED.get(one, one) for one in text])
        await self.settle()

    async def touch(self, words, last=False):
        """Touch the first place on the screen where some words stand, or the last."""
        lines = list(enumerate(self.text().split("\n")))
        for y, line in reversed(lines) if last else lines:
            if (x := line.find(words)) >= 0:
                await self.pilot.click(offset=(x + len(words) - len(words.lstrip()), y))
                await self.settle()
                return
        raise AssertionError(f"no {words!r} on the screen:\n{self.text()}")

    async def tap(self, *words):
        """Touch figures and words on the pad, one after the other; only what can be seen can be touched."""
        for word in words:
            pad = self.app.screen.query_one("#pad")
            assert pad.display, f"no pad to touch {word!r} on:\n{self.text()}"
            touches = placed(pad.part, pad.size.width)
            x, y = next((x, y) for x, y, types, written in touches if word in (types, written))
            assert y < pad.size.height, f"{word!r} is not on the pad as shown:\n{self.text()}"
            await self.pilot.click(offset=(pad.region.x + x + 1, pad.region.y + y))
            await self.settle()

    def text(self):
        return shown(self.app).replace("\N{NO-BREAK SPACE}", " ")

    def flat(self):
        """The screen in one line, for sentences that are broken over several."""
        return " ".join(self.text().split())

    @property
    def place(self):
        return self.app.screen.name

    @property
    def view(self):
        return self.app.screen.view

    def logs(self):
        return sorted((self.folder / "logs").glob("*.toml")) if (self.folder / "logs").is_dir() else []


def in_a_room(**options):
    """Run a test in a room of its own; `options` are those of `Room`."""

    def wrap(test):
        @functools.wraps(test)
        def run(tmp_path):
            async def inside():
                room = Room(tmp_path, **options)
                async with room.app.run_test(size=room.size) as pilot:
                    room.pilot = pilot
                    await room.settle()
                    await test(room)
                room.app.close_day()

            asyncio.run(inside())

        del run.__wrapped__
        return run

    return wrap
