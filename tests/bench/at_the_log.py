"""Our own work on the log beside plain `tomllib`, in one run: writing one entry down, and opening a long day."""

import tempfile
import time
import tomllib
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import fmean

from bench.bench_daybook import a_log, blocks_of, seconds, written

from dyesession.care import Household
from dyesession.session import events as e
from dyesession.session import log
from dyesession.session.engine import Refused, decide
from dyesession.session.fold import Entry, apply, fold, opening_state
from dyesession.session.opening import LoggedDay, read_day
from dyesession.session.seal_split import read_head, split_blocks
from dyesession.session.state import State
from dyesession.storage import DISK, DiskStorage

LONG_DAY = 10_000  # entries
OWN_KEYS = ("format", "session", "seal")  # of a log's head: the writer puts them there itself


class UnawaitedDisk(DiskStorage):
    """A disk that is not waited for: the rows are about our own work."""

    def fsync(self, fd: int) -> None:
        """Not waited for."""

    def fsync_folder(self, folder: Path) -> None:
        """Not waited for."""


UNAWAITED = UnawaitedDisk()


@dataclass(frozen=True)
class Beside:
    """Seconds of ours and of `tomllib` for the same entries, and how many entries."""

    ours_s: float
    tomllib_s: float
    entries: int

    @property
    def times(self) -> float:
        """How many times as long ours takes."""
        return self.ours_s / self.tomllib_s


def one_event(rounds: int) -> Beside:
    """Decide, seal, parse back, write and apply each fact of a rehearsed day; each in its best round."""
    with tempfile.TemporaryDirectory() as named:
        path = Path(named) / "day.toml"
        path.write_bytes(a_log(Path(named)))
        day, data = read_day(DISK, path), path.read_bytes()
        texts = [data[one.start : one.end].decode() for one in split_blocks(data, read_head(data).end)]
        runs = [_written_again(day, texts, Path(named) / str(n)) for n in range(rounds)]
    ours, theirs = (fmean(map(min, zip(*taken, strict=True))) for taken in zip(*runs, strict=True))
    assert len(runs[0][0]) > len(texts) / 2, "most facts of the day must be decided again"
    return Beside(ours, theirs, len(runs[0][0]))


def _written_again(day: LoggedDay, texts: Sequence[str], folder: Path) -> tuple[list[float], list[float]]:
    """The same day into a new log; what the program itself notices is applied, and not timed."""
    folder.mkdir()
    head = {key: value for key, value in day.header.items() if key not in OWN_KEYS}
    state = opening_state(day.plan)
    ours: list[float] = []
    theirs: list[float] = []
    with log.create_log(UNAWAITED, folder, day.name, head) as writer:
        for entry, text in zip(day.entries, texts, strict=True):
            if entry.event.kind not in e.PROGRAM_KINDS:
                taken_s = _taken_down(writer, state, entry)
                if taken_s is not None:
                    ours.append(taken_s)
                    theirs.append(_parsed(text))
            state = apply(state, entry)
    return ours, theirs


def _taken_down(writer: log.LogWriter, state: State, entry: Entry) -> float | None:
    """Seconds for one fact, or None where it is refused a second time."""
    start = time.perf_counter()
    try:
        event = decide(state, entry.event, entry.instant, Household())
    except Refused:
        return None
    writer.append(event.kind, entry.instant, e.event_fields(event), entry.happened)
    apply(state, Entry(entry.n, entry.instant, event, entry.happened))
    return time.perf_counter() - start


def _parsed(text: str) -> float:
    start = time.perf_counter()
    tomllib.loads(text)
    return time.perf_counter() - start


def long_day(rounds: int) -> Beside:
    """Open a log of 10,000 entries and fold it to a state, turn about with `tomllib`; the best of some rounds."""
    with tempfile.TemporaryDirectory() as named:
        head, entries = blocks_of(a_log(Path(named)), LONG_DAY)
        path = Path(named) / "2026-03-14-long-day.toml"
        path.write_bytes(written(head, entries, path.stem))

        def open_it() -> None:
            day = read_day(DISK, path)
            state = fold(opening_state(day.plan), day.entries, day.opened)
            assert len(day.entries) == LONG_DAY == state.n and not day.notes

        def parse_it() -> None:
            with open(path, "rb") as file:
                tomllib.load(file)

        pairs = [(seconds(open_it, 1), seconds(parse_it, 1)) for _ in range(rounds)]
    return Beside(min(ours for ours, _ in pairs), min(theirs for _, theirs in pairs), LONG_DAY)
