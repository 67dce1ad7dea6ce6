"""What a dyer asks of the account: once more? what would it still do? dark enough? how much alum?"""

from dataclasses import replace

import pytest
from account.by_hand import Pages, all_known, dose, one_dye_plan

from dyesession.account.along import along
from dyesession.account.mordant_bath import mordant_bath
from dyesession.account.once_more import GO_ON_ABOVE, STOP_BELOW, OnceMore, once_more
from dyesession.account.over_the_day import over_the_day
from dyesession.account.say import line, sentences
from dyesession.account.say_answers import (
    along_words,
    last_effects,
    mordant_words,
    once_more_words,
    would_do_words,
    would_take_words,
)
from dyesession.account.unknowns import Starting
from dyesession.account.would_take import would_do, would_take
from dyesession.dyeing.limits import OutOfRange
from dyesession.session import events as e


def weld_day(second: float | None, second_l: float = 1.8) -> Pages:
    """Weld for 140 g of wool: 2.0 L strained, then 1.8 L at a share of its strength."""
    plan = one_dye_plan("weld", "weld", 75.0, wool_g=140.0, dye_water_l=4.2, extract_water_l=1.8)
    day = Pages(plan)
    day.write_all((e.Filled("extract pot", 2.2), e.Added("weld", "extract pot", 105.0)))
    day.write_all((e.Strained("extract pot", "dye pot", 2.0, "read"), e.Refreshed("extract pot", 1.8)), 60.0)
    if second is not None:
        day.write(e.Read("extract pot", strength=second, against="first strain", how="matched"), 60.0)
    day.write(e.Strained("extract pot", "dye pot", second_l, "read"))
    day.write_all((e.Filled("wetting bowl", 3.0), e.Entered("first skein", "wetting bowl")))
    return day.write(e.Lifted("first skein", "wetting bowl"))


def asked(day: Pages, starting: Starting | None = None, lot: str = "weld") -> OnceMore:
    found = once_more(day.account(starting), lot)
    assert found is not None
    return found


def test_a_third_extraction_of_the_weld_is_hardly_worth_it() -> None:
    """By hand: 2.0 L, then 1.8 L at 31 %, is a ratio of 0.279 and 0.156/2.558 = 6.1 % more (3 to 9). Ours is
    somewhat more, for a dyestuff is guessed to keep its colour harder each time; held to one share each time,
    as by hand, it is the same.
    """
    found = asked(weld_day(0.31))
    assert found.advice == "stop"
    assert found.read == 1
    assert found.brings_percent.low < 6.1 < found.brings_percent.high < 15.0
    assert found.brings_percent.mean < 10.0
    words = [line(one) for one in once_more_words(found)]
    assert words[0].startswith("Hardly: one more refresh would bring about 9 % more of what you have drawn (")
    assert "more if a slow part remains" in words[0]
    water = next(
        one
        for one in sentences(weld_day(0.31).account(), weld_day(0.31).plan, "dye pot")
        if one.about == "water"
    )
    assert line(water) == (
        "You have 3.8 ± 0.1 L, and the wet wool brings 0.4 ± 0.2 L: nearly the 4.2 L planned. Another 1.8 L"
        " would have to be steamed down by 1.8 L: over an hour for each kilowatt that reaches the pot."
    )


@pytest.mark.parametrize(("kept", "by_hand"), [(0.2, 0.0333), (0.3, 0.0692), (0.5, 0.1667)])
def test_with_one_share_kept_each_time_the_next_is_that_of_the_series(kept: float, by_hand: float) -> None:
    """Strains of 1 - r, r(1 - r), next r^2(1 - r): over what was drawn, r^2(1 - r)/(1 - r^2), derived."""
    found = asked(weld_day(None), all_known("weld", kept=kept))
    assert found.brings_percent.mean / 100.0 == pytest.approx(kept**2 * (1 - kept) / (1 - kept**2))
    assert found.brings_percent.mean / 100.0 == pytest.approx(by_hand, abs=1e-4)


def test_until_a_strain_is_read_the_answer_is_called_a_guess() -> None:
    found = asked(weld_day(None))
    assert found.is_guess
    words = [line(one) for one in once_more_words(found)]
    assert words[0].endswith("a guess.")
    assert any("No strain was read" in one for one in words)
    read = asked(weld_day(0.31)).brings_percent
    assert read.half_width < found.brings_percent.half_width / 1.5


