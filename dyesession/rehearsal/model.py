"""What a rehearsal tells, as frozen data. Minutes count from the start; wall times carry their offset."""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Literal

from dyesession.plan.model import Plan


@dataclass(frozen=True)
class Happening:
    """One line of the timetable as it went: when, in which lane, step and pot, what."""

    at: datetime
    minute: float
    lane: str
    step: str
    vessel: str
    kind: str
    what: str


@dataclass(frozen=True)
class StepCare:
    """The reminders one step showed, and how many questions stood before its acts.

    `private`: those that tell who lives here. They are printed for the dyer and handed to no other program.
    """

    step: str
    texts: tuple[str, ...]
    asks: int
    private: tuple[str, ...] = ()


@dataclass(frozen=True)
class Question:
    """A question as it was asked and answered."""

    at: datetime
    step: str
    question: str
    answer: str


@dataclass(frozen=True)
class Call:
    """Something that rang: a prompt, or an alarm (a hot pot that was left too long)."""

    at: datetime
    minute: float
    step: str
    vessel: str
    severity: Literal["prompt", "alarm"]
    what: str


@dataclass(frozen=True)
class Shown:
    """What the account said after an entry."""

    at: datetime
    after: int
    text: str


@dataclass(frozen=True)
class Rehearsed:
    """A rehearsed day. `path` is its log, None where it was not kept."""

    plan: Plan
    session: str
    path: Path | None
    started: datetime
    ended: datetime
    timeline: tuple[Happening, ...]
    account: tuple[Shown, ...]
    ledger: tuple[str, ...]
    care: tuple[StepCare, ...]
    questions: tuple[Question, ...]
    calls: tuple[Call, ...]

    @property
    def reminder_count(self) -> int:
        """How many reminders the day shows."""
        return sum(len(one.texts) for one in self.care)

    @property
    def alarms(self) -> tuple[Call, ...]:
        """What rang because a hot pot was left too long."""
        return tuple(one for one in self.calls if one.severity == "alarm")

    @property
    def most_calls_in_ten_min(self) -> int:
        """The most prompts and alarms together in any ten minutes."""
        return most_within(tuple(one.minute for one in self.calls), 10.0)


def most_within(minutes: tuple[float, ...], window_min: float) -> int:
    """The most of these moments that lie within one window of so many minutes."""
    return max((sum(start <= one < start + window_min for one in minutes) for start in minutes), default=0)
