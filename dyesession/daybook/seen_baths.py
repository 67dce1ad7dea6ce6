"""What a day's readings of its baths say: what was left of the colour, what a further strain brought, what wet
fibre holds.

Pure. Strengths are shares of another liquor's on a linear scale; what they mean for the dyer's own numbers is
`daybook.learning_baths`. Errors are judgement where they say so.
"""

import math
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from statistics import median

from dyesession.account.heat import WORKING_C
from dyesession.daybook.seen import About, FurtherStrain, Seen, Uptake, family_of, key_of
from dyesession.daybook.walk import Pace
from dyesession.dyeing.fibres import Family
from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.priors import UPTAKE_RATE
from dyesession.dyeing.retention import held_from_weights
from dyesession.session import events as e
from dyesession.session.state import OUT_WET, State, StepState, Vessel

BEFORE = re.compile(r"\b(before|fresh|unused|undipped)\b")
FIRST_STRAIN = re.compile(r"\bfirst (strain|extract|extraction|pull)\b")
MATCHED_SD, TYPED_SD = 0.11, 0.20  # of a strength, as a share of it: an eye tells a tenth apart; judgement
VOLUME_READ_SD, VOLUME_TOLD_SD = 0.04, 0.10  # of a ratio of two volumes; judgement
LATER_PULL_SD = 0.15  # a third extraction need not keep what the second did; judgement
WEIGHED_SD = 0.06  # of the liquor in a weighed skein: regain, drips; judgement
LEAST_LEFT, MOST_LEFT = 0.02, 0.95  # shares left in a bath that can be told from none and from all; judgement
NONE_TOLD_SD = 0.7  # of the log of what is left, where none was to be seen; judgement
RISE_FROM_C = 35.0  # of a dyebath not read: between a cold one and one strained hot a little ago; judgement
# How far a rise's minutes above WORKING_C may be off, as a share of them: an hour's rise to 80 °C works like 15 to
# 50 minutes there, where the pace halves with 8 or with 80 °C less (derived from the energies in `account.heat`).
RISE_SD = 0.37
LEAST_MIN = 20.0  # of dyeing, before the bath says what the fibre takes; our own choice, no source
GRAMS_PER_KG, ML_PER_L, SECONDS_PER_MIN = 1000.0, 1000.0, 60.0


@dataclass
class _Dyeing:
    """One use of a bath: litres as fibre went in, its kilograms and family, what was read before and after."""

    volume_l: float | None
    since_s: float
    fibre_kg: float
    family: Family | None
    dyestuff: str
    before: Mapping[str, tuple[float, str]]
    lots: set[str]
    after: tuple[float, str, str] | None = None
    after_l: float | None = None
    minutes: float = 0.0
    rise_min: float = 0.0


def uptakes_seen(day: str, paces: Sequence[Pace]) -> Iterator[Uptake]:
    """What every used bath says of how much its fibre took, and how fast."""
    for use in _dyeings(paces):
        found = _left(use)
        if found is not None and use.family is not None:
            yield Uptake(day, use.dyestuff, use.family, *found)


def _dyeings(paces: Sequence[Pace]) -> list[_Dyeing]:
    """Every use of every dye bath in which a strength was read at its end."""
    under_way: dict[str, _Dyeing] = {}
    read: dict[str, dict[str, tuple[float, str]]] = {}
    done: list[_Dyeing] = []
    for pace in paces:
        event = pace.entry.event
        if isinstance(event, e.Entered):
            use = under_way.get(event.vessel)
            if use is not None and event.lot in use.lots:
                continue  # lifted for a modifier and back in the same bath: one dyeing
            if use is None or not pace.before.lots_in(event.vessel):
                use = _begun(pace, event.vessel, read.pop(event.vessel, {}))
                if use is not None:
                    done.append(use)
                    under_way[event.vessel] = use
            elif use is not None:
                use.fibre_kg += _kg(pace.after, event.lot)
                use.lots.add(event.lot)
        elif isinstance(event, e.Read) and event.strength is not None and event.vessel:
            words = event.against.casefold().strip()
            use = under_way.get(event.vessel)
            if use is None:
                read.setdefault(event.vessel, {})[words] = (event.strength, event.how)
            else:
                use.after = (event.strength, event.how, words)
                use.after_l = _litres(pace.after, event.vessel)
                use.minutes, use.rise_min = _worked_min(pace, event.vessel, use)
        elif isinstance(event, e.Filled | e.Kept | e.Discarded | e.Strained | e.Pooled | e.Added | e.Drawn):
            if isinstance(event, e.Added) and pace.after.dyestuff(event.ingredient) is None:
                continue  # chalk, a modifier: no colour came or went
            for vessel in (getattr(event, "vessel", ""), getattr(event, "into", "")):
                under_way.pop(vessel, None)
                read.pop(vessel, None)
    return [one for one in done if one.after is not None]


