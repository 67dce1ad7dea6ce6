"""How long from the start of a process to its first painted screen, in a pseudo-terminal that only listens."""

import sys
import time
from pathlib import Path

from bench.watched import ECHO_APP, READY, Watched


def _first_paint_s(command: list[str], mark: str) -> float:
    """Seconds until a mark has come out of a command's terminal; the process is ended then."""
    began = time.perf_counter()
    with Watched(command) as started:
        return started.until(mark) - began


def empty_s() -> float:
    """The empty app."""
    return _first_paint_s([sys.executable, "-c", ECHO_APP], READY)


def bench_s(workroom: Path) -> float:
    """Our own program on its Bench, started as a person starts it."""
    return _first_paint_s([sys.executable, "-m", "dyesession", "--workroom", str(workroom)], "Bench")
