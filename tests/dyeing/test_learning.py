"""A dyer's own number out of several days: narrower with days, honest, and not swung by one odd day."""

import math
import random

import pytest

from dyesession.dyeing.bands import from_scale, quantile, to_scale
from dyesession.dyeing.learning import Told, learn, learn_slope
from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.priors import KEPT_SHARE, Prior, partition_prior

MADDER = partition_prior("wool", "madder root")
SWING, ERROR = 0.25, 0.15
EXPONENT = Prior("depth", 0.97, 0.75, 1.15, "log", "a guess")


def days(middle: float, count: int, seed: int = 1) -> list[Told]:
    draw = random.Random(seed)
    away = math.hypot(SWING, ERROR)
    return [Told(middle * math.exp(draw.gauss(0.0, away)), ERROR) for _ in range(count)]


def width(prior: Prior) -> float:
    return to_scale(prior.high, prior.scale) - to_scale(prior.low, prior.scale)


def test_without_a_day_the_guess_stands() -> None:
    found = learn(MADDER, [], SWING)
    assert found.own == MADDER and found.next_day == MADDER and found.odd == ()


def test_every_day_narrows_the_band_and_a_further_day_is_never_surer_than_the_number() -> None:
    found = [learn(MADDER, days(110.0, 12)[:count], SWING) for count in (1, 3, 6, 12)]
    widths = [width(MADDER), *(width(one.own) for one in found)]
    assert widths == sorted(widths, reverse=True)
    assert all(width(one.next_day) > width(one.own) for one in found)
    assert found[-1].own.low < 110.0 < found[-1].own.high


def test_one_odd_day_does_not_swing_it_and_is_named() -> None:
    sound = days(110.0, 7)
    plain = learn(MADDER, sound, SWING)
    swung = learn(MADDER, [*sound, Told(900.0, ERROR)], SWING)
    assert swung.odd == (7,)
    assert abs(math.log(swung.own.centre / plain.own.centre)) < 0.1
    mean_moves = math.log(900.0 / 110.0) / 8
    assert mean_moves > 0.25  # what a plain mean would have done


def test_one_day_far_from_the_guess_is_doubted_and_several_that_agree_are_believed() -> None:
    far = 5000.0
    assert learn(MADDER, [Told(far, ERROR)], SWING).own.centre < 600.0
    assert learn(MADDER, [Told(far, ERROR)] * 6, SWING).own.centre == pytest.approx(far, rel=0.2)


def test_shares_stay_shares() -> None:
    found = learn(KEPT_SHARE, [Told(0.9, 0.2)] * 8, 0.2)
    assert 0.0 < found.next_day.low < found.own.low < 0.9 < found.own.high < found.next_day.high < 1.0


@pytest.mark.parametrize("count", [2, 6])
def test_a_further_day_lies_in_its_band_as_often_as_it_says(count: int) -> None:
    """Dyers drawn from the guess, days swinging by a normal law: the band must hold 85 to 95 % of next days."""
    draw = random.Random(count)
    held = 0
    trials = 160
    for _ in range(trials):
        middle = quantile(MADDER.centre, MADDER.low, MADDER.high, MADDER.scale, draw.uniform(0.02, 0.98))
        swing = SWING * math.exp(draw.gauss(0.0, 0.3))
        shown = [Told(middle * math.exp(draw.gauss(0.0, math.hypot(swing, ERROR))), ERROR) for _ in range(count)]
        ahead = learn(MADDER, shown, SWING).next_day
        held += ahead.low <= middle * math.exp(draw.gauss(0.0, swing)) <= ahead.high
    assert 0.85 <= held / trials <= 0.975


def test_a_slope_is_found_through_points_of_unknown_height_with_one_odd_among_them() -> None:
    points = [(x, 3.0 + 0.8 * x, 0.1) for x in (1.0, 1.5, 2.0, 2.7, 3.2, 4.0)]
    found = learn_slope(EXPONENT, points)
    assert found.low < 0.8 < found.high and width(found) < width(EXPONENT) / 2.0
    odd = learn_slope(EXPONENT, [*points, (4.0, 9.0, 0.1)])
    assert odd.centre == pytest.approx(found.centre, rel=0.05)
    assert learn_slope(EXPONENT, points[:1]) == EXPONENT


def test_what_cannot_stand_on_the_scale_is_refused() -> None:
    with pytest.raises(OutOfRange):
        learn(KEPT_SHARE, [Told(1.2, 0.1)], 0.2)
    with pytest.raises(OutOfRange):
        learn(MADDER, [Told(-1.0, 0.1)], SWING)
    with pytest.raises(OutOfRange):
        learn(MADDER, [Told(100.0, 0.0)], SWING)
    assert from_scale(to_scale(100.0, "log"), "log") == pytest.approx(100.0)
