"""The account follows whatever a day does: other fibre that joins, other dyestuff, no recipe at all."""

from collections.abc import Sequence
from typing import Any

import pytest
from account.by_hand import Pages, one_dye_plan
from days import Day
from histories import moves, play
from hypothesis import HealthCheck, given, settings

from dyesession.account.beside import Beside
from dyesession.account.estimate import unbalanced
from dyesession.account.ledger import Ledger
from dyesession.account.live import reckoner_for
from dyesession.account.say import sentences
from dyesession.account.unknowns import Starting
from dyesession.dyeing.priors import Prior
from dyesession.kitchen.model import Kitchen
from dyesession.plan.changes import NewIngredient, NewStep, change_for_log
from dyesession.plan.improvised import improvised
from dyesession.plan.model import FibreLot, PlannedAddition, PlannedStep
from dyesession.recipe.model import Heat
from dyesession.session import events as e

ALLOWED = 1e-9
HOT = (Heat("to", 85.0, 30.0), Heat("hold", minutes=60.0))


def balanced(ledger: Ledger) -> bool:
    return max(max(map(abs, off)) for off in unbalanced(ledger.held).values()) < ALLOWED


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(moves)
def test_whatever_a_hand_does_the_account_keeps_up_and_balances(history: Sequence[Any]) -> None:
    day = Day()
    play(day, list(history))
    ledger = Ledger.start(day.plan, day.opened).following(day.entries)
    assert balanced(ledger)
    account = ledger.account()
    assert all(abs(one.unaccounted) < ALLOWED for one in (*account.balances, account.water))
    assert account == reckoner_for(day.plan, day.opened)(day.entries)[0]
    for bath in account.baths:
        assert sentences(account, day.plan, bath.vessel)


def with_a_lot(kind: str) -> Pages:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.0), e.Added("madder", "extract pot", 50.0)))
    day.write_all((e.Strained("extract pot", "dye pot"), e.ToppedUp("dye pot", to_l=3.0)), 60.0)
    day.write(e.Replanned("lot joins", why="found it", lot="hank", fibre=kind, mass_g=100.0))
    day.write_all((e.Entered("hank", "dye pot"), e.Lit("dye pot"), e.Reached("dye pot", 85.0)))
    return day.write(e.Lifted("hank", "dye pot"), 60.0)


@pytest.mark.parametrize("kind", ["wool", "silk", "cotton"])
def test_a_lot_of_another_fibre_that_joins_is_dyed_by_the_guess_for_its_own_kind(kind: str) -> None:
    hank, wool = with_a_lot(kind).account().fibre("hank"), with_a_lot("wool").account().fibre("hank")
    assert hank is not None
    assert wool is not None
    taken, by_wool = hank.taken[0].grams.mean, wool.taken[0].grams.mean
    assert taken > 0.0
    assert taken < by_wool if kind != "wool" else taken == by_wool
    assert hank.liquor_l.mean > 0.0


def test_a_weight_put_right_is_the_weight_the_shares_are_of() -> None:
    day = with_a_lot("wool")
    before = day.account().fibre("hank")
    after = (
        day.write(e.Replanned("lot weight", why="misread", lot="hank", mass_g=50.0)).account().fibre("hank")
    )
    assert before is not None
    assert after is not None
    assert after.mass_g == 50.0
    assert after.taken[0].grams == before.taken[0].grams
    assert after.taken[0].percent_wof.mean == pytest.approx(2.0 * before.taken[0].percent_wof.mean)


def test_a_corrected_weight_before_the_dip_moves_what_is_taken() -> None:
    def taken(mass_g: float) -> float:
        day = Pages(one_dye_plan("madder", "madder root", 50.0))
        day.write_all((e.Filled("extract pot", 1.0), e.Added("madder", "extract pot", 50.0)))
        day.write_all((e.Strained("extract pot", "dye pot"), e.ToppedUp("dye pot", to_l=3.0)), 60.0)
        day.write(e.Replanned("lot weight", why="misread", lot="first skein", mass_g=mass_g))
        day.write_all((e.Entered("first skein", "dye pot"), e.Lit("dye pot"), e.Reached("dye pot", 85.0)))
        fibre = day.write(e.Lifted("first skein", "dye pot"), 60.0).account().fibre("first skein")
        assert fibre is not None
        return fibre.taken[0].grams.mean

    assert taken(50.0) < taken(100.0)


