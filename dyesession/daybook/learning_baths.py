"""What used baths and further strains teach: how much a fibre takes and how fast, what a dyestuff keeps and how it
stiffens.

Pure. A bath tells partition and rate of uptake only together, a further strain the share kept and the stiffening:
each pair is learned together (`dyeing.learning_beside`). Laws: `dyeing.exhaustion`, `dyeing.extraction`, and an
approach to rest of 1 - exp(-k t), as the account has it.
"""

import math
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cache
from typing import TypeVar

from dyesession.account.unknowns import kept_name, less_sure
from dyesession.daybook.dyers_numbers import Number
from dyesession.daybook.seen import About, FurtherStrain, Uptake
from dyesession.dyeing.bands import Z_90
from dyesession.dyeing.exhaustion import exhausted_share
from dyesession.dyeing.extraction import kept_in_pull
from dyesession.dyeing.learning_beside import LearnedBeside, Reading, learn_beside
from dyesession.dyeing.priors import (
    STIFFENING_FADES,
    UPTAKE_RATE,
    Prior,
    kept_share_prior,
    partition_prior,
    stiffens_prior,
)

Seen = TypeVar("Seen", Uptake, FurtherStrain)

MOST_DAYS = 24  # the latest that told of a number; kitchens and hands change; our own choice, no source
TAKING_SWING, KEEPING_SWING = 0.25, 0.2  # day-to-day sd of the log partition and of the logit share kept; judgement
JUG_SD = 0.05 / Z_90  # of a day's litres, the same every day: the jug of `account.unknowns.WATER_BY_JUG`
# Of a further strain over the first, the same every day: how stiffening fades and how much liquor the dyestuff holds
# is not read. Of the minutes at heat, the same every day: how a rise counts. Judgement, tried on simulated seasons
# (tests/bench/seasons.py).
STRAIN_SD, MINUTES_SD = 0.09, 0.2
LEAST_LEFT = 1e-6  # keeps a logarithm finite


def taken(uptakes: Iterable[Uptake]) -> Iterator[Number]:
    """Partition and rate of uptake of every dyestuff on every kind of fibre; the days the oldest first."""
    groups: dict[tuple[str, str], list[Uptake]] = {}
    for one in uptakes:
        groups.setdefault((one.dyestuff, one.family), []).append(one)
    for (dyestuff, family), found in groups.items():
        yield from _taken(dyestuff, family, tuple(_of_latest(found)))


def kept(strains: Iterable[FurtherStrain]) -> Iterator[Number]:
    """Share kept by the first extraction, and how much more by the second, of every dyestuff."""
    groups: dict[str, list[FurtherStrain]] = {}
    for one in strains:
        groups.setdefault(one.dyestuff, []).append(one)
    for dyestuff, found in groups.items():
        yield from _kept(dyestuff, tuple(_of_latest(found)))


def _of_latest(found: Sequence[Seen]) -> Sequence[Seen]:
    latest = list(dict.fromkeys(one.day for one in found))[-MOST_DAYS:]
    return [one for one in found if one.day in latest]


def left_in_bath(partition: float, rate: float, liquor_ratio: float, minutes: float) -> float:
    """Share of its colour that a bath still has after so many minutes at heat."""
    return 1.0 - exhausted_share(partition, liquor_ratio) * -math.expm1(-rate * minutes)


def over_first(kept_share: float, stiffens: float, pulls: int) -> float:
    """Colour that extraction `pulls` + 1 brings over what the first brought."""
    shares = [kept_in_pull(kept_share, stiffens, STIFFENING_FADES.centre, i + 1) for i in range(pulls + 1)]
    return math.prod(shares[:-1]) * (1.0 - shares[-1]) / (1.0 - shares[0])


@cache
def _taken(dyestuff: str, family: str, found: tuple[Uptake, ...]) -> tuple[Number, ...]:
    def predict(partition: float, rate: float, i: int) -> float:
        return math.log(max(LEAST_LEFT, left_in_bath(partition, rate, found[i].liquor_ratio, found[i].minutes)))

    about, second = About("exhaustion", dyestuff, family), About("uptake rate", dyestuff, family)
    guess = partition_prior(family, dyestuff)
    told = [(one.day, one.left, one.error) for one in found]
    return _numbers(about, second, guess, UPTAKE_RATE, told, predict, TAKING_SWING, JUG_SD, MINUTES_SD)


@cache
def _kept(dyestuff: str, found: tuple[FurtherStrain, ...]) -> tuple[Number, ...]:
    @cache
    def brings(kept_share: float, stiffens: float, pulls: int) -> float:
        return math.log(max(LEAST_LEFT, over_first(kept_share, stiffens, pulls)))

    def predict(kept_share: float, stiffens: float, i: int) -> float:
        return brings(kept_share, stiffens, found[i].pulls)

    about, second = About("kept share", dyestuff), About("stiffening", dyestuff)
    told = [(one.day, one.over_first, one.error) for one in found]
    guess, beside = less_sure(kept_name(dyestuff), kept_share_prior(dyestuff)), stiffens_prior(dyestuff)
    return _numbers(about, second, guess, beside, told, predict, KEEPING_SWING, STRAIN_SD, 0.0)


def _numbers(
    about: About,
    second: About,
    guess: Prior,
    beside: Prior,
    told: Sequence[tuple[str, float, float]],
    predict: Callable[[float, float, int], float],
    swing: float,
    shared: float,
    shared_beside: float,
) -> tuple[Number, ...]:
    """The number, and the second one, of which days held alike tell little more than its guess."""
    of_day = Counter(day for day, _, _ in told)
    readings = [Reading(log, error, of_day[day]) for day, log, error in told]
    found: LearnedBeside = learn_beside(guess, beside, readings, predict, swing, shared, shared_beside)
    days, odd = tuple(of_day), tuple(dict.fromkeys(told[i][0] for i in found.odd))
    number = Number(about, guess, found.own, found.next_day, days, odd, found.at)
    return number, Number(second, beside, found.beside, found.beside, days)
