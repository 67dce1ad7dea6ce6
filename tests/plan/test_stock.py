"""What stands in the jars after the next plans, what to buy for all of them, what a colour costs."""

from dataclasses import replace

import pytest
from days import madder_plan
from hypothesis import given
from hypothesis import strategies as st

from dyesession.kitchen.model import Jar
from dyesession.plan.shopping import shopping
from dyesession.plan.stock import cost_of_plan, cost_of_used, stock_after

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
