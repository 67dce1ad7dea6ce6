"""When a question stands before an act, how often in a day, and what becomes of one that was put off."""

from dataclasses import replace

import pytest
from days import NOBODY, Day, madder_plan

from dyesession.care import ASKS_PER_DAY
from dyesession.session import events as e
from dyesession.session.asking import BELIEVED_WITHIN_C, COMES_BACK_S, Ask, ask_before


def at_the_strain():
    day = Day()
    return day, day.until(Ask)


def test_what_is_put_off_and_not_done_is_asked_about_once_more_and_no_oftener():
    day, ask = at_the_strain()
    day.do(ask.not_now())
    assert day.suggest() == ask.then
    day.pass_minutes(COMES_BACK_S / 60 - 1)
    assert ask_before(replace(day.state, now_s=day.now_s), ask.then, NOBODY) is None
    day.pass_minutes(1)
    again = ask_before(replace(day.state, now_s=day.now_s), ask.then, NOBODY)
    assert again is not None and again.key == ask.key
    day.do(again.not_now())
    day.pass_minutes(60)
    assert ask_before(replace(day.state, now_s=day.now_s), ask.then, NOBODY) is None


def test_what_was_answered_after_it_was_put_off_does_not_come_back():
    day, ask = at_the_strain()
    day.do(ask.not_now())
    day.pass_minutes(COMES_BACK_S / 60)
    day.do(ask.answered(temperature_c=70.0))
    day.pass_minutes(COMES_BACK_S / 60 * 2)
    assert ask_before(replace(day.state, now_s=day.now_s), ask.then, NOBODY) is None


def bleach_day():
    plan = madder_plan()
    bleach, vinegar = (
        replace(plan.doses[1], ingredient=name, substance=name) for name in ("household bleach", "vinegar")
    )
    return Day(replace(plan, doses=(*plan.doses, bleach, vinegar)))


def test_two_things_that_must_never_meet_are_asked_about_however_much_was_asked():
    day = bleach_day()
    day.until(e.Reached)
    vessel = next(one.name for one in day.state.vessels if one.bath and not day.state.lots_in(one.name))
    day.do(e.Added("vinegar", vessel, 50.0))
    tired = replace(day.state, answered=tuple(f"question {n}" for n in range(ASKS_PER_DAY)))
    ask = ask_before(tired, e.Added("household bleach", vessel, 20.0), NOBODY)
    assert ask is not None and "This must not be" in ask.question
    assert ask_before(tired, e.Added("alum", vessel, 20.0), NOBODY) is None


def test_a_fifth_hot_bath_is_reminded_of_and_not_asked_about():
    day, ask = at_the_strain()
    four = replace(day.state, answered=tuple(f"question {n}" for n in range(ASKS_PER_DAY)))
    three = replace(four, answered=four.answered[1:])
    assert ask_before(three, ask.then, NOBODY) is not None
    assert ask_before(four, ask.then, NOBODY) is None


@pytest.mark.parametrize(
    ("given_c", "believed"),
    [(70.0, True), (70.0 - BELIEVED_WITHIN_C, True), (70.0 - BELIEVED_WITHIN_C - 1, False), (7.0, False), (96.0, False)],
)
def test_an_answer_far_from_what_was_looked_for_is_doubted_by_its_number(given_c, believed):
    _, ask = at_the_strain()
    doubt = ask.doubt(given_c)
    assert (doubt == "") is believed
    assert believed or (f"{given_c:g} °C" in doubt and "70 °C" in doubt)
