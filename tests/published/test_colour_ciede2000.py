"""CIEDE2000 against the 34 published pairs, and against colour-science on 5,000 pairs drawn at random.

Source of the pairs: Sharma, Wu & Dalal 2005, Color Research & Application 30(1), 21-30, doi
10.1002/col.20070; `colour_ciede2000_sharma34.csv` gives the published value to four decimals and what three
other programs find.
"""

import csv
import random
import warnings
from pathlib import Path

import pytest

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab

TABLE = Path(__file__).parent / "colour_ciede2000_sharma34.csv"
ROWS = list(csv.DictReader(TABLE.read_text(encoding="utf-8").splitlines()))
PUBLISHED_WITHIN, BETWEEN_PROGRAMS = 1e-4, 1e-9
DRAWN, DRAW = 5_000, 2005


def lab_of(row: dict[str, str], which: str) -> Lab:
    return Lab(*(float(row[axis + which]) for axis in ("L", "a", "b")))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"pair {row['pair']}")
def test_a_published_pair_comes_out(row: dict[str, str]) -> None:
    first, second = lab_of(row, "1"), lab_of(row, "2")
    assert abs(de00(first, second) - float(row["dE00_published_4dp"])) <= PUBLISHED_WITHIN
    assert abs(de00(first, second) - float(row["dE00_own_numpy"])) <= BETWEEN_PROGRAMS
    assert de00(second, first) == pytest.approx(de00(first, second), abs=1e-12)


def test_all_34_pairs_are_there() -> None:
    assert [int(row["pair"]) for row in ROWS] == list(range(1, 35))


def test_5000_pairs_agree_with_another_program() -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from colour.difference import delta_E_CIE2000
    draw = random.Random(DRAW)
    first, second = (
        [Lab(draw.uniform(0, 100), draw.uniform(-110, 110), draw.uniform(-110, 110)) for _ in range(DRAWN)]
        for _ in range(2)
    )
    theirs = delta_E_CIE2000(first, second)
    worst = max(abs(de00(a, b) - c) for a, b, c in zip(first, second, theirs, strict=True))
    assert worst <= BETWEEN_PROGRAMS


def test_leaving_the_blue_turn_out_would_be_noticed() -> None:
    """Pair 1 lies in the blues: without its turn the difference is another."""
    from dyesession.colour.ciede2000 import Parts, parts

    told = parts(lab_of(ROWS[0], "1"), lab_of(ROWS[0], "2"))
    without = Parts(told.lightness, told.chroma, told.hue, 0.0).whole
    assert abs(without - float(ROWS[0]["dE00_published_4dp"])) > 100 * PUBLISHED_WITHIN
