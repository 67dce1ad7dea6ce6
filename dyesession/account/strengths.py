"""How strong a bath is in every world, and what a strength that was read says of them.

Knows nothing of how a strength is read at the stove (`dyeing.strength`). A strength is a number on a linear
scale, told of something: an earlier strain, the bath before its fibre, another pot, or a scale of its own.
"""

import math
import re
from dataclasses import dataclass

from dyesession.account import unknowns as u
from dyesession.account.holdings import Evidence, Holdings
from dyesession.account.pools import Pool
from dyesession.account.worlds import Vector, mean, times, total
from dyesession.dyeing.strength import COLOURLESS, is_nothing, sd_of
from dyesession.session import events as e
from dyesession.session.state import State

ONE_DYE = 0.95  # a bath is of one dyestuff when this share of its colour is; our own choice, no source
MOST_HELD = 0.9  # of the liquor there is: dyestuff that would hold more still lets some run off; judgement
LEAST_G = 1e-6
LEAST_STRENGTH = 1e-9  # g/L; keeps a logarithm finite in a world without colour
ML_PER_L = 1000.0
ORDINALS = {"first": 1, "1st": 1, "second": 2, "2nd": 2, "again": 2, "third": 3, "3rd": 3, "fourth": 4}
FRESH = re.compile(r"\b(before|fresh|unused|undipped)\b")
STRAIN = re.compile(r"\b(strain|extract|extraction|pull)\b")


@dataclass(frozen=True)
class Beside:
    """What a strength was compared with: its strength in every world, or a free scale's name."""

    strength: Vector | None
    scale: str = ""


def main_lot(held: Holdings, name: str) -> str:
    """The dyestuff a bath has its colour from, "" where it has none, or several."""
    pool = pool_of(held, name).held_g
    dye = {lot: mean(grams) for lot, grams in pool.items() if lot in held.stores}
    most = max(dye, key=dye.__getitem__, default="")
    return most if most and dye[most] > max(LEAST_G, ONE_DYE * math.fsum(dye.values())) else ""


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


def strength_g_l(held: Holdings, name: str, lot: str, inside: tuple[str, ...] = ()) -> Vector:
    """Grams of one lot's colour to the litre that would run off, 0 where there is no liquor.

    Liquor held by dyestuff still `inside` counts as the dyestuff's, as it does when it is strained.
    """
    pool = pool_of(held, name)
    back = held_back_l(held, pool.volume_l, inside)
    return tuple(
        [
            grams / (litres - kept) if litres > kept else 0.0
            for grams, litres, kept in zip(pool.grams(lot), pool.volume_l, back, strict=True)
        ]
    )


def what_it_says(held: Holdings, event: e.Read, n: int, state: State) -> Evidence | None:
    """What a strength that was read says of each world; None where there is nothing to hold it against."""
    lot = main_lot(held, event.vessel)
    if not lot or event.strength is None:
        return None
    beside = beside_what(held, event.vessel, lot, event.against, state)
    inside = tuple(one.name for one in state.dyestuffs if one.place == event.vessel)
    mine = strength_g_l(held, event.vessel, lot, inside)
    if beside.strength is None:
        return Evidence(n, _off(event.strength, mine, None), sd_of(event.how, event.strength), beside.scale)
    if mean(beside.strength) <= LEAST_STRENGTH:
        return None
    return Evidence(n, _off(event.strength, mine, beside.strength), sd_of(event.how, event.strength))


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
        found = [one for one in held.strains if one.lot == lot and one.number == number]
        return Beside(found[-1].strength) if found else Beside(None, f"{words} of {lot}")
    if FRESH.search(words) and vessel in held.fresh:
        return Beside(held.fresh[vessel])
    named = _named(held, words, state)
    if named and named != vessel and main_lot(held, named) == lot:
        inside = tuple(one.name for one in state.dyestuffs if one.place == named)
        return Beside(strength_g_l(held, named, lot, inside))
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
