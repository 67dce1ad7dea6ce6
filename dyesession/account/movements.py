"""What each fact moves: one function a kind of event, water and every gram conserved in every world.

Knows nothing of time passing or bands. A volume that was only planned is not a reading: it says what was
meant, and the worlds differ by eye; a volume read, weighed, matched or typed replaces what was reckoned, and
how far each world had it wrong is evidence. The share kept per extraction is settled at the strain, however
long it steeped (no figure for the effect of minutes was found).
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from dyesession.account import unknowns as u
from dyesession.account.holdings import (
    LEAST_FIBRE_G,
    Bath,
    Evidence,
    Fibre,
    Holdings,
    Store,
    Strain,
    together,
)
from dyesession.account.model import How
from dyesession.account.pools import EMPTY, Pool, mixed, parted
from dyesession.account.strengths import (
    held_back_l,
    kept_at_strain,
    main_lot,
    strength_g_l,
    what_it_says,
)
from dyesession.account.worlds import ZEROS, Vector, constant, minus, plus, scaled, times
from dyesession.dyeing.bands import Z_90
from dyesession.session import events as e
from dyesession.session.brought import Brought, brought_in
from dyesession.session.state import OUT_WET, SIEVE, State

ML_PER_L = 1000.0
SQUEEZE_VARIES = 0.1 / Z_90  # how one lift by the same hands differs from the next (90 %: a tenth); judgement
UNTOLD = 0.02  # what nobody logs of a pot's water (drips, a ladle, the cloth): share of it, one sd; judgement
READ_SD = math.log1p(u.READING_ERROR) / Z_90  # of a volume read, as a share of it
BOTH_SD = math.hypot(UNTOLD, READ_SD)
UNTOLD_PULL = UNTOLD**2 / BOTH_SD**2  # of the way from what was reckoned to what was read
ODD_FROM = 3.0  # standard deviations from which a world has missed something; our own choice
# From so many of a reading's standard deviations on, beyond every world: a pot that somebody poured from or filled
# without telling (a fifth off), a wet weight of something else (half or twice). Our own choice, no source.
POT_SLIP, WEIGHT_SLIP = 6.0, 12.0

Change = Callable[[Holdings, Any, State, State], Holdings]


def moved(held: Holdings, event: e.Event, before: State, after: State) -> Holdings:
    """The holdings after one fact that fits; `before` and `after` are the facts' states round it."""
    change = CHANGES.get(event.kind)
    return change(held, event, before, after) if change else held


def was_read(how: str) -> bool:
    """Whether a volume with this word is a reading rather than what was planned or reckoned."""
    return how in ("read", "weighed", "matched", "typed")


def _word(how: str) -> How:
    return "read" if was_read(how) else "planned"


def _told(held: Holdings, volume_l: float, how: str) -> Vector:
    """A volume of water as told, with the error of a jug or of the eye."""
    return times(held.unknowns[u.JUG if was_read(how) else u.EYE], volume_l)


def _filled(held: Holdings, event: e.Filled | e.Refreshed, before: State, after: State) -> Holdings:
    held = held.with_water(event.vessel, _told(held, event.volume_l, event.how))
    held = held.with_bath(event.vessel, replace(held.bath(event.vessel), volume_how=_word(event.how)))
    return _sieve_returned(held, event.vessel, after)


def _sieve_returned(held: Holdings, vessel: str, after: State) -> Holdings:
    """Liquor held back goes into the pot with the dyestuff that held it."""
    if held.sieve is EMPTY or any(one.place == SIEVE for one in after.dyestuffs):
        return held
    bath = held.bath(vessel)
    held = held.with_bath(vessel, replace(bath, pool=mixed(bath.pool, held.sieve), volume_how="modelled"))
    return held.changed(sieve=EMPTY)


