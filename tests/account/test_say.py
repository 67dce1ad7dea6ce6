"""The account in words: one rounded range, a guess called a guess, and enough water or too much."""

import pytest
from account.by_hand import Pages, all_known, one_dye_plan
from hypothesis import given
from hypothesis import strategies as st

from dyesession.account.model import NOTHING, Account, Amount, Band90, BathEstimate, DyestuffEstimate
from dyesession.account.say import Said, line, rounded_band, sentences
from dyesession.account.unknowns import held_name
from dyesession.dyeing.evaporation import latent_heat_bound_kg_h
from dyesession.session import events as e


def band(mean: float, half_width: float) -> Band90:
    return Band90(mean, mean - half_width, mean + half_width)


@pytest.mark.parametrize(
    ("estimate", "unit", "said"),
    [
        (band(71.2, 13.4), "g", "71 ± 13 g"),
        (band(15.4, 6.8), "g", "15 ± 7 g"),
        (band(58.4, 7.4), "g", "58 ± 7 g"),
        (band(1.53, 0.42), "g", "1.5 ± 0.4 g"),
        (band(1.53, 0.01), "g", "1.5 ± 0.1 g"),
        (band(3.96, 0.71), "L", "4.0 ± 0.7 L"),
        (band(812.0, 140.0), "g", "810 ± 140 g"),
        (Band90(3.9, 0.4, 10.4), "g", "up to 10 g"),
        (Band90(4.1, 0.65, 10.4), "g", "1 to 10 g"),
        (Band90(112.0, 94.3, 119.2), "g", "94 to 119 g"),
        (Band90(0.02, 0.01, 0.04), "g", "less than 0.1 g"),
        (band(120.0, 0.0), "g", "120 g"),
        (band(2.4, 0.0), "g", "2.4 g"),
        (band(6.0, 4.0), "%", "6 ± 4 %"),
    ],
)
def test_a_band_is_one_rounded_range(estimate: Band90, unit: str, said: str) -> None:
    assert rounded_band(estimate, unit) == said


@given(st.floats(0.0, 5000.0), st.floats(0.0, 1.0), st.floats(0.0, 3.0))
def test_no_range_shows_a_second_decimal_or_a_minus(mean: float, down: float, up: float) -> None:
    said = rounded_band(Band90(mean, mean * (1.0 - down), mean * (1.0 + up)), "g")
    assert "-" not in said
    for word in said.split():
        assert len(word.partition(".")[2]) <= 1


@given(st.floats(1.0, 5000.0), st.floats(0.01, 0.9))
def test_what_is_said_is_within_a_step_of_what_is_meant(mean: float, share: float) -> None:
    half_width = share * mean
    shown, _, shown_half = rounded_band(band(mean, half_width), "g").removesuffix(" g").partition(" ± ")
    step = 0.1 if half_width < 2.0 else 0.3 * half_width
    assert float(shown) == pytest.approx(mean, abs=step)
    assert float(shown_half) == pytest.approx(half_width, abs=step)


def hand_made() -> Account:
    dye = Amount("madder", band(71.2, 13.4))
    bath = BathEstimate("dye pot", False, band(5.2, 0.4), "read", (dye,), (), 0, False, "modelled", (), band(13.7, 2.8))
    madder = DyestuffEstimate(
        "madder", 120.0, 2, band(71.2, 13.4), band(48.0, 13.4), band(15.4, 6.8), 75.0, 2.4
    )
    return Account(17, 8280.0, (bath,), (madder,))


def test_the_dye_pot_is_said_as_the_dyer_doses() -> None:
    plan = one_dye_plan("madder", "madder root", 50.0, wool_g=240.0, dye_water_l=7.2)
    said = sentences(hand_made(), plan, "dye pot")
    assert line(said[0]) == "The dye pot holds the colour of 71 ± 13 g of your 120 g madder, modelled."
    assert line(said[1]) == "That is 30 ± 6 % WOF of the 50 % planned."
    assert line(said[2]) == "Extracting again: 15 ± 7 g more, about 75 min, a guess."
    assert line(said[3]) == "It stands at 5.2 ± 0.4 L, 14 ± 3 g/L, read."
    assert line(said[4]) == "You have 5.2 ± 0.4 L: 2.0 L short of the 7.2 L planned. " + (
        "Another 2.4 L would have to be steamed down by 0.4 L: "
        "at least 20 min for each kilowatt that reaches the pot."
    )


