"""`dyesession colour …` as a person or a script meets it."""

import argparse
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from dyesession.cli.colour import add_commands
from dyesession.errors import UserError

ROOT = Path(__file__).resolve().parents[2]
UNDYED, MADDER, WELD, INDIGO = "lab(86 0 11)", "lab(42 45 30)", "lab(75 -5 70)", "lab(38 -4 -28)"


def run(*typed: str) -> int:
    parser = argparse.ArgumentParser(prog="dyesession")
    add_commands(parser.add_subparsers(required=True))
    options = parser.parse_args(["colour", *typed])
    return int(options.run(options))


def document(capsys: pytest.CaptureFixture[str], *typed: str) -> dict[str, Any]:
    assert run(*typed, "--json") == 0
    return dict(json.loads(capsys.readouterr().out))


def printed(capsys: pytest.CaptureFixture[str], *typed: str) -> str:
    assert run(*typed) == 0
    return capsys.readouterr().out


def test_a_difference_is_one_document_with_the_agreed_keys(capsys: pytest.CaptureFixture[str]) -> None:
    found = document(
        capsys, "difference", "--sample", "lab(50 0 -82.7485)", "--target", "lab(50 2.6772 -79.7751)"
    )
    keys = {"de00", "de00_low", "de00_high", "words", "depth_ratio", "lab_sample", "lab_target"}
    assert keys <= found.keys()
    assert found["de00"] == pytest.approx(2.0425, abs=1e-4)  # Sharma, Wu & Dalal 2005, pair 1
    assert found["de00_low"] < found["de00"] < found["de00_high"]
    assert found["lab_sample"] == [50.0, 0.0, -82.7485] and found["lab_target"] == [50.0, 2.6772, -79.7751]
    assert isinstance(found["words"], str) and found["words"]


def test_sample_and_target_may_stand_bare(capsys: pytest.CaptureFixture[str]) -> None:
    bare = document(capsys, "difference", "lab(46 44 29)", MADDER, "--undyed", UNDYED)
    assert bare == document(
        capsys, "difference", "--undyed", UNDYED, "--target", MADDER, "--sample", "lab(46 44 29)"
    )
    assert bare["depth_ratio"] == pytest.approx(0.705, abs=0.005) and bare["words"] == "about 30 % weaker"
    assert bare["notes"] == []


def test_a_difference_is_told_depth_first_and_never_with_a_second_decimal(
    capsys: pytest.CaptureFixture[str],
) -> None:
    said = printed(capsys, "difference", "lab(46 44 29)", MADDER)
    assert "about 30 % weaker" in said and "3 to 4 in CIEDE2000" in said and UNDYED in said
    assert not any(
        len(word.partition(".")[2]) > 1 and word.replace(".", "").isdigit() for word in said.split()
    )


def test_several_targets_make_one_with_a_spread(capsys: pytest.CaptureFixture[str]) -> None:
    several = ["--target", "lab(42 46 31)", "--target", "lab(44 44 29)", "--target", "lab(41 45 33)"]
    assert document(capsys, "difference", "--sample", MADDER, *several)["words"] == "inside it"
    assert "3 readings within" in printed(capsys, "difference", "--sample", MADDER, *several)


def test_a_lab_means_d65_and_2_degrees_unless_said(capsys: pytest.CaptureFixture[str]) -> None:
    plain = document(capsys, "depth", "--undyed", UNDYED, "--sample", MADDER, "--ratio", "2")
    said = document(
        capsys, "depth", "--undyed", f"{UNDYED} D65/2", "--sample", f"{MADDER} D65 2", "--ratio", "2"
    )
    other = document(
        capsys, "depth", "--undyed", f"{UNDYED} D65/10", "--sample", f"{MADDER} D65/10", "--ratio", "2"
    )
    assert plain == said and plain["lab"] != other["lab"]


