"""How long one reckoning takes after each entry of a day of 300 entries, readings of strength among them.

Run `python tests/bench/bench_reckoning.py` from the project's top.
"""

import random
import sys
import time
from dataclasses import replace
from pathlib import Path

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2])]

from bench.dye_world import plan_for, simulated

from dyesession.account.ledger import Ledger
from dyesession.account.unknowns import starting_priors
from dyesession.clock import Instant
from dyesession.plan.model import Plan
from dyesession.session import events as e
from dyesession.session.fold import Entry

ENTRIES = 300


def long_day(number: int) -> tuple[Plan, Instant, tuple[Entry, ...]]:
    """A simulated day whose dyer also reads the dye pot's temperature until there are 300 entries."""
    plan = plan_for(200, 100, 6.0)
    day, points = simulated(dict(starting_priors(plan)), plan, number, 1.0, False, True, 3)
    entries = points[-1].entries
    again = (ENTRIES - len(entries)) / len(entries)
    found: list[Entry] = []
    chance = random.Random(number)
    for one in entries:
        found.append(one)
        for _ in range(int(again + chance.random())):
            found.append(Entry(0, one.instant, e.Read("dye pot", temperature_c=60.0)))
    return plan, day.opened, tuple(replace(one, n=n) for n, one in enumerate(found, start=1))


def timed(number: int) -> list[tuple[float, bool]]:
    """Seconds for each entry, and whether it was a reading that weighs the worlds."""
    plan, opened, entries = long_day(number)
    ledger, took = Ledger.start(plan, opened), []
    for entry in entries:
        known, start = len(ledger.held.evidence), time.perf_counter()
        ledger = ledger.after(entry)
        ledger.account()
        took.append((time.perf_counter() - start, len(ledger.held.evidence) > known))
    return took


def shown(name: str, seconds: list[float]) -> str:
    """One row of the table, in milliseconds."""
    ordered = sorted(seconds)
    middle, most = ordered[len(ordered) // 2], ordered[-1]
    return f"{name:28} {len(ordered):5} {1000 * middle:8.1f} {1000 * ordered[int(0.95 * len(ordered))]:8.1f} {1000 * most:8.1f}"


if __name__ == "__main__":
    rows = [one for number in range(3) for one in timed(number)]
    print(f"{'one reckoning, ms':28} {'count':>5} {'median':>8} {'p95':>8} {'most':>8}")
    print(shown("facts and temperatures", [took for took, weighs in rows if not weighs]))
    print(shown("readings that weigh worlds", [took for took, weighs in rows if weighs]))
