"""One absurd log among six does not swing a number: it moves the middle by less than the printed half-width.

Each slip is one that happens at a stove: a nought too many, a lid left on over dinner, another dose than was typed.
"""

import math
from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

import pytest
from daybook.test_learning import read_day
from daybook.test_learning_pots_and_jars import JARS, cooled, dyed, heated

from dyesession.daybook.dyers_numbers import Number
from dyesession.daybook.learning import learnt
from dyesession.daybook.seen import What
from dyesession.dyeing.bands import to_scale
from dyesession.session.opening import LoggedDay

ODD = 3  # place of the odd one: neither the first nor the last


def on_days(days: Sequence[LoggedDay]) -> list[LoggedDay]:
    """Each on a day of its own, so that none stands for another."""
    return [
        replace(one, name=f"2026-06-{i + 1:02}-day", opened=replace(one.opened, at=one.opened.at + timedelta(days=i)))
        for i, one in enumerate(days)
    ]


def with_and_without(days: Sequence[LoggedDay], what: What, of: str = "", on: str = "") -> tuple[Number, Number]:
    """The number as six days teach it, and as they do without the odd one."""
    six = on_days(days)
    found = [learnt(one).number(what, of, on) for one in (six, [*six[:ODD], *six[ODD + 1 :]])]
    assert found[0] is not None and found[1] is not None
    assert set(found[0].days) - set(found[1].days) == {six[ODD].name}, "the odd day told something"
    return found[0], found[1]


def stays(swung: Number, plain: Number) -> None:
    scale = plain.own.scale
    low, middle, high = (to_scale(one, scale) for one in (plain.own.low, plain.own.centre, plain.own.high))
    moved = to_scale(swung.own.centre, scale) - middle
    assert low - middle < moved < high - middle, (plain.own, swung.own)


BATHS = [(0.2, 0.4, 480.0), (0.22, 0.36, 470.0), (0.19, 0.42, 500.0), (0.21, 0.38, 475.0), (0.18, 0.41, 490.0)]


@pytest.mark.parametrize("after", [2.0, 0.02])
def test_a_bath_s_strength_ten_times_too_strong_or_too_weak_does_not_swing_what_the_fibre_takes(after: float) -> None:
    days = [read_day("a-day", *one) for one in [*BATHS[:ODD], (after, 0.4, 480.0), *BATHS[ODD:]]]
    for what in ("exhaustion", "uptake rate"):
        stays(*with_and_without(days, what, "madder root", "wool"))  # type: ignore[arg-type]


@pytest.mark.parametrize("second", [4.0, 0.04])
def test_a_further_strain_ten_times_too_strong_or_too_weak_does_not_swing_the_share_kept(second: float) -> None:
    days = [read_day("a-day", *one) for one in [*BATHS[:ODD], (0.2, second, 480.0), *BATHS[ODD:]]]
    for what in ("kept share", "stiffening"):
        stays(*with_and_without(days, what, "madder root"))  # type: ignore[arg-type]


@pytest.mark.parametrize("wet_g", [4800.0, 248.0, 1500.0])
def test_a_wet_weight_with_a_nought_too_many_or_of_a_dry_skein_does_not_swing_what_fibre_holds(wet_g: float) -> None:
    days = [read_day("a-day", *one) for one in [*BATHS[:ODD], (0.2, 0.4, wet_g), *BATHS[ODD:]]]
    stays(*with_and_without(days, "liquor held", "wool"))


@pytest.mark.parametrize("absurd", [4.0, 10.0, 0.1])
def test_a_lid_left_on_or_a_reading_noted_hours_late_does_not_swing_a_pot_s_cooling(absurd: float) -> None:
    factors = [1.2, 1.25, 1.15, absurd, 1.22, 1.18]
    stays(*with_and_without([cooled(one) for one in factors], "cooling", "wash pot"))


@pytest.mark.parametrize("absurd", [6.0, 16.0])
def test_a_pot_reached_and_noted_after_dinner_does_not_swing_the_stove(absurd: float) -> None:
    days = [heated(one)[0] for one in (1.6, 1.55, 1.7, absurd, 1.65, 1.5)]
    stays(*with_and_without(days, "stove power"))


@pytest.mark.parametrize("madder_g", [1200.0, 12.0])
def test_a_dose_typed_with_a_nought_too_many_or_too_few_does_not_swing_how_strong_a_jar_is(madder_g: float) -> None:
    jars = [(JARS[0], 1.0), (JARS[1], 1.4), (JARS[0], 1.03), (JARS[1], 1.36), (JARS[0], 0.98), (JARS[1], 1.42)]
    days = [dyed(1, madder_g if i == ODD else 120.0, depth, jar) for i, (jar, depth) in enumerate(jars)]
    stays(*with_and_without(days, "strength", "madder root", JARS[1]))
    # The other jar is no odder for it, though each stands beside the other.
    six = on_days(days)
    swung, plain = (
        learnt(one).number("strength", "madder root", JARS[0]) for one in (six, [*six[:ODD], *six[ODD + 1 :]])
    )
    assert swung is not None and plain is not None
    stays(swung, plain)


@pytest.mark.parametrize("typed_g", [900.0, 9.0])
def test_a_dose_typed_with_a_nought_too_many_or_too_few_does_not_swing_how_depth_follows_dose(typed_g: float) -> None:
    grams = (40.0, 60.0, 240.0, 90.0, 120.0, 170.0)
    days = [dyed(1, typed_g if i == ODD else one, (one / 120.0) ** 0.8) for i, one in enumerate(grams)]
    stays(*with_and_without(days, "depth exponent", "madder root", "wool"))


def test_the_measure_itself_would_tell_a_mean_that_is_swung() -> None:
    days = [cooled(one) for one in (1.2, 1.25, 1.15, 10.0, 1.22, 1.18)]
    swung, plain = with_and_without(days, "cooling", "wash pot")
    mean = math.exp(math.fsum(math.log(one) for one in (1.2, 1.25, 1.15, 10.0, 1.22, 1.18)) / 6.0)
    with pytest.raises(AssertionError):
        stays(replace(swung, own=replace(swung.own, centre=mean)), plain)