def _added(held: Holdings, event: e.Added, before: State, after: State) -> Holdings:
    lot, grams = event.ingredient, constant(event.mass_g)
    held = held.with_brought(lot, event.mass_g)
    pool = held.bath(event.vessel).pool
    dyestuff = after.dyestuff(lot)
    if dyestuff is None:
        return held.with_pool(event.vessel, pool.with_grams(lot, plus(pool.grams(lot), grams)))
    store = held.stores.get(lot, Store())
    store = replace(store, total_g=store.total_g + event.mass_g)
    if lot in held.dissolved or "extract" in dyestuff.substance.casefold().split():
        held = held.with_store(lot, replace(store, soluble=True))
        return held.with_pool(event.vessel, pool.with_grams(lot, plus(pool.grams(lot), grams)))
    held = held.with_store(lot, replace(store, colour_g=plus(store.colour_g, grams)))
    return _sieve_returned(held.with_pool(event.vessel, pool), event.vessel, after)


def _dissolved(held: Holdings, event: e.Dissolved, before: State, after: State) -> Holdings:
    return held.changed(dissolved=held.dissolved | {event.ingredient})


def _strained(held: Holdings, event: e.Strained, before: State, after: State) -> Holdings:
    bath = held.bath(event.vessel)
    lots = [one.name for one in before.dyestuffs if one.place == event.vessel and one.name in held.stores]
    held, pool, held_back = _sieved(held, bath.pool, lots, event, after.n)
    left, out = parted(pool, minus(pool.volume_l, held_back)) if lots else (EMPTY, pool)
    # What parted left behind is all the sieve holds: liquor, and with it everything but the lots' own colour.
    kept = {name: grams for name, grams in left.held_g.items() if name not in lots}
    poured = dict(out.held_g)
    for lot in lots:
        held, poured[lot] = _pulled(held, lot, pool, held_back)
        held = _marked(held, lot, after.n, poured[lot], out.volume_l, event.vessel)
    held = held.changed(sieve=mixed(held.sieve, Pool(left.volume_l, kept)))
    how: How = "read" if event.volume_l is not None and was_read(event.how) else "modelled"
    moved_bath = Bath(Pool(out.volume_l, poured), bath.temperature_c, bath.uses, how)
    held = held.without_bath(event.vessel)
    return held.with_bath(event.into, together(held.bath(event.into), moved_bath))


def _sieved(
    held: Holdings, pool: Pool, lots: list[str], event: e.Strained, n: int
) -> tuple[Holdings, Pool, Vector]:
    """The liquor before it is parted, and how much the dyestuff keeps. A volume read corrects the pot's,
    and says what the dyestuff holds.
    """
    back = held_back_l(held, pool.volume_l, tuple(lots))
    if not event.volume_l or not was_read(event.how):
        return held, pool, back
    held, runs_off = _by_reading(held, minus(pool.volume_l, back), event.volume_l, n)
    held, pool = _corrected(held, pool, plus(runs_off, back))
    return held, pool, back


def _by_reading(held: Holdings, reckoned_l: Vector, read_l: float, n: int) -> tuple[Holdings, Vector]:
    """A volume that was read: each world goes part of the way to it, and all the way where it was far off.

    How far a pot's water goes untold against how well it is read says how much of the way (the mean of two
    normals); a world off by far more than pots drip has missed something, and takes the reading as it is.
    """
    name = f"volume read at entry {n}"
    held = held.changed(unknowns=held.unknowns.with_unknown(name, u.VOLUME_STEP))
    errors = held.unknowns[name]
    if min(reckoned_l) <= 0.0 or read_l <= 0.0:
        return held, tuple([read_l * error**READ_SD for error in errors])
    off = tuple([math.log(read_l / had) for had in reckoned_l])
    pulls = [1.0 - (1.0 - UNTOLD_PULL) / (1.0 + (one / (ODD_FROM * BOTH_SD)) ** 4) for one in off]
    volume_l = tuple(
        [
            had * math.exp(pull * one) * error ** (READ_SD * math.sqrt(pull))
            for had, one, pull, error in zip(reckoned_l, off, pulls, errors, strict=True)
        ]
    )
    return held.with_evidence(Evidence(n, off, BOTH_SD, slip_from=POT_SLIP)), volume_l


