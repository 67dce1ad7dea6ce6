"""The dyer's own numbers as a page shows them, and what the newest day added to them. Frozen data; reads nothing."""

from dataclasses import dataclass
from datetime import date, timedelta

from dyesession.daybook.day_line import DayLine
from dyesession.daybook.dyers_numbers import Learnt, Number
from dyesession.daybook.untaught import Untaught

NEWS = timedelta(days=7)  # so long the Bench offers what a day taught; our own choice, no source


@dataclass(frozen=True)
class OwnNumbers:
    """What days taught and what they did not. `demo`: only demo days stand there, and they teach a dyer nothing."""

    learned: Learnt
    lacking: tuple[Untaught, ...] = ()
    demo: bool = False

    @property
    def in_short(self) -> str:
        """How many numbers rest on how many days, in a few words."""
        days = {day for one in self.learned.numbers for day in one.days}
        if not days:
            return "none learned yet: what reading would teach one"
        from_days = f"from {len(days)} {'demo ' if self.demo else ''}day{'' if len(days) == 1 else 's'}"
        count = len(self.learned.numbers)
        return f"{count} learned {from_days}, beside the usual guesses"


@dataclass(frozen=True)
class NewlyTaught:
    """What the newest day that is over taught: the numbers that rest on it too, and those that are new with it."""

    session: str
    recipe: str
    closed: str
    numbers: tuple[Number, ...]
    new: tuple[Number, ...]

    def is_news(self, today: date) -> bool:
        """Whether it is still worth a line."""
        return date.fromisoformat(self.closed[:10]) + NEWS >= today

    @property
    def in_short(self) -> str:
        """What it taught, in a few words."""
        surer = len(self.numbers) - len(self.new)
        said = [f"{len(self.new)} learned" if self.new else "", f"{surer} surer" if surer else ""]
        return " and ".join(one for one in said if one)


def newest_over(days: tuple[DayLine, ...]) -> DayLine | None:
    """The dyer's own day that was closed last; None where there is none."""
    over = [one for one in days if one.closed and not one.demo and not one.rehearsal]
    return max(over, key=lambda one: one.closed, default=None)
