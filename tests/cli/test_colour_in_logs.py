"""Mend, depth, shade card and aftercare as a person or a script meets them, over logs on a disk."""

import json
from pathlib import Path

import pytest
from coloured_days import coloured_day

from dyesession.cli import FINE, TO_PUT_RIGHT, main

UNDYED, MADDER = "lab(86 0 11) D65/2 ± 1.5 dry, colorimeter", "lab(42 45 30) D65/2 ± 1.5 dry, colorimeter"
HALF = "lab(50 42 28) D65/2 ± 1.5 dry, colorimeter"
DAY, LATER = "2026-03-14-madder-k7q2", "2026-04-02-madder-m3xz"
KITCHEN = 'format = 1\n\n[[jar]]\nname = "madder"\nsubstance = "madder root"\nprice_per_100_g = 4.0\n'


@pytest.fixture
def room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("DYESESSION_WORKROOM", str(tmp_path))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    coloured_day(tmp_path / "logs", MADDER, 50.0, DAY, UNDYED)
    coloured_day(tmp_path / "logs", HALF, 25.0, LATER)
    (tmp_path / "kitchen.toml").write_text(KITCHEN, "utf-8")
    return tmp_path


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = main(list(words))
    told = capsys.readouterr()
    return code, told.out, told.err


def document(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, object]:
    code, out, err = run(capsys, *words, "--json")
    assert code == FINE, err
    return dict(json.loads(out))


