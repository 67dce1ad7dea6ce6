"""A bath of another day in the account of this one: its colour is there, goes onto fibre, and is read as any other."""

from dataclasses import replace

import pytest
from account.by_hand import Pages, one_dye_plan

from dyesession.account.estimate import unbalanced
from dyesession.account.mordant_bath import mordant_bath
from dyesession.account.say import line, sentences
from dyesession.account.say_answers import would_take_words
from dyesession.account.strengths import main_lot, strength_g_l
from dyesession.account.would_take import would_take
from dyesession.session import events as e
from dyesession.session.brought import Brought, for_log

MADDER = Brought("madder", "madder root", "dyestuff", 20.0, 8.0, 35.0)
ALUM = Brought("alum", "potassium alum", "mordant", 9.0, 6.0, 12.0)
LOT = "madder from the shelf"


def drawn(*brought: Brought, litres: float = 3.0) -> e.Drawn:
    return e.Drawn("dye pot", "old red", "2026-03-01-first-k7q2", litres, ("madder root",), "", for_log(brought), litres)


def poured(*brought: Brought) -> Pages:
    return Pages(one_dye_plan("weld", "weld", 50.0)).write(drawn(*brought))


def test_what_came_along_is_in_the_pot_with_its_band_and_is_no_dyestuff_to_extract() -> None:
    account = poured(MADDER, ALUM).account()
    bath = account.bath("dye pot")
    assert bath is not None and bath.volume_l.mean == pytest.approx(3.0)
    there = bath.grams(LOT)
    assert (there.low, there.mean, there.high) == (
        pytest.approx(8.0, rel=1e-3), pytest.approx(20.0, rel=1e-3), pytest.approx(35.0, rel=1e-3),
    )
    assert [one.lot for one in bath.dye] == [LOT] and [one.lot for one in bath.contents] == ["alum"]
    assert (bath.uses, bath.hue_may_drift) == (1, True)
    assert account.dyestuffs == () and account.dyestuff(LOT) is None
    said = [line(one) for one in sentences(account, one_dye_plan("weld", "weld", 50.0), "dye pot")]
    assert said[0].startswith("The dye pot holds the colour of 20 ± 14 g madder from the shelf") or "8 to 35 g" in said[0]


def test_fibre_takes_it_and_every_world_still_balances() -> None:
    day = poured(MADDER).write(e.Entered("first skein", "dye pot")).write(e.Begun("dye", early="the bath is there"))
    day.write(e.Lit("dye pot")).write(e.Reached("dye pot", 85.0)).write(e.Lifted("first skein", "dye pot"), 60.0)
    account, ledger = day.account(), day.ledger()
    skein = account.fibre("first skein")
    assert skein is not None
    [taken] = skein.taken
    bath = account.bath("dye pot")
    assert bath is not None
    assert taken.lot == LOT and taken.grams.mean > 5.0 and bath.grams(LOT).mean < 12.0
    off = unbalanced(ledger.held)
    assert set(off) == {"water", LOT} and max(max(map(abs, one)) for one in off.values()) < 1e-9
    [balance] = [one for one in account.balances if one.name == LOT]
    assert balance.brought.mean == pytest.approx(20.0, rel=1e-3) and abs(balance.unaccounted) < 1e-9


def test_a_dyestuff_of_the_same_name_weighed_today_stays_apart_from_it() -> None:
    day = Pages(one_dye_plan("madder", "madder root", 50.0)).write(drawn(MADDER))
    day.write(e.Filled("extract pot", 1.0)).write(e.Added("madder", "extract pot", 50.0))
    account = day.account()
    fresh, bath = account.dyestuff("madder"), account.bath("dye pot")
    assert fresh is not None and fresh.total_g == 50.0 and fresh.pulls == 0
    assert bath is not None and bath.grams("madder").mean == 0.0 and bath.grams(LOT).mean == pytest.approx(20.0, rel=1e-3)


def test_a_strength_read_beside_a_fresh_strain_narrows_it() -> None:
    plan = one_dye_plan("madder", "madder root", 50.0)
    day = Pages(plan).write(e.Filled("extract pot", 2.0)).write(e.Added("madder", "extract pot", 50.0))
    day.write(e.Begun("extract", early="now")).write(e.Lit("extract pot")).write(e.Reached("extract pot", 90.0))
    day.write(e.Filled("big bowl", 0.01), 60.0).write(e.Strained("extract pot", "big bowl")).write(drawn(MADDER))
    before = day.account().bath("dye pot")
    day.write(e.Read("dye pot", strength=0.5, against="first strain", how="matched", method="dilution match"))
    after = day.account().bath("dye pot")
    assert before is not None and after is not None
    assert after.grams(LOT).half_width < 0.85 * before.grams(LOT).half_width


def test_the_old_bath_answers_for_silk_as_soon_as_it_is_poured() -> None:
    found = would_take(poured(MADDER).account(), "dye pot", "silk", 80.0)
    assert found is not None
    assert "g of madder from the dye pot, " in line(would_take_words(found)[0])
    assert found.lot == LOT and 0.0 < found.grams.low < found.grams.mean < 35.0


def test_litres_put_right_afterwards_take_the_colour_with_them() -> None:
    day = poured(MADDER)
    day.write(e.Corrected(1, "it was half", changes=({"key": "volume_l", "value": 1.5},)))
    bath = day.account().bath("dye pot")
    assert bath is not None and bath.volume_l.mean == pytest.approx(1.5)
    assert bath.grams(LOT).mean == pytest.approx(10.0, rel=1e-3)


def test_wool_takes_alum_of_an_old_mordant_bath() -> None:
    day = poured(ALUM).write(e.Entered("first skein", "dye pot")).write(e.Begun("dye", early="mordant first"))
    day.write(e.Lit("dye pot")).write(e.Reached("dye pot", 85.0)).write(e.Lifted("first skein", "dye pot"), 60.0)
    found = mordant_bath(day.account(), "dye pot")
    assert found is not None and found.put_in_g == pytest.approx(9.0, rel=1e-3)
    assert found.left.mean < 8.0 and found.taken[0].grams.mean > 1.0


def test_a_pouring_that_tells_nothing_is_water_as_before() -> None:
    account = Pages(one_dye_plan("weld", "weld", 50.0)).write(replace(drawn(), brought=())).account()
    bath = account.bath("dye pot")
    assert bath is not None and bath.dye == () and bath.volume_l.mean == pytest.approx(3.0)


def test_an_old_bath_strengthened_with_fresh_liquor_of_its_dyestuff_is_of_one_strength() -> None:
    plan = one_dye_plan("madder", "madder root", 50.0)
    day = Pages(plan).write(e.Filled("extract pot", 2.0)).write(e.Added("madder", "extract pot", 50.0))
    day.write(e.Begun("extract", early="now")).write(e.Lit("extract pot")).write(e.Reached("extract pot", 90.0))
    day.write(drawn(MADDER), 60.0).write(e.Strained("extract pot", "dye pot"))
    held = day.ledger().held
    assert main_lot(held, "dye pot") in (LOT, "madder")
    pool = held.bath("dye pot").pool
    both = [a + b for a, b in zip(pool.grams(LOT), pool.grams("madder"), strict=True)]
    assert min(pool.grams(LOT)) > 0.0 and min(pool.grams("madder")) > 0.0
    for lot in (LOT, "madder"):
        found = strength_g_l(held, "dye pot", lot)
        assert found == pytest.approx([g / v for g, v in zip(both, pool.volume_l, strict=True)])
