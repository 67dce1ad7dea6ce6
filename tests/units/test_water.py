"""The water of a bath."""

from fractions import Fraction

import pytest

from dyesession.units import Ambiguous, UnitError, WaterPerKg, WaterVolume, read_water


@pytest.mark.parametrize(
    ("typed", "low", "high", "of"),
    [
        ("30 l/kg", 30, 30, None),
        ("20 l/kg of madder", 20, 20, "madder"),
        ("30 l per kg of wool", 30, 30, None),
        ("1:30", 30, 30, None),
        ("30 : 1", 30, 30, None),
        ("1:20-30", 20, 30, None),
        ("1:20 to 1:30", 20, 30, None),
        ("20-30 l/kg", 20, 30, None),
        ("3 l per 100 g", 30, 30, None),
        ("1:11.7", Fraction("11.7"), Fraction("11.7"), None),
    ],
)
def test_water_by_the_kilogram(typed: str, low: Fraction, high: Fraction, of: str | None) -> None:
    assert read_water(typed) == WaterPerKg(Fraction(low), Fraction(high), of, typed)


def test_a_plain_volume_of_water() -> None:
    assert read_water("7.2 l") == WaterVolume(Fraction("7.2"), Fraction("7.2"), "7.2 l")
    assert read_water("10 gal (UK)") == WaterVolume(Fraction("45.4609"), Fraction("45.4609"), "10 gal (UK)")


@pytest.mark.parametrize("typed", ["10 gallons", "20 quarts per lb", "10 gal per 2 1/2 lb"])
def test_a_bare_gallon_of_water_is_asked_about(typed: str) -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_water(typed)
    imperial, us = (read_water(choice.text) for choice in unclear.value.choices)
    assert imperial.low / us.low == Fraction("4.54609") / Fraction("3.785411784")


@pytest.mark.parametrize(
    "typed",
    [
        "to cover",
        "2:60",
        "1:0",
        "1:",
        ":30",
        "1:30:2",
        "1:30 to 1:20",
        "5 kg",
        "3 l per l",
        "30",
        "1:a",
        "1 30:1",
        "",
        "30 l/0 kg",
    ],
)
def test_what_is_no_amount_of_water_is_refused(typed: str) -> None:
    with pytest.raises(UnitError) as error:
        read_water(typed)
    assert not isinstance(error.value, Ambiguous)
