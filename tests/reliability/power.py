"""What a disk may hold after the power goes: every state that the promises of fsync(2) and rename(2) allow.

Read from the order in which calls were made: a file's bytes are sure up to its last fsync, its name up to the
folder's last fsync. What came later may be there, not there, there in part, or there as zeros.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import product
from pathlib import Path

from dyesession.storage.faulty import Call

PIECES = 12


@dataclass(frozen=True)
class Promise:
    """How many calls had been made when an entry (by its text) was called saved."""

    after_calls: int
    text: str


def _parts(data: bytes) -> Iterator[bytes]:
    """A write that came to the medium in part: cut short, grown but empty, its pages out of order."""
    for share in range(1, PIECES):
        cut = len(data) * share // PIECES
        yield data[:cut]
        yield data[:cut] + bytes(len(data) - cut)
        yield bytes(cut) + data[cut:]
    yield bytes(len(data))


@dataclass
class _File:
    sure: bytes = b""
    later: list[Call] = field(default_factory=list)

    def states(self) -> Iterator[bytes]:
        """Every content the file may have."""
        content = self.sure
        yield content
        for call in self.later:
            if call.name == "write":
                data = call.detail
                assert isinstance(data, bytes)
                yield from (content + part for part in _parts(data))
                content += data
            else:
                assert isinstance(call.detail, int)
                content = content[: call.detail]
            yield content


@dataclass
class _Disk:
    files: list[_File] = field(default_factory=list)
    open: dict[int, int] = field(default_factory=dict)
    sure_names: dict[Path, int] = field(default_factory=dict)
    names: dict[Path, int] = field(default_factory=dict)
    later_names: list[tuple[Path, int | None]] = field(default_factory=list)

    def take(self, call: Call) -> None:
        """One more call was made."""
        act = getattr(self, f"_{call.name}", None)
        if act is not None:
            act(call)

    def _name(self, path: Path, number: int | None) -> None:
        self.later_names.append((path, number))
        if number is None:
            self.names.pop(path, None)
        else:
            self.names[path] = number

    def _create_exclusive(self, call: Call) -> None:
        assert isinstance(call.where, Path) and isinstance(call.detail, int)
        self.files.append(_File())
        self.open[call.detail] = len(self.files) - 1
        self._name(call.where, len(self.files) - 1)

    def _open_append(self, call: Call) -> None:
        assert isinstance(call.where, Path) and isinstance(call.detail, int)
        self.open[call.detail] = self.names[call.where]

    def _write(self, call: Call) -> None:
        assert isinstance(call.where, int)
        self.files[self.open[call.where]].later.append(call)

    _truncate = _write

    def _fsync(self, call: Call) -> None:
        assert isinstance(call.where, int)
        file = self.files[self.open[call.where]]
        file.sure, file.later = list(file.states())[-1], []

    def _link(self, call: Call) -> None:
        assert isinstance(call.where, Path) and isinstance(call.detail, Path)
        self._name(call.detail, self.names[call.where])

    def _unlink(self, call: Call) -> None:
        assert isinstance(call.where, Path)
        self._name(call.where, None)

    def _fsync_folder(self, call: Call) -> None:
        self.sure_names, self.later_names = dict(self.names), []

    def states(self) -> Iterator[dict[Path, bytes]]:
        """Every set of named files that may be left."""
        names = dict(self.sure_names)
        for number in range(len(self.later_names) + 1):
            if number:
                path, file = self.later_names[number - 1]
                names.pop(path, None) if file is None else names.update({path: file})
            yield from self._contents(dict(names))

    def _contents(self, names: dict[Path, int]) -> Iterator[dict[Path, bytes]]:
        numbers = sorted(set(names.values()))
        for contents in product(*(list(self.files[number].states()) for number in numbers)):
            held = dict(zip(numbers, contents, strict=True))
            yield {path: held[number] for path, number in names.items()}


def after_power_cut(calls: Sequence[Call]) -> Iterator[tuple[int, dict[Path, bytes]]]:
    """For each number of calls made before the power went: every state the disk may be in, each once."""
    disk = _Disk()
    for made in range(len(calls) + 1):
        if made:
            disk.take(calls[made - 1])
        seen: set[frozenset[tuple[Path, bytes]]] = set()
        for state in disk.states():
            key = frozenset(state.items())
            if key not in seen:
                seen.add(key)
                yield made, state