def test_a_depth_is_one_document_with_the_agreed_keys(capsys: pytest.CaptureFixture[str]) -> None:
    found = document(capsys, "depth", "--undyed", UNDYED, "--sample", MADDER, "--ratio", "0.5")
    assert found["lab"] == pytest.approx([49.9504, 42.1783, 28.1838], abs=0.002)
    assert found["hex"] == "#c15549" and found["band"] > 1
    said = printed(capsys, "depth", "--undyed", UNDYED, "--sample", MADDER, "--ratio", "0.5")
    assert "lab(50 42 28) #c15549 ± " in said and "modelled" in said


def test_two_depths_of_one_dye_say_how_depth_follows_dose(capsys: pytest.CaptureFixture[str]) -> None:
    typed = ("depth", "--undyed", UNDYED, "--sample", MADDER, "--ratio", "2")
    fitted = document(capsys, *typed, "--pale", "lab(52 41 28)", "--pale-dose", "0.25")
    assert 1.2 < fitted["ratio"] < 2 and "learned" in fitted["notes"][-1]


def test_an_overdye_is_one_document_with_the_agreed_keys(capsys: pytest.CaptureFixture[str]) -> None:
    typed = ("--undyed", UNDYED, "--skein", WELD, "--second", INDIGO)
    found = document(capsys, "overdye", *typed, "--target", "lab(51.9721 -24.0126 33.1154)")
    assert found["amount"] == pytest.approx(0.25, abs=0.002) and found["reachable"] is True
    assert found["lab"] == pytest.approx([51.97, -24.01, 33.12], abs=0.05)
    assert 0 < found["de00_expected"] < 3
    said = printed(capsys, "overdye", *typed, "--target", "lab(52 -24 33)")
    assert "add 0.25" in said and "few grams first" in said


def test_an_unreachable_target_is_said_plainly(capsys: pytest.CaptureFixture[str]) -> None:
    typed = ("--undyed", UNDYED, "--skein", MADDER, "--second", INDIGO, "--target", "lab(70 20 20)")
    found = document(capsys, "overdye", *typed)
    assert found["reachable"] is False and found["amount"] == 0 and found["de00_expected"] > 20
    assert printed(capsys, "overdye", *typed).startswith("Unreachable: the target is lighter")


@pytest.fixture
def skein_photo(tmp_path: Path) -> str:
    """Left a grey card of 18 %, in the middle madder, right something a little lighter."""
    picture = Image.new("RGB", (300, 100), (118, 118, 118))
    picture.paste((173, 61, 52), (100, 0, 200, 100))
    picture.paste((190, 80, 70), (200, 0, 300, 100))
    path = tmp_path / "skein.png"
    picture.save(path)
    return str(path)


CARD = ("--card", "10,10,80,80", "--card-reflects", "18")


def test_a_photo_gives_a_reading_with_its_plus_minus(
    capsys: pytest.CaptureFixture[str], skein_photo: str
) -> None:
    found = document(capsys, "photo", skein_photo, "--fibre", "110,10,80,80", *CARD, "--light", "daylight")
    assert found["lab"] == pytest.approx([42, 45, 30], abs=1.5) and found["hex"].startswith("#a")
    assert found["plus_minus"] == pytest.approx(4.5, abs=0.1) and found["wet"] is False
    assert (found["illuminant"], found["observer"], found["how"]) == ("D65", 2, "read")
    bare = document(capsys, "photo", skein_photo, "--fibre", "110,10,80,80")
    assert bare["plus_minus"] >= 25 and "without a card" in bare["conditions"]


def test_target_and_sample_in_one_frame_are_compared(
    capsys: pytest.CaptureFixture[str], skein_photo: str
) -> None:
    typed = ("photo", skein_photo, "--fibre", "210,10,80,80", "--target", "110,10,80,80", *CARD)
    found = document(capsys, *typed, "--light", "daylight")
    apart = found["difference"]
    assert apart["de00_high"] - apart["de00"] == pytest.approx(2.55, abs=0.1)  # not the 6.4 of two photos
    assert "weaker" in apart["words"]
    assert "weaker" in printed(capsys, *typed, "--light", "daylight")


