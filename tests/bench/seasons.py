"""Nothing dyed is forgotten: what a log is worth, shown on simulated days whose truths nobody in them knows.

Run `python tests/bench/seasons.py` (from the project's top) for both tables; a number sets how many trials.
The world is `bench.dye_world`, which shares no code with what is tried here. Each dyer has truths of their own;
each day swings about them.
"""

import math
import random
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import timedelta
from pathlib import Path

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2])]

from bench.dye_world import DYE_C, MORDANT_C, MORNING, STRAIN_C, Day, Stuff, Truth, plan_for

from dyesession.account.model import Band90
from dyesession.account.unknowns import Starting, known, starting_priors, unknowns
from dyesession.account.worlds import band
from dyesession.clock import SteppingClock
from dyesession.daybook.dyers_numbers import Learnt, Number
from dyesession.daybook.learning import learnt
from dyesession.daybook.own_numbers import start_of
from dyesession.daybook.repeating import Repeated, repeat
from dyesession.dyeing.eta import Z_90
from dyesession.dyeing.exhaustion import exhausted_share
from dyesession.dyeing.priors import Prior
from dyesession.kitchen.model import Kitchen
from dyesession.plan.model import FibreLot, Plan
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay

TRIALS, DYERS, SEASON, MORE_DAYS = 400, 120, 12, 4
# How far one dyer's days swing in truth, as standard deviations: partition (log) and share kept (logit).
SWINGS = {"half as far as guessed": (0.125, 0.1), "as guessed": (0.25, 0.2), "half as far again": (0.375, 0.3)}
PLANNED_MIN, PLANNED_PULLS, RISE_MIN = 60.0, 2, 60.0
WATER_ML_G = 20.0  # to extract with


@dataclass(frozen=True)
class Figures:
    """What is done on a day: grams, litres, strains, minutes at heat."""

    wool_g: float
    madder_g: float
    extract_l: float
    pulls: int
    dye_l: float
    hold_min: float = PLANNED_MIN
    dye_c: float = DYE_C


@dataclass(frozen=True)
class Dyed:
    """A day and what nobody saw of it: grams of colour over grams of fibre, and the share of the bath taken."""

    day: LoggedDay
    depth: float
    taken: float
    ratio: float


def as_planned(wool_g: float) -> Figures:
    """The recipe: 50 % of madder, 20 L to its kilogram, two strains, 1:30, an hour."""
    madder_g = 0.5 * wool_g
    return Figures(wool_g, madder_g, 0.02 * madder_g, PLANNED_PULLS, 0.03 * wool_g)


MADDER, OTHER = "madder root", "weld"  # one of the few with a figure of its own, and one as most are
PULLS = (("extract", "strain"), ("extract again", "strain again"), ("extract 3", "strain 3"))


def of_dyestuff(plan: Plan, substance: str) -> Plan:
    """The plan with another substance under the dyestuff's name."""
    doses = tuple(replace(one, substance=substance) if one.role == "dyestuff" else one for one in plan.doses)
    return replace(plan, doses=doses)


def day_plan(done: Figures, substance: str) -> Plan:
    """The plan of such a day, its strains unrolled, one skein."""
    plan = of_dyestuff(plan_for(done.wool_g, 50.0, round(0.03 * done.wool_g, 1)), substance)
    mordant, extract, strain, dye, _ = plan.steps
    steps = [mordant]
    for again, (pull, sieve) in enumerate(PULLS[: done.pulls]):
        after = (steps[-1].name,) if again else ()
        add = extract.add if not again else ()
        steps.append(replace(extract, name=pull, after=after, add=add, again=again, water_l=done.extract_l))
        steps.append(replace(strain, name=sieve, after=(pull,), again=again))
    steps.append(replace(dye, after=("mordant", steps[-1].name), water_l=done.dye_l))
    return replace(plan, lots=plan.lots[:1], steps=tuple(steps))


