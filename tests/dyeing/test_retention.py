import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.dyeing.limits import OutOfRange
from dyesession.dyeing.regain import bone_dry_of_air_dry_g
from dyesession.dyeing.retention import (
    FIBRE_HELD,
    SPENT_HELD,
    fibre_held,
    held_from_weights,
    held_l,
    spent_held,
)


def test_every_guess_has_a_band_and_a_source() -> None:
    guesses = [held for table in FIBRE_HELD.values() for held in table.values()] + list(SPENT_HELD.values())
    for held in guesses:
        assert 0 < held.low < held.centre < held.high
        assert len(held.source) > 10


@pytest.mark.parametrize("fibre", ["wool", "silk", "cotton"])
def test_the_harder_the_squeeze_the_less_is_held(fibre: str) -> None:
    lifted, squeezed, spun = (fibre_held(fibre, how) for how in ("lifted", "squeezed", "spun"))
    assert lifted.centre > squeezed.centre > spun.centre
    assert lifted.high > squeezed.high > spun.high


def test_pressed_dyestuff_holds_less_than_drained() -> None:
    assert spent_held("pressed").high < spent_held("drained").low < spent_held("not drained").low


def test_a_hundred_grams_of_wool_takes_a_twentieth_of_four_litres() -> None:
    assert held_l(100, 2) / 4 == pytest.approx(0.05)


@given(st.floats(10, 1000), st.floats(0.3, 6), st.sampled_from(["wool", "silk", "linen"]))
def test_wet_weights_give_back_what_is_held(air_dry: float, held: float, fibre: str) -> None:
    dry = bone_dry_of_air_dry_g(air_dry, fibre)[1]
    assert held_from_weights(dry * (1 + held), air_dry, fibre) == pytest.approx(held, rel=1e-9)


def test_a_lifted_weight_below_the_dry_weight_is_refused() -> None:
    with pytest.raises(OutOfRange, match="90 g wet and 100 g air-dry"):
        held_from_weights(90, 100, "wool")
    with pytest.raises(OutOfRange, match="air-dry weight is 0"):
        held_from_weights(10, 0, "wool")


def test_unknown_words_are_answered_with_the_known_ones() -> None:
    with pytest.raises(OutOfRange, match="lifted, squeezed, spun"):
        fibre_held("wool", "wrung")  # type: ignore[arg-type]
    with pytest.raises(OutOfRange, match="drained"):
        spent_held("sieved")  # type: ignore[arg-type]
