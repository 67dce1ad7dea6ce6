"""What the shelf tells a day: the bath that is drawn, and what could go into a bath that is still hot."""

from dataclasses import replace
from datetime import date

import pytest
from days import Day, madder_plan

from dyesession.errors import UserError
from dyesession.plan.model import FibreLot
from dyesession.session import events as e
from dyesession.session.from_shelf import (
    FromShelf,
    ShelfBath,
    ShelfFibre,
    beyond,
    completed,
    drawn_down,
    next_in,
)
from dyesession.session.offered import offered
from dyesession.session.typed import Hand, understand
from dyesession.session.typed_plan import read_change

SILK = ShelfFibre("silk hank", "silk", 40.0, "potassium alum 15 %", date(2026, 2, 1), "2026-02-01-silk-aaaa")
WOOL = ShelfFibre("third skein", "wool", 60.0, "potassium alum 12 %", date(2026, 3, 2), "2026-03-02-wool-bbbb")
BATH = ShelfBath("madder bath 4", "2026-03-01-first-k7q2", 5.0, ("madder root", "potassium alum"))


def lifted_from_the_dye_pot() -> Day:
    day = Day()
    while (step := day.state.step("dye")) is None or step.status != "complete":
        day.space()
    for lot in ("large skein", "small skein"):
        if day.state.vessel(day.state.lot(lot).place):
            day.do(e.Lifted(lot, "dye pot"))
    return day


@pytest.fixture(scope="module")
def lifted() -> Day:
    return lifted_from_the_dye_pot()


def test_at_the_lift_the_hot_bath_asks_for_mordanted_fibre_the_same_kind_first(lifted: Day) -> None:
    said = next_in(lifted.state, FromShelf(fibre=(SILK, WOOL)))
    assert said.startswith("D is still hot: what goes in next? third skein, 60 g wool")
    assert said.index("third skein") < said.index("silk hank") and "potassium alum 12 %" in said


def test_nothing_is_named_before_the_lift_or_into_a_cold_or_empty_pot(lifted: Day) -> None:
    shelf = FromShelf(fibre=(WOOL,))
    early = Day()
    while not early.state.lots_in("dye pot"):
        assert next_in(early.state, shelf) == ""
        early.space()
    assert next_in(early.state, shelf) == ""
    cold = lifted.state.with_vessel(
        "dye pot", lambda one: replace(one, temperature_c=25.0, temperature_s=lifted.state.now_s, reached_c=None, on_heat=False)
    )
    assert next_in(cold, shelf) == ""
    empty = lifted.state.with_vessel("dye pot", lambda one: replace(one, bath=None))
    assert next_in(empty, shelf) == ""
    assert next_in(lifted.state, FromShelf()) == ""


def test_once_it_joined_the_day_the_plan_itself_takes_it_in_and_nothing_more_is_asked(lifted: Day) -> None:
    day = Day()
    day.clock, day.opened, day.state, day.entries = lifted.clock, lifted.opened, lifted.state, lifted.entries
    joined = e.Replanned(
        "lot joins", why="the pot is hot", lot="third skein", fibre="wool", mass_g=60.0, mordanted="alum, 2 March"
    )
    state = day.do(joined)
    assert any("third skein" in state.wanted_lots(one) and one.status == "waiting" for one in state.steps)
    assert next_in(state, FromShelf(fibre=(WOOL,))) == ""


def test_a_draw_from_another_day_is_completed_with_that_day_its_litres_and_what_is_in_it() -> None:
    day, shelf = Day(), FromShelf(baths=(BATH,))
    made = completed(shelf, day.state, e.Drawn("dye pot", "Madder Bath 4"))
    assert made == e.Drawn("dye pot", "madder bath 4", BATH.session, 5.0, BATH.substances)
    some = completed(shelf, day.state, e.Drawn("dye pot", "madder bath 4", volume_l=2.0))
    assert isinstance(some, e.Drawn) and some.volume_l == 2.0
    told = e.Drawn("dye pot", "madder bath 4", "2026-01-01-other-aaaa", 1.0, ("weld",))
    assert completed(shelf, day.state, told) is told
    assert completed(shelf, day.state, e.Kept("dye pot", "madder bath 4")) == e.Kept("dye pot", "madder bath 4")


STANDS = FromShelf(baths=(BATH,))


def typed(day: Day, text: str, shelf: FromShelf = STANDS) -> e.Event:
    return understand("plan", text, day.state, Hand(), shelf).event