def _begun(pace: Pace, name: str, read: Mapping[str, tuple[float, str]]) -> _Dyeing | None:
    """A dyeing that begins as fibre goes in: only where the bath's colour is of one dyestuff and known."""
    state = pace.after
    vessel = state.vessel(name)
    event = pace.entry.event
    if vessel is None or vessel.bath is None or len(vessel.bath.liquor_of) != 1 or not isinstance(event, e.Entered):
        return None
    dyestuff = vessel.bath.liquor_of[0]
    lot = state.lot(event.lot)
    if lot is None or lot.snippet:
        return None
    substance = dict(state.substances).get(dyestuff, dyestuff)
    return _Dyeing(
        vessel.bath.volume_l,
        state.now_s,
        lot.mass_g / GRAMS_PER_KG,
        family_of(lot.kind),
        key_of(substance),
        dict(read),
        {event.lot},
    )


def _kg(state: State, name: str) -> float:
    lot = state.lot(name)
    return lot.mass_g / GRAMS_PER_KG if lot is not None and not lot.snippet else 0.0


def _litres(state: State, name: str) -> float | None:
    vessel: Vessel | None = state.vessel(name)
    return vessel.bath.volume_l if vessel is not None and vessel.bath is not None else None


def _worked_min(pace: Pace, vessel: str, use: _Dyeing) -> tuple[float, float]:
    """Minutes at heat so far, and those of them that were a rise: of every hold since the fibre went in and the end
    of the rise before it; where no hold was, since then.
    """
    now_s, held_s, rise_s = pace.after.now_s, 0.0, 0.0
    for step in pace.after.steps:
        if step.plan.vessel != vessel or step.held_since_s is None:
            continue
        end_s = step.ended_s if step.ended_s is not None else now_s
        if end_s <= use.since_s:
            continue
        held_s += max(0.0, end_s - max(step.held_since_s, use.since_s))
        begun_s = max(step.begun_s if step.begun_s is not None else step.held_since_s, use.since_s)
        rise_s += max(0.0, step.held_since_s - begun_s) * _warm_share(step)
    if not held_s:
        return (now_s - use.since_s) / SECONDS_PER_MIN, 0.0
    return (held_s + rise_s) / SECONDS_PER_MIN, rise_s / SECONDS_PER_MIN


def _warm_share(step: StepState) -> float:
    """How much of a rise is above the heat that counts, rising evenly; the account counts from there too."""
    asked = [one.temperature_c for one in step.plan.heat if one.kind == "to" and one.temperature_c is not None]
    hottest_c = max(asked, default=0.0)
    return (hottest_c - WORKING_C) / (hottest_c - RISE_FROM_C) if hottest_c > WORKING_C else 0.0


