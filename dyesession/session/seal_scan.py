"""Reading a log that may be torn, damaged, edited or stale: what is whole, what doubtful, what torn off.

Never writes and never guesses: no seal, no entry. It cannot see whole entries gone from the end. A number
alone would not do: after a tear, stale whole blocks look new by it, and only the seal before tells.
"""

import re
from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

from dyesession.session.log_entry import UNREADABLE, Entry, entry_from
from dyesession.session.seal import Seal
from dyesession.session.seal_split import (
    BLANK,
    MOST_STRAYS,
    Block,
    Head,
    TooManyStrays,
    block_values,
    read_head,
    split_blocks,
)

LONGEST_MOVE = 64  # so many entries cut and pasted elsewhere are still put back in order; our own choice
NO_TIME = datetime.fromtimestamp(0, UTC)

CHANGED = "it was changed after it was saved, or damaged"


@dataclass(frozen=True, slots=True)
class Scan:
    """All that a log's bytes tell.

    `whole_to`: where the last entry that counts ends; `torn`: how many bytes after that are not blank space.
    `faults`: a sentence for each thing wrong, with its line. `missing`: gaps in the numbers, first and last.
    `n` and `own`: number and checksum of the last entry (of the head when there is none).
    """

    header: Mapping[str, Any]
    header_trouble: str | None
    sealed_head: bool
    entries: tuple[Entry, ...]
    faults: tuple[str, ...]
    missing: tuple[tuple[int, int], ...]
    whole_to: int
    torn: int
    n: int
    own: str


def scan(data: bytes) -> Scan:
    """Follow the chain of seals through a log. Raises TooManyStrays when most of the file is no log."""
    head = read_head(data)
    chain = _Chain(data, head, split_blocks(data, head.end))
    chain.follow()
    return chain.result()


@dataclass(frozen=True, slots=True)
class _Kept:
    block: Block
    entry: Entry
    own: str


