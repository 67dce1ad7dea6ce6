"""How strong a bath is in every world, and what a strength that was read says of them.

Knows nothing of how a strength is read at the stove (`dyeing.strength`). A strength is a number on a linear
scale, told of something: an earlier strain, the bath before its fibre, another pot, or a scale of its own.
"""

import math
import re
from dataclasses import dataclass

from dyesession.account import unknowns as u
from dyesession.account.holdings import Evidence, Holdings
from dyesession.account.passing import kept_now
from dyesession.account.pools import Pool
from dyesession.account.worlds import Vector, constant, mean, plus, times, total
from dyesession.dyeing.strength import COLOURLESS, Strength, is_nothing, sd_of
from dyesession.session import events as e
from dyesession.session.brought import ingredient_of
from dyesession.session.state import State

ONE_DYE = 0.95  # a bath is of one dyestuff when this share of its colour is; our own choice, no source
MOST_HELD = 0.9  # of the liquor there is: dyestuff that would hold more still lets some run off; judgement
LEAST_G = 1e-6
LEAST_STRENGTH = 1e-9  # g/L; keeps a logarithm finite in a world without colour
ML_PER_L = 1000.0
MATCHED_BY_EYE = frozenset({"dilution match", "equal columns"})
ORDINALS = {"first": 1, "1st": 1, "second": 2, "2nd": 2, "again": 2, "third": 3, "3rd": 3, "fourth": 4}
FRESH = re.compile(r"\b(before|fresh|unused|undipped)\b")
STRAIN = re.compile(r"\b(strain|extract|extraction|pull)\b")


@dataclass(frozen=True)
class Beside:
    """What a strength was compared with: its strength in every world, or a free scale's name."""

    strength: Vector | None
    scale: str = ""


def main_lot(held: Holdings, name: str) -> str:
    """The lot that a bath of one dyestuff has most of its colour from, "" where it has none, or several dyestuffs."""
    pool = pool_of(held, name).held_g
    dye = {lot: mean(grams) for lot, grams in pool.items() if lot in held.stores}
    most = max(dye, key=dye.__getitem__, default="")
    of_it = math.fsum(grams for lot, grams in dye.items() if ingredient_of(lot) == ingredient_of(most))
    return most if most and of_it > max(LEAST_G, ONE_DYE * math.fsum(dye.values())) else ""


def _of_one_dyestuff(held: Holdings, pool: Pool, lot: str) -> Vector:
    """Grams of a lot's colour, and of the same dyestuff's that came with another day's bath or was weighed today."""
    same = [one for one in pool.held_g if one in held.stores and ingredient_of(one) == ingredient_of(lot)]
    return pool.grams(same[0]) if len(same) == 1 else total([pool.grams(one) for one in same])


def pool_of(held: Holdings, name: str) -> Pool:
    """The liquor in a vessel, or kept under a label."""
    return held.kept[name].pool if name in held.kept and name not in held.baths else held.bath(name).pool


def held_back_l(held: Holdings, volume_l: Vector, lots: tuple[str, ...]) -> Vector:
    """Litres of liquor that dyestuff keeps when its pot is strained, never quite all there is."""
    solid = [lot for lot in lots if lot in held.stores and not held.stores[lot].soluble]
    wants = total(
        [times(held.unknowns[u.spent_name(lot)], held.stores[lot].total_g / ML_PER_L) for lot in solid]
    )
    return tuple([min(want, MOST_HELD * there) for want, there in zip(wants, volume_l, strict=True)])


def kept_at_strain(held: Holdings, lot: str, volume_l: Vector, held_back: Vector) -> Vector:
    """Share of its colour that dyestuff keeps when it is strained: no less than the liquor it holds has."""
    kept = constant(0.0) if held.stores[lot].soluble else kept_now(held, lot)
    rows = zip(kept, volume_l, held_back, strict=True)
    return tuple([max(r, back / all_l) if all_l > 0.0 else r for r, all_l, back in rows])


def strength_g_l(held: Holdings, name: str, lot: str, inside: tuple[str, ...] = ()) -> Vector:
    """Grams of one dyestuff's colour to the litre, 0 where there is no liquor.

    With the dyestuff still `inside` it is the strength of the strain it would give: a liquor is read when it
    is ready to be strained, and how far it is on the way there no one knows better.
    """
    pool = pool_of(held, name)
    if lot not in inside:
        rows = zip(_of_one_dyestuff(held, pool, lot), pool.volume_l, strict=True)
        return tuple([grams / litres if litres > 0.0 else 0.0 for grams, litres in rows])
    back = held_back_l(held, pool.volume_l, inside)
    kept = kept_at_strain(held, lot, pool.volume_l, back)
    here = plus(held.stores[lot].colour_g, _of_one_dyestuff(held, pool, lot))
    return tuple(
        [
            grams * (1.0 - share) / (litres - held_l) if litres > held_l else 0.0
            for grams, share, litres, held_l in zip(here, kept, pool.volume_l, back, strict=True)
        ]
    )