def _corrected(held: Holdings, pool: Pool, volume_l: Vector) -> tuple[Holdings, Pool]:
    """Liquor at a volume that was read; the difference is booked as found by reading."""
    found = plus(held.by_reading_l, minus(volume_l, pool.volume_l))
    return held.changed(by_reading_l=found), pool.with_volume(volume_l)


def _pulled(held: Holdings, lot: str, pool: Pool, held_back: Vector) -> tuple[Holdings, Vector]:
    """One extraction's colour: what the dyestuff keeps, and what runs off."""
    store = held.stores[lot]
    here = plus(store.colour_g, pool.grams(lot))
    inside = scaled(here, kept_at_strain(held, lot, pool.volume_l, held_back))
    held = held.with_store(lot, replace(store, colour_g=inside, pulls=store.pulls + 1))
    return held, minus(here, inside)


def _marked(held: Holdings, lot: str, n: int, colour_g: Vector, volume_l: Vector, vessel: str) -> Holdings:
    """A strain is remembered: readings name it later."""
    strength = tuple([g / v if v > 0.0 else 0.0 for g, v in zip(colour_g, volume_l, strict=True)])
    strain = Strain(lot, held.stores[lot].pulls, n, colour_g, volume_l, strength, vessel)
    return held.changed(strains=(*held.strains, strain))


def _pooled(held: Holdings, event: e.Pooled, before: State, after: State) -> Holdings:
    bath = held.bath(event.vessel)
    if event.volume_l is None:
        held = held.without_bath(event.vessel)
        return held.with_bath(event.into, together(held.bath(event.into), bath))
    held, pool = _at_least(held, bath.pool, event.volume_l)
    left, out = parted(pool, constant(event.volume_l))
    held = held.with_pool(event.vessel, left)
    poured = replace(bath, pool=out, volume_how=_word(event.how))
    return held.with_bath(event.into, together(held.bath(event.into), poured))


def _at_least(held: Holdings, pool: Pool, volume_l: float) -> tuple[Holdings, Pool]:
    """Liquor of which so much was poured: a world that held less had it wrong, and books the difference."""
    if min(pool.volume_l) >= volume_l:
        return held, pool
    return _corrected(held, pool, tuple([max(there, volume_l) for there in pool.volume_l]))


def _topped_up(held: Holdings, event: e.ToppedUp, before: State, after: State) -> Holdings:
    bath = held.bath(event.vessel)
    if event.to_l is None:
        return held.with_water(event.vessel, _told(held, event.volume_l or 0.0, event.how))
    mark = _told(held, event.to_l, event.how)
    water = tuple([max(0.0, m - there) for m, there in zip(mark, bath.pool.volume_l, strict=True)])
    held = held.with_water(event.vessel, water)
    bath = replace(held.bath(event.vessel), volume_how=_word(event.how))
    if was_read(event.how):
        held, pool = _corrected(held, bath.pool, mark)
        bath = replace(bath, pool=pool)
    return held.with_bath(event.vessel, bath)


def _entered(held: Holdings, event: e.Entered | e.Dipped, before: State, after: State) -> Holdings:
    """Fibre that comes wet brings its liquor in, and all that is loose on it."""
    name = event.snippet if isinstance(event, e.Dipped) else event.lot
    lot = after.lot(name)
    if lot is None:
        return held
    fibre = held.fibres.get(name, Fibre(lot.kind, lot.mass_g, lot.snippet))
    bath = held.bath(event.vessel)
    held = _unused_remembered(held, event.vessel, before)
    held = held.with_bath(event.vessel, together(bath, Bath(fibre.liquor, bath.temperature_c)))
    return held.with_fibre(name, replace(fibre, liquor=EMPTY))


def _unused_remembered(held: Holdings, vessel: str, before: State) -> Holdings:
    """How strong a bath was when fibre first went in: readings name it later. Fibre alone in it forgets."""
    lot = main_lot(held, vessel)
    if not lot or any(not one.snippet for one in before.lots_in(vessel)):
        return held
    return held.changed(fresh={**held.fresh, vessel: strength_g_l(held, vessel, lot)})


