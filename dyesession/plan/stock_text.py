"""The stock in plain lines and as plain tables: jars, what a colour costs, what to buy. Knows no screens."""

from collections.abc import Sequence
from typing import Any

from dyesession.plan.model import Plan
from dyesession.plan.shopping import in_words, price_text
from dyesession.plan.stock import Cost, JarNow, Stock
from dyesession.units import show_mass


def stock_lines(jars: Sequence[JarNow], plans: Sequence[Plan], stock: Stock, costs: Sequence[Cost]) -> list[str]:
    """Jars as they stand and after the plans, each plan with its cost, and what to buy for all of them."""
    lines = [f"{one.jar.name}: {jar_words(one)}{_after(stock, i)}" for i, one in enumerate(jars)]
    lines = lines or ["No jar is written down in your kitchen: add one as [[jar]], with its substance and mass_left."]
    for plan, cost, listed in zip(plans, costs, stock.lists, strict=True):
        lines += ["", f"{plan.recipe}, {show_mass(plan.fibre_mass_g)} of fibre: {cost_words(cost)}"]
        lines += [f"  {one.ingredient} {in_words(one)}" for one in listed.items]
    if plans:
        lines += ["", buy_words(stock)]
    return lines


def jar_words(one: JarNow) -> str:
    """ "230 g left (350 g on 2026-03-14, 120 g used since)"."""
    if one.jar.mass_left_g is None or one.left_g is None:
        return "how much is in it is not written down"
    if not one.jar.weighed_on:
        return f"{show_mass(one.left_g)} left, as the kitchen file says without a day"
    used = f"{show_mass(one.used_g)} used since on {_days(one.days)}" if one.used_g else "nothing used since"
    return f"{show_mass(one.left_g)} left ({show_mass(one.jar.mass_left_g)} on {one.jar.weighed_on}, {used})"


def cost_words(cost: Cost) -> str:
    """ "6.30, 2.63 for 100 g of fibre; without wash, which has no price"."""
    if cost.price is None or cost.per_100_g is None:
        return "nothing it takes has a price in your kitchen"
    without = f"; without {' and '.join(cost.unpriced)}, which no price was written for" if cost.unpriced else ""
    return f"{price_text(cost.price)}, {price_text(cost.per_100_g)} for 100 g of fibre{without}"


def buy_words(stock: Stock) -> str:
    """What to buy for all the plans together."""
    bought = [f"{show_mass(grams)} {substance}" for substance, grams in stock.buy_g.items()]
    price = f", {price_text(stock.buy_price)}" if stock.buy_price else ""
    said = f"To buy: {', '.join(bought)}{price}." if bought else "No jar runs short."
    none, silent = wanted_unknown(stock, jars=False), wanted_unknown(stock, jars=True)
    if none:
        said += f" In no jar of yours: {', '.join(f'{show_mass(g)} {name}' for name, g in none.items())}."
    if silent:
        said += f" Look yourself: {', '.join(f'{show_mass(g)} {name}' for name, g in silent.items())}; the jar does not say."
    return said


def wanted_unknown(stock: Stock, *, jars: bool) -> dict[str, float]:
    """Grams wanted of what no jar says how much is in it: where there is a jar of it, or where there is none."""
    found: dict[str, float] = {}
    for listed in stock.lists:
        for one in listed.items:
            if one.buy_g is None and bool(one.jars) == jars:
                found[one.substance] = found.get(one.substance, 0.0) + one.takes_g
    return found


def _after(stock: Stock, index: int) -> str:
    row = stock.jars[index]
    if not row.takes_g:
        return ""
    return f"; these plans take {show_mass(row.takes_g)}" + (
        f", then {show_mass(row.after_g)}" if row.after_g is not None else ""
    )


def _days(count: int) -> str:
    return "one day" if count == 1 else f"{count} days"


def stock_as_json(
    jars: Sequence[JarNow], plans: Sequence[Plan], stock: Stock, costs: Sequence[Cost]
) -> dict[str, Any]:
    """The stock as another program reads it: grams, prices without a currency, ISO dates."""
    return {
        "jars": [
            {
                "name": one.jar.name,
                "substance": one.jar.substance,
                "mass_written_g": one.jar.mass_left_g,
                "weighed_on": one.jar.weighed_on or None,
                "used_g": one.used_g,
                "left_g": one.left_g,
                "plans_take_g": row.takes_g,
                "after_g": row.after_g,
                "price_per_100_g": one.jar.price_per_100_g,
            }
            for one, row in zip(jars, stock.jars, strict=True)
        ],
        "plans": [
            {
                "recipe": plan.recipe,
                "fibre_g": plan.fibre_mass_g,
                "price": cost.price,
                "price_per_100_g": cost.per_100_g,
                "unpriced": list(cost.unpriced),
                "takes": [
                    {"ingredient": one.ingredient, "substance": one.substance, "takes_g": one.takes_g,
                     "buy_g": one.buy_g}
                    for one in listed.items
                ],
            }
            for plan, cost, listed in zip(plans, costs, stock.lists, strict=True)
        ],
        "buy_g": dict(stock.buy_g),
        "buy_price": stock.buy_price,
        "in_no_jar_g": wanted_unknown(stock, jars=False),
        "jar_does_not_say_g": wanted_unknown(stock, jars=True),
    }  # fmt: skip
