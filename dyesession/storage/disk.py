"""The real disk. Files 0600, folders 0700; no links followed, no descriptors inherited, no pipe waited for.

Must not know what is in a file. Why not plain fsync on macOS: its manual says the drive may still hold the
data, and names F_FULLFSYNC (fsync(2), Darwin). Run and measured on Linux only.
"""

import errno
import os
import stat
from pathlib import Path

from dyesession.storage.interface import NotAPlainFile
from dyesession.storage.wording import shown

FILE_MODE = 0o600
FOLDER_MODE = 0o700
READ_CHUNK = 1 << 20
LOCK_TABLE = Path("/proc/locks")

_CAREFUL = os.O_CLOEXEC | os.O_NOFOLLOW | os.O_NONBLOCK  # a pipe would otherwise hang the open
_NOT_PLAIN = {errno.ELOOP, errno.EISDIR, errno.ENXIO, errno.ENODEV}


class DiskStorage:
    """`Storage` on the computer's own file system."""

    def open_append(self, path: Path) -> int:
        """Open an existing plain file to read and to add at its end. Raises NotAPlainFile."""
        return _open_plain(path, os.O_RDWR | os.O_APPEND)

    def open_read(self, path: Path) -> int:
        """Open an existing plain file to read. Raises NotAPlainFile."""
        return _open_plain(path, os.O_RDONLY)

    def create_exclusive(self, path: Path) -> int:
        """Make a new 0600 file. Raises FileExistsError."""
        fd = os.open(path, os.O_RDWR | os.O_APPEND | os.O_CREAT | os.O_EXCL | _CAREFUL, FILE_MODE)
        try:
            os.fchmod(fd, FILE_MODE)  # a umask may have taken our own rights away
        except OSError:
            os.close(fd)
            raise
        return fd

    def close(self, fd: int) -> None:
        """Let go of a descriptor, and of its lock."""
        os.close(fd)

    def read(self, fd: int, limit: int) -> bytes:
        """The file's first `limit` bytes, or all of it when it is shorter."""
        parts: list[bytes] = []
        done = 0
        while done < limit and (part := os.pread(fd, min(READ_CHUNK, limit - done), done)):
            parts.append(part)
            done += len(part)
        return b"".join(parts)

    def write(self, fd: int, data: bytes) -> int:
        """One write; how many bytes were taken."""
        return os.write(fd, data)

    def fsync(self, fd: int) -> None:
        """Wait until the file's bytes are on the medium."""
        import fcntl

        full = getattr(fcntl, "F_FULLFSYNC", None)
        if full is None:
            os.fsync(fd)
        else:  # pragma: no cover - macOS
            fcntl.fcntl(fd, full)

    def fsync_folder(self, folder: Path) -> None:
        """Wait until the folder's names are on the medium."""
        fd = os.open(folder, os.O_RDONLY | os.O_DIRECTORY | os.O_CLOEXEC)
        try:
            os.fsync(fd)
        finally:
            os.close(fd)

    def size(self, fd: int) -> int:
        """The file's length in bytes."""
        return os.fstat(fd).st_size

    def truncate(self, fd: int, size: int) -> None:
        """Cut the file to `size` bytes."""
        os.ftruncate(fd, size)

    def lock(self, fd: int) -> bool:
        """Take the writer's lock on the open file itself, or False when somebody holds it.

        flock, not lockf: a lockf lock is lost when its process closes any descriptor of the file (fcntl(2)).
        """
        import fcntl

        try:
            fcntl.flock(fd, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True

    def holder(self, fd: int) -> int | None:
        """The process that holds the file's lock, from the kernel's own table; None where there is none."""
        status = os.fstat(fd)
        device = f"{os.major(status.st_dev):02x}:{os.minor(status.st_dev):02x}"
        try:
            rows = [row.split() for row in LOCK_TABLE.read_text().splitlines()]
        except OSError:
            return None
        wanted = f"{device}:{status.st_ino}"
        pids = [int(row[4]) for row in rows if row[1:2] == ["FLOCK"] and row[5] == wanted]
        return next((pid for pid in pids if pid > 0), None)

    def same_file(self, fd: int, path: Path) -> bool:
        """Whether the path still leads to the open file."""
        try:
            return os.path.samestat(os.fstat(fd), os.lstat(path))
        except FileNotFoundError:
            return False

    def link(self, old: Path, new: Path) -> None:
        """Give a file a second name. Raises FileExistsError rather than overwrite."""
        os.link(old, new, follow_symlinks=False)

    def unlink(self, path: Path) -> None:
        """Remove a name."""
        os.unlink(path)

    def replace(self, old: Path, new: Path) -> None:
        """Rename over whatever is there, in one step."""
        os.replace(old, new)

    def mkdir(self, folder: Path) -> None:
        """Make one 0700 folder. Raises FileExistsError."""
        os.mkdir(folder, FOLDER_MODE)
        os.chmod(folder, FOLDER_MODE)

    def is_folder(self, path: Path) -> bool:
        """Whether a folder is there."""
        return os.path.isdir(path)

    def list_folder(self, folder: Path) -> tuple[str, ...]:
        """The names in a folder, sorted."""
        return tuple(sorted(os.listdir(folder)))


DISK = DiskStorage()


def _open_plain(path: Path, flags: int) -> int:
    try:
        fd = os.open(path, flags | _CAREFUL)
    except ValueError as error:  # a NUL in the name
        raise NotAPlainFile(_not_plain(path)) from error
    except OSError as error:
        if error.errno in _NOT_PLAIN:
            raise NotAPlainFile(_not_plain(path)) from error
        raise
    if not stat.S_ISREG(os.fstat(fd).st_mode):
        os.close(fd)
        raise NotAPlainFile(_not_plain(path))
    return fd


def _not_plain(path: Path) -> str:
    return (
        f"{shown(path)} is a link, a pipe, a device or a folder: "
        "expected a plain file, such as recipes/madder-brick-red.toml"
    )
