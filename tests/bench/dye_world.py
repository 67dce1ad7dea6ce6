"""A dye day as it really went, simulated: hidden truths, a pot that loses water, a dyer who pours and reads.

Shares no code with the account: it reads the starting guesses' figures (as data) to draw its truths from, and
writes down what the dyer would have logged. One number a thing, stepped minute by minute; laws of its own:
steam from a published table of a 28 cm pot (lowest and highest of three laws), uptake by a rate that halves
with the cold, lifts that differ from one to the next, jugs that are off.
"""

import itertools
import math
import random
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta, timezone

from dyesession.clock import Instant, SteppingClock
from dyesession.dyeing.priors import Prior
from dyesession.plan.model import (
    Band,
    FibreLot,
    Plan,
    PlannedAddition,
    PlannedDose,
    PlannedStep,
    PlannedVessel,
    Weigh,
)
from dyesession.recipe.model import Heat
from dyesession.session import events as e
from dyesession.session.fold import Entry

MORNING = datetime(2026, 3, 14, 7, 0, tzinfo=timezone(timedelta(hours=1)))
T4_95 = 2.131847  # Student's t, 4 degrees of freedom: printed in any table

# Water lost from an open 28 cm pot, g an hour, lowest and highest law (still room, 20 °C, 50 % humidity).
STEAM_G_H = ((40.0, 48.0, 51.0), (60.0, 157.0, 201.0), (70.0, 254.0, 383.0), (80.0, 395.0, 738.0),
             (90.0, 596.0, 1564.0), (95.0, 725.0, 2589.0))  # fmt: skip
BRIM_28_CM_L = 12.0
ROOM_C, TAP_C = 20.0, 15.0
COOLING_MIN = 280.0
SIEVE_KEEPS_WARM = 0.9

STRENGTH_SD, VOLUME_SD, LIFT_SD, SCALE_G = 0.11, 0.03, 0.06, 1.0
STRAIN_C, DYE_C, MORDANT_C = 70.0, 80.0, 85.0


# What a wide world draws wider: extraction share, partition, what fibre and dyestuff hold back, evaporation. Not how
# a dyestuff stiffens from strain to strain (the world of two stores is for that), nor jugs.
WIDENED = ("kept share of", "partition of", "liquor held by", "steam", "lid")

# What no kitchen goes beyond, however wide the truths are drawn.
LIMITS = {"liquor held by wool": (0.4, 8.0), "liquor held by spent madder": (0.4, 12.0), "lid": (0.0, 1.0),
          "stiffening of madder": (0.2, 50.0), "water by jug": (0.8, 1.25), "water by eye": (0.7, 1.4), "steam": (0.1, 8.0)}  # fmt: skip


def t4(draw: random.Random) -> float:
    """A draw of Student's t with four degrees of freedom."""
    return draw.gauss(0.0, 1.0) / math.sqrt(draw.gammavariate(2.0, 1.0) / 2.0)


def drawn(draw: random.Random, prior: Prior, wide: float = 1.0) -> float:
    """A truth from a guess's figures, its log or logit width times `wide`."""
    if prior.low == prior.high:
        return prior.centre

    def to(x: float) -> float:
        return math.log(x) if prior.scale == "log" else math.log(x / (1.0 - x))

    step = wide * t4(draw)
    side = to(prior.high) - to(prior.centre) if step > 0.0 else to(prior.centre) - to(prior.low)
    point = max(-30.0, min(30.0, to(prior.centre) + step * side / T4_95))
    return math.exp(point) if prior.scale == "log" else 1.0 / (1.0 + math.exp(-point))


@dataclass
class Stuff:
    """A dyestuff of two stores, each with what it keeps per extraction, or of one whose share rises (`shares`)."""

    mass_g: float
    fast_g: float
    slow_g: float
    fast_kept: float
    slow_kept: float
    holds_ml_g: float
    shares: tuple[float, ...] = ()
    strained: int = 0

    def strain(self, free_g: float) -> float:
        """Strain once: what runs off; the rest stays, `free_g` of it having been in the liquor before."""
        share = self.fast_g / (self.fast_g + self.slow_g)
        self.fast_g += free_g * share
        self.slow_g += free_g * (1.0 - share)
        before = self.left_g
        fast_kept, slow_kept = self._kept()
        self.fast_g *= fast_kept
        self.slow_g *= slow_kept
        self.strained += 1
        return before - self.left_g

    def _kept(self) -> tuple[float, float]:
        return (self.shares[self.strained],) * 2 if self.shares else (self.fast_kept, self.slow_kept)

    @property
    def left_g(self) -> float:
        return self.fast_g + self.slow_g

    @property
    def next_g(self) -> float:
        fast_kept, slow_kept = self._kept()
        return self.fast_g * (1.0 - fast_kept) + self.slow_g * (1.0 - slow_kept)


