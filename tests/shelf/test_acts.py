"""What is done to kept baths between two dye days: each act in a log of its own, folded back into the shelf."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from daybook.written import written
from days import MORNING, Day

from dyesession.account import Account, reckon
from dyesession.clock import SteppingClock
from dyesession.kitchen.model import Kitchen
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay, read_day
from dyesession.shelf import (
    KeptBath,
    Shelf,
    ShelfAct,
    ShelfRefused,
    adding_of,
    correction,
    discard,
    drawn,
    pool,
    read_again,
    shelf_of,
    top_up,
    write_act,
)
from dyesession.storage import DISK

FIRST = "2026-03-14-first-k7q2"
DYE, ALUM = "madder bath 4", "alum bath 3"
_ACCOUNTS: dict[tuple[str, int], Account] = {}


def once(day: LoggedDay) -> Account:
    key = (day.name, len(day.entries))
    if key not in _ACCOUNTS:
        _ACCOUNTS[key] = reckon(day.plan, day.entries, day.opened)
    return _ACCOUNTS[key]


class Room:
    """A folder of logs and a clock that is days on."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.clock = folder, SteppingClock(MORNING)
        day = Day()
        day.home()
        written(day, folder, FIRST)

    def shelf(self, days_on: int = 3) -> Shelf:
        days = [read_day(DISK, one) for one in sorted(self.folder.glob("*.toml"))]
        return shelf_of(days, date.fromordinal(MORNING.date().toordinal() + days_on), reckoned=once)

    def bath(self, label: str) -> KeptBath:
        found = self.shelf().bath(label)
        assert found is not None
        return found

    def do(self, act: ShelfAct) -> Path:
        self.clock.advance(2 * 86400.0)
        return write_act(DISK, self.folder, act, Kitchen(), self.clock)


@pytest.fixture
def room(tmp_path: Path) -> Room:
    return Room(tmp_path)


def grams(bath: KeptBath, substance: str) -> tuple[float, float, float]:
    [found] = [one.grams for one in bath.inside if one.substance == substance]
    assert found is not None
    return found.low, found.mean, found.high


def test_topping_up_adds_water_and_keeps_the_colour_its_age_and_its_date(room: Room) -> None:
    before = room.bath(DYE)
    path = room.do(top_up(before, 1.5))
    after = room.bath(DYE)
    assert after.session == path.stem and after.drawn_from == (f"{DYE} ({FIRST})",)
    assert grams(after, "madder root") == pytest.approx(grams(before, "madder root"), rel=1e-3)
    assert after.left_l == pytest.approx(before.left_l + 1.5)
    assert (after.began_on, after.look_again, after.age_days) == (before.began_on, before.look_again, before.age_days)
    assert (after.uses, after.hue_may_drift, after.how) == (1, True, before.how)
    assert after.went_through == before.went_through
    wide, was = (one.volume_l.high - one.volume_l.low for one in (after, before))
    assert was <= wide < 1.2 * was  # the poured litre and a half is not exact either
    assert after.would_do is not None and after.would_do.depth <= before.would_do.depth + 0.1
    assert [one.label for one in room.shelf().baths].count(DYE) == 1


def test_a_recharged_alum_bath_wants_nothing_more_for_the_same_fibre(room: Room) -> None:
    before = room.bath(ALUM)
    [alum] = [one for one in before.recharge if one.ingredient == "alum"]
    added = adding_of(before, "potassium alum", alum.add.mean)
    assert (added.ingredient, added.role) == ("alum", "mordant")
    room.do(top_up(before, adding=[added]))
    after = room.bath(ALUM)
    assert grams(after, "potassium alum")[1] == pytest.approx(28.8, rel=0.02)
    [again] = [one for one in after.recharge if one.ingredient == "alum"]
    assert again.fibre_g == 240.0 and again.wanted_g == 28.8 and again.add.mean < 0.6


def test_a_bath_looked_at_holds_what_was_read_and_stands_where_it_was_put(room: Room) -> None:
    path = room.do(read_again(room.bath(ALUM), 5.0, 4.1, "in the cold box"))
    bath = room.bath(ALUM)
    assert bath.volume_l.mean == pytest.approx(5.0, abs=0.1) and bath.left_l == 5.0
    assert (bath.ph, bath.ph_on, bath.place) == (4.1, read_day(DISK, path).opened.at.date(), "in the cold box")
    room.do(read_again(bath, place="in the shed"))
    moved = room.bath(ALUM)
    assert (moved.ph, moved.place) == (4.1, "in the shed")
    room.do(top_up(moved, 1.0))
    assert (room.bath(ALUM).ph, room.bath(ALUM).place) == (None, "in the shed")


