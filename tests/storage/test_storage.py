"""What the disk room promises: private files, whole replacements, no pipes waited for, one writer."""

import errno
import os
import stat
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from dyesession.storage import (
    DISK,
    DiskStorage,
    NotAPlainFile,
    TooLarge,
    because,
    make_folder,
    read_file,
    replace_file,
    shown,
    write_all,
)
from dyesession.storage.faulty import Call, Fault, FaultyStorage


def mode(path: Path) -> int:
    return stat.S_IMODE(path.stat().st_mode)


def descriptors() -> int:
    return len(os.listdir("/proc/self/fd"))


@pytest.fixture(params=[0o000, 0o022, 0o077, 0o777])
def umask(request: pytest.FixtureRequest) -> Iterator[int]:
    before = os.umask(request.param)
    yield request.param
    os.umask(before)


@pytest.mark.usefixtures("umask")
def test_files_and_folders_are_the_owners_alone_under_any_umask(tmp_path: Path) -> None:
    folder = tmp_path / "workroom" / "logs"
    make_folder(DISK, folder)
    DISK.close(DISK.create_exclusive(folder / "new"))
    replace_file(DISK, folder / "kitchen.toml", b"format = 1\n")
    assert mode(folder) == mode(folder.parent) == 0o700
    assert mode(folder / "new") == mode(folder / "kitchen.toml") == 0o600


def test_an_existing_folder_keeps_its_own_rights(tmp_path: Path) -> None:
    tmp_path.chmod(0o755)
    make_folder(DISK, tmp_path)
    assert mode(tmp_path) == 0o755


def test_a_new_file_whose_rights_cannot_be_set_is_not_left_open(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_: int) -> None:
        raise PermissionError(errno.EPERM, "no")

    before = descriptors()
    monkeypatch.setattr(os, "fchmod", refused)
    with pytest.raises(PermissionError):
        DISK.create_exclusive(tmp_path / "log")
    assert descriptors() == before


def test_a_new_file_never_overwrites(tmp_path: Path) -> None:
    (tmp_path / "log").write_text("old")
    with pytest.raises(FileExistsError):
        DISK.create_exclusive(tmp_path / "log")
    assert (tmp_path / "log").read_text() == "old"


@pytest.mark.parametrize("opener", [DISK.open_append, DISK.open_read])
@pytest.mark.parametrize("kind", ["link", "pipe", "device", "folder", "name with nothing in it"])
def test_what_is_not_a_plain_file_is_refused_without_waiting(tmp_path: Path, opener, kind: str) -> None:
    path = tmp_path / "thing.toml"
    if kind == "link":
        (tmp_path / "real").write_text("x")
        path.symlink_to(tmp_path / "real")
    elif kind == "pipe":
        os.mkfifo(path)
    elif kind == "device":
        path = Path("/dev/null")
    elif kind == "folder":
        path.mkdir()
    else:
        path = Path("nul\0name")
    before = descriptors()
    with pytest.raises(NotAPlainFile, match="expected a plain file"):
        opener(path)
    assert descriptors() == before


def test_a_file_above_the_limit_is_refused_in_one_sentence(tmp_path: Path) -> None:
    (tmp_path / "big").write_bytes(b"x" * 1001)
    assert len(read_file(DISK, tmp_path / "big", 1001)) == 1001
    with pytest.raises(TooLarge, match=r"larger than 0\.001 MB"):
        read_file(DISK, tmp_path / "big", 1000)


def test_a_read_longer_than_one_chunk_is_whole(tmp_path: Path) -> None:
    data = os.urandom(2_500_000)
    (tmp_path / "big").write_bytes(data)
    assert read_file(DISK, tmp_path / "big", 3_000_000) == data


