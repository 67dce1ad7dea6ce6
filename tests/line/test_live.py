"""At a keyboard: what falls due is said at once while nobody types, again until it is answered, softly at
night.
"""

import queue
import threading
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from datetime import time as time_of_day
from pathlib import Path

import pytest
from line.lined import LinedDay

from dyesession.kitchen.alarm import in_quiet_hours
from dyesession.kitchen.model import Alarm
from dyesession.line import run_line
from dyesession.line.ears import Keyboard
from dyesession.line.ringing import Bell
from dyesession.session.suggest import Ring

SOON_S = 5.0


def ring(severity: str = "prompt") -> Ring:
    return Ring("extract/2", "extract", "extract pot", severity, 60.0)  # type: ignore[arg-type]


def wait_for(true: Callable[[], bool]) -> None:
    end = time.monotonic() + SOON_S
    while not true():
        assert time.monotonic() < end, "it did not happen"
        time.sleep(0.005)


class Sitting:
    """Somebody at a keyboard: lines are typed when the test says so."""

    def __init__(self, day: LinedDay) -> None:
        self.printed: list[str] = []
        self._typed: queue.Queue[str | None] = queue.Queue()
        self._thread = threading.Thread(target=self._run, args=(day,), daemon=True)
        self._thread.start()

    def _run(self, day: LinedDay) -> None:
        run_line(
            day.session,
            self._read,
            self.printed.append,
            live=True,
            bell=True,
            kitchen=day.kitchen,
            look_again_s=0.01,
        )

    def _read(self, prompt: str) -> str:
        line = self._typed.get()
        if line is None:
            raise EOFError
        return line

    def type(self, line: str | None) -> None:
        self._typed.put(line)

    def saw(self, text: str) -> Callable[[], bool]:
        return lambda: any(text in line for line in self.printed)

    def end(self) -> None:
        self.type(None)
        self._thread.join(SOON_S)
        assert not self._thread.is_alive()


@pytest.fixture
def waiting(tmp_path: Path) -> LinedDay:
    day = LinedDay(tmp_path)
    day.spaces_until("NEXT see whether A is at 60 °C, at")
    return day


def test_what_falls_due_is_said_at_once_with_a_bell_while_nobody_types(waiting: LinedDay) -> None:
    sitting = Sitting(waiting)
    wait_for(sitting.saw("NEXT see whether A"))
    assert not any("RINGS" in line for line in sitting.printed)
    waiting.clock.advance(3600)
    wait_for(sitting.saw("\aALARM A, the wash pot: should be at 60 °C"))
    sitting.end()


def test_it_rings_again_until_it_is_answered(waiting: LinedDay) -> None:
    sitting = Sitting(waiting)
    waiting.clock.advance(1900)
    wait_for(sitting.saw("RINGS A"))
    first = sum("RINGS A" in line for line in sitting.printed)
    waiting.clock.advance(waiting.kitchen.alarm.repeat_s + 1)
    wait_for(lambda: sum("RINGS A" in line for line in sitting.printed) > first)
    sitting.type("seen")
    wait_for(sitting.saw("seen: scour"))
    answered = sum("RINGS A" in line for line in sitting.printed)
    waiting.clock.advance(waiting.kitchen.alarm.repeat_s + 1)
    sitting.type("where")
    wait_for(sitting.saw("Put in last"))
    assert sum("RINGS A" in line for line in sitting.printed) == answered
    sitting.end()


def test_the_kitchen_s_own_alarm_command_is_started_too_and_its_failing_is_said(
    waiting: LinedDay, tmp_path: Path
) -> None:
    rung = tmp_path / "rung"
    told = replace(waiting.kitchen.alarm, command=("touch", str(rung)))
    waiting.kitchen = replace(waiting.kitchen, alarm=told)
    sitting = Sitting(waiting)
    waiting.clock.advance(1900)
    wait_for(rung.exists)
    sitting.end()
    waiting.kitchen = replace(waiting.kitchen, alarm=replace(told, command=(str(tmp_path / "nothing"),)))
    sitting = Sitting(waiting)
    wait_for(sitting.saw("could not be started"))
    sitting.end()


def test_the_end_of_the_input_quits_and_says_how_to_come_back(waiting: LinedDay) -> None:
    sitting = Sitting(waiting)
    sitting.end()
    assert (
        sitting.printed[-1] == f"The clocks go on. To take the day up again: dyesession resume {waiting.path}"
    )


def test_one_line_is_read_at_a_time_and_only_when_asked_for() -> None:
    asked: list[str] = []
    keyboard = Keyboard(lambda prompt: asked.append(prompt) or "where", 0.5)  # type: ignore[func-returns-value]
    time.sleep(0.02)
    assert asked == []
    assert keyboard.hear("> ") == "where"
    time.sleep(0.02)
    assert asked == ["> "]


def test_a_script_hears_a_ring_once_until_it_is_answered() -> None:
    bell = Bell(Alarm(repeat_s=15), live=False)
    assert bell.struck([ring()], 0.0) == (ring(),)
    assert bell.struck([ring()], 100.0) == ()
    assert bell.struck([], 101.0) == ()
    assert bell.struck([ring()], 102.0) == (ring(),)


def test_a_prompt_that_turns_into_an_alarm_is_said_again() -> None:
    bell = Bell(Alarm(repeat_s=1000), live=True)
    assert bell.struck([ring()], 0.0) and not bell.struck([ring()], 1.0)
    assert bell.struck([ring("alarm")], 2.0) == (ring("alarm"),)


@pytest.mark.parametrize(
    ("now", "quiet"), [("21:59", False), ("22:00", True), ("03:00", True), ("06:59", True), ("07:00", False)]
)
def test_quiet_hours_may_span_midnight(now: str, quiet: bool) -> None:
    alarm = Alarm(quiet_from="22:00", quiet_to="07:00")
    assert in_quiet_hours(alarm, time_of_day.fromisoformat(now)) is quiet
    assert Bell(alarm, live=True).quiet(datetime.fromisoformat(f"2026-03-14T{now}:00+01:00")) is quiet


def test_without_quiet_hours_the_bell_rings_at_any_time() -> None:
    assert not in_quiet_hours(Alarm(), time_of_day(3, 0))
    assert Bell(Alarm(bell=False), live=True).quiet(datetime.fromisoformat("2026-03-14T12:00:00+01:00"))
