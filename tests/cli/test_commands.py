"""The command line as a person meets it: one clear sentence for each mistake, the right exit code, no traceback."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from dyesession.cli import FINE, IN_USE, TO_PUT_RIGHT, main

ROOT = Path(__file__).resolve().parents[2]
KITCHEN = str(ROOT / "dyesession" / "kitchen" / "example.toml")
MADDER = (ROOT / "recipes" / "madder-brick-red-on-wool.toml").read_text("utf-8")


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = main(list(words))
    told = capsys.readouterr()
    return code, told.out, told.err


def test_work_out_gives_the_promised_document(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(
        capsys, "work-out", "madder-brick-red-on-wool", "--fibre", "240 g wool", "--kitchen", KITCHEN, "--json"
    )
    found = json.loads(out)
    assert code == FINE and found["fibre"]["mass_g"] == 240
    dose = found["doses"][1]
    assert {"ingredient", "substance", "role", "percent_wof", "mass_g", "weigh"} <= dose.keys()
    assert set(dose["percent_wof"]) == set(dose["mass_g"]) == {"low", "aim", "high"}
    assert {"how", "sd_g", "say"} <= dose["weigh"].keys()
    assert {"step", "vessel", "water_l", "fits"} <= found["baths"][0].keys()
    assert found["timetable"] and found["reminders"] and isinstance(found["warnings"], list)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('dose = "12 %"', 'doze = "12 %"', "dose"),
        ('dose = "12 %"', 'dose = "12 bananas"', "12 bananas"),
        ('dose = "12 %"', 'dose = "6.25 % of salt"', "salt"),
        ('dose = "12 %"', 'dose = "2 oz per 10 yards"', "weight"),
        ('after = ["mordant", "extract"]', 'after = ["mordant", "extract", "rinse"]', "rinse"),
        ('vessel = "extract pot"', 'vessel = "mordant pot"', "mordant pot"),
    ],
    ids=["unknown key", "wrong unit", "missing base", "dose without a weight", "cycle", "vessel used twice at once"],
)
def test_a_faulty_recipe_is_answered_with_file_line_and_example(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], old: str, new: str, says: str
) -> None:
    assert old in MADDER
    recipe = tmp_path / "faulty.toml"
    recipe.write_text(MADDER.replace(old, new, 1), "utf-8")
    code, out, _ = run(capsys, "check", str(recipe))
    assert code == TO_PUT_RIGHT and says in out and "faulty.toml" in out
    code, _, err = run(capsys, "work-out", str(recipe), "--fibre", "240 g wool")
    assert code == TO_PUT_RIGHT and err.startswith("dyesession: ") and err.count("\n") == 1
    assert "Traceback" not in out + err


def test_sound_files_pass_and_are_counted(capsys: pytest.CaptureFixture[str]) -> None:
    files = [str(one) for one in sorted((ROOT / "recipes").glob("*.toml"))]
    code, out, _ = run(capsys, "check", *files, KITCHEN)
    assert code == FINE and f"{len(files) + 1} files looked through" in out


def test_a_damp_lot_is_refused_as_a_base(capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run(capsys, "work-out", "weld-yellow-on-wool", "--fibre", "212 g damp wool")
    assert code == TO_PUT_RIGHT and "damp" in err and "room" in err


def test_a_damp_lot_with_its_dry_weight_is_planned_on_the_dry_one(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(
        capsys, "work-out", "weld-yellow-on-wool", "--fibre", "212 g damp, 148 g dry wool", "--json"
    )
    assert code == FINE and json.loads(out)["fibre"]["mass_g"] == 148


def test_a_misspelt_recipe_names_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run(capsys, "work-out", "madder-brik-red", "--fibre", "240 g wool")
    assert code == TO_PUT_RIGHT and "adder" in err


def test_a_pot_too_small_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    kitchen = tmp_path / "kitchen.toml"
    kitchen.write_text('format = 1\n[[pot]]\nname = "pan"\nvolume = "2 l"\n', "utf-8")
    code, out, _ = run(
        capsys, "work-out", "weld-yellow-on-wool", "--fibre", "500 g wool", "--kitchen", str(kitchen), "--json"
    )
    found = json.loads(out)
    assert code == FINE and any(one["fits"] is False for one in found["baths"]) and found["warnings"]


def test_high_up_every_heat_is_capped_below_the_boil_and_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    kitchen = tmp_path / "kitchen.toml"
    kitchen.write_text('format = 1\nelevation = "3500 m"\n', "utf-8")
    words = ("work-out", "cochineal-crimson-on-wool", "--fibre", "80 g wool", "--kitchen", str(kitchen), "--json")
    code, out, _ = run(capsys, *words)
    assert code == FINE and any("boil" in one for one in json.loads(out)["warnings"])


def test_a_kitchen_without_scales_is_told_once_for_each_dose_and_nothing_is_guessed(
    capsys: pytest.CaptureFixture[str],
) -> None:
    code, out, _ = run(capsys, "work-out", "weld-yellow-on-wool", "--fibre", "140 g wool", "--json")
    assert code == FINE and {one["weigh"]["how"] for one in json.loads(out)["doses"]} == {"no scale"}


def test_chrome_is_never_planned(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    recipe = tmp_path / "old.toml"
    recipe.write_text(MADDER.replace('substance = "potassium alum"', 'substance = "bichromate of potash"'), "utf-8")
    assert run(capsys, "check", str(recipe))[0] == FINE
    code, _, err = run(capsys, "work-out", str(recipe), "--fibre", "240 g wool")
    assert code == TO_PUT_RIGHT and "alum" in err


def test_a_log_of_a_newer_format_is_refused_untouched(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    log = tmp_path / "logs" / "2099-01-01-later-aaaa.toml"
    log.parent.mkdir()
    text = 'format = 99\nsession = "2099-01-01-later-aaaa"\n\n[seal]\nheader = "0-00000000"\n'
    log.write_text(text, "utf-8")
    code, _, err = run(capsys, "resume", str(log), "--workroom", str(tmp_path), "--plain")
    assert code == TO_PUT_RIGHT and "99" in err and log.read_text("utf-8") == text


def test_an_unknown_log_names_the_nearest(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run(capsys, "review", "nothing", "--workroom", str(tmp_path))
    assert code == TO_PUT_RIGHT and 'no log "nothing"' in err


def test_with_no_day_open_the_program_says_how_to_begin_one(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, _ = run(capsys, "--workroom", str(tmp_path), "--plain")
    assert code == FINE and "dyesession begin madder-brick-red-on-wool" in out


def test_a_log_that_is_none_is_spoken_of_where_a_day_is_looked_for(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    log = tmp_path / "logs" / "2026-03-14-madder-aaaa.toml"
    log.parent.mkdir()
    log.write_text('format = 1\nsession = "2026-03-14-ma', "utf-8")
    code, out, _ = run(capsys, "resume", "--workroom", str(tmp_path), "--plain")
    assert code == FINE and out.startswith(f"{log} is no session log") and "No day is open" in out
    assert log.read_text("utf-8").endswith("14-ma"), "left as it is"


def test_a_log_in_use_is_told_with_its_own_exit_code(tmp_path: Path) -> None:
    begin = [sys.executable, "-m", "dyesession", "begin", "weld-yellow-on-wool", "--fibre", "140 g wool"]
    first = subprocess.Popen(
        [*begin, "--washed", "--plain", "--workroom", str(tmp_path)],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, cwd=ROOT,
    )  # fmt: skip
    assert first.stdin and first.stdout
    while "NEXT" not in first.stdout.readline():
        assert first.poll() is None
    second = subprocess.run(
        [sys.executable, "-m", "dyesession", "resume", "--plain", "--workroom", str(tmp_path)],
        stdin=subprocess.DEVNULL, capture_output=True, text=True, cwd=ROOT, timeout=60, check=False,
    )  # fmt: skip
    first.communicate("quit\n", timeout=60)
    assert second.returncode == IN_USE and f"process {first.pid}" in second.stderr


def test_a_fault_of_our_own_shows_a_file_and_no_traceback(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path))
    monkeypatch.setattr("dyesession.cli.papers.planned", lambda *_, **__: 1 / 0)
    code, out, err = run(capsys, "work-out", "x", "--fibre", "1 g wool")
    file = next(tmp_path.rglob("fault-*.txt"))
    assert code == 70 and str(file) in err and "Traceback" not in out + err
    assert "ZeroDivisionError" in file.read_text("utf-8") and file.stat().st_mode & 0o077 == 0
