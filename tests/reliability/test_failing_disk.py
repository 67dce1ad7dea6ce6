"""Every call to the disk fails in every way, once, for good, two at a time: what is said of entries is so."""

import errno
import os
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from reliability.days import PLAIN, QUICK, START

from dyesession.clock import SteppingClock
from dyesession.errors import UserError
from dyesession.session import log, log_writer
from dyesession.session.log import LogWriter, NameTaken, NotSaved, Unsure, create_log, open_log, read_log
from dyesession.storage.faulty import Fault, FaultyStorage

CODES = (errno.EIO, errno.ENOSPC, errno.EDQUOT, errno.EROFS, errno.EFBIG, errno.EACCES)
FAULTS = (
    *(Fault("before", code) for code in CODES),
    *(Fault("after", code) for code in (errno.EIO, errno.ENOSPC, errno.EPERM)),
    *(Fault("part", code, share) for code in (0, errno.ENOSPC) for share in (0.1, 0.5, 0.9)),
    Fault("part", errno.EIO, 0.5),
)
TORN = b"\n[[event]]\nn = 99\nmass_g = 12"


@dataclass
class Outcome:
    """What the program was told of each entry, and where the log ended up."""

    saved: list[str] = field(default_factory=list)
    unsure: list[str] = field(default_factory=list)
    refused: list[str] = field(default_factory=list)
    path: Path | None = None
    torn_in: Path | None = None
    unclear: list[str] = field(default_factory=list)

    def note(self, error: Exception) -> None:
        """Keep a message that does not say how things stand, or is no single sentence."""
        said = str(error)
        clear = {
            NotSaved: "is not saved" in said or said.startswith("Not saved"),
            Unsure: "may or may not be saved" in said,
        }.get(type(error), "cannot be" in said or "moved or replaced" in said)
        if not clear or "\n" in said or ". " in said:
            self.unclear.append(said)


def live(storage: FaultyStorage, folder: Path) -> Outcome:
    """A day on a failing disk: begin, save, close, a torn end, reopen, save; each thing tried twice."""
    told, clock = Outcome(), SteppingClock(START)
    writer = begin(storage, folder, told)
    if writer is None:
        return told
    for text in ("one", "two", "three"):
        writer = save(writer, clock, text, told, folder)
    writer.close()
    told.path = writer.path
    with open(writer.path, "ab") as file:
        file.write(TORN)
    told.torn_in = writer.path.parent
    again = reopen(storage, writer.path, told)
    if again is not None:
        for text in ("four", "five"):
            again = save(again, clock, text, told, folder)
        again.close()
        told.path = again.path
    return told


def begin(storage: FaultyStorage, folder: Path, told: Outcome) -> LogWriter | None:
    for name in (PLAIN.name, f"{PLAIN.name}-b"):
        try:
            return create_log(storage, folder / "logs", name, PLAIN.header)
        except NotSaved as error:
            told.note(error)
        except NameTaken:
            continue  # a half-made log of ours that could not be removed: nothing in it counts
    return None


def reopen(storage: FaultyStorage, path: Path, told: Outcome) -> LogWriter | None:
    for _ in range(2):
        try:
            return open_log(storage, path)
        except UserError as error:
            told.note(error)
    return None


def save(writer: LogWriter, clock: SteppingClock, text: str, told: Outcome, folder: Path) -> LogWriter:
    """Save one entry, trying again or rescuing as the error tells; the writer to go on with."""
    doubtful = False
    for _ in range(2):
        try:
            writer.append("noted", clock.advance(1), {"text": text})
            told.saved.append(text)
            return writer
        except NotSaved as error:
            told.note(error)
        except Unsure as error:
            told.note(error)
            doubtful = True
            break
    if not doubtful:
        told.refused.append(text)
        return writer
    for place in ("stick", "elsewhere"):
        try:
            rescued = writer.rescue(folder / place)
        except NotSaved as error:
            told.note(error)
        else:
            told.saved.append(text)  # a rescue holds the doubtful entry: it is saved now
            return rescued
    if text not in told.unsure:
        told.unsure.append(text)
    return writer


def violations(folder: Path, told: Outcome) -> Iterator[str]:
    """What is not as the program said, once the disk is well again."""
    yield from (f"unclear: {one}" for one in told.unclear)
    if told.path is None:
        if told.saved:
            yield "lost"
        return
    if told.torn_in and not any(TORN in one.read_bytes() for one in told.torn_in.iterdir()):
        yield "torn end lost"
    before = [one.fields["text"] for one in read_log(QUICK, told.path).entries]
    with open_log(QUICK, told.path) as writer:
        found = [one.fields["text"] for one in writer.contents.entries]
        writer.append("noted", SteppingClock(START).now(), {"text": "well again"})
    if found != before:
        yield "changed by opening"
    if [one for one in found if one in told.saved] != told.saved:
        yield "lost"
    if not set(found) <= {*told.saved, *told.unsure}:
        yield "found, though called not saved"
    if not read_log(QUICK, told.path).whole:
        yield "not whole again"


