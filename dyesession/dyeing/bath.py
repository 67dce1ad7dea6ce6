"""What happens to volume and colour when liquor is poured, mixed, boiled away or carried out.

Knows nothing of bands or vessels. Every move conserves water and every dissolved thing to the last digits
of a float; figures come from the caller.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from dyesession.dyeing.limits import OutOfRange, a_share, above_zero, zero_or_more

ML_PER_L = 1000.0


@dataclass(frozen=True)
class Liquor:
    """Litres of liquor and the grams of each thing in it, by name (a dyestuff lot, a mordant)."""

    volume_l: float
    held_g: Mapping[str, float]


@dataclass(frozen=True)
class Parted:
    """A bath after something left it, and what left."""

    left: Liquor
    out: Liquor


def strength_g_l(liquor: Liquor, name: str) -> float:
    """Grams per litre of one thing; 0 when the liquor holds none.

    Raises `OutOfRange` for an empty vessel.
    """
    return liquor.held_g.get(name, 0.0) / above_zero("volume", liquor.volume_l, "4 L")


def pour(liquor: Liquor, volume_l: float) -> Parted:
    """Pour off a volume: a strain, a sample, a draw, a discard. Refuses more than there is."""
    zero_or_more("volume poured", volume_l, "1.8 L")
    if volume_l > liquor.volume_l:
        raise OutOfRange(
            f"{volume_l:g} L cannot be poured from {liquor.volume_l:g} L;"
            " pour no more than there is, or correct the level first, for example 1.8 L of 2 L."
        )
    return _part(liquor, volume_l, volume_l / liquor.volume_l if volume_l else 0.0)


def mix(*liquors: Liquor) -> Liquor:
    """Put dilute liquors together: volumes and contents add."""
    names = dict.fromkeys(name for liquor in liquors for name in liquor.held_g)
    held = {name: math.fsum(liquor.held_g.get(name, 0.0) for liquor in liquors) for name in names}
    return Liquor(math.fsum(liquor.volume_l for liquor in liquors), held)


def top_up(liquor: Liquor, water_l: float) -> Liquor:
    """Add plain water: more volume, nothing more in it. Also what fibre entered wet brings in."""
    return Liquor(liquor.volume_l + zero_or_more("water added", water_l, "0.5 L"), liquor.held_g)


def top_up_to(liquor: Liquor, mark_l: float) -> Liquor:
    """Add plain water up to a mark. Refuses a mark below the level."""
    if mark_l < liquor.volume_l:
        raise OutOfRange(
            f"The bath stands at {liquor.volume_l:g} L, above the mark of {mark_l:g} L;"
            " a mark for topping up must lie higher, for example 4 L for a bath of 3.6 L."
        )
    return Liquor(mark_l, liquor.held_g)


def add(liquor: Liquor, name: str, mass_g: float) -> Liquor:
    """Dissolve a mass of something; its own volume is neglected."""
    zero_or_more(f"mass of {name}", mass_g, "12 g")
    return Liquor(liquor.volume_l, {**liquor.held_g, name: liquor.held_g.get(name, 0.0) + mass_g})


def evaporate(liquor: Liquor, water_l: float) -> Liquor:
    """Lose water as steam: what is dissolved stays. Refuses to boil a bath dry."""
    zero_or_more("water boiled away", water_l, "0.3 L")
    if water_l >= liquor.volume_l > 0.0:
        raise OutOfRange(
            f"{water_l:g} L cannot boil away from {liquor.volume_l:g} L;"
            " some liquor must be left, for example 0.3 L of 4 L."
        )
    return Liquor(liquor.volume_l - water_l, liquor.held_g)


def carry_out(liquor: Liquor, dry_fibre_g: float, held_ml_per_g: float) -> Parted:
    """Lift wet fibre: it takes `held_ml_per_g` of liquor at the bath's strength, at most all."""
    zero_or_more("dry fibre", dry_fibre_g, "100 g")
    zero_or_more("liquor held by the fibre", held_ml_per_g, "2 mL/g")
    volume_l = min(dry_fibre_g * held_ml_per_g / ML_PER_L, liquor.volume_l)
    return _part(liquor, volume_l, volume_l / liquor.volume_l if volume_l else 0.0)


def take_up(liquor: Liquor, shares: Mapping[str, float]) -> tuple[Liquor, dict[str, float]]:
    """Let fibre take a share of each named thing; returns the bath after, and the grams taken."""
    for name, share in shares.items():
        a_share(f"share of {name} taken", share, "0.65")
    taken = {name: mass_g * shares.get(name, 0.0) for name, mass_g in liquor.held_g.items()}
    return Liquor(liquor.volume_l, {name: g - taken[name] for name, g in liquor.held_g.items()}), taken


def _part(liquor: Liquor, volume_l: float, share: float) -> Parted:
    out = {name: mass_g * share for name, mass_g in liquor.held_g.items()}
    left = {name: mass_g - out[name] for name, mass_g in liquor.held_g.items()}
    return Parted(Liquor(liquor.volume_l - volume_l, left), Liquor(volume_l, out))