@dataclass
class Pot:
    brim_l: float
    litres: float = 0.0
    celsius: float = TAP_C
    colour_g: float = 0.0
    alum_g: float = 0.0

    @property
    def g_l(self) -> float:
        return self.colour_g / self.litres


@dataclass
class Skein:
    mass_g: float
    colour_g: float = 0.0
    alum_g: float = 0.0
    wet_l: float = 0.0
    wet_colour_g: float = 0.0
    wet_alum_g: float = 0.0
    regain: float = 0.16

    @property
    def bone_dry_g(self) -> float:
        return self.mass_g / (1.0 + self.regain)


@dataclass
class Truth:
    """What nobody knows of this kitchen."""

    guesses: Mapping[str, Prior]
    draw: random.Random
    wide: float
    two_stores: bool
    dye: str = "madder"
    values: dict[str, float] = field(default_factory=dict)

    def __getitem__(self, name: str) -> float:
        if name not in self.values:
            least, most = LIMITS.get(name, (0.0, math.inf))
            wide = self.wide if name.startswith(WIDENED) else 1.0
            self.values[name] = min(most, max(least, drawn(self.draw, self.guesses[name], wide)))
        return self.values[name]

    def stuff(self, mass_g: float) -> Stuff:
        """The dyestuff: as the guesses have it, or of two stores far apart (60 % keeping a tenth, 40 % seven)."""
        holds = self[f"liquor held by spent {self.dye}"]
        if self.two_stores:
            slow = min(0.6, max(0.2, self.draw.gauss(0.4, 0.08)))
            fast_kept = min(0.25, max(0.04, self.draw.gauss(0.1, 0.04)))
            slow_kept = min(0.85, max(0.5, self.draw.gauss(0.7, 0.07)))
            return Stuff(mass_g, mass_g * (1.0 - slow), mass_g * slow, fast_kept, slow_kept, holds)
        odds = self[f"kept share of {self.dye}"] / (1.0 - self[f"kept share of {self.dye}"])
        rise = math.log(self[f"stiffening of {self.dye}"])
        fades = self[f"fading of the stiffening of {self.dye}"]
        shares = []
        for _ in range(6):
            shares.append(odds / (1.0 + odds))
            odds, rise = odds * math.exp(rise), rise * fades
        return Stuff(mass_g, mass_g, 0.0, 0.0, 0.0, holds, tuple(shares))


def plan_for(wool_g: float, second_g: float, water_l: float) -> Plan:
    """One dye, extracted apart, on alumed wool; a second skein for the used bath."""
    madder_g, alum_g = 0.5 * wool_g, 0.12 * wool_g
    extract = (Heat("to", STRAIN_C, 40.0), Heat("hold", minutes=60.0))
    dye = (Heat("to", DYE_C, 60.0), Heat("hold", minutes=60.0))
    mordant = (Heat("to", MORDANT_C, 45.0), Heat("hold", minutes=60.0))
    steps = (
        PlannedStep("mordant", "mordant", "fibre", "mordant pot", "mordant",
                    add=(PlannedAddition("alum", alum_g),), enter=("fibre",), water_l=water_l, heat=mordant),
        PlannedStep("extract", "extract", "liquor", "extract pot", "extract",
                    add=(PlannedAddition("madder", madder_g),), water_l=0.02 * madder_g, heat=extract),
        PlannedStep("strain", "strain", "liquor", "extract pot", "extract", into="dye pot"),
        PlannedStep("dye", "dye", "fibre", "dye pot", "dye", enter=("fibre",), water_l=water_l, heat=dye),
        PlannedStep("dye again", "dye", "fibre", "dye pot", "dye again", enter=("fibre",), water_l=water_l,
                    heat=dye),
    )  # fmt: skip
    doses = (_dose("alum", "potassium alum", "mordant", 12.0, alum_g),
             _dose("madder", "madder root", "dyestuff", 50.0, madder_g))  # fmt: skip
    vessels = (
        PlannedVessel("mordant pot", "A", "", 12.0, "stainless"),
        PlannedVessel("extract pot", "B", "", 5.0, "stainless"),
        PlannedVessel("dye pot", "C", "", 12.0, "stainless"),
    )
    lots = (FibreLot("skein", "wool", wool_g), FibreLot("second skein", "wool", second_g))
    return Plan("a day", lots, wool_g, 100.0, 1.0, doses, (), vessels, steps, ())


