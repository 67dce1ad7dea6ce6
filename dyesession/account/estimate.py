"""From holdings in many worlds to estimates with bands, and the balance that must come out at nought.

Knows nothing of how things moved. Means add up because every world's do.
"""

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import partial

from dyesession.account import unknowns as u
from dyesession.account.course import Mark
from dyesession.account.holdings import LEAST_FIBRE_G, Bath, Fibre, Holdings, Store
from dyesession.account.model import (
    NOTHING,
    Account,
    Amount,
    Balance,
    Band90,
    BathEstimate,
    DyestuffEstimate,
    FibreEstimate,
    How,
    LedgerLine,
    Lost,
    ReadingEffect,
    StrainEstimate,
    StrengthReading,
    Taken,
)
from dyesession.account.passing import kept_now
from dyesession.account.pools import Pool
from dyesession.account.worlds import Vector, band, constant, mean, scaled, times, total
from dyesession.plan.model import Plan, PlannedDose, PlannedStep
from dyesession.session.countdowns import RISE_MIN
from dyesession.session.state import State

PER_CENT = 100.0
LEAST_L, LEAST_G = 1e-9, 1e-9  # less than this in a bath is the last digits of a float

Banded = Callable[[Vector], Band90]


@dataclass(frozen=True)
class Behind:
    """What an account was made from: for questions that need every world (`answers`)."""

    state: State
    starting: u.Starting
    held: Holdings
    weights: Vector
    second: float
    marks: tuple[Mark, ...] = ()

    def band(self, values: Vector) -> Band90:
        """Mean and 90 % band by what the worlds weigh."""
        return band(values, self.weights)


@dataclass(frozen=True)
class Meant:
    """What the day is meant to do as it stands now: its steps and doses, and the fibre it is for."""

    steps: tuple[PlannedStep, ...]
    doses: tuple[PlannedDose, ...]
    fibre_g: float


def meant(account: Account, plan: Plan) -> Meant:
    """What is meant now, the changes made at the stove carried out; the plan's own where nothing was
    reckoned.
    """
    if not isinstance(account.behind, Behind):
        return Meant(plan.steps, plan.doses, plan.fibre_mass_g)
    state = account.behind.state
    fibre_g = math.fsum(one.mass_g for one in state.lots if not one.snippet)
    return Meant(tuple(one.plan for one in state.steps), state.doses, fibre_g)


def account_of(
    behind: Behind,
    lines: tuple[LedgerLine, ...],
    strengths: tuple[StrengthReading, ...],
    effects: tuple[ReadingEffect, ...],
) -> Account:
    """All estimates of one moment."""
    state, held, banded = behind.state, behind.held, partial(band, weights=behind.weights)
    read = {one.lot: _word(one.how) for one in strengths if one.counted}
    return Account(
        n=state.n,
        second=behind.second,
        baths=_baths(state, held, banded, read),
        dyestuffs=tuple(
            _dyestuff(state, held, banded, lot, read.get(lot, "modelled"))
            for lot in held.stores
            if lot not in held.of_other_days
        ),
        fibres=tuple(_fibre(state, held, banded, lot, fibre) for lot, fibre in held.fibres.items()),
        lines=lines,
        lost=tuple(_lost(held, banded, lot) for lot in held.stores),
        water=_water(held, banded),
        balances=tuple(_balance(held, banded, name) for name in held.things),
        strengths=strengths,
        effects=effects,
        strains=_strains(held, banded),
        behind=behind,
    )


def _word(how: str) -> How:
    return "matched" if how == "matched" else "read"


def _baths(state: State, held: Holdings, banded: Banded, read: Mapping[str, How]) -> tuple[BathEstimate, ...]:
    inside = {name: tuple(one.name for one in state.dyestuffs if one.place == name) for name in held.baths}
    there = [
        _bath(held, banded, read, name, bath, False, inside[name])
        for name, bath in held.baths.items()
        if _holds(bath)
    ]
    kept = [
        _bath(held, banded, read, label, bath, True, ()) for label, bath in held.kept.items() if _holds(bath)
    ]
    return (*there, *kept)


