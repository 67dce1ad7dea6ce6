"""A disk that fails under the Stove: said at once on the screen, and one key writes the whole day elsewhere."""

import errno
import os
from pathlib import Path
from typing import Any

import pytest
from ui.at_places import NAMED
from ui.test_stove_app import Stove, at_the_stove, shown

from dyesession.session import events as e
from dyesession.session.log import check_log
from dyesession.storage import DISK, DiskStorage

NOTE = "one that matters"


class IllDisk(DiskStorage):
    """A disk on which some folders take nothing more; `call` is what fails there."""

    def __init__(self, call: str, code: int) -> None:
        self.call, self.code = call, code
        self.ill: list[Path] = []
        self.paths: dict[int, Path] = {}

    def create_exclusive(self, path: Path) -> int:
        fd = super().create_exclusive(path)
        self.paths[fd] = path
        return fd

    def write(self, fd: int, data: bytes) -> int:
        self._fail_if_ill("write", fd)
        return super().write(fd, data)

    def fsync(self, fd: int) -> None:
        self._fail_if_ill("fsync", fd)
        super().fsync(fd)

    def _fail_if_ill(self, call: str, fd: int) -> None:
        path = self.paths.get(fd)
        if call == self.call and path is not None and any(folder in path.parents for folder in self.ill):
            raise OSError(self.code, os.strerror(self.code))


async def note(stove: Stove, pilot: Any, text: str) -> None:
    await stove.press(pilot, "n", *(NAMED.get(one, one) for one in text), "enter")


async def save_in(stove: Stove, pilot: Any, folder: Path) -> None:
    """The rescue key, and a folder typed."""
    await stove.press(pilot, "greater_than_sign")
    await pilot.press(*(NAMED.get(one, one) for one in str(folder)))
    await stove.press(pilot, "enter")


def flat(stove: Stove) -> str:
    return " ".join(shown(stove.app).replace("\N{NO-BREAK SPACE}", " ").split())


def notes(stove: Stove) -> list[str]:
    return [one.event.text for one in stove.session.snapshot.entries if isinstance(one.event, e.Noted)]


@pytest.mark.parametrize(
    ("call", "code", "said", "words"),
    [
        ("write", errno.ENOSPC, "not saved", "because the disk is full"),
        ("fsync", errno.EIO, "unsure", "may or may not be saved"),
    ],
)
def test_a_failing_disk_is_said_and_the_day_is_written_elsewhere(
    tmp_path: Path, call: str, code: int, said: str, words: str
) -> None:
    @at_the_stove
    async def run(folder: Path) -> None:
        disk = IllDisk(call, code)
        stove = Stove(folder / "here", storage=disk)
        async with stove.app.run_test(size=(80, 24)) as pilot:
            await note(stove, pilot, "before")
            here = Path(stove.session.snapshot.path)
            disk.ill = [folder / "here", folder / "stick"]
            await note(stove, pilot, NOTE)
            assert stove.session.snapshot.saving == said
            assert "NOT SAVED" in flat(stove) and words in flat(stove)

            await save_in(stove, pilot, folder / "stick")  # the second disk is no better
            assert stove.session.snapshot.path == str(here) and "NOT SAVED" in flat(stove)
            assert "cannot be made, because the disk" in flat(stove)
            assert not list((folder / "stick").glob("*.toml"))

            await stove.press(pilot, "escape", "escape")
            await save_in(stove, pilot, Path("stick"))  # from where? Only the program's own folder would know
            assert "is no whole path" in flat(stove) and stove.session.snapshot.path == str(here)
            await stove.press(pilot, "escape", "escape")
            await save_in(stove, pilot, folder / "there")
            there = Path(stove.session.snapshot.path)
            assert there.parent == folder / "there" and "The day goes on in" in flat(stove)
            assert "NOT SAVED" not in flat(stove)
            await note(stove, pilot, "after")
            assert notes(stove) == ["before", NOTE, "after"]
        stove.session.close()
        assert check_log(there) == []
        assert there.read_bytes().startswith(here.read_bytes()) and NOTE in there.read_text("utf-8")

    run(tmp_path)


@at_the_stove
async def test_a_day_that_saves_well_says_nothing_of_it(tmp_path: Path) -> None:
    stove = Stove(tmp_path, storage=DISK)
    async with stove.app.run_test(size=(80, 24)) as pilot:
        await note(stove, pilot, NOTE)
        assert stove.session.snapshot.saving == "saved" and "NOT SAVED" not in flat(stove)
    stove.session.close()