class Dyer:
    """One dyer's truths; every day swings about them. `draw` decides both, `noise` the errors of reading."""

    def __init__(self, seed: int, swing: tuple[float, float], substance: str = MADDER) -> None:
        self.draw, self.swing, self.seed, self.substance = random.Random(seed), swing, seed, substance
        guesses = dict(starting_priors(of_dyestuff(plan_for(100.0, 50.0, 3.0), substance)))
        self.truth = Truth(guesses, self.draw, 1.0, two_stores=False)
        for name in guesses:
            self.truth[name]

    def known(self, taking: float) -> Starting:
        """What an account would start from that knew this dyer's own numbers, and that days swing."""
        partition, far = self.truth[TAKEN], math.exp(Z_90 * taking)
        day = Prior(TAKEN, partition, partition / far, partition * far, "log", "the truth")
        return Starting({TAKEN: day, RATE: known(RATE, self.truth[RATE])})

    @property
    def keeps(self) -> float:
        """Share of its colour that the dyestuff really keeps: never less than the liquor it holds has of it."""
        held = self.truth["liquor held by spent madder"] / WATER_ML_G
        return max(self.truth[KEPT], min(0.9, held))

    def today(self) -> Truth:
        """Today's truths."""
        taking, keeping = self.swing
        values = dict(self.truth.values)
        values["partition of madder on wool"] *= math.exp(self.draw.gauss(0.0, taking))
        kept = values["kept share of madder"]
        odds = kept / (1.0 - kept) * math.exp(self.draw.gauss(0.0, keeping))
        values["kept share of madder"] = odds / (1.0 + odds)
        return Truth(self.truth.guesses, self.draw, 1.0, two_stores=False, values=values)

    def dyes(self, done: Figures, number: int, reads: bool = True) -> Dyed:
        """A whole day: mordant, extract, dye."""
        plan = day_plan(done, self.substance)
        day = Day(plan, self.today(), reads, random.Random(f"{self.seed} {number}"))
        day.clock = SteppingClock(MORNING + timedelta(days=7 * number))
        day.opened = day.clock.now()
        _mordanted(day)
        _extracted(day, done)
        taken, ratio = _dyed(day, done)
        logged = LoggedDay(
            f"day-{number:02}", "", plan.recipe, False, plan, day.opened, tuple(day.entries),
            {"recipe": {"name": plan.recipe}},
        )  # fmt: skip
        return Dyed(logged, day.skeins["skein"].colour_g / done.wool_g, taken, ratio)


def _mordanted(day: Day) -> None:
    step = day.plan.steps[0]
    day.log(e.Begun("mordant"))
    day.fill("mordant pot", step.water_l or 1.0)
    day.pots["mordant pot"].alum_g = step.add[0].mass_g
    day.log(e.Added("alum", "mordant pot", step.add[0].mass_g))
    day.enter("skein", "mordant pot")
    day.heat("mordant pot", MORDANT_C, 45.0, 60.0)
    day.log(e.Finished("mordant"))
    day.lift("skein", weigh=day.reads)


def _extracted(day: Day, done: Figures) -> None:
    day.stuff = day.truth.stuff(done.madder_g)
    for pull in range(done.pulls):
        extract, strain = PULLS[pull]
        day.log(e.Begun(extract))
        day.fill("extract pot", done.extract_l, refresh=pull > 0)
        if pull == 0:
            day.log(e.Added("madder", "extract pot", round(done.madder_g, 1)))
        day.heat("extract pot", STRAIN_C, 40.0, 60.0)
        day.log(e.Finished(extract))
        if pull and day.reads:
            day.matched("extract pot", _ahead(day) / day.strains[0], "first strain")
        day.log(e.Begun(strain))
        day.strain("dye pot")
        day.pass_min(10.0)


def _ahead(day: Day) -> float:
    """The strength that this strain will have: a little of it in a glass."""
    glass = Day.__new__(Day)
    assert day.stuff is not None
    glass.__dict__ |= {**day.__dict__, "stuff": Stuff(**vars(day.stuff)), "entries": [], "strains": []}
    glass.pots = {name: replace(pot) for name, pot in day.pots.items()}
    glass.noise = random.Random(0)
    glass.strain("dye pot")
    return float(glass.strains[0])


def _dyed(day: Day, done: Figures) -> tuple[float, float]:
    """The dyeing: the share of the bath's colour on the fibre at its end, and the liquor ratio at its start."""
    pot, skein = day.pots["dye pot"], day.skeins["skein"]
    day.log(e.Begun("dye"))
    day.top_up("dye pot", done.dye_l)
    fresh, whole_g = pot.g_l, pot.colour_g
    day.enter("skein", "dye pot")
    ratio = 1000.0 * pot.litres / done.wool_g
    day.heat("dye pot", done.dye_c, RISE_MIN, done.hold_min)
    day.log(e.Finished("dye"))
    if day.reads:
        day.read_volume("dye pot")
        day.matched("dye pot", pot.g_l / fresh, "before")
    day.lift("skein", weigh=day.reads)
    return skein.colour_g / whole_g, ratio


# A colour repeated.