def _holds(bath: Bath) -> bool:
    pool = bath.pool
    return mean(pool.volume_l) > LEAST_L or any(mean(g) > LEAST_G for g in pool.held_g.values())


def _bath(
    held: Holdings,
    banded: Banded,
    read: Mapping[str, How],
    name: str,
    bath: Bath,
    kept: bool,
    inside: tuple[str, ...],
) -> BathEstimate:
    amounts = _amounts(bath.pool, banded)
    dye = tuple(one for one in amounts if one.lot in held.stores)
    main = max(dye, key=lambda one: one.grams.mean, default=None)
    how: How = "modelled" if main is None else read.get(main.lot, "modelled")
    return BathEstimate(
        vessel=name,
        kept=kept,
        volume_l=banded(bath.pool.volume_l),
        volume_how=bath.volume_how,
        dye=dye,
        contents=tuple(one for one in amounts if one.lot not in held.stores),
        uses=bath.uses,
        hue_may_drift=bath.uses > 0 and bool(dye),
        how="guess" if main is not None and main.grams.is_guess else how,
        dyestuff_inside=inside,
        strength_g_l=banded(_strength(bath.pool, main.lot)) if main is not None else NOTHING,
    )


def _strength(pool: Pool, lot: str) -> Vector:
    return tuple([g / v if v > LEAST_L else 0.0 for g, v in zip(pool.grams(lot), pool.volume_l, strict=True)])


def _amounts(pool: Pool, banded: Banded) -> tuple[Amount, ...]:
    return tuple(Amount(name, banded(g)) for name, g in pool.held_g.items() if mean(g) > LEAST_G)


def next_pull_g(held: Holdings, lot: str) -> Vector:
    """Colour one extraction more would bring out of what is left, in every world."""
    store = held.stores[lot]
    if store.soluble:
        return constant(0.0)
    return scaled(store.colour_g, tuple([1.0 - share for share in kept_now(held, lot)]))


def _dyestuff(state: State, held: Holdings, banded: Banded, lot: str, how: How) -> DyestuffEstimate:
    store = held.stores[lot]
    left = store.colour_g
    pull = next_pull(state, lot)
    return DyestuffEstimate(
        lot=lot,
        total_g=store.total_g,
        pulls=store.pulls,
        drawn=banded(tuple([store.total_g - grams for grams in left])),
        left_in_dyestuff=banded(left),
        next_pull=banded(next_pull_g(held, lot)),
        next_min=planned_min(pull) if pull is not None else None,
        next_water_l=pull.water_l if pull is not None else None,
        next_kept=banded(constant(0.0) if store.soluble else kept_now(held, lot)),
        how=how,
    )


def _strains(held: Holdings, banded: Banded) -> tuple[StrainEstimate, ...]:
    return tuple(
        StrainEstimate(
            one.lot,
            one.number,
            one.n,
            banded(one.colour_g),
            banded(one.volume_l),
            banded(one.strength),
        )
        for one in held.strains
    )


def next_pull(state: State, lot: str) -> PlannedStep | None:
    """The step that shows how this dyestuff is extracted once more: its last extraction, as the plan stands."""
    steps = [one.plan for one in state.steps if one.plan.stage == "extract"]
    first = next((one for one in steps if any(a.ingredient == lot for a in one.add)), None)
    same = [one for one in steps if first is not None and one.of == first.of]
    return same[-1] if same else None


def planned_min(step: PlannedStep) -> float | None:
    """Minutes of a step's planned rises and holds; None when it heats nothing."""
    minutes = [
        one.minutes if one.minutes is not None else RISE_MIN
        for one in step.heat
        if one.kind == "to" or (one.kind == "hold" and one.minutes is not None)
    ]
    return sum(minutes) if minutes else None


