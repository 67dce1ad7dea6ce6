"""Every recipe line of `old_recipes.csv`, worked out again or refused for a stated reason.

The figures were read in: Ethel M. Mairet, A Book on Vegetable Dyes, 1916 (Project Gutenberg 50079) and
Vegetable Dyes, 1938 (Project Gutenberg 24076); Franklin Beech, The Dyeing of Woollen Fabrics, 1902 (Project
Gutenberg 19985); an anonymous household receipt book; the Owen Cook Book; a druggist's leaflet of Carthage,
N.Y.; Workshop Receipts, first series. Two lines, marked `from-memory`, are from memory, unverified. The
column `source` names the place of each; the column `computed_percent_wof` was worked out from the weights,
by hand, by whoever read them. The recipes use chromium, tin and strong acids: they are here as arithmetic,
never as advice.
"""

import csv
import re
from decimal import ROUND_HALF_UP, Decimal, localcontext
from fractions import Fraction
from pathlib import Path

import pytest

from dyesession.units import (
    Ambiguous,
    Flat,
    NeedsWeight,
    PerBath,
    ShareOf,
    ShareOfFibre,
    as_share_of_fibre,
    percent_of_fibre,
    read_dose,
    read_mass,
    through,
)

Row = dict[str, str]
PLACES_PRINTED = 5  # the column was rounded to five decimals; anything shorter is exact

with (Path(__file__).parent / "old_recipes.csv").open(encoding="utf-8", newline="") as _file:
    ROWS: list[Row] = list(csv.DictReader(_file))
BY_ID = {row["id"]: row for row in ROWS}

# Lines whose figure the sums do not support, with the reason. Our arithmetic agrees with the print; the
# print is doubted.
MISPRINTS = {
    "M16-LOG-06/2": "25 per cent of sulphuric acid, where every sister recipe says 1",
    "M38-FUS-04/3": "33 per cent of logwood in a greenish yellow; in 1916, 2 drachms on 100 ounces",
    "M38-BRN-03/1": "6 1/2 lb of fibre with the ounces of the 1916 edition, which has 6 1/4 lb",
    "M38-BRN-03/2": "6 1/2 lb of fibre with the ounces of the 1916 edition, which has 6 1/4 lb",
    "M38-BRN-03/3": "6 1/2 lb of fibre with the ounces of the 1916 edition, which has 6 1/4 lb",
    "M38-BRN-03/4": "6 1/2 lb of fibre with the ounces of the 1916 edition, which has 6 1/4 lb",
}
# Words the reader of the books put after a figure; no book prints them.
REMARKS = {"(3 called safe)", "(as printed, suspect)"}


def by_weight(row: Row) -> bool:
    return bool(
        row["fibre_mass_value"] and row["ingredient_mass_value"] and row["fibre_mass_unit"] != "yards"
    )


def by_percent(row: Row) -> bool:
    return bool(row["stated_percent"]) and not row["ingredient_mass_value"]


WORKED = [row for row in ROWS if by_weight(row)]
STATED = [row for row in ROWS if by_percent(row)]
REFUSED = [row for row in ROWS if not by_weight(row) and not by_percent(row)]


def name(row: Row) -> str:
    return row["id"]


def amount(row: Row, of: str) -> str:
    """Write a weight of the row as a person would type it."""
    unit = row[f"{of}_mass_unit"]
    return row[f"{of}_mass_value"] if unit == "mixed" else f"{row[f'{of}_mass_value']} {unit}".strip()


def printed(row: Row) -> tuple[str, str]:
    low, _, high = row["computed_percent_wof"].partition("-")
    return low, high or low


def agrees(share: Fraction, text: str) -> bool:
    """Say whether a percentage is the printed one: exactly, or to the five decimals printed."""
    decimals = len(text.partition(".")[2])
    if decimals < PLACES_PRINTED:
        return share == Fraction(text)
    with localcontext() as exact:
        exact.prec = 60
        value = Decimal(share.numerator) / Decimal(share.denominator)
        return value.quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP) == Decimal(text)


def dose_of(row: Row) -> ShareOfFibre:
    """Read the row's dose as a person would type it from the book."""
    ingredient, fibre = amount(row, "ingredient"), amount(row, "fibre")
    if row["ingredient_mass_unit"] == "parts":
        return as_share_of_fibre(read_dose(f"{ingredient} to {fibre}"))
    if " per " in ingredient or ingredient.startswith("1 part to"):
        return as_share_of_fibre(read_dose(ingredient))
    if " of the " in ingredient:
        nested = read_dose(ingredient)
        assert isinstance(nested, ShareOf) and nested.ingredient == "alum"
        return through(nested, dose_of(BY_ID[row["id"].replace("/2", "/1")]))
    return as_share_of_fibre(read_dose(f"{ingredient} per {fibre}"))


def plain_weights(row: Row) -> bool:
    return row["fibre_mass_unit"] in ("lb", "oz") and row["ingredient_mass_unit"] in (
        "lb",
        "oz",
        "mixed",
        "drachm(1/8 oz)",
    )


