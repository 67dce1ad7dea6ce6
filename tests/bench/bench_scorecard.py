"""Speed and size as one table, S1 to S9: each row with its goal, what was measured now, and whether it was reached.

Run `python tests/bench/bench_scorecard.py` from the project's top; `S2 S4` prints only those rows, `--quick` measures
each row shorter (fewer rounds, 1,000 logs in place of 5,000), which is good for a look and not for a claim. Every
ratio is taken in the same run, side by side with what it is a ratio to. Linux only; S2 to S4 want a quiet machine.
"""

import argparse
import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2])]

from bench import at_the_log, at_the_stove, bench_daybook, bench_reckoning, first_paint, footprint, long_day

MS, PER_CENT = 1000.0, 100.0
# The goals are our own choice, no source.
START_TIMES, IDLE_TIMES, IDLE_SHARE = 1.25, 4.0, 0.006
ANSWER_S, ANSWER_TIMES = 0.05, 3.0
EVENT_TIMES, OPEN_TIMES = 4.0, 1.5
PAGE_S, COLD_TIMES, MANY_TIMES = bench_daybook.AGAIN_S, bench_daybook.COLD_SHARE, 5.0
RECKONING_S, MEMORY_MB, INSTALLED_MB = 0.1, 10.0, 60.0


@dataclass(frozen=True)
class Line:
    """One figure beside its goal; `reached` is None where it only explains the one above."""

    what: str
    goal: str
    measured: str
    reached: bool | None


def start(quick: bool) -> Iterator[Line]:
    """S1: from the start of the process to the first painted Bench, beside an empty app; started turn about."""
    with tempfile.TemporaryDirectory() as folder:
        room = Path(folder)
        first_paint.bench_s(room), first_paint.empty_s()  # byte code is written once
        pairs = [(first_paint.bench_s(room), first_paint.empty_s()) for _ in range(5 if quick else 15)]
    ours, empty = (_middle(taken) for taken in zip(*pairs, strict=True))
    yield Line(
        "start to the first painted Bench", f"<= {START_TIMES:g} x an empty app",
        f"{ours / empty:.2f} x ({MS * ours:.0f} / {MS * empty:.0f} ms)", ours <= START_TIMES * empty,
    )  # fmt: skip


def idle(quick: bool) -> Iterator[Line]:
    """S2: nobody touches a key, four clocks count in seconds."""
    found = at_the_stove.idle(20.0 if quick else 120.0)
    yield Line(
        "idle, four clocks running", f"<= {IDLE_TIMES:g} x an empty app idle",
        f"{found.stove / found.empty:.2f} x", found.stove <= IDLE_TIMES * found.empty,
    )  # fmt: skip
    yield Line(
        "", f"<= {PER_CENT * IDLE_SHARE:g} % of one core",
        f"{PER_CENT * found.stove:.2f} % ({found.bytes_s / 1000:.1f} kB/s)", found.stove <= IDLE_SHARE,
    )  # fmt: skip


def answers(quick: bool) -> Iterator[Line]:
    """S3: from a key to its painted answer, digits typed at the Stove and in an echo turn about."""
    found = at_the_stove.answers(25 if quick else 150)
    stove, saved, empty = (_share(taken, 0.99) for taken in (found.stove, found.saved, found.empty))
    yield Line(
        f"key to answer, p99 of {len(found.stove)}", f"<= {MS * ANSWER_S:g} ms", f"{MS * stove:.1f} ms", stove <= ANSWER_S
    )
    yield Line(
        "", f"<= {ANSWER_TIMES:g} x an empty app's echo",
        f"{stove / empty:.2f} x (echo {MS * empty:.1f} ms)", stove <= ANSWER_TIMES * empty,
    )  # fmt: skip
    middle = _middle(found.stove), _middle(found.empty)
    yield Line("", "", f"in the middle {middle[0] / middle[1]:.2f} x ({MS * middle[0]:.1f} ms)", None)
    yield Line("", "", f"an entry to its line, saved: p99 {MS * saved:.1f} ms", None)


def one_event(quick: bool) -> Iterator[Line]:
    """S4: decide, seal, parse back, write, apply; the disk is not waited for."""
    found = at_the_log.one_event(3 if quick else 12)
    yield Line(
        f"our work for one event, mean of {found.entries}", f"<= {EVENT_TIMES:g} x tomllib of its block",
        f"{found.times:.2f} x ({MS * found.ours_s:.3f} ms)", found.times <= EVENT_TIMES,
    )  # fmt: skip


def opened(quick: bool) -> Iterator[Line]:
    """S5: a log of 10,000 entries, opened and folded to a state."""
    found = at_the_log.long_day(1 if quick else 5)
    yield Line(
        f"open and fold a log of {found.entries:,} entries", f"<= {OPEN_TIMES:g} x tomllib of the file",
        f"{found.times:.2f} x ({found.ours_s:.2f} s)", found.times <= OPEN_TIMES,
    )  # fmt: skip


