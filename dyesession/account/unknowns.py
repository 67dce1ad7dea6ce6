"""What no one has told or read yet, as one number a world: drawn from the starting guesses of
`dyeing.priors`.

Knows nothing of what happened. Guesses made here, beside those taken from there, say so with their source.
"""

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from dyesession.account.beside import Beside, beside_values
from dyesession.account.worlds import Vector, at_steps, dealt_steps, mean
from dyesession.dyeing.bands import Z_90, Scale, from_scale, to_scale
from dyesession.dyeing.evaporation import LID_SHARE
from dyesession.dyeing.fibres import Family, fibre_family
from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.mordanting import RULES
from dyesession.dyeing.priors import (
    UPTAKE_RATE,
    Prior,
    fibre_retention_prior,
    kept_share_prior,
    partition_prior,
    spent_retention_prior,
    stiffening_fades_prior,
    stiffens_prior,
)
from dyesession.plan.model import Plan
from dyesession.substances import find

# A dye pot may be covered, ajar or open, and the log does not say. Centre: ajar; ends: below a good lid,
# and open.
LID_UNKNOWN = Prior(
    "steam's share past the lid, lid not told",
    LID_SHARE["ajar"][1],
    LID_SHARE["on"][0],
    1.0,
    "log",
    "common practice, no source: a covered pot to an open one",
)
# Nobody says whether a lot was only lifted or squeezed as well: between the guesses for the two.
LIFT_UNKNOWN = "between the guesses for lifted and for squeezed: common practice, no source"

WATER_BY_EYE = Prior(
    "water filled by eye over water told", 1.0, 0.9, 1.1, "log", "judgement: filled to a mark"
)
WATER_BY_JUG = Prior(
    "water by jug over water told",
    1.0,
    0.95,
    1.05,
    "log",
    "2-5 % for a jug (usual uncertainty, no source), the wider end as a hot jug overstates by 3 % more",
)
READING_ERROR = 0.05  # half-width of a volume reading, as the jug's
# Where in the laws' band the steam of this kitchen lies, as a step of Student's t: the band's own width
# depends on the heat (`steam`), so the guess is of the step.
STEAM_STEP = Prior("steam over the laws' middle", 1.0, math.exp(-1.0), math.e, "log", "the laws' own spread")
WEIGHED_WATER = Prior(
    "water on fibre over what its wet weight says",
    1.0,
    0.99,
    1.01,
    "log",
    "derived: 1.9 g of regain not known (13.6 to 18.25 %) on 100 g of wool that carries 150-300 g, a 1 g scale",
)
# A reading's own error, as a number whose log has the standard deviation 1 (90 %: 1.645 either way).
VOLUME_STEP = Prior("error of a reading", 1.0, math.exp(-Z_90), math.exp(Z_90), "log", "by definition")

# Judged bands are judged too surely: these are taken so much wider, so that bands still hold four days in five where
# every guess was twice too sure. Our own choice, on the simulated days (tests/bench/bench_account.py).
JUDGED_TOO_SURELY = {
    "kept share of": 1.4,
    "stiffening of": 1.2,
    "fading of": 1.2,
    "liquor held by": 1.1,
    "partition of": 1.1,
}

# What a strong home ring brings into the pot, and so the most steam it can drive while no burner is told.
# Judgement: 3 kW at 0.7, near an electric coil's 0.74 (a blog quoting US DOE tests: weak).
STRONG_RING_W = 2000.0


@dataclass(frozen=True)
class Starting:
    """The numbers an account starts from, where they are not the usual ones.

    `priors` replaces starting guesses by an unknown's name, for learned numbers and for tests; a prior
    whose low equals its high is a known number. `beside` tells of those that hang on another unknown what
    they are at each place of it. `net_power_w` bounds the steam. `pot_diameter_m` is by vessel.
    """

    priors: Mapping[str, Prior] = field(default_factory=dict)
    beside: Mapping[str, Beside] = field(default_factory=dict)
    net_power_w: float = STRONG_RING_W
    pot_diameter_m: Mapping[str, float] = field(default_factory=dict)


def known(name: str, value: float) -> Prior:
    """A number that is no guess, as a prior of no width."""
    return Prior(name, value, value, value, "log", "known")


# A mass told with its band is taken as a share of so much more than the band's top: most bands of what is left in
# a bath are even or end at nought, which no logarithm fits. Our own choice, no source.
BEYOND_TOP = 1.25
LEAST_TOLD = 1e-3  # a band down to nought is taken to end at this share of its top
HALVINGS = 20  # to a millionth of the way between the ends


def share_of_most(name: str, mean_g: float, low_g: float, high_g: float) -> tuple[Prior, float]:
    """A mass that another day's account told with its mean and 90 % band: as a share of a most in grams, with
    that mean and those ends.
    """
    most_g = BEYOND_TOP * high_g
    low, high, wanted = max(low_g, LEAST_TOLD * high_g) / most_g, high_g / most_g, mean_g / most_g
    below, above = low, high
    for _ in range(HALVINGS if low < high else 0):
        middle = (below + above) / 2.0
        there = mean(at_steps(_told(name, middle, low, high), dealt_steps(1)))
        below, above = (below, middle) if there > wanted else (middle, above)
    return _told(name, (below + above) / 2.0, low, high), most_g