def test_the_bath_that_matters_is_said_when_none_is_named() -> None:
    plan = one_dye_plan("madder", "madder root", 50.0, wool_g=240.0)
    assert sentences(hand_made(), plan) == sentences(hand_made(), plan, "dye pot")
    assert sentences(Account(0, 0.0), plan) == ()
    assert sentences(hand_made(), plan, "no such pot") == ()


def test_a_band_too_wide_is_called_a_guess() -> None:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("dye pot", 3.0), e.Added("madder", "dye pot", 50.0), e.Lit("dye pot")))
    day.write_all((e.Reached("dye pot", 90.0), e.Lit("dye pot", on=False)), 30.0)
    first = sentences(day.account(), day.plan, "dye pot")[0]
    assert first.how == "guess"
    assert line(first).endswith("so far, a guess.")


def test_a_pot_of_mordant_says_what_is_dissolved_in_it() -> None:
    day = Pages(one_dye_plan()).write_all((e.Filled("dye pot", 3.0), e.Added("tartar", "dye pot", 6.0)))
    assert line(sentences(day.account(), day.plan, "dye pot")[0]) == "The dye pot holds 6 g tartar, modelled."


def test_a_used_bath_says_that_its_hue_may_drift() -> None:
    day = Pages(one_dye_plan())
    day.write_all((e.Dissolved("cochineal"), e.Filled("dye pot", 3.0), e.Added("cochineal", "dye pot", 5.0)))
    day.write_all((e.Entered("first skein", "dye pot"), e.Lifted("first skein", "dye pot")))
    said = sentences(day.account(), day.plan, "dye pot")
    assert Said("It has been used once: its hue may drift", "", "drift") in said
    assert not any(one.about == "water" for one in said)


def test_enough_water_is_said_before_more_is_extracted() -> None:
    """140 g of wool wants 4.2 L at 1:30. Two strains gave 3.8 L and the wet wool brings 0.3 L; another 1.8
    L would be 1.7 L too much, which a kilowatt drives off at 1.595 kg an hour at the most (latent heat,
    IAPWS-IF97)."""
    plan = one_dye_plan("weld", "weld", 75.0, wool_g=140.0, dye_water_l=4.2, extract_water_l=1.8)
    day = Pages(plan)
    day.write_all((e.Filled("extract pot", 2.2), e.Added("weld", "extract pot", 105.0)))
    day.write_all((e.Strained("extract pot", "dye pot", 2.0, "read"), e.Refreshed("extract pot", 1.8)))
    day.write(e.Strained("extract pot", "dye pot", 1.8, "read"))
    day.write_all((e.Filled("wetting bowl", 3.0), e.Entered("first skein", "wetting bowl")))
    day.write(e.Lifted("first skein", "wetting bowl"))
    starting = all_known("weld", held=2.5, spent=2.0)
    assert held_name("wool") in starting.priors
    said = next(one for one in sentences(day.account(starting), plan, "dye pot") if one.about == "water")
    assert line(said) == (
        "You have 3.8 ± 0.1 L, and the wet wool brings 0.3 L: nearly the 4.2 L planned."
        " Another 1.8 L would have to be steamed down by 1.7 L:"
        " over an hour for each kilowatt that reaches the pot."
    )
    assert latent_heat_bound_kg_h(1000.0) == pytest.approx(1.595, abs=1e-3)


def test_nothing_left_offers_no_more_extracting() -> None:
    account = hand_made()
    spent = DyestuffEstimate("madder", 120.0, 4, band(120.0, 0.0), NOTHING, NOTHING, 75.0, None)
    plan = one_dye_plan("madder", "madder root", 50.0, wool_g=240.0)
    said = sentences(Account(17, 8280.0, account.baths, (spent,)), plan, "dye pot")
    assert not any("Extracting again" in one.text or "Another" in one.text for one in said)