def _lifted(held: Holdings, event: e.Lifted, before: State, after: State) -> Holdings:
    """Fibre comes out wet: it carries liquor at the bath's strength, by its wet mass where that was weighed.

    The bath is used once more when its last lot is out.
    """
    fibre, bath = held.fibres.get(event.lot), held.bath(event.vessel)
    if fibre is None:
        return held
    if event.wet_mass_g is not None:
        held, carried = _weighed_wet(held, fibre, event.wet_mass_g, after.n)
    else:
        carried = times(held.unknowns[u.held_name(u.family_of(fibre.kind))], fibre.bone_dry_g / ML_PER_L)
    left, out = parted(bath.pool, carried)
    emptied = not fibre.snippet and all(one.snippet for one in after.lots_in(event.vessel))
    uses = bath.uses + 1 if emptied else bath.uses
    held = held.with_bath(event.vessel, replace(bath, pool=left, uses=uses))
    return held.with_fibre(event.lot, replace(fibre, liquor=mixed(fibre.liquor, out)))


def _weighed_wet(held: Holdings, fibre: Fibre, wet_mass_g: float, n: int) -> tuple[Holdings, Vector]:
    """Litres a lot weighed wet carries, and what that says of fibre of its family: the same hands lift the
    next lot.
    """
    name = f"wet weight at entry {n}"
    held = held.changed(unknowns=held.unknowns.with_unknown(name, u.WEIGHED_WATER))
    weighed_g = max(0.0, wet_mass_g - fibre.bone_dry_g)
    carried = times(held.unknowns[name], weighed_g / ML_PER_L)
    guessed = held.unknowns[u.held_name(u.family_of(fibre.kind))]
    if fibre.snippet or weighed_g <= 0.0 or fibre.bone_dry_g < LEAST_FIBRE_G or min(guessed) <= 0.0:
        return held, carried
    log_weighed = math.log(weighed_g / fibre.bone_dry_g)
    off = tuple([log_weighed - math.log(one) for one in guessed])
    return held.with_evidence(Evidence(n, off, SQUEEZE_VARIES, slip_from=WEIGHT_SLIP)), carried


def _read(held: Holdings, event: e.Read, before: State, after: State) -> Holdings:
    if event.vessel and event.temperature_c is not None:
        held = _warmed(held, event.vessel, event.temperature_c)
    if event.vessel and event.volume_l is not None and event.vessel in held.baths:
        held = _volume_read(held, event.vessel, event.volume_l, after.n)
    if event.vessel and event.strength is not None:
        said = what_it_says(held, event, after.n, before)
        held = held.with_evidence(said) if said is not None else held
    lot = after.lot(event.lot)
    if lot is not None and event.mass_g is not None and lot.place == OUT_WET:
        held = _wet_mass_read(held, event.lot, event.mass_g, after.n)
    return held


def _warmed(held: Holdings, vessel: str, temperature_c: float) -> Holdings:
    if vessel not in held.baths:
        return held
    return held.with_bath(vessel, held.bath(vessel).warmed(temperature_c))


def _volume_read(held: Holdings, vessel: str, volume_l: float, n: int) -> Holdings:
    bath = held.bath(vessel)
    held, read_l = _by_reading(held, bath.pool.volume_l, volume_l, n)
    held, pool = _corrected(held, bath.pool, read_l)
    return held.with_bath(vessel, replace(bath, pool=pool, volume_how="read"))


def _wet_mass_read(held: Holdings, lot: str, mass_g: float, n: int) -> Holdings:
    """A lot weighed wet on the table: its liquor is known, what that holds is as reckoned."""
    fibre = held.fibres.get(lot)
    if fibre is None:
        return held
    held, carried = _weighed_wet(held, fibre, mass_g, n)
    held, liquor = _corrected(held, fibre.liquor, carried)
    return held.with_fibre(lot, replace(fibre, liquor=liquor))


