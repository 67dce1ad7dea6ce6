"""Two numbers read only together: what the second leaves open stays open, however many days there are."""

import math

import pytest

from dyesession.dyeing.learning_beside import LearnedBeside, Reading, learn_beside
from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.priors import UPTAKE_RATE, Prior, partition_prior

WELD = partition_prior("wool", "weld")
ERROR, SWING = 0.1, 0.2


def left(partition: float, rate: float, minutes: float) -> float:
    return 1.0 - partition / (partition + 30.0) * -math.expm1(-rate * minutes)


def learned(partition: float, rate: float, holds: list[float]) -> LearnedBeside:
    told = [Reading(math.log(left(partition, rate, one)), ERROR) for one in holds]
    return learn_beside(WELD, UPTAKE_RATE, told, lambda k, r, i: math.log(left(k, r, holds[i])), SWING)


def wide(prior: Prior) -> float:
    return math.log(prior.high / prior.low)


def test_many_days_held_alike_do_not_tell_a_slow_dye_from_one_that_is_little_taken() -> None:
    """Three quarters left after 40 minutes: half would be taken in the end at 0.017 a minute, a quarter at once."""
    slow, quick = (30.0, 0.0173), (10.0, 1.0)
    assert left(*slow, 40.0) == pytest.approx(left(*quick, 40.0), rel=0.01)
    found = learned(*slow, [40.0] * 16)
    assert found.own.low < quick[0] * 1.05 and found.own.high > slow[0]


def test_holds_that_differ_tell_them_apart() -> None:
    alike, apart = learned(60.0, 0.03, [50.0] * 12), learned(60.0, 0.03, [25.0, 40.0, 60.0, 90.0, 130.0, 180.0] * 2)
    assert wide(apart.own) < 0.7 * wide(alike.own) and wide(apart.beside) < 0.7 * wide(alike.beside)
    assert apart.own.low < 60.0 < apart.own.high and apart.beside.low < 0.03 < apart.beside.high


def test_the_slower_it_is_the_more_it_would_take_in_the_end() -> None:
    at = learned(60.0, 0.03, [50.0] * 6).at
    places, takes = [place for place, _ in at], [prior.centre for _, prior in at]
    assert places == sorted(places) and takes == sorted(takes, reverse=True)
    assert all(wide(prior) < wide(learned(60.0, 0.03, [50.0] * 6).next_day) + 1e-9 for _, prior in at[1:])


def test_an_error_that_all_days_share_is_not_averaged_away() -> None:
    holds = [90.0] * 16
    told = [Reading(math.log(left(60.0, 0.1, 90.0)), ERROR)] * 16

    def predict(partition: float, rate: float, i: int) -> float:
        return math.log(left(partition, rate, holds[i]))

    alone, shared = (learn_beside(WELD, UPTAKE_RATE, told, predict, SWING, error) for error in (0.0, 0.1))
    assert shared.own.low < alone.own.low * 0.95 and shared.own.high > alone.own.high * 1.02


def test_without_a_day_both_guesses_stand_and_an_error_of_nought_is_refused() -> None:
    found = learn_beside(WELD, UPTAKE_RATE, [], lambda k, r, i: 0.0, SWING)
    assert (found.own, found.next_day, found.beside, found.at) == (WELD, WELD, UPTAKE_RATE, ())
    with pytest.raises(OutOfRange):
        learn_beside(WELD, UPTAKE_RATE, [Reading(-1.0, 0.0)], lambda k, r, i: 0.0, SWING)