def test_cold_keeps_a_plant_bath_longer_than_a_room_does(room: Room) -> None:
    before = room.bath(DYE)
    room.do(read_again(before, place="in the cold box"))
    assert (room.bath(DYE).look_again - before.look_again).days == 5


def test_a_bath_may_be_called_something_else_from_now_on(room: Room) -> None:
    room.do(read_again(room.bath(DYE), label="the green jar"))
    assert room.shelf().bath(DYE) is None and room.bath("the green jar").uses == 1


def test_two_baths_poured_together_hold_what_both_held(room: Room) -> None:
    dye, alum = room.bath(DYE), room.bath(ALUM)
    act = pool(dye, alum, alum.left_l / 2, "both")
    assert any("drifted" in one.trigger for one in act.reminders)
    room.do(act)
    both, rest = room.bath("both"), room.bath(ALUM)
    total = grams(dye, "potassium alum")[1] + grams(alum, "potassium alum")[1] / 2
    assert grams(both, "potassium alum")[1] == pytest.approx(total, rel=1e-3)
    assert grams(rest, "potassium alum")[1] == pytest.approx(grams(alum, "potassium alum")[1] / 2)
    assert both.left_l == pytest.approx(dye.left_l + alum.left_l / 2)
    assert room.shelf().bath(DYE) is None and both.look_again == dye.look_again
    assert not room.shelf().told and both.went_through == dye.went_through


def test_bleach_is_never_poured_into_a_sour_bath(room: Room) -> None:
    dye, alum = room.bath(DYE), room.bath(ALUM)
    bleach = replace(alum, inside=(replace(alum.inside[0], substance="chlorine bleach"),))
    sour = replace(dye, inside=(replace(dye.inside[0], substance="vinegar"),))
    with pytest.raises(ShelfRefused, match="must not be poured together"):
        pool(sour, bleach)
    with pytest.raises(ShelfRefused, match="must not be poured together"):
        top_up(sour, adding=[adding_of(sour, "chlorine bleach", 20.0)])
    with pytest.raises(ShelfRefused, match="into itself"):
        pool(dye, dye)


@pytest.mark.parametrize("turned", [False, True], ids=["iron into madder", "madder into iron"])
def test_iron_in_either_of_two_baths_is_said_before_they_are_poured_together(room: Room, turned: bool) -> None:
    dye = room.bath(DYE)
    iron = replace(dye, label="iron bath", inside=(replace(dye.inside[0], substance="ferrous sulphate"),))
    act = pool(iron, dye) if turned else pool(dye, iron)
    assert any("iron bath has iron in it" in one.text for one in act.reminders)
    assert not any("has iron in it" in one.text for one in pool(dye, room.bath(ALUM)).reminders)


def test_a_bath_thrown_away_is_told_where_it_may_go_and_stands_no_longer(room: Room) -> None:
    act = discard(room.bath(ALUM))
    assert act.reminders[0].hazard == "waste"
    room.do(act)
    assert room.shelf().bath(ALUM) is None and room.shelf().bath(DYE) is not None


def test_every_act_is_a_closed_log_of_its_own_and_leaves_the_first_untouched(room: Room) -> None:
    before = (room.folder / f"{FIRST}.toml").read_bytes()
    path = room.do(top_up(room.bath(DYE), 1.0))
    day = read_day(DISK, path)
    assert day.at_the_shelf and not day.notes and day.entries[-1].event.kind == "closed"
    assert (room.folder / f"{FIRST}.toml").read_bytes() == before and path.stem != FIRST


def test_more_than_there_is_cannot_be_drawn_and_a_demo_bath_cannot_be_touched(room: Room) -> None:
    bath = room.bath(DYE)
    assert drawn(bath, "dye pot").volume_l == bath.left_l and drawn(bath, "dye pot", 1.0).session == FIRST
    assert "madder root" in drawn(bath, "dye pot").contents
    for litres in (bath.left_l + 0.1, 0.0, -1.0):
        with pytest.raises(ShelfRefused):
            drawn(bath, "dye pot", litres)
    with pytest.raises(ShelfRefused, match="demo"):
        discard(replace(bath, demo=True))
    with pytest.raises(ShelfRefused, match="Say what goes in"):
        top_up(bath)
    with pytest.raises(ShelfRefused, match="Say what is so"):
        read_again(bath)


def test_a_wrong_entry_is_put_right_in_the_log_that_has_it(room: Room) -> None:
    bath = room.bath(DYE)
    name, event = correction(bath, FIRST, 5.0, "")
    [kept] = [one for one in read_day(DISK, room.folder / f"{FIRST}.toml").entries if one.n == event.entry]
    assert name == FIRST and isinstance(kept.event, e.Kept) and kept.event.label == DYE
    with pytest.raises(ShelfRefused, match="neither kept"):
        correction(bath, "2026-01-01-other-aaaa", 5.0, "")
