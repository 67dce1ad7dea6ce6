"""Kill a writer and see what is left. A program of its own, so that forking is safe; prints counts as JSON.

usage: killing.py random FOLDER KILLS | every FOLDER | lazy FOLDER KILLS
"""

import json
import os
import random
import signal
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

from reliability.days import PLAIN, START

from dyesession.clock import SteppingClock
from dyesession.errors import UserError
from dyesession.session.log import LogWriter, create_log, open_log, read_log
from dyesession.storage import DISK, DiskStorage, Storage
from dyesession.storage.faulty import Fault, FaultyStorage

LONGEST_LIFE_S = 0.010
KILLS_TO_A_LOG = 25
TORN = b"\n[[event]]\nn = 99\nkind = "

Told = list[tuple[str, int]]


class LazyDisk(DiskStorage):
    """Sabotage: keeps every few writes in memory and says they are written."""

    def __init__(self) -> None:
        self._waiting = b""

    def write(self, fd: int, data: bytes) -> int:
        """Mostly only promised."""
        self._waiting += data
        if len(self._waiting) > 500:
            super().write(fd, self._waiting)
            self._waiting = b""
        return len(data)

    def size(self, fd: int) -> int:
        """The size it would have."""
        return super().size(fd) + len(self._waiting)


def in_child(work: Callable[[Callable[[str, int], None]], None], life_s: float | None) -> Told:
    """Run `work` in a child, kill it after `life_s` (None: it ends or dies by itself); what it told."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reading)
        try:
            work(lambda what, number: os.write(writing, f"{what} {number}\n".encode()) and None)
        finally:
            os._exit(0)
    os.close(writing)
    if life_s is not None:
        time.sleep(life_s)
        os.kill(child, signal.SIGKILL)
    _, status = os.waitpid(child, 0)
    with os.fdopen(reading) as pipe:
        told = [(line.split()[0], int(line.split()[1])) for line in pipe]
    return [*told, ("killed", 0)] if os.WIFSIGNALED(status) else told


def append_for_ever(storage: Storage, path: Path, told: Told) -> Callable[[Callable[[str, int], None]], None]:
    tried = [number for what, number in told if what == "try"]

    def work(tell: Callable[[str, int], None]) -> None:
        clock = SteppingClock(START)
        with open_log(storage, path) as writer:
            for number in range(max(tried, default=0) + 1, 1 << 30):
                tell("try", number)
                writer.append("noted", clock.advance(1), {"number": number})
                tell("saved", number)

    return work


def verdict(path: Path, told: Told) -> Iterator[str]:
    """Which promises the log at `path` breaks: saved <= found <= tried, in order."""
    tried = [number for what, number in told if what == "try"]
    saved = {number for what, number in told if what == "saved"}
    found = [entry.fields["number"] for entry in read_log(DISK, path).entries]
    if not saved <= set(found):
        yield "lost"
    if not set(found) <= set(tried) or found != sorted(found):
        yield "invented"
    yield from ["saved"] * len(saved)
    yield from ["found though not acknowledged"] * (len(found) - len(saved))


def kill_at_random(folder: Path, kills: int, storage: Storage) -> Counter[str]:
    """Kill a writer again and again, each going on where the last was killed."""
    counts: Counter[str] = Counter()
    dice = random.Random(kills)
    for first in range(0, kills, KILLS_TO_A_LOG):
        with create_log(DISK, folder, f"{PLAIN.name}-{first}", PLAIN.header) as writer:
            path = writer.path
        told: Told = []
        for _ in range(min(KILLS_TO_A_LOG, kills - first)):
            told += in_child(append_for_ever(storage, path, told), dice.uniform(0, LONGEST_LIFE_S))
            counts["kills"] += told[-1] == ("killed", 0)
            counts.update(one for one in verdict(path, told) if one in ("lost", "invented"))
        counts.update(one for one in verdict(path, told) if one not in ("lost", "invented"))
    return counts


# --- a kill at every call to the disk


def whole_day(
    storage: FaultyStorage, folder: Path, name: str
) -> Callable[[Callable[[str, int], None]], None]:
    """Begin a log, save, close, tear its end as a crash would, reopen, save."""

    def work(tell: Callable[[str, int], None]) -> None:
        clock = SteppingClock(START)
        with create_log(storage, folder, name, PLAIN.header) as writer:
            save(writer, clock, [1, 2, 3], tell)
        with open(writer.path, "ab") as file:
            file.write(TORN)
        tell("torn", 0)
        with open_log(storage, writer.path) as again:
            save(again, clock, [4, 5], tell)
        tell("calls", len(storage.calls))

    return work


def save(
    writer: LogWriter, clock: SteppingClock, numbers: list[int], tell: Callable[[str, int], None]
) -> None:
    for number in numbers:
        tell("try", number)
        writer.append("noted", clock.advance(1), {"number": number})
        tell("saved", number)


def kill_at_every_call(folder: Path) -> Counter[str]:
    """Kill a writer before, after and in the middle of each of its calls to the disk."""
    counts: Counter[str] = Counter()
    told = in_child(whole_day(FaultyStorage(DISK), folder, "whole"), None)
    calls = dict(told)["calls"]
    for number in range(1, calls + 1):
        for when in ("before", "part", "after"):
            name = f"killed-{number}-{when}"
            storage = FaultyStorage(DISK, {number: Fault(when, kill=True)})
            told = in_child(whole_day(storage, folder, name), None)
            counts["kills"] += ("killed", 0) in told
            counts.update(after_kill(folder, name, told))
    counts["calls"] = calls
    return counts


def after_kill(folder: Path, name: str, told: Told) -> Iterator[str]:
    """What is broken after a kill, and whether the next start gets along."""
    path = folder / f"{name}.toml"
    if not path.exists():
        yield from ["lost"] if ("saved", 1) in told else ["never begun"]
        return
    if ("torn", 0) in told:
        pieces = [one.read_bytes() for one in folder.glob(f"{name}.*")]
        if not any(TORN in one for one in pieces):
            yield "torn end lost"
    yield from verdict(path, told)
    try:
        with open_log(DISK, path) as writer:
            writer.append("noted", SteppingClock(START).now(), {"number": 6})
    except UserError:
        yield "cannot go on"
    yield from (f"after: {one}" for one in verdict(path, [*told, ("try", 6), ("saved", 6)]) if one == "lost")


def main(what: str, folder: str, *kills: str) -> None:
    """Run one campaign."""
    if what == "every":
        counts = kill_at_every_call(Path(folder))
    else:
        counts = kill_at_random(Path(folder), int(kills[0]), LazyDisk() if what == "lazy" else DISK)
    print(json.dumps(counts))


if __name__ == "__main__":
    main(*sys.argv[1:])
