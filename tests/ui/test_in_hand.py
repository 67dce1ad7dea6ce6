"""What a typed figure is taken to be about, by what comes next and what was touched; without a screen."""

from days import Day

from dyesession.session import events as e
from dyesession.session.suggest import Wait
from dyesession.ui.in_hand import asked_for, in_hand, weighed_now


def until(day, wanted):
    for _ in range(400):
        said = day.suggest()
        if wanted(said):
            return said
        day.space()
    raise AssertionError("it never came")


def test_while_something_is_to_go_in_the_scales_are_for_that():
    day = Day()
    said = until(day, lambda one: isinstance(one, e.Added) and one.ingredient == "alum")
    hand = in_hand(day.state, said, "weight")
    assert weighed_now(day.state, said) == "weight" and hand.ingredient == "alum" and hand.vessel == "mordant pot"
    assert asked_for(day.state, "weight", hand) == "weight of alum, g"


def test_at_the_lift_and_after_it_the_scales_are_for_the_wet_fibre():
    day = Day()
    said = until(day, lambda one: isinstance(one, e.Lifted))
    hand = in_hand(day.state, said, "wet weight")
    assert weighed_now(day.state, said) == "wet weight" and (hand.lot, hand.vessel) == (said.lot, said.vessel)
    assert asked_for(day.state, "wet weight", hand) == f"{said.lot} wet, g"
    day.do(said)
    assert day.state.lot(said.lot).place == "out wet" and in_hand(day.state, Wait(None, ""), "wet weight").lot == said.lot


def test_a_pot_that_was_touched_comes_before_the_one_of_the_next_act():
    day = Day()
    said = until(day, lambda one: isinstance(one, e.Added) and one.ingredient == "alum")
    assert in_hand(day.state, said, "temperature").vessel == "mordant pot"
    assert in_hand(day.state, said, "temperature", "extract pot").vessel == "extract pot"
