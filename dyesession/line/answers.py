"""What a typed line comes to: a fact to record, a guess to confirm, lines to print, or an order to the
program.

Plain frozen data; knows nothing of how it came about.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from dyesession.line.phrase import Phrase
from dyesession.session import events as e

OrderWhat = Literal["quit", "wait", "save", "rescue", "close"]


@dataclass(frozen=True)
class Deed:
    """A fact to record; `echo` says back what was understood, before it counts."""

    event: e.Event
    echo: str = ""


@dataclass(frozen=True)
class Guess:
    """A fact that a bare figure may mean: it counts when an empty line follows."""

    event: e.Event
    shown: str


@dataclass(frozen=True)
class Tell:
    """Lines to print; nothing happens."""

    lines: tuple[str, ...]


@dataclass(frozen=True)
class Order:
    """Something the program does itself: quit, wait (`text` says how long), save again, rescue, close the
    day.
    """

    what: OrderWhat
    text: str = ""


Answer = Deed | Guess | Tell | Order


@dataclass(frozen=True)
class Verb:
    """One act at the prompt: its words (the first is its name), its letter on the screen, an example, what it
    does.

    `why`: a reason may follow. `timed`: "10 min ago" may follow.
    """

    words: tuple[str, ...]
    letter: str
    example: str
    explained: str
    carry_out: Callable[[Phrase], Answer]
    why: bool = False
    timed: bool = True
