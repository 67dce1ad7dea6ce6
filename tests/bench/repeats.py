"""A colour repeated, tried through rehearsals: a day with hidden truths, its log, the repeat in the same hidden world.

Run `python tests/bench/repeats.py` (from the project's top) for the table; a number sets how many trials. Each day is
rehearsed through the real session into a real log; the repeat is made from that log as the command makes it, worked
out anew at another weight and rehearsed in turn. The hidden laws of colour are `bench.dye_world`'s.
"""

import math
import random
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from pathlib import Path

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2])]

from bench.dye_world import DYE_C, STEAM_G_H, STRENGTH_SD, VOLUME_SD, Skein, Stuff, Truth, _between
from bench.seasons import Repeats

from dyesession.account.live import reckoner_for
from dyesession.account.unknowns import starting_priors
from dyesession.clock import Instant, SteppingClock
from dyesession.daybook.repeating import repeat
from dyesession.kitchen.model import Kitchen, Pot, Scale
from dyesession.plan import work_out
from dyesession.plan.model import FibreLot, Plan
from dyesession.recipe import load_recipe, recipe_from_document
from dyesession.recipe.model import Recipe
from dyesession.rehearsal.under_way import DayUnderWay, Move, Passes
from dyesession.rehearsal.world import World
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay, begin_day, read_day
from dyesession.session.state import State
from dyesession.session.suggest import Suggestion
from dyesession.storage import DISK

TRIALS = 300
SWING = (0.25, 0.2)  # how far one dyer's days swing: partition (log) and share kept (logit), as is guessed
MORNING = datetime.fromisoformat("2026-03-14T08:00:00+01:00")
RECIPE = Path(__file__).resolve().parents[2] / "recipes" / "madder-brick-red-on-wool.toml"
KITCHEN = Kitchen(scales=(Scale("letter scale", 0.1),), pots=(Pot("big pot", 15.0),), thermometer=True)
TAKEN, KEPT, HELD = "partition of madder on wool", "kept share of madder", "liquor held by wool"


