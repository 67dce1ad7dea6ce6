import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.mordanting import (
    RULES,
    aluminium_mg_g,
    left_in_bath_g,
    recharge_g,
    standing_bath,
    uptake_pct,
    uptake_source,
)

doses = st.floats(0.1, 40)
fibres = st.sampled_from(["wool", "silk", "cotton"])


@given(doses, fibres)
def test_uptake_is_a_band_within_the_dose(dose: float, fibre: str) -> None:
    taken = uptake_pct(dose, fibre)
    assert 0 < taken.low_pct < taken.centre_pct < taken.high_pct < dose


@given(doses, st.floats(1, 3), fibres)
def test_a_larger_dose_never_takes_less_but_a_smaller_share(dose: float, more: float, fibre: str) -> None:
    small, large = uptake_pct(dose, fibre), uptake_pct(dose * more, fibre)
    assert large.centre_pct >= small.centre_pct
    assert large.centre_pct / (dose * more) <= small.centre_pct / dose * (1 + 1e-12)


@pytest.mark.parametrize(("dose", "taken"), [(7, 5.18), (17, 5.44), (12, 3.0), (15, 3.75)])
def test_what_was_measured_or_said_of_wool_lies_in_the_band(dose: float, taken: float) -> None:
    """Saha 2019 (7 and 17 %, ends assumed), and the quarter of 8 to 15 % that a dyer reckons."""
    band = uptake_pct(dose, "wool")
    assert band.low_pct <= taken <= band.high_pct


def test_twelve_per_cent_leaves_most_of_the_alum_in_the_bath() -> None:
    assert uptake_pct(12, "wool").centre_pct == pytest.approx(4)
    assert uptake_pct(4, "wool").centre_pct == pytest.approx(3)
    assert uptake_pct(12, "cotton").high_pct < 1.6


@given(st.floats(0.1, 500), st.floats(0, 1), st.floats(0, 1))
def test_alum_balances_and_the_recharge_restores_it(dose: float, taken_share: float, carried: float) -> None:
    taken = dose * taken_share
    left = left_in_bath_g(dose, taken, carried)
    assert 0 <= left <= dose - taken + 1e-9
    assert left + recharge_g(dose, left) == pytest.approx(dose)
    assert left_in_bath_g(dose, taken, 0) == pytest.approx(dose - taken)


def test_a_bath_that_holds_enough_needs_no_recharge() -> None:
    assert recharge_g(10, 12) == 0


def test_five_per_cent_of_alum_is_about_three_milligrams_of_aluminium_a_gram() -> None:
    assert aluminium_mg_g(5.18) == pytest.approx(2.95, abs=0.005)
    assert aluminium_mg_g(5.44) == pytest.approx(3.09, abs=0.005)
    with pytest.raises(OutOfRange, match="not known"):
        aluminium_mg_g(5, "alum of the ancients")


def test_a_standing_bath_saves_an_eighth_over_four_lots() -> None:
    """Beech, The Dyeing of Woollen Fabrics, 1902, p. 84: 3 lb for the first 100 lb lot, 2 1/2 for
    each later one.
    """
    ledger = standing_bath(3, 2.5, 4)
    assert (ledger.used, ledger.with_fresh_baths) == (10.5, 12)
    assert ledger.saved_share == pytest.approx(0.125)
    assert standing_bath(6, 5, 1).saved_share == 0


def test_every_rule_says_where_it_comes_from() -> None:
    for fibre in ("wool", "silk", "cotton"):
        assert "judgement" in uptake_source(fibre)
    assert len(RULES) == 3


def test_impossible_ledgers_are_refused() -> None:
    with pytest.raises(OutOfRange, match="later charge"):
        standing_bath(3, 4, 2)
    with pytest.raises(OutOfRange, match="cannot be taken"):
        left_in_bath_g(10, 11, 0)
    with pytest.raises(OutOfRange, match="dose of alum"):
        uptake_pct(-1, "wool")
