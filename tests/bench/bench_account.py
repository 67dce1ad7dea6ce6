"""How honest and how wide the account's bands are, on simulated days whose truths are known.

Run `python tests/bench/bench_account.py` (from the project's top) for the table: 1,000 days with truths drawn from
the guesses, and fewer in odd worlds; about ten minutes on two idle cores. A number sets the days.
"""

import math
import random
import sys
import time
from collections import defaultdict
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2])]

from bench.dye_world import plan_for, simulated

from dyesession.account.ledger import Ledger
from dyesession.account.model import Account, Band90
from dyesession.account.unknowns import starting_priors

DAYS = 1000
ODD_SHARE = 0.3  # so many days of that in each of the other worlds
AT_ONCE = 20  # days a process takes at a time
NONE = Band90(0.0, 0.0, 0.0)
WORLDS = {"as guessed": (1.0, False), "twice as wide": (2.0, False), "two stores": (1.0, True)}


@dataclass
class Tally:
    """How often a band held its truth, and how wide it was over the truth's own size."""

    days: int = 0
    held: int = 0
    too_low: int = 0
    width: float = 0.0

    def count(self, band: Band90, truth: float, width: float) -> None:
        self.days += 1
        slack = 1e-9 * max(1.0, abs(truth))
        self.held += band.low - slack <= truth <= band.high + slack
        self.too_low += truth > band.high + slack
        self.width += width

    def add(self, other: "Tally") -> None:
        self.days += other.days
        self.held += other.held
        self.too_low += other.too_low
        self.width += other.width

    @property
    def share(self) -> float:
        return self.held / self.days

    @property
    def mean_width(self) -> float:
        return self.width / self.days


Key = tuple[str, str, bool]  # world, what, after readings


def bands(account: Account, name: str) -> dict[str, Band90]:
    """The bands the dyer is shown, by the truth they are about."""
    bath = account.bath("dye pot")
    assert bath is not None
    if name == "strained":
        stuff, skein = account.dyestuff("madder"), account.fibre("skein")
        assert stuff is not None
        assert skein is not None
        return {
            "colour in the dye pot": bath.grams("madder"),
            "volume of the dye pot": bath.volume_l,
            "left in the dyestuff": stuff.left_in_dyestuff,
            "once more would bring": stuff.next_pull,
            "alum on the fibre": skein.mordant[0].grams,
            "liquor on the wet fibre": skein.liquor_l,
        }
    lot = "skein" if name == "dyed" else "second skein"
    fibre = account.fibre(lot)
    assert fibre is not None
    return {
        f"colour on the {lot}": fibre.taken[0].grams,
        f"colour left after the {lot}": bath.grams("madder"),
        f"volume after the {lot}": bath.volume_l,
        f"carried out with the {lot}": next(
            (one.grams for one in fibre.carried if one.lot == "madder"), NONE
        ),
    }


def one_day(seed: int, wide: float, two_stores: bool) -> Iterator[tuple[str, bool, Band90, float]]:
    """What is shown and what is so, for one day with and without readings."""
    choose = random.Random(seed)
    wool_g = choose.uniform(100.0, 300.0)
    plan = plan_for(round(wool_g), round(choose.uniform(50.0, 150.0)), round(0.03 * wool_g, 1))
    guesses = dict(starting_priors(plan))
    pulls = choose.choice((2, 3))
    for reads in (False, True):
        day, checkpoints = simulated(guesses, plan, seed, wide, two_stores, reads, pulls)
        ledger, done = Ledger.start(plan, day.opened), 0
        for point in checkpoints:
            ledger, done = ledger.following(point.entries[done:]), len(point.entries)
            for what, band in bands(ledger.account(), point.name).items():
                yield what, reads, band, point.truths[what]


def tallied(days: int, worlds: dict[str, tuple[float, bool]] = WORLDS, first: int = 0) -> dict[Key, Tally]:
    """Every band of every day counted."""
    found: dict[Key, Tally] = defaultdict(Tally)
    for world, (wide, two_stores) in worlds.items():
        for seed in range(first, first + days):
            for what, reads, band, truth in one_day(seed, wide, two_stores):
                found[world, what, reads].count(band, truth, band.high - band.low)
    return found


def tallied_by_all(days: int) -> dict[Key, Tally]:
    """The same, shared out over the processors; the days are the same whoever takes them."""
    jobs = [(world, first, most) for world, most in _days(days).items() for first in range(0, most, AT_ONCE)]
    found: dict[Key, Tally] = defaultdict(Tally)
    with ProcessPoolExecutor() as pool:
        for part in pool.map(_share, jobs):
            for key, tally in part.items():
                found[key].add(tally)
    return found


def _days(days: int) -> dict[str, int]:
    return {world: days if world == "as guessed" else max(1, round(ODD_SHARE * days)) for world in WORLDS}


def _share(job: tuple[str, int, int]) -> dict[Key, Tally]:
    world, first, days = job
    return dict(tallied(min(AT_ONCE, days - first), {world: WORLDS[world]}, first))


def table(found: dict[Key, Tally]) -> str:
    """The table: coverage of the 90 % bands before and after readings, and how much narrower they got."""
    rows = [f"{'world':14} {'band':34} {'before':>7} {'after':>7} {'low':>5} {'narrower':>9}"]
    for world, what, reads in found:
        if not reads:
            was, now = found[world, what, False], found[world, what, True]
            narrower = was.mean_width / now.mean_width if now.mean_width else math.inf
            rows.append(
                f"{world:14} {what:34} {100 * was.share:6.1f}% {100 * now.share:6.1f}%"
                f" {100 * now.too_low / now.days:4.1f}% {narrower:8.1f}x"
            )
    return "\n".join(rows)


if __name__ == "__main__":
    started = time.perf_counter()
    count = int(sys.argv[1]) if len(sys.argv) > 1 else DAYS
    print(table(tallied_by_all(count)))
    print(f"{_days(count)} days, {time.perf_counter() - started:.0f} s")
