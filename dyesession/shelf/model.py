"""What stands on the shelf, as frozen data. Grams, litres; a band is the 90 % band; dates without a time.

A bath is known by the session that kept it and the label it was put by under.
"""

from dataclasses import dataclass
from datetime import date, datetime

from dyesession.account import Band90

TRACE_G = 0.05  # less than any kitchen scale shows; our own choice, no source


@dataclass(frozen=True)
class Inside:
    """So much of one thing in a bath; `of_g` is all that the day put in, `grams` None where nobody knows.

    `carried` tells that no fact put it into this bath: wet fibre brought it along.
    """

    ingredient: str
    substance: str
    role: str
    grams: Band90 | None
    of_g: float | None = None
    carried: bool = False

    @property
    def share(self) -> Band90 | None:
        """What is left as a share of all that the day put in, 0 to 1; None where one of the two is not known."""
        if self.grams is None or not self.of_g:
            return None
        return Band90(*(one / self.of_g for one in (self.grams.mean, self.grams.low, self.grams.high)))


@dataclass(frozen=True)
class Draw:
    """A pouring from a kept bath on another day; litres are None where all of it was taken.

    `entry` is its number in the log of that day.
    """

    session: str
    at: datetime
    volume_l: float | None
    entry: int = 0


@dataclass(frozen=True)
class Recharge:
    """What brings a mordant bath up to its first dose again, for so much fibre."""

    ingredient: str
    substance: str
    fibre_g: float
    wanted_g: float
    left: Band90
    add: Band90


@dataclass(frozen=True)
class WouldDo:
    """What a dye bath would still do: so much fibre at so much of the first lot's depth, with the band.

    `first` is the depth it is compared with, in words; `colour` the first lot's dry colour where it was
    read, `then` what it would come to where the undyed fibre was read too, with its ± (CIEDE2000).
    """

    fibre_g: float
    fibre: str
    depth: float
    low: float
    high: float
    first: str
    colour: str = ""
    then: str = ""
    then_plus_minus: float | None = None


@dataclass(frozen=True)
class KeptBath:
    """One bath on the shelf.

    `uses` counts dyeings, its forebears' too; `went_through` is the fibre that was in it. `began_on` is when
    what is in it was first put by: pouring from jar to jar makes nothing fresh. `past` tells that its
    look-again date is over. `left_l` is what the facts alone leave of it, `entry` the number of the entry
    that put it by, `place` where it stands, in the dyer's words.
    """

    session: str
    label: str
    recipe: str
    kept_at: datetime
    age_days: int
    volume_l: Band90 | None
    inside: tuple[Inside, ...]
    uses: int
    hue_may_drift: bool
    went_through: tuple[str, ...]
    ph: float | None
    ph_on: date | None
    look_again: date
    look_again_source: str
    past: bool
    how: str
    cautions: tuple[str, ...]
    draws: tuple[Draw, ...] = ()
    troubles: tuple[str, ...] = ()
    drawn_from: tuple[str, ...] = ()
    recharge: tuple[Recharge, ...] = ()
    would_do: WouldDo | None = None
    demo: bool = False
    began_on: date | None = None
    left_l: float | None = None
    entry: int = 0
    place: str = ""

    @property
    def dye(self) -> tuple[Inside, ...]:
        """The dyestuffs whose colour is in it."""
        return tuple(one for one in self.inside if one.role == "dyestuff")

    @property
    def mordant(self) -> tuple[Inside, ...]:
        """The mordants in it."""
        return tuple(one for one in self.inside if one.role == "mordant")

    @property
    def worth_telling(self) -> tuple[Inside, ...]:
        """What is in it without traces: a twentieth of a gram of a wash says nothing to a dyer."""
        return tuple(
            one for one in self.inside if one.role == "dyestuff" or one.grams is None or one.grams.mean >= TRACE_G
        )

    @property
    def contents(self) -> tuple[tuple[str, float | None], ...]:
        """Substances and grams, as `care` asks for them; a strained liquor's own mass is not known."""
        return tuple(
            (one.substance, None if one.role == "dyestuff" or one.grams is None else one.grams.mean)
            for one in self.inside
        )


@dataclass(frozen=True)
class Waiting:
    """Fibre that was mordanted and waits for a dye bath: what, how much, since when, with what."""

    session: str
    lot: str
    kind: str
    mass_g: float
    since: date
    age_days: int
    how: str
    demo: bool = False


@dataclass(frozen=True)
class Told:
    """Something that two days disagree about; every session in `sessions` is to be told."""

    label: str
    sessions: tuple[str, ...]
    text: str


@dataclass(frozen=True)
class Shelf:
    """Everything that stands, the next to look at first; the fibre that waits, the oldest first.

    `stood_on` is the day a demo season is shown on, where there is nothing but demo days; else None.
    """

    baths: tuple[KeptBath, ...] = ()
    waiting: tuple[Waiting, ...] = ()
    told: tuple[Told, ...] = ()
    stood_on: date | None = None

    def bath(self, label: str) -> KeptBath | None:
        """The bath of that label: the one kept last where several bear it."""
        found = [one for one in self.baths if one.label == label]
        return max(found, key=lambda one: one.kept_at, default=None)
