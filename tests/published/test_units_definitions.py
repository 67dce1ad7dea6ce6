"""Units against the statutes and handbooks that define them, and against pint as an independent table.

UK: Weights and Measures Act 1985, Sch. 1 (legislation.gov.uk/ukpga/1985/72/schedule/1, and Pt V as it stood
in 1991: pound, ounce, ounce troy; the gallon as reported at sizes.com/units/gallon_imperial.htm); Act of
1878 as printed in Cooley's Cyclopaedia (stone, hundredweight). US: NIST Handbook 44, App. C (read at
yumpu.com/en/document/view/67962081, pages 450 and 461). Yard and pound: agreement of 1 July 1959. Spoons
for labels: 21 CFR 101.9(b)(5)(viii).
"""

from fractions import Fraction

import pint
import pytest

from dyesession.units import (
    Ambiguous,
    as_share_of_fibre,
    mass_of_share,
    read_dose,
    read_length,
    read_mass,
    read_volume,
)
from dyesession.units.names import BY_NAME, Kind

REGISTRY = pint.UnitRegistry(non_int_type=Fraction)


@pytest.mark.parametrize(
    ("typed", "grams"),
    [
        ("1 lb", "453.59237"),  # 1985 Act, Sch. 1 Pt V
        ("16 oz", "453.59237"),  # ounce = 1/16 pound
        ("175 troy oz", 12 * Fraction("453.59237")),  # ounce troy = 12/175 pound
        ("1 troy oz", "31.1034768"),  # as in the text of 2009
        ("7000 grains", "453.59237"),  # NIST Handbook 44: the grain is the same in all three systems
        ("1 apothecaries ounce", 480 * Fraction("0.06479891")),
        ("1 apothecaries drachm", 60 * Fraction("0.06479891")),
        ("8 apothecaries drams", "31.1034768"),
        ("1 avoirdupois dram", Fraction(27 * 32 + 11, 32) * Fraction("0.06479891")),  # 27 11/32 grains
        ("16 avoirdupois drams", "28.349523125"),
        ("8 drachms (1/8 oz)", "28.349523125"),
        ("20 pennyweights", "31.1034768"),
        ("3 scruples", 60 * Fraction("0.06479891")),
        ("1 stone", 14 * Fraction("453.59237")),  # Act of 1878
        ("1 long hundredweight", 112 * Fraction("453.59237")),
        ("1 short hundredweight", 100 * Fraction("453.59237")),
        ("1 long ton", 2240 * Fraction("453.59237")),
        ("1 short ton", 2000 * Fraction("453.59237")),
        ("1 tonne", "1000000"),
        ("1 carat", "0.2"),
    ],
)
def test_weights_are_the_ones_defined(typed: str, grams: Fraction | str) -> None:
    assert read_mass(typed).aim == Fraction(grams)


IMPERIAL_GALLON = Fraction("4.54609")  # 1985 Act
US_GALLON = 231 * Fraction("2.54") ** 3 / 1000  # 231 cubic inches


@pytest.mark.parametrize(
    ("typed", "litres"),
    [
        ("1 imperial gallon", IMPERIAL_GALLON),
        ("4 imperial quarts", IMPERIAL_GALLON),
        ("8 imperial pints", IMPERIAL_GALLON),
        ("32 imperial gills", IMPERIAL_GALLON),
        ("160 imperial fl oz", IMPERIAL_GALLON),
        ("1280 imperial fluid drachms", IMPERIAL_GALLON),
        ("1 imperial peck", 2 * IMPERIAL_GALLON),
        ("1 imperial bushel", 8 * IMPERIAL_GALLON),
        ("1 US gallon", Fraction("3.785411784")),
        ("1 US gallon", US_GALLON),
        ("4 US quarts", US_GALLON),
        ("8 US pints", US_GALLON),
        ("32 US gills", US_GALLON),
        ("128 US fl oz", US_GALLON),
        ("16 US cups", US_GALLON),
        ("256 US tablespoons", US_GALLON),
        ("768 US teaspoons", US_GALLON),
        ("1 US bushel", Fraction("2150.42") * Fraction("2.54") ** 3 / 1000),  # NIST Handbook 44
        ("4 US pecks", Fraction("2150.42") * Fraction("2.54") ** 3 / 1000),
        ("1 cubic inch", Fraction("0.016387064")),
        ("1 imperial tablespoon", Fraction("0.01420653125")),
        ("1 imperial teaspoon", Fraction("0.0035516328125")),
        ("1 metric tablespoon", Fraction("0.015")),
        ("1 Australian tablespoon", Fraction("0.02")),
        ("1 metric cup", Fraction("0.25")),
        ("1 Japanese cup", Fraction("0.2")),
        ("1 imperial cup", Fraction("0.284130625")),
    ],
)
def test_measures_are_the_ones_defined(typed: str, litres: Fraction) -> None:
    assert read_volume(typed).aim == litres


@pytest.mark.parametrize(
    ("typed", "metres"),
    [
        ("1 yard", "0.9144"),
        ("3 feet", "0.9144"),
        ("36 inches", "0.9144"),
        ("1 inch", "0.0254"),
        ("1 mile", "1609.344"),
    ],
)
def test_lengths_are_the_ones_defined(typed: str, metres: str) -> None:
    assert read_length(typed).aim == Fraction(metres)


