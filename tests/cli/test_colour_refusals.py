"""What no honest answer can be made of: each said in one sentence that says what was expected, with an example."""

import re
from pathlib import Path

import pytest
from PIL import Image

from dyesession.cli import TO_PUT_RIGHT, main

GREY, MADDER, PALE, WHITE = (118, 118, 118), (173, 61, 52), (200, 120, 100), (255, 255, 255)


def photo(folder: Path, *parts: tuple[int, int, int]) -> str:
    """Parts of 100 by 100 pixels side by side."""
    picture = Image.new("RGB", (100 * len(parts), 100))
    for at, colour in enumerate(parts):
        picture.paste(colour, (100 * at, 0, 100 * at + 100, 100))
    path = folder / "skein.png"
    picture.save(path)
    return str(path)


def refusal(capsys: pytest.CaptureFixture[str], *typed: str) -> str:
    assert main(list(typed)) == TO_PUT_RIGHT
    told = capsys.readouterr()
    sentence = told.err.removeprefix("dyesession: ").strip()
    assert not told.out and sentence.endswith(".") and "\n" not in sentence
    assert not re.search(r"[.!?] [A-Z]", sentence) and "example" in sentence and "expected" in sentence
    return sentence


CARD = ("--card", "10,10,80,80", "--card-reflects", "18")


def test_a_clipped_photo(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    name = photo(tmp_path, GREY, WHITE)
    assert "clipped" in refusal(capsys, "colour", "photo", name, "--fibre", "110,10,80,80", *CARD)


def test_a_card_that_is_not_in_the_frame(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    name = photo(tmp_path, GREY, MADDER)
    said = refusal(
        capsys, "colour", "photo", name, "--fibre", "110,10,80,80", "--card", "150,10,80,80", "--card-reflects", "18"
    )
    assert "not in the frame" in said and "200 by 100" in said


def test_a_patch_that_is_said_to_be_the_card_and_is_the_skein(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    name = photo(tmp_path, MADDER, MADDER)
    assert "not grey" in refusal(capsys, "colour", "photo", name, "--fibre", "110,10,80,80", *CARD, "--light", "daylight")


def test_a_patch_of_two_colours(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    name = photo(tmp_path, GREY, MADDER, PALE)
    assert "two colours" in refusal(capsys, "colour", "photo", name, "--fibre", "130,10,140,80", *CARD)


def test_a_colour_that_no_cloth_can_show(capsys: pytest.CaptureFixture[str]) -> None:
    said = refusal(capsys, "colour", "depth", "--sample", "lab(60 120 20)", "--ratio", "2")
    assert "no cloth" in said or "no dyed cloth" in said
    assert "no cloth can show" in refusal(capsys, "colour", "difference", "lab(160 0 0)", "lab(42 45 30)")


def test_a_lab_in_a_file_that_states_no_illuminant(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "readings.csv"
    path.write_text("L*,a*,b*\n42,45,30\n", "utf-8")
    assert "illuminant and observer" in refusal(capsys, "colour", "difference", "lab(42 45 30)", str(path))
    assert "illuminant and observer" in refusal(capsys, "colour", "difference", "42,45,30", "lab(42 45 30)")


def test_a_sample_darker_than_the_theory_covers(capsys: pytest.CaptureFixture[str]) -> None:
    said = refusal(capsys, "colour", "depth", "--sample", "lab(9 1 1)", "--ratio", "2")
    assert "beyond what the theory of depth covers" in said
    assert "dark" in refusal(
        capsys, "colour", "overdye", "--skein", "lab(5 0 0)", "--second", "lab(38 -4 -28)", "--target", "lab(42 45 30)"
    )


def test_unlike_lights_and_wet_fibre(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["colour", "difference", "lab(42 45 30) D65/10", "lab(42 45 30)"]) == TO_PUT_RIGHT
    assert "D65/10°" in capsys.readouterr().err
    assert "wet fibre" in refusal(capsys, "colour", "difference", "lab(42 45 30) wet", "lab(42 45 30)")
