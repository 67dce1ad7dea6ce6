"""When the disk will not have it: said at once, nothing lost, saved again or elsewhere when asked."""

import errno
import io
from pathlib import Path

import pytest
from line.lined import LinedDay, typed_after

from dyesession.line import terminal
from dyesession.session import events as e
from dyesession.session.log import check_log
from dyesession.storage import DiskStorage


class FillableDisk(DiskStorage):
    """A disk that takes nothing more while it is full."""

    full = False

    def write(self, fd: int, data: bytes) -> int:
        if self.full:
            raise OSError(errno.ENOSPC, "no space left on device")
        return super().write(fd, data)


def test_a_full_disk_is_said_and_save_tries_again(tmp_path: Path) -> None:
    storage = FillableDisk()
    day = LinedDay(tmp_path, storage=storage)
    day.type(["note before"])
    storage.full = True
    out = day.type(["note while the disk was full"])
    assert any(
        line.startswith("NOT SAVED 1 entries are in memory only: ") and "“save”" in line for line in out
    )
    storage.full = False
    day.type(["save", "note after"])
    assert day.session.snapshot.saving == "saved"
    notes = [one.event.text for one in day.session.snapshot.entries if isinstance(one.event, e.Noted)]
    assert notes == ["before", "while the disk was full", "after"]
    day.session.close()
    assert check_log(day.path) == []


def test_the_day_can_go_on_in_another_folder(tmp_path: Path) -> None:
    day = LinedDay(tmp_path / "here")
    day.type(["note before"])
    out = day.type([f"rescue {tmp_path / 'there'}", "note after"])
    path = Path(day.session.snapshot.path)
    assert path.parent == tmp_path / "there"
    assert any(line == f"The day goes on in {path}" for line in out)
    assert typed_after(out, "note after")[0].endswith("note: after.")
    day.session.close()
    assert check_log(path) == []


def test_a_script_is_printed_as_it_is_read(monkeypatch: pytest.MonkeyPatch) -> None:
    printed: list[str] = []
    monkeypatch.setattr("sys.stdin", io.StringIO("begin scour\n\n"))
    read = terminal.reader(printed.append)
    assert [read("> "), read("> ")] == ["begin scour\n", "\n"]
    with pytest.raises(EOFError):
        read("> ")
    assert printed == ["> begin scour", "> "]
