"""A colour repeated from its log: what was done rescaled, what is other called out, the days it goes back to."""

from dataclasses import replace
from datetime import datetime
from functools import cache
from pathlib import Path

import pytest
from daybook.logged import logged
from days import Day
from hypothesis import given, settings
from hypothesis import strategies as st

from dyesession.colour.depth import at_ratio
from dyesession.colour.typed import read_colour
from dyesession.daybook.repeating import NoSuchDepth, Repeated, repeat
from dyesession.daybook.towards import NoWayThere, towards
from dyesession.daybook.walk import walk
from dyesession.kitchen import kitchen_for_log
from dyesession.kitchen.model import Jar, Kitchen, Pot, Scale, TapWater
from dyesession.plan.model import FibreLot
from dyesession.recipe import check_recipe, load_recipe, recipe_from_document
from dyesession.rehearsal import rehearse
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay, read_day
from dyesession.storage import DISK
from dyesession.tomlfile import write_document

RECIPE = Path(__file__).resolve().parents[2] / "recipes" / "madder-brick-red-on-wool.toml"
START = datetime.fromisoformat("2026-03-14T09:00:00+01:00")
WOOL = (FibreLot("skein", "wool", 240.0, air_dry=True),)
SILK = (FibreLot("scarf", "silk", 90.0, air_dry=True),)
KITCHEN = Kitchen(
    scales=(Scale("letter scale", 0.1),),
    pots=(Pot("big pot", 15.0, material="stainless"),),
    elevation_m=100.0,
    thermometer=True,
    water=TapWater(80.0, None, 7.0),
    jars=(Jar("madder jar", "madder root", strength=1.0),),
)


@cache
def the_day() -> LoggedDay:
    """The madder day by hand, with a little too much madder and an alum dose put right afterwards."""
    day, wrong = Day(), 0
    amiss = {"alum": 18.8, "madder": 132.0}
    while amiss:
        one = day.suggest()
        if isinstance(one, e.Added) and one.ingredient in amiss:
            day.do(e.Added(one.ingredient, one.vessel, amiss.pop(one.ingredient), "weighed"))
            wrong = day.state.n if one.ingredient == "alum" else wrong
        else:
            assert day.state.status == "open"
            day.space()
    day.home()
    day.do(e.Corrected(wrong, "misread the scale", changes=({"key": "mass_g", "value": 28.8},)))
    header = {"recipe": {"name": day.plan.recipe}, "kitchen": kitchen_for_log(KITCHEN)}
    return logged(day, header)


def test_a_repeat_says_how_near_it_will_come_and_what_is_other_makes_that_wider() -> None:
    alike, other = again().expected, again(SILK).expected
    assert alike.mean == 1.0 and 0.6 < alike.low < 1.0 < alike.high < 1.6
    assert other.high / other.low > alike.high / alike.low
    half = again(depth=0.5).expected
    assert half.mean == 0.5 and half.high / half.low > alike.high / alike.low


def with_colours(undyed: str, dyed: str) -> LoggedDay:
    day = the_day()
    facts = (e.Read(lot="large skein", colour=undyed, wet=False), e.Cared("dry shade", "large skein", "", dyed))
    last = day.entries[-1]
    first = replace(day.entries[0], n=0, event=facts[0])
    return replace(day, entries=(first, *day.entries, replace(last, n=last.n + 1, event=facts[1])))


def test_a_target_on_the_dye_s_own_line_is_met_at_its_depth() -> None:
    day = with_colours("lab(86 0 11)", "lab(42 38 28)")
    ground, sample = read_colour("lab(86 0 11)"), read_colour("lab(42 38 28)")
    half = at_ratio(ground, sample, 0.5).lab
    found = towards(day.name, tuple(walk(day)), f"lab({half.lightness:.4f} {half.a:.4f} {half.b:.4f})")
    assert found.depth == pytest.approx(0.5, rel=0.01) and found.apart < 0.1
    off = towards(day.name, tuple(walk(day)), "lab(60 10 40)")
    assert off.apart > 5.0


def test_a_target_needs_both_colours_and_a_dye_that_goes_that_way() -> None:
    plain = tuple(walk(the_day()))
    with pytest.raises(NoWayThere, match="both dyed and undyed"):
        towards("a day", plain, "#a5564a")
    day = with_colours("lab(86 0 11)", "lab(42 38 28)")
    with pytest.raises(NoWayThere, match="comes near"):
        towards(day.name, tuple(walk(day)), "lab(95 0 2)")


def again(lots: tuple[FibreLot, ...] = WOOL, kitchen: Kitchen = KITCHEN, depth: float = 1.0) -> Repeated:
    return repeat(the_day(), lots, kitchen, depth=depth)


def told(found: Repeated) -> str:
    return "\n".join(f"{one.text}: {one.effect}" for one in found.changes)


def test_the_same_fibre_gets_what_went_in_and_not_what_was_planned() -> None:
    plan = again().plan
    assert plan.dose("madder").mass_g.aim == pytest.approx(132.0, rel=1e-4)
    assert plan.dose("alum").mass_g.aim == pytest.approx(28.8, rel=1e-4)
    assert "madder as it went in, 132 g, not 120 g as planned" in told(again())
    assert "corrections are carried out" in told(again())