def _dose(ingredient: str, substance: str, role: str, percent: float, mass_g: float) -> PlannedDose:
    mass, share = Band(mass_g, mass_g, mass_g), Band(percent, percent, percent)
    return PlannedDose(ingredient, substance, role, share, mass, Weigh("scale", 0.65, ""))  # type: ignore[arg-type]


class Day:
    """One day: does things to the pots, and writes what the dyer logs. `reads`: whether the dyer reads."""

    def __init__(self, plan: Plan, truth: Truth, reads: bool, noise: random.Random) -> None:
        self.plan, self.truth, self.reads, self.noise = plan, truth, reads, noise
        self.clock = SteppingClock(MORNING)
        self.opened: Instant = self.clock.now()
        self.entries: list[Entry] = []
        self.pots = {one.name: Pot(one.capacity_l or 12.0) for one in plan.vessels}
        regain = noise.uniform(0.14, 0.18)  # published for wool in a room: 13.6 to 18.25 %
        self.skeins = {one.name: Skein(one.mass_g, regain=regain) for one in plan.lots}
        self.inside: dict[str, str] = {}
        self.stuff: Stuff | None = None
        self.sieve_l = 0.0
        self.strains: list[float] = []
        self.halving_c = noise.uniform(8.0, 25.0)

    def log(self, event: e.Event) -> None:
        self.entries.append(Entry(len(self.entries) + 1, self.clock.now(), event))

    def pass_min(self, minutes: float, pot: str = "", to_c: float | None = None) -> None:
        """Minutes go by; one pot climbs to a heat or is kept at it, the others cool."""
        start_c = self.pots[pot].celsius if pot else 0.0
        steps = max(1, round(minutes))
        length = minutes / steps
        for i in range(steps):
            for name, one in self.pots.items():
                if name == pot and to_c is not None:
                    one.celsius = start_c + (to_c - start_c) * (i + 1) / steps
                else:
                    one.celsius = ROOM_C + (one.celsius - ROOM_C) * math.exp(-length / COOLING_MIN)
                self._steam(one, length)
            for skein, vessel in self.inside.items():
                self._uptake(self.skeins[skein], self.pots[vessel], length)
        self.clock.advance(minutes * 60.0)

    def _steam(self, pot: Pot, minutes: float) -> None:
        if pot.litres <= 0.0 or pot.celsius < 30.0:
            return
        low, high = _between(STEAM_G_H, pot.celsius)
        where = self.truth["steam"]  # e at the highest law, 1/e at the lowest, on the log scale
        grams = math.sqrt(low * high) * math.exp(math.log(where) * math.log(max(high / low, 1.7)) / 2.0)
        wide = (pot.brim_l / BRIM_28_CM_L) ** (2.0 / 3.0)
        pot.litres -= min(0.3 * pot.litres, grams * wide * min(1.0, self.truth["lid"]) * minutes / 60_000.0)

    def _uptake(self, skein: Skein, pot: Pot, minutes: float) -> None:
        hot = min(1.0, 2.0 ** ((pot.celsius - DYE_C) / self.halving_c))
        if pot.colour_g > 0.0:
            pull = self.truth["partition of madder on wool"] * skein.mass_g / 1000.0
            goal = (skein.colour_g + pot.colour_g) * pull / (pull + pot.litres)
            moved = max(0.0, goal - skein.colour_g) * -math.expm1(-self.truth["rate of madder"] * hot * minutes)
            skein.colour_g, pot.colour_g = skein.colour_g + moved, pot.colour_g - moved
        if pot.alum_g > 0.0:
            most = self.truth["most alum taken by wool"] * skein.mass_g / 100.0
            goal = min(self.truth["share of alum taken by wool"] * (skein.alum_g + pot.alum_g), most)
            moved = max(0.0, goal - skein.alum_g) * -math.expm1(-self.truth["rate of mordanting"] * hot * minutes)
            skein.alum_g, pot.alum_g = skein.alum_g + moved, pot.alum_g - moved

    def fill(self, pot: str, litres: float, refresh: bool = False) -> None:
        how = "read" if self.reads else "planned"
        self.pots[pot].litres = litres * self.truth["water by jug" if self.reads else "water by eye"]
        self.pots[pot].celsius = TAP_C
        if refresh:
            self.pots[pot].litres += self.sieve_l
            self.sieve_l = 0.0
            self.log(e.Refreshed(pot, litres, how))
        else:
            self.log(e.Filled(pot, litres, how))

    def heat(self, pot: str, to_c: float, rise_min: float, hold_min: float) -> None:
        self.log(e.Lit(pot))
        self.pass_min(rise_min, pot, to_c)
        self.log(e.Reached(pot, to_c, "read"))
        self.pass_min(hold_min, pot, to_c)
        self.log(e.Lit(pot, on=False))

    def strain(self, into: str) -> None:
        pot, dye_pot, stuff = self.pots["extract pot"], self.pots[into], self.stuff
        assert stuff is not None
        held_l = min(0.9 * pot.litres, stuff.holds_ml_g * stuff.mass_g / 1000.0)
        ran_off_g, ran_off_l = stuff.strain(pot.colour_g), pot.litres - held_l
        floor_g = (stuff.left_g + ran_off_g) * held_l / pot.litres
        if stuff.left_g < floor_g:  # the liquor held has its colour, whatever the stores keep
            back = floor_g - stuff.left_g
            ran_off_g -= back
            stuff.fast_g += back
        self.strains.append(ran_off_g / ran_off_l)
        self.sieve_l = held_l
        told = ran_off_l * math.exp(self.noise.gauss(0.0, VOLUME_SD))
        self.log(e.Strained("extract pot", into, round(told, 2) if self.reads else None, "read" if self.reads else "planned"))
        arrives_c = ROOM_C + (pot.celsius - ROOM_C) * SIEVE_KEEPS_WARM
        there_l = dye_pot.litres
        dye_pot.celsius = (dye_pot.celsius * there_l + arrives_c * ran_off_l) / (there_l + ran_off_l)
        dye_pot.litres += ran_off_l
        dye_pot.colour_g += ran_off_g
        pot.litres = pot.colour_g = 0.0

    def matched(self, pot: str, share: float, against: str) -> None:
        """The dyer reads a strength as a share of another's, with an eye's error."""
        told = share * math.exp(self.noise.gauss(0.0, STRENGTH_SD))
        self.log(e.Read(pot, strength=float(f"{told:.2g}"), against=against, how="matched"))

    def read_volume(self, pot: str) -> None:
        told = self.pots[pot].litres * math.exp(self.noise.gauss(0.0, VOLUME_SD))
        self.log(e.Read(pot, volume_l=round(told, 2)))

    def top_up(self, pot: str, to_l: float) -> None:
        mark = to_l * self.truth["water by jug" if self.reads else "water by eye"]
        one = self.pots[pot]
        if mark > one.litres:
            one.celsius = (one.celsius * one.litres + TAP_C * (mark - one.litres)) / mark
            one.litres = mark
        self.log(e.ToppedUp(pot, to_l=to_l, how="read" if self.reads else "planned"))

    def enter(self, skein: str, pot: str) -> None:
        one, bath = self.skeins[skein], self.pots[pot]
        bath.litres += one.wet_l
        bath.colour_g += one.wet_colour_g
        bath.alum_g += one.wet_alum_g
        one.wet_l = one.wet_colour_g = one.wet_alum_g = 0.0
        self.inside[skein] = pot
        self.log(e.Entered(skein, pot))

    def lift(self, skein: str, weigh: bool) -> None:
        pot = self.pots[self.inside.pop(skein)]
        name = next(key for key, value in self.pots.items() if value is pot)
        one = self.skeins[skein]
        holds = self.truth["liquor held by wool"] * math.exp(self.noise.gauss(0.0, LIFT_SD))
        out_l = min(holds * one.bone_dry_g / 1000.0, 0.95 * pot.litres)
        share = out_l / pot.litres
        one.wet_l, one.wet_colour_g, one.wet_alum_g = out_l, pot.colour_g * share, pot.alum_g * share
        pot.litres, pot.colour_g, pot.alum_g = (
            pot.litres - out_l,
            pot.colour_g * (1.0 - share),
            pot.alum_g * (1.0 - share),
        )
        wet_g = round(one.bone_dry_g + 1000.0 * out_l + self.noise.gauss(0.0, SCALE_G)) if weigh else None
        self.log(e.Lifted(skein, name, wet_g))


