"""The seal of a log: each block ends by saying its number, the seal before it, and its own checksum.

Must not know what an entry means. Text that parses is no proof of wholeness: `mass_g = 125.75` cut short
reads as 12. CRC-32 finds damage; it is no signature: a forged entry with its seal passes for a true one.
"""

import re
import zlib
from dataclasses import dataclass

EVENT_LINE = b"[[event]]"

SEAL_LINE = re.compile(
    rb'\nseal[ \t]*=[ \t]*"([0-9]{1,9})-([0-9a-f]{8})-([0-9a-f]{8})"[ \t]*\r?(?:\n|\Z)',
)
HEADER_SEAL = re.compile(
    rb'(?:\A|(?<=\n))\[seal\][ \t]*\r?\nheader[ \t]*=[ \t]*"0-([0-9a-f]{8})"[ \t]*\r?(?:\n|\Z)'
)


@dataclass(frozen=True, slots=True)
class Seal:
    """What a seal says: the block's number, the checksum the block before it bears, and its own."""

    n: int
    previous: str
    own: str

    def __str__(self) -> str:
        return f"{self.n}-{self.previous}-{self.own}"


def checksum(data: bytes) -> str:
    """CRC-32 as eight hexadecimal digits."""
    return f"{zlib.crc32(data):08x}"


def sealed_header(tables: str) -> tuple[bytes, str]:
    """A log's head, sealed, and its checksum: over every byte above the `[seal]` table."""
    above = (tables + "\n").encode()
    own = checksum(above)
    return above + f'[seal]\nheader = "0-{own}"\n'.encode(), own


def sealed_block(text: str, n: int, previous: str) -> tuple[str, Seal]:
    """An `[[event]]` block with its seal as last key; the checksum covers all up to its own digits."""
    covered = f'{text}seal = "{n}-{previous}-'
    seal = Seal(n, previous, checksum(covered.encode()))
    return f'{covered}{seal.own}"\n', seal


def fits(covered: bytes, own: str) -> bool:
    """Whether a block bears the right checksum, also after an editor has changed the line ends."""
    if checksum(covered) == own:
        return True
    return b"\r\n" in covered and checksum(covered.replace(b"\r\n", b"\n")) == own
