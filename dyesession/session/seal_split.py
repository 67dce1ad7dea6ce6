"""Cutting a log's bytes into its head and its sealed blocks, without yet asking whether they belong together.

Must not know what an entry means. Bytes first, text later: one bad byte at the end must not spoil the whole.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from dyesession.errors import UserError
from dyesession.session.seal import EVENT_LINE, HEADER_SEAL, SEAL_LINE, Seal, checksum, fits
from dyesession.tomlfile import HAND_WRITTEN, Limits, parse_toml, read_block
from dyesession.tomlfile.limits import check_limits

BYTE_ORDER_MARK = b"\xef\xbb\xbf"
BLANK = b" \t\r\n"
MOST_STRAYS = 2_000  # a file with more blocks that belong nowhere is no log; common practice, no source
BLOCK_LIMITS = Limits(file_bytes=64_000)  # about a hundred times a usual entry; common practice, no source

_FORMAT = re.compile(rb"^format[ \t]*=[ \t]*([0-9]{1,9})[ \t]*\r?$", re.MULTILINE)
_TABLE = re.compile(rb"^[ \t]*\[", re.MULTILINE)


class TooManyStrays(Exception):
    """The file is mostly something other than a log."""


@dataclass(frozen=True, slots=True)
class Head:
    """What stands above the entries, up to `end`; `stated` is its checksum, None when it bears no seal."""

    values: Mapping[str, Any]
    stated: str | None
    computed: str
    end: int
    trouble: str | None


@dataclass(frozen=True, slots=True)
class Block:
    """One `[[event]]` block: where it starts and (with its seal) ends, and whether its checksum is right.

    `rest` is where the text after the seal ends: the next block, or the end of the file.
    """

    start: int
    end: int
    rest: int
    seal: Seal | None
    whole: bool
    computed: str


def format_number(data: bytes) -> int | None:
    """The format a log says it has, found without believing anything else in it."""
    table = _TABLE.search(data, 0, HAND_WRITTEN.file_bytes)
    found = _FORMAT.search(data.removeprefix(BYTE_ORDER_MARK), 0, table.start() if table else 4096)
    return int(found[1]) if found else None


def read_head(data: bytes) -> Head:
    """The head of a log; what is wrong with it is said in `trouble`."""
    first = next(_event_lines(data, 0), len(data))
    skip = len(BYTE_ORDER_MARK) if data.startswith(BYTE_ORDER_MARK) else 0
    seal = HEADER_SEAL.search(data, skip, first)
    above = data[skip : seal.start() if seal else first]
    values, trouble = _head_values(above)
    if seal is None:
        return Head(values, None, checksum(above), first, trouble or "the head bears no seal")
    stated = seal[1].decode()
    if trouble is None and not fits(above, stated):
        trouble = "the head was changed after it was saved, or damaged"
    if trouble is None and skip:
        trouble = "an editor has put a byte order mark before the first line"
    return Head(values, stated, checksum(above), seal.end(), trouble)


def _head_values(above: bytes) -> tuple[Mapping[str, Any], str | None]:
    try:
        return parse_toml(above, "the head of the log", HAND_WRITTEN).values, None
    except UserError as error:
        return {}, f"the head cannot be read ({error})"


def split_blocks(data: bytes, start: int) -> tuple[Block, ...]:
    """The blocks from `start` on, in the order they stand. Raises TooManyStrays when most bear no seal."""
    blocks: list[Block] = []
    unsealed, here = 0, -1
    for following in _ends(data, start):
        if here >= 0:
            blocks.append(_block(data, here, following))
            unsealed += blocks[-1].seal is None
            if unsealed > MOST_STRAYS:
                raise TooManyStrays
        here = following
    return tuple(blocks)


def _ends(data: bytes, start: int) -> Iterator[int]:
    """Where each block begins, and then where the last one ends."""
    yield from _event_lines(data, start)
    yield len(data)


def _event_lines(data: bytes, start: int) -> Iterator[int]:
    if start == 0 and _is_event_line(data, 0):
        yield 0
    at = data.find(b"\n" + EVENT_LINE, max(0, start - 1))
    while at >= 0:
        if _is_event_line(data, at + 1):
            yield at + 1
        at = data.find(b"\n" + EVENT_LINE, at + 1)


def _is_event_line(data: bytes, at: int) -> bool:
    end = data.find(b"\n", at)
    line = data[at : end if end >= 0 else len(data)] if end - at < BLOCK_LIMITS.file_bytes else b""
    return line == EVENT_LINE or line.rstrip(BLANK) == EVENT_LINE


def _block(data: bytes, start: int, rest: int) -> Block:
    hit = SEAL_LINE.search(data, start, rest)
    if hit is None:
        return Block(start, rest, rest, None, False, "")
    covered = data[start : hit.start(3)]
    seal = Seal(int(hit[1]), hit[2].decode(), hit[3].decode())
    computed = checksum(covered)
    return Block(start, hit.end(), rest, seal, computed == seal.own or fits(covered, seal.own), computed)


def block_values(data: bytes, block: Block) -> dict[str, Any] | None:
    """The values of a block, or None when it cannot be read."""
    if block.end - block.start > BLOCK_LIMITS.file_bytes:
        return None
    try:
        text = data[block.start : block.end].decode()
        if "\r" in text:
            text = text.replace("\r\n", "\n")
        check_limits(text, "", BLOCK_LIMITS)
        return read_block(text, "event")
    except (ValueError, KeyError, RecursionError, MemoryError, UserError):
        return None