class HiddenWorld(World):
    """The rehearsal's kitchen with colour in it: what really goes into the fibre, by truths nobody in it knows."""

    def __init__(self, truth: Truth, noise: random.Random) -> None:
        super().__init__()
        self.truth, self.noise = truth, noise
        self.stuff: Stuff | None = None
        self.colour_g: dict[str, float] = {}
        self.skeins: dict[str, Skein] = {}
        self.inside: dict[str, str] = {}
        self.strains: list[float] = []
        self.fresh_g_l = 0.0
        self.halving_c = noise.uniform(8.0, 25.0)
        self.regain = noise.uniform(0.14, 0.18)
        self._until_s = 0.0

    @property
    def depth(self) -> float:
        """Grams of colour over grams of fibre."""
        return sum(one.colour_g for one in self.skeins.values()) / sum(one.mass_g for one in self.skeins.values())

    def _runs_off_l(self, vessel: str) -> float:
        held_l = self.stuff.holds_ml_g * self.stuff.mass_g / 1000.0 if self.stuff is not None else 0.0
        return self._pot(vessel).volume_l - min(0.9 * self._pot(vessel).volume_l, held_l)

    def strained_l(self, state: State, vessel: str) -> float:
        """What a jug says of what came through the sieve."""
        return round(max(0.05, self._runs_off_l(vessel) * math.exp(self.noise.gauss(0.0, VOLUME_SD))), 2)

    def wet_mass_g(self, state: State, lot: str) -> float:
        """What the scale says of a skein just lifted."""
        skein = self._skein(state, lot)
        return float(round(skein.bone_dry_g * (1.0 + self.truth[HELD])))

    def _skein(self, state: State, lot: str) -> Skein:
        found = state.lot(lot)
        return self.skeins.setdefault(lot, Skein(found.mass_g if found is not None else 1.0, regain=self.regain))

    def after(self, event: e.Event, before: State, now_s: float) -> None:
        """Let the time until now and the fact happen to colour, fibre and water."""
        self._go_on(now_s)
        if isinstance(event, e.Filled | e.Refreshed):
            event = replace(event, volume_l=event.volume_l * self.truth["water by jug"])
        elif isinstance(event, e.Added) and before.dyestuff(event.ingredient) is not None:
            self.stuff = self.truth.stuff(event.mass_g)
        elif isinstance(event, e.Strained) and self.stuff is not None:
            ran_l = self._runs_off_l(event.vessel)
            ran_g = self.stuff.strain(0.0)
            self.strains.append(ran_g / ran_l)
            self.colour_g[event.into] = self.colour_g.get(event.into, 0.0) + ran_g
            event = replace(event, volume_l=ran_l)
        elif isinstance(event, e.Entered) and not self._is_snippet(before, event.lot):
            self._enters(event, before)
        elif isinstance(event, e.Lifted) and not self._is_snippet(before, event.lot):
            self._comes_out(event)
        super().after(event, before, now_s)

    @staticmethod
    def _is_snippet(state: State, lot: str) -> bool:
        found = state.lot(lot)
        return found is None or found.snippet

    def _enters(self, event: e.Entered, before: State) -> None:
        skein = self._skein(before, event.lot)
        if self.colour_g.get(event.vessel):
            self.fresh_g_l = self.colour_g[event.vessel] / self._pot(event.vessel).volume_l
        self.colour_g[event.vessel] = self.colour_g.get(event.vessel, 0.0) + skein.wet_colour_g
        skein.wet_colour_g = 0.0
        self.inside[event.lot] = event.vessel

    def _comes_out(self, event: e.Lifted) -> None:
        vessel, skein = self.inside.pop(event.lot, ""), self.skeins.get(event.lot)
        if not vessel or skein is None:
            return
        share = min(0.95, self.truth[HELD] * skein.bone_dry_g / 1000.0 / max(0.05, self._pot(vessel).volume_l))
        skein.wet_colour_g = share * self.colour_g.get(vessel, 0.0)
        self.colour_g[vessel] = (1.0 - share) * self.colour_g.get(vessel, 0.0)

    def _go_on(self, now_s: float) -> None:
        """Minutes go by: water steams off, the fibre takes colour up."""
        minutes = max(0.0, now_s - self._until_s) / 60.0
        steps = max(1, min(60, round(minutes)))
        for i in range(steps if minutes > 0.0 else 0):
            moment = self._until_s + (i + 0.5) * 60.0 * minutes / steps
            for vessel in list(self._pots):
                self._steams(vessel, moment, minutes / steps)
            for lot, vessel in self.inside.items():
                self._takes(self.skeins[lot], vessel, moment, minutes / steps)
        self._until_s = now_s

    def _steams(self, vessel: str, moment: float, minutes: float) -> None:
        pot = self._pot(vessel)
        celsius = self._temperature(pot, moment)
        if pot.volume_l > 0.0 and celsius >= 30.0:
            low, high = _between(STEAM_G_H, celsius)
            grams = math.sqrt(low * high) * min(1.0, self.truth["lid"]) * minutes / 60.0
            self._pots[vessel] = replace(pot, volume_l=max(0.7 * pot.volume_l, pot.volume_l - grams / 1000.0))

    def _takes(self, skein: Skein, vessel: str, moment: float, minutes: float) -> None:
        bath_g, litres = self.colour_g.get(vessel, 0.0), self._pot(vessel).volume_l
        if bath_g <= 0.0 or litres <= 0.0:
            return
        hot = min(1.0, 2.0 ** ((self._temperature(self._pot(vessel), moment) - DYE_C) / self.halving_c))
        pull = self.truth[TAKEN] * skein.mass_g / 1000.0
        goal = (skein.colour_g + bath_g) * pull / (pull + litres)
        moved = max(0.0, goal - skein.colour_g) * -math.expm1(-self.truth["rate of madder"] * hot * minutes)
        skein.colour_g, self.colour_g[vessel] = skein.colour_g + moved, bath_g - moved

    def ahead_g_l(self, vessel: str) -> float:
        """The strength that the strain about to be made will have."""
        assert self.stuff is not None
        return Stuff(**vars(self.stuff)).strain(0.0) / self._runs_off_l(vessel)

    def matched(self, share: float) -> float:
        """A strength as an eye tells it."""
        return float(f"{share * math.exp(self.noise.gauss(0.0, STRENGTH_SD)):.2g}")


