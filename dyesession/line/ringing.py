"""When a ring is said aloud: at once, and again until it is answered; softly in the kitchen's quiet hours.

Pure of clocks: the time is handed in. Knows what rings and nothing of what it means.
"""

from collections.abc import Iterable
from datetime import datetime

from dyesession.kitchen.alarm import in_quiet_hours
from dyesession.kitchen.model import Alarm
from dyesession.session.suggest import Ring


class Bell:
    """Remembers what was said and when. `live`: ring again after the kitchen's own pause, not once only."""

    def __init__(self, alarm: Alarm, live: bool) -> None:
        self._alarm, self._live = alarm, live
        self._struck_s: dict[tuple[str, str], float] = {}

    def struck(self, ringing: Iterable[Ring], now_s: float) -> tuple[Ring, ...]:
        """What is to be said now, of all that rings now."""
        found = {(one.countdown, one.severity): one for one in ringing}
        self._struck_s = {key: second for key, second in self._struck_s.items() if key in found}
        fresh = [key for key in found if self._wants(key, now_s)]
        self._struck_s |= dict.fromkeys(fresh, now_s)
        return tuple(found[key] for key in fresh)

    def _wants(self, key: tuple[str, str], now_s: float) -> bool:
        last_s = self._struck_s.get(key)
        return last_s is None or (self._live and now_s - last_s >= self._alarm.repeat_s)

    def quiet(self, now: datetime) -> bool:
        """Whether the bell keeps still: it is not wanted at all, or these are quiet hours."""
        return not self._alarm.bell or in_quiet_hours(self._alarm, now.time())