def test_a_wet_skein_is_read_but_not_compared(capsys: pytest.CaptureFixture[str], skein_photo: str) -> None:
    typed = ("photo", skein_photo, "--fibre", "210,10,80,80", *CARD, "--wet")
    assert document(capsys, *typed)["wet"] is True
    with pytest.raises(UserError, match="wet"):
        run(*typed, "--target", "110,10,80,80")


def test_a_colorimeters_file_is_a_sample_or_a_target(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    path = tmp_path / "readings.csv"
    path.write_text("L*,a*,b*,illuminant,observer\n42,45,30,D65,2\n44,44,29,D65,2\n", encoding="utf-8")
    found = document(capsys, "difference", "lab(43 44.5 29.5)", str(path))
    assert found["words"] == "inside it" and found["lab_target"] == [43.0, 44.5, 29.5]
    path.write_text("L*,a*,b*\n42,45,30\n", encoding="utf-8")
    with pytest.raises(UserError, match="does not say for which illuminant"):
        run("difference", MADDER, str(path))


@pytest.mark.parametrize(
    "typed",
    [
        ("difference", MADDER),
        ("difference", f"{MADDER} wet", MADDER),
        ("difference", f"{MADDER} D65/10", MADDER),
        ("difference", "madder", MADDER),
        ("difference", "none.csv", MADDER),
        ("depth", "--undyed", UNDYED, "--sample", "lab(9 1 1)", "--ratio", "2"),
        ("depth", "--undyed", UNDYED, "--sample", "lab(60 120 20)", "--ratio", "2"),
        ("depth", "--undyed", UNDYED, "--sample", UNDYED, "--ratio", "2"),
        ("depth", "--undyed", UNDYED, "--sample", MADDER, "--ratio", "nan"),
        ("depth", "--undyed", UNDYED, "--sample", MADDER, "--ratio", "2", "--pale-dose", "0.5"),
        ("overdye", "--skein", "lab(5 0 0)", "--second", INDIGO, "--target", MADDER),
        ("photo", "none.jpg", "--fibre", "10,10,80,80"),
        ("photo", "none.jpg", "--fibre", "here"),
    ],
)
def test_what_cannot_be_done_is_one_sentence(typed: tuple[str, ...]) -> None:
    with pytest.raises(UserError) as refused:
        run(*typed)
    message = str(refused.value)
    assert message.endswith(".") and "example" in message and "\n" not in message and ". " not in message


@pytest.mark.parametrize("box", ["250,10,80,80", "10,10,4,4"])
def test_a_card_that_is_not_in_the_frame_is_one_sentence(skein_photo: str, box: str) -> None:
    with pytest.raises(UserError, match="the card"):
        run("photo", skein_photo, "--fibre", "110,10,80,80", "--card", box, "--card-reflects", "18")
    with pytest.raises(UserError, match="goes with how much it throws back"):
        run("photo", skein_photo, "--fibre", "110,10,80,80", "--card", "10,10,80,80")


def test_registering_the_commands_loads_neither_the_science_nor_a_library() -> None:
    code = (
        "import argparse, sys\n"
        "from dyesession.cli.colour import add_commands\n"
        "add_commands(argparse.ArgumentParser().add_subparsers())\n"
        "heavy = ('dyesession.colour', 'coloraide', 'PIL', 'numpy')\n"
        "print([one for one in sys.modules if one.startswith(heavy)])"
    )
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_no_numpy_at_run_time() -> None:
    code = (
        "import argparse, sys\n"
        "from dyesession.cli.colour import add_commands\n"
        "parser = argparse.ArgumentParser()\n"
        "add_commands(parser.add_subparsers())\n"
        f"options = parser.parse_args(['colour', 'depth', '--sample', '{MADDER}', '--ratio', '2'])\n"
        "options.run(options)\n"
        "print('numpy' in sys.modules, 'coloraide' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "False True"
