"""Degrees, heat words and times."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.units import (
    OVERNIGHT,
    Ambiguous,
    HeatWord,
    Quantity,
    UnitError,
    read_duration,
    read_temperature,
)
from dyesession.units.heat import celsius, fahrenheit


def degrees(typed: str) -> tuple[Fraction, Fraction]:
    read = read_temperature(typed)
    assert isinstance(read, Quantity)
    return read.low, read.high


def minutes(typed: str) -> tuple[Fraction, Fraction]:
    read = read_duration(typed)
    assert isinstance(read, Quantity)
    return read.low, read.high


@pytest.mark.parametrize(
    "typed",
    [
        "85",
        "85 degC",
        "85 °C",
        "85°C",
        "85C",
        "85 c",
        "85 deg C",
        "85 ℃",
        "85°",
        "85 degrees",
        "185 F",
        "185 °F",
        "185 degF",
        "185 ℉",
        "185 degrees F",
    ],
)
def test_eighty_five_degrees_however_it_is_written(typed: str) -> None:
    assert degrees(typed) == (85, 85)


@pytest.mark.parametrize(
    ("typed", "low", "high"),
    [
        ("80-85 °C", 80, 85),
        ("80 to 85", 80, 85),
        ("140 to 158 F", 60, 70),
        ("80 °C to 185 °F", 80, 85),
        ("37,5 C", Fraction(75, 2), Fraction(75, 2)),
    ],
)
def test_a_range_of_degrees(typed: str, low: Fraction, high: Fraction) -> None:
    assert degrees(typed) == (low, high)


def test_a_bare_figure_hotter_than_a_bath_is_asked_about() -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_temperature("185")
    assert [degrees(choice.text)[0] for choice in unclear.value.choices] == [85, 185]


@pytest.mark.parametrize(
    ("typed", "low", "high"),
    [
        ("hand-hot", 40, 45),
        ("Hand hot", 40, 45),
        ("steaming", 60, 75),
        ("simmering", 85, 95),
        ("boiling", 100, 100),
    ],
)
def test_a_kitchen_without_a_thermometer_has_words(typed: str, low: int, high: int) -> None:
    word = read_temperature(typed)
    assert isinstance(word, HeatWord)
    assert (word.low_c, word.high_c) == (low, high) and low <= word.aim <= high
    assert read_temperature(word.word) is word


@pytest.mark.parametrize(
    "typed", ["warm", "", "85 g", "hot hot", "85 K", "-5 degC", "90 to 80 C", "85 C 3 F"]
)
def test_what_is_no_temperature_is_refused(typed: str) -> None:
    with pytest.raises(UnitError):
        read_temperature(typed)


@given(st.fractions(0, 300, max_denominator=1000))
def test_fahrenheit_and_back_is_exact(figure: Fraction) -> None:
    assert fahrenheit(celsius(figure)) == figure
    assert degrees(f"{figure} F")[0] == celsius(figure)


@pytest.mark.parametrize(
    ("typed", "low", "high"),
    [
        ("45 min", 45, 45),
        ("45 minutes", 45, 45),
        ("1 h 15", 75, 75),
        ("1h15", 75, 75),
        ("1 h 15 min", 75, 75),
        ("1h15m", 75, 75),
        ("1.5 h", 90, 90),
        ("1 1/2 hours", 90, 90),
        ("½ h", 30, 30),
        ("half an hour", 30, 30),
        ("2 days", 2880, 2880),
        ("1 day 3 h", 1620, 1620),
        ("90 s", Fraction(3, 2), Fraction(3, 2)),
        ("2 weeks", 20160, 20160),
        ("10-15 min", 10, 15),
        ("45 min to 1 h", 45, 60),
        ("1 to 1 1/2 h", 60, 90),
        ("1 h to 1 h 30", 60, 90),
        ("4-5 days", 5760, 7200),
    ],
)
def test_what_a_dyer_types_for_a_time(typed: str, low: Fraction, high: Fraction) -> None:
    assert minutes(typed) == (low, high)


def test_overnight_is_no_number_of_minutes() -> None:
    assert read_duration("overnight") is OVERNIGHT
    assert read_duration(" Overnight ") is OVERNIGHT


def test_a_colon_may_stand_for_hours_or_minutes() -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_duration("1:15")
    assert [minutes(choice.text)[0] for choice in unclear.value.choices] == [75, Fraction(5, 4)]


@pytest.mark.parametrize(
    "typed", ["45", "soon", "1:75", "1:15:30", "1 h 75", "1 h 15 30", "45 g", "1:5.5", "overnight 2"]
)
def test_what_is_no_time_is_refused(typed: str) -> None:
    with pytest.raises(UnitError) as error:
        read_duration(typed)
    assert not isinstance(error.value, Ambiguous)
