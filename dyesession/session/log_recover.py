"""Setting a torn end aside: first kept whole in a file of its own, on the medium, and only then cut off.

Must not know what the entries mean. The caller holds the log's lock.
"""

from dataclasses import dataclass
from pathlib import Path

from dyesession.storage import Storage, discard, write_new

MOST_SIDE_FILES = 999


@dataclass(frozen=True)
class Recovered:
    """A torn end that was set aside: how many bytes, and the file that keeps them."""

    torn_bytes: int
    side_file: Path


def recover(storage: Storage, fd: int, path: Path, tail: bytes, whole_to: int) -> Recovered:
    """Keep the torn end in a side file, then cut it off the log.

    Raises OSError; the log is then as it was, or is cut with the torn end safe in its side file.
    """
    side_file = keep_tail(storage, path, tail)
    cut_tail(storage, fd, whole_to)
    return Recovered(len(tail), side_file)


def keep_tail(storage: Storage, path: Path, tail: bytes) -> Path:
    """Write the torn end to the first free NAME.torn-1, NAME.torn-2 ... Raises OSError."""
    for number in range(1, MOST_SIDE_FILES + 1):
        side_file = path.with_suffix(f".torn-{number}")
        try:
            write_new(storage, side_file, tail)
        except FileExistsError:
            continue
        except OSError:
            discard(storage, side_file)
            raise
        storage.fsync_folder(path.parent)
        return side_file
    raise FileExistsError(f"{MOST_SIDE_FILES} torn ends lie beside the log already")


def cut_tail(storage: Storage, fd: int, whole_to: int) -> None:
    """Cut the log after its last whole entry, and wait for the medium. Raises OSError."""
    storage.truncate(fd, whole_to)
    storage.fsync(fd)
