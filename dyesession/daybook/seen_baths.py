"""What a day's readings of its baths say: how much the fibre took, what the dyestuff kept, what wet fibre holds.

Pure. Strengths are shares of another liquor's on a linear scale. Derived by mass balance (`dyeing.exhaustion`,
`dyeing.extraction`); errors are judgement where they say so.
"""

import math
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from statistics import median

from dyesession.daybook.seen import About, Seen, family_of, key_of
from dyesession.daybook.walk import Pace
from dyesession.dyeing.bands import from_scale, to_scale
from dyesession.dyeing.exhaustion import partition_from_share
from dyesession.dyeing.extraction import kept_in_pull
from dyesession.dyeing.fibres import Family
from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.priors import STIFFENING_FADES, STIFFENS, UPTAKE_RATE
from dyesession.dyeing.retention import held_from_weights
from dyesession.session import events as e
from dyesession.session.state import OUT_WET, State, Vessel

BEFORE = re.compile(r"\b(before|fresh|unused|undipped)\b")
FIRST_STRAIN = re.compile(r"\bfirst (strain|extract|extraction|pull)\b")
MATCHED_SD, TYPED_SD = 0.11, 0.20  # of a strength, as a share of it: an eye tells a tenth apart; judgement
VOLUME_READ_SD, VOLUME_TOLD_SD = 0.04, 0.10  # of a ratio of two volumes; judgement
LATER_PULL_SD = 0.15  # a third extraction need not keep what the second did; judgement
WEIGHED_SD = 0.06  # of the liquor in a weighed skein: regain, drips; judgement
LEAST_LEFT, MOST_LEFT = 0.02, 0.95  # shares left in a bath that can be told from none and from all; judgement
MOST_TAKEN = 0.985
LEAST_KEPT, MOST_KEPT = 0.02, 0.95
NUDGE, LEAST_STEEP, HALVINGS = 0.05, 0.1, 30  # for the slope of a curve, and where it counts as flat
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


def seen_in_baths(day: str, paces: Sequence[Pace]) -> Iterator[Seen]:
    """Everything the strengths, litres and wet weights of a day say."""
    yield from _exhaustion(day, paces)
    yield from _kept(day, paces)
    yield from _held(day, paces)


def _exhaustion(day: str, paces: Sequence[Pace]) -> Iterator[Seen]:
    for use in _dyeings(paces):
        found = _partition(use)
        if found is not None and use.family is not None:
            yield Seen(About("exhaustion", use.dyestuff, use.family), *found, day)


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
                use.minutes = _worked_min(pace, event.vessel, use)
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


def _worked_min(pace: Pace, vessel: str, use: _Dyeing) -> float:
    """Minutes at heat so far: of every hold since the fibre went in; where none was, since then."""
    now_s, worked_s = pace.after.now_s, 0.0
    for step in pace.after.steps:
        if step.plan.vessel != vessel or step.held_since_s is None:
            continue
        end_s = step.ended_s if step.ended_s is not None else now_s
        worked_s += max(0.0, end_s - max(step.held_since_s, use.since_s))
    return (worked_s or now_s - use.since_s) / SECONDS_PER_MIN


def _partition(use: _Dyeing) -> tuple[float, float] | None:
    """Partition in L/kg and its error on the log scale; None where the readings do not go together."""
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
    error = math.hypot(error, VOLUME_READ_SD if known else VOLUME_TOLD_SD) / (1.0 - left)
    taken = min(MOST_TAKEN, (1.0 - left) / -math.expm1(-UPTAKE_RATE.centre * use.minutes))
    return partition_from_share(taken, volume_l / use.fibre_kg), error


def _sd(how: str) -> float:
    return TYPED_SD if how == "typed" else MATCHED_SD


def _kept(day: str, paces: Sequence[Pace]) -> Iterator[Seen]:
    """What the dyestuff kept: a further strain's colour over the first's, each litres times strength."""
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
                elif one.name in waiting:
                    about = About("kept share", key_of(dict(pace.after.substances).get(one.name, one.name)))
                    yield Seen(about, *_kept_share(*waiting.pop(one.name), litres, first_l.get(one.name)), day)


def _kept_share(
    strength: float, how: str, pulls: int, litres: float | None, first_l: float | None
) -> tuple[float, float]:
    """Share kept per extraction and its error on the logit scale."""
    read = litres is not None and first_l is not None
    ratio = strength * (litres / first_l if litres is not None and first_l else 1.0)
    error = math.hypot(_sd(how), VOLUME_READ_SD if read else VOLUME_TOLD_SD, LATER_PULL_SD * (pulls - 1))
    kept = _kept_for(ratio, pulls)
    near = [from_scale(to_scale(kept, "logit") + sign * NUDGE, "logit") for sign in (-1.0, 1.0)]
    steep = (math.log(_over_first(near[1], pulls)) - math.log(_over_first(near[0], pulls))) / (2.0 * NUDGE)
    return kept, error / max(steep, LEAST_STEEP)


def _kept_for(ratio: float, pulls: int) -> float:
    """The first extraction's kept share that has a later one bring so much of the first, by halving."""
    low, high = LEAST_KEPT, MOST_KEPT
    for _ in range(HALVINGS):
        kept = (low + high) / 2.0
        low, high = (kept, high) if _over_first(kept, pulls) < ratio else (low, kept)
    return (low + high) / 2.0


def _over_first(kept: float, pulls: int) -> float:
    """Colour that extraction `pulls` + 1 brings over what the first brought, stiffening as is guessed."""
    shares = [kept_in_pull(kept, STIFFENS.centre, STIFFENING_FADES.centre, i + 1) for i in range(pulls + 1)]
    return math.prod(shares[:-1]) * (1.0 - shares[-1]) / (1.0 - shares[0])


def _held(day: str, paces: Sequence[Pace]) -> Iterator[Seen]:
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
