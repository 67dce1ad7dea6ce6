"""Enough yarn or not. Counts: tex = grams to the kilometre; 560 yards to the worsted hank (definitions of the
trade).

The lengths of named thicknesses are from memory, unverified.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.plan import PlanError
from dyesession.plan.yarn_need import (
    KNITTING_SHARE,
    Pattern,
    Swatch,
    Thickness,
    YarnAtHand,
    yarn_need,
)
from dyesession.plan.yarn_text import (
    NAMED,
    pattern_from_text,
    pieces_from_text,
    swatch_from_text,
    thickness_from_text,
    yarn_from_text,
)


def have(text, swatch=None):
    return yarn_from_text(text, swatch)


def test_a_length_over_metres_to_the_gram_is_the_weight_it_takes():
    need = yarn_need(pattern_from_text("400 m"), have("320 g, 200 m/100 g"))
    assert need.needed_g.aim == pytest.approx(200.0)
    assert need.over_g.aim == pytest.approx(120.0) and need.verdict == "enough"
    assert need.needed_m.aim == pytest.approx(400.0) and need.over_m.aim == pytest.approx(240.0)
    assert need.needed_g.plus_minus == pytest.approx(200 * math.hypot(0.05, KNITTING_SHARE))
    assert need.dye_g == pytest.approx(need.needed_g.high)


def test_too_little_yarn_is_short_by_how_much():
    need = yarn_need(pattern_from_text("800 m"), have("150 g, 200 m/100 g"))
    assert need.verdict == "short" and need.over_g.aim == pytest.approx(-250.0)


def test_what_lies_within_the_error_is_called_touch_and_go():
    need = yarn_need(pattern_from_text("400 m"), have("205 g, 200 m/100 g"))
    assert need.verdict == "touch and go"


def test_ounces_of_a_named_thickness_are_a_length_which_thicker_yarn_needs_more_grams_for():
    asked = pattern_from_text("5 oz of double knitting")
    need = yarn_need(asked, have("400 g aran"))
    metres = 5 * 28.349523125 * 2.3
    assert need.needed_m.aim == pytest.approx(metres)
    assert need.needed_g.aim == pytest.approx(metres / 1.7)
    assert any("from memory, unverified" in one for one in need.because)


def test_weight_only_is_compared_by_weight_and_says_what_that_hangs_on():
    need = yarn_need(pattern_from_text("250 g"), have("400 g, 200 m/100 g"))
    assert need.needed_g.aim == 250.0
    assert need.needed_g.plus_minus > 250 * KNITTING_SHARE
    assert any("only for yarn as thick as the pattern's" in one for one in need.because)


def test_a_swatch_is_scaled_up_by_its_area():
    swatch = swatch_from_text("10 x 15 cm, 9 g")
    need = yarn_need(pieces_from_text("2 of 50 x 60 cm and 2 of 40 x 45 cm"), have("700 g", swatch))
    assert need.needed_g.aim == pytest.approx(9.0 / 150.0 * (2 * 3000 + 2 * 1800))
    assert need.verdict == "touch and go" or need.verdict == "enough"


@given(st.floats(6.0, 40.0), st.floats(1.0, 60.0), st.floats(0.01, 5.0))
def test_a_coarser_scale_never_makes_a_swatch_surer(side_cm, mass_g, step_g):
    pieces = pieces_from_text("2 of 50 x 60 cm")
    fine = yarn_need(pieces, YarnAtHand(400.0, None, Swatch(side_cm, side_cm, mass_g, step_g)))
    coarse = yarn_need(pieces, YarnAtHand(400.0, None, Swatch(side_cm, side_cm, mass_g, 2 * step_g)))
    assert coarse.needed_g.aim == pytest.approx(fine.needed_g.aim)
    assert coarse.needed_g.plus_minus > fine.needed_g.plus_minus


amounts = st.floats(10.0, 5000.0)


@given(amounts, st.floats(0.0, 0.3), amounts, st.floats(20.0, 2000.0))
def test_over_and_needed_make_up_what_is_at_hand_and_the_verdict_follows_them(metres, wide, mass_g, per_100):
    pattern = Pattern("metres", metres, metres * (1 + wide), "a length")
    need = yarn_need(pattern, YarnAtHand(mass_g, Thickness(per_100, 0.05, "", "typed")))
    assert need.needed_g.aim + need.over_g.aim == pytest.approx(mass_g)
    low, high = need.over_g.aim - need.over_g.plus_minus, need.over_g.aim + need.over_g.plus_minus
    assert need.verdict == ("enough" if low >= 0 else "short" if high < 0 else "touch and go")


@given(amounts, amounts, st.floats(1.1, 3.0))
def test_more_yarn_never_turns_enough_into_short(metres, mass_g, more):
    rank = ("short", "touch and go", "enough")
    thickness = Thickness(210.0, 0.05, "", "typed")
    pattern = Pattern("metres", metres, metres, "a length")
    few = yarn_need(pattern, YarnAtHand(mass_g, thickness))
    many = yarn_need(pattern, YarnAtHand(mass_g * more, thickness))
    assert rank.index(many.verdict) >= rank.index(few.verdict)


@pytest.mark.parametrize(
    ("text", "metres"),
    [
        ("210 m/100 g", 210.0),
        ("210 m per 100 g", 210.0),
        ("105 m to 50 g", 210.0),
        ("1000 yd/lb", 201.59),  # 1 yd/lb is 0.2015907 m/100 g: exact yard and pound
        ("230 yards per 4 oz", 185.46),
        ("250 tex", 400.0),
        ("2500 dtex", 400.0),
        ("Nm 4", 400.0),
        ("Nm 2/28", 1400.0),
        ("28/2 Nm", 1400.0),
        ("worsted 2/20", 1128.9),  # 10 hanks of 560 yd to the pound
        ("20/2 cotton", 1693.4),  # 10 hanks of 840 yd to the pound
        ("linen lea 16", 967.6),  # 16 hanks of 300 yd to the pound
        ("16 lea", 967.6),
        ("Yorkshire skein 24", 1238.6),  # 24 hanks of 256 yd to the pound
        ("aran", 170.0),
        ("aran weight", 170.0),
        ("Double Knitting", 230.0),
        ("4-ply", 400.0),
    ],
)
def test_thickness_is_read_in_old_and_new_counts(text, metres):
    assert thickness_from_text(text).metres_per_100_g == pytest.approx(metres, rel=1e-3)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("2/28", "which trade"),
        ("Nm 3/4", "which number is the strands"),
        ("worsted 20/30", "which number is the strands"),
        ("mohair cloud", "no thickness known here"),
        ("Nm 0", "0"),
        ("0 m/100 g", "no thickness"),
    ],
)
def test_a_thickness_that_could_mean_two_things_or_nothing_is_asked_about(text, says):
    with pytest.raises(PlanError, match=says):
        thickness_from_text(text)


def test_the_named_thicknesses_go_from_thin_to_thick_without_a_gap_turned_round():
    order = ("lace", "3 ply", "4 ply", "sport", "dk", "aran", "chunky", "super chunky")
    middles = [sum(NAMED[name]) / 2 for name in order]
    assert middles == sorted(middles, reverse=True)
    assert all(0 < low < high for low, high in NAMED.values())


@pytest.mark.parametrize(
    ("make", "text", "says"),
    [
        (pattern_from_text, "fog", "neither a length nor a weight"),
        (pattern_from_text, "0 m", "no length"),
        (swatch_from_text, "10 x 12 cm", "no swatch"),
        (swatch_from_text, "6 g", "no swatch"),
        (swatch_from_text, "0 x 12 cm, 6 g", "more than nothing"),
        (pieces_from_text, "two sleeves", "no piece"),
        (pieces_from_text, "0 of 10 x 10 cm", "no area"),
        (yarn_from_text, "0 g", "no yarn"),
    ],
)
def test_what_is_no_yarn_no_swatch_and_no_piece_is_answered_with_an_example(make, text, says):
    with pytest.raises(PlanError, match=says) as caught:
        make(text)
    assert "for example" in str(caught.value)


def test_a_length_without_a_thickness_and_pieces_without_a_swatch_have_no_measure_in_common():
    with pytest.raises(PlanError, match="thickness of your yarn is needed"):
        yarn_need(pattern_from_text("400 m"), have("320 g"))
    with pytest.raises(PlanError, match="a swatch of your yarn is needed"):
        yarn_need(pieces_from_text("50 x 60 cm"), have("320 g"))
    with pytest.raises(PlanError, match="too small to scale up"):
        yarn_need(pieces_from_text("50 x 60 cm"), have("320 g", swatch_from_text("3 x 4 cm, 1 g")))
