"""A logged day walked through once more, entry by entry: the state after each, corrections carried out.

Pure; the account is not reckoned here.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime

from dyesession.session.fold import Entry, apply, effective, opening_state
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State


@dataclass(frozen=True)
class Pace:
    """One entry, the state before it and after it."""

    entry: Entry
    before: State
    after: State

    @property
    def at(self) -> datetime:
        """When it happened: as the dyer says, else when it was recorded."""
        return self.entry.happened or self.entry.instant.at


def walk(day: LoggedDay) -> Iterator[Pace]:
    """Every entry as the corrections leave it, with the states around it."""
    state = replace(opening_state(day.plan), instant=day.opened)
    for entry in effective(day.entries):
        before, state = state, apply(state, entry)
        yield Pace(entry, before, state)
