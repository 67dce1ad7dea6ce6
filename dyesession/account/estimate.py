"""From holdings in many worlds to estimates with bands, and the balance that must come out at nought.

Knows nothing of how things moved. Means add up because every world's do.
"""

from collections.abc import Iterable, Mapping

from dyesession.account import unknowns as u
from dyesession.account.holdings import Bath, Fibre, Holdings, Store
from dyesession.account.model import (
    Account,
    Amount,
    Balance,
    BathEstimate,
    DyestuffEstimate,
    FibreEstimate,
    How,
    LedgerLine,
    Lost,
    StrengthReading,
    Taken,
)
from dyesession.account.pools import Pool
from dyesession.account.worlds import Vector, band, constant, mean, scaled, times, total
from dyesession.plan.model import Plan, PlannedStep
from dyesession.session.countdowns import RISE_MIN
from dyesession.session.state import State

PER_CENT = 100.0
LEAST_L, LEAST_G = 1e-9, 1e-9  # less than this in a bath is the last digits of a float


def account_of(
    plan: Plan,
    state: State,
    held: Holdings,
    second: float,
    lines: tuple[LedgerLine, ...],
    strengths: tuple[StrengthReading, ...],
) -> Account:
    """All estimates of one moment."""
    return Account(
        n=state.n,
        second=second,
        baths=_baths(state, held),
        dyestuffs=tuple(_dyestuff(plan, held, lot, store) for lot, store in held.stores.items()),
        fibres=tuple(_fibre(state, held, lot, fibre) for lot, fibre in held.fibres.items()),
        lines=lines,
        lost=tuple(_lost(held, lot) for lot in held.stores),
        water=_water(held),
        balances=tuple(_balance(held, name) for name in held.brought_g),
        strengths=strengths,
    )


def _baths(state: State, held: Holdings) -> tuple[BathEstimate, ...]:
    inside = {name: tuple(one.name for one in state.dyestuffs if one.place == name) for name in held.baths}
    there = [
        _bath(held, name, bath, False, inside[name]) for name, bath in held.baths.items() if _holds(bath)
    ]
    kept = [_bath(held, label, bath, True, ()) for label, bath in held.kept.items() if _holds(bath)]
    return (*there, *kept)


def _holds(bath: Bath) -> bool:
    pool = bath.pool
    return mean(pool.volume_l) > LEAST_L or any(mean(g) > LEAST_G for g in pool.held_g.values())


def _bath(held: Holdings, name: str, bath: Bath, kept: bool, inside: tuple[str, ...]) -> BathEstimate:
    amounts = _amounts(bath.pool)
    dye = tuple(one for one in amounts if one.lot in held.stores)
    main = max(dye, key=lambda one: one.grams.mean, default=None)
    how: How = "guess" if main is not None and main.grams.is_guess else "modelled"
    return BathEstimate(
        vessel=name,
        kept=kept,
        volume_l=band(bath.pool.volume_l),
        volume_how=bath.volume_how,
        dye=dye,
        contents=tuple(one for one in amounts if one.lot not in held.stores),
        uses=bath.uses,
        hue_may_drift=bath.uses > 0 and bool(dye),
        how=how,
        dyestuff_inside=inside,
    )


def _amounts(pool: Pool) -> tuple[Amount, ...]:
    return tuple(Amount(name, band(g)) for name, g in pool.held_g.items() if mean(g) > LEAST_G)


def _dyestuff(plan: Plan, held: Holdings, lot: str, store: Store) -> DyestuffEstimate:
    left = store.colour_g
    kept = constant(0.0) if store.soluble else held.unknowns[u.kept_name(lot)]
    brings = scaled(left, tuple([1.0 - share for share in kept]))
    pull = _next_pull(plan, lot)
    return DyestuffEstimate(
        lot=lot,
        total_g=store.total_g,
        pulls=store.pulls,
        drawn=band(tuple([store.total_g - grams for grams in left])),
        left_in_dyestuff=band(left),
        next_pull=band(brings),
        next_min=planned_min(pull) if pull is not None else None,
        next_water_l=pull.water_l if pull is not None else None,
    )


def _next_pull(plan: Plan, lot: str) -> PlannedStep | None:
    """The planned step that shows how this dyestuff is extracted once more: its last extraction."""
    first = next(
        (one for one in plan.steps if one.stage == "extract" and any(a.ingredient == lot for a in one.add)),
        None,
    )
    same = [one for one in plan.steps if one.stage == "extract" and first is not None and one.of == first.of]
    return same[-1] if same else None


def planned_min(step: PlannedStep) -> float | None:
    """Minutes of a step's planned rises and holds; None when it heats nothing."""
    minutes = [
        one.minutes if one.minutes is not None else RISE_MIN
        for one in step.heat
        if one.kind == "to" or (one.kind == "hold" and one.minutes is not None)
    ]
    return sum(minutes) if minutes else None


def _fibre(state: State, held: Holdings, lot: str, fibre: Fibre) -> FibreEstimate:
    there = state.lot(lot)
    found = {name: grams for name, grams in fibre.taken_g.items() if mean(grams) > LEAST_G}
    return FibreEstimate(
        lot=lot,
        kind=fibre.kind,
        mass_g=fibre.mass_g,
        snippet=fibre.snippet,
        place=there.place if there is not None else "",
        taken=tuple(_taken(name, grams, fibre) for name, grams in found.items() if name in held.stores),
        mordant=tuple(Amount(name, band(grams)) for name, grams in found.items() if name not in held.stores),
        liquor_l=band(fibre.liquor.volume_l),
        carried=_amounts(fibre.liquor),
    )


def _taken(name: str, grams: Vector, fibre: Fibre) -> Taken:
    return Taken(name, band(grams), band(times(grams, PER_CENT / fibre.mass_g)))


def _lost(held: Holdings, lot: str) -> Lost:
    return Lost(lot, band(_carried(held, lot)), band(held.away.grams(lot)))


def _carried(held: Holdings, name: str) -> Vector:
    return total([one.liquor.grams(name) for one in held.fibres.values()])


def _pools(held: Holdings) -> Iterable[Pool]:
    return (one.pool for one in (*held.baths.values(), *held.kept.values()))


def _balance(held: Holdings, name: str) -> Balance:
    store = held.stores.get(name, Store())
    return Balance(
        name=name,
        brought=band(constant(held.brought_g[name])),
        in_baths=band(total([pool.grams(name) for pool in _pools(held)])),
        on_fibre=band(total([one.taken(name) for one in held.fibres.values()])),
        in_dyestuff=band(total([store.colour_g, held.sieve.grams(name)])),
        carried_out=band(_carried(held, name)),
        thrown_away=band(held.away.grams(name)),
    )


def _water(held: Holdings) -> Balance:
    return Balance(
        name="water",
        brought=band(held.brought_l),
        in_baths=band(total([pool.volume_l for pool in _pools(held)])),
        on_fibre=band(constant(0.0)),
        in_dyestuff=band(held.sieve.volume_l),
        carried_out=band(total([one.liquor.volume_l for one in held.fibres.values()])),
        thrown_away=band(held.away.volume_l),
        steamed_off=band(held.steamed_l),
        by_reading=band(held.by_reading_l),
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
    return {"water": _off(brought, water), **{name: _grams_off(held, name) for name in held.brought_g}}


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
    return _off(constant(held.brought_g[name]), found)


def _off(brought: Vector, found: Vector) -> Vector:
    return tuple([a - b for a, b in zip(brought, found, strict=True)])