def test_descriptors_are_not_inherited_so_a_child_cannot_keep_the_lock(tmp_path: Path) -> None:
    fd = DISK.create_exclusive(tmp_path / "log")
    assert DISK.lock(fd)
    pipes = {"stdin": subprocess.PIPE, "stdout": subprocess.PIPE}
    child = subprocess.Popen([sys.executable, "-c", "input(1)"], close_fds=False, **pipes)
    assert child.stdout is not None and child.stdout.read(1) == b"1"  # the child is well under way
    DISK.close(fd)
    again = DISK.open_append(tmp_path / "log")
    assert DISK.lock(again)
    DISK.close(again)
    child.communicate(b"\n")


def test_the_second_writer_is_refused_and_told_who_holds_the_file(tmp_path: Path) -> None:
    first, second = DISK.create_exclusive(tmp_path / "log"), DISK.open_append(tmp_path / "log")
    assert DISK.holder(second) is None
    assert DISK.lock(first)
    assert not DISK.lock(second)
    assert DISK.holder(second) == os.getpid()
    DISK.close(first)
    assert DISK.lock(second)
    DISK.close(second)


def test_where_the_system_keeps_no_table_of_locks_nobody_is_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("dyesession.storage.disk.LOCK_TABLE", tmp_path / "none")
    fd = DISK.create_exclusive(tmp_path / "log")
    assert DISK.holder(fd) is None
    DISK.close(fd)


def test_a_replaced_or_removed_file_is_noticed(tmp_path: Path) -> None:
    fd = DISK.create_exclusive(tmp_path / "log")
    assert DISK.same_file(fd, tmp_path / "log")
    replace_file(DISK, tmp_path / "log", b"another")
    assert not DISK.same_file(fd, tmp_path / "log")
    DISK.unlink(tmp_path / "log")
    assert not DISK.same_file(fd, tmp_path / "log")
    DISK.close(fd)


def test_adding_always_lands_at_the_end(tmp_path: Path) -> None:
    (tmp_path / "log").write_bytes(b"one ")
    fd = DISK.open_append(tmp_path / "log")
    DISK.write(fd, b"two ")
    DISK.truncate(fd, 4)
    DISK.write(fd, b"three")
    assert (DISK.size(fd), DISK.read(fd, 100)) == (9, b"one three")
    DISK.close(fd)


def test_a_second_name_never_overwrites_and_a_folder_lists_in_order(tmp_path: Path) -> None:
    for name in ("b", "a"):
        (tmp_path / name).write_text(name)
    with pytest.raises(FileExistsError):
        DISK.link(tmp_path / "a", tmp_path / "b")
    DISK.link(tmp_path / "a", tmp_path / "c")
    assert DISK.list_folder(tmp_path) == ("a", "b", "c")
    assert (tmp_path / "c").read_text() == "a"


# --- replacing a file, with every call failing in every way

ERRORS = [errno.EIO, errno.ENOSPC, errno.EROFS, errno.EDQUOT]
FAULTS = [
    *[Fault("before", code) for code in ERRORS],
    *[Fault("after", code) for code in ERRORS],
    *[Fault("part", code, share) for code in (0, errno.ENOSPC) for share in (0.1, 0.9)],
]


def test_a_replacement_that_fails_leaves_one_whole_file_and_no_litter(tmp_path: Path) -> None:
    path, old, new = tmp_path / "kitchen.toml", b"old " * 50, b"new " * 60
    recorder = FaultyStorage(DISK)
    replace_file(DISK, path, old)
    replace_file(recorder, path, old)
    failed = 0
    for number in range(1, len(recorder.calls) + 1):
        for fault in FAULTS:
            before = descriptors()
            replace_file(DISK, path, old)
            try:
                replace_file(FaultyStorage(DISK, {number: fault}), path, new)
                assert path.read_bytes() == new
            except OSError:
                failed += 1
                assert path.read_bytes() in (old, new)
            assert os.listdir(tmp_path) == ["kitchen.toml"]
            assert descriptors() == before
    assert failed > len(recorder.calls) * 6