def test_no_line_of_the_table_is_passed_over() -> None:
    assert len(ROWS) == len(BY_ID) == 451
    assert (len(WORKED), len(STATED), len(REFUSED)) == (315, 130, 6)
    assert sum(plain_weights(row) for row in WORKED) == 296
    assert {row["id"] for row in WORKED + STATED + REFUSED} == set(BY_ID)
    assert not any(row["computed_percent_wof"] for row in REFUSED)


@pytest.mark.parametrize("row", WORKED, ids=name)
def test_a_line_with_both_weights_works_out_to_the_digits_printed(row: Row) -> None:
    share = dose_of(row)
    low, high = printed(row)
    assert agrees(100 * share.low, low) and agrees(100 * share.high, high)


@pytest.mark.parametrize("row", [row for row in WORKED if plain_weights(row)], ids=name)
def test_weighing_both_gives_the_same_share_as_reading_the_dose(row: Row) -> None:
    percent = percent_of_fibre(read_mass(amount(row, "ingredient")), read_mass(amount(row, "fibre")))
    share = dose_of(row)
    assert (percent.low, percent.high) == (100 * share.low, 100 * share.high)


def without_remark(stated: str) -> str:
    figure, remark = re.fullmatch(r"([^(]*[^( ])(?: (\(.*\)))?", stated).groups()  # type: ignore[union-attr]
    assert remark is None or remark in REMARKS
    return str(figure)


@pytest.mark.parametrize("row", STATED, ids=name)
def test_a_line_printed_as_a_percentage_reads_as_that_share(row: Row) -> None:
    share = as_share_of_fibre(read_dose(f"{without_remark(row['stated_percent'])} %"))
    low, high = printed(row)
    assert agrees(100 * share.low, low) and agrees(100 * share.high, high)


@pytest.mark.parametrize("row", [row for row in REFUSED if row["fibre_mass_unit"] == "yards"], ids=name)
def test_a_dose_for_so_many_yards_of_cloth_needs_a_weight(row: Row) -> None:
    with pytest.raises(NeedsWeight, match="a dose for a length and needs a weight"):
        read_dose(f"{amount(row, 'ingredient')} per {amount(row, 'fibre')}")


@pytest.mark.parametrize("row", [row for row in REFUSED if not row["fibre_mass_value"]], ids=name)
def test_a_dose_for_a_vat_needs_the_weight_of_the_fibre(row: Row) -> None:
    dose = read_dose(f"{amount(row, 'ingredient')} per {row['water_volume']}")
    assert isinstance(dose, PerBath) and dose.low > 0
    with pytest.raises(NeedsWeight, match="a volume of bath and needs a weight of fibre"):
        as_share_of_fibre(dose)
    flat = read_dose(amount(row, "ingredient"))
    assert isinstance(flat, Flat) and flat.low > 0
    with pytest.raises(NeedsWeight, match="a weight on its own and needs a weight of fibre"):
        as_share_of_fibre(flat)


def test_every_refused_line_is_refused_for_one_of_the_two_reasons() -> None:
    reasons = {row["id"]: "yards" if row["fibre_mass_unit"] == "yards" else "vat" for row in REFUSED}
    assert sorted(reasons.values()) == ["vat"] * 4 + ["yards"] * 2
    assert all(row["water_volume"] == "20 gal (UK)" for row in REFUSED if reasons[row["id"]] == "vat")


def test_a_bare_drachm_is_asked_about_where_the_table_says_which() -> None:
    row = BY_ID["M16-FUS-05/3"]
    with pytest.raises(Ambiguous) as unclear:
        read_dose(f"{row['ingredient_mass_value']} drachms per {amount(row, 'fibre')}")
    percents = [100 * as_share_of_fibre(read_dose(choice.text)).low for choice in unclear.value.choices]
    assert percents[0] == Fraction(1, 4) and percents[1] == Fraction(1, 8)


def test_the_doubted_figures_are_in_the_table_and_the_rest_are_not() -> None:
    suspect = {row["id"] for row in ROWS if "suspect" in row["stated_percent"]}
    half_pounds = {row["id"] for row in ROWS if row["fibre_mass_value"] == "6 1/2"}
    assert suspect | half_pounds == set(MISPRINTS)


@pytest.mark.parametrize("place", range(1, 5))
def test_the_fibre_of_the_tan_recipe_is_a_misprint(place: int) -> None:
    """The 1938 percentages of the same tan follow from 6 1/4 lb, not from 6 1/2."""
    earlier, later = BY_ID[f"M16-BRN-03/{place}"], BY_ID[f"M38-BRN-03/{place}"]
    assert earlier["ingredient_mass_value"] == later["ingredient_mass_value"]
    assert earlier["fibre_mass_value"] == "6 1/4" and later["id"] in MISPRINTS
    assert 100 * dose_of(earlier).low in (3, 5, 4, Fraction(1, 2))
    assert 100 * dose_of(later).low not in (3, 5, 4, Fraction(1, 2))
