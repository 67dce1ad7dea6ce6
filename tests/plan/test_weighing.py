import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.kitchen import Scale
from dyesession.plan.weighing import (
    DYESTUFF_BAND_SHARE,
    SALT_SD_SHARE,
    ToWeigh,
    best_scale,
    sd_g,
    solubility_g_l,
    weigh,
)
from dyesession.substances import find

GRAM = Scale("kitchen scale", 1.0, 5000.0)
TENTH = Scale("letter scale", 0.1, 200.0)
ONE_TARED_DOSE_G = math.sqrt(1 / 6 + 1 / 4)  # d/sqrt(6) with s = d/2, d = 1 g


def a_dose(mass_g, role="mordant", substance="potassium alum", fibre_g=100.0, portions=None):
    return ToWeigh(mass_g, portions or (mass_g,), role, find(substance), fibre_g)


def test_a_dose_large_enough_is_weighed_and_its_error_told():
    found = weigh(a_dose(29.0), [GRAM])
    assert found.how == "scale"
    assert found.sd_g == pytest.approx(ONE_TARED_DOSE_G)
    assert found.say == "weigh 29 g, ± 1.3 g on your 1 g scale"


def test_the_scale_that_bears_the_dose_and_shows_it_finest_is_taken():
    assert best_scale(30.0, [GRAM, TENTH]) is TENTH
    assert best_scale(300.0, [GRAM, TENTH]) is GRAM
    assert best_scale(9000.0, [GRAM, TENTH]) is GRAM


def test_more_than_the_scale_bears_is_weighed_in_goes():
    found = weigh(a_dose(450.0), [TENTH])
    assert "450.0 g in 3 goes" in found.say
    assert found.sd_g == pytest.approx(math.sqrt(3) * 0.1 * ONE_TARED_DOSE_G)


def test_portions_are_weighed_each_for_itself():
    found = weigh(a_dose(120.0, "dyestuff", "madder root", portions=(30.0, 45.0, 45.0)), [GRAM])
    assert "portions of 30 g, 45 g and 45 g, ± 1.3 g each" in found.say
    assert found.sd_g == pytest.approx(math.sqrt(3) * ONE_TARED_DOSE_G)


def test_a_small_dose_of_dyestuff_becomes_a_share_of_a_stock_liquor():
    found = weigh(a_dose(3.2, "dyestuff", "cochineal"), [GRAM])
    assert found.how == "stock liquor"
    assert (found.take_g, found.make_up_l) == (10.0, 1.0)
    assert found.use_l == pytest.approx(0.32)
    assert "keep the rest" in found.say


def test_a_small_dose_of_a_soluble_salt_becomes_a_stock_solution():
    found = weigh(a_dose(8.0), [GRAM])
    assert found.how == "stock solution"
    assert (found.take_g, found.make_up_l) == (50.0, 1.0)
    assert found.use_l == pytest.approx(0.16)


def test_what_does_not_dissolve_cold_wants_a_larger_lot():
    # Cream of tartar: 5 to 6 g/L in cold water (from memory, unverified): dissolve it hot, keep no stock.
    found = weigh(a_dose(6.0, "assist", "cream of tartar"), [GRAM])
    assert found.how == "larger lot"
    assert "a lot of 220 g" in found.say
    grown = weigh(a_dose(6.0 * 2.2, "assist", "cream of tartar"), [GRAM])
    assert grown.how == "scale"


def test_a_substance_nobody_knows_is_not_made_into_a_stock():
    assert weigh(ToWeigh(2.0, (2.0,), "mordant", None, 100.0), [GRAM]).how == "larger lot"


def test_without_a_scale_the_one_that_would_do_is_named():
    found = weigh(a_dose(2.4, "modifier", "ferrous sulphate"), [])
    assert (found.how, found.sd_g) == ("no scale", None)
    assert "a scale that shows 0.1 g" in found.say


def test_water_is_not_weighed():
    assert weigh(ToWeigh(0.0, (), "water", None, 100.0), [GRAM]).how == "not weighed"


def test_a_modifier_goes_in_by_halves_with_a_look_between():
    found = weigh(a_dose(2.4, "modifier", "ferrous sulphate"), [GRAM])
    assert "add 120 mL with the fibre lifted, ten minutes, look; up to 120 mL more" in found.say


scales = st.builds(
    Scale, st.just("s"), st.sampled_from([0.01, 0.1, 0.5, 1.0, 2.0, 5.0]), st.none() | st.just(5000.0)
)
doses = st.floats(0.01, 3000)
roles = st.sampled_from(
    [
        ("mordant", "potassium alum"),
        ("dyestuff", "madder root"),
        ("assist", "cream of tartar"),
        ("modifier", "ferrous sulphate"),
        ("tannin", "gall nut"),
    ]
)


@given(doses, scales, roles)
def test_what_is_weighed_is_weighed_well_enough(mass_g, scale, role):
    found = weigh(a_dose(mass_g, *role), [scale])
    if found.how != "scale":
        return
    if role[0] in ("dyestuff", "tannin"):
        assert 2 * found.sd_g <= DYESTUFF_BAND_SHARE * mass_g * (1 + 1e-9)
    else:
        assert found.sd_g <= SALT_SD_SHARE * mass_g * (1 + 1e-9)


@given(doses, scales, roles)
def test_a_stock_holds_the_dose_in_the_share_that_is_used(mass_g, scale, role):
    found = weigh(a_dose(mass_g, *role), [scale])
    if found.take_g is None:
        assert not found.how.startswith("stock")
        return
    assert found.use_l / found.make_up_l * found.take_g == pytest.approx(mass_g)
    assert found.take_g >= mass_g * (1 - 1e-9)
    assert found.sd_g < sd_g(mass_g, scale)
    assert found.sd_g / mass_g >= sd_g(found.take_g, scale) / found.take_g


@given(doses, scales, roles)
def test_a_stock_solution_stays_dissolved(mass_g, scale, role):
    found = weigh(a_dose(mass_g, *role), [scale])
    if found.how == "stock solution":
        assert found.take_g / found.make_up_l < solubility_g_l(find(role[1]))


@given(doses, roles)
def test_a_finer_scale_is_never_worse(mass_g, role):
    coarse = weigh(a_dose(mass_g, *role), [Scale("c", 1.0)])
    both = weigh(a_dose(mass_g, *role), [Scale("c", 1.0), Scale("f", 0.1)])
    assert both.how == "scale" or coarse.how != "scale"