def test_the_printed_sizes_of_the_us_spoons() -> None:
    """NIST Handbook 44 works out to 4.92892159375 and 14.78676478125 ml exactly."""
    assert read_volume("1 US teaspoon").aim == Fraction("0.00492892159375")
    assert read_volume("1 US tablespoon").aim == Fraction("0.01478676478125")


# (system, name) in our table against the bare name pint knows the same unit by.
PINT_NAMES = {
    ("", "oz"): "ounce", ("", "lb"): "pound", ("", "stone"): "stone", ("", "grain"): "grain",
    ("", "g"): "gram", ("", "kg"): "kilogram", ("", "mg"): "milligram", ("", "tonne"): "tonne",
    ("troy", "oz"): "troy_ounce", ("troy", "lb"): "troy_pound",
    ("apothecaries", "oz"): "apothecary_ounce", ("apothecaries", "drachm"): "drachm",
    ("avoirdupois", "dram"): "dram", ("imperial", "cwt"): "long_hundredweight",
    ("US", "cwt"): "short_hundredweight", ("imperial", "ton"): "long_ton", ("US", "ton"): "short_ton",
    ("imperial", "gallon"): "imperial_gallon", ("US", "gallon"): "gallon",
    ("imperial", "quart"): "imperial_quart", ("US", "quart"): "quart",
    ("imperial", "pint"): "imperial_pint", ("US", "pint"): "pint",
    ("imperial", "gill"): "imperial_gill", ("US", "gill"): "gill",
    ("imperial", "fl oz"): "imperial_fluid_ounce", ("US", "fl oz"): "fluid_ounce",
    ("imperial", "fluid drachm"): "imperial_fluid_drachm", ("US", "fluid dram"): "fluid_dram",
    ("imperial", "cup"): "imperial_cup", ("US", "cup"): "cup", ("US", "tablespoon"): "tablespoon",
    ("US", "teaspoon"): "teaspoon", ("", "l"): "liter", ("", "ml"): "milliliter",
    ("", "cl"): "centiliter", ("", "dl"): "deciliter", ("", "yard"): "yard", ("", "foot"): "foot",
    ("", "inch"): "inch", ("", "cm"): "centimeter", ("", "mm"): "millimeter", ("", "km"): "kilometer",
    ("", "min"): "minute", ("", "h"): "hour", ("", "s"): "second", ("", "day"): "day",
    ("", "week"): "week",
}  # fmt: skip
BASES = {Kind.MASS: "gram", Kind.VOLUME: "liter", Kind.LENGTH: "meter", Kind.TIME: "minute"}


@pytest.mark.parametrize("ours", PINT_NAMES, ids=" ".join)
def test_an_independent_table_of_units_agrees_exactly(ours: tuple[str, str]) -> None:
    (unit,) = BY_NAME[ours]
    theirs = REGISTRY.Quantity(Fraction(1), PINT_NAMES[ours]).to(BASES[unit.kind]).magnitude
    assert unit.size == theirs


@pytest.mark.parametrize(
    ("asked", "bare"), [("3 gallon", "gallon"), ("3 pint", "pint"), ("3 quart", "quart"), ("3 gill", "gill"),
                        ("3 peck", "peck"), ("3 bushel", "bushel"), ("3 fl oz", "fluid_ounce")]
)  # fmt: skip
def test_where_the_independent_table_silently_takes_the_us_measure_we_ask(asked: str, bare: str) -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_volume(asked)
    imperial, us = (read_volume(choice.text).aim for choice in unclear.value.choices)
    assert us == 3 * REGISTRY.Quantity(Fraction(1), bare).to("liter").magnitude
    assert imperial == 3 * REGISTRY.Quantity(Fraction(1), f"imperial_{bare}").to("liter").magnitude


def test_two_spellings_of_one_old_word_do_not_differ_by_a_factor_of_two() -> None:
    """The independent table gives dram 1.77 g and drachm 3.89 g; here both words ask the same question."""
    theirs = [REGISTRY.Quantity(Fraction(1), word).to("gram").magnitude for word in ("dram", "drachm")]
    assert theirs[1] / theirs[0] > 2
    for word in ("dram", "drachm", "dr"):
        with pytest.raises(Ambiguous) as unclear:
            read_mass(f"1 {word}")
        sizes = {read_mass(choice.text).aim for choice in unclear.value.choices}
        assert sizes == {*theirs, Fraction("28.349523125") / 8}


def test_the_glossary_of_1916_is_within_its_own_rounding() -> None:
    """Mairet: a gramme about 15 1/2 grains, a kilo 2 lb 3.2 oz, a litre nearly 1 3/4 pints; each within 0.6
    %."""
    for ours, theirs in (
        (read_mass("15 1/2 grains").aim, read_mass("1 g").aim),
        (read_mass("2 lb 3.2 oz").aim, read_mass("1 kg").aim),
        (read_volume("1 3/4 imperial pints").aim, read_volume("1 l").aim),
    ):
        assert 0 < abs(ours / theirs - 1) < Fraction(6, 1000)


def test_two_and_a_half_ounces_in_grams() -> None:
    assert round(float(read_mass("2.5 oz").aim), 2) == 70.87


def test_three_to_five_per_cent_of_cochineal_on_eighty_grams() -> None:
    weighed = mass_of_share(as_share_of_fibre(read_dose("3-5 % WOF")), read_mass("80 g"))
    assert (weighed.low, weighed.high) == (Fraction("2.4"), Fraction("4.0"))