def test_a_guess_that_leaves_both_open_asks_for_a_reading_which_settles_it_either_way() -> None:
    guessed, weak, strong = asked(weld_day(None)), asked(weld_day(0.2)), asked(weld_day(0.75))
    percent = guessed.brings_percent
    assert percent.low < 100 * STOP_BELOW and percent.high > 100 * GO_ON_ABOVE
    assert (guessed.advice, weak.advice, strong.advice) == ("read first", "stop", "go on")
    words = [line(one) for one in once_more_words(guessed)]
    assert words[0].startswith("Match a strain first: one more refresh would bring about ")
    assert "match the second against the first" in words[-1]


def test_after_one_strain_there_is_none_to_match_it_against() -> None:
    day = Pages(weld_day(None).plan)
    day.write_all((e.Filled("extract pot", 2.2), e.Added("weld", "extract pot", 105.0)))
    day.write(e.Strained("extract pot", "dye pot", 2.0, "read"))
    assert asked(day).advice == "go on"


def test_a_strong_second_strain_is_worth_a_third() -> None:
    found = asked(weld_day(0.75))
    assert found.advice == "go on"
    assert line(once_more_words(found)[0]).startswith("Yes: ")


def test_what_each_strain_brought_adds_up_to_what_was_drawn() -> None:
    found = asked(weld_day(0.31))
    assert [one.number for one in found.strains] == [1, 2]
    assert sum(one.brought.mean for one in found.strains) == pytest.approx(found.drawn.mean)
    assert found.drawn.mean + found.left.mean == pytest.approx(105.0)
    assert found.minutes == 60.0
    assert found.water_l == 1.8


def test_a_second_strain_no_weaker_than_the_first_is_said_to_tell_nothing() -> None:
    found = asked(weld_day(1.2))
    assert found.not_weaker == 2
    assert any("reads no weaker" in line(one) for one in once_more_words(found))


def strains_read(shares: tuple[float, ...], against: str = "first strain") -> Pages:
    day = Pages(one_dye_plan("madder", "madder root", 50.0, extract_water_l=1.0))
    day.write_all((e.Filled("extract pot", 1.2, "read"), e.Added("madder", "extract pot", 50.0)))
    day.write(e.Strained("extract pot", "dye pot", 1.0, "read"), 60.0)
    for share in shares:
        day.write(e.Refreshed("extract pot", 1.0, "read"))
        day.write(e.Read("extract pot", strength=share, against=against, how="matched"), 60.0)
        day.write(e.Strained("extract pot", "dye pot", 1.0, "read"))
    return day


def test_a_ratio_that_rises_makes_it_at_least() -> None:
    """66, 13.8, 6.42: a fast store of 60 that keeps a tenth, a slow one of 40 that keeps 0.7 (derived)."""
    found = asked(strains_read((13.8 / 66.0, 6.42 / 66.0)), lot="madder")
    assert found.at_least
    assert "at least" in line(once_more_words(found)[0])
    truth_left_percent = 13.78
    assert found.left.low < 50.0 * truth_left_percent / 100.0 < found.left.high


def test_two_pulls_of_two_stores_do_not_promise_that_little_is_left() -> None:
    """After 66 and 13.8 plain algebra says 3.65 of 100 is left, and the truth is 20.2: it must be in the band."""
    found = asked(strains_read((13.8 / 66.0,)), lot="madder")
    assert found.left.high > 50.0 * 0.202
    assert found.left.low < 50.0 * 0.0365 * 2.0


def test_strains_read_on_scales_of_their_own_are_asked_to_be_matched() -> None:
    found = asked(strains_read((0.3,), against="the paint card"), lot="madder")
    assert found.unlike
    assert found.is_guess


def test_before_the_first_strain_there_is_no_answer() -> None:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.2), e.Added("madder", "extract pot", 50.0)))
    assert once_more(day.account(), "madder") is None
    assert once_more(day.account(), "weld") is None


