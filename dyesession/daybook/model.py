"""What a review holds, as frozen data. Masses in grams, volumes in litres, minutes from the opening of the
day.

Wall times carry their offset. What nobody wrote down is None, never a guess.
"""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from dyesession.daybook.curves import Curve
from dyesession.plan.model import Band


@dataclass(frozen=True)
class Stretch:
    """One side of a step, planned or actual: from, to, minutes held at heat, highest temperature."""

    start_min: float | None = None
    end_min: float | None = None
    held_min: float | None = None
    temperature_c: float | None = None
    start: datetime | None = None
    end: datetime | None = None
    temperature_how: str = ""


@dataclass(frozen=True)
class StepReview:
    """A step, planned beside actual. `planned` is None for a step that came in at the stove."""

    name: str
    stage: str
    lane: str
    vessel: str | None
    status: str
    why: str
    early: str
    planned: Stretch | None
    actual: Stretch


@dataclass(frozen=True)
class DoseReview:
    """A dose, planned beside what was weighed and what went in. `how` is weighed, planned or both."""

    ingredient: str
    substance: str
    role: str
    planned_g: Band | None
    weigh_say: str
    weighed_g: float | None
    added_g: float | None
    how: str

    @property
    def off_percent(self) -> float | None:
        """How far what went in was from the aim, in per cent; None where one of the two is not known."""
        if self.planned_g is None or not self.planned_g.aim or self.added_g is None:
            return None
        return 100.0 * (self.added_g - self.planned_g.aim) / self.planned_g.aim


@dataclass(frozen=True)
class BathLine:
    """One bath after one entry: litres, and (where `lot` is named) grams of it with the 90 % band."""

    after: int
    at: datetime
    volume_l: float | None
    lot: str = ""
    mass_g: float | None = None
    low_g: float | None = None
    high_g: float | None = None


@dataclass(frozen=True)
class BathReview:
    """A bath through the day: what the dyer was shown, and what the same entries give now."""

    vessel: str
    kept: bool
    shown_then: tuple[BathLine, ...]
    reckoned_now: tuple[BathLine, ...]


@dataclass(frozen=True)
class Told:
    """A reminder as it was shown."""

    at: datetime
    step: str
    text: str


@dataclass(frozen=True)
class Asked:
    """A question and its answer; "not now" where it was put off."""

    n: int
    at: datetime
    question: str
    vessel: str
    answer: str
    temperature_c: float | None = None


@dataclass(frozen=True)
class Rang:
    """An alarm: which pot, how overdue when it was raised, and when it was acknowledged."""

    n: int
    at: datetime
    step: str
    vessel: str
    over_s: float
    acknowledged: datetime | None


@dataclass(frozen=True)
class CorrectionReview:
    """A correction: which entry, what stood there, what stands now (None: struck), why, and whether it
    counts.
    """

    n: int
    at: datetime
    entry: int
    entry_kind: str
    was: dict[str, Any]
    now: dict[str, Any] | None
    why: str
    counts: bool


@dataclass(frozen=True)
class Noted:
    """A note, or a piece of aftercare, and when."""

    at: datetime
    text: str


@dataclass(frozen=True)
class KeptReview:
    """A bath put by: its label, litres where known, and the dyestuffs its liquor is of."""

    label: str
    volume_l: float | None
    liquor_of: tuple[str, ...]


@dataclass(frozen=True)
class FlagReview:
    """An entry that no longer fits what came before it, or whose seal does not hold."""

    n: int
    text: str


@dataclass(frozen=True)
class Review:
    """A whole day looked back on.

    `otherwise` is what went otherwise than planned, `shades` the colours read of fibre, `starts_from` the dyer's
    own numbers its estimates started from, each with its days; `cost` what went in came to by the prices in the
    kitchen of that day, "" where it had none.
    """

    session: str
    recipe: str
    status: str
    opened: datetime
    closed: datetime | None
    rehearsal: bool
    program: str
    verdict: str
    steps: tuple[StepReview, ...]
    doses: tuple[DoseReview, ...]
    baths: tuple[BathReview, ...]
    reminders: tuple[Told, ...]
    asks: tuple[Asked, ...]
    alarms: tuple[Rang, ...]
    corrections: tuple[CorrectionReview, ...]
    flags: tuple[FlagReview, ...]
    notes: tuple[Noted, ...]
    aftercare: tuple[Noted, ...]
    kept_baths: tuple[KeptReview, ...]
    readings: tuple[Noted, ...]
    file_notes: tuple[str, ...]
    otherwise: tuple[str, ...] = ()
    curves: tuple[Curve, ...] = ()
    shades: tuple[str, ...] = ()
    starts_from: tuple[str, ...] = ()
    cost: str = ""