@dataclass(frozen=True)
class Went:
    """How a day went otherwise than planned: the dose times so much, minutes more at heat, strains made."""

    dose: float = 1.0
    longer_min: float = 0.0
    pulls: int | None = None


AS_PLANNED = Went()


class HiddenDay(DayUnderWay):
    """A day rehearsed in a hidden world by a dyer who reads strengths too, and does not do all as planned."""

    def __init__(self, session, kitchen: Kitchen, world: HiddenWorld, went: Went) -> None:
        super().__init__(session, kitchen, world)
        self.hidden, self.went, self._told = world, went, set[str]()

    def _move(self, suggestion: Suggestion) -> Iterator[Move]:
        if isinstance(suggestion, e.Begun) and self._left_out(suggestion.step):
            yield from self._do(e.Skipped(suggestion.step, "enough"))
        elif isinstance(suggestion, e.Added) and self._state.dyestuff(suggestion.ingredient) is not None:
            yield from super()._move(replace(suggestion, mass_g=round(suggestion.mass_g * self.went.dose, 1)))
        else:
            yield from self._reads(suggestion)
            yield from super()._move(suggestion)
        hot = isinstance(suggestion, e.Reached) and suggestion.vessel == "dye pot"
        if hot and self.went.longer_min and "longer" not in self._told:
            self._told.add("longer")
            yield from self._do(e.Extended("dye", self.went.longer_min))

    def _left_out(self, name: str) -> bool:
        step = self._state.step(name)
        pulls = self.went.pulls
        return step is not None and pulls is not None and step.plan.stage in ("extract", "strain") and step.plan.again >= pulls

    def _reads(self, act: Suggestion) -> Iterator[Move]:
        """A strain beside the first before it is poured; the used bath beside before."""
        world = self.hidden
        if isinstance(act, e.Strained) and world.strains:
            share = world.matched(world.ahead_g_l(act.vessel) / world.strains[0])
            yield from self._do(e.Read(act.vessel, strength=share, against="first strain", how="matched"))
        lifts = isinstance(act, e.Lifted) and act.vessel == "dye pot" and world.fresh_g_l > 0.0
        lot = self._state.lot(act.lot) if isinstance(act, e.Lifted) else None
        if lifts and lot is not None and not lot.snippet and "used" not in self._told:
            self._told.add("used")
            now_g_l = world.colour_g["dye pot"] / world.volume_l("dye pot")
            share = world.matched(now_g_l / world.fresh_g_l)
            yield from self._do(e.Read("dye pot", strength=share, against="before", how="matched"))


def _reckoned_once(plan: Plan, opened: Instant):
    """The account as the day opens, and no more: nothing that is tried here asks for it."""
    account, _ = reckoner_for(plan, opened)(())
    return lambda entries: (account, None)