def test_a_logged_skein_is_mended_in_grams_and_money(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = document(capsys, "colour", "mend", "--target", "lab(42 45 30)", "--log", LATER)
    assert "weaker" in found["difference"]["words"]  # type: ignore[index]
    acts = [one["act"] for one in found["mend"]]  # type: ignore[attr-defined, index]
    assert acts[0] == "wash again" and "a further dip" in acts
    dip = next(one for one in found["mend"] if one["act"] == "a further dip")["costs"][0]  # type: ignore[attr-defined, index]
    assert dip["substance"] == "madder root" and dip["low_g"] < dip["mass_g"] < dip["high_g"]
    assert dip["mass_g"] == pytest.approx(165 * 0.25, rel=0.15)  # as much again as the 25 % of 165 g it had
    assert dip["money"] == pytest.approx(dip["mass_g"] * 4.0 / 100)


def test_good_enough_is_an_answer(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, "colour", "mend", "--target", "lab(42.5 45 30)", "--log", DAY)
    assert "Good enough" in out and "wash" not in out


def test_a_typed_skein_and_an_overdye_of_ones_own(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(
        capsys, "colour", "mend", "--target", "lab(52 -24 33)", "--sample", "lab(75 -5 70)", "--fibre", "100",
        "--dye", "weld 60 %", "--second", "lab(38 -4 -28)", "--second-dye", "indigo 4",
    )  # fmt: skip
    assert "indigo about 1.0 g" in out and "few grams first" in out


def test_an_overdye_is_looked_for_among_ones_own_dyes(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = document(capsys, "colour", "overdye", "--log", LATER, "--target", "lab(42 45 30)")["overdyes"]
    assert isinstance(found, list) and [one["dye"] for one in found] == ["a further dip"]
    assert found[0]["low_g"] < found[0]["mass_g"] < found[0]["high_g"] and found[0]["de00_expected"] < 4
    typed = document(capsys, "colour", "overdye", "--skein", "lab(75 -5 70)", "--target", "lab(60 20 50)")["overdyes"]
    assert isinstance(typed, list) and len(typed) == 3 and any("madder root" in one["dye"] for one in typed)
    assert [one["reachable"] for one in typed] == sorted((one["reachable"] for one in typed), reverse=True)
    _, out, _ = run(capsys, "colour", "overdye", "--log", LATER, "--target", "lab(42 45 30)")
    assert "of the dyestuff for this lot" in out and "few grams first" in out
    code, _, err = run(capsys, "colour", "overdye", "--target", "lab(42 45 30)")
    assert code == TO_PUT_RIGHT and "example" in err


@pytest.mark.parametrize(
    "typed",
    [
        ("--target", "lab(42 45 30)"),
        ("--target", "lab(42 45 30)", "--sample", "lab(46 44 29)"),
        ("--target", "lab(42 45 30)", "--sample", "lab(46 44 29)", "--fibre", "240", "--dye", "madder"),
        ("--target", "lab(42 45 30)", "--sample", "lab(46 44 29)", "--fibre", "0", "--dye", "madder 50"),
        ("--target", "lab(42 45 30)", "--log", DAY, "--second", "lab(38 -4 -28)"),
        ("--target", "lab(42 45 30)", "--log", DAY, "--lot", "small skein"),
    ],
)
def test_what_a_mend_is_short_of_is_one_sentence(
    room: Path, capsys: pytest.CaptureFixture[str], typed: tuple[str, ...]
) -> None:
    code, _, err = run(capsys, "colour", "mend", *typed)
    assert code == TO_PUT_RIGHT and err.count("\n") == 1 and "example" in err


def test_a_logged_skeins_series_follows_its_doses(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = document(capsys, "colour", "depth", "--log", DAY)["series"]
    assert isinstance(found, list) and len(found) == 4 and any("learned" in one for one in found[0]["notes"])
    bands = [one["band"] for one in found]
    assert bands[0] > bands[1] and bands[3] > bands[2]  # the farther, the less sure
    code, _, err = run(capsys, "colour", "depth")
    assert code == TO_PUT_RIGHT and "sample" in err


def test_the_shade_card_lists_writes_and_finds(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, "shade-card")
    assert out.count("madder root") == 2 and "#ad3d34" in out and "\x1b" not in out
    near = document(capsys, "shade-card", "--near", "lab(49 42 28)")["near"]
    assert isinstance(near, list) and near[0]["session"] == LATER and near[0]["de00"] < near[1]["de00"]
    code, out, _ = run(capsys, "shade-card", "--write", str(room / "shades.html"))
    assert code == FINE and "#ad3d34" in (room / "shades.html").read_text("utf-8")
    code, _, err = run(capsys, "shade-card", "--write", str(room / "shades.pdf"))
    assert code == TO_PUT_RIGHT and ".html" in err and not (room / "shades.pdf").exists()


def test_a_rub_is_noted_on_the_closed_day_with_its_grade(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = document(
        capsys, "aftercare", DAY, "rub test", "--before", "lab(95 0 2)", "--after", "lab(80 14 10)", "--lot", "large skein"
    )  # fmt: skip
    assert "grade" in str(found["says"]) and "wash it once more" in str(found["advice"]).casefold()
    text = (room / "logs" / f"{DAY}.toml").read_text("utf-8")
    assert 'before = "lab(95 0 2) D65/2 ± 0.5 dry"' in text and "staining: about grade" in text
    code, out, _ = run(capsys, "check", str(room / "logs" / f"{DAY}.toml"))
    assert code == FINE, out
    _, out, _ = run(capsys, "review", DAY)
    assert "rub test" in out


def test_a_window_test_is_begun_now_and_ended_weeks_later(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "aftercare", DAY, "window", "--before", "lab(42 45 30)")
    assert code == FINE and "begun" in out
    found = document(capsys, "aftercare", DAY, "window", "--after", "lab(46 41 27)")
    assert found["says"] == "change: about grade 2-3"
    code, _, err = run(capsys, "aftercare", DAY, "window", "--after", "lab(46 41 27)")
    assert code == TO_PUT_RIGHT and "example" in err  # that test is ended


def test_a_dry_shade_noted_later_is_on_the_card(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, "aftercare", LATER, "dry", "shade", "--lot", "small skein", "--colour", "lab(51 40 27) ± 1.5, colorimeter")
    _, out, _ = run(capsys, "shade-card")
    assert "lab(51 40 27)" in out and "small skein" in out


def test_what_is_due_is_listed(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    due = document(capsys, "aftercare")["due"]
    assert isinstance(due, list)


@pytest.mark.parametrize(
    "typed",
    [
        (DAY,), (DAY, "boil"), (DAY, "rub"), (DAY, "dry shade"), (DAY, "dry shade", "--colour", "lab(42 45 30) wet"),
        (DAY, "rub", "--lot", "none", "--before", "lab(95 0 2)", "--after", "lab(90 0 2)"),
    ],
)  # fmt: skip
def test_what_aftercare_is_short_of_is_one_sentence(
    room: Path, capsys: pytest.CaptureFixture[str], typed: tuple[str, ...]
) -> None:
    before = (room / "logs" / f"{DAY}.toml").read_bytes()
    code, _, err = run(capsys, "aftercare", *typed)
    assert code == TO_PUT_RIGHT and err.count("\n") == 1 and "example" in err
    assert (room / "logs" / f"{DAY}.toml").read_bytes() == before
