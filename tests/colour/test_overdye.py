from dataclasses import replace

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab, lab_of_lch
from dyesession.colour.depth import REFUSE_FROM_KS
from dyesession.colour.overdye import LEAST_AMOUNT, MOST_AMOUNT, plan_further_dip, plan_overdye
from dyesession.colour.shades import depth_line, depths, overdye_line
from dyesession.colour.trouble import TooDark, Unlike
from dyesession.colour.viewing import D65_2, D65_10
from tests.colour.shades_of_cloth import INDIGO, MADDER, UNDYED, WELD, aim, cloth, is_one_sentence, read


@given(st.floats(0.05, 3))
@settings(max_examples=25, deadline=None)
def test_a_hidden_amount_is_found_again(amount: float) -> None:
    target = overdye_line(UNDYED, WELD, INDIGO, D65_2)(amount)
    plan = plan_overdye(read(UNDYED), read(WELD), read(INDIGO), aim(target))
    assert plan.amount == pytest.approx(amount, rel=5e-3)
    assert plan.amount_low < amount < plan.amount_high
    assert plan.reachable and plan.solved < 0.02 < plan.expected


# A sample too deep for the theory; a second valley, forty times the dye, nearer by what nobody sees.
@example(Lab(25.0, 19.0, 0.0), lab_of_lch(25.0, 24.0, 44.0), Lab(25.0, 0.0, 0.0))
@example(Lab(51.0, 1.0, 0.0), lab_of_lch(25.0, 29.0, 31.0), Lab(25.0, 0.0, 0.0))
@given(cloth, cloth, cloth)
@settings(max_examples=25, deadline=None)
def test_no_amount_comes_nearer_and_no_smaller_one_as_near(skein: Lab, second: Lab, target: Lab) -> None:
    plan = plan_overdye(read(UNDYED), read(skein), read(second), aim(target))
    line = overdye_line(UNDYED, skein, second, D65_2)
    too_deep = max(depths(second, D65_2)) > REFUSE_FROM_KS  # such a sample is not made deeper
    most = 1.0 if too_deep else MOST_AMOUNT
    amounts = [amount for amount in (most * part / 200 for part in range(201)) if amount >= LEAST_AMOUNT]
    tried = {amount: de00(target, line(amount)) for amount in (0.0, *amounts)}
    assert plan.solved <= min(tried.values()) + 0.01
    assert all(miss > plan.solved - 1e-6 for amount, miss in tried.items() if amount < 0.98 * plan.amount)
    assert plan.amount <= most
    assert plan.lab.lightness <= skein.lightness + 1e-6


@given(cloth, cloth, cloth)
@settings(max_examples=15, deadline=None)
def test_the_expected_miss_is_never_the_solvers_own(skein: Lab, second: Lab, target: Lab) -> None:
    plan = plan_overdye(read(UNDYED), read(skein), read(second), aim(target))
    assert plan.expected > plan.solved
    noisy = plan_overdye(read(UNDYED), read(skein, 4.0), read(second, 4.0), aim(target, plus_minus=4.0))
    assert noisy.expected > plan.expected and noisy.amount == plan.amount


def test_a_lighter_target_is_plainly_unreachable() -> None:
    plan = plan_overdye(read(UNDYED), read(MADDER), read(INDIGO), aim(Lab(70.0, 20.0, 20.0)))
    assert (plan.amount, plan.reachable, plan.lab) == (0.0, False, MADDER)
    assert "Unreachable" in plan.says and "lighter than what you have" in plan.says


def test_a_cleaner_target_is_plainly_unreachable() -> None:
    plan = plan_overdye(read(UNDYED), read(Lab(42.0, 25.0, 17.0)), read(INDIGO), aim(Lab(42.0, 45.0, 30.0)))
    assert not plan.reachable and "cleaner" in plan.says


def test_a_dye_that_leads_elsewhere_says_what_stays() -> None:
    plan = plan_overdye(read(UNDYED), read(WELD), read(MADDER), aim(Lab(52.0, -24.0, 33.0)))
    assert not plan.reachable and "redder" in plan.says


def test_a_skein_on_its_target_needs_nothing() -> None:
    plan = plan_overdye(read(UNDYED), read(MADDER), read(INDIGO), aim(MADDER))
    assert plan.amount == 0.0 and plan.reachable and "Nothing need be added" in plan.says


def test_a_further_dip_in_the_same_bath_brings_the_missing_depth() -> None:
    half = depth_line(UNDYED, MADDER, D65_2)(0.5)
    plan = plan_further_dip(read(UNDYED), read(half), aim(MADDER))
    assert plan.amount == pytest.approx(1.0, rel=0.03) and plan.reachable


def test_every_plan_asks_for_a_few_grams_first() -> None:
    plan = plan_overdye(read(UNDYED), read(WELD), read(INDIGO), aim(Lab(52.0, -24.0, 33.0)))
    assert "few grams first" in plan.notes[-1]


def test_a_target_with_a_spread_is_reached_anywhere_within_it() -> None:
    target = aim(Lab(70.0, -10.0, 40.0), Lab(52.0, 10.0, 50.0))
    assert plan_overdye(read(UNDYED), read(WELD), read(INDIGO), target).reachable
    assert not plan_overdye(read(UNDYED), read(WELD), read(INDIGO), aim(target.middle.lab)).reachable


def test_too_dark_a_skein_and_unlike_readings_are_refused() -> None:
    with pytest.raises(TooDark) as refused:
        plan_overdye(read(UNDYED), read(Lab(9.0, 1.0, 1.0)), read(INDIGO), aim(MADDER))
    assert is_one_sentence(str(refused.value))
    with pytest.raises(Unlike):
        plan_overdye(read(UNDYED), read(WELD), replace(read(INDIGO), viewing=D65_10), aim(MADDER))
    with pytest.raises(Unlike):
        plan_overdye(read(UNDYED), replace(read(WELD), wet=True), read(INDIGO), aim(MADDER))