@settings(max_examples=25, deadline=None)
@given(st.floats(5.0, 4000.0))
def test_doses_follow_the_fibre_exactly(mass_g: float) -> None:
    plan = again((FibreLot("lot", "wool", mass_g, air_dry=True),)).plan
    assert plan.dose("madder").mass_g.aim == pytest.approx(132.0 * mass_g / 240.0, rel=1e-4)
    assert plan.dose("tartar").mass_g.aim == pytest.approx(14.4 * mass_g / 240.0, rel=1e-4)


def test_another_fibre_is_called_out_with_the_depth_to_expect() -> None:
    found = again(SILK)
    [kind] = [one for one in found.changes if one.text == "silk for wool"]
    assert kind.factor is not None and kind.factor.low < kind.factor.mean < 1.0 < kind.factor.high
    assert kind.factor.mean == pytest.approx(0.775 / 0.85, rel=0.01)
    assert "a guess" in kind.effect and found.document["fibre"][0] == "silk"
    assert "90 g of fibre for 240 g" in told(found)


def test_a_weaker_jar_takes_more_and_an_unknown_one_widens() -> None:
    weaker = replace(KITCHEN, jars=(Jar("new jar", "madder", strength=0.8),))
    found = again(kitchen=weaker)
    assert found.plan.dose("madder").mass_g.aim == pytest.approx(132.0 / 0.8, rel=1e-4)
    assert "0.80 times as strong" in told(found)
    unknown = replace(KITCHEN, jars=(Jar("new jar", "madder"),))
    found = again(kitchen=unknown)
    assert found.plan.dose("madder").mass_g.aim == pytest.approx(132.0, rel=1e-4)
    [lot] = [one for one in found.changes if "another lot" in one.text]
    assert (lot.factor.low, lot.factor.high) == (0.65, 1.55)
    assert not [one for one in again().changes if one.about == "dyestuff"]


def test_another_kitchen_is_called_out() -> None:
    other = replace(
        KITCHEN,
        elevation_m=2500.0,
        thermometer=False,
        water=TapWater(250.0, None, 8.2),
        pots=(Pot("iron pot", 4.0, material="iron"),),
    )
    text = told(again(kitchen=other))
    assert "water is harder, 250 mg/L for 80" in text and "water has pH 8.2, then 7" in text
    assert "no thermometer now" in text and "water boils at" in text and "pot is too small" in text
    assert "bare iron shifts shades" in text
    assert not [one for one in again().changes if one.about == "kitchen" and "water" in one.text]


def test_half_the_depth_takes_half_the_dyestuff_and_says_how_sure_that_is() -> None:
    found = again(depth=0.5)
    assert found.plan.dose("madder").mass_g.aim == pytest.approx(66.0, rel=1e-4)
    assert found.plan.dose("alum").mass_g.aim == pytest.approx(28.8, rel=1e-4)
    [depth] = [one for one in found.changes if one.about == "depth"]
    assert depth.factor.low < 0.5 < depth.factor.high
    for odd in (0.0, -1.0, 9.0, float("nan")):
        with pytest.raises(NoSuchDepth, match="for example"):
            again(depth=odd)


def test_a_kept_bath_that_was_poured_in_is_called_out() -> None:
    day = Day()
    day.do(e.Drawn("dye pot", "madder bath 3", "2026-03-01-x-aaaa", 2.0, ("madder",)))
    day.home()
    found = repeat(logged(day, {"recipe": {"name": "x"}}), WOOL, KITCHEN)
    assert "2 L of the kept bath “madder bath 3” went into the dye pot" in told(found)


def test_without_other_fibre_the_day_s_own_is_taken() -> None:
    found = again(())
    assert [(one.name, one.mass_g) for one in found.plan.lots] == [("large skein", 165.0), ("small skein", 75.0)]
    assert not [one for one in found.changes if one.about == "fibre"]


def test_the_recipe_is_a_sound_file(tmp_path: Path) -> None:
    file = tmp_path / "again.toml"
    file.write_text(write_document(again(SILK).document), "utf-8")
    assert check_recipe(file) == []
    assert load_recipe(file).name == "Madder brick red on wool, 14 March 2026"


def test_a_repeat_of_a_repeat_keeps_its_lineage(tmp_path: Path) -> None:
    kitchen = Kitchen(scales=(Scale("letter scale", 0.1),))
    first = rehearse(load_recipe(RECIPE), WOOL, kitchen, tmp_path, storage=DISK, start=START).path
    days = [read_day(DISK, first)]
    for _ in range(2):
        found = repeat(days[-1], WOOL, kitchen)
        recipe = recipe_from_document(found.document, "here")
        path = rehearse(recipe, WOOL, kitchen, tmp_path, storage=DISK, start=START).path
        days.append(read_day(DISK, path))
    found = repeat(days[-1], SILK, kitchen)
    assert found.lineage == (days[2].name, days[1].name, days[0].name)
    assert found.document["name"] == "Madder brick red on wool, 14 March 2026"
    assert all(one in found.document["source"] for one in found.lineage)
    assert found.plan.dose("madder").mass_g.aim == pytest.approx(45.0, rel=0.005)
    assert [one.again for one in found.plan.steps if one.stage == "extract"] == [0, 1, 2]