@dataclass
class _Chain:
    """How far the seals have been followed."""

    data: bytes
    head: Head
    blocks: Sequence[Block]
    n: int = 0
    kept: list[_Kept] = field(default_factory=list)
    strays: dict[int, str] = field(default_factory=dict)
    foreign: set[tuple[int, str]] = field(default_factory=set)  # whole strays: what follows is astray too
    missing: list[tuple[int, int]] = field(default_factory=list)
    faults: list[tuple[int, str]] = field(default_factory=list)
    used: set[int] = field(default_factory=set)
    accept: tuple[str | None, ...] = ()
    shaky: bool = False  # the block before was changed, so its checksum cannot vouch for the next
    _index: dict[tuple[int, str], int] | None = None

    def follow(self) -> None:
        """Take the blocks as they stand; what does not follow is looked at more closely."""
        self.accept = (self.head.stated, self.head.computed)
        self.shaky = self.head.stated is None or self.head.stated != self.head.computed
        for number, block in enumerate(self.blocks):
            if number in self.used:
                continue
            seal = block.seal
            if seal is None:
                self._stray(number, "bears no seal")
            elif not block.whole:
                self._take_damaged(number, block, seal)
            elif seal.n == self.n + 1 and seal.previous in self.accept:
                self._keep(block, seal.n, None)
            else:
                self._take_odd(number, block, seal)
        while (moved := self._next(self.n, self.accept)) is not None:
            self._keep_moved(moved)
        while self.kept and self.kept[-1].entry.kind == UNREADABLE and not self.kept[-1].block.whole:
            self.kept.pop()  # damage at the very end: pages of one write that came to the disk out of order

    def _take_odd(self, number: int, block: Block, seal: Seal) -> None:
        if seal.n <= self.n:
            self._stray(number, f"is numbered {seal.n}, which stands above already")
        elif seal.n > self.n + 1:
            self._take_jump(number, block, seal)
        elif self.shaky:
            self._keep(block, seal.n, "it cannot be tied to what stands before it, which was changed")
        else:
            self._stray(number, "does not follow the entry before it")

    def _take_jump(self, number: int, block: Block, seal: Seal) -> None:
        moved = self._moved(seal)
        if moved is not None:
            for other in moved:
                self._keep_moved(other)
            self._keep(block, seal.n, None)
        elif self._next(self.n, self.accept) is not None or (seal.n - 1, seal.previous) in self.foreign:
            self._stray(number, "does not follow the entry before it")
        else:
            first, last = self.n + 1, seal.n - 1
            self.missing.append((first, last))
            told = f"entry {first} is missing" if first == last else f"entries {first} to {last} are missing"
            self.faults.append((block.start, told))
            self._keep(block, seal.n, "it comes after missing entries")

    def _keep_moved(self, number: int) -> None:
        self._keep(self.blocks[number], self.n + 1, "it stands out of its place in the file")
        self.used.add(number)
        self.strays.pop(number, None)

    def _take_damaged(self, number: int, block: Block, seal: Seal) -> None:
        values = block_values(self.data, block)
        wanted = self.n + 1
        agreeing = (values is not None and values.get("n") == wanted) + (seal.n == wanted)
        if agreeing + (seal.previous in self.accept) < 2:
            self._stray(number, "bears a seal that is not its own")
            return
        self._keep(block, wanted, CHANGED, values)
        self.shaky = True

    def _keep(self, block: Block, n: int, trouble: str | None, values: dict[str, Any] | None = None) -> None:
        if values is None:
            values = block_values(self.data, block)
        if values is not None and values.get("n") != n:
            trouble = trouble or "its number and its seal differ"
        entry = values and entry_from(values, n, trouble)
        if not entry:
            entry = self._unreadable(n)
        if entry.trouble:
            self.faults.append((block.start, f"entry {n}: {entry.trouble}"))
        own = block.seal.own if block.seal else ""
        self.kept.append(_Kept(block, entry, own))
        self.n, self.accept, self.shaky = n, (own, block.computed), False

    def _unreadable(self, n: int) -> Entry:
        before = self.kept[-1].entry if self.kept else None
        at, boot, up_s = (before.at, before.boot, before.up_s) if before else (NO_TIME, "", 0.0)
        return Entry(n, at, None, boot, up_s, UNREADABLE, {}, "it is damaged and cannot be read")

    def _stray(self, number: int, why: str) -> None:
        self.strays[number] = why
        seal = self.blocks[number].seal
        if seal and self.blocks[number].whole:
            self.foreign.add((seal.n, seal.own))
        if len(self.strays) > MOST_STRAYS:
            raise TooManyStrays

    def _next(self, n: int, accept: tuple[str | None, ...]) -> int | None:
        """The block anywhere in the file that follows entry `n` bearing one of these checksums."""
        if self._index is None:
            self._index = {
                (one.seal.n, one.seal.previous): number
                for number, one in enumerate(self.blocks)
                if one.seal and one.whole
            }
        found = (self._index.get((n + 1, own)) for own in accept if own)
        return next((number for number in found if number is not None and number not in self.used), None)

    def _moved(self, seal: Seal) -> list[int] | None:
        """Blocks elsewhere in the file that fill the gap up to this seal exactly, or None."""
        path: list[int] = []
        n, accept = self.n, self.accept
        while n + 1 < seal.n and len(path) < LONGEST_MOVE:
            number = self._next(n, accept)
            if number is None:
                return None
            path.append(number)
            n, accept = n + 1, (self.blocks[number].computed,)
        return path if n + 1 == seal.n and seal.previous in accept else None

    def result(self) -> Scan:
        """What was found, with a sentence for each fault."""
        whole_to = max((one.block.end for one in self.kept), default=self.head.end)
        tail = self.data[whole_to:]
        torn = len(tail) if tail.strip(BLANK) else 0
        last = self.kept[-1] if self.kept else None
        return Scan(
            header=self.head.values,
            header_trouble=self.head.trouble,
            sealed_head=self.head.stated is not None,
            entries=tuple(one.entry for one in self.kept),
            faults=self._sentences(whole_to, torn),
            missing=tuple(self.missing),
            whole_to=whole_to,
            torn=torn,
            n=last.entry.n if last else 0,
            own=last.own if last else self.head.stated or self.head.computed,
        )

    def _sentences(self, whole_to: int, torn: int) -> tuple[str, ...]:
        found = [(at, what) for at, what in self.faults if at < whole_to]
        for number, why in self.strays.items():
            if self.blocks[number].start < whole_to:
                found.append((self.blocks[number].start, f"a block {why}; it is kept but not counted"))
        found += self._loose(whole_to)
        if torn:
            found.append((whole_to, f"{torn} bytes at the end are not a whole entry"))
        if self.head.trouble:
            found.append((0, self.head.trouble))
        return _with_lines(self.data, found)

    def _loose(self, whole_to: int) -> list[tuple[int, str]]:
        """Text that stands between entries and belongs to none."""
        spans = [(self.head.end, self.blocks[0].start)] if self.blocks else []
        spans += [(one.block.end, one.block.rest) for one in self.kept if one.block.end < one.block.rest]
        told = "text stands here that belongs to no entry; it is kept but not counted"
        return [
            (start, told) for start, end in spans if end <= whole_to and self.data[start:end].strip(BLANK)
        ]


def _with_lines(data: bytes, found: list[tuple[int, str]]) -> tuple[str, ...]:
    if not found:
        return ()
    breaks = [hit.start() for hit in re.finditer(b"\n", data)]
    return tuple(f"line {bisect_left(breaks, at) + 1}: {what}." for at, what in sorted(found))