def test_a_replacement_is_on_the_medium_before_it_takes_the_name(tmp_path: Path) -> None:
    recorder = FaultyStorage(DISK)
    replace_file(recorder, tmp_path / "kitchen.toml", b"format = 1\n")
    names = [call.name for call in recorder.calls]
    assert names == ["create_exclusive", "write", "fsync", "close", "replace", "fsync_folder"]


# --- the failing disk itself


def test_a_fault_strikes_the_call_it_is_set_for_and_only_that_one(tmp_path: Path) -> None:
    disk = FaultyStorage(DISK, {2: Fault("before", errno.ENOSPC)})
    fd = disk.create_exclusive(tmp_path / "log")
    with pytest.raises(OSError, match="No space"):
        disk.write(fd, b"abc")
    assert disk.write(fd, b"abc") == 3
    assert disk.calls == [Call("create_exclusive", tmp_path / "log", fd), *[Call("write", fd, b"abc")] * 2]
    disk.close(fd)


def test_a_lasting_fault_stays(tmp_path: Path) -> None:
    disk = FaultyStorage(DISK, {2: Fault("before", errno.EIO, lasting=True)})
    fd = disk.create_exclusive(tmp_path / "log")
    for _ in range(2):
        with pytest.raises(OSError, match="Input/output"):
            disk.fsync(fd)
    with pytest.raises(OSError, match="Input/output"):
        disk.close(fd)
    with pytest.raises(OSError, match="Bad file descriptor"):
        os.fstat(fd)  # a failed close still lets go


def test_a_late_fault_has_done_its_work(tmp_path: Path) -> None:
    disk = FaultyStorage(DISK, {2: Fault("after", errno.EIO)})
    fd = disk.create_exclusive(tmp_path / "log")
    with pytest.raises(OSError, match="Input/output"):
        disk.write(fd, b"abc")
    assert disk.read(fd, 10) == b"abc"
    disk.close(fd)


def test_a_short_write_is_gone_on_with_until_the_disk_is_full(tmp_path: Path) -> None:
    disk = FaultyStorage(DISK, {2: Fault("part", share=0.25), 3: Fault("part", errno.ENOSPC, share=0.5)})
    fd = disk.create_exclusive(tmp_path / "log")
    with pytest.raises(OSError, match="No space"):
        write_all(disk, fd, b"x" * 100)
    assert disk.size(fd) == 25 + 37
    disk.close(fd)


def test_a_file_whose_opening_fails_late_is_not_left_open(tmp_path: Path) -> None:
    (tmp_path / "log").write_text("x")
    before = descriptors()
    with pytest.raises(OSError, match="Input/output"):
        FaultyStorage(DISK, {1: Fault("after", errno.EIO)}).open_append(tmp_path / "log")
    assert descriptors() == before


def test_a_folder_made_by_another_program_meanwhile_is_no_error(tmp_path: Path) -> None:
    class Raced(DiskStorage):
        def mkdir(self, folder: Path) -> None:
            os.mkdir(folder)
            super().mkdir(folder)

    make_folder(Raced(), tmp_path / "logs")
    assert (tmp_path / "logs").is_dir()
    (tmp_path / "file").write_text("x")
    with pytest.raises(OSError):
        make_folder(DISK, tmp_path / "file")


# --- words


def test_text_from_outside_is_shown_without_any_control() -> None:
    evil = "a\x1b[31m\x9b\u202e\u200b\ud800\nb"
    assert shown(evil) == r"a\x1b[31m\x9b\u202e\u200b\ud800\nb"
    assert shown("Krapp-Röte 茜") == "Krapp-Röte 茜"
    assert len(shown("x" * 500)) == 120


def test_a_system_error_is_told_in_plain_words() -> None:
    assert because(OSError(errno.ENOSPC, "No space left on device")) == "the disk is full"
    assert because(OSError(errno.EBUSY, "x")) == os.strerror(errno.EBUSY).lower()
    assert because(OSError("odd\x1b")) == r"odd\x1b"
