"""Beginning a log file: written whole under another name first, so that the real name never shows a part.

Must not know what the header means. A link, not a rename, gives the final name: it refuses to overwrite.
"""

import errno
import os
import re
import unicodedata
from collections.abc import Callable
from datetime import date
from pathlib import Path

from dyesession.session.log_errors import NameTaken, NotSaved
from dyesession.storage import Storage, because, discard, fresh_name, make_folder, shown, write_all

SLUG_LENGTH = 48
RANDOM_LENGTH = 4
UNLIKE_EACH_OTHER = "abcdefghjkmnpqrstuvwxyz23456789"  # no l, i, o, 0, 1: read aloud or copied by hand
NAME = re.compile(r"[a-z0-9][a-z0-9-]{0,79}\Z")

_NO_LINKS = {errno.EPERM, errno.ENOTSUP, errno.EOPNOTSUPP, errno.ENOSYS, errno.EMLINK}


def plain_words(title: str) -> str:
    """A title as a file may be called: lower-case letters, digits, hyphens; "" where nothing of that is left."""
    plain = unicodedata.normalize("NFKD", title[:200]).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")


def session_name(title: str, day: date, pick: Callable[[str], str] | None = None) -> str:
    """A file name for a session, such as 2026-03-14-madder-brick-k7q2: lower-case letters, digits, hyphens.

    Whatever the title holds, nothing else gets into the name; the title itself belongs inside the file. The
    last letters are random, or as `pick` chooses each of them.
    """
    words = plain_words(title)
    slug = f"{day.year:04}-{day.month:02}-{day.day:02}-{words or 'session'}"[:SLUG_LENGTH].rstrip("-")
    pick = pick or _any_letter
    return f"{slug}-{''.join(pick(UNLIKE_EACH_OTHER) for _ in range(RANDOM_LENGTH))}"


def _any_letter(letters: str) -> str:
    return letters[int.from_bytes(os.urandom(4), "big") % len(letters)]


def log_path(folder: Path, name: str) -> Path:
    """Where the log of that name lies. Raises NotSaved for a name that could lead anywhere else."""
    if not NAME.match(name):
        raise NotSaved(
            f'"{shown(name, 40)}" will not do as the name of a log: expected lower-case letters, digits and '
            "hyphens, for example 2026-03-14-madder-brick-k7q2",
            retry=False,
        )
    return folder / f"{name}.toml"


def make_log(storage: Storage, path: Path, data: bytes) -> int:
    """Put a new, locked log of these bytes at `path`, name and all on the medium; its descriptor.

    Raises NameTaken when something is there, NotSaved when it cannot be done; nothing is left behind then.
    """
    try:
        _folder_for(storage, path)
        return _linked(storage, path, data)
    except FileExistsError as error:
        raise NameTaken(f"{shown(path)} is there already: expected a new name") from error
    except OSError as error:
        raise NotSaved(
            f"Not saved: {shown(path)} cannot be made, because {because(error)}; choose another folder"
        ) from error


def _folder_for(storage: Storage, path: Path) -> None:
    try:
        make_folder(storage, path.parent)
    except FileExistsError as error:  # a file is where a folder should be: no other name would help
        raise NotSaved(
            f"Not saved: {shown(path.parent)} cannot be a folder, because a file is there; choose another folder"
        ) from error


def _linked(storage: Storage, path: Path, data: bytes) -> int:
    temporary = fresh_name(path)
    try:
        fd = _filled(storage, temporary, data)
    except OSError:
        discard(storage, temporary)
        raise
    try:
        storage.link(temporary, path)
    except OSError as error:
        if not _is_ours(storage, fd, path):
            _let_go(storage, fd)
            discard(storage, temporary)
            if error.errno in _NO_LINKS:
                return _named(storage, path, _filled_or_gone(storage, path, data))
            raise
    discard(storage, temporary)
    return _named(storage, path, fd)


def _is_ours(storage: Storage, fd: int, path: Path) -> bool:
    """Whether the link was made all the same: over a network the word of it may be lost (link(2), "BUGS")."""
    try:
        return storage.same_file(fd, path)
    except OSError:
        return False


def _let_go(storage: Storage, fd: int) -> None:
    try:
        storage.close(fd)
    except OSError:
        return  # the first error is the one to tell


def _filled(storage: Storage, path: Path, data: bytes) -> int:
    """A new file holding the bytes, locked before anybody else can know its name."""
    fd = storage.create_exclusive(path)
    try:
        storage.lock(fd)
        write_all(storage, fd, data)
        storage.fsync(fd)
    except OSError:
        _let_go(storage, fd)
        raise
    return fd


def _filled_or_gone(storage: Storage, path: Path, data: bytes) -> int:
    # Without links a part may show for a moment; it bears no seal yet and counts for nothing.
    try:
        return _filled(storage, path, data)
    except FileExistsError:
        raise
    except OSError:
        discard(storage, path)
        raise


def _named(storage: Storage, path: Path, fd: int) -> int:
    try:
        storage.fsync_folder(path.parent)
    except OSError:
        _let_go(storage, fd)
        discard(storage, path)
        raise
    return fd