def _confirmed(held: Holdings, event: e.Confirmed, before: State, after: State) -> Holdings:
    if event.temperature_c is None or not event.vessel:
        return held
    return _warmed(held, event.vessel, event.temperature_c)


def _reached(held: Holdings, event: e.Reached, before: State, after: State) -> Holdings:
    vessel = after.vessel(event.vessel)
    if vessel is None or vessel.reached_c is None:
        return held
    return _warmed(held, event.vessel, vessel.reached_c)


def _kept(held: Holdings, event: e.Kept, before: State, after: State) -> Holdings:
    if event.volume_l is not None and event.vessel in held.baths:
        held = _volume_read(held, event.vessel, event.volume_l, after.n)
    bath = held.bath(event.vessel)
    there = held.kept.get(event.label, Bath())
    return held.without_bath(event.vessel).with_kept(event.label, together(there, bath))


def _drawn(held: Holdings, event: e.Drawn, before: State, after: State) -> Holdings:
    """From a bath kept today, or one of another day with what the shelf made of it; nothing told is water."""
    if event.label in held.kept:
        bath = held.kept[event.label]
        left, out = EMPTY, bath.pool
        if event.volume_l is not None:
            held, pool = _at_least(held, bath.pool, event.volume_l)
            left, out = parted(pool, constant(event.volume_l))
        held = held.with_kept(event.label, replace(bath, pool=left))
        drawn = replace(bath, pool=out, volume_how="modelled")
        return held.with_bath(event.vessel, together(held.bath(event.vessel), drawn))
    held = held.with_water(event.vessel, constant(event.volume_l or 0.0))
    bath = held.bath(event.vessel)
    held = held.with_bath(event.vessel, replace(bath, uses=max(1, bath.uses)))
    for one in poured_in(event):
        held = _came_along(held, event.vessel, one, after.n)
    return held


def poured_in(event: e.Drawn) -> tuple[Brought, ...]:
    """What comes along with a bath of another day: less of it where its litres were put right afterwards."""
    told = brought_in(event.brought)
    if not event.brought_l or event.volume_l is None:
        return told
    return tuple(one.share(event.volume_l / event.brought_l) for one in told)


def _came_along(held: Holdings, vessel: str, one: Brought, n: int) -> Holdings:
    """As uncertain as the shelf told it; from here on it goes the way of everything else in the bath."""
    share, most_g = u.share_of_most(f"{one.lot} poured in", one.mean_g, one.low_g, one.high_g)
    name = f"{one.lot} poured in at entry {n}"
    held = held.changed(
        unknowns=held.unknowns.with_unknown(name, share), of_other_days={**held.of_other_days, one.lot: one}
    )
    grams = times(held.unknowns[name], most_g)
    came = {**held.poured_g, one.lot: plus(held.poured_g.get(one.lot, ZEROS), grams)}
    held = held.changed(poured_g=came)
    if one.is_dye and one.lot not in held.stores:
        held = held.with_store(one.lot, Store(soluble=True))
    pool = held.bath(vessel).pool
    return held.with_pool(vessel, pool.with_grams(one.lot, plus(pool.grams(one.lot), grams)))


def _discarded(held: Holdings, event: e.Discarded, before: State, after: State) -> Holdings:
    if event.label:
        bath = held.kept.get(event.label, Bath())
        kept = {label: one for label, one in held.kept.items() if label != event.label}
        return held.changed(kept=kept).with_away(bath.pool)
    return held.with_away(held.bath(event.vessel).pool).without_bath(event.vessel)


CHANGES: Mapping[str, Change] = {
    "filled": _filled,
    "refreshed": _filled,
    "added": _added,
    "dissolved": _dissolved,
    "strained": _strained,
    "pooled": _pooled,
    "topped-up": _topped_up,
    "entered": _entered,
    "dipped": _entered,
    "lifted": _lifted,
    "read": _read,
    "confirmed": _confirmed,
    "reached": _reached,
    "kept": _kept,
    "drawn": _drawn,
    "discarded": _discarded,
}
