"""The session log: one append-only TOML file, each entry sealed, synced before it counts as saved.

Must not know what the entries mean: facts come in and go out as plain data. The protocol: one write and one
fsync an entry (write(2), fsync(2)), a folder fsync for a new name, a lock on the log itself (flock(2)).
"""

import os
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from dyesession.session import log_read
from dyesession.session.log_create import log_path, make_log, session_name
from dyesession.session.log_entry import UNREADABLE, Entry
from dyesession.session.log_errors import (
    EntriesMissing,
    LogError,
    LogInUse,
    NameTaken,
    NewerFormat,
    NotALog,
    NotSaved,
    ReadOnly,
    Unsure,
)
from dyesession.session.log_read import FORMAT, LogContents, check_log, log_stamp, read_log
from dyesession.session.log_recover import Recovered, recover
from dyesession.session.log_writer import NOT_ALLOWED, LogWriter
from dyesession.session.seal import sealed_header
from dyesession.session.seal_scan import Scan
from dyesession.storage import Storage, TooLarge, because, shown
from dyesession.tomlfile import HAND_WRITTEN, LOG, Unwritable, write_document

__all__ = [
    "FORMAT",
    "UNREADABLE",
    "EntriesMissing",
    "Entry",
    "LogContents",
    "LogError",
    "LogInUse",
    "LogWriter",
    "NameTaken",
    "NewerFormat",
    "NotALog",
    "NotSaved",
    "ReadOnly",
    "Recovered",
    "Unsure",
    "check_log",
    "create_log",
    "log_stamp",
    "open_log",
    "read_log",
    "session_name",
]


def create_log(storage: Storage, folder: Path, name: str, header: Mapping[str, Any]) -> LogWriter:
    """Begin a log. When this returns, the file is there, locked, on the medium and under its name.

    `name` is as `session_name` makes it; `format` and `session` are put before the header's own keys, which
    may not be `seal` or `event`. Raises NameTaken, or NotSaved and nothing is there.
    """
    path = log_path(folder, name)
    data, own = _sealed_head(name, header)
    contents = log_read.contents_of(path, log_read.understood(data, path))
    return LogWriter(storage, path, make_log(storage, path, data), data, contents, (0, own))


def _sealed_head(name: str, header: Mapping[str, Any]) -> tuple[bytes, str]:
    if {"seal", "event"} & set(header):
        raise ValueError("seal and event are the log's own keys and cannot be in a header")
    try:
        data, own = sealed_header(write_document({"format": FORMAT, "session": name, **header}))
    except Unwritable as error:
        raise NotSaved(f"The session is not begun: {error}", retry=False) from error
    if len(data) > HAND_WRITTEN.file_bytes:
        raise NotSaved(
            f"The session is not begun: its head is over {HAND_WRITTEN.file_bytes} bytes", retry=False
        )
    return data, own


def open_log(storage: Storage, path: Path, *, go_on: bool = False) -> LogWriter:
    """Open a log to write on. A torn end is set aside in a side file and cut off (see `recovered`).

    Raises LogInUse when another program writes it; EntriesMissing when entries are gone from its middle,
    unless told to `go_on`; NotALog, NewerFormat, ReadOnly, LogError when it cannot be: the file is untouched.
    """
    fd = _opened(storage, path)
    try:
        return _locked_and_read(storage, path, fd, go_on)
    except OSError as error:
        _let_go(storage, fd)
        raise LogError(
            f"{shown(path)} cannot be opened to write on, because {because(error)}: it can still be looked at"
        ) from error
    except BaseException:
        _let_go(storage, fd)
        raise


def _opened(storage: Storage, path: Path) -> int:
    try:
        return storage.open_append(path)
    except OSError as error:
        kind = ReadOnly if error.errno in NOT_ALLOWED else LogError
        raise kind(
            f"{shown(path)} cannot be opened to write on, because {because(error)}; expected a session log "
            "of your own, for example logs/2026-03-14-madder-brick-k7q2.toml"
        ) from error


def _let_go(storage: Storage, fd: int) -> None:
    try:
        storage.close(fd)
    except OSError:
        return  # the first error is the one to tell


def _locked_and_read(storage: Storage, path: Path, fd: int, go_on: bool) -> LogWriter:
    if not storage.lock(fd):
        raise _in_use(path, storage.holder(fd))
    if not storage.same_file(fd, path):
        raise LogError(f"{shown(path)} was moved or replaced just now: try again")
    data = storage.read(fd, LOG.file_bytes + 1)
    if len(data) > LOG.file_bytes:
        raise TooLarge(f"{shown(path)} is over {LOG.file_bytes} bytes long: expected the log of one day")
    found = log_read.understood(data, path)
    if found.missing and not go_on:
        raise _entries_missing(path, found)
    recovered = None
    if found.torn:
        recovered = recover(storage, fd, path, data[found.whole_to :], found.whole_to)
        data = data[: found.whole_to]
    else:
        storage.fsync(fd)  # a writer that died may have written, but not waited for, what is shown now
    contents = log_read.contents_of(path, found)
    return LogWriter(storage, path, fd, data, contents, (found.n, found.own), recovered)


def _in_use(path: Path, pid: int | None) -> LogInUse:
    host = os.uname().nodename
    who = f"process {pid} on {shown(host)}" if pid else "another program"
    return LogInUse(
        path,
        f"{shown(path)} is being written by {who}: go on there or close it there first; "
        "here it can be looked at, and nothing can be added",
        pid,
        host,
    )


def _entries_missing(path: Path, found: Scan) -> EntriesMissing:
    gaps = ", ".join(
        f"{first} to {last}" if first != last else f"{first}" for first, last in found.missing[:5]
    )
    return EntriesMissing(
        f"{shown(path)} has gaps: missing are the entries numbered {gaps}; "
        "it can be looked at, and nothing is added until you say go on"
    )