def _told(name: str, centre: float, low: float, high: float) -> Prior:
    return Prior(name, centre, low, high, "logit", "what the shelf made of the day that kept it")


def kept_name(dyestuff: str) -> str:
    """Name of the unknown: share of its colour that this dyestuff keeps per extraction."""
    return f"kept share of {dyestuff}"


def stiffens_name(dyestuff: str) -> str:
    """Name of the unknown: odds of keeping in its second extraction over those in the first."""
    return f"stiffening of {dyestuff}"


def fades_name(dyestuff: str) -> str:
    """Name of the unknown: what is left of that stiffening each time after."""
    return f"fading of the stiffening of {dyestuff}"


def spent_name(dyestuff: str) -> str:
    """Name of the unknown: liquor held by this spent dyestuff, g/g."""
    return f"liquor held by spent {dyestuff}"


def rate_name(dyestuff: str) -> str:
    """Name of the unknown: rate of uptake (and of extraction beside the fibre), per minute at heat."""
    return f"{RATE_OF}{dyestuff}"


def giving_name(dyestuff: str) -> str:
    """Name of the unknown: rate of extraction, where that of uptake was learned and so says nothing of it."""
    return f"{rate_name(dyestuff)} out of the dyestuff"


def partition_name(dyestuff: str, family: Family) -> str:
    """Name of the unknown: partition of this dyestuff's colour on that kind of fibre, L/kg."""
    return f"partition of {dyestuff} on {family}"


def held_name(family: Family) -> str:
    """Name of the unknown: liquor held by wet fibre of that kind, g per g bone-dry."""
    return f"liquor held by {family}"


def mordant_share_name(family: Family) -> str:
    """Name of the unknown: share of a small dose of alum that the fibre takes."""
    return f"share of alum taken by {family}"


def mordant_most_name(family: Family) -> str:
    """Name of the unknown: the most alum the fibre takes, per cent of its mass."""
    return f"most alum taken by {family}"


RATE_OF = "rate of "
NO_LOTS: tuple[Family, ...] = ("wool",)  # a day without fibre still lifts snippets, which count as wool
LID, EYE, JUG, MORDANT_RATE = "lid", "water by eye", "water by jug", "rate of mordanting"
STEAM = "steam"


def family_of(kind: str) -> Family:
    """Family of a fibre; one with no figures is taken as wool, whose guess for an unknown dye is the
    widest.
    """
    try:
        return fibre_family(kind)
    except OutOfRange:
        return "wool"


@dataclass(frozen=True)
class Unknowns:
    """Every unknown of a day by name: one number a world, and the step of Student's t that it stands at.

    `placed` says where readings have moved the worlds, by name; an unknown it does not name stands where it
    was dealt. Only unknowns of some width have steps.
    """

    values: Mapping[str, Vector]
    steps: Mapping[str, Vector]
    placed: Mapping[str, Vector] = field(default_factory=dict)

    def __getitem__(self, name: str) -> Vector:
        """One number a world for that unknown."""
        return self.values[name]

    def giving(self, dyestuff: str) -> Vector:
        """Rate at which a dyestuff gives its colour to the water: that of uptake, unless that one was learned."""
        return self.values.get(giving_name(dyestuff)) or self.values[rate_name(dyestuff)]

    def dealt(self) -> Mapping[str, Vector]:
        """The steps as they were dealt out, before any reading moved them."""
        numbers = {name: number for number, name in enumerate(self.values, start=1)}
        return {name: dealt_steps(numbers[name]) for name in self.steps}

    def with_unknown(self, name: str, prior: Prior) -> "Unknowns":
        """A copy with one unknown more, such as the error of a reading: it takes the next column."""
        steps = self.placed.get(name) or dealt_steps(len(self.values) + 1)
        moved = self.steps if prior.low == prior.high else {**self.steps, name: steps}
        return Unknowns({**self.values, name: at_steps(prior, steps)}, moved, self.placed)

    def set_beside(self, beside: Mapping[str, Beside]) -> "Unknowns":
        """A copy in which each of these stands where it does at what its world has for the other unknown."""
        there = {name: one for name, one in beside.items() if one.of in self.values and name in self.steps}
        if not there:
            return self
        found = {name: beside_values(one, self.values[one.of], self.steps[name]) for name, one in there.items()}
        return replace(self, values={**self.values, **found})


def unknowns(plan: Plan, starting: Starting, placed: Mapping[str, Vector] | None = None) -> Unknowns:
    """All unknowns of a plan, each with its own column of the lattice, in an order the plan alone decides."""
    return with_all(Unknowns({}, {}, placed or {}), starting_priors(plan), starting)


