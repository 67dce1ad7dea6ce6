"""Strengths read at home, four ways on one linear scale, each with its own error.

Columns of equal depth: Beech, The Dyeing of Woollen Fabrics, 1902, p. 217: alike at 30 and 25 cm, the weaker
is 25/30 = 83.3 % of the stronger. Light falls off with strength times path (Beer and Lambert).
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.strength import (
    HOW_TO,
    MATCH_SD,
    TYPED_SD,
    USUAL_SD,
    by_columns,
    by_dilution,
    by_light,
    is_nothing,
    sd_of,
    thinned,
)

shares = st.floats(0.02, 1.0)


def light_through(strength: float, path_mm: float, clear: tuple[float, ...]) -> tuple[float, ...]:
    """Three bands of light past a liquor that takes most of the blue and hardly any red."""
    return tuple(c * math.exp(-k * strength * path_mm) for c, k in zip(clear, (0.02, 0.08, 0.2), strict=True))


CLEAR = (0.92, 0.9, 0.88)


def test_columns_alike_at_30_and_25_make_the_weaker_five_sixths_of_the_stronger() -> None:
    found = by_columns(this_mm=300.0, other_mm=250.0)
    assert found.share == pytest.approx(25.0 / 30.0)
    assert 0.1 < found.sd < 0.11


def test_short_columns_are_read_less_surely() -> None:
    assert by_columns(20.0, 15.0).sd > by_columns(80.0, 60.0).sd > by_columns(300.0, 250.0).sd


def test_one_spoon_and_two_of_water_make_a_third() -> None:
    assert by_dilution(2.0).share == pytest.approx(1.0 / 3.0)
    assert by_dilution(0.0, 3.0).share == 1.0


@given(shares, st.floats(0.3, 2.0))
def test_light_through_two_dishes_tells_their_ratio(share: float, strong: float) -> None:
    this, other = light_through(share * strong, 10.0, CLEAR), light_through(strong, 10.0, CLEAR)
    try:
        found = by_light(this, other, CLEAR)
    except OutOfRange:
        assert share * strong * 0.2 * 10.0 < 0.06 or strong > 1.5 or share < 0.3
        return
    assert found.share == pytest.approx(share, rel=1e-6)
    assert found.sd >= 0.08


def test_a_deeper_glass_of_the_paler_liquor_is_allowed_for() -> None:
    this, other = light_through(0.2, 50.0, CLEAR), light_through(1.0, 10.0, CLEAR)
    found = by_light(this, other, CLEAR, this_path_mm=50.0, other_path_mm=10.0, method="liquor colour")
    assert found.share == pytest.approx(0.2)
    assert found.method == "liquor colour"


def test_a_liquor_too_dark_to_read_is_to_be_thinned() -> None:
    black = (0.01, 0.005, 0.001)
    with pytest.raises(OutOfRange, match="too dark"):
        by_light(black, light_through(1.0, 10.0, CLEAR), CLEAR)
    once = by_light(light_through(1.0, 10.0, CLEAR), light_through(0.5, 10.0, CLEAR), CLEAR)
    again = thinned(once, 4.0)
    assert again.share == pytest.approx(8.0)
    assert again.sd > once.sd


@pytest.mark.parametrize(
    "bad",
    [
        lambda: by_dilution(-1.0),
        lambda: by_dilution(1.0, 0.0),
        lambda: by_columns(0.0, 20.0),
        lambda: by_light((0.5,), (0.5, 0.4), (0.9, 0.9)),
        lambda: thinned(by_dilution(1.0), 0.5),
    ],
)
def test_what_cannot_be_read_is_refused_in_a_sentence(bad: object) -> None:
    with pytest.raises(OutOfRange):
        bad()  # type: ignore[operator]


def test_every_way_has_an_error_of_its_own_and_says_how_it_is_done() -> None:
    assert set(USUAL_SD) == set(HOW_TO)
    assert len(set(USUAL_SD.values())) == len(USUAL_SD)
    assert sd_of("read", 0.5, "dilution match") == pytest.approx(MATCH_SD, rel=0.02)
    assert sd_of("typed", 0.5) == pytest.approx(TYPED_SD, rel=0.01)
    assert sd_of("matched", 0.5, "equal columns", 0.3) == pytest.approx(0.3, rel=0.01)


def test_next_to_no_colour_is_read_less_surely() -> None:
    assert sd_of("matched", 0.005) > 5.0 * sd_of("matched", 0.5)
    assert is_nothing(0.005)
    assert not is_nothing(0.05)
