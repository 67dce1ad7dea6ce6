"""Several programs reach for one log at once. Run as a program of its own; prints counts as JSON.

usage: racing.py open | create | unlocked FOLDER RACES
"""

import json
import os
import sys
from collections import Counter
from pathlib import Path

from reliability.days import PLAIN

from dyesession.session.log import LogInUse, NameTaken, create_log, open_log, read_log
from dyesession.storage import DISK, DiskStorage

RACERS = 4


class Unlocked(DiskStorage):
    """Sabotage: everybody gets the lock."""

    def lock(self, fd: int) -> bool:
        """Always."""
        return True


def reach(what: str, path: Path) -> str:
    """Reach for the log; what came of it, in one line. The winner keeps it until the race is over."""
    try:
        if what == "create":
            create_log(DISK, path.parent, path.stem, PLAIN.header)
        else:
            open_log(Unlocked() if what == "unlocked" else DISK, path)
    except NameTaken:
        return "lost - -"
    except LogInUse as error:
        readable = read_log(DISK, path).whole and "looked at" in str(error)
        return f"lost {error.pid} {readable}"
    return f"won {os.getpid()} -"


def race(what: str, path: Path) -> list[list[str]]:
    """One race; each racer's line, split."""
    start_read, start_write = os.pipe()
    end_read, end_write = os.pipe()
    told_read, told_write = os.pipe()
    racers = []
    for _ in range(RACERS):
        child = os.fork()
        if child == 0:
            os.close(start_write)
            os.close(end_write)
            os.read(start_read, 1)  # all start when the gate is closed for good
            os.write(told_write, (reach(what, path) + "\n").encode())
            os.read(end_read, 1)
            os._exit(0)
        racers.append(child)
    os.close(told_write)
    os.close(start_write)
    lines = [_line(told_read) for _ in racers]
    os.close(end_write)
    for child in racers:
        os.waitpid(child, 0)
    for fd in (start_read, end_read, told_read):
        os.close(fd)
    return [line.split() for line in lines]


def _line(fd: int) -> str:
    line = b""
    while not line.endswith(b"\n"):
        got = os.read(fd, 1)
        if not got:
            break
        line += got
    return line.decode()


def main(what: str, folder: str, races: str) -> None:
    """Run some races."""
    counts: Counter[str] = Counter()
    for number in range(int(races)):
        path = Path(folder) / f"raced-{number}.toml"
        if what != "create":
            create_log(DISK, path.parent, path.stem, PLAIN.header).close()
        lines = race(what, path)
        winners = [line[1] for line in lines if line[:1] == ["won"]]
        losers = [line for line in lines if line[:1] == ["lost"]]
        counts["races"] += 1
        counts["one winner"] += len(winners) == 1 and len(losers) == RACERS - 1
        counts["several winners"] += len(winners) > 1
        counts["holder named"] += all(line[1:] == [winners[0], "True"] for line in losers)
        counts["whole log"] += read_log(DISK, path).whole
    print(json.dumps(counts))


if __name__ == "__main__":
    main(*sys.argv[1:])
