"""What is done to a kept bath by command: at a terminal, what to bear in mind is told and asked about first."""

import sys
from pathlib import Path

import pytest
from daybook.written import written
from days import Day

from dyesession.cli import FINE, TO_PUT_RIGHT, main
from dyesession.session import events as e
from dyesession.session.opening import read_day
from dyesession.storage import DISK

LABEL = "weld bath"


@pytest.fixture(autouse=True)
def room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a bath put by, and a day that is open."""
    monkeypatch.setenv("DYESESSION_WORKROOM", str(tmp_path))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    day = Day()
    day.do(e.Filled("dye pot", 4.0))
    day.do(e.Added("madder", "dye pot", 40.0))
    day.do(e.Kept("dye pot", LABEL, 4.0))
    day.do(e.Stopped("enough"))
    day.do(e.Closed("put by"))
    written(day, tmp_path / "logs", "2026-03-13-a-day-aaaa")
    written(Day(), tmp_path / "logs", "2026-03-14-a-day-k7q2")
    return tmp_path


def at_a_terminal(monkeypatch: pytest.MonkeyPatch, *answers: str) -> None:
    given = iter(answers)
    for one in (sys.stdin, sys.stdout):
        monkeypatch.setattr(one, "isatty", lambda: True, raising=False)
    monkeypatch.setattr("builtins.input", lambda prompt: next(given))


def drawn(room: Path) -> list[e.Event]:
    day = read_day(DISK, room / "logs" / "2026-03-14-a-day-k7q2.toml")
    return [one.event for one in day.entries if isinstance(one.event, e.Drawn)]


def test_a_draw_is_told_and_asked_about_before_it_is_written(
    room: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    at_a_terminal(monkeypatch, "perhaps", "no")
    assert main(["shelf", "draw", LABEL, "--into", "D", "--litres", "2"]) == TO_PUT_RIGHT
    told = capsys.readouterr()
    assert told.out.startswith("First bear in mind:\n! weld bath") and "Answer yes or no" in told.out
    assert "stands as it stood" in told.err and drawn(room) == []
    at_a_terminal(monkeypatch, "yes")
    assert main(["shelf", "draw", LABEL, "--into", "D", "--litres", "2"]) == FINE
    assert [one.volume_l for one in drawn(room) if isinstance(one, e.Drawn)] == [2.0]
    assert capsys.readouterr().out.count("! weld bath: ") == 1, "said once, before it was done"


def test_a_script_is_not_asked_and_told_afterwards(room: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["shelf", "draw", LABEL, "--into", "D", "--litres", "2"]) == FINE
    assert "! weld bath: " in capsys.readouterr().out and len(drawn(room)) == 1


def test_throwing_away_is_asked_about_and_a_no_leaves_every_log_as_it_was(
    room: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    before = sorted((room / "logs").iterdir())
    at_a_terminal(monkeypatch, "n")
    assert main(["shelf", "discard", LABEL]) == TO_PUT_RIGHT
    assert "nothing was written" in capsys.readouterr().err and sorted((room / "logs").iterdir()) == before
