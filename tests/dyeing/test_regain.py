import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.regain import (
    ASTM_REGAIN_PCT,
    EU_ALLOWANCE_PCT,
    air_dry_of_bone_dry_g,
    bone_dry_g,
    bone_dry_of_air_dry_g,
    mass_at_regain_g,
    regain_pct,
)

masses = st.floats(0.1, 5000)
regains = st.floats(0, 300)


@given(masses, regains)
def test_drying_and_wetting_undo_each_other(mass: float, regain: float) -> None:
    dry = bone_dry_g(mass, regain)
    assert mass_at_regain_g(dry, regain) == pytest.approx(mass, rel=1e-12)
    assert regain_pct(mass, dry) == pytest.approx(regain, rel=1e-9, abs=1e-9)


def test_two_trade_allowances_differ_by_four_per_cent_on_the_same_wool() -> None:
    american, european = (
        bone_dry_g(100, r) for r in (ASTM_REGAIN_PCT["wool"], EU_ALLOWANCE_PCT["wool, combed"])
    )
    assert american == pytest.approx(88.03, abs=0.005)
    assert european == pytest.approx(84.57, abs=0.005)


def test_a_damp_skein_would_be_dosed_half_as_much_again() -> None:
    assert regain_pct(150, 85) == pytest.approx(76.5, abs=0.05)
    assert 150 / air_dry_of_bone_dry_g(85, "wool") == pytest.approx(1.52, abs=0.005)


@given(masses, st.sampled_from(["wool", "silk", "cotton"]))
def test_the_dry_mass_of_an_air_dry_skein_carries_a_band(mass: float, fibre: str) -> None:
    low, usual, high = bone_dry_of_air_dry_g(mass, fibre)
    assert low < usual < high < mass
    assert air_dry_of_bone_dry_g(usual, fibre) == pytest.approx(mass)


@pytest.mark.parametrize(("fibre", "share"), [("wool", 0.86), ("silk", 0.90), ("cotton", 0.92)])
def test_usual_dry_shares(fibre: str, share: float) -> None:
    assert bone_dry_of_air_dry_g(1, fibre)[1] == pytest.approx(share, abs=0.005)


def test_a_negative_regain_is_refused() -> None:
    with pytest.raises(OutOfRange, match="regain"):
        bone_dry_g(100, -2)
