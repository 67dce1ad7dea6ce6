"""Looking at a log without touching it: no lock, nothing cut, everything doubtful marked.

Must not know what the entries mean. Used by readers and, before anything is written, by the writer.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from dyesession.session.log_entry import Entry
from dyesession.session.log_errors import LogError, NewerFormat, NotALog
from dyesession.session.seal_scan import Scan, scan
from dyesession.session.seal_split import TooManyStrays, format_number
from dyesession.storage import DISK, Storage, because, read_file, shown
from dyesession.tomlfile import LOG

FORMAT = 1

_LAST_SEAL = re.compile(rb'\n(?:seal|header) = "([0-9a-f-]{10,30})"')


@dataclass(frozen=True)
class LogContents:
    """A log as read.

    `entries` are in order of their numbers; one that is doubtful says so in its `trouble`. `notes` holds one
    sentence for each thing wrong. `missing` are gaps in the numbers, first and last. `torn` is how many bytes
    at the end are no whole entry: a save that was cut short, or one that is under way.
    """

    path: Path
    header: Mapping[str, Any]
    header_trouble: str | None
    entries: tuple[Entry, ...]
    notes: tuple[str, ...]
    missing: tuple[tuple[int, int], ...]
    torn: int

    @property
    def whole(self) -> bool:
        """Whether nothing at all is wrong with the log."""
        return not self.notes


def read_log(storage: Storage, path: Path) -> LogContents:
    """Read a log in any state without changing it. Raises NotALog, NewerFormat or another UserError."""
    try:
        data = read_file(storage, path, LOG.file_bytes)
    except OSError as error:
        raise LogError(f"{shown(path)} cannot be read: {because(error)}; expected a session log") from error
    return contents_of(path, understood(data, path))


def contents_of(path: Path, found: Scan) -> LogContents:
    """What a scan found, with the file's name before each sentence."""
    return LogContents(
        path,
        found.header,
        found.header_trouble,
        found.entries,
        tuple(f"{shown(path.name)}, {one}" for one in found.faults),
        found.missing,
        found.torn,
    )


def understood(data: bytes, path: Path) -> Scan:
    """The scan of a log that this program understands. Raises NotALog or NewerFormat."""
    _refuse_newer(format_number(data), path)
    try:
        found = scan(data)
    except TooManyStrays as error:
        raise NotALog(_no_log(path)) from error
    _refuse_newer(found.header.get("format"), path)
    if not found.sealed_head and not found.entries:
        raise NotALog(_no_log(path))
    return found


def _refuse_newer(number: object, path: Path) -> None:
    if isinstance(number, int) and number > FORMAT:
        raise NewerFormat(
            f"{shown(path)} is a log of format {number} and this program knows format {FORMAT}: "
            "it is left as it is; open it with a newer dyesession"
        )


def _no_log(path: Path) -> str:
    return (
        f"{shown(path)} is no session log, or its head was cut short before anything was saved: "
        "it is left as it is; expected a file of this program, such as 2026-03-14-madder-brick-k7q2.toml"
    )


def check_log(path: Path, storage: Storage = DISK) -> list[str]:
    """One sentence for each thing wrong with a log; an empty list: all is well. Raises as `read_log` does."""
    contents = read_log(storage, path)
    return [*contents.notes, *_backwards(contents), *_misnamed(contents)]


def _backwards(contents: LogContents) -> list[str]:
    name = shown(contents.path.name)
    return [
        f"{name}: entry {later.n} was recorded before entry {earlier.n} by the machine's own clock."
        for earlier, later in zip(contents.entries, contents.entries[1:], strict=False)
        if earlier.boot == later.boot and later.up_s < earlier.up_s
    ]


def _misnamed(contents: LogContents) -> list[str]:
    session = contents.header.get("session")
    stem = contents.path.stem
    if session is None or session == stem or stem.startswith(f"{session}-rescue"):
        return []
    return [f"{shown(contents.path.name)}: the log inside is named {shown(str(session))}."]


def log_stamp(storage: Storage, path: Path) -> tuple[int, str]:
    """A log's size and last seal: as long as they stay the same, so does everything in it. Raises OSError."""
    data = read_file(storage, path, LOG.file_bytes)
    seals = _LAST_SEAL.findall(data, max(0, len(data) - LOG.line_length))
    return len(data), seals[-1].decode() if seals else ""
