"""Old units: which are plain, which are asked about."""

import subprocess
import sys
from fractions import Fraction

import pytest

from dyesession.units import (
    Ambiguous,
    NeedsWeight,
    UnitError,
    read_fibre,
    read_length,
    read_mass,
    read_volume,
)
from dyesession.units.longtail import LONG_TAIL
from dyesession.units.names import ASKED, BY_NAME, HOUSEHOLD

MASSES = {"cwt", "hundredweight", "ton", "dr", "dram", "drachm", "gr", "grs"}


def reader_of(name: str):  # type: ignore[no-untyped-def]
    return read_mass if name in MASSES or name.removesuffix("s") in MASSES else read_volume


@pytest.mark.parametrize("name", sorted(ASKED))
def test_a_word_with_several_meanings_is_asked_about_and_every_meaning_is_as_large_as_its_label_says(
    name: str,
) -> None:
    read = reader_of(name)
    with pytest.raises(Ambiguous) as unclear:
        read(f"3 {name}")
    choices = unclear.value.choices
    assert len(choices) == len(ASKED[name]) >= 2
    sizes = [read(choice.text).aim / 3 for choice in choices]
    assert len(set(sizes)) == len(sizes)
    for choice, size in zip(choices, sizes, strict=True):
        if "(" in choice.label:
            said = read(choice.label.partition("(")[2].rstrip(")")).aim
            assert abs(size / said - 1) < Fraction(5, 1000)


@pytest.mark.parametrize("name", sorted(set(ASKED) | HOUSEHOLD))
def test_a_word_that_is_asked_about_or_refused_has_no_plain_size(name: str) -> None:
    assert ("", name) not in BY_NAME and ("", name) not in LONG_TAIL


@pytest.mark.parametrize(
    ("typed", "litres"),
    [
        ("1 imperial gallon", "4.54609"),
        ("1 gal (UK)", "4.54609"),
        ("1 UK gal", "4.54609"),
        ("1 British gallon", "4.54609"),
        ("1 US gallon", "3.785411784"),
        ("1 gallon (US)", "3.785411784"),
        ("1 U.S. gal.", "3.785411784"),
        ("1 imperial pint", "0.56826125"),
        ("20 imp fl oz", "0.56826125"),
        ("1 pint (imperial)", "0.56826125"),
        ("350 ml", "0.35"),
        ("350 mL", "0.35"),
        ("35 cl", "0.35"),
        ("7.2 L", "7.2"),
    ],
)
def test_a_volume_with_its_country_named_is_plain(typed: str, litres: str) -> None:
    assert read_volume(typed).aim == Fraction(litres)


def test_two_unclear_measures_of_one_kind_are_one_question() -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_volume("3 pints to 1 gallon")
    assert [choice.text for choice in unclear.value.choices] == [
        "3 imperial pints to 1 imperial gallon",
        "3 US pints to 1 US gallon",
    ]


def test_gr_may_be_grams_or_grains() -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_mass("7000 gr")
    assert [read_mass(choice.text).aim for choice in unclear.value.choices] == [7000, Fraction("453.59237")]


def test_a_plain_mistake_is_reported_before_a_question_is_asked() -> None:
    with pytest.raises(UnitError, match="left over") as error:
        read_volume("3 gallon of rain")
    assert not isinstance(error.value, Ambiguous)


@pytest.mark.parametrize(
    "typed", ["1 tablespoon", "2 cups", "3 handfuls", "2 skeins", "20 ml", "1 US teaspoon"]
)
def test_a_measure_that_is_no_weight_needs_weighing(typed: str) -> None:
    with pytest.raises(NeedsWeight, match="needs a weight"):
        read_mass(typed)


@pytest.mark.parametrize(
    ("typed", "metres"),
    [("10 yards", "9.144"), ("36 in", "0.9144"), ("5 ft 6 in", "1.6764"), ("30 cm", "0.3")],
)
def test_lengths_are_exact(typed: str, metres: str) -> None:
    assert read_length(typed).aim == Fraction(metres)


COMMON = """
import sys
from dyesession.units import *
for typed in ("240 g", "2.4 kg", "50 mg", "2 lb 3 oz"):
    read_mass(typed)
for typed in ("7.2 l", "350 ml", "10 gal (UK)", "3 US pint"):
    read_volume(typed)
for typed in ("12 %", "1 1/2 oz per 2 1/2 lb", "2 g/l", "6.25 % of alum"):
    read_dose(typed)
read_temperature("85 degC"), read_duration("1 h 15 min")
read_water("20 l/kg of madder"), read_fibre("240 g wool")
assert "pint" not in sys.modules, "pint was loaded"
read_mass("1 carat")
assert "pint" in sys.modules, "pint was not loaded for a rare unit"
"""


def test_pint_is_loaded_for_a_rare_unit_and_for_nothing_else() -> None:
    done = subprocess.run([sys.executable, "-c", COMMON], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_a_dash_and_an_unclear_measure_are_two_questions_answered_together() -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_volume("3-1/2 pint")
    assert [choice.text for choice in unclear.value.choices] == [
        "3 1/2 imperial pint",
        "1/2 to 3 imperial pint",
        "3 1/2 US pint",
        "1/2 to 3 US pint",
    ]


def test_too_many_questions_at_once_are_not_asked() -> None:
    with pytest.raises(UnitError, match="unclear in too many places") as error:
        read_mass("1,000 ton + 1 cwt + 1 drachm")
    assert not isinstance(error.value, Ambiguous)


def test_a_question_whose_answers_would_be_too_long_to_read_is_not_asked() -> None:
    with pytest.raises(UnitError, match="write each unit out") as error:
        read_volume("3" + " " * 193 + "gallon")
    assert not isinstance(error.value, Ambiguous)


def test_an_unclear_measure_among_the_words_of_a_fibre_is_not_asked_about() -> None:
    assert read_fibre("240 g 3 pint wool").words == "3 pint wool"
