"""When the bell rings: at once, soon again, then steadily until somebody has seen it. Keeps quiet hours.

Pure but for remembering when it last rang. Times are the day's own, handed in.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from dyesession.clock import Instant, elapsed_s

if TYPE_CHECKING:
    from dyesession.kitchen.model import Alarm

FIRST_RINGS_S = (0.0, 5.0, 10.0)  # common practice, no source
STOPS_AFTER_S = 30 * 60.0  # a bell nobody hears for half an hour is heard by nobody; our own choice, no source


class Bell:
    """Call `wants_to_ring` at each look at the clock."""

    def __init__(self, alarm: Alarm | None = None, *, on_trial: bool = False) -> None:
        """`on_trial`: somebody wants to hear it now, whatever the hour."""
        self._alarm, self._on_trial = alarm or _usual(), on_trial
        self._since: Instant | None = None
        self._rung = 0

    @property
    def command(self) -> tuple[str, ...]:
        """A program to be started with each ring, and its arguments; empty for none."""
        return self._alarm.command

    def wants_to_ring(self, ringing: bool, now: Instant) -> bool:
        """Whether to ring now; `ringing`: whether anything rings now."""
        if not ringing:
            self._since, self._rung = None, 0
            return False
        if self._since is None:
            self._since = now
        if not self._on_trial and (not self._alarm.bell or self._quiet(now)):
            return False
        over_s = elapsed_s(self._since, now).seconds
        if over_s > STOPS_AFTER_S or over_s < self._next_s():
            return False
        self._rung += 1
        return True

    def _next_s(self) -> float:
        if self._rung < len(FIRST_RINGS_S):
            return FIRST_RINGS_S[self._rung]
        return FIRST_RINGS_S[-1] + (self._rung - len(FIRST_RINGS_S) + 1) * self._alarm.repeat_s

    def _quiet(self, now: Instant) -> bool:
        from dyesession.kitchen.alarm import (
            in_quiet_hours,  # not before it is wanted: the Bench must be up at once
        )

        return in_quiet_hours(self._alarm, now.at.time())


def _usual() -> Alarm:
    from dyesession.kitchen.model import Alarm

    return Alarm()
