"""What every place shows round its own middle: title, what rings, the next act, the keys, what is typed.

Must not know sessions, estimates or files. Kept apart from the Stove's view so that the Bench is quickly up.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class NextAct:
    """What to do next, in full, when, and `short`: at most three words for the large letters."""

    act: str
    when: str = ""
    short: str = ""


@dataclass(frozen=True)
class KeyWord:
    """A key that applies now (as printed: `space`, `t`, `.`) and its word."""

    key: str
    word: str


@dataclass(frozen=True)
class Entry:
    """What is being typed, and what it was understood as, before it counts: `2.5 oz` `= 70.9 g`.

    While there is one, every letter is part of the text and none is an act; `typed` may still be empty.
    """

    wants: str
    typed: str
    echo: str = ""


@dataclass(frozen=True)
class Ringing:
    """What rings: which pot, what is wrong, what to do, how overdue.

    `short`, in at most three words, is for the large letters; without it they say the pot's letter.
    """

    letter: str
    what: str
    act: str
    over: str = ""
    short: str = ""
    more: str = ""  # "and 1 more", when several ring


@dataclass(frozen=True)
class Frame:
    """What stands round the middle of the Bench, of Working out and of My kitchen.

    `beside` stands behind the title; `note` is one line above the keys.
    """

    title: str
    beside: str = ""
    wall_clock: str = ""
    next_act: NextAct = NextAct("")
    keys: tuple[KeyWord, ...] = ()
    entry: Entry | None = None
    ringing: Ringing | None = None
    note: str = ""
