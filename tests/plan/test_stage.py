"""A stage named at the stove finds its place: after what it needs, with water and heat as the kitchen has
them.
"""

from dataclasses import replace

import pytest
from plan.days import KITCHEN, wool

from dyesession.kitchen import Kitchen, Pot
from dyesession.plan import PlanError, improvised
from dyesession.plan.changes import After, NewIngredient, NewStep
from dyesession.plan.model import FibreLot, PlannedAddition, PlannedStep
from dyesession.plan.stage import with_stage
from dyesession.plan.today import StepToday, Today, unlike
from dyesession.plan.words import letter_of
from dyesession.recipe.model import Heat

LOTS = (FibreLot("skein", "wool", 200.0),)


def a_stage(name, stage="dye", vessel="pot", **more):
    return PlannedStep(name, stage, "fibre", vessel, name, **more)


def placed(today, step, boiling_c=100.0):
    return [one.step for one in with_stage(today, step, (), boiling_c) if isinstance(one, NewStep)]


def test_a_first_bath_has_the_usual_water_and_a_stage_in_a_full_pot_none_of_its_own():
    [first] = placed(Today((), LOTS), a_stage("mordant", "mordant", enter=("fibre",)))
    assert first.water_l == pytest.approx(6.0)
    [later] = placed(Today((), LOTS, full=frozenset({"pot"})), a_stage("dye", enter=("fibre",)))
    assert later.water_l is None and not later.fresh_water


def test_a_pot_is_filled_to_two_thirds_at_most():
    [step] = placed(Today((), LOTS, capacity_l={"pot": 6.0}), a_stage("dye", enter=("fibre",)))
    assert step.water_l == pytest.approx(4.0)


def test_a_dye_bath_after_a_scour_in_the_same_pot_is_fresh():
    scour = StepToday(a_stage("scour", "scour"), "over", ("skein",), True)
    [step] = placed(Today((scour,), LOTS, full=frozenset({"pot"})), a_stage("dye", enter=("fibre",)))
    assert step.fresh_water and step.water_l == pytest.approx(6.0)


def test_an_extraction_without_dyestuff_is_the_same_dyestuff_once_more():
    first = a_stage("extract", "extract", "small", add=(PlannedAddition("madder", 100.0),), water_l=2.2)
    today = Today((StepToday(first, "over"),), LOTS)
    extract, strain = placed(today, a_stage("extract again", "extract", "small", into="pot"))
    assert (extract.again, extract.of, extract.water_l, extract.fresh_water) == (1, "extract", 2.2, True)
    assert (strain.stage, strain.after, strain.into, strain.again) == ("strain", ("extract again",), "pot", 1)


def test_an_extraction_has_twenty_litres_to_the_kilogram_of_dyestuff():
    extract, _ = placed(
        Today((), LOTS),
        a_stage("extract", "extract", "small", into="pot", add=(PlannedAddition("weld", 150.0),)),
    )
    assert extract.water_l == pytest.approx(3.0) and extract.lane == "liquor"


def test_rinsing_and_drying_to_come_wait_for_it_and_what_runs_with_the_same_fibre_is_waited_for():
    running = StepToday(a_stage("dye", enter=("fibre",)), "under way", ("skein",), True)
    rinse = StepToday(
        a_stage("rinse", "rinse", "bowl", after=("dye",), enter=("fibre",)), "to come", ("skein",)
    )
    changes = with_stage(
        Today((running, rinse), LOTS),
        a_stage("sadden", "modify", "iron pot", enter=("fibre",)),
        (NewIngredient("iron", "ferrous sulphate", "modifier"),),
        100.0,
    )
    assert changes[0] == NewIngredient("iron", "ferrous sulphate", "modifier")
    assert next(one.step for one in changes if isinstance(one, NewStep)).after == ("dye",)
    assert After("rinse", ("dye", "sadden")) in changes


def test_a_stage_after_the_rinse_does_not_make_the_rinse_wait_for_it():
    rinse = StepToday(a_stage("rinse", "rinse", "bowl", enter=("fibre",)), "to come", ("skein",))
    changes = with_stage(Today((rinse,), LOTS), a_stage("dip", "modify", after=("rinse",)), (), 100.0)
    assert not [one for one in changes if isinstance(one, After)]


def test_heat_is_capped_below_the_boil():
    heat = (Heat("to", 100.0, 45.0), Heat("hold", minutes=30.0))
    [step] = placed(Today((), LOTS), a_stage("dye", heat=heat), boiling_c=95.0)
    assert [one.temperature_c for one in step.heat] == [93.0, None]


def test_an_improvised_day_has_the_kitchens_pots_and_no_steps():
    plan = improvised([wool(100.0)], KITCHEN)
    assert plan.steps == () and plan.doses == () and plan.fibre_mass_g == 100.0
    assert [(one.letter, one.pot) for one in plan.vessels] == list(
        zip("ABCD", [one.name for one in KITCHEN.pots], strict=True)
    )
    assert plan.boiling_c < 99.0
    with pytest.raises(PlanError, match="air-dry"):
        improvised([replace(wool(100.0), air_dry=False)], KITCHEN)


def test_letters_go_on_after_z_and_names_are_numbered_from_two():
    pots = tuple(Pot(f"pot {i}", 5.0) for i in range(28))
    letters = [one.letter for one in improvised([wool(50.0)], Kitchen(pots=pots)).vessels]
    assert letters[25:] == ["Z", "A2", "B2"] and letter_of(0) == "A"
    assert unlike("dye", ["dye", "dye 2"]) == "dye 3"
