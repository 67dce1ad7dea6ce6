"""A day of 24 hours and 10,000 entries at the Stove, on a stepping clock: how much memory it comes to need.

`python tests/bench/long_day.py` runs it in a process of its own and prints what was found as JSON.
"""

import asyncio
import gc
import json
import os
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from itertools import cycle
from pathlib import Path

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2])]

from bench.at_the_log import UNAWAITED
from bench.four_pots import POTS, with_four_clocks
from days import MORNING

from dyesession.clock import SteppingClock
from dyesession.session import events as e
from dyesession.ui.app import DyeApp

HOURS, ENTRIES = 24, 10_000
MINUTE_LOOKS = 60
QUIET_LOOKS = 4_000  # of 24 hours, 21 seconds apart: a look costs the same whatever passed since the last
HOLD_MIN = 60.0 * 2 * HOURS  # no clock ends: four are running all day


@dataclass(frozen=True)
class LongDay:
    """Megabytes of the process after its first minute, after 24 hours in which nothing was done, and with a log of
    so many entries behind them; so many of those the dyer wrote, the others are what the account had to tell.
    """

    minute_mb: float
    quiet_mb: float
    end_mb: float
    entries: int
    own: int


def long_day(entries: int = ENTRIES) -> LongDay:
    """The day in a process of its own: nothing else's memory is counted."""
    command = [sys.executable, str(Path(__file__)), str(entries)]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    return LongDay(**json.loads(done.stdout.splitlines()[-1]))


async def _lived_through(entries: int) -> LongDay:
    clock = SteppingClock(MORNING)
    with tempfile.TemporaryDirectory() as folder:
        session = with_four_clocks(Path(folder), clock, UNAWAITED, HOLD_MIN)
        app = DyeApp(session)
        async with app.run_test(size=(80, 24)) as pilot:
            await pilot.press("escape")
            for _ in range(MINUTE_LOOKS):
                await _look(app, clock, 1.0)
            minute_mb = _memory_mb()
            for _ in range(QUIET_LOOKS):
                await _look(app, clock, HOURS * 3600 / QUIET_LOOKS)
            quiet_mb, own = _memory_mb(), 0
            for pot in cycle(POTS):
                if len(session.snapshot.entries) >= entries:
                    break
                own += 1
                session.do(_written(own, pot)).result(60)
                await _look(app, clock, 5.0)
            found = LongDay(minute_mb, quiet_mb, _memory_mb(), len(session.snapshot.entries), own)
            assert all(one.countdown for one in session.snapshot.state.steps), "four clocks are still running"
        session.close()
    return found


def _written(number: int, pot: str) -> e.Event:
    """Nine temperatures, and a note."""
    return e.Noted(f"note {number}") if number % 10 == 9 else e.Read(pot, temperature_c=60 + number % 30)


async def _look(app: DyeApp, clock: SteppingClock, seconds: float) -> None:
    """One look at the clock, and the painting that follows it."""
    clock.advance(seconds)
    app.look()
    for _ in range(3):
        await asyncio.sleep(0)


def _memory_mb() -> float:
    gc.collect()
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 1e6


if __name__ == "__main__":
    lived = asyncio.run(_lived_through(int(sys.argv[1]) if sys.argv[1:] else ENTRIES))
    print(json.dumps(vars(lived)))
