"""A disk that fails on command: call number k goes wrong in a chosen way. For tests of trouble.

Must not know who calls it. Every call is also written down, in order, so that a test can ask whether a thing
was on the medium before it was called saved.
"""

import os
import signal
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal, TypeVar

from dyesession.storage.interface import Storage

T = TypeVar("T")


@dataclass(frozen=True)
class Fault:
    """How a call goes wrong.

    `when`: before anything is done, after it was done, or part way (a write takes `share` of its bytes; other
    calls are done whole). `code`: the error raised, or 0 for none; after a part-way write the next write
    raises it. `kill`: the process dies there instead. `lasting`: every later call goes wrong as well.
    """

    when: Literal["before", "after", "part"] = "before"
    code: int = 0
    share: float = 0.5
    kill: bool = False
    lasting: bool = False


@dataclass(frozen=True)
class Call:
    """One call as it was made: its name, the file, and what was written or the size cut to."""

    name: str
    where: int | Path
    detail: bytes | int | Path | None = None


@dataclass
class FaultyStorage:
    """Another storage, with faults at given call numbers (the first call is 1)."""

    inner: Storage
    faults: Mapping[int, Fault] = field(default_factory=dict)
    calls: list[Call] = field(default_factory=list)
    _lasting: Fault | None = None
    _next_write: int = 0

    def _call(self, call: Call, act: Callable[[], T]) -> T:
        self.calls.append(call)
        fault = self.faults.get(len(self.calls), self._lasting)
        if fault is None:
            return act()
        if fault.lasting:
            self._lasting = fault
        if fault.when == "before" and call.name != "close":  # a failed close still lets go of the descriptor
            self._fail(fault, call)
        result = act()
        self._fail(fault, call)
        return result

    def _fail(self, fault: Fault, call: Call) -> None:
        if fault.kill:
            os.kill(os.getpid(), signal.SIGKILL)
        if fault.code and not (fault.when == "part" and call.name == "write"):
            where = call.where if isinstance(call.where, Path) else None
            raise OSError(fault.code, os.strerror(fault.code), where and str(where))

    def write(self, fd: int, data: bytes) -> int:
        """One write, which may be cut short."""
        if self._next_write:
            code, self._next_write = self._next_write, 0
            self.calls.append(Call("write", fd, b""))
            raise OSError(code, os.strerror(code))
        fault = self.faults.get(len(self.calls) + 1, self._lasting)
        if fault is not None and fault.when == "part":
            data = data[: int(len(data) * fault.share)]
            self._next_write = fault.code
        return self._call(Call("write", fd, data), lambda: self.inner.write(fd, data))

    def open_append(self, path: Path) -> int:
        """Open to read and to add at the end."""
        return self._open("open_append", path, self.inner.open_append)

    def open_read(self, path: Path) -> int:
        """Open to read."""
        return self._open("open_read", path, self.inner.open_read)

    def create_exclusive(self, path: Path) -> int:
        """Make a new file."""
        return self._open("create_exclusive", path, self.inner.create_exclusive)

    def _open(self, name: str, path: Path, act: Callable[[Path], int]) -> int:
        opened: list[int] = []

        def open_it() -> int:
            opened.append(act(path))
            self.calls[-1] = Call(name, path, opened[0])
            return opened[0]

        try:
            return self._call(Call(name, path), open_it)
        except OSError:
            for fd in opened:
                self.inner.close(fd)
            raise

    def close(self, fd: int) -> None:
        """Let go of a descriptor."""
        self._call(Call("close", fd), lambda: self.inner.close(fd))

    def read(self, fd: int, limit: int) -> bytes:
        """The file's first bytes."""
        return self._call(Call("read", fd, limit), lambda: self.inner.read(fd, limit))

    def fsync(self, fd: int) -> None:
        """Wait for the medium."""
        self._call(Call("fsync", fd), lambda: self.inner.fsync(fd))

    def fsync_folder(self, folder: Path) -> None:
        """Wait for the medium to have the folder's names."""
        self._call(Call("fsync_folder", folder), lambda: self.inner.fsync_folder(folder))

    def size(self, fd: int) -> int:
        """The file's length in bytes."""
        return self._call(Call("size", fd), lambda: self.inner.size(fd))

    def truncate(self, fd: int, size: int) -> None:
        """Cut the file."""
        self._call(Call("truncate", fd, size), lambda: self.inner.truncate(fd, size))

    def lock(self, fd: int) -> bool:
        """Take the writer's lock."""
        return self._call(Call("lock", fd), lambda: self.inner.lock(fd))

    def holder(self, fd: int) -> int | None:
        """Who holds the lock."""
        return self._call(Call("holder", fd), lambda: self.inner.holder(fd))

    def same_file(self, fd: int, path: Path) -> bool:
        """Whether the path still leads to the open file."""
        return self._call(Call("same_file", path, fd), lambda: self.inner.same_file(fd, path))

    def link(self, old: Path, new: Path) -> None:
        """Give a file a second name."""
        self._call(Call("link", old, new), lambda: self.inner.link(old, new))

    def unlink(self, path: Path) -> None:
        """Remove a name."""
        self._call(Call("unlink", path), lambda: self.inner.unlink(path))

    def replace(self, old: Path, new: Path) -> None:
        """Rename over whatever is there."""
        self._call(Call("replace", old, new), lambda: self.inner.replace(old, new))

    def mkdir(self, folder: Path) -> None:
        """Make one folder."""
        self._call(Call("mkdir", folder), lambda: self.inner.mkdir(folder))

    def is_folder(self, path: Path) -> bool:
        """Whether a folder is there; never fails."""
        return self.inner.is_folder(path)

    def list_folder(self, folder: Path) -> tuple[str, ...]:
        """The names in a folder."""
        return self._call(Call("list_folder", folder), lambda: self.inner.list_folder(folder))
