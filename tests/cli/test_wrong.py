"""`dyesession wrong` as it is typed."""

import json
from datetime import datetime
from pathlib import Path

import pytest

from dyesession.cli import main
from dyesession.kitchen.model import Kitchen, Scale
from dyesession.plan.model import FibreLot
from dyesession.recipe import load_recipe
from dyesession.rehearsal import rehearse
from dyesession.storage import DISK

RECIPE = Path(__file__).resolve().parents[2] / "recipes" / "weld-yellow-on-wool.toml"


@pytest.fixture(scope="module")
def log(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("logs")
    lots = (FibreLot("skein", "wool", 140.0, air_dry=True),)
    start = datetime.fromisoformat("2026-03-14T09:00:00+01:00")
    rehearse(load_recipe(RECIPE), lots, Kitchen(scales=(Scale("s", 1.0),)), folder, storage=DISK, start=start)
    return next(folder.glob("*.toml"))


def test_a_trouble_is_told_with_its_causes(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["wrong", str(log), "too", "pale"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("too pale\n") and "hardly: It was held too short" in out
    assert main(["wrong", str(log), "wrong hue"]) == 0
    assert "Mend:" in capsys.readouterr().out
    assert max(map(len, out.splitlines())) <= 80


def test_another_program_reads_it_as_json(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["wrong", str(log), "streaks", "--json"]) == 0
    [trouble] = json.loads(capsys.readouterr().out)
    assert trouble["what"] == "streaks"
    assert {"why", "source", "standing", "seen", "mend", "mend_source"} == set(trouble["causes"][0])


def test_a_trouble_nobody_knows_is_one_sentence(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["wrong", str(log), "haunted"]) == 1
    assert "no trouble known here" in capsys.readouterr().err
