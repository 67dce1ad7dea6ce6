"""What the program asks of a disk: one method for each call that can fail.

Must not know what is in a file. Every method may raise OSError; none retries or hides one.
"""

from pathlib import Path
from typing import Protocol

from dyesession.errors import UserError


class NotAPlainFile(UserError):
    """A link, pipe, device or folder stands where a plain file was expected."""


class TooLarge(UserError):
    """A file is larger than anything it could rightly hold."""


class Storage(Protocol):
    """Every file operation of the program. Files are 0600 and folders 0700 whatever the umask."""

    def open_append(self, path: Path) -> int:
        """Open an existing plain file to read and to add at its end. Raises NotAPlainFile."""
        ...

    def open_read(self, path: Path) -> int:
        """Open an existing plain file to read. Raises NotAPlainFile."""
        ...

    def create_exclusive(self, path: Path) -> int:
        """Make a new file, to read and to add at its end. Raises FileExistsError."""
        ...

    def close(self, fd: int) -> None:
        """Let go of a descriptor, and of its lock."""
        ...

    def read(self, fd: int, limit: int) -> bytes:
        """The file's first `limit` bytes, or all of it when it is shorter."""
        ...

    def write(self, fd: int, data: bytes) -> int:
        """One write; how many bytes were taken, which may be fewer than given."""
        ...

    def fsync(self, fd: int) -> None:
        """Wait until the file's bytes are on the medium. After an error nobody knows whether they are."""
        ...

    def fsync_folder(self, folder: Path) -> None:
        """Wait until the folder's names are on the medium: a file's own fsync does not cover its name."""
        ...

    def size(self, fd: int) -> int:
        """The file's length in bytes."""
        ...

    def truncate(self, fd: int, size: int) -> None:
        """Cut the file to `size` bytes."""
        ...

    def lock(self, fd: int) -> bool:
        """Take the file's one writer's lock, or False when somebody holds it. Freed when its holder dies."""
        ...

    def holder(self, fd: int) -> int | None:
        """The process that holds the file's lock, or None where the system does not tell."""
        ...

    def same_file(self, fd: int, path: Path) -> bool:
        """Whether the path still leads to the open file."""
        ...

    def link(self, old: Path, new: Path) -> None:
        """Give a file a second name. Raises FileExistsError rather than overwrite."""
        ...

    def unlink(self, path: Path) -> None:
        """Remove a name."""
        ...

    def replace(self, old: Path, new: Path) -> None:
        """Rename over whatever is there, in one step."""
        ...

    def mkdir(self, folder: Path) -> None:
        """Make one folder, for its owner alone. Raises FileExistsError."""
        ...

    def is_folder(self, path: Path) -> bool:
        """Whether a folder is there."""
        ...

    def list_folder(self, folder: Path) -> tuple[str, ...]:
        """The names in a folder, sorted."""
        ...
