"""The README's worked day says what the program says, and the reading in it changes what is known."""

from pathlib import Path

import pytest
from worked_day import ROOT, SECOND_STRAIN, advice, day_at_the_second_strain, said


def flat(text: str) -> str:
    """One line, without the marks of a quotation or the spaces that keep a number to its unit."""
    return " ".join(text.replace("\n>", " ").replace("\u00a0", " ").replace("\u202f", " ").split())


README = flat((ROOT / "README.md").read_text("utf-8"))


@pytest.mark.parametrize("read", [False, True])
def test_the_readme_says_of_a_third_extraction_what_the_program_says(tmp_path: Path, read: bool) -> None:
    day = day_at_the_second_strain(tmp_path, read)
    assert flat(said(day)[0]) in README
    day.session.close()


def test_one_reading_halves_what_is_not_known_and_the_third_extraction_is_left_out(tmp_path: Path) -> None:
    guessed = day_at_the_second_strain(tmp_path / "guessed", False)
    read = day_at_the_second_strain(tmp_path / "read", True)
    before, after = advice(guessed), advice(read)
    assert before.is_guess and before.brings_percent.high > 20.0
    assert not after.is_guess and after.brings_percent.high < 15.0 and after.advice == "stop"
    assert after.brings_percent.high - after.brings_percent.low < 0.5 * (
        before.brings_percent.high - before.brings_percent.low
    )
    assert f"{SECOND_STRAIN:g} of its strength" in README
    for day in (guessed, read):
        day.session.close()
