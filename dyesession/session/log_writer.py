"""The one writer of a log: a fact is one block, one write, one wait for the medium, and only then saved.

Must not know what the entries mean, nor the time. After a failed fsync nobody knows what is on the disk
(fsync(2)), so it is never tried again on the same file: the session goes from memory to a new one.
"""

import errno
from collections.abc import Mapping
from datetime import datetime
from pathlib import Path
from typing import Any, Literal, NoReturn

from dyesession.clock import Instant
from dyesession.session.log_create import make_log
from dyesession.session.log_entry import RESERVED, Entry, entry_from
from dyesession.session.log_errors import NameTaken, NotSaved, Unsure
from dyesession.session.log_read import LogContents
from dyesession.session.log_recover import Recovered
from dyesession.session.seal import Seal, sealed_block
from dyesession.session.seal_split import BLOCK_LIMITS
from dyesession.storage import Storage, because, shown
from dyesession.tomlfile import LOG, TomlFileError, Unwritable, block_text, normal, parsed_back
from dyesession.tomlfile.limits import check_limits

State = Literal["open", "stopped", "unsure", "closed"]

NO_ROOM = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}
NOT_ALLOWED = {errno.EROFS, errno.EACCES, errno.EPERM}
WRITES = 2  # a write cut short is gone on with once
MOST_RESCUES = 99


class LogWriter:
    """An open log, locked against every other writer until `close` or the end of the process.

    `contents` is what was read when it was opened, `recovered` what was set aside then, `n` the number of the
    last saved entry. `state` is "open"; "stopped" when the file is no longer ours alone; "unsure" after a
    failure that leaves it unknown what the file holds, when only `rescue` helps; or "closed".
    """

    def __init__(
        self,
        storage: Storage,
        path: Path,
        fd: int,
        data: bytes,
        contents: LogContents,
        last: tuple[int, str],
        recovered: Recovered | None = None,
    ) -> None:
        self.path = path
        self.contents = contents
        self.recovered = recovered
        self.n, self._own = last
        self.state: State = "open"
        self._storage = storage
        self._fd = fd
        self._memory = bytearray(data)  # all that is saved, for a rescue: never read back from a sick disk
        self._doubtful: tuple[bytes, Seal] | None = None

    @property
    def name(self) -> str:
        """The file's name without its ending."""
        return self.path.stem

    def __enter__(self) -> "LogWriter":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def append(
        self, kind: str, instant: Instant, fields: Mapping[str, Any], happened: datetime | None = None
    ) -> Entry:
        """Save one entry; when this returns it is on the medium.

        `fields` are plain data: text, numbers, true or false, times, lists of flat mappings. Raises NotSaved
        when the entry is certainly not in the file, Unsure when nobody knows, ValueError for a reserved key.
        """
        n = self.n + 1
        self._be_open(n)
        block, seal, entry = _prepared(n, self._own, kind, instant, fields, happened)
        self._be_alone(n, len(block))
        self.state, self._doubtful = "unsure", (block, seal)
        self._write(n, block)
        self._sync(n)
        self.state, self._doubtful = "open", None
        self._memory += block
        self.n, self._own = n, seal.own
        return entry

    def rescue(self, folder: Path | str) -> "LogWriter":
        """Write the whole session, doubtful entry included, from memory to a new file, and go on there.

        The copy is byte for byte what this file should hold. This writer is closed. Raises NotSaved, and this
        writer then stays as it is, so that another folder can be tried.
        """
        data = bytes(self._memory) + (self._doubtful[0] if self._doubtful else b"")
        path, fd = self._rescue_file(Path(folder), data)
        last = (self._doubtful[1].n, self._doubtful[1].own) if self._doubtful else (self.n, self._own)
        self.close()
        return LogWriter(self._storage, path, fd, data, self.contents, last)

    def close(self) -> None:
        """Let go of the file and its lock. Nothing is left to save, so nothing can fail."""
        if self.state == "closed":
            return
        self.state = "closed"
        try:
            self._storage.close(self._fd)
        except OSError:
            return  # every saved entry was already waited for

    def _be_open(self, n: int) -> None:
        if self.state == "unsure":
            self._raise_unsure(n, "an earlier save failed")
        if self.state != "open":
            raise NotSaved(self._not_saved(n, f"the log is {self.state}", "keep a rescue copy"), retry=False)

    def _be_alone(self, n: int, length: int) -> None:
        """Check that the file is still ours, as long as we left it, and has room by our own limit."""
        try:
            alone = self._storage.same_file(self._fd, self.path)
            alone = alone and self._storage.size(self._fd) == len(self._memory)
        except OSError as error:
            raise NotSaved(self._not_saved(n, because(error), "try again")) from error
        if not alone:
            self.state = "stopped"
            why = "another program has changed, moved or removed it"
            raise NotSaved(self._not_saved(n, why, "keep a rescue copy in another folder"), retry=False)
        if len(self._memory) + length > LOG.file_bytes:
            raise NotSaved(self._not_saved(n, "the log is full", "begin a new session"), retry=False)

    def _write(self, n: int, block: bytes) -> None:
        done = 0
        try:
            for _ in range(WRITES):
                done += self._storage.write(self._fd, block[done:])
                if done == len(block):
                    return
        except OSError as error:
            if error.errno not in NO_ROOM | NOT_ALLOWED:
                self._raise_unsure(n, because(error), error)
            self._roll_back(n, because(error), error)
        self._roll_back(n, "the disk took only a part of it", None)

    def _roll_back(self, n: int, why: str, cause: OSError | None) -> NoReturn:
        try:
            if self._storage.size(self._fd) != len(self._memory):
                self._storage.truncate(self._fd, len(self._memory))
                self._storage.fsync(self._fd)
        except OSError as error:
            self._raise_unsure(n, because(error), error)
        self.state, self._doubtful = "open", None
        raise NotSaved(self._not_saved(n, why, "make room, or choose another folder")) from cause

    def _sync(self, n: int) -> None:
        """Wait for the medium, having seen that the file grew by exactly the block."""
        length = len(self._memory) + len(self._doubtful[0] if self._doubtful else b"")
        try:
            grown = self._storage.size(self._fd) == length
            self._storage.fsync(self._fd)
        except OSError as error:
            self._raise_unsure(n, because(error), error)
        if not grown:
            self._raise_unsure(n, "the file did not grow as it should")

    def _not_saved(self, n: int, why: str, advice: str) -> str:
        return f"Entry {n} is not saved in {shown(self.path)}, because {why}: {advice}"

    def _raise_unsure(self, n: int, why: str, cause: OSError | None = None) -> NoReturn:
        raise Unsure(
            f"Entry {n} may or may not be saved in {shown(self.path)}, because {why}: "
            "write it on paper and keep a rescue copy in another folder"
        ) from cause

    def _rescue_file(self, folder: Path, data: bytes) -> tuple[Path, int]:
        stems = [self.name, *(f"{self.name}-rescue-{number}" for number in range(1, MOST_RESCUES + 1))]
        for stem in stems:
            path = folder / f"{stem}.toml"
            try:
                return path, make_log(self._storage, path, data)
            except NameTaken:
                continue
        raise NotSaved(f"Not saved: {MOST_RESCUES} rescue copies lie in {shown(folder)} already", retry=False)


