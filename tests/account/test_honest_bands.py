"""A few simulated days with known truths: the bands hold them about as often as they say. `tests/bench/bench_account.py`
does a thousand and prints the table; these are the first of the same days.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest
from bench import bench_account as bench
from bench import dye_world

from dyesession.account.model import Band90

DAYS, ODD_DAYS = 5, 2
LEAST_HELD, MOST_HELD = 0.80, 0.98
Shown = tuple[str, str, bool, Band90, float]


@pytest.fixture(scope="module")
def shown() -> tuple[Shown, ...]:
    """World, band, whether the dyer read, what is shown, what is so."""

    def all_days() -> Iterator[Shown]:
        for world, days in (("as guessed", DAYS), ("twice as wide", ODD_DAYS), ("two stores", ODD_DAYS)):
            for seed in range(days):
                for what, reads, band, truth in bench.one_day(seed, *bench.WORLDS[world]):
                    yield world, what, reads, band, truth

    return tuple(all_days())


def held(rows: list[Shown], by: float = 1.0) -> float:
    """Share of the truths that lie in their bands, the bands drawn in to `by` of their width."""
    inside = 0
    for _, _, _, band, truth in rows:
        middle = (band.low + band.high) / 2.0
        inside += abs(truth - middle) <= by * band.half_width + 1e-9 * max(1.0, abs(truth))
    return inside / len(rows)


@pytest.mark.parametrize("reads", [False, True])
def test_nine_in_ten_truths_lie_in_their_bands_before_and_after_readings(
    shown: tuple[Shown, ...], reads: bool
) -> None:
    rows = [one for one in shown if one[0] == "as guessed" and one[2] == reads]
    assert LEAST_HELD <= held(rows) <= MOST_HELD
    assert held(rows, by=0.3) < LEAST_HELD  # bands three times too narrow would be found out


def test_odd_pots_and_two_stores_are_believed_once_they_are_read(shown: tuple[Shown, ...]) -> None:
    rows = [one for one in shown if one[0] != "as guessed" and one[2]]
    assert held(rows) >= LEAST_HELD


def test_readings_narrow_what_they_are_about(shown: tuple[Shown, ...]) -> None:
    def width(what: str, reads: bool) -> float:
        return sum(one[3].half_width for one in shown if one[:3] == ("as guessed", what, reads))

    assert width("once more would bring", True) < width("once more would bring", False) / 1.2
    assert width("colour left after the skein", True) < width("colour left after the skein", False) / 2.0
    assert width("liquor on the wet fibre", True) < width("liquor on the wet fibre", False) / 10.0


def test_the_simulated_kitchen_shares_no_code_with_the_account() -> None:
    source = Path(dye_world.__file__).read_text(encoding="utf-8")
    imported = [
        line for line in source.splitlines() if line.startswith(("from dyesession", "import dyesession"))
    ]
    assert imported
    assert not [
        line
        for line in imported
        if "account" in line or (".dyeing" in line and "priors import Prior" not in line)
    ]
