"""The only room that reads the time: a real clock, a stepping clock, and the time between two facts.

Must not know what is being timed. Source of the rule: CLOCK_BOOTTIME counts sleep, CLOCK_MONOTONIC does not
(Linux man-pages, clock_getres(2)); wall clocks get set, and say so only by their offset.
"""

import time
import zlib
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path
from typing import Literal, Protocol

MILLISECOND_US = 1000
BOOT_ID_FILE = Path("/proc/sys/kernel/random/boot_id")
BOOT_ID_LENGTH = 8
BOOT_TIME_STEP_S = 60.0  # how finely a guessed start of the machine is told apart; common practice, no source

TimedBy = Literal["boot clock", "wall clock"]


@dataclass(frozen=True, slots=True)
class Instant:
    """One moment as three numbers, which together time a countdown whatever the wall clock does.

    `at` is the wall time with a fixed offset, `boot` names the run of the machine, and `up_s` counts its
    seconds including sleep. Raises ValueError when `at` has no offset.
    """

    at: datetime
    boot: str
    up_s: float

    def __post_init__(self) -> None:
        if self.at.utcoffset() is None:
            raise ValueError(f"an instant needs a time with an offset, such as 09:05+01:00, not {self.at}")


@dataclass(frozen=True, slots=True)
class Elapsed:
    """Seconds from one instant to another, never negative, and which clock they were read from."""

    seconds: float
    by: TimedBy


class Clock(Protocol):
    """Whatever can say what time it is."""

    def now(self) -> Instant:
        """The present moment."""
        ...


def fixed(moment: datetime) -> datetime:
    """The same moment with a fixed offset of whole minutes, cut to milliseconds, as a log holds it.

    Arithmetic on named time zones is wall arithmetic and goes wrong over a change of clocks, so every time is
    fixed before it is used. Raises ValueError when the time has no offset.
    """
    offset = moment.utcoffset()
    if offset is None:
        raise ValueError(f"expected a time with an offset, such as 09:05+01:00, not {moment}")
    minutes = timedelta(minutes=round(offset / timedelta(minutes=1)))
    local = moment.astimezone(timezone(minutes))
    return local.replace(microsecond=local.microsecond // MILLISECOND_US * MILLISECOND_US)


def elapsed_s(earlier: Instant, later: Instant) -> Elapsed:
    """How long it was from one instant to another, by the three-number rule.

    In the same run of the machine the clock that counts sleep decides; across a restart only the wall clock
    is left, and the answer says so.
    """
    if _share_a_clock(earlier, later):
        return Elapsed(later.up_s - earlier.up_s, "boot clock")
    return Elapsed(max(0.0, (later.at - earlier.at).total_seconds()), "wall clock")


def clock_jump_s(earlier: Instant, later: Instant) -> float:
    """By how many seconds the wall clock ran ahead of (or, below zero, behind) the clock that counts sleep.

    Across a restart there is nothing to compare with: 0, unless the wall clock went backwards.
    """
    wall_s = (later.at - earlier.at).total_seconds()
    if _share_a_clock(earlier, later):
        return wall_s - (later.up_s - earlier.up_s)
    return min(0.0, wall_s)


def _share_a_clock(earlier: Instant, later: Instant) -> bool:
    # A count that ran backwards under one name is not one clock: two guessed starts fell together.
    return earlier.boot == later.boot and later.up_s >= earlier.up_s


class SystemClock:
    """The computer's own clocks. Without a clock that counts sleep, sleep shows as a clock jump."""

    def __init__(self) -> None:
        self._boot = _boot_id()

    def now(self) -> Instant:
        """The present moment, cut to milliseconds so that a log read back gives the same instant."""
        return Instant(fixed(datetime.now(UTC).astimezone()), self._boot, round(_up_s(), 3))


def _up_s() -> float:
    if hasattr(time, "CLOCK_BOOTTIME"):
        return time.clock_gettime(time.CLOCK_BOOTTIME)
    return time.monotonic()


def _boot_id() -> str:
    try:
        told = BOOT_ID_FILE.read_text("ascii").replace("-", "")[:BOOT_ID_LENGTH]
    except (OSError, ValueError):
        told = ""
    return told if len(told) == BOOT_ID_LENGTH else _guessed_boot_id()


def _guessed_boot_id() -> str:
    # A wrong guess only makes the same run look like another one: the wall clock decides then, and says so.
    started = round((time.time() - _up_s()) / BOOT_TIME_STEP_S)
    return f"{zlib.crc32(str(started).encode()):08x}"


class SteppingClock:
    """A clock that stands still until told: for rehearsals and tests.

    `start` is a time with an offset. The wall clock may be set, moved to another zone, or lost over a
    restart, while `up_s` goes on counting true seconds, as the real ones do.
    """

    def __init__(self, start: datetime, *, up_s: float = 0.0) -> None:
        self._wall = fixed(start)
        self._boots = 1
        self._up_s = up_s

    def now(self) -> Instant:
        """The moment the clock was last moved to."""
        return Instant(fixed(self._wall), f"{self._boots:08x}", round(self._up_s, 3))

    def advance(self, seconds: float) -> Instant:
        """Let so many seconds pass (0 or more), awake or asleep: both clocks count them."""
        if seconds < 0:
            raise ValueError(f"time passes forwards: expected 0 s or more, not {seconds}")
        self._wall += timedelta(seconds=seconds)
        self._up_s += seconds
        return self.now()

    def set_wall(self, moment: datetime) -> Instant:
        """Set the wall clock, as a hand or a time server does; no true time passes."""
        self._wall = fixed(moment)
        return self.now()

    def set_zone(self, hours: float) -> Instant:
        """Move to another offset from UTC, as summer time or a journey does; no true time passes."""
        self._wall = self._wall.astimezone(timezone(timedelta(hours=hours)))
        return self.now()

    def reboot(self, off_s: float = 30.0) -> Instant:
        """Switch the machine off for so many seconds and on again: a new run, counted from nothing."""
        self.advance(off_s)
        self._boots += 1
        self._up_s = 0.0
        return self.now()