def _fibre(state: State, held: Holdings, banded: Banded, lot: str, fibre: Fibre) -> FibreEstimate:
    there = state.lot(lot)
    found = {name: grams for name, grams in fibre.taken_g.items() if mean(grams) > LEAST_G}
    taken = {name: grams for name, grams in found.items() if name in held.stores}
    return FibreEstimate(
        lot=lot,
        kind=fibre.kind,
        mass_g=fibre.mass_g,
        snippet=fibre.snippet,
        place=there.place if there is not None else "",
        taken=tuple(_taken(name, grams, fibre, banded) for name, grams in taken.items()),
        mordant=tuple(Amount(name, banded(g)) for name, g in found.items() if name not in taken),
        liquor_l=banded(fibre.liquor.volume_l),
        carried=_amounts(fibre.liquor, banded),
    )


def _taken(name: str, grams: Vector, fibre: Fibre, banded: Banded) -> Taken:
    share = PER_CENT / fibre.mass_g if fibre.mass_g > LEAST_FIBRE_G else 0.0
    return Taken(name, banded(grams), banded(times(grams, share)))


def _lost(held: Holdings, banded: Banded, lot: str) -> Lost:
    return Lost(lot, banded(_carried(held, lot)), banded(held.away.grams(lot)))


def _carried(held: Holdings, name: str) -> Vector:
    return total([one.liquor.grams(name) for one in held.fibres.values()])


def _pools(held: Holdings) -> Iterable[Pool]:
    return (one.pool for one in (*held.baths.values(), *held.kept.values()))


def _balance(held: Holdings, banded: Banded, name: str) -> Balance:
    store = held.stores.get(name, Store())
    return Balance(
        name=name,
        brought=banded(held.came_in_g(name)),
        in_baths=banded(total([pool.grams(name) for pool in _pools(held)])),
        on_fibre=banded(total([one.taken(name) for one in held.fibres.values()])),
        in_dyestuff=banded(total([store.colour_g, held.sieve.grams(name)])),
        carried_out=banded(_carried(held, name)),
        thrown_away=banded(held.away.grams(name)),
    )


def _water(held: Holdings, banded: Banded) -> Balance:
    return Balance(
        name="water",
        brought=banded(held.brought_l),
        in_baths=banded(total([pool.volume_l for pool in _pools(held)])),
        on_fibre=banded(constant(0.0)),
        in_dyestuff=banded(held.sieve.volume_l),
        carried_out=banded(total([one.liquor.volume_l for one in held.fibres.values()])),
        thrown_away=banded(held.away.volume_l),
        steamed_off=banded(held.steamed_l),
        by_reading=banded(held.by_reading_l),
    )


def unbalanced(held: Holdings) -> Mapping[str, Vector]:
    """What every world does not explain, by name ("water" in litres, all else in grams): nought but for
    rounding.
    """
    water = total(
        [
            *(pool.volume_l for pool in _pools(held)),
            held.sieve.volume_l,
            *(one.liquor.volume_l for one in held.fibres.values()),
            held.away.volume_l,
            held.steamed_l,
        ]
    )
    brought = total([held.brought_l, held.by_reading_l])
    return {"water": _off(brought, water), **{name: _grams_off(held, name) for name in held.things}}


def _grams_off(held: Holdings, name: str) -> Vector:
    found = total(
        [
            *(pool.grams(name) for pool in _pools(held)),
            *(one.taken(name) for one in held.fibres.values()),
            held.stores.get(name, Store()).colour_g,
            held.sieve.grams(name),
            _carried(held, name),
            held.away.grams(name),
        ]
    )
    return _off(held.came_in_g(name), found)


def _off(brought: Vector, found: Vector) -> Vector:
    return tuple([a - b for a, b in zip(brought, found, strict=True)])