class Dyer:
    """One dyer's truths; every day swings about them."""

    def __init__(self, trial: int, plan: Plan, folder: Path) -> None:
        self.draw, self.trial, self.folder = random.Random(trial), trial, folder
        guesses = dict(starting_priors(plan))
        self.truth = Truth(guesses, self.draw, 1.0, two_stores=False)
        for name in guesses:
            self.truth[name]

    def today(self) -> Truth:
        """Today's truths."""
        values = dict(self.truth.values)
        values[TAKEN] *= math.exp(self.draw.gauss(0.0, SWING[0]))
        odds = values[KEPT] / (1.0 - values[KEPT]) * math.exp(self.draw.gauss(0.0, SWING[1]))
        values[KEPT] = odds / (1.0 + odds)
        return Truth(self.truth.guesses, self.draw, 1.0, two_stores=False, values=values)

    def dyes(self, recipe: Recipe, wool_g: float, number: int, went: Went = AS_PLANNED) -> tuple[LoggedDay, HiddenWorld]:
        """A rehearsed day: its log as it is read again, and the world as nobody saw it."""
        lots = (FibreLot("skein", "wool", wool_g, air_dry=True),)
        clock = SteppingClock(MORNING + timedelta(days=7 * number))
        plan = work_out(recipe, lots, KITCHEN)
        session = begin_day(DISK, self.folder, recipe, plan, KITCHEN, clock, _reckoned_once, rehearsal=True)
        world = HiddenWorld(self.today(), random.Random(f"{self.trial} {number}"))
        try:
            for move in HiddenDay(session, KITCHEN, world, went).moves():
                if isinstance(move, Passes):
                    clock.advance(move.seconds)
            path = Path(session.snapshot.path)
        finally:
            session.close()
        day = replace(read_day(DISK, path), rehearsal=False)  # a rehearsal teaches nobody; in its own world it was dyed
        return day, world


def lines_of(found: Repeats) -> list[str]:
    """What came of it."""
    rows = (("by the log", found.by_log, found.off_by_log), ("by the recipe alone", found.by_recipe, found.off_by_recipe))
    return [
        f"{name:20} {found.trials:5} trials: {100 * hit / found.trials:5.1f} % within the band claimed (up to"
        f" {100 * math.expm1(found.claimed / found.trials):.0f} % off), {100 * math.expm1(off / found.trials):.0f} % off in"
        " the middle"
        for name, hit, off in rows
    ]


def in_all_g(world: HiddenWorld) -> float:
    """Every gram of colour in a world: in the dyestuff, the baths, the fibre and what it carries."""
    left_g = world.stuff.left_g if world.stuff is not None else 0.0
    return left_g + sum(world.colour_g.values()) + sum(one.colour_g + one.wet_colour_g for one in world.skeins.values())


def repeats(trials: int, first: int = 0) -> Repeats:
    """Days rehearsed with hidden truths and logged, repeated at another weight by the log and by the recipe alone."""
    found, recipe = Repeats(), load_recipe(RECIPE)
    for trial in range(first, first + trials):
        choose = random.Random(f"choose {trial}")
        wool_g, other_g = round(choose.uniform(80.0, 240.0)), round(choose.uniform(60.0, 240.0))
        went = Went(math.exp(choose.gauss(0.0, 0.25)), round(choose.uniform(-20.0, 30.0)), choose.choice((1, 2, 3)))
        with tempfile.TemporaryDirectory(prefix="dyesession-") as folder:
            plan = work_out(recipe, (FibreLot("skein", "wool", wool_g, air_dry=True),), KITCHEN)
            dyer = Dyer(trial, plan, Path(folder))
            day, world = dyer.dyes(recipe, wool_g, 0, went)
            depth = world.depth
            told = repeat(day, (FibreLot("skein", "wool", other_g, air_dry=True),), KITCHEN)
            _, again = dyer.dyes(recipe_from_document(told.document, "the repeat"), other_g, 1)
            _, plain = dyer.dyes(recipe, other_g, 2)
        assert told.expected is not None
        found.count(told.expected, again.depth / depth, plain.depth / depth)
    return found


def main(arguments: Sequence[str]) -> None:
    """Print the table."""
    started = time.perf_counter()
    print("A rehearsed colour repeated at another weight in the same hidden world: depth over that day's depth")
    for line in lines_of(repeats(int(arguments[0]) if arguments else TRIALS)):
        print(line)
    print(f"{time.perf_counter() - started:.0f} s")


if __name__ == "__main__":
    main(sys.argv[1:])
