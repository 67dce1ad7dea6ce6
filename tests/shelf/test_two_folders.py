"""Two machines' folders put together by copying, and what lies in a folder that is no log: nothing is lost or hurt."""

import errno
import os
import shutil
from datetime import date
from pathlib import Path

import pytest
from daybook.written import written
from days import MORNING, Day

from dyesession.account import Account, reckon
from dyesession.clock import SteppingClock
from dyesession.daybook.finding import DayBook, day_book
from dyesession.kitchen.model import Kitchen
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay, read_day
from dyesession.shelf import Shelf, drawn, from_shelf, shelf_of, told_to, top_up, write_act
from dyesession.storage import DISK

FIRST, DYE, ALUM = "2026-03-14-first-k7q2", "madder bath 4", "alum bath 3"
HERE, THERE = "2026-03-15-here-aaaa", "2026-03-15-there-bbbb"
_ACCOUNTS: dict[tuple[str, int], Account] = {}


def once(day: LoggedDay) -> Account:
    key = (day.name, len(day.entries))
    if key not in _ACCOUNTS:
        _ACCOUNTS[key] = reckon(day.plan, day.entries, day.opened)
    return _ACCOUNTS[key]


def book_of(folder: Path) -> DayBook:
    return day_book(DISK, [folder])


def days_of(folder: Path) -> list[LoggedDay]:
    return [read_day(DISK, folder / one.file) for one in book_of(folder).days]


def shelf(folder: Path) -> Shelf:
    return shelf_of(days_of(folder), date(2026, 3, 17), reckoned=once)


def draws(folder: Path, name: str, litres: float) -> None:
    """A day of this machine's own that pours some of the kept dye bath into a pot."""
    bath = shelf(folder).bath(DYE)
    assert bath is not None
    day = Day()
    day.clock.advance(86400.0)
    day.opened = day.clock.now()
    day.do(drawn(bath, "dye pot", litres))
    written(day, folder, name)


@pytest.fixture
def machines(tmp_path: Path) -> tuple[Path, Path]:
    """Two folders with the same first day, the second copied from the first."""
    here, there = tmp_path / "here", tmp_path / "there"
    day = Day()
    day.home()
    written(day, here, FIRST)
    shutil.copytree(here, there)
    return here, there


def both(here: Path, there: Path) -> Path:
    """All files of both in one folder, by plain copying; no two of one name may differ."""
    merged = here.parent / "merged"
    shutil.copytree(here, merged)
    for path in there.iterdir():
        if (merged / path.name).exists():
            assert (merged / path.name).read_bytes() == path.read_bytes(), f"{path.name} was written on both machines"
        shutil.copy2(path, merged)
    return merged


def test_a_bath_drawn_on_both_machines_is_lessened_by_both(machines: tuple[Path, Path]) -> None:
    here, there = machines
    whole_l = shelf(here).bath(DYE).left_l
    draws(here, HERE, 1.0)
    draws(there, THERE, 2.0)
    merged = both(here, there)
    book = book_of(merged)
    assert {one.session for one in book.days} == {FIRST, HERE, THERE} and not book.aside
    bath = shelf(merged).bath(DYE)
    assert bath.left_l == pytest.approx(whole_l - 3.0)
    assert {one.session for one in bath.draws} == {HERE, THERE} and not shelf(merged).told


def test_both_are_told_where_together_they_drew_more_than_there_was(machines: tuple[Path, Path]) -> None:
    here, there = machines
    draws(here, HERE, 5.0)
    draws(there, THERE, 5.0)
    assert not shelf(here).told and not shelf(there).told
    merged = both(here, there)
    for session in (HERE, THERE):
        [on_the_shelf] = told_to(shelf(merged), session)
        [at_the_opening] = from_shelf(days_of(merged), date(2026, 3, 17), session).told
        assert on_the_shelf == at_the_opening and HERE in on_the_shelf and THERE in on_the_shelf
    assert from_shelf(days_of(merged), date(2026, 3, 17), "2026-01-01-other-cccc").told == ()


def test_acts_at_the_shelf_on_two_machines_never_meet_in_one_file(machines: tuple[Path, Path]) -> None:
    here, there = machines
    clock = SteppingClock(MORNING)
    clock.advance(2 * 86400.0)
    write_act(DISK, here, top_up(shelf(here).bath(DYE), 1.0), Kitchen(), clock)
    write_act(DISK, there, top_up(shelf(there).bath(ALUM), 1.0), Kitchen(), clock)
    draws(there, THERE, 1.0)
    merged = both(here, there)
    found = shelf(merged)
    assert len(book_of(merged).days) == 4 and not book_of(merged).aside
    assert found.bath(ALUM) is not None and sorted(one.label for one in found.baths if one.label == ALUM) == [ALUM]
    assert found.told, "one machine moved the whole dye bath, the other drew from it as it stood: both are told"


def foreign(folder: Path, kind: str) -> str:
    """Put one thing that is no whole log into the folder; its name."""
    log = (folder / f"{FIRST}.toml").read_bytes()
    name = f"2026-03-20-{kind}.toml"
    path = folder / name
    if kind == "folder":
        path.mkdir()
    elif kind == "fifo":
        os.mkfifo(path)
    elif kind == "loop":
        path.symlink_to(path)
    elif kind == "dangling":
        path.symlink_to(folder / "nowhere.toml")
    elif kind == "conflict":
        name = f"{FIRST} (conflicted copy of the other machine).toml"
        (folder / name).write_bytes(log)
    else:
        contents = {"empty": b"", "cut in the head": log[:300], "another format": b'[package]\nname = "x"\n',
                    "newer": log.replace(b"format = 1", b"format = 9", 1), "noise": bytes(range(256)) * 4}  # fmt: skip
        path.write_bytes(contents[kind])
    return name


KINDS = ("folder", "fifo", "loop", "dangling", "conflict", "empty", "cut in the head", "another format", "newer", "noise")


@pytest.mark.parametrize("kind", KINDS)
def test_what_is_no_whole_log_is_named_with_its_reason_and_hurts_nothing(machines: tuple[Path, Path], kind: str) -> None:
    folder, _ = machines
    before = shelf(folder)
    name = foreign(folder, kind)
    book = book_of(folder)
    [aside] = book.aside
    assert aside.file == name and len(aside.reason) > len(name)
    assert [one.session for one in book.days] == [FIRST]
    assert shelf(folder) == before


def test_a_log_that_may_not_be_read_is_named_with_its_reason(
    machines: tuple[Path, Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    folder, _ = machines
    shutil.copy(folder / f"{FIRST}.toml", folder / "locked.toml")
    opened = type(DISK).open_read

    def guarded(disk: object, path: Path) -> int:
        if path.name == "locked.toml":  # whoever runs the tests as root may read everything
            raise PermissionError(errno.EACCES, "Permission denied", str(path))
        return opened(disk, path)  # type: ignore[arg-type]

    monkeypatch.setattr(type(DISK), "open_read", guarded)
    book = book_of(folder)
    [aside] = book.aside
    assert aside.file == "locked.toml" and "cannot be read" in aside.reason
    assert [one.session for one in book.days] == [FIRST]


def test_a_log_cut_in_the_middle_counts_as_far_as_it_is_whole(machines: tuple[Path, Path]) -> None:
    folder, _ = machines
    path = folder / f"{FIRST}.toml"
    path.write_bytes(path.read_bytes()[: path.stat().st_size * 2 // 3])
    [line] = book_of(folder).days
    assert line.session == FIRST and line.faults and not book_of(folder).aside
    assert not any(isinstance(one.event, e.Closed) for one in days_of(folder)[0].entries)
