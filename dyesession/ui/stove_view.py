"""What the Stove shows, as plain words and numbers ready to draw: the one thing the drawing part is handed.

Must not know sessions, estimates or files; whoever fills it in has done all the reckoning and the rounding.
Every part is frozen, and two equal views look the same: the screen repaints only what differs.
"""

from dataclasses import dataclass, field
from typing import Literal

from dyesession.ui.frame_view import Entry, KeyWord, NextAct, Ringing

# Handed on: drawn alike in every place.
__all__ = ["Entry", "KeyWord", "NextAct", "Ringing", "StoveView"]  # fmt: skip

StageState = Literal["waiting", "ready", "running", "paused", "done", "skipped"]
PotState = Literal["waiting", "running", "paused", "due", "overdue"]
SavingState = Literal["saved", "saving", "NOT SAVED"]
Weight = Literal["plain", "strong", "quiet"]

# A state is a mark and a word as well as a colour.
STAGE_MARKS: dict[StageState, str] = {
    "waiting": "○", "ready": "▷", "running": "●", "paused": "‖", "done": "✓", "skipped": "×",
}  # fmt: skip
POT_MARKS: dict[PotState, str] = {
    "waiting": "○", "running": "●", "paused": "‖", "due": "▶", "overdue": "▲",
}  # fmt: skip
# A pot is filled to two thirds at most, so that it does not boil over (common practice, no source).
FILL_MARK = 2 / 3


@dataclass(frozen=True)
class Stage:
    """One step of a lane: its word and how far it is."""

    word: str
    state: StageState = "waiting"


@dataclass(frozen=True)
class Lane:
    """The steps of the fibre, or of the liquor, up to where they meet."""

    name: str
    stages: tuple[Stage, ...]


@dataclass(frozen=True)
class Lanes:
    """One lane (a recipe with one pot) or two, and what follows where they meet."""

    rows: tuple[Lane, ...] = ()
    together: tuple[Stage, ...] = ()


@dataclass(frozen=True)
class Clock:
    """A clock as read across the kitchen: `24` `min`, `8:12`, `3` `min over`, `overnight`."""

    text: str
    unit: str = ""


@dataclass(frozen=True)
class Pot:
    """One pot: how full (0 to 1 of its brim), what colour, what runs in it, and two lines of words.

    `liquor` is `#rrggbb` once a colour was read, None before. `loudness` orders pots of one state by what
    wants the dyer first, 0 first; it decides which pots keep a picture where there is no room for all.
    """

    letter: str
    name: str
    fill: float = 0.0
    mark: float = FILL_MARK
    liquor: str | None = None
    clock: Clock | None = None
    state: PotState = "waiting"
    on_heat: bool = False
    first: str = ""
    second: str = ""
    loudness: int = 0


@dataclass(frozen=True)
class Said:
    """A piece of a sentence, and how loudly it is said."""

    text: str
    weight: Weight = "plain"


@dataclass(frozen=True)
class Sentence:
    """One sentence of the bath's account, and the one word for where its figure comes from (`modelled`).

    With `how`, a comma, the word and a full stop are put behind the parts, in place of a full stop there.
    """

    parts: tuple[Said, ...]
    how: str = ""


@dataclass(frozen=True)
class Strength:
    """How strong the bath is, for the glance: `71 ± 13`, `g`, `of 120 g madder`, `modelled`."""

    number: str
    unit: str = ""
    of: str = ""
    how: str = ""


@dataclass(frozen=True)
class Account:
    """The bath's account: the figure in large, and sentences, the most wanted first; `today` is its strength over
    the day as one line of blocks, drawn where a row is left.
    """

    strength: Strength | None = None
    sentences: tuple[Sentence, ...] = ()
    today: str = ""


@dataclass(frozen=True)
class Saving:
    """Whether what was done is on the disk; `why` it is not and where it should be, in the log's own words."""

    state: SavingState = "saved"
    why: str = ""


@dataclass(frozen=True)
class Choice:
    """One answer to an Ask: the letter to press (lower case) and its word."""

    key: str
    word: str


@dataclass(frozen=True)
class OfferRow:
    """A row to choose while a text is typed: what it types, and what it says."""

    types: str
    says: str


@dataclass(frozen=True)
class Ask:
    """A question that a hazard hangs on. Space and Enter do not answer it; a number or a letter does."""

    question: str
    why: str = ""
    short: str = ""
    choices: tuple[Choice, ...] = ()
    wants: str = ""  # "°C in B": the number wanted, where it is a number
    typed: str = ""
    echo: str = ""
    not_now: str = "not now"


@dataclass(frozen=True)
class PotHolds:
    """What is in one pot, for the page that says where the dyer is."""

    letter: str
    name: str
    holds: tuple[str, ...] = ()


@dataclass(frozen=True)
class Happened:
    """One of the last entries, and when."""

    at: str
    what: str


