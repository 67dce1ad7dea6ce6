"""The power goes at any moment: in every state the disk may be left in, what was called saved is there."""

from collections import Counter
from pathlib import Path

import pytest
from reliability.days import PLAIN, QUICK, START
from reliability.oracle import look
from reliability.power import Promise, after_power_cut

from dyesession.clock import SteppingClock
from dyesession.session import log, log_recover
from dyesession.session.log import LogWriter, create_log, open_log
from dyesession.storage.faulty import FaultyStorage

TORN = b"\n[[event]]\nn = 99\nmass_g = 12"


class NoFsync(FaultyStorage):
    """Sabotage: nothing is waited for."""

    def fsync(self, fd: int) -> None:
        """Not even asked for."""


class NoFolderFsync(FaultyStorage):
    """Sabotage: new names are not waited for."""

    def fsync_folder(self, folder: Path) -> None:
        """Not even asked for."""


def a_day(storage: FaultyStorage, folder: Path, short: bool = False) -> tuple[Path, list[Promise]]:
    """Begin, save, tear the end, reopen, save, rescue, save; what was promised, and when."""
    clock, promises = SteppingClock(START), [Promise(0, "")]

    def save(writer: LogWriter, text: str) -> None:
        writer.append("noted", clock.advance(1), {"text": text})
        promises.append(Promise(len(storage.calls), text))

    with create_log(storage, folder, PLAIN.name, PLAIN.header) as writer:
        for text in ("one", "two", "three"):
            save(writer, text)
    if short:
        return writer.path, promises
    tear(storage, writer.path)
    promises.append(Promise(len(storage.calls), "torn"))
    with open_log(storage, writer.path) as again:
        save(again, "four")
        with again.rescue(folder) as rescued:
            save(rescued, "five")
    return writer.path, promises


def tear(storage: FaultyStorage, path: Path) -> None:
    """A save cut short by an earlier crash, all of it on the medium."""
    fd = storage.open_append(path)
    storage.write(fd, TORN)
    FaultyStorage.fsync(storage, fd)
    storage.close(fd)


def lost(storage: FaultyStorage, folder: Path, short: bool = False) -> Counter[str]:
    """How many states the disk may be left in, and in how many of them something promised is gone."""
    _, promises = a_day(storage, folder, short)
    counts: Counter[str] = Counter()
    for made, state in after_power_cut(storage.calls):
        counts["states"] += 1
        logs = [content for path, content in state.items() if path.suffix == ".toml"]
        seen = [look(content) for content in logs]
        found = [{one.fields["text"] for one in scan.entries if not one.trouble} for scan in seen if scan]
        everything = set().union(*found) | {"torn" for one in state.values() if TORN in one}
        wanted = {one.text for one in promises if one.after_calls <= made and one.text}
        counts["lost"] += bool(wanted - everything)
        counts["torn end lost"] += "torn" in wanted - everything
        counts["invented"] += not set().union(*found) <= {"one", "two", "three", "four", "five"}
        counts["no log"] += bool(wanted) and not logs
    return counts


def test_in_every_state_a_power_cut_may_leave_what_was_saved_is_there(tmp_path: Path) -> None:
    counts = lost(FaultyStorage(QUICK), tmp_path)
    assert counts["states"] > 500
    assert counts["lost"] == counts["invented"] == counts["no log"] == 0


def test_sabotage_without_fsync_is_caught(tmp_path: Path) -> None:
    assert lost(NoFsync(QUICK), tmp_path, short=True)["lost"] > 20


def test_sabotage_without_the_folders_fsync_is_caught(tmp_path: Path) -> None:
    assert lost(NoFolderFsync(QUICK), tmp_path, short=True)["no log"] > 20


def test_sabotage_cutting_before_setting_aside_is_caught(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def hasty(storage, fd, path, tail, whole_to):
        log_recover.cut_tail(storage, fd, whole_to)
        return log_recover.Recovered(len(tail), log_recover.keep_tail(storage, path, tail))

    monkeypatch.setattr(log, "recover", hasty)
    assert lost(FaultyStorage(QUICK), tmp_path)["torn end lost"] > 0


def test_an_entry_is_called_saved_only_after_its_fsync_and_a_log_only_after_its_folders(
    tmp_path: Path,
) -> None:
    storage = FaultyStorage(QUICK)
    _, promises = a_day(storage, tmp_path)
    names = [call.name for call in storage.calls]
    assert names[:7] == ["create_exclusive", "lock", "write", "fsync", "link", "unlink", "fsync_folder"]
    for promise in promises[1:4]:
        assert names[promise.after_calls - 5 : promise.after_calls] == [
            "same_file",
            "size",
            "write",
            "size",
            "fsync",
        ]
