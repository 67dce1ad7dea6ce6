"""What the day takes out of the jars, what is to be bought, and what that costs by the jars' own prices.

Knows no shops and no currency: a price is the figure the dyer wrote in the kitchen file.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from dyesession.kitchen.model import Jar
from dyesession.plan.model import Plan, PlannedDose
from dyesession.substances import find, form_named
from dyesession.units import show_mass

GRAMS_PRICED = 100.0
STOCKED = ("stock liquor", "stock solution")  # more is taken from the jar than goes into the bath
_BY_ROLE = ("scour", "mordant", "assist", "tannin", "dyestuff", "modifier")


@dataclass(frozen=True)
class ToBuy:
    """One ingredient: grams taken from its jar, grams in the jars, grams to buy, and prices.

    `left_g` is None where no jar says how much is in it (`buy_g` is then None too: nobody knows); prices are None
    where no jar has one. `day_price` is what the day uses up, `buy_price` what is to be bought.
    """

    ingredient: str
    substance: str
    takes_g: float
    left_g: float | None
    buy_g: float | None
    price_per_100_g: float | None
    day_price: float | None
    buy_price: float | None
    jars: tuple[str, ...] = ()


@dataclass(frozen=True)
class Shopping:
    """The whole list. The prices together are None where nothing has a price; `unpriced` has none."""

    items: tuple[ToBuy, ...]
    day_price: float | None
    buy_price: float | None
    unpriced: tuple[str, ...]


def shopping(plan: Plan, jars: Sequence[Jar]) -> Shopping:
    """Work out what every dose of a plan takes and what of it is missing."""
    items = tuple(_item(one, jars) for one in plan.doses if one.role in _BY_ROLE and one.mass_g.aim > 0)
    return Shopping(
        items,
        _together([one.day_price for one in items]),
        _together([one.buy_price for one in items]),
        tuple(one.ingredient for one in items if one.price_per_100_g is None),
    )


def _together(prices: Sequence[float | None]) -> float | None:
    known = [one for one in prices if one is not None]
    return sum(known) if known else None


def _item(dose: PlannedDose, jars: Sequence[Jar]) -> ToBuy:
    mine = [jar for jar in jars if is_of(jar, dose)]
    takes_g = _takes_g(dose) / (grams_for_one(mine[0], dose) if mine else 1.0)
    left = [jar.mass_left_g for jar in mine if jar.mass_left_g is not None]
    left_g = sum(left) if left and len(left) == len(mine) else None
    buy_g = None if left_g is None else max(0.0, takes_g - left_g)
    price = next((jar.price_per_100_g for jar in mine if jar.price_per_100_g is not None), None)
    return ToBuy(
        dose.ingredient, dose.substance, takes_g, left_g, buy_g, price, _cost(takes_g, price), _cost(buy_g, price),
        tuple(jar.name for jar in mine),
    )  # fmt: skip


def _takes_g(dose: PlannedDose) -> float:
    """Grams out of the jar: a stock is made of more than the dose."""
    stocked = dose.weigh.how in STOCKED and dose.weigh.take_g is not None
    return dose.weigh.take_g or dose.mass_g.aim if stocked else dose.mass_g.aim


def _cost(mass_g: float | None, price_per_100_g: float | None) -> float | None:
    return None if mass_g is None or price_per_100_g is None else mass_g * price_per_100_g / GRAMS_PRICED


def is_of(jar: Jar, dose: PlannedDose) -> bool:
    """Whether a jar holds what a dose is of: the same substance, by whatever name or form."""
    return holds(jar, dose.substance)


def holds(jar: Jar, substance: str) -> bool:
    """Whether a jar holds a substance, by whatever name or form."""
    if jar.substance.casefold() == substance.casefold():
        return True
    one, other = find(jar.substance), find(substance)
    return one is not None and other is not None and one.key == other.key


def grams_for_one(jar: Jar, dose: PlannedDose) -> float:
    """Grams of what the recipe doses that one gram of the jar's form stands for."""
    return grams_of(jar, dose.substance)


def grams_of(jar: Jar, substance: str) -> float:
    """Grams of a substance, in the form it is named by, that one gram of the jar's form stands for."""
    packet = form_named(jar.form) or form_named(jar.substance)
    wanted = form_named(substance)
    return (1.0 if packet is None else packet.grams) / (1.0 if wanted is None else wanted.grams)


def price_text(price: float) -> str:
    """A price as it is written: two decimals, no currency, for none was told."""
    return f"{price:.2f}"


def shopping_lines(list_of: Shopping) -> list[str]:
    """The list in plain lines: what each takes, what is there, what to buy and for how much."""
    lines = [f"  {one.ingredient} ({one.substance}): {in_words(one)}" for one in list_of.items]
    if list_of.day_price is not None:
        rest = f", without {' and '.join(list_of.unpriced)}" if list_of.unpriced else ""
        lines.append(f"  the day uses up {price_text(list_of.day_price)} of what is in the jars{rest}")
    return lines


def in_words(one: ToBuy) -> str:
    """One ingredient's line: "takes 120 g, 80 g in the jar: buy 40 g, 1.80"."""
    takes = f"takes {show_mass(one.takes_g)}"
    if not one.jars:
        return f"{takes}; no jar of it in your kitchen"
    if one.left_g is None or one.buy_g is None:
        there = f"{takes}; your jar does not say how much is in it"
    elif one.buy_g > 0:
        there = f"{takes}, {show_mass(one.left_g)} in the jar: buy {show_mass(one.buy_g)}"
        return f"{there}, {price_text(one.buy_price)}" if one.buy_price is not None else there
    else:
        there = f"{takes} of the {show_mass(one.left_g)} in the jar"
    return f"{there}, {price_text(one.day_price)}" if one.day_price is not None else there
