"""The workroom: the folder with a dyer's recipes, logs and kitchen, and how it is found.

An option, then DYESESSION_WORKROOM, then this folder if it has `recipes/` or `logs/`, then the user's data
folder. The recipes that come with the program are offered in every workroom; its demo season is shown until
there is a day of one's own.
"""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.errors import UserError

if TYPE_CHECKING:
    from dyesession.kitchen.model import Kitchen

VARIABLE = "DYESESSION_WORKROOM"
DEMO = "demo-"  # how the name of a demo day begins


class WorkroomError(UserError):
    """Nothing in the workroom answers to what was asked for."""


@dataclass(frozen=True)
class Workroom:
    """A folder and where things stand in it."""

    folder: Path

    @property
    def logs(self) -> Path:
        """Where session logs go."""
        return self.folder / "logs"

    @property
    def recipe_folders(self) -> tuple[Path, ...]:
        """Where recipes are looked for: the workroom's own first, then those that come with the program."""
        return tuple(one for one in (self.folder / "recipes", shipped_recipes()) if one.is_dir())

    def recipes(self) -> tuple[Path, ...]:
        """Every recipe on offer; the workroom's own hide shipped ones of the same file name."""
        found: dict[str, Path] = {}
        for folder in reversed(self.recipe_folders):
            found.update({one.name: one for one in sorted(folder.glob("*.toml"))})
        return tuple(found[name] for name in sorted(found))

    def kitchen(self, named: str | None) -> Kitchen:
        """The kitchen named, or the workroom's own, or an empty one."""
        from dyesession.kitchen import Kitchen, load_kitchen

        if named:
            return load_kitchen(Path(named))
        own = self.folder / "kitchen.toml"
        return load_kitchen(own) if own.exists() else Kitchen()

    def log(self, named: str) -> Path:
        """A log by path or by name; the nearest names are given when there is none."""
        for folder in self.log_folders:
            for path in (Path(named), folder / named, folder / f"{named}.toml"):
                if path.is_file():
                    return path
        import difflib

        names = [one.stem for one in self.all_logs()]
        near = difflib.get_close_matches(named, names, 3, 0.3)
        newest = f"; expected the name of one, for example {names[0]}." if names else ", and it has none yet."
        hint = f"did you mean {' or '.join(near)}?" if near else f"logs are kept in {self.logs}{newest}"
        raise WorkroomError(f'There is no log "{named}": {hint}')

    @property
    def log_folders(self) -> tuple[Path, ...]:
        """Where logs are looked for: the workroom's own, or the demo season until there is a log of one's own."""
        if any(self.logs.glob("*.toml")) or not shipped_logs().is_dir():
            return (self.logs,)
        return (self.logs, shipped_logs())

    def all_logs(self) -> tuple[Path, ...]:
        """Every log, newest first by name (a name begins with its date, a demo day's with `demo-`)."""
        found = (one for folder in self.log_folders if folder.is_dir() for one in folder.glob("*.toml"))
        return tuple(sorted(found, key=lambda one: one.name.removeprefix(DEMO), reverse=True))


def shipped_recipes() -> Path:
    """The recipes that come with the program: inside the package, or beside it in a checkout."""
    package = Path(__file__).resolve().parents[1]
    inside = package / "shipped_recipes"
    return inside if inside.is_dir() else package.parent / "recipes"


def shipped_logs() -> Path:
    """The demo season that comes with the program: inside the package, or beside it in a checkout."""
    package = Path(__file__).resolve().parents[1]
    inside = package / "shipped_logs"
    return inside if inside.is_dir() else package.parent / "logs"


def check_own(log: Path) -> None:
    """Raise WorkroomError for a demo day that came with the program: nothing is written into it."""
    if log.name.startswith(DEMO) and log.resolve().parent == shipped_logs():
        raise WorkroomError(
            f"{log.stem} is a demo day that came with the program, and nothing is written into it; expected a log"
            " of your own, for example after dyesession begin"
        )


def find_workroom(named: str | None) -> Workroom:
    """The workroom by the rule above."""
    if named:
        return Workroom(Path(named).expanduser())
    if told := os.environ.get(VARIABLE):
        return Workroom(Path(told).expanduser())
    here = Path.cwd()
    if (here / "recipes").is_dir() or (here / "logs").is_dir():
        return Workroom(here)
    import platformdirs

    return Workroom(Path(platformdirs.user_data_dir("dyesession", appauthor=False)))
