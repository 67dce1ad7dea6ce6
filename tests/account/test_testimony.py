"""The program's own entry is flat, readable, and changes neither the facts nor the estimates."""

import tomllib

import pytest
from account.by_hand import Pages, all_known, one_dye_plan
from days import Day

from dyesession.account.ledger import reckon
from dyesession.account.testimony import accounted, rounded
from dyesession.session import events as e
from dyesession.session.fold import Entry, fold, opening_state


def strained() -> Pages:
    day = Pages(one_dye_plan("madder", "madder root", 50.0, wool_g=240.0))
    day.write_all((e.Filled("extract pot", 2.4), e.Added("madder", "extract pot", 120.0)))
    return day.write(e.Strained("extract pot", "dye pot", 1.8, "read"))


def test_one_row_a_bath_and_lot_with_its_band() -> None:
    day = strained()
    testimony = accounted(day.account(), 3)
    (row,) = testimony.baths
    assert set(row) == {"vessel", "volume_l", "lot", "mass_g", "low_g", "high_g"}
    assert (row["vessel"], row["lot"]) == ("dye pot", "madder")
    assert row["volume_l"] == pytest.approx(1.8, rel=0.02)
    assert row["low_g"] < row["mass_g"] < row["high_g"]
    assert testimony.after == 3
    assert testimony.how == "modelled"


def test_every_row_is_flat_enough_for_an_inline_table() -> None:
    day = Day()
    day.until(e.Closed)
    testimony = accounted(reckon(day.plan, day.entries, day.opened), day.entries[-1].n)
    for row in (*testimony.baths, *testimony.dyestuffs, *testimony.fibres):
        inline = ", ".join(
            f"{key} = {str(value).lower() if value is True else repr(value)}" for key, value in row.items()
        )
        assert tomllib.loads(f"row = {{{inline}}}".replace("'", '"'))["row"] == dict(row)


def test_a_kept_bath_and_plain_water_have_rows_too() -> None:
    day = strained().write(e.Kept("dye pot", "old red")).write(e.Filled("dye pot", 4.0, "read"))
    rows = accounted(day.account(all_known("madder")), 5).baths
    assert [(row["vessel"], row.get("kept"), row.get("lot")) for row in rows] == [
        ("dye pot", None, None),
        ("old red", True, "madder"),
    ]


def test_a_log_can_hold_it_and_give_it_back() -> None:
    testimony = accounted(strained().account(), 3)
    assert e.event_from_fields("account", e.event_fields(testimony)) == testimony


def test_the_facts_are_the_same_with_and_without_it() -> None:
    day = strained()
    shown = Entry(4, day.clock.now(), accounted(day.account(), 3))
    opening = opening_state(day.plan)
    with_it = fold(opening, (*day.entries, shown), day.opened)
    without = fold(opening, day.entries, day.opened)
    assert (with_it.vessels, with_it.dyestuffs, with_it.flags) == (
        without.vessels,
        without.dyestuffs,
        without.flags,
    )


def test_logged_numbers_have_three_figures() -> None:
    assert rounded(71.2345) == 71.2
    assert rounded(0.012345) == 0.0123
    assert rounded(1234.5) == 1230.0
    assert rounded(0.0) == 0.0
