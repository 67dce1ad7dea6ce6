"""What the README shows works as printed: its recipe, its kitchen, its commands."""

import json
import re
import tomllib
from pathlib import Path

import pytest

from dyesession.care import DISCLAIMER_LONG
from dyesession.cli import main
from dyesession.cli.parser import parse
from dyesession.kitchen import check_kitchen
from dyesession.recipe import check_recipe

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text("utf-8")


def blocks(language: str) -> list[str]:
    return re.findall(rf"```{language}\n(.*?)```", README, re.DOTALL)


def test_the_example_recipe_and_kitchen_are_sound(tmp_path: Path) -> None:
    recipe, kitchen = blocks("toml")
    (tmp_path / "recipe.toml").write_text(recipe, "utf-8")
    (tmp_path / "kitchen.toml").write_text(kitchen, "utf-8")
    assert check_recipe(tmp_path / "recipe.toml") == []
    assert check_kitchen(tmp_path / "kitchen.toml") == []
    assert "step" in tomllib.loads(recipe) and "scale" in tomllib.loads(kitchen)


def test_the_example_recipe_comes_home_in_the_example_kitchen(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    recipe, kitchen = blocks("toml")
    (tmp_path / "recipes").mkdir()
    (tmp_path / "recipes" / "my-onion-skins.toml").write_text(recipe, "utf-8")
    (tmp_path / "kitchen.toml").write_text(kitchen, "utf-8")
    words = ["rehearse", "my-onion-skins", "--fibre", "180 g dry wool", "--workroom", str(tmp_path), "--json"]
    assert main(words) == 0
    day = json.loads(capsys.readouterr().out)
    assert day["timeline"][-1]["kind"] == "closed" and day["alarms"] == []
    assert sum(one["kind"] == "entered" for one in day["timeline"]) == 3
    assert not any("puts no fibre" in one for one in day["warnings"])


def test_every_command_shown_is_one_the_program_knows() -> None:
    shown = re.findall(r"\.venv/bin/dyesession ([^#\n`]+)", README)
    assert len(shown) >= 5
    for line in shown:
        words = [one.strip('"') for one in re.findall(r'"[^"]*"|\S+', line)]
        parse(words)


def test_ci_runs_the_printed_test_command() -> None:
    found = [line for line in README.splitlines() if line.startswith("python3 -m venv") and "pytest" in line]
    assert len(found) == 1
    assert "README.md" in (ROOT / ".ci" / "run").read_text("utf-8")


def test_the_long_disclaimer_stands_in_the_readme() -> None:
    assert " ".join(DISCLAIMER_LONG.split()) in " ".join(README.split())


def test_the_first_paragraph_states_the_job() -> None:
    first = README.split("\n\n")[1]
    for word in ("fibre", "doses", "mordant", "log", "±"):
        assert word in first
