"""One word for each direction of a difference, for 13 pairs.

The rule is this program's own (after Westland & Ripamonti, Computational Colour Science Using MATLAB, p. 54);
`colour_words_check.csv` was worked out apart from it, with every term below 0.5 left unsaid.
"""

import csv
import math
from pathlib import Path

import pytest

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.words import spoken, terms

TABLE = Path(__file__).parent / "colour_words_check.csv"
ROWS = list(csv.DictReader(TABLE.read_text(encoding="utf-8").splitlines()))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["words_threshold_0.5"] or "nothing")
def test_the_words_come_out(row: dict[str, str]) -> None:
    standard, trial = (Lab(*(float(row[axis + which]) for axis in "Lab")) for which in "01")
    assert " ".join(spoken(standard, trial)) == row["words_threshold_0.5"]
    assert de00(standard, trial) == pytest.approx(float(row["dE00"]), abs=6e-5)
    told = terms(standard, trial)
    assert told[0].amount == pytest.approx(abs(float(row["dL"])), abs=6e-4)
    if len(told) == 3:
        assert told[1].amount == pytest.approx(abs(float(row["dC"])), abs=6e-4)
        assert told[2].amount == pytest.approx(abs(float(row["dH"])), abs=6e-4)
    else:
        assert max(math.hypot(*standard[1:]), math.hypot(*trial[1:])) < 5


def test_all_13_pairs_are_there() -> None:
    assert len(ROWS) == 13
