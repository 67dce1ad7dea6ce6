"""What Working out shows, as plain words and numbers ready to draw. Must not know plans, files or substances."""

from dataclasses import dataclass

from dyesession.ui.frame_view import Frame


@dataclass(frozen=True)
class Answer:
    """One answer to a question, to be chosen."""

    key: str
    says: str


@dataclass(frozen=True)
class LotLine:
    """A lot of fibre: its name, what is known of it, and the question it leaves open with its answers."""

    key: str
    name: str
    says: str
    asks: str = ""
    answers: tuple[Answer, ...] = ()


@dataclass(frozen=True)
class ChoiceLine:
    """Something that was chosen and can be chosen otherwise."""

    key: str
    word: str
    says: str
    hint: str = ""


@dataclass(frozen=True)
class DoseLine:
    """A dose: grams, ±, share of the fibre, and how it is measured where no scale does it at once."""

    key: str
    name: str
    figure: str
    plus_minus: str = ""
    share: str = ""
    how: str = ""


@dataclass(frozen=True)
class BathLine:
    """A bath: litres, ratio, the pot; `short`: the pot does not take it; and a sentence where one is wanted."""

    key: str
    step: str
    figure: str
    ratio: str = ""
    where: str = ""
    short: bool = False
    says: str = ""


@dataclass(frozen=True)
class StepBar:
    """A step's place in the day, minutes from its start; on the ring from `lit_min` to `off_min`.

    `decides`: a delay here delays the end. `when` is its time of day.
    """

    key: str
    name: str
    lane: str
    start_min: float
    end_min: float
    decides: bool = False
    lit_min: float | None = None
    off_min: float | None = None
    when: str = ""


@dataclass(frozen=True)
class DayBars:
    """The day drawn, and one sentence about it."""

    says: str = ""
    bars: tuple[StepBar, ...] = ()


@dataclass(frozen=True)
class SaidLine:
    """A sentence that can be marked: a warning, a reminder, an item of the shopping list, what boils when."""

    key: str
    says: str
    at: str = ""
    grave: bool = False


@dataclass(frozen=True)
class Reason:
    """One reason behind a figure, and where it comes from."""

    says: str
    source: str = ""


@dataclass(frozen=True)
class WhyView:
    """Where the marked figure comes from."""

    figure: str
    reasons: tuple[Reason, ...] = ()


@dataclass(frozen=True)
class WorkingView:
    """Everything Working out draws at one moment. `trouble`: why nothing can be worked out yet.

    `own` says on how many of the dyer's own numbers the day rests.
    """

    frame: Frame
    cursor: str = ""
    lots: tuple[LotLine, ...] = ()
    choices: tuple[ChoiceLine, ...] = ()
    trouble: str = ""
    questions: tuple[LotLine, ...] = ()
    doses: tuple[DoseLine, ...] = ()
    baths: tuple[BathLine, ...] = ()
    day: DayBars = DayBars()
    mind: tuple[SaidLine, ...] = ()
    care: tuple[SaidLine, ...] = ()
    jars: tuple[SaidLine, ...] = ()
    ahead: SaidLine | None = None
    paper: SaidLine | None = None
    own: SaidLine | None = None
    why: WhyView | None = None
