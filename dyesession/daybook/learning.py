"""The dyer's own numbers, learned from days dyed: baths (`learning_baths`), wet fibre, pots, stove, jars.

Pure: days in, numbers out, each with the guess it replaces, its band, and the days it comes from. Folded from
the logs each time; there is no second store. How to combine days: `dyeing.learning`.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import UTC
from functools import cache
from statistics import median

from dyesession.account.unknowns import lift_prior
from dyesession.daybook.dyers_numbers import Learnt, Number
from dyesession.daybook.learning_baths import KEEPING_SWING, MOST_DAYS, TAKING_SWING, taken
from dyesession.daybook.learning_baths import kept as kept_by
from dyesession.daybook.seen import About, FurtherStrain, Seen, Uptake, What, key_of
from dyesession.daybook.seen_baths import held_seen, strains_seen, uptakes_seen
from dyesession.daybook.seen_colour import Depth, depths_seen
from dyesession.daybook.seen_heat import seen_in_heat
from dyesession.daybook.walk import walk
from dyesession.dyeing.cooling import COOLING_FACTOR
from dyesession.dyeing.fibres import Family
from dyesession.dyeing.learning import Told, learn, learn_slope
from dyesession.dyeing.priors import Prior, kept_share_prior, potency_prior
from dyesession.errors import UserError
from dyesession.session.opening import LoggedDay

# How far one and the same dyer's days swing, as a standard deviation on the scale of each guess; judgement.
SWINGS: Mapping[What, float] = {
    "exhaustion": TAKING_SWING, "kept share": KEEPING_SWING, "liquor held": 0.1, "cooling": 0.1, "stove power": 0.1,
    "strength": 0.1, "depth exponent": 0.1,
}  # fmt: skip
COOLING = Prior(
    "minutes to cool over the table's", 1.0, 1.0 / COOLING_FACTOR, COOLING_FACTOR, "log", "as `dyeing.cooling`"
)
STOVE = Prior(
    "watts left for warming", 1200.0, 500.0, 2200.0, "log", "judgement: a small to a strong home ring, losses off"
)
EXPONENT = Prior(
    "how depth follows dose", 0.97, 0.75, 1.15, "log", "our own choice: as 1, and perhaps as 0.8 (`colour.depth`)"
)
LEAST_DOSE_RATIO = 1.3  # doses nearer than this tell no slope; our own choice, no source
DYEING_SD = 0.1  # how far the depth of like dyeings differs besides the reading; judgement


@dataclass(frozen=True)
class DayTold:
    """Everything one day says: its name, when it was opened (ISO 8601, in UTC), its sayings and its depths."""

    day: str
    opened: str
    seen: tuple[Seen, ...] = ()
    depths: tuple[Depth, ...] = ()
    uptakes: tuple[Uptake, ...] = ()
    strains: tuple[FurtherStrain, ...] = ()


def told_by(day: LoggedDay) -> DayTold:
    """What a day says. A rehearsal says nothing, nobody dyed it; so does a day whose figures no formula takes."""
    told = DayTold(day.name, day.opened.at.astimezone(UTC).isoformat())
    if day.rehearsal:
        return told
    try:
        paces = tuple(walk(day))
        return replace(
            told,
            seen=(*held_seen(day.name, paces), *seen_in_heat(day, paces)),
            depths=tuple(depths_seen(day, paces)),
            uptakes=tuple(uptakes_seen(day.name, paces)),
            strains=tuple(strains_seen(day.name, paces)),
        )
    except UserError:
        return told


def learnt(days: Iterable[LoggedDay]) -> Learnt:
    """What these days taught, whichever order they come in."""
    return learnt_from(told_by(one) for one in days)


def learnt_from(told: Iterable[DayTold]) -> Learnt:
    """The numbers out of what days say."""
    days = sorted(told, key=lambda one: (one.opened, one.day))
    numbers = [
        *(_number(about, found) for about, found in _by_about([s for one in days for s in one.seen]).items()),
        *taken(one for day in days for one in day.uptakes),
        *kept_by(one for day in days for one in day.strains),
    ]
    kept = {one.about.of: one.own.centre for one in numbers if one.about.what == "kept share"}
    depths = [depth for one in days for depth in one.depths]
    return Learnt(tuple(sorted([*numbers, *_of_depths(depths, kept)], key=lambda one: one.about)))


def _by_about(seen: Sequence[Seen]) -> dict[About, list[Seen]]:
    """Sayings by what they are about; of several from one day, one with the surer error of them all."""
    found: dict[About, dict[str, list[Seen]]] = {}
    for one in seen:
        found.setdefault(one.about, {}).setdefault(one.day, []).append(one)
    return {
        about: [_of_one_day(said) for said in by_day.values()][-MOST_DAYS:] for about, by_day in found.items()
    }


def _of_one_day(said: Sequence[Seen]) -> Seen:
    return replace(said[0], value=median(one.value for one in said), error=min(one.error for one in said))


def _number(about: About, seen: Sequence[Seen]) -> Number:
    return _learned(about, guess_of(about), tuple((one.value, one.error, one.day) for one in seen))


@cache
def _learned(about: About, guess: Prior, said: tuple[tuple[float, float, str], ...]) -> Number:
    found = learn(guess, [Told(value, error) for value, error, _ in said], SWINGS[about.what])
    days = tuple(day for _, _, day in said)
    return Number(about, guess, found.own, found.next_day, days, tuple(days[i] for i in found.odd))


def guess_of(about: About) -> Prior:
    """The guess a number learned by itself takes the place of."""
    if about.what == "liquor held":
        family: Family = "silk" if about.of == "silk" else "cellulose" if about.of == "cellulose" else "wool"
        return lift_prior(family)
    if about.what == "strength":
        return potency_prior(about.of)
    return {"cooling": COOLING, "stove power": STOVE, "depth exponent": EXPONENT}[about.what]


def _of_depths(depths: Sequence[Depth], kept: Mapping[str, float]) -> Iterable[Number]:
    """How depth follows dose, and jars beside each other, of each dyestuff on each kind of fibre."""
    groups: dict[tuple[str, Family], list[Depth]] = {}
    for one in depths:
        groups.setdefault((one.dyestuff, one.family), []).append(one)
    for (dyestuff, family), found in groups.items():
        exponent = _exponent(dyestuff, family, found, kept.get(dyestuff))
        if exponent is not None:
            yield exponent
        slope = exponent.own.centre if exponent is not None else EXPONENT.centre
        yield from _jars(dyestuff, found, slope, kept.get(dyestuff))


def _point(one: Depth, kept: float | None) -> tuple[float, float, float]:
    """Log of the dose that went into the bath, log of the strength of colour, its error."""
    drawn = 1.0 - (kept if kept is not None else kept_share_prior(one.dyestuff).centre) ** one.pulls if one.pulls else 1.0
    return math.log(one.percent * drawn), math.log(one.strength), math.hypot(one.error, DYEING_SD)


def _exponent(dyestuff: str, family: Family, found: Sequence[Depth], kept: float | None) -> Number | None:
    jars = {one.jar for one in found}
    doses = [one.percent for one in found]
    if len(jars) != 1 or max(doses) < LEAST_DOSE_RATIO * min(doses):
        return None
    own = learn_slope(EXPONENT, [_point(one, kept) for one in found])
    days = tuple(dict.fromkeys(one.day for one in found))
    return Number(About("depth exponent", dyestuff, family), EXPONENT, own, own, days)


def _jars(dyestuff: str, found: Sequence[Depth], slope: float, kept: float | None) -> Iterable[Number]:
    """Each jar's strength over the middle one of them; one jar alone stands for itself and teaches nothing."""
    by_jar: dict[str, list[Depth]] = {}
    for one in found:
        if one.jar:
            by_jar.setdefault(one.jar, []).append(one)
    if len(by_jar) < 2:
        return
    doses = {jar: [_as_dose(one, slope, kept) for one in dyed] for jar, dyed in by_jar.items()}
    middle = math.fsum(median(one) for one in doses.values()) / len(doses)
    for jar, dyed in by_jar.items():
        said = tuple(
            (math.exp(dose - middle), math.hypot(one.error, DYEING_SD) / slope, one.day)
            for one, dose in zip(dyed, doses[jar], strict=True)
        )
        about = About("strength", dyestuff, jar)
        yield _learned(about, guess_of(about), said)


def _as_dose(one: Depth, slope: float, kept: float | None) -> float:
    """Log of how much an ordinary gram of the day's dyestuff was worth."""
    dose, strength, _ = _point(one, kept)
    return strength / slope - dose


def strengths(learned: Learnt) -> dict[tuple[str, str], float]:
    """Strength of each jar over the others, by the dyestuff's key and the jar's name."""
    return {
        (one.about.of, one.about.on): one.own.centre for one in learned.numbers if one.about.what == "strength"
    }


def exponent_of(learned: Learnt, substance: str) -> Number | None:
    """How depth follows dose for a dyestuff, on whichever fibre most days told of it."""
    found = [
        one
        for one in learned.numbers
        if one.about.what == "depth exponent" and one.about.of == key_of(substance)
    ]
    return max(found, key=lambda one: len(one.days), default=None)
