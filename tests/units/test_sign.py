"""Figures with a minus in front are read as they stand, so that somebody can ask about them."""

import pytest

from dyesession.units import UnitError, read_signed_temperature, sign_of
from dyesession.units.amount import Quantity


@pytest.mark.parametrize(
    ("text", "sign", "bare"),
    [("-5 g", -1, "5 g"), (" − 2,5 l", -1, "2,5 l"), ("5 - 6 g", 1, "5 - 6 g"), ("- alum", 1, "- alum"), ("", 1, "")],
)
def test_a_minus_counts_only_straight_before_a_figure(text: str, sign: int, bare: str) -> None:
    assert sign_of(text) == (sign, bare)


@pytest.mark.parametrize(
    ("text", "degrees_c"), [("-3", -3.0), ("-3 °C", -3.0), ("-4 F", -20.0), ("14 F", -10.0), ("82", 82.0)]
)
def test_degrees_below_nought_are_read_on_their_own_scale(text: str, degrees_c: float) -> None:
    read = read_signed_temperature(text)
    assert isinstance(read, Quantity)
    assert float(read.aim) == pytest.approx(degrees_c)


def test_what_is_no_temperature_is_refused_with_or_without_a_sign() -> None:
    with pytest.raises(UnitError):
        read_signed_temperature("-5 g")
