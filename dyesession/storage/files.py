"""Whole-file work built on the single calls: read with a limit, replace in one step, make folders.

Must not know what is in a file.
"""

import errno
import os
from pathlib import Path

from dyesession.storage.interface import Storage, TooLarge
from dyesession.storage.wording import shown

MEGABYTE = 1_000_000


def fresh_name(path: Path) -> Path:
    """A hidden name beside `path` that nobody else uses: fixed temporary names make racing writers fail."""
    return path.with_name(f".{path.name}.{os.getpid()}.{os.urandom(4).hex()}.new")


def write_all(storage: Storage, fd: int, data: bytes) -> None:
    """Write every byte, going on after short writes. Raises OSError; part of it may be written then."""
    while data:
        taken = storage.write(fd, data)
        if taken == 0:  # a disk that takes nothing and says nothing would be asked for ever
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        data = data[taken:]


def write_new(storage: Storage, path: Path, data: bytes) -> None:
    """Make a new file and wait until its bytes, but not yet its name, are on the medium. Raises OSError."""
    fd = storage.create_exclusive(path)
    try:
        write_all(storage, fd, data)
        storage.fsync(fd)
    finally:
        storage.close(fd)


def read_file(storage: Storage, path: Path, limit: int) -> bytes:
    """A plain file's bytes, at most `limit`. Raises TooLarge, NotAPlainFile, OSError."""
    fd = storage.open_read(path)
    try:
        data = storage.read(fd, limit + 1)
    finally:
        storage.close(fd)
    if len(data) > limit:
        raise TooLarge(
            f"{shown(path)} is larger than {limit / MEGABYTE:g} MB: "
            "expected a file of a few kilobytes, such as a recipe or the log of one day"
        )
    return data


def replace_file(storage: Storage, path: Path, data: bytes) -> None:
    """Put `data` in place of whatever `path` holds, all or nothing, on the medium before it returns.

    Raises OSError, and the old file is then still whole.
    """
    temporary = fresh_name(path)
    try:
        write_new(storage, temporary, data)
        storage.replace(temporary, path)
    except OSError:
        discard(storage, temporary)
        raise
    storage.fsync_folder(path.parent)


def discard(storage: Storage, path: Path) -> None:
    """Remove a file that never counted, if that can be done."""
    try:
        storage.unlink(path)
    except OSError:
        return  # a hidden leftover does no harm; the first error is the one to tell


def make_folder(storage: Storage, folder: Path) -> None:
    """Make a folder and whatever of its parents is missing, each for its owner alone. Raises OSError."""
    missing = [one for one in (folder, *folder.parents) if not storage.is_folder(one)]
    for one in reversed(missing):
        try:
            storage.mkdir(one)
        except FileExistsError:
            if not storage.is_folder(one):
                raise
        storage.fsync_folder(one.parent)
