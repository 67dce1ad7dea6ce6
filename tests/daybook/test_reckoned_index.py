"""What kept baths come to lies in an index that can be thrown away: it spares the reckoning and changes nothing."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from daybook.written import written
from days import Day

from dyesession.account import Account
from dyesession.daybook import reckoned_index
from dyesession.daybook.reckoned_index import kept_reckoning, program_mark
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay
from dyesession.session.quick_day import read_facts_of_day
from dyesession.shelf import Shelf, shelf_of
from dyesession.storage import DISK

TODAY = date(2026, 3, 17)
SECOND = "2026-03-16-second-m3xz"


class Counted:
    """Reckons a day as the shelf does, and counts."""

    def __init__(self, reckoned: Callable[[LoggedDay], Account]) -> None:
        self._reckoned, self.days = reckoned, list[str]()

    def __call__(self, day: LoggedDay) -> Account:
        self.days.append(Path(day.path).stem)
        return self._reckoned(day)


@pytest.fixture
def reckoning(monkeypatch: pytest.MonkeyPatch) -> Counted:
    counted = Counted(reckoned_index.account_of_day)
    monkeypatch.setattr(reckoned_index, "account_of_day", counted)
    return counted


@pytest.fixture(scope="module")
def season(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A madder day that keeps its baths, and a day without any."""
    folder = tmp_path_factory.mktemp("season")
    first, other = Day(), Day()
    first.home()
    other.clock.advance(2 * 86400.0)
    other.opened = other.clock.now()
    other.state = replace(other.state, instant=other.opened)
    other.do(e.Noted("Only looked at the wool."))
    written(first, folder, "2026-03-14-first-k7q2")
    written(other, folder, SECOND)
    assert any(isinstance(one.event, e.Kept) for one in first.entries)
    return folder


def days_of(folder: Path) -> list[LoggedDay]:
    return [read_facts_of_day(DISK, one) for one in sorted(folder.glob("*.toml"))]


def shelf_by(folder: Path, index: Path | None) -> Shelf:
    with kept_reckoning(DISK, index) as reckoned:
        return shelf_of(days_of(folder), TODAY, reckoned=reckoned)


def test_a_kept_bath_is_reckoned_once_and_what_is_told_of_it_is_the_same_with_and_without_an_index(
    season: Path, tmp_path: Path, reckoning: Counted
) -> None:
    index = tmp_path / "cache" / "kept.json"
    plain = shelf_of(days_of(season), TODAY)
    assert plain.baths and plain == shelf_by(season, index) == shelf_by(season, index)
    assert reckoning.days == ["2026-03-14-first-k7q2"]  # once, and only the day that kept a bath
    index.unlink()
    assert shelf_by(season, index) == plain == shelf_by(season, None)
    index.write_text(index.read_text("utf-8").replace('"mean"', '"middle"'), "utf-8")
    assert shelf_by(season, index) == plain
    assert len(reckoning.days) == 4  # thrown away, not wanted, meddled with: each time reckoned anew


def test_a_day_written_on_and_another_program_are_reckoned_anew(
    season: Path, tmp_path: Path, reckoning: Counted, monkeypatch: pytest.MonkeyPatch
) -> None:
    index, folder = tmp_path / "kept.json", tmp_path / "logs"
    folder.mkdir()
    for one in season.iterdir():
        (folder / one.name).write_bytes(one.read_bytes())
    shelf_by(folder, index)
    day = Day()
    day.home()
    label = next(one.event.label for one in day.entries if isinstance(one.event, e.Kept))
    day.do(e.Corrected(_entry_that_kept(day, label), "it was less", changes=({"key": "volume_l", "value": 1.0},)))
    written(day, folder, "2026-03-14-first-k7q2-again")
    (folder / "2026-03-14-first-k7q2-again.toml").replace(folder / "2026-03-14-first-k7q2.toml")
    shown = shelf_by(folder, index)
    assert len(reckoning.days) == 2
    assert shown == shelf_of(days_of(folder), TODAY) != shelf_by(season, None)
    monkeypatch.setattr(reckoned_index, "program_mark", lambda: "another")
    before = len(reckoning.days)
    assert shelf_by(folder, index) == shown and len(reckoning.days) == before + 1


def _entry_that_kept(day: Day, label: str) -> int:
    return next(one.n for one in day.entries if isinstance(one.event, e.Kept) and one.event.label == label)


def test_the_programs_mark_is_of_every_file_an_account_comes_out_of(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(reckoned_index, "PACKAGE", tmp_path)
    marks = set()
    for room in reckoned_index.ROOMS:
        (tmp_path / room).mkdir()
    for room in reckoned_index.ROOMS:
        for text in ("SHARE = 0.25", "SHARE = 0.35"):
            (tmp_path / room / "figures.py").write_text(text, "utf-8")
            marks.add(program_mark.__wrapped__())
    assert len(marks) == 2 * len(reckoned_index.ROOMS)
