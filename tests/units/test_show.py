"""Amounts as they are read on a screen."""

from fractions import Fraction
from functools import partial

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.units import (
    HeatWord,
    Quantity,
    read_duration,
    read_mass,
    rounded,
    show_avoirdupois,
    show_duration,
    show_fahrenheit,
    show_figure,
    show_mass,
    show_percent,
    show_range,
    show_temperature,
    show_volume,
)
from dyesession.units.names import OUNCE_G


@pytest.mark.parametrize(
    ("grams", "shown", "estimated"),
    [
        (17.8, "17.8 g", "18 g"),
        (17.76, "17.8 g", "18 g"),
        (240, "240 g", "240 g"),
        (1250, "1250 g", "1250 g"),
        (12_350, "12.4 kg", "12 kg"),
        (12_000, "12 kg", "12 kg"),
        (71.23, "71.2 g", "71 g"),
        (2.0, "2 g", "2 g"),
        (4.04, "4.04 g", "4 g"),
        (0.15, "0.15 g", "0.2 g"),
        (0.0125, "0.013 g", "0 g"),
        (0, "0 g", "0 g"),
        (-3.2, "-3.2 g", "-3.2 g"),
        (9.999, "10 g", "10 g"),
        (Fraction(1, 3), "0.33 g", "0.3 g"),
    ],
)
def test_a_weight_shows_the_figures_that_mean_something(grams: float, shown: str, estimated: str) -> None:
    assert show_mass(grams) == shown
    assert show_mass(grams, estimate=True) == estimated


@pytest.mark.parametrize(
    ("litres", "shown"),
    [
        (4.4, "4.4 L"),
        (2, "2 L"),
        (0.12, "120 mL"),
        (12.35, "12.4 L"),
        (0.9999, "1 L"),
        (1.25, "1.25 L"),
        (0, "0 L"),
    ],
)
def test_less_than_a_litre_shows_in_millilitres(litres: float, shown: str) -> None:
    assert show_volume(litres) == shown


@pytest.mark.parametrize(
    ("percent", "shown"),
    [
        (12, "12 %"),
        (6.25, "6.25 %"),
        (15.625, "15.6 %"),
        (500, "500 %"),
        (0.1875, "0.19 %"),
        (0.05, "0.05 %"),
    ],
)
def test_a_percentage(percent: float, shown: str) -> None:
    assert show_percent(percent) == shown


@pytest.mark.parametrize(
    ("minutes", "shown"),
    [
        (75, "1 h 15 min"),
        (45, "45 min"),
        (120, "2 h"),
        (1.5, "1 min 30 s"),
        (0.5, "30 s"),
        (0, "0 s"),
        (2880, "2 days"),
        (3060, "2 days 3 h"),
        (45.4, "45 min"),
        (59.7, "1 h"),
        (9.999, "10 min"),
        (-75, "-1 h 15 min"),
        (1439, "23 h 59 min"),
    ],
)
def test_a_time(minutes: float, shown: str) -> None:
    assert show_duration(minutes) == shown


def test_temperatures() -> None:
    assert show_temperature(85) == "85 °C"
    assert show_temperature(Fraction(155, 3)) == "51.7 °C"
    assert show_temperature(HeatWord.HAND_HOT) == "hand-hot"
    assert show_fahrenheit(85) == "185 °F"


def test_a_range_says_its_unit_once() -> None:
    assert show_range(58, 84, partial(show_mass, estimate=True)) == "58 to 84 g"
    assert show_range(0.9, 1.2, show_volume) == "900 mL to 1.2 L"
    assert show_range(71.21, 71.23, show_mass) == "71.2 g"
    assert show_range(3, 5, show_percent) == "3 to 5 %"
    assert show_range(75, 105, show_duration) == "1 h 15 min to 1 h 45 min"


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("2 lb 3 oz", "2 lb 3 oz"),
        ("1 1/2 oz", "1 1/2 oz"),
        ("1/4 lb", "4 oz"),
        ("16 oz", "1 lb"),
        ("2 g", "0.071 oz"),
        ("15.99 oz", "1 lb"),
        ("0 g", "0 oz"),
        ("1 lb 1/2 oz", "1 lb 1/2 oz"),
    ],
)
def test_pounds_and_ounces(typed: str, shown: str) -> None:
    assert show_avoirdupois(read_mass(typed).aim) == shown
    assert show_avoirdupois(-read_mass("4 oz").aim) == "-4 oz"


@given(st.integers(2, 2000))
def test_eighths_of_an_ounce_come_back_exactly(eighths: int) -> None:
    grams = OUNCE_G * eighths / 8
    assert read_mass(show_avoirdupois(grams)).aim == grams


@given(st.integers(0, 2879))
def test_whole_minutes_come_back_exactly(minutes: int) -> None:
    read = read_duration(show_duration(minutes))
    assert isinstance(read, Quantity) and read.aim == minutes


@given(st.fractions(Fraction(1, 100), 10**7, max_denominator=10**6))
def test_a_weight_shown_and_read_again_is_within_its_last_figure(grams: Fraction) -> None:
    assert abs(read_mass(show_mass(grams)).aim / grams - 1) <= Fraction(6, 100)
    shown = show_mass(grams, estimate=True)
    assert len(shown.partition(" ")[0].partition(".")[2]) <= 1
    for text in (shown, show_mass(grams)):
        figure = text.partition(" ")[0]
        assert "." not in figure or not figure.endswith("0")


@given(st.fractions(-(10**6), 10**6), st.integers(0, 6))
def test_rounding_is_never_off_by_more_than_half(value: Fraction, decimals: int) -> None:
    assert abs(rounded(value, decimals) - value) <= Fraction(1, 2 * 10**decimals)


def test_halves_round_away_from_nothing() -> None:
    assert [rounded(value, 0) for value in (0.5, 1.5, 2.5, -0.5)] == [1, 2, 3, -1]
    assert rounded(0.15, 1) == Fraction(2, 10)


def test_what_is_no_number_cannot_be_shown() -> None:
    for value in (float("nan"), float("inf")):
        with pytest.raises(ValueError, match=r"Invalid|invalid"):
            show_figure(value)
