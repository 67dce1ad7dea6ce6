"""The running day: facts are on disk before they are shown as saved, and a closed terminal loses nothing."""

import errno
import os
from pathlib import Path
from typing import Any

import pytest
from days import MORNING

from dyesession.clock import Instant, SteppingClock
from dyesession.kitchen import load_kitchen
from dyesession.kitchen.model import Kitchen
from dyesession.plan import lots_from_text, work_out
from dyesession.plan.model import Plan
from dyesession.recipe import Recipe, load_recipe
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.countdowns import heat_on
from dyesession.session.engine import Refused
from dyesession.session.fold import fold, opening_state
from dyesession.session.log import LogInUse, check_log, open_log
from dyesession.session.opening import DayError, begin_day, read_day, resume_day
from dyesession.session.session import Session
from dyesession.session.suggest import ALARM_AFTER_S, Wait, suggest
from dyesession.storage import DISK, Storage

ROOT = Path(__file__).resolve().parents[2]


def nothing_reckoned(plan: Plan, opened: Instant) -> Any:
    """A reckoner that tells nothing: these tests are about facts."""
    return lambda entries: (None, None)


def madder() -> tuple[Recipe, Plan, Kitchen]:
    recipe = load_recipe(ROOT / "recipes" / "madder-brick-red-on-wool.toml")
    kitchen = load_kitchen(ROOT / "dyesession" / "kitchen" / "example.toml")
    lots = lots_from_text(["165 g dry large skein", "75 g dry small skein"], "wool")
    return recipe, work_out(recipe, lots, kitchen), kitchen


def begin(folder: Path, clock: SteppingClock, storage: Storage = DISK) -> Session[Any]:
    recipe, plan, kitchen = madder()
    return begin_day(storage, folder, recipe, plan, kitchen, clock, nothing_reckoned)


def resume(path: str, clock: SteppingClock) -> Session[Any]:
    return resume_day(DISK, Path(path), clock, madder()[2].household, nothing_reckoned)


def space(session: Session[Any], clock: SteppingClock) -> Any:
    suggestion = suggest(session.snapshot.state, session.now_s(), session.household)
    if isinstance(suggestion, Wait):
        clock.advance(max(1.0, (suggestion.until_s or 0.0) - session.now_s()))
    else:
        command = suggestion.honest_answer() if isinstance(suggestion, Ask) else suggestion
        session.do(command).result(10)
    return suggestion


def test_a_day_taken_up_again_stands_on_the_same_second(tmp_path: Path) -> None:
    clock = SteppingClock(MORNING)
    session = begin(tmp_path, clock)
    while not isinstance(space(session, clock), Wait):
        pass
    clock.advance(100)
    before = session.snapshot.state
    left = [one.countdown.left_s(session.now_s()) for one in before.steps if one.countdown]
    session.close()
    clock.advance(77)
    again = resume(session.snapshot.path, clock)
    assert again.snapshot.state == before
    now = [one.countdown.left_s(again.now_s()) for one in again.snapshot.state.steps if one.countdown]
    assert now == pytest.approx([one - 77 for one in left])
    again.close()


def test_the_whole_day_is_in_the_log_and_the_log_passes_check(tmp_path: Path) -> None:
    clock = SteppingClock(MORNING)
    session = begin(tmp_path, clock)
    for _ in range(500):
        if session.snapshot.state.status == "complete":
            break
        space(session, clock)
    session.close()
    path = Path(session.snapshot.path)
    assert check_log(path) == []
    day = read_day(DISK, path)
    assert day.plan == session.snapshot.plan
    assert fold(opening_state(day.plan), day.entries, day.opened) == session.snapshot.state
    assert session.snapshot.state.status == "complete"


def test_a_refused_command_leaves_no_trace(tmp_path: Path) -> None:
    session = begin(tmp_path, SteppingClock(MORNING))
    size = Path(session.snapshot.path).stat().st_size
    with pytest.raises(Refused):
        session.do(e.Strained("extract pot", "dye pot")).result(10)
    assert Path(session.snapshot.path).stat().st_size == size
    assert session.snapshot.entries == ()
    session.close()


def test_a_second_copy_is_told_who_writes_the_log(tmp_path: Path) -> None:
    clock = SteppingClock(MORNING)
    session = begin(tmp_path, clock)
    with pytest.raises(LogInUse):
        resume(session.snapshot.path, clock)
    session.close()


def test_a_torn_end_is_set_aside_and_told(tmp_path: Path) -> None:
    clock = SteppingClock(MORNING)
    session = begin(tmp_path, clock)
    space(session, clock)
    session.close()
    with open(session.snapshot.path, "ab") as file:
        file.write(b'\n[[event]]\nn = 2\nat = 2026-03-14T09:0')
    again = resume(session.snapshot.path, clock)
    again.tick().result(10)
    assert [one.event.kind for one in again.snapshot.entries] == ["begun", "recovered"]
    again.close()