def _between(table: Iterable[tuple[float, float, float]], at: float) -> tuple[float, float]:
    """Both columns of a table at a temperature, straight in the log; held at the ends' slope."""
    rows = tuple(table)
    for (t0, a0, b0), (t1, a1, b1) in itertools.pairwise(rows):
        if at <= t1 or t1 == rows[-1][0]:
            share = (at - t0) / (t1 - t0)
            return a0 * (a1 / a0) ** share, b0 * (b1 / b0) ** share
    raise AssertionError("an empty table")


@dataclass(frozen=True)
class Checkpoint:
    """A moment at which the account is held against the truth: entries so far, and the truths by name."""

    name: str
    entries: tuple[Entry, ...]
    truths: Mapping[str, float]
    later_min: float = 0.0


def simulated(
    guesses: Mapping[str, Prior], plan: Plan, seed: int, wide: float, two_stores: bool, reads: bool, pulls: int
) -> tuple[Day, list[Checkpoint]]:
    """A day and its checkpoints. The same seed has the same truths, whether the dyer reads or not."""
    truth = Truth(guesses, random.Random(seed), wide, two_stores)
    for name in guesses:
        truth[name]  # drawn in one order, whatever the day does
    day = Day(plan, truth, reads, random.Random(seed + 1_000_000))
    found: list[Checkpoint] = []
    _mordant(day)
    _extract(day, pulls)
    found.append(Checkpoint("strained", tuple(day.entries), _strained_truths(day)))
    _dye(day, "skein", "dye")
    found.append(Checkpoint("dyed", tuple(day.entries), _dyed_truths(day, "skein")))
    _dye(day, "second skein", "dye again")
    found.append(Checkpoint("dyed again", tuple(day.entries), _dyed_truths(day, "second skein")))
    return day, found