def book(quick: bool) -> Iterator[Line]:
    """S6: the day book of many logs of 300 entries: its first page again, and from cold."""
    few = bench_daybook.measured(1000)
    yield from _book(few, PAGE_S)
    if quick:
        return
    many = bench_daybook.measured(5000)
    yield from _book(many, PAGE_S * many.logs / few.logs)
    for what, times in (
        ("first page again, 5,000 to 1,000", many.again_s / few.again_s),
        ("from cold, 5,000 to 1,000", many.cold_s / few.cold_s),
    ):
        yield Line(what, f"<= {MANY_TIMES:g} x", f"{times:.2f} x", times <= MANY_TIMES)


def _book(found: bench_daybook.Book, again_s: float) -> Iterator[Line]:
    logs = f"{found.logs:,} logs of {bench_daybook.ENTRIES}"
    yield Line(f"{logs}: first page again", f"<= {again_s:g} s", f"{found.again_s:.3f} s", found.again_s <= again_s)
    yield Line(
        f"{logs}: from cold", f"<= {COLD_TIMES:g} x tomllib of the files",
        f"{found.cold_times:.2f} x ({found.cold_s:.1f} s, {found.size_mb:.0f} MB)", found.cold_times <= COLD_TIMES,
    )  # fmt: skip


def reckoning(quick: bool) -> Iterator[Line]:
    """S7: one reckoning of the account after each entry of a day of 300. It runs on the day's own thread."""
    taken = [one for number in range(1 if quick else 3) for one in bench_reckoning.timed(number)]
    for what, chosen in (
        ("one reckoning, facts: the longest", [took for took, weighs in taken if not weighs]),
        ("one reckoning, strength read: the longest", [took for took, weighs in taken if weighs]),
    ):
        longest = max(chosen)
        measured = f"{MS * longest:.0f} ms (in the middle {MS * _middle(chosen):.1f}; of {len(chosen)})"
        yield Line(what, f"<= {MS * RECKONING_S:g} ms", measured, longest <= RECKONING_S)


def memory(quick: bool) -> Iterator[Line]:
    """S8: memory after 24 hours at the Stove, and with a long log, more than after the first minute."""
    found = long_day.long_day(1000 if quick else long_day.ENTRIES)
    quiet, whole = found.quiet_mb - found.minute_mb, found.end_mb - found.minute_mb
    goal = f"<= +{MEMORY_MB:g} MB"
    yield Line("memory after 24 hours, nothing done", goal, f"{quiet:+.1f} MB", quiet <= MEMORY_MB)
    measured = f"{whole:+.1f} MB on {found.minute_mb:.0f} ({found.own:,} of the dyer's)"
    yield Line(f"and {found.entries:,} entries", goal, measured, whole <= MEMORY_MB)


def installed(quick: bool) -> Iterator[Line]:
    """S9: the libraries needed to run, byte code and all."""
    found = footprint.footprint()
    whole, (most, most_mb) = sum(found.values()), max(found.items(), key=lambda one: one[1])
    measured = f"{whole:.1f} MB ({len(found)} libraries; {most} {most_mb:.0f})"
    yield Line("libraries needed to run", f"<= {INSTALLED_MB:g} MB", measured, whole <= INSTALLED_MB)


ROWS: dict[str, Callable[[bool], Iterator[Line]]] = {
    "S1": start, "S2": idle, "S3": answers, "S4": one_event, "S5": opened, "S6": book, "S7": reckoning, "S8": memory,
    "S9": installed,
}  # fmt: skip


def _middle(taken: Sequence[float]) -> float:
    return _share(taken, 0.5)


def _share(taken: Sequence[float], share: float) -> float:
    """The least value that this share of them does not exceed."""
    return sorted(taken)[min(len(taken) - 1, int(share * len(taken)))]


def main(names: Sequence[str], quick: bool) -> int:
    """Print the rows as they are measured; 1 where a goal was not reached."""
    missed = 0
    print(f"{datetime.now(UTC):%Y-%m-%d %H:%M} UTC{', quick: no claim' if quick else ''}")
    print(f"{'':3} {'what':42} {'goal':32} {'measured':44} reached")
    for name in names or list(ROWS):
        for line in ROWS[name](quick):
            said = {True: "yes", False: "NO", None: ""}[line.reached]
            print(f"{name:3} {line.what:42} {line.goal:32} {line.measured:44} {said}", flush=True)
            missed += line.reached is False
    return int(missed > 0)


if __name__ == "__main__":
    asked = argparse.ArgumentParser(description="Speed and size, S1 to S9, as one table.")
    asked.add_argument("rows", nargs="*", metavar="ROW", help=f"only these: {', '.join(ROWS)}")
    asked.add_argument("--quick", action="store_true", help="measure shorter: for a look, not for a claim")
    told = asked.parse_args()
    if unknown := [one for one in told.rows if one not in ROWS]:
        asked.error(f"no row {unknown[0]}: expected some of {', '.join(ROWS)}")
    raise SystemExit(main(told.rows, told.quick))