@dataclass(frozen=True)
class WhereYouAre:
    """After the program was closed or the machine slept: what rings, what is amiss, what is where, what was done last.

    `last` goes forward in time; the oldest are left off where there is no room.
    """

    heading: str
    rings: tuple[str, ...] = ()
    amiss: tuple[str, ...] = ()  # what is wrong with the log, a sentence each
    pots: tuple[PotHolds, ...] = ()
    last: tuple[Happened, ...] = ()


@dataclass(frozen=True)
class CurvePoint:
    """A temperature at a time, in minutes from the start of the picture."""

    minute: float
    temperature_c: float


@dataclass(frozen=True)
class Curve:
    """A pot's temperature: what was wanted, what was read, and where now is."""

    title: str
    wanted: tuple[CurvePoint, ...] = ()
    read: tuple[CurvePoint, ...] = ()
    now_minute: float | None = None
    start: str = ""  # the wall clock at the left and the right edge
    end: str = ""


@dataclass(frozen=True)
class Bar:
    """What one extraction brought, or would bring: low, centre and high in grams of the dyestuff."""

    word: str
    low: float
    centre: float
    high: float
    shown: str  # "58 to 84"
    brought: bool = True  # False: not poured yet


@dataclass(frozen=True)
class Bars:
    """What each extraction brought, with its band."""

    title: str
    rows: tuple[Bar, ...] = ()
    liquor: str | None = None
    remark: str = ""


@dataclass(frozen=True)
class Shade:
    """A wanted colour and a snippet's, `#rrggbb`, to be shown touching, and the difference in words."""

    wanted: str
    wanted_word: str
    snippet: str
    snippet_word: str
    difference: str = ""


@dataclass(frozen=True)
class StoveView:
    """Everything the Stove draws at one moment."""

    title: str
    fibre: str = ""
    wall_clock: str = ""
    lanes: Lanes = Lanes()
    pots: tuple[Pot, ...] = ()
    account: Account = Account()
    care: tuple[str, ...] = ()
    care_whole: int = 0  # so many of its first lines are never cut while there is room for them
    next_act: NextAct = field(default=NextAct(""))
    keys: tuple[KeyWord, ...] = ()
    saving: Saving = Saving()
    ringing: Ringing | None = None
    ask: Ask | None = None
    entry: Entry | None = None
    offers: tuple[OfferRow, ...] = ()  # while a text is typed: rows to choose from, over the pots
    mark: str = ""  # which of them the mark stands on
    beside: tuple[str, ...] = ()  # what is said below them
    pad: tuple[str, ...] = ()  # words for touch; figures are always on the pad
    how: str = ""  # the recipe's own words for the step
    craft: str = ""  # one line for the hand, where the recipe says nothing
    where: WhereYouAre | None = None
    away: bool = False
    note: str = ""
    curve: Curve | None = None
    bars: Bars | None = None
    shade: Shade | None = None


def wants_pad(view: StoveView) -> bool:
    """Whether anything can be typed now: then there are figures to touch."""
    return view.entry is not None or (view.ask is not None and bool(view.ask.wants))


def by_loudness(pots: tuple[Pot, ...]) -> list[Pot]:
    """The pots, the one that wants the dyer first in front."""
    order: tuple[PotState, ...] = ("overdue", "due", "running", "paused", "waiting")
    return sorted(pots, key=lambda pot: (order.index(pot.state), pot.clock is None, pot.loudness))


_MINUTE_S, _HOUR_S = 60, 3600
# Above this a clock shows whole minutes, below it minutes and seconds.
_WHOLE_MINUTES_ABOVE_S = 10 * _MINUTE_S
# Longer waits are read in hours: three digits of minutes are hard to weigh at a glance.
_HOURS_ABOVE_S = 5 * _HOUR_S


def countdown_clock(left_s: float) -> Clock:
    """A countdown's clock: whole minutes above ten (rounded up), then m:ss; below nought, how far it is over.

    `left_s` in seconds, any sign.
    """
    if left_s < 0:
        return _over_clock(-left_s)
    whole_s = int(-(-left_s // 1))
    if whole_s > _HOURS_ABOVE_S:
        return Clock(str(-(-whole_s // _HOUR_S)), "hours")
    if whole_s > _WHOLE_MINUTES_ABOVE_S:
        return Clock(str(-(-whole_s // _MINUTE_S)), "min")
    return Clock(f"{whole_s // _MINUTE_S}:{whole_s % _MINUTE_S:02d}")


def _over_clock(over_s: float) -> Clock:
    minutes = int(over_s // _MINUTE_S)
    if minutes * _MINUTE_S > _HOURS_ABOVE_S:
        return Clock(str(minutes * _MINUTE_S // _HOUR_S), "hours over")
    return Clock(str(minutes), "min over") if minutes else Clock("DUE", "now")
