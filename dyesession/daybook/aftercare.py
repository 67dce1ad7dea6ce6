"""What a finished lot still wants: its shade looked at dry, a second wash, a rub on a white cloth, the window.

Pure; today's date is handed in. After how many days each is due: common practice, no source.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from dyesession.daybook.day_line import DayLine

LAPSES_DAYS = 90  # after this it is no longer asked for; our own choice, no source
ENDED = ("complete", "stopped")


@dataclass(frozen=True)
class Test:
    """One piece of aftercare: days after closing, the word it is known by in a log, and what to do."""

    __test__ = False  # no test of this program's own

    what: str
    word: str
    after_days: int
    do: str


WINDOW_WEEKS = 4
AFTERCARE = (
    Test("dry shade", "shade", 1, "look at the shade dry, by daylight, and note it"),
    Test("rub on a white cloth", "rub", 1, "rub it dry and damp on a white cloth and note what comes off"),
    Test("second wash", "wash", 7, "wash it once more, apart, and note what runs"),
    Test("window test", "window", 1, "hang a strand half covered in a sunny window and note the day"),
)
WINDOW_LOOK = Test(
    "window test, the look", "window", 7 * WINDOW_WEEKS, "compare the strand's two halves and note the change"
)


@dataclass(frozen=True)
class Due:
    """One piece of aftercare that is due: on which day's log, since when, and what to do."""

    session: str
    what: str
    since: date
    do: str


def aftercare_due(line: DayLine, today: date) -> tuple[Due, ...]:
    """What is due of one day, in the order of doing; nothing of a rehearsal or a day that dyed nothing."""
    if line.rehearsal or not line.dyed or line.status not in ENDED:
        return ()
    ended = date.fromisoformat((line.closed or line.last_at or line.opened)[:10])
    found = (_due(line, test, ended) for test in AFTERCARE)
    due = (*(one for one in found if one is not None), *_window_look(line))
    return tuple(one for one in due if one.since <= today <= one.since + timedelta(days=LAPSES_DAYS))


def all_due(lines: Iterable[DayLine], today: date) -> tuple[Due, ...]:
    """What is due of many days, the longest due first."""
    found = (one for line in lines for one in aftercare_due(line, today))
    return tuple(sorted(found, key=lambda one: (one.since, one.session)))


def _due(line: DayLine, test: Test, ended: date) -> Due | None:
    if any(test.word in one.what.casefold() for one in line.cared):
        return None
    if test.word == "shade" and any(one.wet is False for one in line.colours):
        return None
    return Due(line.session, test.what, ended + timedelta(days=test.after_days), test.do)


def _window_look(line: DayLine) -> Iterable[Due]:
    """Once the strand hangs: a look some weeks on. The second entry that names the window ends it."""
    hung = [one for one in line.cared if "window" in one.what.casefold()]
    if len(hung) == 1:
        since = date.fromisoformat(hung[0].at[:10]) + timedelta(days=WINDOW_LOOK.after_days)
        yield Due(line.session, WINDOW_LOOK.what, since, WINDOW_LOOK.do)