def with_all(known_yet: Unknowns, priors: Iterable[tuple[str, Prior]], starting: Starting) -> Unknowns:
    """A copy that knows of all of these: what a day comes upon later takes the next columns."""
    new = {name: prior for name, prior in priors if name not in known_yet.values}
    for name, prior in new.items():
        known_yet = known_yet.with_unknown(name, starting.priors.get(name) or less_sure(name, prior))
    for name in new:
        if name.startswith(RATE_OF) and name in starting.priors:
            known_yet = known_yet.with_unknown(giving_name(name.removeprefix(RATE_OF)), UPTAKE_RATE)
    return known_yet.set_beside({name: one for name, one in starting.beside.items() if name in new})


def by_substance(starting: Starting, dyestuffs: Mapping[str, str], kinds: Iterable[str]) -> Starting:
    """Numbers that a day was begun with under a dyestuff's own name serve every ingredient (name: substance) that
    turns out to be it, where it has none under its own.
    """
    priors, beside = dict(starting.priors), dict(starting.beside)
    families = tuple(dict.fromkeys(map(family_of, kinds))) or NO_LOTS
    for ingredient, substance in dyestuffs.items():
        known_as = find(substance)
        key = known_as.key if known_as is not None else substance.casefold().strip()
        own = dict(zip(_learned_names(key, families), _learned_names(ingredient, families), strict=True))
        for of_substance, mine in own.items():
            if of_substance not in priors or mine in priors:
                continue
            priors[mine] = replace(priors[of_substance], name=mine)
            if hanging := beside.get(of_substance):
                beside[mine] = replace(hanging, of=own.get(hanging.of, hanging.of))
    return replace(starting, priors=priors, beside=beside)


def _learned_names(dyestuff: str, families: Iterable[Family]) -> list[str]:
    """The unknowns of a dyestuff that days can teach."""
    return [
        kept_name(dyestuff),
        stiffens_name(dyestuff),
        rate_name(dyestuff),
        *(partition_name(dyestuff, one) for one in families),
    ]


def less_sure(name: str, prior: Prior) -> Prior:
    """A guess at the unknown of that name; one that is judgement is taken a little wider than it was judged."""
    wider = next((by for start, by in JUDGED_TOO_SURELY.items() if name.startswith(start)), None)
    if wider is None:
        return prior
    middle, low, high = (to_scale(x, prior.scale) for x in (prior.centre, prior.low, prior.high))
    low, high = (middle + wider * (end - middle) for end in (low, high))
    return replace(prior, low=from_scale(low, prior.scale), high=from_scale(high, prior.scale))


def starting_priors(plan: Plan) -> Iterator[tuple[str, Prior]]:
    """Name and usual starting guess of every unknown of a plan, in a fixed order: also what a log's header
    lists.
    """
    yield LID, LID_UNKNOWN
    yield STEAM, STEAM_STEP
    yield EYE, WATER_BY_EYE
    yield JUG, WATER_BY_JUG
    yield MORDANT_RATE, UPTAKE_RATE
    dyestuffs = {one.ingredient: one.substance for one in plan.doses if one.role == "dyestuff"}
    yield from priors_of((one.kind for one in plan.lots), dyestuffs)


def priors_of(kinds: Iterable[str], dyestuffs: Mapping[str, str]) -> Iterator[tuple[str, Prior]]:
    """Name and usual starting guess of what fibre of these kinds and these dyestuffs (name: substance)
    bring.
    """
    families = tuple(dict.fromkeys(map(family_of, kinds))) or NO_LOTS
    for family in families:
        yield held_name(family), lift_prior(family)
        rule = RULES[family]
        yield mordant_share_name(family), _of_rule("logit", rule.share, rule.source)
        yield mordant_most_name(family), _of_rule("log", rule.most_pct, rule.source)
    for ingredient, substance in dyestuffs.items():
        yield from _of_dyestuff(ingredient, substance, families)


def _of_dyestuff(
    ingredient: str, substance: str, families: tuple[Family, ...]
) -> Iterator[tuple[str, Prior]]:
    yield kept_name(ingredient), kept_share_prior(substance)
    yield stiffens_name(ingredient), stiffens_prior(substance)
    yield fades_name(ingredient), stiffening_fades_prior(substance)
    yield spent_name(ingredient), spent_retention_prior()
    yield rate_name(ingredient), UPTAKE_RATE
    for family in families:
        yield partition_name(ingredient, family), partition_prior(family, substance)


def lift_prior(family: Family) -> Prior:
    """Guess at the liquor held by fibre just out of a bath, squeezed or not."""
    lifted, squeezed = fibre_retention_prior(family, "lifted"), fibre_retention_prior(family, "squeezed")
    centre = math.sqrt(lifted.centre * squeezed.centre)
    return Prior(f"liquor held by {family}", centre, squeezed.low, lifted.high, "log", LIFT_UNKNOWN)


def _of_rule(scale: Scale, points: tuple[float, float, float], source: str) -> Prior:
    low, centre, high = points
    return Prior("alum taken", centre, low, high, scale, source)