def _left(use: _Dyeing) -> tuple[float, float, float, float] | None:
    """Log of the share left in the bath, its error, the liquor ratio and the minutes at heat; None where the
    readings do not go together.
    """
    if use.after is None or use.fibre_kg <= 0.0 or use.minutes < LEAST_MIN:
        return None
    strength, how, words = use.after
    error = _sd(how)
    if not BEFORE.search(words):
        if words not in use.before or use.before[words][0] <= 0.0:
            return None
        strength /= use.before[words][0]
        error = math.hypot(error, _sd(use.before[words][1]))
    volume_l = use.after_l or use.volume_l
    if volume_l is None or volume_l <= 0.0:
        return None
    known = use.volume_l is not None and use.after_l is not None and use.after_l != use.volume_l
    ratio = volume_l / use.volume_l if use.volume_l else 1.0
    left = min(MOST_LEFT, max(LEAST_LEFT, strength * ratio))
    error = math.hypot(error, VOLUME_READ_SD if known else VOLUME_TOLD_SD, _of_rise(use, left))
    if strength * ratio < LEAST_LEFT:
        error = max(error, NONE_TOLD_SD)
    return math.log(left), error, volume_l / use.fibre_kg, use.minutes


def _of_rise(use: _Dyeing, left: float) -> float:
    """What the minutes of a rise, not read, leave open of the log of the share left (derived, at the guessed rate)."""
    cooled = math.exp(-UPTAKE_RATE.centre * use.minutes)
    return RISE_SD * use.rise_min * UPTAKE_RATE.centre * cooled / (1.0 - cooled) * (1.0 - left) / left


def _sd(how: str) -> float:
    return TYPED_SD if how == "typed" else MATCHED_SD


def strains_seen(day: str, paces: Sequence[Pace]) -> Iterator[FurtherStrain]:
    """A further strain's colour over the first's, each litres times strength: of how much the dyestuff keeps."""
    first_l: dict[str, float | None] = {}
    waiting: dict[str, tuple[float, str, int]] = {}
    for pace in paces:
        event = pace.entry.event
        if isinstance(event, e.Read) and event.strength and FIRST_STRAIN.search(event.against.casefold()):
            inside = [one for one in pace.after.dyestuffs if one.place == event.vessel]
            if len(inside) == 1 and inside[0].pulls:
                waiting[inside[0].name] = (event.strength, event.how, inside[0].pulls)
        elif isinstance(event, e.Strained):
            for one in (one for one in pace.before.dyestuffs if one.place == event.vessel):
                litres = event.volume_l if event.how in ("read", "weighed", "typed") else None
                if not one.pulls:
                    first_l[one.name] = litres
                elif one.name in waiting and litres != 0.0:
                    dyestuff = key_of(dict(pace.after.substances).get(one.name, one.name))
                    yield _further(day, dyestuff, *waiting.pop(one.name), litres, first_l.get(one.name))


def _further(
    day: str, dyestuff: str, strength: float, how: str, pulls: int, litres: float | None, first_l: float | None
) -> FurtherStrain:
    read = litres is not None and first_l is not None
    ratio = strength * (litres / first_l if litres is not None and first_l else 1.0)
    error = math.hypot(_sd(how), VOLUME_READ_SD if read else VOLUME_TOLD_SD, LATER_PULL_SD * (pulls - 1))
    return FurtherStrain(day, dyestuff, math.log(ratio), error, pulls)


def held_seen(day: str, paces: Sequence[Pace]) -> Iterator[Seen]:
    """Liquor in wet fibre by its weight; of several weighings of a family, the middle one."""
    found: dict[Family, list[float]] = {}
    for pace in paces:
        event = pace.entry.event
        lot_name = event.lot if isinstance(event, e.Lifted | e.Read) else ""
        lot = pace.after.lot(lot_name) if lot_name else None
        wet_g = event.wet_mass_g if isinstance(event, e.Lifted) else None
        if isinstance(event, e.Read) and lot is not None and lot.place == OUT_WET:
            wet_g = event.mass_g
        family = family_of(lot.kind) if lot is not None and not lot.snippet else None
        if lot is None or wet_g is None or family is None:
            continue
        try:
            found.setdefault(family, []).append(held_from_weights(wet_g, lot.mass_g, lot.kind))
        except OutOfRange:
            continue
    for family, values in found.items():
        if median(values) > 0.0:
            yield Seen(About("liquor held", family), median(values), WEIGHED_SD / math.sqrt(len(values)), day)
