"""What Colour shows, as plain words and hex values ready to draw. Must not know readings, logs or theories."""

from dataclasses import dataclass

from dyesession.ui.frame_view import Frame


@dataclass(frozen=True)
class ShadeLine:
    """A colour: what it is called, its `#rrggbb`, its figures, and what else is said of it.

    `hex` is "" for a line without a colour. `exact` is False where a screen can only come near it.
    """

    key: str
    name: str
    hex: str = ""
    figures: str = ""
    says: str = ""
    exact: bool = True


@dataclass(frozen=True)
class DoLine:
    """Something that can be done or read: a few words, and behind them a quiet word more."""

    key: str
    does: str
    says: str = ""


@dataclass(frozen=True)
class ColourView:
    """Everything Colour draws at one moment.

    `words` is the verdict in the trade's words, `numbers` the same in figures, `notes` what to know about both.
    `listing` names a list that stands for the whole page (the logs' colours, overdyes), with `listed` on it.
    """

    frame: Frame
    cursor: str = ""
    target: tuple[ShadeLine, ...] = ()
    aim: ShadeLine | None = None
    target_do: tuple[DoLine, ...] = ()
    sample: tuple[ShadeLine, ...] = ()
    sample_do: tuple[DoLine, ...] = ()
    words: str = ""
    numbers: str = ""
    notes: tuple[str, ...] = ()
    series: tuple[ShadeLine, ...] = ()
    series_says: str = ""
    mend: tuple[DoLine, ...] = ()
    near: tuple[ShadeLine, ...] = ()
    past_do: tuple[DoLine, ...] = ()
    tests: tuple[DoLine, ...] = ()
    listing: str = ""
    listed: tuple[ShadeLine, ...] = ()
    listed_do: tuple[DoLine, ...] = ()
    working: bool = False
