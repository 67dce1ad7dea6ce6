"""Weight with words, percentages, and what is never spooned."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dyesession.units import (
    Ambiguous,
    NeedsWeight,
    UnitError,
    read_fibre,
    read_mass,
    read_percent,
    refuse_spoon_for,
)


@pytest.mark.parametrize(
    ("typed", "grams", "words"),
    [
        ("240 g wool", "240 g", "wool"),
        ("165 g wool fleece", "165 g", "wool fleece"),
        ("2 lb 3 oz grey wool yarn", "2 lb 3 oz", "grey wool yarn"),
        ("240g", "240 g", ""),
        ("240 g of wool", "240 g", "wool"),
        ("2 lb, grey", "2 lb", "grey"),
        ("100 g 2-ply wool", "100 g", "2-ply wool"),
        ("240 g 2/6 worsted", "240 g", "2/6 worsted"),
        ("3 to 4 oz silk", "3 to 4 oz", "silk"),
        ("90 g + 75 g wool", "165 g", "wool"),
        ("½ lb cotton (carded)", "8 oz", "cotton (carded)"),
    ],
)
def test_a_fibre_is_a_weight_and_the_words_after_it(typed: str, grams: str, words: str) -> None:
    read = read_fibre(typed)
    assert (read.mass.low, read.mass.high) == (read_mass(grams).low, read_mass(grams).high)
    assert read.words == words


@pytest.mark.parametrize(
    ("typed", "kind", "why"),
    [
        ("240 wool", UnitError, "no unit this program knows"),
        ("wool", UnitError, "no number"),
        ("2 skeins wool", NeedsWeight, "needs a weight"),
        ("150 g merino + 50 g silk", UnitError, "more than one fibre"),
        ("240 g wool\x1b[2J", UnitError, "unprintable"),
        ("240", UnitError, "no unit"),
    ],
)
def test_a_fibre_without_a_weight_is_refused(typed: str, kind: type[UnitError], why: str) -> None:
    with pytest.raises(kind, match=why):
        read_fibre(typed)


def test_a_bare_number_for_a_weight_is_refused_with_an_example() -> None:
    with pytest.raises(UnitError, match="has no unit; expected a weight with its unit, for example “240 g”"):
        read_mass("240")


@pytest.mark.parametrize(
    ("typed", "low", "high"),
    [
        ("12 %", 12, 12),
        ("12%", 12, 12),
        ("20 to 40 %", 20, 40),
        ("20 % to 40 %", 20, 40),
        ("31", 31, 31),
        ("6 1/4 per cent", Fraction(25, 4), Fraction(25, 4)),
        ("0", 0, 0),
        ("600 %", 600, 600),
    ],
)
def test_a_percentage_is_in_hundredths(typed: str, low: Fraction, high: Fraction) -> None:
    assert (read_percent(typed).low, read_percent(typed).high) == (low, high)


def test_a_bare_half_may_be_half_a_per_cent_or_fifty() -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_percent("0.5")
    assert [read_percent(choice.text).aim for choice in unclear.value.choices] == [Fraction(1, 2), 50]


@given(st.fractions(0, 1, max_denominator=97).filter(lambda f: 0 < f < 1))
def test_both_readings_of_a_bare_share_are_exact(share: Fraction) -> None:
    with pytest.raises(Ambiguous) as unclear:
        read_percent(str(share))
    assert [read_percent(choice.text).aim for choice in unclear.value.choices] == [share, 100 * share]


@pytest.mark.parametrize(
    "substance",
    [
        "iron",
        "Ferrous sulphate",
        "copperas",
        "green vitriol",
        "copper sulphate",
        "blue-vitriol",
        "bluestone",
        "verdigris",
        "lye",
        "caustic soda",
        "Sodium hydroxide",
    ],
)
def test_iron_copper_and_lye_are_never_spooned(substance: str) -> None:
    with pytest.raises(NeedsWeight, match="never measured by the spoon"):
        refuse_spoon_for(substance)


@pytest.mark.parametrize("substance", ["alum", "cream of tartar", "madder", "environment", "polyester", ""])
def test_other_substances_may_be_spooned_at_the_dyers_risk(substance: str) -> None:
    refuse_spoon_for(substance)
    with pytest.raises(NeedsWeight):
        refuse_spoon_for(f"{substance} with iron")
