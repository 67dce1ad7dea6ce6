"""What an account holds, as frozen data: estimates with their bands, one line a movement, and the balance.

Knows nothing of how it was reckoned. Colour is counted in grams of this lot's dyestuff, volumes in litres.
"""

import math
from dataclasses import dataclass, field
from typing import Literal

How = Literal["weighed", "read", "matched", "typed", "planned", "modelled", "learned", "guess"]

# A band whose half-width is more than this share of its mean is called a guess; our own choice, no source.
GUESS_SHARE = 1.0 / 3.0


@dataclass(frozen=True)
class Band90:
    """An estimate: its mean (so that totals add up) and the ends of its 90 % band."""

    mean: float
    low: float
    high: float

    @property
    def half_width(self) -> float:
        """The ± shown beside the mean."""
        return (self.high - self.low) / 2.0

    @property
    def is_guess(self) -> bool:
        """Whether the band is too wide to call it more than a guess."""
        return self.half_width > GUESS_SHARE * abs(self.mean)


NOTHING = Band90(0.0, 0.0, 0.0)


@dataclass(frozen=True)
class Amount:
    """So many grams of one thing: a dyestuff lot's colour, or another ingredient."""

    lot: str
    grams: Band90


@dataclass(frozen=True)
class BathEstimate:
    """A bath in a vessel, or kept under a label (`kept`).

    `dye` counts each lot's colour, `contents` everything else dissolved. `uses` counts the dyeings done in
    it; after a use the hue may drift, for a spent bath is another mixture than a fresh one (Shams-Nateri
    2011 for madder, abstract read). `dyestuff_inside` names what is
    still in the pot; `how` is of the colour it holds most of, `strength_g_l` its grams a litre.
    """

    vessel: str
    kept: bool
    volume_l: Band90
    volume_how: How
    dye: tuple[Amount, ...]
    contents: tuple[Amount, ...]
    uses: int
    hue_may_drift: bool
    how: How
    dyestuff_inside: tuple[str, ...] = ()
    strength_g_l: Band90 = NOTHING

    def grams(self, lot: str) -> Band90:
        """Colour of one dyestuff lot in it; nothing when it holds none."""
        return next((one.grams for one in self.dye if one.lot == lot), NOTHING)


@dataclass(frozen=True)
class DyestuffEstimate:
    """A dyestuff lot: all that went in, what has come out of it, what is left, what one more extraction
    brings.

    `next_min` is how long the planned extraction takes, and `next_water_l` its water; None where no plan
    says it. `pulls` counts strains. `next_kept` is the share that one more would leave behind, `how` says
    whether its strains were read.
    """

    lot: str
    total_g: float
    pulls: int
    drawn: Band90
    left_in_dyestuff: Band90
    next_pull: Band90
    next_min: float | None
    next_water_l: float | None
    next_kept: Band90 = NOTHING
    how: How = "modelled"


@dataclass(frozen=True)
class StrainEstimate:
    """One strain of a dyestuff lot, counted from 1: the colour and the liquor that ran off, g/L beside."""

    lot: str
    number: int
    n: int
    brought: Band90
    volume_l: Band90
    strength_g_l: Band90


@dataclass(frozen=True)
class Taken:
    """What one lot of fibre has of one lot's colour; per cent of the fibre's dry mass beside the grams."""

    lot: str
    grams: Band90
    percent_wof: Band90


@dataclass(frozen=True)
class FibreEstimate:
    """A lot of fibre or snippet: colour and mordant fixed on it, liquor it carries and what that holds.

    `place` is a vessel's name, "out dry", "out wet" or "done", as the facts have it.
    """

    lot: str
    kind: str
    mass_g: float
    snippet: bool
    place: str
    taken: tuple[Taken, ...]
    mordant: tuple[Amount, ...]
    liquor_l: Band90
    carried: tuple[Amount, ...]


@dataclass(frozen=True)
class LedgerLine:
    """One movement of one bath: entry, session second, vessel (or label), words, change of litres and
    grams, and one word for where that comes from.
    """

    n: int
    second: float
    vessel: str
    what: str
    volume_change_l: Band90
    changes: tuple[Amount, ...] = ()
    how: How = "modelled"


@dataclass(frozen=True)
class Balance:
    """Where all of one thing is: a lot's colour or an ingredient in grams, or water in litres.

    `by_reading` is what volume readings found more (or, below 0, less) than the model: water only.
    """

    name: str
    brought: Band90
    in_baths: Band90
    on_fibre: Band90
    in_dyestuff: Band90
    carried_out: Band90
    thrown_away: Band90
    steamed_off: Band90 = NOTHING
    by_reading: Band90 = NOTHING

    @property
    def unaccounted(self) -> float:
        """What the means do not explain; 0 but for the last digits of a float."""
        gone = (
            self.in_baths,
            self.on_fibre,
            self.in_dyestuff,
            self.carried_out,
            self.thrown_away,
            self.steamed_off,
        )
        return math.fsum((self.brought.mean, self.by_reading.mean, *(-one.mean for one in gone)))


@dataclass(frozen=True)
class Lost:
    """One lot's colour that no longer can reach fibre: carried out in wet fibre's liquor, and thrown away."""

    lot: str
    carried_out: Band90
    thrown_away: Band90


@dataclass(frozen=True)
class StrengthReading:
    """A strength as it was read, with the volume the account held for that bath then, and of which lot.

    `counted` is False where it could not be held against anything the account knows: kept, not reckoned
    with. `strain` is which strain of the lot was read (0: none alone), `against_strain` the one it was held
    against.
    """

    n: int
    second: float
    vessel: str
    strength: float
    against: str
    how: str
    volume_l: Band90
    counted: bool = True
    lot: str = ""
    strain: int = 0
    against_strain: int = 0


@dataclass(frozen=True)
class ReadingEffect:
    """What one reading did to an estimate: of what, in which unit, before and after, and how it was read."""

    n: int
    second: float
    what: str
    unit: str
    before: Band90
    after: Band90
    how: How


@dataclass(frozen=True)
class Account:
    """All estimates after entry `n`, at a session second.

    `effects` are what readings did to estimates, oldest first. `behind` is what the answers to a question
    are reckoned from (`answers`); nobody else looks at it.
    """

    n: int
    second: float
    baths: tuple[BathEstimate, ...] = ()
    dyestuffs: tuple[DyestuffEstimate, ...] = ()
    fibres: tuple[FibreEstimate, ...] = ()
    lines: tuple[LedgerLine, ...] = ()
    lost: tuple[Lost, ...] = ()
    water: Balance = Balance("water", NOTHING, NOTHING, NOTHING, NOTHING, NOTHING, NOTHING)
    balances: tuple[Balance, ...] = ()
    strengths: tuple[StrengthReading, ...] = ()
    effects: tuple[ReadingEffect, ...] = ()
    strains: tuple[StrainEstimate, ...] = ()
    behind: object = field(default=None, compare=False, repr=False)

    def bath(self, vessel: str) -> BathEstimate | None:
        """The bath in that vessel or kept under that label."""
        return next((one for one in self.baths if one.vessel == vessel), None)

    def dyestuff(self, lot: str) -> DyestuffEstimate | None:
        """The dyestuff lot of that name."""
        return next((one for one in self.dyestuffs if one.lot == lot), None)

    def fibre(self, lot: str) -> FibreEstimate | None:
        """The lot of fibre of that name."""
        return next((one for one in self.fibres if one.lot == lot), None)

    def balance(self, name: str) -> Balance | None:
        """The balance of that ingredient or dyestuff lot."""
        return next((one for one in self.balances if one.name == name), None)
