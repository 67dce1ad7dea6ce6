"""What a real day hands to `care`: ring, roof, lid, cooling, headspace, doses, and what is ground."""

from dataclasses import replace

import pytest
from days import NOBODY, Day, madder_plan

from dyesession.kitchen.model import Burner, Kitchen, Pot
from dyesession.plan import PlanError, Refused, improvised, lots_from_text
from dyesession.plan.cautions import heated_on
from dyesession.session import events as e
from dyesession.session.asking import care_now, reminders_for
from dyesession.session.situation import moments_of_step, situation_of

FIBRE = lots_from_text(["240 g wool"], "wool")


def day(**changes):
    return Day(replace(madder_plan(), **changes))


def at(one, command):
    return care_now(one.state, command, "", NOBODY)


def hot_mordant(one):
    """The mordant bath of a day at its heat, with the skeins in it."""
    one.until(e.Reached)
    while not (one.state.vessel("mordant pot").reached_c and one.state.lots_in("mordant pot")):
        one.space()
    return e.Lifted("large skein", "mordant pot")


@pytest.mark.parametrize("burner", ["camp stove", "charcoal"])
def test_a_fuel_stove_under_a_roof_is_cried_out_against_in_the_day_itself(burner):
    one = day(burner=burner)
    assert any("Its carbon monoxide kills" in text for text in reminders_for(one.state, "scour", NOBODY))
    outdoors = day(burner=burner, indoors=False)
    assert not any("monoxide" in text for text in reminders_for(outdoors.state, "scour", NOBODY))


@pytest.mark.parametrize("burner", ["camp stove", "charcoal"])
def test_a_fuel_stove_under_a_roof_is_refused_with_and_without_a_recipe(burner):
    kitchen = Kitchen(burners=(Burner("stove", None, burner),))
    with pytest.raises(Refused, match="carbon monoxide kills"):
        improvised(FIBRE, kitchen)
    outdoors = Kitchen(burners=(Burner("stove", None, burner, indoors=False),))
    assert improvised(FIBRE, outdoors).indoors is False
    assert issubclass(Refused, PlanError)


def test_a_microwave_counts_only_where_there_is_no_ring():
    oven, ring = Burner("oven", 800.0, "microwave"), Burner("ring", 1800.0, "electric")
    assert heated_on(Kitchen(burners=(oven, ring))) == ("electric", True)
    assert heated_on(Kitchen(burners=(oven,))) == ("microwave", True)
    assert heated_on(Kitchen()) == (None, None)
    assert any("wooden stick" in text for text in reminders_for(day(burner="microwave").state, "scour", NOBODY))


def test_how_long_a_bath_cools_is_said_before_hands_go_in_and_not_of_a_cold_one():
    one = day()
    lifting = hot_mordant(one)
    assert any("only when cool: 2 to 4 h from 85 °C down to 40 °C" in text for text in at(one, lifting))
    one.do(e.Read("mordant pot", temperature_c=38.0))
    assert not any("only when cool" in text for text in at(one, lifting))


def test_foam_is_held_against_the_room_above_the_liquor_that_is_really_there():
    one = day(doses=(*madder_plan().doses, replace(madder_plan().doses[0], ingredient="chalk", substance="chalk")))
    hot_mordant(one)
    one.do(e.Read("mordant pot", volume_l=9.0))
    chalk = e.Added("chalk", "mordant pot", 20.0, "weighed")
    assert any("up to 4.8 L gas, 3.0 L free" in text for text in at(one, chalk))


def test_a_pot_with_a_lid_is_told_to_be_left_ajar_over_foam_and_one_without_is_not():
    for lid, said in ((True, True), (False, False), (None, False)):
        plan = madder_plan()
        vessels = tuple(replace(vessel, lid=lid) for vessel in plan.vessels)
        chalk = replace(plan.doses[0], ingredient="chalk", substance="chalk")
        one = day(vessels=vessels, doses=(*plan.doses, chalk))
        hot_mordant(one)
        told = at(one, e.Added("chalk", "mordant pot", 5.0, "weighed"))
        assert any("leave the lid loose" in text for text in told) is said


def test_more_iron_in_several_goes_is_warned_of_as_one_dose():
    plan = madder_plan()
    one = day(doses=(*plan.doses, replace(plan.doses[1], ingredient="iron", substance="copperas")))
    hot_mordant(one)
    first = e.Added("iron", "mordant pot", 6.0, "weighed")
    assert not any("over the limit" in text for text in at(one, first))
    for lot in ("large skein", "small skein"):
        one.do(e.Lifted(lot, "mordant pot"))
    one.do(first)
    again = e.Added("iron", "mordant pot", 6.0, "weighed")
    assert any("5 % iron in B is over the limit of 4 %" in text for text in at(one, again))


def test_insects_are_ground_before_they_go_in():
    plan = madder_plan()
    doses = tuple(replace(one, substance="cochineal") if one.ingredient == "madder" else one for one in plan.doses)
    one = day(doses=doses)
    assert any("can start asthma" in text for text in reminders_for(one.state, "extract", NOBODY))
    assert not any("asthma" in text for text in reminders_for(day().state, "extract", NOBODY))
    situation = situation_of(one.state, e.Added("madder", "extract pot", 120.0), NOBODY)
    assert situation is not None and "grinds" in situation.actions


def test_what_is_in_already_is_not_spoken_of_as_still_to_be_weighed():
    one = day()
    begun = one.state.step("mordant")
    assert any(name == "potassium alum" for name, _ in moments_of_step(one.state, begun, NOBODY)[0].adding)
    hot_mordant(one)
    under_way = one.state.step("mordant")
    assert moments_of_step(one.state, under_way, NOBODY)[0].adding == ()
    assert not any("mask on" in text for text in care_now(one.state, None, "mordant", NOBODY))


def test_the_ring_and_the_lid_stand_in_the_log_and_come_back():
    from dyesession.plan import plan_for_log, plan_from_document

    pots = (Pot("big pot", 12.0, None, True, "stainless"),)
    plan = improvised(FIBRE, Kitchen(pots=pots, burners=(Burner("ring", 1800.0, "gas"),)))
    back = plan_from_document(plan_for_log(plan))
    assert back == plan and back.burner == "gas ring" and back.vessels[0].lid is True


def test_a_pot_that_has_yet_to_be_heated_is_not_said_to_be_hot():
    one = Day()
    while one.state.step("mordant").status != "running":
        one.space()
    assert "will be at 85 °C: one second burns" in " ".join(care_now(one.state, None, "mordant", NOBODY))
    while not one.state.vessel("mordant pot").on_heat:
        one.space()
    assert "will be at 85 °C: one second burns" in " ".join(care_now(one.state, None, "mordant", NOBODY))
    while one.state.step("mordant").segment < 1:
        one.space()
    assert "is at 85 °C: one second burns" in " ".join(care_now(one.state, None, "mordant", NOBODY))


def test_a_bath_that_cools_no_longer_boils_over():
    one = Day()
    heated = one.state.step("scour")
    assert any(moment.actions == ("heats",) for moment in moments_of_step(one.state, heated, NOBODY))
    cooling = replace(heated, segment=2)
    assert not any(moment.actions == ("heats",) for moment in moments_of_step(one.state, cooling, NOBODY))
