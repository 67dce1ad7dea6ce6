"""A kept bath chosen for a step: poured in when the step says so, before the rest of its water."""

from dataclasses import replace

import pytest
from days import NOBODY, Day, madder_plan

from dyesession.plan.changes import Draws, change_for_log, change_from_log
from dyesession.session import events as e
from dyesession.session.engine import Refused
from dyesession.session.suggest import suggest
from dyesession.session.words_past import change_words

LABEL, KEPT_BY = "madder bath 4", "2026-03-01-first-k7q2"


def chosen(day: Day, litres: float | None = 2.0) -> Day:
    draws = Draws("dye", LABEL, KEPT_BY, litres, ("madder root",), "2026-03-20")
    day.do(e.Replanned("draw", "dye", "chosen at the shelf", changes=(change_for_log(draws),)))
    return day


def told(day: Day) -> list[e.Event]:
    return [one.event for one in day.entries]


def of_the_dye_pot(day: Day) -> list[e.Event]:
    waters = e.Drawn | e.Filled | e.ToppedUp | e.Entered | e.Discarded
    return [one for one in told(day) if isinstance(one, waters) and one.vessel == "dye pot"]


def only_dye(**how: object) -> Day:
    plan = madder_plan()
    dye = next(one for one in plan.steps if one.name == "dye")
    return Day(replace(plan, steps=(replace(dye, after=(), **how),)))  # type: ignore[arg-type]


def test_it_goes_in_when_the_dyeing_begins_and_not_before_and_the_rest_is_topped_up() -> None:
    day = chosen(Day())
    day.home()
    kinds = [one.kind for one in told(day)]
    drew = next(one for one in told(day) if isinstance(one, e.Drawn))
    assert drew == e.Drawn("dye pot", LABEL, KEPT_BY, 2.0, ("madder root",), "2026-03-20")
    begun = next(n for n, one in enumerate(told(day)) if isinstance(one, e.Begun) and one.step == "dye")
    assert kinds.index("drawn") > begun and kinds.count("drawn") == 1
    first = of_the_dye_pot(day)[:3]
    assert [one.kind for one in first] == ["drawn", "topped-up", "entered"]
    assert isinstance(first[1], e.ToppedUp) and first[1].to_l == 7.2


def test_into_an_empty_pot_it_comes_first_and_the_water_is_topped_up_to_the_mark() -> None:
    day = chosen(only_dye())
    day.space()
    day.space()
    day.space()
    assert [one.kind for one in of_the_dye_pot(day)] == ["drawn", "topped-up"]
    assert (vessel := day.state.vessel("dye pot")) is not None and vessel.bath is not None
    assert vessel.bath.volume_l == 7.2 and vessel.bath.uses == 1


@pytest.mark.parametrize("litres", [7.15, 9.0])
def test_where_it_is_as_much_as_the_step_wants_no_water_follows(litres: float) -> None:
    day = chosen(only_dye(), litres)
    for _ in range(4):
        day.space()
    assert [one.kind for one in of_the_dye_pot(day)][:2] == ["drawn", "entered"]


def test_a_step_without_water_of_its_own_still_waits_for_the_bath() -> None:
    day = chosen(only_dye(water_l=None))
    day.space()
    day.space()
    assert [one.kind for one in of_the_dye_pot(day)] == ["drawn"]


def test_a_used_bath_is_put_by_before_the_kept_one_goes_in() -> None:
    day = chosen(only_dye(fresh_water=True))
    day.do(e.Filled("dye pot", 3.0))
    for _ in range(4):
        day.space()
    assert [one.kind for one in of_the_dye_pot(day)] == ["filled", "discarded", "drawn", "topped-up"]


def test_fibre_is_lifted_before_the_bath_is_poured_in() -> None:
    day = chosen(only_dye())
    day.space()
    day.do(e.Entered("small skein", "dye pot"))
    assert suggest(day.state, day.state.now_s, NOBODY) == e.Lifted("small skein", "dye pot")


def test_a_hand_that_fills_the_pot_itself_is_not_asked_for_the_bath() -> None:
    day = chosen(only_dye())
    day.space()
    day.do(e.Filled("dye pot", 7.2))
    day.space()
    assert all(not isinstance(one, e.Drawn) for one in told(day))


def test_a_bath_poured_in_early_by_hand_is_not_asked_for_again() -> None:
    day = chosen(only_dye())
    day.do(e.Drawn("dye pot", LABEL, KEPT_BY, 2.0, ("madder root",)))
    day.space()
    day.space()
    assert [one.kind for one in of_the_dye_pot(day)] == ["drawn", "topped-up"]


def test_once_the_step_has_its_water_a_bath_can_no_longer_be_chosen_for_it() -> None:
    day = only_dye()
    day.space()
    day.do(e.Filled("dye pot", 7.2))
    with pytest.raises(Refused, match="has its liquor already"):
        chosen(day)


def test_the_log_holds_it_and_says_it_in_words() -> None:
    draws = Draws("dye", LABEL, KEPT_BY, None, ("madder root", "potassium alum"), "2026-03-20")
    assert change_from_log(change_for_log(draws)) == draws
    said = change_words(e.Replanned("draw", "dye", "chosen", changes=(change_for_log(draws),)))
    assert said == (f"all of the kept bath {LABEL} of {KEPT_BY} into dye, before its water",)