def test_a_long_absence_is_an_entry_of_its_own(tmp_path: Path) -> None:
    clock = SteppingClock(MORNING)
    session = begin(tmp_path, clock)
    space(session, clock)
    session.close()
    clock.reboot(off_s=3600)
    again = resume(session.snapshot.path, clock)
    again.tick().result(10)
    gap = again.snapshot.entries[-1].event
    assert isinstance(gap, e.ResumedAfterGap) and gap.away_s == pytest.approx(3600) and gap.by == "wall clock"
    again.close()


def test_a_changed_wall_clock_is_noted_and_moves_no_deadline(tmp_path: Path) -> None:
    clock = SteppingClock(MORNING)
    session = begin(tmp_path, clock)
    while not isinstance(space(session, clock), Wait):
        pass
    left = [one.countdown.left_s(session.now_s()) for one in session.snapshot.state.steps if one.countdown]
    clock.set_zone(5)
    clock.set_wall(clock.now().at.replace(hour=3))
    session.do(e.Noted("what a strange clock")).result(10)
    kinds = [one.event.kind for one in session.snapshot.entries[-2:]]
    now = [one.countdown.left_s(session.now_s()) for one in session.snapshot.state.steps if one.countdown]
    assert kinds == ["clock-changed", "noted"] and now == pytest.approx(left)
    session.close()


class Failing:
    """The disk, but for one call that fails as long as it is told to."""

    def __init__(self, call: str, code: int) -> None:
        self._call, self._code, self.sick = call, code, False

    def __getattr__(self, name: str) -> Any:
        if name == self._call and self.sick:
            return self._fail
        return getattr(DISK, name)

    def _fail(self, *_: object) -> None:
        raise OSError(self._code, os.strerror(self._code))


def test_a_full_disk_is_told_nothing_is_lost_and_the_next_save_catches_up(tmp_path: Path) -> None:
    storage: Any = Failing("write", errno.ENOSPC)
    session = begin(tmp_path, SteppingClock(MORNING), storage)
    storage.sick = True
    session.do(e.Noted("first")).result(10)
    assert session.snapshot.saving == "not saved" and session.snapshot.unsaved == 1
    assert session.snapshot.trouble
    storage.sick = False
    session.do(e.Noted("second")).result(10)
    assert session.snapshot.saving == "saved" and session.snapshot.unsaved == 0
    session.close()
    day = read_day(DISK, Path(session.snapshot.path))
    assert [entry.event.text for entry in day.entries if isinstance(entry.event, e.Noted)] == ["first", "second"]


def test_a_look_at_the_clock_is_due_until_what_is_not_saved_is_saved(tmp_path: Path) -> None:
    storage: Any = Failing("write", errno.ENOSPC)
    session = begin(tmp_path, SteppingClock(MORNING), storage)
    assert not session.is_due()
    storage.sick = True
    session.do(e.Noted("first")).result(10)
    assert session.is_due()
    storage.sick = False
    session.tick().result(10)
    assert session.snapshot.saving == "saved" and not session.is_due()
    session.close()


def test_a_look_at_the_clock_is_due_once_for_each_alarm(tmp_path: Path) -> None:
    clock = SteppingClock(MORNING)
    session = begin(tmp_path, clock)
    while not any(one.countdown and heat_on(session.snapshot.state, one) for one in session.snapshot.state.steps):
        space(session, clock)
    due_s = min(one.countdown.deadline_s for one in session.snapshot.state.steps if one.countdown)
    clock.advance(due_s - session.now_s() - 1)
    assert not session.is_due()  # before its time
    clock.advance(ALARM_AFTER_S)
    assert not session.is_due()  # it rings, and is no alarm yet
    clock.advance(2)
    assert session.is_due()
    session.tick().result(10)
    assert isinstance(session.snapshot.entries[-1].event, e.AlarmRaised) and not session.is_due()
    session.close()


def test_an_unsure_save_is_rescued_whole_into_another_folder(tmp_path: Path) -> None:
    storage: Any = Failing("fsync", errno.EIO)
    session = begin(tmp_path / "one", SteppingClock(MORNING), storage)
    session.do(e.Noted("first")).result(10)
    storage.sick = True
    session.do(e.Noted("second")).result(10)
    assert session.snapshot.saving == "unsure"
    storage.sick = False
    session.rescue(str(tmp_path / "two")).result(10)
    session.do(e.Noted("third")).result(10)
    assert session.snapshot.saving == "saved"
    session.close()
    day = read_day(DISK, Path(session.snapshot.path))
    texts = [one.event.text for one in day.entries if isinstance(one.event, e.Noted)]
    assert texts == ["first", "second", "third"] and "two" in session.snapshot.path


def test_a_log_with_facts_of_a_newer_program_is_not_written_into(tmp_path: Path) -> None:
    clock = SteppingClock(MORNING)
    session = begin(tmp_path, clock)
    path = Path(session.snapshot.path)
    session.close()
    with open_log(DISK, path) as writer:
        writer.append("dream", clock.now(), {"of": "indigo"})
    before = path.read_bytes()
    with pytest.raises(DayError, match="dream"):
        resume(str(path), clock)
    assert path.read_bytes() == before
    assert [one.event.kind for one in read_day(DISK, path).entries] == ["unknown"]
