"""The ledger follows the facts: corrections, what does not fit, fibre wet and dry, kept baths, bags,
powders.
"""

import time
from dataclasses import replace
from datetime import timedelta

import pytest
from account.by_hand import Pages, all_known, one_dye_plan
from days import Day, madder_plan

from dyesession.account.ledger import Ledger, reckon
from dyesession.account.model import Account, BathEstimate
from dyesession.account.unknowns import Starting, kept_name, known
from dyesession.session import events as e
from dyesession.session.fold import Entry

LIVE_STEP_S = 0.1


def bath(account: Account, name: str) -> BathEstimate:
    found = account.bath(name)
    assert found is not None, [one.vessel for one in account.baths]
    return found


def steeped(minutes: float = 0.0) -> Pages:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.0, "read"), e.Added("madder", "extract pot", 50.0)))
    return day.write(e.Strained("extract pot", "dye pot"), minutes)


def test_a_whole_day_by_space_ends_balanced_with_the_bath_kept() -> None:
    day = Day()
    day.home()
    account = reckon(day.plan, day.entries, day.opened)
    (dyed,) = [one for one in account.baths if one.dye]
    assert dyed.kept
    assert dyed.hue_may_drift
    madder = account.balance("madder")
    assert madder is not None
    assert madder.on_fibre.mean > madder.in_baths.mean > madder.thrown_away.mean > 0.0
    assert all(abs(one.unaccounted) < 1e-9 for one in (*account.balances, account.water))


def test_the_newest_entry_is_reckoned_while_the_dyer_blinks() -> None:
    day = Day()
    day.home()
    ledger = Ledger.start(day.plan, day.opened)
    took: list[float] = []
    for entry in day.entries:
        start = time.perf_counter()
        ledger = ledger.after(entry)
        ledger.account()
        took.append(time.perf_counter() - start)
    assert sorted(took)[len(took) // 2] < LIVE_STEP_S


def test_a_correction_refolds_what_follows() -> None:
    day = steeped()
    before = bath(day.account(all_known("madder")), "dye pot").volume_l.mean
    day.write(e.Corrected(1, "misread the jug", changes=({"key": "volume_l", "value": 1.5},)))
    after = day.account(all_known("madder"))
    assert bath(after, "dye pot").volume_l.mean == pytest.approx(before + 0.5)
    assert after.water.brought.mean == pytest.approx(1.5)


def test_a_struck_addition_was_never_made() -> None:
    day = steeped().write(e.Corrected(2, "wrong jar", strike=True))
    account = day.account()
    assert account.dyestuffs == ()
    assert bath(account, "dye pot").dye == ()


def test_an_entry_that_does_not_fit_is_told_and_not_counted() -> None:
    day = Pages(madder_plan()).write(e.Filled("dye pot", 4.0, "read"))
    account = day.write(e.Filled("dye pot", 4.0, "read")).account(all_known("madder"))
    assert account.water.brought.mean == pytest.approx(4.0)
    assert account.lines[-1].n == 2
    assert account.lines[-1].what.startswith("not counted: ")


def test_a_note_in_the_middle_of_a_hold_changes_no_number() -> None:
    def held(noted: bool) -> Account:
        day = Pages(one_dye_plan()).write_all((e.Filled("dye pot", 4.0), e.Lit("dye pot")))
        day.write(e.Reached("dye pot", 90.0))
        if noted:
            day.write(e.Noted("smells of hay"), 17.0)
        return day.write(e.Lit("dye pot", on=False), 43.0 if noted else 60.0).account()

    assert held(True).water.steamed_off == held(False).water.steamed_off
    assert held(True).water.steamed_off.mean > 0.1


def test_what_happened_earlier_is_counted_from_then() -> None:
    def lifted(happened: bool) -> float:
        day = steeped().write_all((e.Entered("first skein", "dye pot"), e.Lit("dye pot")))
        day.write(e.Reached("dye pot", 90.0))
        earlier = day.clock.now().at + timedelta(minutes=20) if happened else None
        day.write(e.Lifted("first skein", "dye pot"), 60.0, earlier)
        fibre = day.account(all_known("madder", rate=0.05)).fibre("first skein")
        assert fibre is not None
        return fibre.taken[0].grams.mean

    assert lifted(True) / lifted(False) == pytest.approx(0.6321 / 0.9502, rel=1e-3)


def test_a_strained_volume_that_was_read_is_believed_within_its_own_error_and_moves_no_colour() -> None:
    reckoned = steeped().account()
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.0, "read"), e.Added("madder", "extract pot", 50.0)))
    read = day.write(e.Strained("extract pot", "dye pot", 0.7, "read")).account()
    now, was = bath(read, "dye pot"), bath(reckoned, "dye pot")
    assert now.volume_l.mean == pytest.approx(0.7, rel=0.02)
    assert now.volume_l.low < 0.7 < now.volume_l.high
    assert now.volume_l.half_width < was.volume_l.half_width
    assert now.volume_how == "read"
    assert abs(read.water.unaccounted) < 1e-9
    assert now.grams("madder").mean == pytest.approx(was.grams("madder").mean, rel=0.05)


