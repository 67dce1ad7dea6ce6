"""Reading the facts of a log that is whole, quickly: what the program itself wrote as account is passed over.

Must not know what the entries mean. A log with anything wrong, however small, goes to the careful reader.
Why: account entries are over half of a day's bytes, and the fold of the facts ignores them.
"""

import re
from pathlib import Path

from dyesession.session.log_entry import Entry, entry_from
from dyesession.session.log_errors import LogError
from dyesession.session.log_read import FORMAT, LogContents, contents_of, understood
from dyesession.session.seal_split import (
    BLANK,
    Block,
    Head,
    TooManyStrays,
    block_values,
    read_head,
    split_blocks,
)
from dyesession.storage import Storage, because, read_file, shown
from dyesession.tomlfile import LOG

_ACCOUNT = re.compile(rb'^kind = "account"$', re.MULTILINE)
_MANY_LINES = re.compile(rb'"""' rb"|'''")


def read_facts(storage: Storage, path: Path) -> LogContents:
    """As `read_log`, but a whole log comes without its account entries. Raises what `read_log` raises."""
    try:
        data = read_file(storage, path, LOG.file_bytes)
    except OSError as error:
        raise LogError(f"{shown(path)} cannot be read: {because(error)}; expected a session log") from error
    return facts_of(path, data)


def facts_of(path: Path, data: bytes) -> LogContents:
    """The facts in a log's bytes. Raises NotALog or NewerFormat."""
    return _whole(path, data) or contents_of(path, understood(data, path))


def _whole(path: Path, data: bytes) -> LogContents | None:
    """What a log without any fault holds; None at the first doubt."""
    head = read_head(data)
    if head.trouble is not None or head.stated != head.computed or head.values.get("format") != FORMAT:
        return None
    try:
        blocks = split_blocks(data, head.end)
    except TooManyStrays:
        return None
    if not _chained(data, head, blocks):
        return None
    entries = []
    for number, block in enumerate(blocks, 1):
        if _is_account(data[block.start : block.end]):
            continue
        entry = _entry(data, block, number)
        if entry is None:
            return None
        entries.append(entry)
    return LogContents(path, head.values, None, tuple(entries), (), (), 0)


def _chained(data: bytes, head: Head, blocks: tuple[Block, ...]) -> bool:
    """Whether every block follows the one before it, unbroken, with nothing loose between them."""
    previous, end = head.computed, head.end
    for number, block in enumerate(blocks, 1):
        seal = block.seal
        if seal is None or not block.whole or seal.n != number or seal.previous != previous:
            return False
        if data[end : block.start].strip(BLANK):
            return False
        previous, end = seal.own, block.end
    return not data[end:].strip(BLANK)


def _is_account(block: bytes) -> bool:
    return _ACCOUNT.search(block) is not None and _MANY_LINES.search(block) is None


def _entry(data: bytes, block: Block, number: int) -> Entry | None:
    values = block_values(data, block)
    if values is None or values.get("n") != number:
        return None
    return entry_from(values, number)