def a_stage(name: str, stage: str, vessel: str, new: tuple[NewIngredient, ...], **known: Any) -> e.Replanned:
    step = PlannedStep(name, stage, "fibre", vessel, name, heat=HOT, **known)  # type: ignore[arg-type]
    changes = (*map(change_for_log, new), change_for_log(NewStep(step)))
    return e.Replanned("step", name, "as it comes", changes=changes)


def an_improvised_day(jar: str = "weld") -> Pages:
    """Silk mordanted with alum and dyed with weld, called as its jar is, and nothing of it planned."""
    day = Pages(improvised((FibreLot("hank", "silk", 80.0),), Kitchen()))
    alum = (NewIngredient("alum", "potassium alum", "mordant"),)
    weld = (NewIngredient(jar, "weld", "dyestuff"),)
    day.write(a_stage("mordant", "mordant", "big pot", alum, add=(PlannedAddition("alum", 10.0),)))
    day.write_all((e.Filled("big pot", 3.0), e.Added("alum", "big pot", 10.0), e.Entered("hank", "big pot")))
    day.write_all((e.Begun("mordant", early="now"), e.Lit("big pot"), e.Reached("big pot", 85.0)))
    day.write_all((e.Finished("mordant"), e.Lifted("hank", "big pot")), 60.0)
    day.write(a_stage("extract", "extract", "small pot", weld, add=(PlannedAddition(jar, 60.0),)))
    day.write_all((e.Filled("small pot", 2.0), e.Added(jar, "small pot", 60.0), e.Lit("small pot")))
    day.write_all((e.Strained("small pot", "dye pot", 1.7, "read"), e.ToppedUp("dye pot", to_l=2.4)), 60.0)
    day.write_all((e.Entered("hank", "dye pot"), e.Lit("dye pot"), e.Reached("dye pot", 85.0)))
    return day.write(e.Lifted("hank", "dye pot"), 60.0)


def test_an_improvised_day_reckons_with_the_dyer_s_own_numbers_whatever_the_jar_is_called() -> None:
    """Numbers by the dyestuff's own name: little taken where it goes quickly, nearly all where it goes slowly."""

    def taken(partition: float) -> Prior:
        return Prior("partition of weld on silk", partition, partition / 1.05, partition * 1.05, "log", "learned")

    rate = Prior("rate of weld", 0.2, 0.19, 0.21, "log", "learned")
    hanging = Beside("rate of weld", "log", ((0.02, taken(900.0)), (0.2, taken(10.0))))
    own = Starting({one.name: one for one in (taken(100.0), rate)}, {"partition of weld on silk": hanging})
    shares = []
    for starting in (Starting(), own):
        hank = an_improvised_day("old weld").account(starting).fibre("hank")
        assert hank is not None and hank.taken[0].lot == "old weld"
        shares.append(hank.taken[0].grams)
    guessed, known = shares
    assert known.high < guessed.mean and known.high - known.low < 0.6 * (guessed.high - guessed.low)


def test_an_improvised_day_has_a_whole_account() -> None:
    day = an_improvised_day()
    account = day.account()
    assert balanced(day.ledger())
    hank, weld = account.fibre("hank"), account.dyestuff("weld")
    assert hank is not None
    assert weld is not None
    assert [one.lot for one in hank.mordant] == ["alum"]
    assert hank.taken[0].lot == "weld"
    assert weld.pulls == 1
    assert weld.next_min == 90.0
    assert sentences(account, day.plan)[0].text.startswith("The dye pot holds the colour of")