def test_a_planned_volume_is_no_reading() -> None:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.0, "read"), e.Added("madder", "extract pot", 50.0)))
    planned = day.write(e.Strained("extract pot", "dye pot", 0.2, "planned")).account()
    assert bath(planned, "dye pot").volume_l == bath(steeped().account(), "dye pot").volume_l


def test_topping_up_to_a_mark_adds_what_was_missing() -> None:
    day = steeped().write(e.ToppedUp("dye pot", to_l=3.0, how="read"))
    account = day.account(all_known("madder"))
    assert bath(account, "dye pot").volume_l.mean == pytest.approx(3.0)
    assert account.water.brought.mean == pytest.approx(1.0 + 3.0 - 1.0)


def test_topping_up_halves_the_strength_and_leaves_the_colour() -> None:
    day = steeped()
    before = bath(day.account(all_known("madder")), "dye pot")
    day.write(e.ToppedUp("dye pot", volume_l=1.0))
    after = bath(day.account(all_known("madder")), "dye pot")
    assert after.grams("madder") == before.grams("madder")
    assert after.strength_g_l.mean == pytest.approx(before.strength_g_l.mean / 2.0)


def test_fibre_that_comes_wet_brings_its_liquor_in() -> None:
    day = Pages(one_dye_plan())
    day.write_all((e.Filled("extract pot", 4.0), e.Added("tartar", "extract pot", 6.0)))
    day.write_all((e.Entered("first skein", "extract pot"), e.Lifted("first skein", "extract pot")))
    day.write_all((e.Filled("dye pot", 3.0), e.Entered("first skein", "dye pot")))
    account = day.account(all_known("cochineal", held=2.0))
    brought_l = 2.0 * 100.0 / 1.16 / 1000.0
    assert bath(account, "dye pot").volume_l.mean == pytest.approx(3.0 + brought_l)
    tartar = bath(account, "dye pot").contents
    assert [(one.lot, pytest.approx(6.0 * brought_l / 4.0)) for one in tartar] == [
        ("tartar", tartar[0].grams.mean)
    ]


def test_a_wet_weight_replaces_the_guess_for_this_lot_and_the_next() -> None:
    def lift(wet_mass_g: float | None) -> Account:
        day = Pages(one_dye_plan()).write_all((e.Filled("dye pot", 6.0), e.Entered("first skein", "dye pot")))
        day.write(e.Lifted("first skein", "dye pot", wet_mass_g))
        return day.write_all(
            (e.Entered("second skein", "dye pot"), e.Lifted("second skein", "dye pot"))
        ).account()

    guessed, weighed = lift(None), lift(300.0)
    first, second = weighed.fibre("first skein"), weighed.fibre("second skein")
    unweighed = guessed.fibre("second skein")
    assert first is not None
    assert second is not None
    assert unweighed is not None
    assert first.liquor_l.mean == pytest.approx((300.0 - 100.0 / 1.16) / 1000.0, rel=0.01)
    assert first.liquor_l.half_width < 0.02 * first.liquor_l.mean
    assert second.liquor_l.mean == pytest.approx(first.liquor_l.mean, rel=0.02)
    assert second.liquor_l.half_width < unweighed.liquor_l.half_width / 3.0


def test_fibre_dried_gives_its_water_off_and_keeps_what_was_in_it() -> None:
    day = Pages(madder_plan())
    day.write_all(
        (e.Filled("dye pot", 4.0), e.Added("tartar", "dye pot", 14.4), e.Entered("large skein", "dye pot"))
    )
    wet = day.write(e.Lifted("large skein", "dye pot")).account()
    dry = day.write_all((e.Begun("dry", early="sunny"), e.Finished("dry"))).account()
    before, after = wet.fibre("large skein"), dry.fibre("large skein")
    assert before is not None
    assert after is not None
    assert before.liquor_l.mean > after.liquor_l.mean == 0.0
    assert dry.water.steamed_off.mean == pytest.approx(before.liquor_l.mean)
    assert after.carried == before.carried != ()


def test_a_kept_bath_is_found_under_its_label_and_can_be_drawn_from() -> None:
    day = steeped().write(e.Kept("dye pot", "old red"))
    kept = bath(day.account(all_known("madder")), "old red")
    assert kept.kept
    day.write(e.Drawn("extract pot", "old red", volume_l=0.25))
    account = day.account(all_known("madder"))
    drawn = bath(account, "extract pot")
    assert drawn.grams("madder").mean == pytest.approx(kept.grams("madder").mean / 4.0)
    assert bath(account, "old red").volume_l.mean == pytest.approx(0.75)
    gone = day.write(e.Discarded(label="old red")).account(all_known("madder"))
    assert gone.bath("old red") is None
    assert gone.lost[0].thrown_away.mean == pytest.approx(kept.grams("madder").mean * 0.75)