@dataclass(frozen=True)
class Sample:
    """The liquor a reading is of: which dyestuff's, its strength in every world, and which strain (0: none)."""

    lot: str
    strength: Vector
    strain: int


def sample_of(held: Holdings, vessel: str, state: State) -> Sample | None:
    """What a reading at a vessel is of: the strain to come while dyestuff is in it, its bath, or, of a pot that
    was strained empty, the strain that ran off. None without colour.
    """
    inside = tuple(one.name for one in state.dyestuffs if one.place == vessel and one.name in held.stores)
    if vessel not in held.baths and vessel not in held.kept:
        ran_off = next((one for one in reversed(held.strains) if one.vessel == vessel), None)
        return None if ran_off is None else Sample(ran_off.lot, ran_off.strength, ran_off.number)
    lot = inside[0] if len(inside) == 1 else main_lot(held, vessel)
    if not lot:
        return None
    return Sample(lot, strength_g_l(held, vessel, lot, inside), _strain_of(held, vessel, lot, inside))


def _strain_of(held: Holdings, vessel: str, lot: str, inside: tuple[str, ...]) -> int:
    if lot in inside:
        return held.stores[lot].pulls + 1
    grams = pool_of(held, vessel).grams(lot)
    return next((one.number for one in held.strains if one.lot == lot and one.colour_g is grams), 0)


def what_it_says(held: Holdings, event: e.Read, n: int, state: State) -> Evidence | None:
    """What a strength that was read says of each world; None where there is nothing to hold it against."""
    sample = sample_of(held, event.vessel, state)
    if sample is None or event.strength is None or mean(sample.strength) <= LEAST_STRENGTH:
        return None
    beside = beside_what(held, event.vessel, sample.lot, event.against, state)
    sd = sd_of(event.how, event.strength, event.method, event.error_share)
    if beside.strength is None:
        return Evidence(n, _off(event.strength, sample.strength, None), sd, beside.scale)
    if mean(beside.strength) <= LEAST_STRENGTH:
        return None
    return Evidence(n, _off(event.strength, sample.strength, beside.strength), sd)


def reading_of(vessel: str, strength: Strength, against: str) -> e.Read:
    """The reading to log for a strength found by one of the ways of `dyeing.strength`."""
    how = "matched" if strength.method in MATCHED_BY_EYE else "read"
    return e.Read(
        vessel,
        strength=strength.share,
        against=against,
        how=how,
        method=strength.method,
        error_share=round(strength.sd, 3),
    )


def strain_named(words: str) -> int:
    """The number of the strain that an `against` names; 0 where it names none."""
    found = words.casefold()
    return _ordinal(found) if STRAIN.search(found) else 0


def _off(read: float, mine: Vector, other: Vector | None) -> Vector:
    """Log of the strength read over each world's; where hardly any was read, any as weak fits."""
    against = other if other is not None else (1.0,) * len(mine)
    shares = [max(a, LEAST_STRENGTH) / max(b, LEAST_STRENGTH) for a, b in zip(mine, against, strict=True)]
    told = math.log(max(read, COLOURLESS))
    if is_nothing(read) and other is not None:
        return tuple([min(0.0, told - math.log(share)) for share in shares])
    return tuple([told - math.log(share) for share in shares])


def beside_what(held: Holdings, vessel: str, lot: str, against: str, state: State) -> Beside:
    """What a strength was compared with, from the dyer's words; words that name nothing are a free scale."""
    words = against.casefold().strip()
    if STRAIN.search(words):
        number = _ordinal(words)
        same = [one for one in held.strains if ingredient_of(one.lot) == ingredient_of(lot)]
        found = [one for one in same if one.number == number]
        return Beside(found[-1].strength) if found else Beside(None, f"{words} of {lot}")
    if FRESH.search(words) and vessel in held.fresh:
        return Beside(held.fresh[vessel])
    named = _named(held, words, state)
    other = sample_of(held, named, state) if named and named != vessel else None
    if other is not None and ingredient_of(other.lot) == ingredient_of(lot):
        return Beside(other.strength)
    return Beside(None, f"{words} of {lot}")


def _ordinal(words: str) -> int:
    digits = re.search(r"\d+", words)
    if digits:
        return int(digits.group())
    return next((number for word, number in ORDINALS.items() if re.search(rf"\b{word}\b", words)), 1)


def _named(held: Holdings, words: str, state: State) -> str:
    """A vessel by its letter or name, or a kept bath by its label, as the words name it; else ""."""
    bare = words.removeprefix("the ").removeprefix("pot ")
    for vessel in state.vessels:
        if bare in (vessel.letter.casefold(), vessel.name.casefold()):
            return vessel.name
    return next((label for label in held.kept if bare == label.casefold()), "")
