"""What time does between two facts: pots warm and cool, steam leaves, dyestuff gives and fibre takes.

Knows nothing of events. Shapes: the share of what is still to come that passes in some minutes at heat is
1 - exp(-k t); the goal is the partition between fibre, liquor and dyestuff. Fibre never gives colour back
here (desorption is never the full reverse of dyeing). No rate of extraction was found for any dyestuff in
water: beside the fibre it is taken as that of uptake (judgement).
"""

import math
import operator
from dataclasses import dataclass, replace
from functools import lru_cache

from dyesession.account import unknowns as u
from dyesession.account.heat import S_PER_MIN, stays_cold, temperature_at_c, works
from dyesession.account.holdings import Bath, Fibre, Holdings
from dyesession.account.steam import COLDEST_STEAM_C, diameter_m, steamed_l
from dyesession.account.worlds import ZEROS, Vector, constant, mean, minus, plus, scaled, times, total
from dyesession.dyeing.extraction import kept_in_pull
from dyesession.plan.model import PlannedDose
from dyesession.session.brought import Brought
from dyesession.session.state import State

STEP_S = 600.0  # temperatures are followed in steps of ten minutes; our own choice, no source
S_PER_H = 3600.0
G_PER_KG = 1000.0
PER_CENT = 100.0


@dataclass(frozen=True)
class Stage:
    """What holds still while time passes: the facts' state, and what an account starts from."""

    state: State
    starting: u.Starting


def passed(held: Holdings, stage: Stage, to_s: float, only: str = "") -> Holdings:
    """The holdings at a later session second, no fact having come between; of one vessel only, if named."""
    for vessel in (only,) if only else held.baths:
        held = _passed_in(held, stage, vessel, to_s) if vessel in held.baths else held
    return held


def _passed_in(held: Holdings, stage: Stage, vessel: str, to_s: float) -> Holdings:
    from_s = held.bath(vessel).since_s
    if to_s <= from_s:
        return held
    cold = held.bath(vessel).temperature_c < COLDEST_STEAM_C and stays_cold(stage.state, vessel)
    steps = 1 if cold else max(1, math.ceil((to_s - from_s) / STEP_S))
    length_s = (to_s - from_s) / steps
    for i in range(steps):
        start_s = from_s + i * length_s
        held = _step(held, stage, vessel, start_s, start_s + length_s)
    return held.with_bath(vessel, replace(held.bath(vessel), since_s=to_s))


def _step(held: Holdings, stage: Stage, vessel: str, from_s: float, to_s: float) -> Holdings:
    now_c = held.bath(vessel).temperature_c
    end_c = temperature_at_c(stage.state, vessel, now_c, from_s, to_s)
    middle_c = (now_c + end_c) / 2.0
    running = stage.state.running_in(vessel)
    if works(running.plan if running is not None else None, middle_c):
        minutes = (to_s - from_s) / S_PER_MIN
        held = _extracted(held, stage.state, vessel, minutes)
        held = _taken_up(held, stage, vessel, minutes)
    return _steamed(held, stage, vessel, (middle_c, end_c), (to_s - from_s) / S_PER_H)


def _steamed(
    held: Holdings, stage: Stage, vessel: str, middle_and_end_c: tuple[float, float], hours: float
) -> Holdings:
    """The bath at the end of a step: as warm as it has become, and less what steamed off meanwhile."""
    bath, (middle_c, end_c) = held.bath(vessel), middle_and_end_c
    if middle_c < COLDEST_STEAM_C or mean(bath.pool.volume_l) <= 0.0:
        return held if end_c == bath.temperature_c else held.with_bath(vessel, bath.warmed(end_c))
    lost = steamed_l(
        held.unknowns[u.LID],
        held.unknowns[u.STEAM],
        bath.pool.volume_l,
        middle_c,
        hours,
        _wide_m(stage, vessel, bath),
        stage.state.boiling_c,
        stage.starting.net_power_w,
    )
    left = bath.pool.with_volume(minus(bath.pool.volume_l, lost))
    drier = Bath(left, end_c, bath.uses, "modelled")
    return held.changed(steamed_l=plus(held.steamed_l, lost), baths={**held.baths, vessel: drier})


def _wide_m(stage: Stage, vessel: str, bath: Bath) -> float:
    told = stage.starting.pot_diameter_m.get(vessel)
    if told is not None:
        return told
    pot = stage.state.vessel(vessel)
    return diameter_m(pot.capacity_l if pot is not None else None, mean(bath.pool.volume_l))


@lru_cache(maxsize=256)
def approach(rate_per_min: Vector, minutes: float) -> Vector:
    """Share of what is still to come that passes in some minutes, 1 - exp(-k t), in every world."""
    expm1 = math.expm1
    return tuple([-expm1(-rate * minutes) for rate in rate_per_min])


def _extracted(held: Holdings, state: State, vessel: str, minutes: float) -> Holdings:
    """Dyestuff in the pot gives until it holds its kept share of what it and the liquor hold together."""
    for dyestuff in state.dyestuffs:
        store = held.stores.get(dyestuff.name)
        if dyestuff.place != vessel or store is None or store.colour_g is ZEROS:
            continue
        pool, lot = held.bath(vessel).pool, dyestuff.name
        free_g = pool.grams(lot)
        kept, shares = kept_now(held, lot), approach(held.unknowns.giving(lot), minutes)
        given = tuple(
            [
                (inside - rests) * share if inside > (rests := r * (inside + free)) else 0.0
                for inside, free, r, share in zip(store.colour_g, free_g, kept, shares, strict=True)
            ]
        )
        held = held.with_store(lot, replace(store, colour_g=minus(store.colour_g, given)))
        held = held.with_pool(vessel, pool.with_grams(lot, plus(free_g, given)))
    return held


