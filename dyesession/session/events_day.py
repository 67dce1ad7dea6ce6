"""What happens to steps, the plan and the day: begun, paused, finished, replanned, corrected, stopped,
closed.

Facts only. Part of `events`.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, ClassVar


@dataclass(frozen=True)
class Begun:
    """A step was begun; `reminders` are the sentences shown with it; `early` says why before its time."""

    kind: ClassVar[str] = "begun"
    step: str
    reminders: tuple[str, ...] = ()
    early: str = ""


@dataclass(frozen=True)
class Confirmed:
    """An Ask was answered with a reading or a pot's letter."""

    kind: ClassVar[str] = "confirmed"
    ask: str
    answer: str
    vessel: str = ""
    temperature_c: float | None = None


@dataclass(frozen=True)
class PutOff:
    """An Ask was answered "not now"."""

    kind: ClassVar[str] = "put-off"
    ask: str
    vessel: str = ""


@dataclass(frozen=True)
class Paused:
    """A step's countdown was stopped for a while."""

    kind: ClassVar[str] = "paused"
    step: str
    why: str = ""


@dataclass(frozen=True)
class Resumed:
    """A paused step goes on."""

    kind: ClassVar[str] = "resumed"
    step: str


@dataclass(frozen=True)
class Extended:
    """A step's running countdown was made longer."""

    kind: ClassVar[str] = "extended"
    step: str
    minutes: float


@dataclass(frozen=True)
class OnShade:
    """The eye ended a dye step."""

    kind: ClassVar[str] = "on-shade"
    step: str
    why: str = ""


@dataclass(frozen=True)
class Finished:
    """A step is done."""

    kind: ClassVar[str] = "finished"
    step: str


@dataclass(frozen=True)
class Skipped:
    """A step is left out, and why."""

    kind: ClassVar[str] = "skipped"
    step: str
    why: str


@dataclass(frozen=True)
class Replanned:
    """The plan changed at the stove, and why. What was done stays; `changes` holds what is left to do now.

    `change` is one of: "refresh" (one extraction more, after the strain `step`); "lot joins" (`lot` of
    `mass_g` of the fibre `fibre`, `mordanted` when it needs no mordant); "lot weight" (`lot` weighs
    `mass_g`); "dose" (`mass_g` of `ingredient` in all; `value` is the per cent of fibre, where it was said
    so); "step" (a stage comes in, named `step`); "draw" (a kept bath goes in before the water of `step`);
    "recipe left" (the rest of the day is done freely).
    The tables of `changes` are those of `plan.changes`, worked out when the change was decided.
    """

    kind: ClassVar[str] = "replanned"
    change: str
    step: str = ""
    why: str = ""
    value: float | None = None
    lot: str = ""
    fibre: str = ""
    mass_g: float | None = None
    mordanted: str = ""
    ingredient: str = ""
    changes: tuple[Mapping[str, Any], ...] = ()


@dataclass(frozen=True)
class Noted:
    """A note in the dyer's words. `doubted` is the question that a figure in it raised: it is kept, not
    reckoned with.
    """

    kind: ClassVar[str] = "noted"
    text: str
    step: str = ""
    doubted: str = ""


@dataclass(frozen=True)
class Corrected:
    """An earlier entry was wrong: `changes` sets fields of it, or `strike` takes it out; and why."""

    kind: ClassVar[str] = "corrected"
    entry: int
    why: str
    strike: bool = False
    changes: tuple[Mapping[str, Any], ...] = ()


@dataclass(frozen=True)
class Acknowledged:
    """ "I have seen it": a prompt or alarm was answered."""

    kind: ClassVar[str] = "acknowledged"
    countdown: str


@dataclass(frozen=True)
class Stopped:
    """The day was ended early in good order."""

    kind: ClassVar[str] = "stopped"
    why: str


@dataclass(frozen=True)
class Aborted:
    """The day was broken off for safety; it needs clearing before it goes on."""

    kind: ClassVar[str] = "aborted"
    why: str


@dataclass(frozen=True)
class Cleared:
    """The trouble that broke the day off is over."""

    kind: ClassVar[str] = "cleared"


@dataclass(frozen=True)
class Closed:
    """The day is done. `entries` counts what stands above, so that a missing end shows."""

    kind: ClassVar[str] = "closed"
    verdict: str = ""
    entries: int | None = None


@dataclass(frozen=True)
class Cared:
    """Aftercare: dry shade, second wash, rub, wash or window test.

    `colour` is the fibre's own, dry. A test has two readings instead, `before` and `after`, of the fibre or of the
    white cloth, and the `grade` they give.
    """

    kind: ClassVar[str] = "cared"
    what: str
    lot: str = ""
    result: str = ""
    colour: str = ""
    before: str = ""
    after: str = ""
    grade: str = ""