def dyed(minutes: float = 60.0, lift: bool = True) -> Pages:
    day = Pages(one_dye_plan("madder", "madder root", 50.0))
    day.write_all((e.Filled("extract pot", 1.0), e.Added("madder", "extract pot", 50.0)))
    day.write_all((e.Strained("extract pot", "dye pot"), e.ToppedUp("dye pot", to_l=3.0)), 60.0)
    day.write_all((e.Entered("first skein", "dye pot"), e.Begun("dye", early="now"), e.Lit("dye pot")))
    day.write(e.Reached("dye pot", 90.0))
    day.write(e.Read("dye pot", temperature_c=90.0), minutes)
    return day.write(e.Lifted("first skein", "dye pot")) if lift else day


def test_a_second_skein_would_take_a_fifth_of_the_first() -> None:
    """K 120 at 1:30 leaves a fifth, so an equal skein comes to a fifth of the depth (Nernst, Broadbent p. 203)."""
    account = dyed().account(all_known("madder", kept=0.35, partition=120.0))
    found = would_take(account, "dye pot", "wool", 100.0)
    assert found is not None
    assert found.over_first is not None
    assert found.over_first.mean == pytest.approx(0.2, abs=0.001)
    assert found.grams.mean + found.left.mean == pytest.approx(0.2 * 50.0 * 0.65, rel=1e-3)
    assert found.uses == 1


def test_fibre_for_a_depth_is_the_inverse_of_what_so_much_fibre_takes() -> None:
    account = dyed().account(all_known("madder", kept=0.35, partition=120.0))
    taken = would_take(account, "dye pot", "wool", 80.0)
    assert taken is not None
    fibre = would_do(account, "dye pot", "wool", taken.percent_wof.mean)
    assert fibre is not None
    assert fibre.fibre_g.mean == pytest.approx(80.0)


def test_silk_that_no_plan_knows_is_told_what_the_old_bath_would_still_do() -> None:
    account = dyed().account()
    silk, wool = would_take(account, "dye pot", "silk", 80.0), would_take(account, "dye pot", "wool", 80.0)
    assert silk is not None
    assert wool is not None
    assert silk.grams.mean < wool.grams.mean
    first, drift = would_take_words(silk)
    assert line(first).startswith("80 g of silk, mordanted as the first was, would take up ")
    assert "of the depth of the first skein, a guess." in line(first)
    assert line(drift) == "The dye pot has been used once: its hue may drift."
    much = would_do(account, "dye pot", "silk", 50.0)
    assert much is not None
    assert line(would_do_words(much)[0]).startswith("The dye pot would bring")


def test_a_kept_bath_answers_as_well_and_an_empty_pot_has_no_answer() -> None:
    day = dyed().write(e.Kept("dye pot", "old red"))
    found = would_take(day.account(), "old red", "silk", 80.0)
    assert found is not None
    assert found.grams.mean > 0.0
    assert would_take(day.account(), "dye pot", "silk", 80.0) is None
    assert would_do(day.account(), "dye pot", "silk", 10.0) is None


@pytest.mark.parametrize(("kind", "mass_g"), [("silk", 0.0), ("silk", -5.0), ("glass", 80.0)])
def test_fibre_that_cannot_be_is_refused_in_a_sentence(kind: str, mass_g: float) -> None:
    with pytest.raises(OutOfRange):
        would_take(dyed().account(), "dye pot", kind, mass_g)


def test_at_35_minutes_the_skein_is_as_far_as_the_shape_says() -> None:
    """At 0.05 a minute 35 minutes are 1 - exp(-1.75) = 82.6 % of the way."""
    found = along(dyed(35.0, lift=False).account(all_known("madder", rate=0.05)), "first skein")
    assert found is not None
    assert found.now.mean == pytest.approx(82.6, abs=0.2)
    assert found.minutes == pytest.approx(35.0)
    assert found.at_end is None or found.at_end.mean >= found.now.mean


def test_wet_is_never_held_against_dry() -> None:
    account = dyed(35.0, lift=False).account()
    words = [line(one) for one in along_words(along(account, "first skein"), wet=True)]
    assert words[0].startswith("After 35 min the first skein has ")
    assert words[0].endswith("a guess.")
    assert "wet is never compared with dry" in words[1]