def test_a_dissolved_powder_is_all_in_the_bath() -> None:
    day = Pages(one_dye_plan("cutch", "cutch", 20.0))
    day.write_all((e.Dissolved("cutch"), e.Filled("dye pot", 3.0), e.Added("cutch", "dye pot", 20.0)))
    account = day.account()
    assert bath(account, "dye pot").grams("cutch").mean == 20.0
    cutch = account.dyestuff("cutch")
    assert cutch is not None
    assert cutch.left_in_dyestuff.mean == 0.0


def test_a_bag_beside_the_fibre_gives_in_the_same_pot() -> None:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("dye pot", 3.0), e.Added("madder", "dye pot", 50.0)))
    day.write_all((e.Entered("first skein", "dye pot"), e.Lit("dye pot"), e.Reached("dye pot", 90.0)))
    early = day.write(e.Read(vessel="dye pot", temperature_c=90.0), 10.0).account(
        all_known("madder", rate=0.05)
    )
    late = day.write(e.Read(vessel="dye pot", temperature_c=90.0), 50.0).account(
        all_known("madder", rate=0.05)
    )
    first, second = early.fibre("first skein"), late.fibre("first skein")
    assert first is not None
    assert second is not None
    assert 0.0 < first.taken[0].grams.mean < second.taken[0].grams.mean
    assert late.dyestuffs[0].left_in_dyestuff.mean < early.dyestuffs[0].left_in_dyestuff.mean < 50.0
    assert bath(late, "dye pot").dyestuff_inside == ("madder",)


def test_wool_takes_its_alum_and_leaves_the_rest() -> None:
    day = Day()
    day.until(e.Closed)
    account = reckon(day.plan, day.entries, day.opened)
    alum = account.balance("alum")
    assert alum is not None
    assert 2.0 < 100.0 * alum.on_fibre.mean / 240.0 < 5.5
    assert alum.in_baths.mean + alum.thrown_away.mean > alum.on_fibre.mean


def test_steam_leaves_only_water_and_no_more_than_the_ring_can_drive() -> None:
    day = steeped().write_all((e.ToppedUp("dye pot", to_l=6.0), e.Lit("dye pot"), e.Reached("dye pot", 95.0)))
    before = day.account()
    after = day.write(e.Lit("dye pot", on=False), 60.0).account(Starting(net_power_w=500.0))
    assert after.water.steamed_off.mean > before.water.steamed_off.mean
    assert after.water.steamed_off.high <= 0.5 * 1.6
    assert bath(after, "dye pot").grams("madder") == bath(before, "dye pot").grams("madder")


def test_a_strength_that_was_read_is_kept_as_a_fact() -> None:
    day = steeped().write(e.Read(vessel="dye pot", strength=0.31, against="first strain", how="matched"))
    (found,) = day.account().strengths
    assert (found.n, found.vessel, found.strength, found.how) == (4, "dye pot", 0.31, "matched")


def test_a_ledger_can_look_ahead_without_a_fact() -> None:
    day = Pages(one_dye_plan()).write_all(
        (e.Filled("dye pot", 4.0), e.Lit("dye pot"), e.Reached("dye pot", 90.0))
    )
    ledger = day.ledger()
    later = ledger.until(ledger.second + 3600.0)
    assert bath(later.account(), "dye pot").volume_l.mean < bath(ledger.account(), "dye pot").volume_l.mean
    assert later.account().lines[-1].what == "steamed off"
    assert ledger.until(0.0) == ledger


def test_a_reading_of_one_pot_settles_the_others_all_the_same() -> None:
    def read(pot: str) -> Account:
        day = Pages(madder_plan())
        for vessel in ("dye pot", "mordant pot"):
            day.write_all((e.Filled(vessel, 6.0), e.Lit(vessel), e.Reached(vessel, 90.0)))
        return day.write(e.Read(vessel=pot, temperature_c=90.0), 60.0).account()

    one, other = read("dye pot"), read("mordant pot")
    assert one.water.steamed_off == other.water.steamed_off
    assert bath(one, "dye pot").volume_l == bath(one, "mordant pot").volume_l
    assert bath(one, "dye pot").volume_l.mean < 5.9


def test_a_learned_number_replaces_a_guess_by_name() -> None:
    learned = Starting({kept_name("madder"): known("learned", 0.2)})
    account = steeped().account(learned)
    assert bath(account, "dye pot").grams("madder").mean < 50.0
    assert account.dyestuffs[0].left_in_dyestuff.low >= 0.2 * 50.0 - 1e-9


def test_fibre_of_an_unknown_kind_is_reckoned_as_the_widest_guess() -> None:
    plan = one_dye_plan()
    odd = replace(plan, lots=(replace(plan.lots[0], kind="dog hair"), plan.lots[1]))
    day = Pages(odd).write_all((e.Filled("dye pot", 4.0), e.Entered("first skein", "dye pot")))
    fibre = day.write(e.Lifted("first skein", "dye pot")).account().fibre("first skein")
    assert fibre is not None
    assert fibre.liquor_l.mean > 0.0


def test_a_day_without_entries_has_an_empty_account() -> None:
    day = Pages(madder_plan())
    assert day.account() == Account(0, 0.0, water=day.account().water)
    assert Ledger.start(day.plan, day.opened).after(Entry(1, day.opened, e.Noted("fine weather"))).lines == ()
