"""Every grade of the ISO 105 grey scales, and ten pairs of colours worked out apart from this program.

Source of the steps: EN 20105-A02:1994 (preview read) and ISO 105-A03 as two public re-implementations give
it; bands of ISO 105-A05 and A04 likewise. `colour_iso105_greyscales.csv` and `colour_greyscale_check.csv`.
"""

import csv
from pathlib import Path

import pytest

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.grey_scales import (
    change_difference,
    change_grade_exact,
    change_of_colour,
    staining,
    staining_difference,
    staining_grade_exact,
)
from dyesession.colour.readings import Reading
from dyesession.colour.viewing import D65_10

HERE = Path(__file__).parent
PRINTED = 6e-4  # half of the last digit printed, and a little


def rows(name: str) -> list[dict[str, str]]:
    return list(csv.DictReader((HERE / name).read_text(encoding="utf-8").splitlines()))


SCALE, PAIRS = rows("colour_iso105_greyscales.csv"), rows("colour_greyscale_check.csv")


def reading(lightness: float, a: float = 0.0, b: float = 0.0) -> Reading:
    return Reading(Lab(lightness, a, b), 0.3, by="spectrophotometer", viewing=D65_10)


@pytest.mark.parametrize("row", SCALE, ids=lambda row: f"grade {row['grade']}")
def test_each_step_of_the_scale_of_change_has_its_grade(row: dict[str, str]) -> None:
    step = float(row["A02_change_dE76_nominal"])
    found = change_of_colour(reading(70.0), reading(70.0 - step))
    assert found.grade == float(row["grade"])
    assert found.exact == pytest.approx(float(row["A05_formula_GSc_at_A02_nominal"]), abs=PRINTED)


@pytest.mark.parametrize("row", SCALE, ids=lambda row: f"grade {row['grade']}")
def test_the_bands_of_change_begin_and_end_where_the_table_says(row: dict[str, str]) -> None:
    low = float(row["A05_dEF_lower_incl"])
    assert change_of_colour(reading(90.0), reading(90.0 - low - 1e-9)).grade == float(row["grade"])
    if row["A05_dEF_upper_excl"]:
        high = float(row["A05_dEF_upper_excl"])
        assert change_of_colour(reading(90.0), reading(90.0 - high + 1e-9)).grade == float(row["grade"])


@pytest.mark.parametrize("row", SCALE, ids=lambda row: f"grade {row['grade']}")
def test_each_step_of_the_scale_of_staining_has_its_grade(row: dict[str, str]) -> None:
    step = float(row["A03_staining_dE76_nominal"])
    found = staining(reading(95.0), reading(95.0 - step))
    assert found.grade == float(row["grade"])
    assert found.exact == pytest.approx(float(row["A04_formula_SSR_at_A03_nominal"]), abs=PRINTED)
    low = float(row["A04_SSR_range_lower"] or 0)
    assert low <= round(found.exact, 2) <= float(row["A04_SSR_range_upper"])


@pytest.mark.parametrize("row", PAIRS, ids=lambda row: f"L {row['L0']} to {row['L1']}")
def test_a_pair_worked_out_elsewhere_comes_out(row: dict[str, str]) -> None:
    before, after = (Lab(*(float(row[axis + which]) for axis in "Lab")) for which in "01")
    assert change_difference(before, after) == pytest.approx(float(row["dE_F"]), abs=PRINTED)
    assert change_grade_exact(change_difference(before, after)) == pytest.approx(
        float(row["GSc_formula"]), abs=PRINTED
    )
    assert change_of_colour(reading(*before), reading(*after)).grade == float(row["GSc_table"])
    assert staining_difference(before, after) == pytest.approx(float(row["dE_GS"]), abs=PRINTED)
    assert staining_grade_exact(staining_difference(before, after)) == pytest.approx(
        float(row["SSR"]), abs=PRINTED
    )
    assert staining(reading(*before), reading(*after)).grade == float(row["SSR_grade"])
    assert de00(before, after) == pytest.approx(float(row["dE00"]), abs=PRINTED)


def test_nine_grades_and_ten_pairs_are_there() -> None:
    assert len(SCALE) == 9 and len(PAIRS) == 10
