"""The README's worked day says what the program says, and the reading in it decides."""

from pathlib import Path

import pytest
from worked_day import ROOT, STRONG, WEAK, advice, day_at_the_second_strain, said


def flat(text: str) -> str:
    """One line, without the marks of a quotation or the spaces that keep a number to its unit."""
    return " ".join(text.replace("\n>", " ").replace("\u00a0", " ").replace("\u202f", " ").split())


README = flat((ROOT / "README.md").read_text("utf-8"))


@pytest.mark.parametrize("read", [None, WEAK, STRONG])
def test_the_readme_says_of_a_third_extraction_what_the_program_says(
    tmp_path: Path, read: float | None
) -> None:
    day = day_at_the_second_strain(tmp_path, read)
    assert flat(said(day)[0]) in README
    day.session.close()


def test_the_recipe_extracts_three_times_and_the_reading_decides_whether_the_third_is_made(
    tmp_path: Path,
) -> None:
    days = {read: day_at_the_second_strain(tmp_path / str(read), read) for read in (None, WEAK, STRONG)}
    assert sum(one.stage == "extract" for one in days[None].session.snapshot.plan.steps) == 3
    found = {read: advice(day) for read, day in days.items()}
    assert {read: one.advice for read, one in found.items()} == {
        None: "read first",
        WEAK: "stop",
        STRONG: "go on",
    }
    guessed, weak, strong = (
        found[None].brings_percent,
        found[WEAK].brings_percent,
        found[STRONG].brings_percent,
    )
    assert weak.high < guessed.high and weak.mean < strong.low and weak.high < strong.mean
    assert f"{WEAK:g} of its strength" in README and f"{STRONG:g} of it" in README
    for day in days.values():
        day.session.close()
