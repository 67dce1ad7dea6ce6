"""Grams of every ingredient: shares of the fibre, of another ingredient, of a bath, or flat; all exact.

Knows no scales and no pots: the litres of a bath are handed in. Bands are the recipe's own, not an error.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from dyesession.plan.model import Band
from dyesession.recipe.model import Ingredient, Recipe, Role
from dyesession.units import Dose, Flat, PerBath, ShareOf, ShareOfFibre

Depth = Literal["low", "aim", "high"]

# What a paler or deeper colour is made with; a mordant keeps its own aim.
FOLLOWS_DEPTH: tuple[Role, ...] = ("dyestuff", "modifier")
HUNDRED = 100


@dataclass(frozen=True)
class Grams:
    """Least, aim and most grams of an ingredient, exact."""

    low: Fraction
    aim: Fraction
    high: Fraction

    def band(self) -> Band:
        """Return the same as plain numbers."""
        return Band(float(self.low), float(self.aim), float(self.high))

    def percent_of(self, fibre_g: Fraction) -> Band:
        """Return the same in per cent of the fibre."""
        share = HUNDRED / fibre_g
        return Band(float(self.low * share), float(self.aim * share), float(self.high * share))


NOTHING = Grams(Fraction(0), Fraction(0), Fraction(0))


@dataclass(frozen=True)
class Base:
    """What doses are reckoned on: grams of fibre, and litres of bath for what is dosed by the litre."""

    fibre_g: Fraction
    bath_l: Mapping[str, Fraction]


def grams_of(recipe: Recipe, base: Base, depth: Depth) -> dict[str, Grams]:
    """Work out every ingredient of a sound recipe. A dose by the litre whose bath is not known yet is
    nothing.
    """
    known: dict[str, Grams] = {}

    def one(name: str) -> Grams:
        if name not in known:
            known[name] = _grams(recipe.ingredient(name), base, depth, one)
        return known[name]

    return {ingredient.name: one(ingredient.name) for ingredient in recipe.ingredients}


def _grams(ingredient: Ingredient, base: Base, depth: Depth, other: Callable[[str], Grams]) -> Grams:
    if ingredient.dose is None:
        return NOTHING
    dose = amount_g(ingredient.dose, ingredient.name, base, other)
    low = (
        dose.low if ingredient.least is None else amount_g(ingredient.least, ingredient.name, base, other).low
    )
    high = (
        dose.high if ingredient.most is None else amount_g(ingredient.most, ingredient.name, base, other).high
    )
    aims: Mapping[Depth, Fraction] = {"low": low, "aim": dose.aim, "high": high}
    return Grams(low, aims[depth if ingredient.role in FOLLOWS_DEPTH else "aim"], high)


def amount_g(dose: Dose, name: str, base: Base, other: Callable[[str], Grams]) -> Grams:
    """Grams of one dose of the ingredient `name`; the aim is the middle of a range.

    `other` gives the grams of another ingredient, for a dose that is a share of one.
    """
    aim = (dose.low + dose.high) / 2
    match dose:
        case ShareOfFibre():
            return _times(dose, aim, Grams(base.fibre_g, base.fibre_g, base.fibre_g))
        case ShareOf():
            return _times(dose, aim, other(dose.ingredient))
        case PerBath():
            litres = base.bath_l.get(name, Fraction(0))
            return _times(dose, aim, Grams(litres, litres, litres))
        case Flat():
            return Grams(dose.low, aim, dose.high)


def _times(dose: Dose, aim: Fraction, of: Grams) -> Grams:
    return Grams(dose.low * of.low, aim * of.aim, dose.high * of.high)
