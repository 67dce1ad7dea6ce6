"""What stands in the jars after the next plans, what to buy for all of them, what a colour costs."""

from dataclasses import replace

import pytest
from days import madder_plan
from hypothesis import given
from hypothesis import strategies as st

from dyesession.kitchen.model import Jar
from dyesession.plan.shopping import shopping
from dyesession.plan.stock import Used, cost_of_plan, cost_of_used, jars_now, stock_after
from dyesession.plan.stock_text import jar_words, stock_as_json, stock_lines

MADDER, ALUM = Jar("madder jar", "madder root", price_per_100_g=6.0, mass_left_g=300.0), Jar(
    "alum tin", "potassium alum", price_per_100_g=1.5, mass_left_g=500.0
)


def test_three_plans_are_taken_one_after_the_other_from_the_same_jar() -> None:
    found = stock_after([madder_plan()] * 3, [MADDER, ALUM])
    madder, alum = found.jars
    assert (madder.takes_g, madder.after_g) == (300.0, 0.0)
    assert alum.after_g == pytest.approx(500.0 - 3 * 28.8)
    assert found.buy_g["madder root"] == pytest.approx(60.0)
    assert found.buy_price == pytest.approx(60.0 * 0.06)
    assert "cream of tartar" in found.unknown and "madder root" not in found.unknown
    assert [one.items[0].buy_g for one in found.lists] == [None, None, None] or len(found.lists) == 3


def test_one_plan_takes_what_its_own_shopping_list_says() -> None:
    plan = madder_plan()
    [listed] = stock_after([plan], [MADDER, ALUM]).lists
    assert listed == shopping(plan, [MADDER, ALUM])


def test_a_jar_that_does_not_say_how_much_is_in_it_stays_unknown() -> None:
    [jar] = stock_after([madder_plan()], [replace(MADDER, mass_left_g=None)]).jars
    assert jar.after_g is None and jar.takes_g == pytest.approx(120.0)


def test_a_second_jar_is_opened_when_the_first_is_empty() -> None:
    second = replace(MADDER, name="new jar", mass_left_g=100.0)
    first = replace(MADDER, mass_left_g=50.0)
    rows = stock_after([madder_plan()], [first, second]).jars
    assert [one.takes_g for one in rows] == [50.0, 70.0]


@given(st.floats(0.0, 2000.0), st.integers(0, 6))
def test_nothing_is_taken_that_is_not_there_and_what_is_short_is_bought(there_g: float, count: int) -> None:
    found = stock_after([madder_plan()] * count, [replace(MADDER, mass_left_g=there_g)])
    [jar] = found.jars
    wanted = 120.0 * count
    assert jar.after_g == pytest.approx(max(0.0, there_g - wanted), abs=1e-6)
    assert found.buy_g.get("madder root", 0.0) == pytest.approx(max(0.0, wanted - there_g), abs=1e-6)


def test_a_colour_has_its_cost_per_100_g_of_fibre_and_says_what_has_no_price() -> None:
    cost = cost_of_plan(madder_plan(), [MADDER, ALUM])
    assert cost.price == pytest.approx(120 * 0.06 + 28.8 * 0.015)
    assert cost.per_100_g == pytest.approx(cost.price / 2.4)
    assert set(cost.unpriced) == {"wash", "tartar"}
    used = cost_of_used({"madder": 120.0, "moon dust": 3.0}, 240.0, [MADDER])
    assert used.price == pytest.approx(7.2) and used.per_100_g == pytest.approx(3.0)
    assert used.unpriced == ("moon dust",)
    assert cost_of_used({}, 0.0, []).per_100_g is None


DATED = replace(MADDER, weighed_on="2026-03-10")


def test_a_jar_holds_what_was_written_down_less_what_later_days_used() -> None:
    days = [Used("2026-03-09", {"madder root": 50.0}), Used("2026-03-10", {"madder root": 30.0, "weld": 9.0}),
            Used("2026-03-20", {"madder root": 20.0})]  # fmt: skip
    [now] = jars_now([DATED], days)
    assert (now.used_g, now.days, now.left_g) == (50.0, 2, 250.0)
    assert now.now.mass_left_g == 250.0 and jar_words(now) == "250 g left (300 g on 2026-03-10, 50 g used since on 2 days)"


def test_a_jar_without_a_day_or_without_grams_is_left_as_it_is_written() -> None:
    days = [Used("2026-03-20", {"madder root": 20.0})]
    undated, unweighed = jars_now([MADDER], days)[0], jars_now([replace(DATED, mass_left_g=None)], days)[0]
    assert (undated.used_g, undated.left_g) == (0.0, 300.0) and "without a day" in jar_words(undated)
    assert unweighed.left_g is None and "not written down" in jar_words(unweighed)


def test_what_days_used_comes_out_of_the_first_jar_before_the_second_and_never_below_nothing() -> None:
    first, second = replace(DATED, mass_left_g=30.0), replace(DATED, name="new jar", mass_left_g=100.0)
    days = [Used("2026-03-20", {"madder root": 50.0}), Used("2026-03-21", {"Rubia tinctorum": 500.0})]
    found = jars_now([first, second], days)
    assert [one.used_g for one in found] == [30.0, 100.0] and [one.left_g for one in found] == [0.0, 0.0]
    assert [one.days for one in found] == [1, 2]


def test_the_lines_say_what_is_short_what_is_in_no_jar_and_what_it_costs() -> None:
    jars = jars_now([replace(DATED, mass_left_g=100.0), ALUM], [])
    left = [one.now for one in jars]
    plans = [madder_plan()]
    stock, costs = stock_after(plans, left), [cost_of_plan(madder_plan(), left)]
    text = "\n".join(stock_lines(jars, plans, stock, costs))
    assert "To buy: 20 g madder root, 1.20." in text and "3.18 for 100 g of fibre" in text
    assert "In no jar of yours:" in text and "14.4 g cream of tartar" in text
    told = stock_as_json(jars, plans, stock, costs)
    assert told["buy_g"] == {"madder root": pytest.approx(20.0)} and told["jars"][0]["after_g"] == 0.0
    assert told["in_no_jar_g"]["cream of tartar"] == pytest.approx(14.4)