def _mordant(day: Day) -> None:
    step = day.plan.steps[0]
    day.log(e.Begun("mordant"))
    day.fill("mordant pot", step.water_l or 1.0)
    day.pots["mordant pot"].alum_g = step.add[0].mass_g
    day.log(e.Added("alum", "mordant pot", step.add[0].mass_g))
    day.enter("skein", "mordant pot")
    day.heat("mordant pot", MORDANT_C, 45.0, 60.0)
    day.log(e.Finished("mordant"))
    day.pass_min(30.0)
    day.lift("skein", weigh=day.reads)


def _extract(day: Day, pulls: int) -> None:
    step = day.plan.steps[1]
    mass_g, water_l = step.add[0].mass_g, step.water_l or 1.0
    day.stuff = day.truth.stuff(mass_g)
    for pull in range(pulls):
        day.fill("extract pot", water_l, refresh=pull > 0)
        if pull == 0:
            day.log(e.Begun("extract"))
            day.log(e.Added("madder", "extract pot", mass_g))
        day.heat("extract pot", STRAIN_C, 40.0, 60.0)
        if pull == 0:
            day.log(e.Finished("extract"))
        # A little of each strain is put in a glass before it is pooled: the pot is read, then strained.
        if day.reads and pull > 0:
            ahead = Day.__new__(Day)
            ahead.__dict__ |= {**day.__dict__, "stuff": Stuff(**vars(day.stuff)), "entries": [], "strains": []}
            ahead.pots = {name: Pot(**vars(pot)) for name, pot in day.pots.items()}
            ahead.noise = random.Random(0)
            ahead.strain("dye pot")
            day.matched("extract pot", ahead.strains[0] / day.strains[0], "first strain")
        day.strain("dye pot")
        day.pass_min(10.0)


def _strained_truths(day: Day) -> dict[str, float]:
    assert day.stuff is not None
    pot = day.pots["dye pot"]
    return {
        "colour in the dye pot": pot.colour_g,
        "volume of the dye pot": pot.litres,
        "left in the dyestuff": day.stuff.left_g,
        "once more would bring": day.stuff.next_g,
        "alum on the fibre": day.skeins["skein"].alum_g,
        "liquor on the wet fibre": day.skeins["skein"].wet_l,
    }


def _dye(day: Day, skein: str, step: str) -> None:
    pot, to_l = day.pots["dye pot"], day.plan.steps[3].water_l or 1.0
    if pot.litres < 0.9 * to_l:
        day.top_up("dye pot", to_l)
    fresh = pot.g_l
    day.enter(skein, "dye pot")
    day.log(e.Begun(step, early="ready"))
    day.heat("dye pot", DYE_C, 60.0, 60.0)
    day.log(e.Finished(step))
    if day.reads:
        day.read_volume("dye pot")
        day.matched("dye pot", pot.g_l / fresh, "before")
    day.lift(skein, weigh=day.reads and skein == "skein")


def _dyed_truths(day: Day, skein: str) -> dict[str, float]:
    pot, one = day.pots["dye pot"], day.skeins[skein]
    return {
        f"colour on the {skein}": one.colour_g,
        f"colour left after the {skein}": pot.colour_g,
        f"volume after the {skein}": pot.litres,
        f"carried out with the {skein}": one.wet_colour_g,
    }