def kept_now(held: Holdings, lot: str) -> Vector:
    """Share a dyestuff keeps of its colour in the extraction it is in, or that would come next."""
    known, number = held.unknowns, held.stores[lot].pulls + 1
    return _kept(known[u.kept_name(lot)], known[u.stiffens_name(lot)], known[u.fades_name(lot)], number)


@lru_cache(maxsize=256)
def _kept(first: Vector, stiffens: Vector, fades: Vector, number: int) -> Vector:
    if number == 1:
        return first
    return tuple([kept_in_pull(*one, number) for one in zip(first, stiffens, fades, strict=True)])


def _taken_up(held: Holdings, stage: Stage, vessel: str, minutes: float) -> Holdings:
    inside = {
        one.name: held.fibres[one.name] for one in stage.state.lots_in(vessel) if one.name in held.fibres
    }
    if not inside:
        return held
    for name, grams in held.bath(vessel).pool.held_g.items():
        if grams is ZEROS:
            continue
        if name in held.stores:
            held = _dyed(held, vessel, name, inside, minutes)
        elif is_alum(stage.state, held, name):
            held = _mordanted(held, vessel, name, inside, minutes)
    return held


def _dyed(held: Holdings, vessel: str, dye: str, inside: dict[str, Fibre], minutes: float) -> Holdings:
    """Each fibre tends to its part of the colour in bath and fibres together: K m/(V + sum of K m)."""
    known = held.unknowns
    pulls = {
        lot: times(known[u.partition_name(dye, u.family_of(fibre.kind))], fibre.mass_g / G_PER_KG)
        for lot, fibre in inside.items()
    }
    pool = held.bath(vessel).pool
    there = total([pool.grams(dye), *(held.fibres[lot].taken(dye) for lot in inside)])
    weights = total([pool.volume_l, *pulls.values()])
    shares = approach(known[u.rate_name(dye)], minutes)
    wanted = {
        lot: tuple(
            [
                (goal - on) * share if weight > 0.0 and on < (goal := colour * pull / weight) else 0.0
                for colour, pull, weight, on, share in zip(
                    there, pulls[lot], weights, held.fibres[lot].taken(dye), shares, strict=True
                )
            ]
        )
        for lot in inside
    }
    return _moved(held, vessel, dye, wanted)


def _mordanted(held: Holdings, vessel: str, alum: str, inside: dict[str, Fibre], minutes: float) -> Holdings:
    """Fibre takes a share of a small dose of alum and no more than its most, by the rule of
    `dyeing.mordanting`.
    """
    known, pool = held.unknowns, held.bath(vessel).pool
    dry_g = math.fsum(fibre.mass_g for fibre in inside.values())
    if dry_g <= 0.0:
        return held
    there = total([pool.grams(alum), *(held.fibres[lot].taken(alum) for lot in inside)])
    shares = approach(known[u.MORDANT_RATE], minutes)
    wanted = {}
    for lot, fibre in inside.items():
        family = u.family_of(fibre.kind)
        share, most = known[u.mordant_share_name(family)], known[u.mordant_most_name(family)]
        goals = map(
            min, times(scaled(there, share), fibre.mass_g / dry_g), times(most, fibre.mass_g / PER_CENT)
        )
        wanted[lot] = tuple(
            [
                (goal - on) * f if on < goal else 0.0
                for goal, on, f in zip(goals, held.fibres[lot].taken(alum), shares, strict=True)
            ]
        )
    return _moved(held, vessel, alum, wanted)


def _moved(held: Holdings, vessel: str, name: str, wanted: dict[str, Vector]) -> Holdings:
    """From the bath onto the fibres; where they want more than there is, each gets its part of what there
    is.
    """
    pool = held.bath(vessel).pool
    all_wanted = total(list(wanted.values()))
    if not all(map(operator.ge, pool.grams(name), all_wanted)):
        fits = tuple(
            [
                min(1.0, g / want) if want > 0.0 else 1.0
                for g, want in zip(pool.grams(name), all_wanted, strict=True)
            ]
        )
        wanted = {lot: scaled(grams, fits) for lot, grams in wanted.items()}
        all_wanted = total(list(wanted.values()))
    fibres = {lot: held.fibres[lot].with_taken(name, grams) for lot, grams in wanted.items()}
    bath = held.bath(vessel).holding(pool.with_grams(name, minus(pool.grams(name), all_wanted)))
    return held.changed(fibres={**held.fibres, **fibres}, baths={**held.baths, vessel: bath})


def is_alum(state: State, held: Holdings, ingredient: str) -> bool:
    """Whether an ingredient is a mordant the alum rule is for; what fibre takes of others is not reckoned."""
    known: list[PlannedDose | Brought] = [*state.doses, *held.of_other_days.values()]
    return any(
        one.ingredient == ingredient and one.role == "mordant" and "alum" in one.substance.casefold()
        for one in known
    )


def dried(held: Holdings, lot: str) -> Holdings:
    """A lot dried out: its water is gone, what the water held stays on it, loose."""
    fibre = held.fibres[lot]
    gone = fibre.liquor.volume_l
    held = held.changed(steamed_l=plus(held.steamed_l, gone))
    return held.with_fibre(lot, replace(fibre, liquor=fibre.liquor.with_volume(constant(0.0))))
