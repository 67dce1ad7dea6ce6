"""The plan changed by typed lines, and a day without a recipe begun and filled by them."""

import io
from pathlib import Path

import pytest
from line.lined import LinedDay

from dyesession.cli import main
from dyesession.session import events as e


def changes(day: LinedDay) -> list[e.Replanned]:
    return [one.event for one in day.session.snapshot.entries if isinstance(one.event, e.Replanned)]


def test_a_change_is_said_back_and_counts_when_an_empty_line_follows(tmp_path: Path) -> None:
    day = LinedDay(tmp_path)
    printed = day.type(["change alum 15 % because the water is hard", ""])
    assert any("alum 36 g in all" in line and "an empty line keeps it" in line for line in printed)
    assert len(changes(day)) == 1 and changes(day)[0].why == "the water is hard"
    assert any("alum still to go in with mordant: 36 g, not 28.8 g" in line for line in printed)


def test_a_change_is_left_out_when_something_else_follows(tmp_path: Path) -> None:
    day = LinedDay(tmp_path)
    day.type(["change alum 15 % because the water is hard", "note no, leave it"])
    assert changes(day) == []


def test_a_second_lot_joins_by_a_typed_line(tmp_path: Path) -> None:
    day = LinedDay(tmp_path)
    day.type(["change third skein 40 g dry wool joins because it was found", ""])
    assert {lot.name for lot in day.session.snapshot.state.lots} >= {"large skein", "small skein", "third skein"}


@pytest.mark.parametrize("text", ["change", "change alum", "change chrome 3 % because bright", "stage", "stage cook"])
def test_a_change_that_says_nothing_is_one_sentence_and_changes_nothing(tmp_path: Path, text: str) -> None:
    day = LinedDay(tmp_path)
    printed = day.type([text])
    assert sum(line.startswith("Not done: ") for line in printed) == 1
    assert changes(day) == []


def test_a_day_without_a_recipe_is_begun_and_filled_by_typed_lines(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "logs").mkdir()
    example = "stage mordant in the mordant pot with alum 12 %, to 85 °C, hold 60 min"
    monkeypatch.setattr("sys.stdin", io.StringIO(f"{example}\n\n\nquit\n"))
    words = ["--workroom", str(tmp_path), "begin", "--fibre", "100 g dry wool", "--plain"]
    assert main(words) == 0
    said = capsys.readouterr().out
    assert f"for example: {example.removeprefix('stage ')}" in said.replace("\u00a0", " ")
    assert "mordant begun" in said and "alum 12 g" in said.replace("\u00a0", " ")
    assert len(list((tmp_path / "logs").glob("*.toml"))) == 1
