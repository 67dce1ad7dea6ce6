import math

import pytest

from dyesession.dyeing.limits import (
    OutOfRange,
    a_share,
    above_zero,
    between_shares,
    within,
    zero_or_more,
)
from dyesession.errors import UserError


@pytest.mark.parametrize("value", [0, -1, math.nan, math.inf])
def test_above_zero_takes_only_finite_numbers_above_nought(value: float) -> None:
    with pytest.raises(OutOfRange):
        above_zero("volume", value, "4 L")
    assert above_zero("volume", 0.1, "4 L") == 0.1


@pytest.mark.parametrize("value", [-0.1, math.nan, math.inf])
def test_zero_or_more_takes_nought_but_nothing_below(value: float) -> None:
    with pytest.raises(OutOfRange):
        zero_or_more("volume", value, "4 L")
    assert zero_or_more("volume", 0, "4 L") == 0


@pytest.mark.parametrize("value", [-0.01, 1.01, math.nan])
def test_shares_lie_between_nought_and_one(value: float) -> None:
    with pytest.raises(OutOfRange):
        a_share("share", value, "0.5")
    with pytest.raises(OutOfRange):
        between_shares("share", value, "0.5")
    assert a_share("share", 1, "0.5") == 1
    assert within("pH", 7, 0, 14, "4.5") == 7


@pytest.mark.parametrize("value", [0, 1])
def test_the_ends_are_not_between_shares(value: float) -> None:
    with pytest.raises(OutOfRange, match="more than 0 and less than 1"):
        between_shares("share", value, "0.5")


def test_the_sentence_says_what_was_expected_and_shows_an_example() -> None:
    with pytest.raises(UserError) as told:
        above_zero("liquor ratio", -3, "30 L/kg")
    assert str(told.value) == "The liquor ratio is -3, but it must be more than 0, for example 30 L/kg."