def _prepared(
    n: int,
    previous: str,
    kind: str,
    instant: Instant,
    fields: Mapping[str, Any],
    happened: datetime | None,
) -> tuple[bytes, Seal, Entry]:
    """The sealed block, parsed back and compared before a byte of it goes out. Raises NotSaved."""
    try:
        plain = normal(_values(n, kind, instant, fields, happened))
        text, seal = sealed_block(block_text("event", plain), n, previous)
        check_limits(text, f"entry {n}", BLOCK_LIMITS)
        entry = entry_from(parsed_back(text, "event", {**plain, "seal": str(seal)}), n)
    except (Unwritable, TomlFileError) as error:
        raise NotSaved(f"Entry {n} is not saved: {error}", retry=False) from error
    block = ("\n" + text).encode()
    if entry is None or len(block) > BLOCK_LIMITS.file_bytes:
        wrong = f"over {BLOCK_LIMITS.file_bytes} bytes" if entry else "without a time or a kind"
        raise NotSaved(f"Entry {n} is not saved: it is {wrong}; expected a few hundred bytes", retry=False)
    return block, seal, entry


def _values(
    n: int, kind: str, instant: Instant, fields: Mapping[str, Any], happened: datetime | None
) -> dict[str, Any]:
    reserved = sorted(set(RESERVED) & set(fields))
    if reserved:
        raise ValueError(f"{reserved[0]} is the log's own key and cannot be a field")
    values: dict[str, Any] = {"n": n, "at": instant.at}
    if happened is not None:
        values["happened"] = happened
    return values | {"boot": instant.boot, "up_s": float(instant.up_s), "kind": kind, **fields}
