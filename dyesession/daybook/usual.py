"""What a usual cause of a trouble is: why, by whom, how to look for it in a log, and the mend. No cause
stands here.

Pure.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from dyesession.daybook.traces import Traces

Symptom = Literal["streaks", "felting", "stickiness", "bleeding", "too pale", "too dull", "wrong hue"]
Standing = Literal["shown", "not said", "spoken against"]

SYMPTOMS: tuple[Symptom, ...] = (
    "streaks", "felting", "stickiness", "bleeding", "too pale", "too dull", "wrong hue",
)  # fmt: skip


@dataclass(frozen=True)
class Seen:
    """How the log stands to a cause, and what it shows in one sentence ("" where it says nothing)."""

    standing: Standing
    text: str = ""


NOT_SAID = Seen("not said")


def shown(text: str) -> Seen:
    """The log shows it."""
    return Seen("shown", text)


def against(text: str) -> Seen:
    """The log speaks against it."""
    return Seen("spoken against", text)


@dataclass(frozen=True)
class Usual:
    """A usual cause of a trouble: why it makes it, its source, how to see it in a log, the mend and its
    source.
    """

    why: str
    source: str
    look: Callable[[Traces], Seen | None]
    mend: str
    mend_source: str
