"""What was promised about a log, so that a test can say whether it was kept."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from dyesession.session.log import Entry, NewerFormat, NotALog
from dyesession.session.log_read import understood
from dyesession.session.seal_scan import Scan, scan

BLANK = b" \t\r\n"


@dataclass(frozen=True)
class Original:
    """A whole log: its bytes, its entries, where its head and each of its blocks end."""

    data: bytes
    entries: tuple[Entry, ...]
    head_end: int
    ends: tuple[int, ...]

    @property
    def starts(self) -> tuple[int, ...]:
        """Where each block begins, the blank line before it included."""
        return (self.head_end, *self.ends[:-1])

    def block(self, number: int) -> bytes:
        """One block's bytes, counted from 0."""
        return self.data[self.starts[number] : self.ends[number]]

    def acknowledged(self, cut: int) -> int:
        """How many entries were wholly written once the file was `cut` bytes long."""
        return sum(end <= cut for end in self.ends)


def original(path: Path) -> Original:
    """The log at `path`, which must be whole."""
    data = path.read_bytes()
    found = scan(data)
    assert not found.faults and found.entries
    pieces = data.split(b"\n\n[[event]]")
    ends, at = [], len(pieces[0]) + 1
    head_end = at
    for piece in pieces[1:]:
        at += len(piece) + len(b"\n[[event]]") + 1
        ends.append(min(at, len(data)))
    return Original(data, found.entries, head_end, tuple(ends))


def look(data: bytes) -> Scan | None:
    """What the reader makes of the bytes; None when it refuses them."""
    try:
        return understood(data, Path("log.toml"))
    except (NotALog, NewerFormat):
        return None


def broken_promises(true: Original, acknowledged: int, found: Scan | None, damaged: bytes) -> list[str]:
    """What a reader of `damaged` got wrong, given how many entries had been called saved."""
    if found is None:
        return ["refused a log with saved entries"] if acknowledged else []
    wrong = []
    first_gap = found.missing[0][0] if found.missing else len(found.entries) + len(true.entries)
    sound = [one for one in found.entries if one.trouble is None and one.n < first_gap and found.sealed_head]
    if any(one not in true.entries for one in sound):
        wrong.append("silently wrong")
    if list(true.entries[:acknowledged]) != [one for one in sound if one.n <= acknowledged]:
        wrong.append("lost")
    counted = len(found.entries)
    kept_to = true.ends[counted - 1] if found.entries == true.entries[:counted] and counted else true.head_end
    spare = damaged[min(kept_to, len(damaged)) :].strip(BLANK)
    if not found.faults and (spare or len(sound) != counted):
        wrong.append("not reported")
    return wrong


def numbers(entries: Sequence[Entry]) -> list[int]:
    """The numbers of some entries, in their order."""
    return [one.n for one in entries]
