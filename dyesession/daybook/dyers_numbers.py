"""The dyer's own numbers as they are handed about: each with the guess it replaces, its band and its days. Frozen
data; knows nothing of how they are learned.
"""

from dataclasses import dataclass

from dyesession.daybook.seen import About, What
from dyesession.dyeing.priors import Prior


@dataclass(frozen=True)
class Number:
    """One number of the dyer's own. `own` is the number with its ±, `next_day` what a further day will show.

    `days` are the sessions it comes from, the oldest first, `odd` those of them that hardly counted. `at`: what a
    further day will show were the second number that the readings hang on known, at places of that; rising.
    """

    about: About
    guess: Prior
    own: Prior
    next_day: Prior
    days: tuple[str, ...]
    odd: tuple[str, ...] = ()
    at: tuple[tuple[float, Prior], ...] = ()


@dataclass(frozen=True)
class Learnt:
    """All numbers of the dyer's own; none for a dyer who has read nothing yet."""

    numbers: tuple[Number, ...] = ()

    def number(self, what: What, of: str = "", on: str = "") -> Number | None:
        """The number about that, None where no day told of it."""
        wanted = About(what, of, on)
        return next((one for one in self.numbers if one.about == wanted), None)
