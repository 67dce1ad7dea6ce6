"""Our own work beside the standard parser's, measured in one run: ratios, never seconds."""

import time
import tomllib
from collections.abc import Callable
from pathlib import Path

from reliability.days import PLAIN, QUICK, START

from dyesession.clock import SteppingClock
from dyesession.session.log import create_log, read_log

ENTRIES = 3_000
MOST_PER_ENTRY = (
    4.0  # rendering, sealing, parsing back and five calls to the disk / tomllib.loads of the block
)
MOST_PER_LOG = 1.0  # reading and verifying a log / tomllib.loads of the file; the fold has the rest of 1.5
FIELDS = {"ingredient": "alum", "mass_g": 29.0, "resolution_g": 1.0, "how": "weighed"}


def least_s(act: Callable[[], object], times: int = 3) -> float:
    """The least processor time an act takes."""
    taken = []
    for _ in range(times):
        started = time.process_time()
        act()
        taken.append(time.process_time() - started)
    return min(taken)


def test_our_work_keeps_step_with_the_standard_parser(tmp_path: Path) -> None:
    clock = SteppingClock(START)
    instants = [clock.advance(1.001) for _ in range(ENTRIES)]
    with create_log(QUICK, tmp_path, PLAIN.name, PLAIN.header) as writer:

        def save() -> None:
            for instant in instants:
                writer.append("weighed", instant, FIELDS)

        saving_s = least_s(save)
    text = writer.path.read_text()
    blocks = ["[[event]]" + one for one in text.split("[[event]]")[-ENTRIES:]]
    parsing_s = least_s(lambda: [tomllib.loads(block) for block in blocks])
    assert saving_s <= MOST_PER_ENTRY * parsing_s, saving_s / parsing_s
    whole_s = least_s(lambda: tomllib.loads(text))
    reading_s = least_s(lambda: read_log(QUICK, writer.path))
    assert reading_s <= MOST_PER_LOG * whole_s, reading_s / whole_s
