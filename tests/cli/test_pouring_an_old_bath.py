"""A kept bath of a whole day poured into an open day: typed there or by command, its colour comes along."""

from pathlib import Path

import pytest
from daybook.written import written
from days import Day

from dyesession.cli import FINE, main
from dyesession.cli.dyers_folder import DyersFolder
from dyesession.cli.workroom import Workroom
from dyesession.session import events as e
from dyesession.session.brought import brought_in
from dyesession.session.opening import read_day
from dyesession.storage import DISK

OPEN = "2026-03-17-a-day-k7q2"
LOT = "madder from the shelf"


@pytest.fixture
def room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> tuple[Path, str]:
    """A folder with a whole madder day behind it and a day that is open; and the label of the kept dye bath."""
    monkeypatch.setenv("DYESESSION_WORKROOM", str(tmp_path))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    day = Day()
    day.home()
    label = next(
        one.event.label for one in day.entries if isinstance(one.event, e.Kept) and one.event.vessel == "dye pot"
    )
    written(day, tmp_path / "logs", "2026-03-14-a-day-aaaa")
    later = Day()
    later.clock.advance(3 * 86400)
    later.opened = later.clock.now()
    written(later, tmp_path / "logs", OPEN)
    return tmp_path, label


def test_poured_at_the_stove_its_colour_is_in_the_account_at_once_and_in_the_log(room: tuple[Path, str]) -> None:
    folder, label = room
    log = folder / "logs" / f"{OPEN}.toml"
    session = DyersFolder(Workroom(folder), DISK).resume(log)
    try:
        session.do(e.Drawn("dye pot", label, volume_l=2.0)).result()
        bath = session.snapshot.account.bath("dye pot")
    finally:
        session.close()
    assert bath is not None and bath.volume_l.mean == pytest.approx(2.0)
    there = bath.grams(LOT)
    assert 0.0 < there.low < there.mean < there.high < 120.0
    [drew] = [one.event for one in read_day(DISK, log).entries if isinstance(one.event, e.Drawn)]
    assert isinstance(drew, e.Drawn) and drew.brought_l == 2.0
    told = {one.lot: one for one in brought_in(drew.brought)}
    assert told[LOT].mean_g == pytest.approx(there.mean, rel=1e-3)


def test_poured_by_command_it_is_the_same(room: tuple[Path, str]) -> None:
    folder, label = room
    assert main(["shelf", "draw", label, "--into", "D", "--litres", "2"]) == FINE
    log = folder / "logs" / f"{OPEN}.toml"
    [drew] = [one.event for one in read_day(DISK, log).entries if isinstance(one.event, e.Drawn)]
    assert isinstance(drew, e.Drawn) and LOT in {one.lot for one in brought_in(drew.brought)}
