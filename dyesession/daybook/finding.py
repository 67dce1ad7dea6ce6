"""Every log of one or more folders, each in one line; what cannot be read is listed with its reason.

One disposable index in the cache folder keeps it fast. It is keyed by what is in a file (its size and the
checksum of all its bytes), never by its name or date: copying, syncing or renaming cannot make it lie.
"""

import zlib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from dyesession.daybook.day_line import DayLine, as_plain, day_line, from_plain
from dyesession.daybook.index import load_index, save_index
from dyesession.errors import UserError
from dyesession.session.quick_day import day_from_bytes
from dyesession.storage import Storage, because, read_file, shown
from dyesession.tomlfile import LOG

LOG_ENDING = ".toml"


class FolderUnreadable(UserError):
    """A folder of logs that cannot be looked into."""


@dataclass(frozen=True)
class Aside:
    """A file that is no line of the day book, and why."""

    file: str
    reason: str


@dataclass(frozen=True)
class DayBook:
    """All days, the newest first, and what was left aside."""

    days: tuple[DayLine, ...]
    aside: tuple[Aside, ...] = ()

    def day(self, session: str) -> DayLine | None:
        """The day of that session name."""
        return next((one for one in self.days if one.session == session), None)

    @property
    def is_demo(self) -> bool:
        """Whether nothing but demo days (and rehearsals) lies here: only then do they count as days dyed."""
        return all(one.demo or one.rehearsal for one in self.days)

    @property
    def counted(self) -> tuple[DayLine, ...]:
        """The days that count as dyed: no rehearsal, and no demo day beside a day of the dyer's own."""
        demo = self.is_demo
        return tuple(one for one in self.days if not one.rehearsal and (demo or not one.demo))


def day_book(storage: Storage, folders: Sequence[Path], index: Path | None = None) -> DayBook:
    """Every log of these folders. `index` is where the index is kept, None for none.

    A folder that is not there holds nothing. Raises `FolderUnreadable` for one that cannot be listed.
    """
    known = load_index(storage, index) if index is not None else {}
    used: dict[str, dict[str, Any]] = {}
    lines: list[tuple[Path, DayLine]] = []
    aside: list[Aside] = []
    for path in _files(storage, folders):
        try:
            lines.append((path, _line(storage, path, known, used)))
        except (UserError, OSError) as trouble:
            aside.append(Aside(path.name, _reason(path, trouble)))
    if index is not None and used != known:
        save_index(storage, index, used)
    days, copies = _one_of_each(storage, lines)
    return DayBook(tuple(sorted(days, key=_newest)), (*aside, *copies))


def _files(storage: Storage, folders: Sequence[Path]) -> Iterable[Path]:
    for folder in dict.fromkeys(folders):
        try:
            names = storage.list_folder(folder)
        except FileNotFoundError:
            continue
        except OSError as error:
            raise FolderUnreadable(
                f"{shown(folder)} cannot be looked into, because {because(error)}; expected a folder of logs"
            ) from error
        yield from (folder / one for one in names if one.endswith(LOG_ENDING))


def _line(
    storage: Storage, path: Path, known: dict[str, dict[str, Any]], used: dict[str, dict[str, Any]]
) -> DayLine:
    data = read_file(storage, path, LOG.file_bytes)
    key = f"{len(data)}-{zlib.crc32(data):08x}"
    table = known.get(key)
    if table is not None:
        try:
            line = from_plain({**table, "file": path.name})
        except (KeyError, TypeError, ValueError):
            table = None  # an index somebody meddled with costs only time
    if table is None:
        line = day_line(day_from_bytes(path, data), path.name)
        table = as_plain(line)
    used[key] = table
    return line


def _reason(path: Path, trouble: Exception) -> str:
    if isinstance(trouble, OSError) and not isinstance(trouble, UserError):
        return f"{shown(path)} cannot be read, because {because(trouble)}; expected a session log"
    return str(trouble)


def _newest(line: DayLine) -> tuple[str, ...]:
    """Sorts the newest first: each digit and letter turned round."""
    return tuple(chr(0x10FFFF - ord(one)) for one in f"{line.opened} {line.session}")


def _one_of_each(
    storage: Storage, lines: Sequence[tuple[Path, DayLine]]
) -> tuple[list[DayLine], list[Aside]]:
    """One line a day: of several copies the longest counts, and a copy that went another way is said so."""
    by_session: dict[str, list[tuple[Path, DayLine]]] = {}
    for path, line in lines:
        by_session.setdefault(line.session or line.file, []).append((path, line))
    days, aside = [], []
    for copies in by_session.values():
        best = max(copies, key=lambda one: (one[1].last_n, _own_name(one[1]), one[1].last_at))
        days.append(best[1])
        aside += [_copy(storage, one[0], best[0]) for one in copies if one is not best]
    return days, aside


def _own_name(line: DayLine) -> bool:
    return line.file == f"{line.session}{LOG_ENDING}"


def _copy(storage: Storage, path: Path, best: Path) -> Aside:
    """A second file of one day: an earlier copy, or one that was written on elsewhere."""
    own, other = (read_file(storage, one, LOG.file_bytes) for one in (path, best))
    if other.startswith(own.rstrip()):
        return Aside(path.name, f"{shown(path.name)} is a copy, older or the same, of {shown(best.name)}")
    return Aside(
        path.name,
        f"{shown(path.name)} tells of the same day as {shown(best.name)}, with other entries: the longer one"
        f' is listed; look at both with "dyesession review {path.stem}"',
    )
