"""The lots of finished days, so that a colour read at home finds the day it belongs to. Pure."""

from collections.abc import Iterable
from dataclasses import dataclass

from dyesession.daybook.aftercare import ENDED
from dyesession.daybook.day_line import DayLine


@dataclass(frozen=True)
class DyedLot:
    """One lot of one finished day: what it weighed, dry, and what it was dyed with."""

    session: str
    day: str
    recipe: str
    lot: str
    fibre: str
    fibre_g: float
    dyestuffs: tuple[str, ...]

    @property
    def key(self) -> str:
        """The same as its shade's key, once its colour was read."""
        return f"{self.session}|{self.lot}"


def dyed_lots(lines: Iterable[DayLine]) -> tuple[DyedLot, ...]:
    """Every lot of the days that are over and dyed something, in the days' order."""
    return tuple(
        DyedLot(line.session, line.day, line.recipe, lot.name, lot.kind, lot.mass_g, line.dyed_with)
        for line in lines
        if line.dyed and line.status in ENDED and not line.rehearsal
        for lot in line.fibre
    )
