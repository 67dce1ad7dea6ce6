"""The chain from dose to fibre, with every unknown known: worked by hand from two formulas.

After n extractions that each keep the share r, r^n of the colour is left (mass balance); a fibre takes the
share K/(K + L) of a bath at the liquor ratio L (partition as in Broadbent, Basic Principles of Textile
Coloration, p. 203). Cochineal at 5 % of the wool's weight with 20 % carminic acid (content 17-24 %: trade
pages) offers 10 mg/g.
"""

import pytest
from account.by_hand import Pages, all_known, one_dye_plan

from dyesession.account.model import Account
from dyesession.session import events as e

CARMINIC_SHARE = 0.20
MG_PER_G = 1000.0


def three_pulls() -> Pages:
    day = Pages(one_dye_plan())
    day.write_all((e.Filled("extract pot", 1.0), e.Added("cochineal", "extract pot", 5.0)))
    for _ in range(2):
        day.write_all((e.Strained("extract pot", "dye pot"), e.Refreshed("extract pot", 1.0)), 30.0)
    return day.write(e.Strained("extract pot", "dye pot"), 30.0)


def dyed(day: Pages, skein: str) -> Pages:
    day.write_all(
        (e.Entered(skein, "dye pot"), e.Lit("dye pot"), e.Read(vessel="dye pot", temperature_c=90.0))
    )
    day.write(e.Reached("dye pot", 90.0))
    return day.write(e.Lifted(skein, "dye pot"), 60.0)


def mg_per_g(account: Account, skein: str) -> float:
    fibre = account.fibre(skein)
    assert fibre is not None
    return fibre.taken[0].grams.mean * CARMINIC_SHARE * MG_PER_G / fibre.mass_g


def test_three_extractions_that_keep_a_third_each_draw_96_per_cent() -> None:
    account = three_pulls().account(all_known("cochineal", kept=0.35))
    cochineal = account.dyestuff("cochineal")
    assert cochineal is not None
    assert cochineal.pulls == 3
    assert cochineal.drawn.mean / cochineal.total_g == pytest.approx(0.957, abs=5e-4)
    assert cochineal.left_in_dyestuff.mean == pytest.approx(5.0 * 0.35**3)
    assert cochineal.next_pull.mean == pytest.approx(5.0 * 0.35**3 * 0.65)


def test_one_dyeing_at_30_to_1_takes_four_fifths() -> None:
    day = dyed(three_pulls(), "first skein")
    account = day.account(all_known("cochineal", kept=0.35, partition=120.0))
    assert mg_per_g(account, "first skein") == pytest.approx(7.66, abs=0.005)
    bath = account.bath("dye pot")
    assert bath is not None
    left_mg = bath.grams("cochineal").mean * CARMINIC_SHARE * MG_PER_G
    assert left_mg / 100.0 == pytest.approx(1.91, abs=0.005)
    assert left_mg / bath.volume_l.mean == pytest.approx(64.0, abs=0.5)
    assert bath.hue_may_drift


def test_a_second_equal_skein_gets_a_fifth_of_the_first() -> None:
    day = dyed(dyed(three_pulls(), "first skein"), "second skein")
    account = day.account(all_known("cochineal", kept=0.35, partition=120.0))
    assert mg_per_g(account, "second skein") == pytest.approx(1.53, abs=0.005)


def test_wet_fibre_carries_its_share_of_the_bath_out() -> None:
    """At 2 mL/g on 86.2 g bone-dry, 0.172 L of 3 L go with the skein, and as much of the colour left."""
    day = dyed(three_pulls(), "first skein")
    account = day.account(all_known("cochineal", kept=0.35, held=2.0))
    fibre, bath = account.fibre("first skein"), account.bath("dye pot")
    assert fibre is not None
    assert bath is not None
    assert fibre.liquor_l.mean == pytest.approx(2.0 * 100.0 / 1.16 / 1000.0)
    assert bath.volume_l.mean == pytest.approx(3.0 - fibre.liquor_l.mean)
    left_g = 5.0 * (1.0 - 0.35**3) * 0.2
    assert account.lost[0].carried_out.mean == pytest.approx(left_g * fibre.liquor_l.mean / 3.0)


def test_dyestuff_keeps_no_less_than_the_liquor_it_holds() -> None:
    """5 g that hold 100 g/g keep 0.5 L of 1 L, and so half the colour, whatever else binds it."""
    day = Pages(one_dye_plan())
    day.write_all((e.Filled("extract pot", 1.0), e.Added("cochineal", "extract pot", 5.0)))
    account = day.write(e.Strained("extract pot", "dye pot")).account(all_known("cochineal", spent=100.0))
    bath = account.bath("dye pot")
    assert bath is not None
    assert bath.volume_l.mean == pytest.approx(0.5)
    assert bath.grams("cochineal").mean == pytest.approx(2.5)
    assert account.water.in_dyestuff.mean == pytest.approx(0.5)


def test_uptake_counts_minutes_at_heat_only() -> None:
    """At 0.05 a minute an hour brings 95 % of what is to come; cold, nothing comes."""
    starting = all_known("cochineal", rate=0.05)
    cold = (
        three_pulls()
        .write(e.Entered("first skein", "dye pot"))
        .write(e.Lifted("first skein", "dye pot"), 60.0)
    )
    fibre = cold.account(starting).fibre("first skein")
    assert fibre is not None
    assert not fibre.taken
    hot = dyed(three_pulls(), "first skein").account(starting).fibre("first skein")
    assert hot is not None
    assert hot.taken[0].grams.mean == pytest.approx(5.0 * (1 - 0.35**3) * 0.8 * 0.9502, rel=1e-3)


def test_two_skeins_in_one_bath_share_as_one_of_their_weight_would() -> None:
    day = three_pulls().write(e.Entered("second skein", "dye pot"))
    account = dyed(day, "first skein").account(all_known("cochineal"))
    first, second = account.fibre("first skein"), account.fibre("second skein")
    assert first is not None
    assert second is not None
    assert first.taken[0].grams.mean == pytest.approx(second.taken[0].grams.mean)
    both = 5.0 * (1.0 - 0.35**3) * 120.0 / (120.0 + 15.0)
    assert first.taken[0].grams.mean + second.taken[0].grams.mean == pytest.approx(both)
