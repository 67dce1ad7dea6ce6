"""The workroom as the screens ask for it: reads and writes the folder's files, opens days. Computes nothing.

Implements `ui.workroom.Workroom`. What is heavy is loaded when it is asked for: the Bench must be up at once.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from dyesession.cli.workroom import Workroom, WorkroomError
from dyesession.clock import SystemClock

if TYPE_CHECKING:
    from collections.abc import Mapping

    from dyesession.account import Account
    from dyesession.care import Reminder
    from dyesession.clock import Clock, Instant
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
    from dyesession.session.from_shelf import FromShelf
    from dyesession.session.opening import LoggedDay
    from dyesession.session.session import Session
    from dyesession.shelf import KeptBath, Shelf, ShelfAct
    from dyesession.storage import Storage

KITCHEN_FILE = "kitchen.toml"
PAPERS, RECIPES = "papers", "recipes"
MOST_OF_A_NAME = 99  # files of one name; our own choice, no source


class DyersFolder:
    """A dyer's folder on a disk."""

    def __init__(self, workroom: Workroom, storage: Storage, clock: Clock | None = None) -> None:
        self._workroom, self._storage = workroom, storage
        self._clock = clock or SystemClock()

    @property
    def folder(self) -> Path:
        """Where it is."""
        return self._workroom.folder

    def now(self) -> Instant:
        """What time it is."""
        return self._clock.now()

    def recipe_files(self) -> tuple[Path, ...]:
        """Every recipe on offer, by file; nothing is read."""
        return self._workroom.recipes()

    def is_own(self, recipe: Path) -> bool:
        """Whether a recipe lies in this folder, and is not one that came with the program, word for word."""
        import filecmp

        from dyesession.cli.workroom import shipped_recipes

        shipped = shipped_recipes() / recipe.name
        try:
            return recipe != shipped and not (shipped.is_file() and filecmp.cmp(recipe, shipped, shallow=False))
        except OSError:
            return True

    def log_files(self) -> tuple[Path, ...]:
        """Every log, the newest first; nothing is read."""
        return self._workroom.all_logs()

    def recipe(self, path: Path) -> Recipe:
        """A recipe, read. Raises its own errors."""
        from dyesession.recipe import load_recipe

        return load_recipe(path, self._storage)

    def remarks(self, path: Path) -> dict[str, str]:
        """What is written behind a recipe's figures, by `alum.dose`; nothing where the file cannot be read."""
        from dyesession.errors import UserError
        from dyesession.recipe.remarks import remarks
        from dyesession.tomlfile import read_toml

        try:
            return remarks(read_toml(path, self._storage))
        except UserError:
            return {}

    def day(self, path: Path) -> LoggedDay:
        """A log, read for looking at. Raises its own errors."""
        from dyesession.session.opening import read_day

        return read_day(self._storage, path)

    def kitchen(self) -> Kitchen:
        """The kitchen, or an empty one where none was written down."""
        return self._workroom.kitchen(None)

    def jars_now(self) -> tuple[JarNow, ...]:
        """The kitchen's jars as they stand. Raises what the kitchen and the logs' folder raise."""
        from dyesession.cli.stock import jars_of

        return jars_of(self._workroom, self.kitchen())

    def keep_kitchen(self, kitchen: Kitchen) -> str:
        """Write the kitchen down. What was there in the dyer's own hand is kept beside it, once for each hand."""
        from dyesession.kitchen import write_kitchen
        from dyesession.kitchen.answers import weighed_today

        path = self.folder / KITCHEN_FILE
        if any(one.mass_left_g is not None for one in kitchen.jars):
            kitchen = weighed_today(kitchen, self._kitchen_before(), self.now().at.date().isoformat())
        kept = self._keep_handwritten(path)
        self._write(path, write_kitchen(kitchen))
        return f"Written to {path}." + (f" Your own file is kept as {kept.name}." if kept is not None else "")

    def _kitchen_before(self) -> Kitchen:
        from dyesession.errors import UserError
        from dyesession.kitchen import Kitchen

        try:
            return self.kitchen()
        except UserError:
            return Kitchen()  # a file that cannot be read is kept aside, and its jars have no day

    def _keep_handwritten(self, path: Path) -> Path | None:
        """A kitchen with remarks in it would lose them: it is copied first."""
        from dyesession.storage import read_file
        from dyesession.tomlfile.limits import HAND_WRITTEN

        if not path.exists():
            return None
        text = read_file(self._storage, path, HAND_WRITTEN.file_bytes).decode("utf-8", "replace")
        if "#" not in text:
            return None
        aside = path.with_name(f"kitchen-by-hand-{self.now().at:%Y-%m-%d-%H%M%S}.toml")
        self._write(aside, text)
        return aside

    def keep_paper(self, name: str, text: str) -> Path:
        """Write a sheet of paper down in the folder's own `papers`; answers with where."""
        path = self.folder / PAPERS / name
        self._write(path, text)
        return path

    def _write(self, path: Path, text: str) -> None:
        write_text(self._storage, path, text)

    def keep_recipe(self, document: Mapping[str, Any]) -> Path:
        """Write a recipe down in the folder's own `recipes`; nothing is ever written over. Answers with where."""
        from dyesession.session.log_create import SLUG_LENGTH, plain_words
        from dyesession.tomlfile import write_document

        stem = plain_words(str(document["name"]))[:SLUG_LENGTH].strip("-") or "recipe"
        names = (stem, *(f"{stem}-{number}" for number in range(2, MOST_OF_A_NAME)))
        folder = self.folder / RECIPES
        path = next((folder / f"{one}.toml" for one in names if not (folder / f"{one}.toml").exists()), None)
        if path is None:
            raise WorkroomError(f"{folder} holds {MOST_OF_A_NAME} recipes called {stem}; expected another name")
        self._write(path, write_document(dict(document)))
        return path

    def day_book(self) -> DayBook:
        """Every day there is a log of, by the index in the cache folder. Raises what the logs' folder raises."""
        from dyesession.cli.daybook import book_of

        return book_of(self._workroom)

    def learnt(self, dyestuffs: tuple[str, ...] = ()) -> Learnt:
        """What the dyer's own days taught, for a day with these dyestuffs. Raises what the day book raises."""
        from dyesession.cli.learn import learnt_for

        return learnt_for(self._workroom, dyestuffs)

    def own_numbers(self) -> OwnNumbers:
        """All that days taught and what they did not. Raises what the day book raises."""
        from dyesession.cli.learn import own_numbers

        return own_numbers(self._workroom)

    def newly_taught(self) -> NewlyTaught | None:
        """What the dyer's newest day taught. Raises what the day book raises."""
        from dyesession.cli.learn import newly_taught

        return newly_taught(self._workroom)

    def begin(self, recipe: Recipe, plan: Plan, kitchen: Kitchen) -> Session[Account]:
        """A new day, its log on disk. Raises what the log raises."""
        from dyesession.account.live import reckoner_from
        from dyesession.daybook.own_numbers import start_of
        from dyesession.session.opening import begin_day

        own = start_of(plan, self.learnt(tuple(one.substance for one in plan.doses if one.role == "dyestuff")))
        return begin_day(
            self._storage, self._workroom.logs, recipe, plan, kitchen, self._clock, reckoner_from(own.starting),
            shelf=self._for_the_day(), priors=own.tables,
        )  # fmt: skip

    def begin_freely(self, lots: tuple[FibreLot, ...]) -> Session[Account]:
        """A new day without a recipe, its log on disk. Raises what the log raises."""
        from dyesession.account.live import reckoner_from
        from dyesession.daybook.own_numbers import start_freely
        from dyesession.session.opening import begin_improvised

        own = start_freely(self.learnt())
        return begin_improvised(
            self._storage, self._workroom.logs, lots, self.kitchen(), self._clock, reckoner_from(own.starting),
            shelf=self._for_the_day(), priors=own.tables,
        )  # fmt: skip

    def resume(self, path: Path) -> Session[Account]:
        """An open day taken up where it stands. Raises what the log raises."""
        from dyesession.account.live import reckoner_from
        from dyesession.account.logged import starting_of
        from dyesession.cli.workroom import check_own
        from dyesession.session.opening import resume_day

        check_own(path)
        kitchen = self.kitchen()
        reckoner = reckoner_from(starting_of(self.day(path).header))
        return resume_day(
            self._storage, path, self._clock, kitchen.household, reckoner, kitchen.poison_centre,
            self._for_the_day(path.stem),
        )  # fmt: skip

    def _for_the_day(self, session: str = "") -> FromShelf:
        from dyesession.cli.at_shelf import for_the_day

        return for_the_day(self._workroom, self.now().at.date(), session)

    def shelf(self) -> Shelf:
        """The bath shelf as it stands. Raises what the logs' folder raises."""
        from dyesession.cli.at_shelf import shelf_now

        return shelf_now(self._workroom, self.now().at.date())

    def keep_shelf_act(self, act: ShelfAct) -> Path:
        """Write what was done to a kept bath into a log of its own; answers with where."""
        from dyesession.cli.at_shelf import write

        return write(self._workroom, self._storage, act, self._clock)

    def draw_from_shelf(
        self, log: Path, bath: KeptBath, vessel: str, volume_l: float | None
    ) -> tuple[Reminder, ...]:
        """Pour a kept bath into a pot of an open day that no screen has open; answers with what to bear in mind."""
        from dyesession.cli.at_shelf import draw_into

        return draw_into(self._workroom, self._storage, log, bath, vessel, volume_l, self._clock)[1]

    def correct_at_shelf(self, bath: KeptBath, log: Path, volume_l: float, why: str) -> str:
        """Put right the litres of an entry that kept a bath or drew from it; answers with what was done."""
        from dyesession.cli.at_shelf import correct

        return correct(self._workroom, self._storage, bath, log, volume_l, why, self._clock)

    def shades(self) -> tuple[Shade, ...]:
        """Every colour in the logs of days that count. Raises what the day book raises."""
        from dyesession.cli.logged_shades import shades_in

        return shades_in(self._workroom)

    def dyed_lots(self) -> tuple[DyedLot, ...]:
        """The lots of finished days, the newest first. Raises what the day book raises."""
        from dyesession.cli.daybook import book_of
        from dyesession.daybook.dyed_lots import dyed_lots

        return dyed_lots(book_of(self._workroom).counted)

    def readings(self, text: str) -> tuple[Reading, ...]:
        """The colours a text stands for; a file's name is looked for in this folder too. Raises `UserError`."""
        from dyesession.cli.colour_reading import readings

        here = self.folder / text.strip()
        return readings(str(here) if text.strip().lower().endswith(".csv") and here.is_file() else text.strip())

    def photo(self, name: str, across: int, down: int) -> Coarse:
        """A photo made small to be pointed at. Raises `PhotoTrouble`."""
        from dyesession.colour.photo_file import coarse

        return coarse(self._photo(name), across, down)

    def photo_readings(self, name: str, boxes: Mapping[str, Box], reflects: float, light: str) -> FrameReadings:
        """The colours of a photo's patches. Raises `PhotoTrouble`."""
        from dyesession.colour.photo_frame import read_frame

        return read_frame(self._photo(name), boxes, reflects, light)

    def _photo(self, name: str) -> Path:
        """A photo by its path, or by its name in this folder."""
        path = Path(name).expanduser()
        return self.folder / path if (self.folder / path).is_file() else path

    def log_of(self, session: str) -> Path:
        """The log of a day by its session's name. Raises `WorkroomError`."""
        return self._workroom.log(session)

    def note_care(self, path: Path, entry: Cared) -> None:
        """Note a piece of aftercare on a day, closed or not. Raises what the log and the day raise."""
        lots = [one.name for one in self.day(path).plan.lots]
        if entry.lot and entry.lot not in lots:
            raise WorkroomError(
                f"{path.stem} has no lot “{entry.lot}”; expected one of {', '.join(lots)}, for example {lots[0]}."
            )
        session = self.resume(path)
        try:
            session.do(entry).result()
            unsaved = session.snapshot.unsaved
        finally:
            session.close()
        if unsaved:
            raise WorkroomError(f"{path} could not be written; expected a folder that can be written to")


def write_text(storage: Storage, path: Path, text: str) -> None:
    """Put a text in a file, all or nothing, its folder made where it is missing; one sentence when it cannot be."""
    from dyesession.storage import because, make_folder, replace_file

    try:
        make_folder(storage, path.parent)
        replace_file(storage, path, text.encode("utf-8"))
    except OSError as error:
        raise WorkroomError(
            f"{path} could not be written ({because(error)}); expected a folder that can be written to, for example "
            "--workroom with one of your own"
        ) from error
