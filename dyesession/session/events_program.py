"""What the program itself writes down: what it showed, a gap, a changed clock, a torn end, an alarm.

Part of `events`.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, ClassVar


@dataclass(frozen=True)
class Accounted:
    """The program's testimony: what the dyer was shown after entry `after`. The fold ignores it."""

    kind: ClassVar[str] = "account"
    after: int
    baths: tuple[Mapping[str, Any], ...] = ()
    dyestuffs: tuple[Mapping[str, Any], ...] = ()
    fibres: tuple[Mapping[str, Any], ...] = ()
    how: str = "modelled"


@dataclass(frozen=True)
class ResumedAfterGap:
    """The program was opened again, or the machine woke."""

    kind: ClassVar[str] = "resumed-after-gap"
    away_s: float
    by: str = ""


@dataclass(frozen=True)
class ClockChanged:
    """The wall clock moved against the clock that counts sleep."""

    kind: ClassVar[str] = "clock-changed"
    by_s: float


@dataclass(frozen=True)
class Recovered:
    """A torn end of the file was set aside."""

    kind: ClassVar[str] = "recovered"
    bytes_aside: int
    aside: str = ""


@dataclass(frozen=True)
class AlarmRaised:
    """A pot was left longer than it should be, and the program called."""

    kind: ClassVar[str] = "alarm-raised"
    countdown: str
    vessel: str = ""
    over_s: float = 0.0


@dataclass(frozen=True)
class Unknown:
    """An entry this program does not know; kept as it stands."""

    kind: ClassVar[str] = "unknown"
    name: str
    data: tuple[tuple[str, Any], ...] = ()
