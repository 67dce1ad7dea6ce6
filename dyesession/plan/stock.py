"""What stands in the jars, what the next plans take of it, what is to be bought for all of them, what a
colour costs.

Knows no shops and no currency; what one plan takes is for `shopping` to say. Grams left are as the kitchen
file has them, less what days have used since the day written there: nobody weighs a jar unasked.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from dyesession.kitchen.model import Jar
from dyesession.plan.model import Plan
from dyesession.plan.shopping import GRAMS_PRICED, Shopping, grams_of, holds, shopping

HUNDRED_G = 100.0


@dataclass(frozen=True)
class Used:
    """What one day took out of the jars: the day as ISO 8601, grams of each substance as they were weighed."""

    on: str
    grams: Mapping[str, float]


@dataclass(frozen=True)
class JarNow:
    """One jar as it stands now: what the kitchen file says, grams used since, on how many days.

    `left_g` is None where the file does not say how much is in it; without a day written there nothing is taken
    off, since nobody knows which days came after.
    """

    jar: Jar
    used_g: float
    days: int
    left_g: float | None

    @property
    def now(self) -> Jar:
        """The jar with what is left of it."""
        return replace(self.jar, mass_left_g=self.left_g)


def jars_now(jars: Sequence[Jar], used: Sequence[Used]) -> tuple[JarNow, ...]:
    """Every jar after the days since it was weighed; that day itself counts, for too little is found out sooner.

    Of two jars of one substance the one written down first is emptied first.
    """
    left, taken, days = list(jars), [0.0] * len(jars), [0] * len(jars)
    for day in sorted(used, key=lambda one: one.on):
        for substance, grams in day.grams.items():
            names = [one.name for one in jars if one.weighed_on and one.weighed_on <= day.on and holds(one, substance)]
            before = list(taken)
            per = next((grams_of(one, substance) for one in jars if one.name in names), 1.0)
            _pour_out(left, taken, names, grams / per)
            days = [count + (now > was) for count, now, was in zip(days, taken, before, strict=True)]
    return tuple(
        JarNow(jar, used_g, count, now.mass_left_g)
        for jar, used_g, count, now in zip(jars, taken, days, left, strict=True)
    )


@dataclass(frozen=True)
class JarStock:
    """One jar: grams in it, grams the plans take of it, grams left then; None where the jar does not say."""

    jar: Jar
    there_g: float | None
    takes_g: float
    after_g: float | None


@dataclass(frozen=True)
class Stock:
    """Every jar after the plans, each plan's own list, and what to buy for all, by substance in grams."""

    jars: tuple[JarStock, ...]
    lists: tuple[Shopping, ...]
    buy_g: Mapping[str, float]
    buy_price: float | None
    unknown: tuple[str, ...]


@dataclass(frozen=True)
class Cost:
    """What a colour cost: in all and per 100 g of fibre, None where nothing has a price; what has none."""

    price: float | None
    per_100_g: float | None
    unpriced: tuple[str, ...]


def stock_after(plans: Sequence[Plan], jars: Sequence[Jar]) -> Stock:
    """Go through the plans in their order, each finding the jars as the one before left them."""
    left, lists, takes = list(jars), [], [0.0] * len(jars)
    buy_g: dict[str, float] = {}
    prices: list[float] = []
    for plan in plans:
        listed = shopping(plan, left)
        lists.append(listed)
        for item in listed.items:
            if item.buy_g:
                buy_g[item.substance] = buy_g.get(item.substance, 0.0) + item.buy_g
            if item.buy_price:
                prices.append(item.buy_price)
            _pour_out(left, takes, item.jars, item.takes_g)
    rows = tuple(
        JarStock(jar, jar.mass_left_g, taken_g, now.mass_left_g)
        for jar, now, taken_g in zip(jars, left, takes, strict=True)
    )
    unknown = {one.substance for listed in lists for one in listed.items if one.buy_g is None}
    return Stock(rows, tuple(lists), buy_g, sum(prices) if prices else None, tuple(sorted(unknown)))


def _pour_out(left: list[Jar], takes: list[float], names: Sequence[str], grams: float) -> None:
    """Take grams out of the jars of these names, the first to its end before the next; never below nought."""
    for index, jar in enumerate(left):
        if jar.name not in names or grams <= 0:
            continue
        taken_g = grams if jar.mass_left_g is None else min(grams, jar.mass_left_g)
        takes[index] += taken_g
        grams -= taken_g
        if jar.mass_left_g is not None:
            left[index] = replace(jar, mass_left_g=jar.mass_left_g - taken_g)


def cost_of_plan(plan: Plan, jars: Sequence[Jar]) -> Cost:
    """What a plan's colour costs by the jars' own prices."""
    listed = shopping(plan, jars)
    return Cost(listed.day_price, _per_100_g(listed.day_price, plan.fibre_mass_g), listed.unpriced)


def cost_of_used(used_g: Mapping[str, float], fibre_g: float, jars: Sequence[Jar]) -> Cost:
    """What a day's colour cost: grams of each substance that went in, over so much fibre."""
    prices, unpriced = [], []
    for substance, grams in used_g.items():
        price = next((one.price_per_100_g for one in jars if holds(one, substance) and one.price_per_100_g), None)
        if price is None:
            unpriced.append(substance)
        else:
            prices.append(grams * price / GRAMS_PRICED)
    total = sum(prices) if prices else None
    return Cost(total, _per_100_g(total, fibre_g), tuple(unpriced))


def _per_100_g(price: float | None, fibre_g: float) -> float | None:
    return None if price is None or fibre_g <= 0 else price * HUNDRED_G / fibre_g
