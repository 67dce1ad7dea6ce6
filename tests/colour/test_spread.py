import math
import random
import statistics

import pytest

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.spread import EXPECTED, ONE_DIRECTION, carried, together
from dyesession.colour.trouble import OutsideCloth
from tests.colour.shades_of_cloth import MADDER


def test_what_is_read_through_nothing_keeps_its_plus_minus() -> None:
    assert carried(lambda lab: lab, MADDER, 2.0) == pytest.approx(2.0, rel=0.05)
    assert carried(lambda lab: lab, MADDER, 0.0) == 0.0


def test_a_prediction_that_does_not_look_at_its_reading_carries_nothing() -> None:
    assert carried(lambda lab: MADDER, MADDER, 2.0) == 0.0


def test_a_step_into_what_cannot_be_is_taken_the_other_way() -> None:
    def only_darker(lab: Lab) -> Lab:
        if lab.lightness > MADDER.lightness:
            raise OutsideCloth("Too light, for example.")
        return lab

    assert carried(only_darker, MADDER, 1.0) == pytest.approx(1.0, rel=0.05)


def test_the_shares_are_those_of_noise_alike_in_all_directions() -> None:
    """Drawn at random: nine in ten lie within the ±, and in one direction within its share."""
    draw = random.Random(9)
    plus_minus = 2.5003
    points = [[draw.gauss(0, 1) for _ in range(3)] for _ in range(20_000)]
    assert statistics.fmean(math.hypot(*one) <= plus_minus for one in points) == pytest.approx(0.9, abs=0.01)
    along = ONE_DIRECTION * plus_minus
    assert statistics.fmean(abs(one[0]) <= along for one in points) == pytest.approx(0.9, abs=0.01)
    assert along * EXPECTED == pytest.approx(1.0, abs=0.01)


def test_independent_parts_add_as_squares() -> None:
    assert together(3.0, 4.0) == 5.0
    assert de00(MADDER, MADDER) == together()
