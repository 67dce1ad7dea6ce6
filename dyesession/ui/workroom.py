"""What the places before the Stove ask of the folder where recipes, logs and the kitchen lie.

Only the asking: whoever starts the app hands in the one who answers. Nothing here reads or writes, and what is
asked for is named without being loaded, so that the Bench is quickly up.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any, Protocol

if TYPE_CHECKING:
    from collections.abc import Mapping

    from dyesession.account import Account
    from dyesession.clock import Instant
    from dyesession.colour.patches import Box
    from dyesession.colour.photo_file import Coarse
    from dyesession.colour.photo_frame import FrameReadings
    from dyesession.colour.readings import Reading
    from dyesession.daybook.dyed_lots import DyedLot
    from dyesession.daybook.dyers_numbers import Learnt
    from dyesession.daybook.finding import DayBook
    from dyesession.daybook.own_book import NewlyTaught, OwnNumbers
    from dyesession.daybook.shade_card import Shade
    from dyesession.kitchen.model import Kitchen
    from dyesession.plan.model import FibreLot, Plan
    from dyesession.plan.stock import JarNow
    from dyesession.recipe.model import Recipe
    from dyesession.session.events import Cared
    from dyesession.session.opening import LoggedDay
    from dyesession.session.session import Session
    from dyesession.shelf import KeptBath, Shelf, ShelfAct


class Workroom(Protocol):
    """A dyer's folder. Every method but the cheap three may raise a `UserError` of one sentence."""

    @property
    def folder(self) -> Path:
        """Where it is."""
        ...

    def now(self) -> Instant:
        """What time it is."""
        ...

    def recipe_files(self) -> tuple[Path, ...]:
        """Every recipe on offer, by file; nothing is read."""
        ...

    def is_own(self, recipe: Path) -> bool:
        """Whether a recipe lies in this folder, and did not come with the program."""
        ...

    def log_files(self) -> tuple[Path, ...]:
        """Every log, the newest first; nothing is read."""
        ...

    def recipe(self, path: Path) -> Recipe:
        """A recipe, read."""
        ...

    def remarks(self, path: Path) -> dict[str, str]:
        """What is written behind a recipe's figures, such as where they come from; by `alum.dose`."""
        ...

    def day(self, path: Path) -> LoggedDay:
        """A log, read for looking at."""
        ...

    def kitchen(self) -> Kitchen:
        """The kitchen, or an empty one where none was written down."""
        ...

    def jars_now(self) -> tuple[JarNow, ...]:
        """The kitchen's jars less what the dyer's own days used since they were weighed."""
        ...

    def keep_kitchen(self, kitchen: Kitchen) -> str:
        """Write the kitchen down; answers with one sentence saying where."""
        ...

    def keep_paper(self, name: str, text: str) -> Path:
        """Write a sheet of paper down under a file's name; answers with where."""
        ...

    def shades(self) -> tuple[Shade, ...]:
        """Every colour in the logs."""
        ...

    def dyed_lots(self) -> tuple[DyedLot, ...]:
        """The lots of finished days, the newest first."""
        ...

    def readings(self, text: str) -> tuple[Reading, ...]:
        """The colours a text stands for: typed, a colorimeter's line, or a file of them in this folder."""
        ...

    def photo(self, name: str, across: int, down: int) -> Coarse:
        """A photo made small to be pointed at, by its path or its name in this folder."""
        ...

    def photo_readings(self, name: str, boxes: Mapping[str, Box], reflects: float, light: str) -> FrameReadings:
        """The colours of a photo's patches."""
        ...

    def keep_recipe(self, document: Mapping[str, Any]) -> Path:
        """Write a recipe down among the dyer's own, under a file's name of its own; answers with where."""
        ...

    def day_book(self) -> DayBook:
        """Every day there is a log of, and what could not be read."""
        ...

    def learnt(self, dyestuffs: tuple[str, ...] = ()) -> Learnt:
        """What the dyer's own days taught, for a day with these dyestuffs; demo days teach a dyer nothing."""
        ...

    def own_numbers(self) -> OwnNumbers:
        """All that days taught, and what they did not."""
        ...

    def newly_taught(self) -> NewlyTaught | None:
        """What the dyer's newest day taught; None where there is no day, or it taught nothing."""
        ...

    def log_of(self, session: str) -> Path:
        """The log of a day by its session's name."""
        ...

    def note_care(self, path: Path, entry: Cared) -> None:
        """Note a piece of aftercare on a day, closed or not."""
        ...

    def shelf(self) -> Shelf:
        """The bath shelf as it stands."""
        ...

    def keep_shelf_act(self, act: ShelfAct) -> Path:
        """Write what was done to a kept bath into a log of its own; answers with where."""
        ...

    def correct_at_shelf(self, bath: KeptBath, log: Path, volume_l: float, why: str) -> str:
        """Put right the litres of an entry that kept a bath or drew from it; answers with what was done."""
        ...

    def begin_freely(self, lots: tuple[FibreLot, ...]) -> Session[Account]:
        """A new day without a recipe, its log on disk."""
        ...

    def begin(self, recipe: Recipe, plan: Plan, kitchen: Kitchen) -> Session[Account]:
        """A new day, its log on disk."""
        ...

    def resume(self, path: Path) -> Session[Account]:
        """An open day taken up where it stands."""
        ...
