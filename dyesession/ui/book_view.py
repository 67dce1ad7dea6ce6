"""What the Day book shows, as plain words ready to draw. Must not know logs, sessions or files."""

from dataclasses import dataclass

from dyesession.ui.bench_view import Swatch
from dyesession.ui.frame_view import Frame

OWN = "own"  # the key of the line that leads to what the days have taught


@dataclass(frozen=True)
class BookDay:
    """A day in one line. `mark`: demo, rehearsal, or how it stands; `due`: pieces of aftercare that are due.

    `tells` explain it where it is marked, one sentence each.
    """

    key: str
    date: str
    recipe: str
    fibre: str = ""
    mark: str = ""
    due: int = 0
    swatches: tuple[Swatch, ...] = ()
    tells: tuple[str, ...] = ()


@dataclass(frozen=True)
class LeftAside:
    """A file that is no day of the book, and why."""

    key: str
    file: str
    reason: str


@dataclass(frozen=True)
class BookView:
    """Everything the Day book draws at one moment.

    `of` counts all days, `find` is what was looked for, `greeting` stands where there is no day at all; `own` says
    in short what the days have taught, "" where that is not shown.
    """

    frame: Frame
    cursor: str = ""
    days: tuple[BookDay, ...] = ()
    aside: tuple[LeftAside, ...] = ()
    of: int = 0
    find: str = ""
    greeting: tuple[str, ...] = ()
    looking: bool = False
    own: str = ""
