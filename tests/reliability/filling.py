"""Run out of room for real: a limit on the size of files, as the system sets it. Prints counts as JSON.

usage: filling.py FOLDER
"""

import json
import resource
import sys
from collections import Counter
from pathlib import Path

from reliability.days import PLAIN, START

from dyesession.clock import SteppingClock
from dyesession.session.log import LogWriter, NotSaved, create_log, read_log
from dyesession.storage import DISK

SIZES = range(1, 700, 7)  # bytes left when the room runs out


def limit(size: int) -> None:
    """Let no file grow beyond `size` bytes (-1: as large as it likes)."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, resource.RLIM_INFINITY))


def fill(writer: LogWriter, clock: SteppingClock, saved: list[int]) -> str:
    """Save until the room runs out; what was said then."""
    try:
        while True:
            writer.append("noted", clock.advance(1), {"number": len(saved)})
            saved.append(len(saved))
    except NotSaved as error:
        return str(error)


def main(folder: str) -> None:
    """Fill a log to each of many sizes, make room, go on."""
    counts: Counter[str] = Counter()
    for spare in SIZES:
        clock, saved = SteppingClock(START), list[int]()
        with create_log(DISK, Path(folder), f"filled-{spare}", PLAIN.header) as writer:
            limit(writer.path.stat().st_size + spare)
            said = fill(writer, clock, saved)
            counts["plain words"] += "is not saved" in said and "may not grow any further" in said
            full = [one.fields["number"] for one in read_log(DISK, writer.path).entries]
            counts["nothing lost"] += full == saved and not read_log(DISK, writer.path).torn
            limit(resource.RLIM_INFINITY)
            writer.append("noted", clock.advance(1), {"number": len(saved)})
            contents = read_log(DISK, writer.path)
            counts["goes on"] += contents.whole and len(contents.entries) == len(saved) + 1
        counts["fillings"] += 1
    print(json.dumps(counts))


if __name__ == "__main__":
    main(*sys.argv[1:])