def trial(folder: Path, faults: Mapping[int, Fault]) -> tuple[list[str], int]:
    """One day with faults; what was violated, and how many descriptors were left open."""
    folder.mkdir()
    open_before = len(os.listdir("/proc/self/fd"))
    told = live(FaultyStorage(QUICK, dict(faults)), folder)
    left_open = len(os.listdir("/proc/self/fd")) - open_before
    return list(violations(folder, told)), left_open


def calls_of_a_day(folder: Path) -> int:
    folder.mkdir()
    storage = FaultyStorage(QUICK)
    told = live(storage, folder)
    assert told.saved == ["one", "two", "three", "four", "five"] and not told.unclear
    return len(storage.calls)


def every_fault(folder: Path, step: int = 1) -> Counter[str]:
    """Count the violations over every call and every way to fail, for once and for good."""
    counts: Counter[str] = Counter()
    calls = calls_of_a_day(folder / "well")
    for number in range(1, calls + 1, step):
        for kind, fault in enumerate(FAULTS):
            for lasting in (False, True):
                one = Fault(fault.when, fault.code, fault.share, lasting=lasting)
                wrong, left_open = trial(folder / f"{number}-{kind}-{lasting}", {number: one})
                counts.update(wrong)
                counts["left open"] += left_open
                counts["tried"] += 1
    return counts


def test_every_call_failing_in_every_way_never_makes_the_program_say_what_is_not_so(tmp_path: Path) -> None:
    counts = every_fault(tmp_path)
    assert counts.pop("tried") > 1000
    assert +counts == Counter()


def test_two_faults_close_together_never_do_either(tmp_path: Path) -> None:
    calls, counts = calls_of_a_day(tmp_path / "well"), Counter[str]()
    pairs = [(errno.ENOSPC, errno.EIO), (errno.EIO, errno.ENOSPC), (errno.EDQUOT, errno.EROFS)]
    for number in range(1, calls + 1):
        for later in (1, 2, 3, 5):
            for first, second in pairs:
                faults = {number: Fault("part", first), number + later: Fault("before", second)}
                wrong, left_open = trial(tmp_path / f"{number}-{later}-{first}-{second}", faults)
                counts.update(wrong)
                counts["left open"] += left_open
                counts["tried"] += 1
    assert counts.pop("tried") > 500
    assert +counts == Counter()


def test_an_fsync_that_failed_is_never_tried_again_on_the_same_file(tmp_path: Path) -> None:
    clock = SteppingClock(START)
    well = FaultyStorage(QUICK)
    with create_log(well, tmp_path, "well", {}) as writer:
        writer.append("noted", clock.now(), {})
    fsync = len(well.calls) - 1
    assert well.calls[fsync - 1].name == "fsync"
    storage = FaultyStorage(QUICK, {fsync: Fault("before", errno.EIO)})
    writer = create_log(storage, tmp_path, "ill", {})
    for _ in range(3):
        with pytest.raises(Unsure):
            writer.append("noted", clock.now(), {})
    assert writer.state == "unsure"
    assert len(storage.calls) == fsync
    rescued = writer.rescue(tmp_path)
    assert rescued.path.name == "ill-rescue-1.toml"
    assert rescued.append("noted", clock.now(), {}).n == 2
    assert rescued.path.read_bytes().startswith((tmp_path / "ill.toml").read_bytes())
    rescued.close()


def test_a_rescue_of_ten_thousand_entries_is_whole(tmp_path: Path) -> None:
    clock = SteppingClock(START)
    with create_log(QUICK, tmp_path, "long", {}) as writer:
        for number in range(10_000):
            writer.append("noted", clock.advance(1), {"number": number})
        with writer.rescue(tmp_path / "stick") as rescued:
            assert rescued.path.read_bytes() == writer.path.read_bytes()
            assert rescued.append("noted", clock.now(), {}).n == 10_001
    assert read_log(QUICK, rescued.path).whole


# --- sabotage twins


def test_sabotage_calling_an_unknown_outcome_not_saved_is_caught(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def sure(self: LogWriter, n: int, why: str, cause: OSError | None = None) -> None:
        self.state = "open"
        raise NotSaved(f"Entry {n} is not saved: {why}")

    monkeypatch.setattr(log_writer.LogWriter, "_raise_unsure", sure)
    assert every_fault(tmp_path, step=3)["found, though called not saved"] > 0


def test_sabotage_calling_a_failed_save_saved_is_caught(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    honest = LogWriter._write

    def deaf(self: LogWriter, n: int, block: bytes) -> None:
        try:
            honest(self, n, block)
        except (NotSaved, Unsure):
            self.state = "open"

    monkeypatch.setattr(LogWriter, "_write", deaf)
    monkeypatch.setattr(LogWriter, "_sync", lambda *_: None)
    assert every_fault(tmp_path, step=3)["lost"] > 0


def test_sabotage_cutting_before_setting_aside_is_caught(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from dyesession.session import log_recover

    def hasty(storage, fd, path, tail, whole_to):
        log_recover.cut_tail(storage, fd, whole_to)
        return log_recover.Recovered(len(tail), log_recover.keep_tail(storage, path, tail))

    monkeypatch.setattr(log, "recover", hasty)
    assert every_fault(tmp_path, step=2)["torn end lost"] > 0
