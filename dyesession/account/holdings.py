"""Who holds what at one moment, in every world: baths, the sieve, dyestuffs, fibre, and what has gone.

Knows nothing of events or time. Water, each lot's colour and each ingredient are somewhere in here, always.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from dyesession.account.heat import TAP_C
from dyesession.account.model import How
from dyesession.account.pools import EMPTY, Pool, mixed
from dyesession.account.unknowns import Unknowns, family_of
from dyesession.account.worlds import ZEROS, Vector, constant, mean, plus
from dyesession.dyeing.regain import bone_dry_of_air_dry_g
from dyesession.session.brought import Brought

LEAST_FIBRE_G = 1e-3  # of less than a milligram of fibre nothing is a share; our own choice


@dataclass(frozen=True)
class Bath:
    """A bath: its liquor, temperature in °C, how often fibre was dyed in it, where its volume comes from.

    `since_s` is the session second up to which time has been settled for it.
    """

    pool: Pool = EMPTY
    temperature_c: float = TAP_C
    uses: int = 0
    volume_how: How = "modelled"
    since_s: float = 0.0

    def holding(self, pool: Pool) -> "Bath":
        """A copy with other liquor."""
        return Bath(pool, self.temperature_c, self.uses, self.volume_how, self.since_s)

    def warmed(self, temperature_c: float) -> "Bath":
        """A copy at another temperature."""
        return Bath(self.pool, temperature_c, self.uses, self.volume_how, self.since_s)


NO_BATH = Bath()


@dataclass(frozen=True)
class Store:
    """A dyestuff lot: grams that went in, colour still in it, strains so far. `soluble`: all of it
    dissolved.
    """

    total_g: float = 0.0
    colour_g: Vector = ZEROS
    pulls: int = 0
    soluble: bool = False


@dataclass(frozen=True)
class Strain:
    """One strain: which of that lot it was (from 1), the entry, what ran off, its strength in g/L, and the
    vessel it came from.
    """

    lot: str
    number: int
    n: int
    colour_g: Vector
    volume_l: Vector
    strength: Vector
    vessel: str = ""


@dataclass(frozen=True)
class Evidence:
    """What one reading has to say of each world: `off` is the log of what was read over what that world
    holds, `sd` its standard deviation. Readings on one free scale bear its name; only how they differ
    counts. A reading `slip_from` standard deviations off in every world was a slip and tells nothing between
    them; that far off for a strength there is none.
    """

    n: int
    off: Vector
    sd: float
    scale: str = ""
    slip_from: float = 30.0  # our own choice: far beyond any strength read; without it one absurd weight left
    # a single world standing, and every later number was that world's


@dataclass(frozen=True)
class Fibre:
    """A lot of fibre: what is fixed on it, and the liquor it carries while it is out of any bath."""

    kind: str
    mass_g: float
    snippet: bool = False
    taken_g: Mapping[str, Vector] = field(default_factory=dict)
    liquor: Pool = EMPTY

    def taken(self, name: str) -> Vector:
        """Grams of one thing fixed on it."""
        return self.taken_g.get(name, ZEROS)

    def with_taken(self, name: str, grams: Vector) -> "Fibre":
        """A copy with so much more of one thing fixed on it."""
        taken_g = {**self.taken_g, name: plus(self.taken(name), grams)}
        return Fibre(self.kind, self.mass_g, self.snippet, taken_g, self.liquor)

    @property
    def bone_dry_g(self) -> float:
        """Its mass without the moisture of an ordinary room."""
        return bone_dry_of_air_dry_g(self.mass_g, family_of(self.kind))[1]


@dataclass(frozen=True)
class Holdings:
    """Everything, everywhere. `brought_l` and `brought_g` are what came in from outside, and `by_reading_l`
    what volume readings found more or, below 0, less than was reckoned. `poured_g` came in with baths of other
    days, and `of_other_days` says what each such thing is. `fresh` is the strength (g/L) each
    bath had when fibre last went into it unused; `evidence` is what readings say of each world.
    """

    unknowns: Unknowns
    baths: Mapping[str, Bath] = field(default_factory=dict)
    kept: Mapping[str, Bath] = field(default_factory=dict)
    sieve: Pool = EMPTY
    stores: Mapping[str, Store] = field(default_factory=dict)
    fibres: Mapping[str, Fibre] = field(default_factory=dict)
    away: Pool = EMPTY
    steamed_l: Vector = ZEROS
    by_reading_l: Vector = ZEROS
    brought_l: Vector = ZEROS
    brought_g: Mapping[str, float] = field(default_factory=dict)
    poured_g: Mapping[str, Vector] = field(default_factory=dict)
    of_other_days: Mapping[str, Brought] = field(default_factory=dict)
    dissolved: frozenset[str] = frozenset()
    strains: tuple[Strain, ...] = ()
    fresh: Mapping[str, Vector] = field(default_factory=dict)
    evidence: tuple[Evidence, ...] = ()

    def changed(self, **fields: Any) -> "Holdings":
        """A copy with other fields: `dataclasses.replace` in a third of its time, and a day makes thousands."""
        copy = object.__new__(Holdings)
        copy.__dict__.update(self.__dict__, **fields)
        return copy

    def bath(self, vessel: str) -> Bath:
        """The bath in a vessel, an empty one when there is none."""
        return self.baths.get(vessel, NO_BATH)

    def with_bath(self, vessel: str, bath: Bath) -> "Holdings":
        """A copy with another bath in a vessel."""
        return self.changed(baths={**self.baths, vessel: bath})

    def with_pool(self, vessel: str, pool: Pool) -> "Holdings":
        """A copy with other liquor in a vessel."""
        return self.with_bath(vessel, self.bath(vessel).holding(pool))

    def without_bath(self, vessel: str) -> "Holdings":
        """A copy with nothing in a vessel."""
        return self.changed(baths={name: one for name, one in self.baths.items() if name != vessel})

    def settled_at(self, second: float) -> "Holdings":
        """A copy whose baths are all settled up to a session second."""
        if all(bath.since_s == second for bath in self.baths.values()):
            return self
        return self.changed(baths={name: replace(bath, since_s=second) for name, bath in self.baths.items()})

    def with_kept(self, label: str, bath: Bath) -> "Holdings":
        """A copy with another bath kept under a label."""
        return self.changed(kept={**self.kept, label: bath})

    def with_store(self, lot: str, store: Store) -> "Holdings":
        """A copy with another state of a dyestuff lot."""
        return self.changed(stores={**self.stores, lot: store})

    def with_fibre(self, lot: str, fibre: Fibre) -> "Holdings":
        """A copy with another state of a lot of fibre."""
        return self.changed(fibres={**self.fibres, lot: fibre})

    def with_water(self, vessel: str, water_l: Vector, temperature_c: float = TAP_C) -> "Holdings":
        """A copy with water from outside in a vessel."""
        added = self.changed(brought_l=plus(self.brought_l, water_l))
        fresh = Bath(Pool(water_l), temperature_c, 0, "planned")
        return added.with_bath(vessel, together(self.bath(vessel), fresh))

    def with_brought(self, name: str, mass_g: float) -> "Holdings":
        """A copy that knows of a mass from outside; whoever calls puts it where it went."""
        return self.changed(brought_g={**self.brought_g, name: self.brought_g.get(name, 0.0) + mass_g})

    @property
    def things(self) -> tuple[str, ...]:
        """Everything but water that came in from outside, by name."""
        return tuple(dict.fromkeys((*self.brought_g, *self.poured_g)))

    def came_in_g(self, name: str) -> Vector:
        """Grams of one thing that came in from outside: weighed, or with a bath of another day."""
        weighed = constant(self.brought_g.get(name, 0.0))
        return plus(weighed, self.poured_g[name]) if name in self.poured_g else weighed

    def with_evidence(self, evidence: Evidence) -> "Holdings":
        """A copy that knows what one reading more says."""
        return self.changed(evidence=(*self.evidence, evidence))

    def with_away(self, pool: Pool) -> "Holdings":
        """A copy with liquor thrown away."""
        return self.changed(away=mixed(self.away, pool))


def together(there: Bath, poured: Bath) -> Bath:
    """Two baths in one vessel: warm between the two, used as often as the more used one."""
    pool = mixed(there.pool, poured.pool)
    there_l, poured_l = mean(there.pool.volume_l), mean(poured.pool.volume_l)
    if there_l + poured_l <= 0.0:
        return Bath(pool, poured.temperature_c, max(there.uses, poured.uses), poured.volume_how)
    warm = (there.temperature_c * there_l + poured.temperature_c * poured_l) / (there_l + poured_l)
    how: How = poured.volume_how if there_l == 0.0 else "modelled"
    return Bath(pool, warm, max(there.uses, poured.uses), how)