def as_it_went(choose: random.Random, wool_g: float) -> Figures:
    """The recipe as it really went: another dose, another strain, longer or shorter at heat."""
    plan = as_planned(wool_g)
    madder_g = round(plan.madder_g * math.exp(choose.gauss(0.0, 0.25)), 1)
    return replace(plan, madder_g=madder_g, pulls=choose.choice((1, 2, 3)), hold_min=choose.uniform(40.0, 90.0))


def by_the_log(found: Repeated, wool_g: float) -> Figures:
    """What the repeated recipe says to do."""
    plan = found.plan
    [madder] = [one.mass_g.aim for one in plan.doses if one.role == "dyestuff"]
    extract = next(one for one in plan.steps if one.stage == "extract")
    dye = next(one for one in plan.steps if one.stage == "dye")
    hold = next(one for one in dye.heat if one.kind == "hold")
    rise = next(one for one in dye.heat if one.kind == "to")
    return Figures(
        wool_g,
        madder,
        extract.water_l or 0.02 * madder,
        sum(one.stage == "strain" for one in plan.steps),
        dye.water_l or 0.03 * wool_g,
        hold.minutes or PLANNED_MIN,
        rise.temperature_c or DYE_C,
    )


@dataclass
class Repeats:
    """How often a repeat came within the band that was claimed, by the log and by the recipe alone."""

    trials: int = 0
    by_log: int = 0
    by_recipe: int = 0
    claimed: float = 0.0
    off_by_log: float = 0.0
    off_by_recipe: float = 0.0

    def count(self, expected: Band90, by_log: float, by_recipe: float) -> None:
        """One trial: the depth expected of the repeat, and what came of it by the log and by the recipe."""
        self.trials += 1
        self.by_log += expected.low <= by_log <= expected.high
        self.by_recipe += expected.low <= by_recipe <= expected.high
        self.claimed += math.log(expected.high)
        self.off_by_log += abs(math.log(by_log))
        self.off_by_recipe += abs(math.log(by_recipe))

    def row(self, name: str) -> str:
        return (
            f"{name:24} {self.trials:6} {100 * self.by_log / self.trials:9.1f} %"
            f" {100 * self.by_recipe / self.trials:9.1f} % {100 * math.expm1(self.claimed / self.trials):8.0f} %"
            f" {100 * math.expm1(self.off_by_log / self.trials):8.0f} %"
            f" {100 * math.expm1(self.off_by_recipe / self.trials):8.0f} %"
        )


def repeats(trials: int, swing: tuple[float, float], first: int = 0) -> Repeats:
    """A day dyed and logged, repeated at another weight by its log, and by the recipe it set out from."""
    found = Repeats()
    for seed in range(first, first + trials):
        dyer, choose = Dyer(seed, swing), random.Random(f"choose {seed}")
        wool_g, other_g = round(choose.uniform(80.0, 250.0)), round(choose.uniform(60.0, 300.0))
        day = dyer.dyes(as_it_went(choose, wool_g), 0)
        told = repeat(day.day, (FibreLot("skein", "wool", other_g, air_dry=True),), Kitchen())
        logged = dyer.dyes(by_the_log(told, other_g), 1).depth / day.depth
        plain = dyer.dyes(as_planned(other_g), 2).depth / day.depth
        found.count(told.expected, logged, plain)
    return found


# A season learned from.


@dataclass
class Seasons:
    """Bands of the share taken: before the season, after it, and were the dyer's own numbers known exactly; how often
    further days lay in them, and how often the number's own band held the dyer's own number.
    """

    dyers: int = 0
    days: int = 0
    before: float = 0.0
    after: float = 0.0
    known: float = 0.0
    held_before: int = 0
    held_after: int = 0
    number: int = 0
    rates: int = 0
    rate: int = 0
    kept: int = 0

    def row(self, name: str) -> str:
        rate = f"{100 * self.rate / self.rates:8.0f} %" if self.rates else f"{'-':>10}"
        return (
            f"{name:24} {self.dyers:6} {self.before / self.days:8.3f} {self.after / self.days:8.3f}"
            f" {self.before / self.after:8.1f}x {self.before / self.known:8.1f}x {100 * self.held_before / self.days:8.1f} %"
            f" {100 * self.held_after / self.days:8.1f} % {100 * self.number / self.dyers:8.0f} % {rate}"
            f" {100 * self.kept / self.dyers:8.0f} %"
        )


TAKEN, RATE, KEPT = "partition of madder on wool", "rate of madder", "kept share of madder"
# Minutes of the rise that count as at heat, as the account counts them: from 60 to 80 °C, out of about 35 °C.
RISE_COUNTS_MIN = RISE_MIN * (DYE_C - 60.0) / (DYE_C - 35.0)


