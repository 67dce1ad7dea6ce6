"""Two days side by side: differences first, ranked by how much each matters for the colour."""

import json
from dataclasses import replace
from functools import cache

import pytest
from daybook.logged import logged
from days import Day, madder_plan
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.daybook.compared import comparison_as_json, comparison_lines
from dyesession.daybook.comparing import compare
from dyesession.kitchen import kitchen_for_log
from dyesession.kitchen.model import Kitchen, TapWater
from dyesession.plan.model import FibreLot, PlannedVessel
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay


@cache
def a_day(madder_g: float = 120.0, alum_g: float = 28.8, colour: str = "", hardness: float = 80.0) -> LoggedDay:
    day = Day()
    doses = {"madder": madder_g, "alum": alum_g}
    while day.state.status != "complete":
        one = day.suggest()
        if isinstance(one, e.Added) and one.ingredient in doses:
            day.do(e.Added(one.ingredient, one.vessel, doses[one.ingredient], "weighed"))
        else:
            day.space()
    if colour:
        day.do(e.Cared("dry shade", "large skein", "", colour))
    header = {"recipe": {"name": "m"}, "kitchen": kitchen_for_log(Kitchen(water=TapWater(hardness)))}
    return logged(day, header)


def test_a_day_beside_itself_shows_nothing_other() -> None:
    found = compare(a_day(), a_day())
    assert found.rows == () and any(one.startswith("madder root 50 %") for one in found.same)
    assert "Nothing that bears on the colour was other." in comparison_lines(found, 100)


def test_dyestuff_matters_more_than_mordant_and_mordant_more_than_water() -> None:
    found = compare(a_day(), a_day(60.0, 20.0, "", 200.0))
    assert [one.what for one in found.rows] == ["madder root", "potassium alum", "hardness of the water"]
    assert found.rows[0].factor == pytest.approx(0.5)
    assert (found.rows[0].one, found.rows[0].other) == ("50 %", "25 %")


@settings(max_examples=20, deadline=None)
@given(st.sampled_from([30.0, 90.0, 110.0, 240.0]), st.sampled_from([14.4, 26.0, 40.0]))
def test_turned_round_the_order_is_the_same_and_the_factors_are_turned_over(madder: float, alum: float) -> None:
    there, back = compare(a_day(), a_day(madder, alum)), compare(a_day(madder, alum), a_day())
    assert [one.what for one in there.rows] == [one.what for one in back.rows]
    for one, other in zip(there.rows, back.rows, strict=True):
        assert one.weight == pytest.approx(other.weight) and (one.one, one.other) == (other.other, other.one)
        assert one.factor is None or one.factor * other.factor == pytest.approx(1.0)


def test_how_they_came_out_stands_first_with_its_distance() -> None:
    found = compare(a_day(colour="#8b3a2b"), a_day(60.0, colour="#b06a50"))
    [lot] = found.came_out
    assert lot.lot == "large skein" and lot.apart > 8 and lot.plus_minus > 0
    lines = comparison_lines(found, 100)
    assert "large skein came out #8b3a2b | #b06a50" in lines[2]
    words = compare(a_day(colour="brick"), a_day(60.0, colour="#b06a50")).came_out[0]
    assert words.apart is None


def test_a_kept_bath_an_iron_pot_and_fewer_extractions_are_told() -> None:
    plan = Day().plan
    vessels = tuple(
        PlannedVessel(one.name, one.letter, one.pot, one.capacity_l, "iron" if one.name == "dye pot" else one.material)
        for one in plan.vessels
    )  # fmt: skip
    day = Day(replace(plan, vessels=vessels))
    day.do(e.Skipped("extract 3", "pale already"))
    day.do(e.Drawn("dye pot", "madder bath 3", "2026-03-01-x-aaaa", 2.0, ("madder",)))
    day.home()
    found = {one.what: one for one in compare(a_day(), logged(day)).rows}
    assert found["dye pot of"].other == "iron" and "shifts shades" in found["dye pot of"].effect
    assert found["kept bath poured in"].other == "madder bath 3"
    assert (found["extractions"].one, found["extractions"].other) == ("3", "2")
    assert found["extractions"].factor < 1.0


def test_lines_fit_and_json_is_plain() -> None:
    found = compare(a_day(), a_day(60.0, 20.0, "#b06a50", 200.0))
    for width in (40, 80):
        assert all(len(one) <= width for one in comparison_lines(found, width))
    assert json.loads(json.dumps(comparison_as_json(found)))["differences"][0]["what"] == "madder root"


def test_what_a_kept_bath_or_the_fibre_brought_along_is_not_called_none() -> None:
    plan = replace(madder_plan(), lots=(FibreLot("third skein", "wool", 60.0, mordanted="alum 12 %, in May"),), steps=())
    day = Day(plan)
    day.do(e.Drawn("dye pot", "madder bath 3", "2026-03-01-first-k7q2", 4.0, ("madder", "potassium alum")))
    rows = {one.what: one for one in compare(a_day(), logged(day)).rows}
    assert (rows["madder root"].one, rows["madder root"].other) == ("50 %", "in the kept bath")
    assert rows["potassium alum"].other == "before: alum 12 %, in May"
    assert rows["cream of tartar"].other == "none"
    assert rows["madder root"].effect == "as much as the bath still held"
    assert "extractions" not in rows, "a liquor that was poured in was extracted on another day"
