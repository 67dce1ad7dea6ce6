"""Whether to extract a dyestuff once more: what each strain brought, what is left, what one more would bring.

Knows nothing of words or screens. Colour that a strain brings is read as strength times strained volume; the
guards are those of successive strains on one linear scale (`dyeing.strains`). That the first water wets dry stuff, and
so runs off short, is in every world's own holding back. Until a strain is read, the guess tells.
"""

import itertools
from dataclasses import dataclass
from typing import Literal

from dyesession.account.estimate import Behind, next_pull_g
from dyesession.account.model import NOTHING, Account, Band90, DyestuffEstimate, StrainEstimate
from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.strains import left_from_strains
from dyesession.dyeing.strength import MATCH_SD

Advice = Literal["go on", "either", "stop", "read first"]

# Of the colour drawn so far. An eighth more depth can hardly be told by eye; a fifth can. Our own choice, no source.
STOP_BELOW, GO_ON_ABOVE = 0.125, 0.20
PER_CENT = 100.0
LEAST_G = 1e-9


@dataclass(frozen=True)
class OnceMore:
    """One dyestuff's strains so far and one extraction more.

    `advice` is "read first" where nothing was read and the guess leaves both open, yes and hardly.
    `brings_percent` is of all that was drawn so far. `read` counts the strains whose strength was read beside
    the first; `not_weaker` names one that read no weaker than the one before it (its reading cannot tell what
    is left), `unlike` that a strain was read on a scale of its own, `at_least` that the ratio of strain to
    strain rose, so that a stubborn store is likely and `left` is the least there is.
    """

    lot: str
    strains: tuple[StrainEstimate, ...]
    drawn: Band90
    left: Band90
    brings: Band90
    brings_percent: Band90
    minutes: float | None
    water_l: float | None
    read: int
    advice: Advice
    not_weaker: int = 0
    unlike: bool = False
    at_least: bool = False

    @property
    def is_guess(self) -> bool:
        """Whether no strain was read, so that the starting guess tells."""
        return self.read == 0


def once_more(account: Account, lot: str) -> OnceMore | None:
    """What extracting this dyestuff once more would do; None before its first strain or without dyestuff."""
    stuff, behind = account.dyestuff(lot), account.behind
    if stuff is None or not stuff.pulls or not isinstance(behind, Behind):
        return None
    amounts = _read_amounts(account, lot)
    percent = _percent(behind, lot, stuff)
    read = max(0, len(amounts) - 1)
    return OnceMore(
        lot=lot,
        strains=tuple(one for one in account.strains if one.lot == lot),
        drawn=stuff.drawn,
        left=stuff.left_in_dyestuff,
        brings=stuff.next_pull,
        brings_percent=percent,
        minutes=stuff.next_min,
        water_l=stuff.next_water_l,
        read=read,
        advice=_advice(percent) if read or not _is_open(percent, stuff) else "read first",
        not_weaker=_not_weaker(amounts),
        unlike=any(_alone(one.strain, one.against_strain, one.lot, lot) for one in account.strengths),
        at_least=_rises(amounts),
    )


def _percent(behind: Behind, lot: str, stuff: DyestuffEstimate) -> Band90:
    store = behind.held.stores[lot]
    more = next_pull_g(behind.held, lot)
    drawn = [stuff.total_g - left for left in store.colour_g]
    if min(drawn) <= LEAST_G:
        return NOTHING
    return behind.band(tuple([PER_CENT * m / d for m, d in zip(more, drawn, strict=True)]))


def _is_open(percent: Band90, stuff: DyestuffEstimate) -> bool:
    """Whether a guess allows that a third strain is wasted and that it shows; one strain has none to hold it by."""
    wasted, shows = PER_CENT * STOP_BELOW, PER_CENT * GO_ON_ABOVE
    return stuff.pulls > 1 and percent.low < wasted and percent.high > shows


def _advice(percent: Band90) -> Advice:
    if percent.mean < PER_CENT * STOP_BELOW:
        return "stop"
    return "go on" if percent.mean > PER_CENT * GO_ON_ABOVE else "either"


def _read_amounts(account: Account, lot: str) -> tuple[float, ...]:
    """Strength times volume of the first strains in a row that were read, the first strain's strength 1."""
    strength = {1: 1.0}
    for one in account.strengths:
        if one.lot == lot and one.counted and one.strain > 1 and one.against_strain in strength:
            strength[one.strain] = one.strength * strength[one.against_strain]
    volume = {one.number: one.volume_l.mean for one in account.strains if one.lot == lot}
    found = []
    for number in itertools.count(1):
        if number not in strength or number not in volume:
            break
        found.append(strength[number] * volume[number])
    return tuple(found)


def _not_weaker(amounts: tuple[float, ...]) -> int:
    pairs = enumerate(itertools.pairwise(amounts), start=2)
    return next((number for number, (was, now) in pairs if now >= was), 0)


def _rises(amounts: tuple[float, ...]) -> bool:
    try:
        return len(amounts) > 2 and left_from_strains(amounts, MATCH_SD, on_one_linear_scale=True).at_least
    except OutOfRange:
        return False


def _alone(strain: int, against: int, of: str, lot: str) -> bool:
    """Whether a strain after the first was read, but not beside another strain."""
    return of == lot and strain > 1 and against == 0