def share_band(plan: Plan, starting: Starting, ratio: float, hold_min: float) -> tuple[float, float]:
    """Ends of the share that a hold puts on the fibre, as an account of that plan starting so has it."""
    known = unknowns(plan, starting)
    shares = tuple(
        exhausted_share(partition, ratio) * -math.expm1(-rate * (hold_min + RISE_COUNTS_MIN))
        for partition, rate in zip(known[TAKEN], known[RATE], strict=True)
    )
    found = band(shares)
    return found.low, found.high


def season_of(dyer: "Dyer", choose: random.Random, days: int) -> list[LoggedDay]:
    """Days by the recipe at several weights, each held as long as it pleased the dyer."""
    return [dyer.dyes(at_pleasure(choose), number).day for number in range(days)]


def at_pleasure(choose: random.Random) -> Figures:
    """The recipe at some weight, held at heat for half an hour to two hours."""
    return replace(as_planned(round(choose.uniform(80.0, 250.0))), hold_min=choose.uniform(30.0, 120.0))


def seasons(
    dyers: int, swing: tuple[float, float], substance: str = MADDER, season: int = SEASON, first: int = 0
) -> Seasons:
    """Seasons of days that are read and logged; further days are only dyed, and held against the bands."""
    found = Seasons()
    for seed in range(first, first + dyers):
        dyer, choose = Dyer(10_000 + seed, swing, substance), random.Random(f"season {seed}")
        learned = learnt(season_of(dyer, choose, season))
        _numbers_held(found, dyer, learned)
        for more in range(MORE_DAYS):
            done = at_pleasure(choose)
            next_day = dyer.dyes(done, season + more, reads=False)
            plan, all_known = next_day.day.plan, dyer.known(swing[0])
            starts = Starting(), start_of(plan, learned).starting, all_known
            guess, own, exact = (share_band(plan, one, next_day.ratio, done.hold_min) for one in starts)
            found.days += 1
            found.before += guess[1] - guess[0]
            found.after += own[1] - own[0]
            found.known += exact[1] - exact[0]
            found.held_before += guess[0] <= next_day.taken <= guess[1]
            found.held_after += own[0] <= next_day.taken <= own[1]
    return found


def _numbers_held(found: Seasons, dyer: Dyer, learned: Learnt) -> None:
    """Whether the bands printed for a dyer's own numbers hold them."""

    def holds(number: Number | None, name: str) -> bool:
        return number is not None and number.own.low <= dyer.truth[name] <= number.own.high

    found.dyers += 1
    found.number += holds(learned.number("exhaustion", dyer.substance, "wool"), TAKEN)
    rate = learned.number("uptake rate", dyer.substance, "wool")
    found.rates += rate is not None
    found.rate += holds(rate, RATE)
    kept = learned.number("kept share", dyer.substance)
    found.kept += kept is not None and kept.own.low <= dyer.keeps <= kept.own.high


def _both(trials: int, dyers: int) -> None:
    print("A colour repeated at another weight: depth over that day's depth, within the band claimed")
    print(f"{'days swing':24} {'trials':>6} {'by log':>11} {'by recipe':>11} {'claimed':>10} {'off, log':>10} {'recipe':>10}")
    _table(lambda swing: repeats(trials, swing).row)
    print("\nA season of 12 days held 30 to 120 minutes learned from: band of the share of a bath that the fibre takes on a")
    print("further day, held otherwise; and how often the bands of the dyer's own numbers hold them (goal 85 to 95 %)")
    print(
        f"{'days swing':24} {'dyers':>6} {'before':>8} {'after':>8} {'narrower':>9} {'at most':>9} {'held then':>10}"
        f" {'held now':>10} {'partition':>10} {'rate':>10} {'kept':>10}"
    )
    print("madder on wool, which has a guess of its own:")
    _table(lambda swing: seasons(dyers, swing).row)
    print("weld on wool, which like most dyestuffs has the widest guess:")
    _table(lambda swing: seasons(dyers, swing, OTHER).row)


def _table(row_of: Callable[[tuple[float, float]], Callable[[str], str]]) -> None:
    for name, swing in SWINGS.items():
        print(row_of(swing)(name), flush=True)


def main(arguments: Sequence[str]) -> None:
    """Print both tables."""
    started = time.perf_counter()
    trials = int(arguments[0]) if arguments else TRIALS
    _both(trials, max(2, trials * DYERS // TRIALS))
    print(f"{time.perf_counter() - started:.0f} s")


if __name__ == "__main__":
    main(sys.argv[1:])