def test_a_dried_snippet_says_what_the_rest_would_bring() -> None:
    account = dyed(20.0, lift=False).account(all_known("madder", rate=0.05))
    found = along(account, "first skein", snippet_share=0.6)
    assert found is not None
    assert found.of_wanted is not None
    assert found.at_rest_of_wanted is not None
    assert found.of_wanted.mean == pytest.approx(60.0)
    assert found.at_rest_of_wanted.mean == pytest.approx(60.0 / 0.632, rel=0.01)
    assert found.at_rest_of_wanted.half_width > 10.0
    words = line(along_words(found)[1])
    assert words.startswith("By the dried snippet the first skein stands at 60 ± 1")
    with pytest.raises(OutOfRange):
        along(account, "first skein", snippet_share=0.0)


def test_a_skein_in_no_dyebath_is_not_along_anywhere() -> None:
    account = dyed().account()
    assert along(account, "first skein") is None
    assert along(account, "nobody") is None
    assert "wet is never compared with dry" in line(along_words(None)[0])


def test_what_moved_the_estimate_is_said_before_and_after() -> None:
    day = dyed(60.0, lift=False)
    day.write(e.Read("dye pot", strength=0.2, against="before", how="matched"))
    account = day.account()
    effect = account.effects[0]
    assert effect.what == "the madder in the dye pot"
    assert effect.after.half_width < effect.before.half_width / 2.0
    first = line(last_effects(account)[0])
    assert first.startswith("The madder in the dye pot: before your reading ")
    assert first.endswith(" g, matched.")
    assert {one.how for one in account.lines} <= {
        "modelled",
        "read",
        "matched",
        "weighed",
        "planned",
        "typed",
    }
    said = [one for one in account.lines if one.what.startswith("strength read")]
    assert [(one.vessel, one.how) for one in said] == [("dye pot", "matched")]


def test_strength_over_the_day_is_there_for_a_picture() -> None:
    account = dyed().account()
    points = over_the_day(account, "dye pot")
    assert [one.second for one in points] == sorted(one.second for one in points)
    bath = account.bath("dye pot")
    assert bath is not None
    assert points[-1].grams == bath.grams("madder")
    assert points[-1].strength_g_l == bath.strength_g_l
    assert max(one.strength_g_l.mean for one in points) > points[-1].strength_g_l.mean
    assert over_the_day(account, "nowhere") == ()


def mordanted() -> Pages:
    plan = one_dye_plan("madder", "madder root", 50.0)
    alum = dose("alum", "potassium alum", "mordant", 12.0, 12.0)
    plan = replace(plan, doses=(*plan.doses, alum))
    day = Pages(plan)
    day.write_all((e.Filled("mordant pot", 4.0, "read"), e.Added("alum", "mordant pot", 12.0)))
    day.write_all(
        (e.Entered("first skein", "mordant pot"), e.Lit("mordant pot"), e.Reached("mordant pot", 85.0))
    )
    return day.write(e.Lifted("first skein", "mordant pot"), 60.0)


def test_wool_takes_about_4_percent_of_its_weight_in_alum_and_the_rest_recharges_the_next() -> None:
    """12 % offered, 4 +- 1.5 % taken; equal fibre wants again what was taken and carried out (Saha 2019)."""
    found = mordant_bath(mordanted().account(), "mordant pot", next_g=100.0, dose_percent=12.0)
    assert found is not None
    (taken,) = found.taken
    assert 1.5 < taken.grams.low < 4.0 < taken.grams.high < 6.0
    assert found.add is not None
    assert found.add.mean == pytest.approx(12.0 - found.left.mean)
    assert found.add.mean > taken.grams.mean
    assert found.saved_percent is not None
    assert found.saved_percent.mean == pytest.approx(100.0 * (1.0 - (12.0 + found.add.mean) / 24.0))
    words = [line(one) for one in mordant_words(found)]
    assert words[0].startswith("The first skein took ")
    assert words[1].startswith("100 g more fibre wants 12 g: add ")


def test_a_bath_without_alum_has_no_mordant_account() -> None:
    assert mordant_bath(dyed().account(), "dye pot") is None
    plain = mordant_bath(mordanted().account(), "mordant pot")
    assert plain is not None
    assert plain.add is None