@pytest.mark.parametrize("text", ["pour Madder Bath 4 into D, 2 l", "draw the madder bath 4 into D 2 l because of its red"])
def test_typed_at_the_stove_a_bath_of_the_shelf_is_poured_in_with_what_is_in_it(text: str) -> None:
    drawn = typed(Day(), text)
    assert drawn == e.Drawn("dye pot", "madder bath 4", BATH.session, 2.0, BATH.substances)


def test_more_than_the_shelf_holds_is_refused_typed_or_not_and_what_was_drawn_today_counts() -> None:
    with pytest.raises(UserError, match=r"holds 5 L, so 7 L cannot be drawn"):
        typed(Day(), "pour madder bath 4 into D, 7 l")
    shelf = FromShelf(baths=(BATH,))
    drew = e.Drawn("dye pot", BATH.label, BATH.session, 3.5, BATH.substances)
    left = drawn_down(shelf, drew)
    assert left.baths == (replace(BATH, volume_l=1.5),) and beyond(left, drew) is not None and beyond(shelf, drew) is None
    assert drawn_down(left, replace(drew, volume_l=1.5)).baths == () == drawn_down(shelf, replace(drew, volume_l=None)).baths
    other = replace(drew, session="2026-03-02-other-aaaa")
    assert drawn_down(shelf, other) is not None and drawn_down(shelf, other).baths == (BATH,)


def test_what_must_never_meet_is_refused_and_the_gravest_caution_is_said_before_it_counts() -> None:
    day, bleach = Day(), replace(BATH, label="old bleach", substances=("chlorine bleach",))
    day.do(e.Filled("dye pot", 3.0))
    day.do(e.Added("tartar", "dye pot", 20.0))
    with pytest.raises(UserError, match="must not be poured together"):
        typed(day, "pour old bleach into D", FromShelf(baths=(bleach,)))
    said = understand("plan", "pour madder bath 4 into D", day.state, Hand(), FromShelf(baths=(BATH,))).echo
    assert BATH.session in said and "madder bath 4: lid off away" in said


def test_the_shelf_s_baths_are_rows_to_be_touched_and_then_the_pots() -> None:
    shelf = FromShelf(baths=(BATH,))
    row = next(one for one in offered("plan", "", Day().state, (), shelf) if one.types.startswith("pour"))
    assert row.types == "pour madder bath 4 into " and "5 L" in row.says
    assert any(one.types == "pour madder bath 4 into D" for one in offered("plan", row.types, Day().state, (), shelf))


def test_a_bath_kept_today_comes_before_one_of_the_same_label_on_the_shelf() -> None:
    day = Day(replace(madder_plan(), lots=(FibreLot("skein", "wool", 75.0),)))
    day.do(e.Filled("dye pot", 4.0))
    day.do(e.Kept("dye pot", "madder bath 4"))
    drawn = e.Drawn("dye pot", "madder bath 4")
    assert completed(FromShelf(baths=(BATH,)), day.state, drawn) is drawn


def test_nothing_more_is_offered_to_a_pot_whose_bath_was_saddened(lifted: Day) -> None:
    shelf = FromShelf(fibre=(WOOL,))
    dye = lifted.state.step("dye")
    assert next_in(lifted.state, shelf)
    saddened = lifted.state.with_step("dye", lambda one: replace(one, plan=replace(dye.plan, stage="modify")))
    assert next_in(saddened, shelf) == ""


@pytest.mark.parametrize(
    "text",
    [
        "pour madder bath 4 into D, 2 l", "pour madder bath 4 into D 2 l", "pour madder bath 4 2 l into D",
        "pour 2 l of madder bath 4 into D", "pour 2 L of the Madder Bath 4 into the dye pot", "pour madder bath 4, 2l into D",
    ],
)  # fmt: skip
def test_how_much_is_poured_may_be_said_first_last_or_in_the_middle(text: str) -> None:
    understood = read_change(text, Day().state, FromShelf((BATH,)))
    assert isinstance(understood.event, e.Drawn)
    assert (understood.event.label, understood.event.volume_l) == (BATH.label, 2.0)


def test_a_label_nobody_knows_is_answered_with_those_there_are_and_an_example() -> None:
    with pytest.raises(UserError, match="kept are madder bath 4; expected, for example, pour madder bath 4 into"):
        read_change("pour 2 l of weld into D", Day().state, FromShelf((BATH,)))
