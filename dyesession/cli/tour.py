"""`dyesession tour`: a demo day in a borrowed folder that is thrown away; on the screen, or as a few printed lines.

Nothing of it is written into the workroom, and no log of it is kept.
"""

from __future__ import annotations

import argparse
import tempfile
import textwrap
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.clock import SteppingClock
from dyesession.storage import DISK

if TYPE_CHECKING:
    from collections.abc import Iterator

    from dyesession.storage import Storage

Commands = argparse._SubParsersAction  # argparse gives this type no public name

RECIPE, FIBRE = "madder-brick-red-on-wool", "240 g dry wool"
WIDTH, MARGIN = 80, " " * 17
FIRST_HOUR = 9


def add_command(commands: Commands[argparse.ArgumentParser]) -> None:
    """Register `tour`."""
    made = commands.add_parser(
        "tour",
        help="show a demo day on a fast clock; nothing of it is kept",
        description="Show a demo day on a clock that runs ahead, on the real screens and by itself: space goes on, "
        "p stands still, q leaves. Without a screen it prints a short walk. Nothing of it is kept.",
        epilog="example:\n  dyesession tour",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=tour)
    made.add_argument("--plain", action="store_true", default=argparse.SUPPRESS, help="line mode: a printed walk")


def tour(options: argparse.Namespace) -> int:
    """Show the tour, or print it where there is no screen."""
    from dyesession.cli.days import screen_will_do

    start = datetime.now().astimezone().replace(hour=FIRST_HOUR, minute=0, second=0, microsecond=0)
    with tempfile.TemporaryDirectory(prefix="dyesession-tour-") as folder:
        if getattr(options, "plain", False) or not screen_will_do():
            for line in printed_walk(Path(folder), DISK, start):
                print(line)
            return 0
        return _on_screen(Path(folder), start)


def _on_screen(folder: Path, start: datetime) -> int:
    from dyesession.cli.dyers_folder import DyersFolder
    from dyesession.cli.workroom import Workroom
    from dyesession.ui.tour import run_tour

    lay_out(folder, DISK)
    clock = SteppingClock(start)
    return run_tour(DyersFolder(Workroom(folder), DISK, clock), clock)


def lay_out(folder: Path, storage: Storage) -> None:
    """Put the invented kitchen into the borrowed folder."""
    from dyesession.cli.dyers_folder import write_text

    write_text(storage, folder / "kitchen.toml", _kitchen_file().read_text("utf-8"))


def _kitchen_file() -> Path:
    return Path(__file__).resolve().parents[1] / "kitchen" / "example.toml"


def printed_walk(folder: Path, storage: Storage, start: datetime) -> Iterator[str]:
    """The demo day as a short walk: each kind of act once, with what it is for."""
    from dyesession.account.live import reckoner_for
    from dyesession.cli.workroom import shipped_recipes
    from dyesession.kitchen import load_kitchen
    from dyesession.plan import lots_from_text, work_out
    from dyesession.recipe import find_recipe, load_recipe
    from dyesession.rehearsal.told import Teller
    from dyesession.rehearsal.under_way import DayUnderWay, Did, Passes
    from dyesession.session.opening import begin_day

    recipe, kitchen = load_recipe(find_recipe(RECIPE, (shipped_recipes(),))), load_kitchen(_kitchen_file())
    plan, clock = work_out(recipe, lots_from_text([FIBRE], "wool"), kitchen), SteppingClock(start)
    yield f"A walk through a day of {recipe.name} on {FIBRE}."
    yield "It is rehearsed on a stepping clock, and nothing of it is kept."
    yield from _wrapped("To weigh", "; ".join(f"{one.ingredient} {one.mass_g.aim:.4g} g" for one in plan.doses))
    session = begin_day(storage, folder, recipe, plan, kitchen, clock, reckoner_for, rehearsal=True)
    try:
        run, teller = DayUnderWay(session, kitchen), Teller()
        for move in run.moves():
            if isinstance(move, Passes):
                clock.advance(move.seconds)
                continue
            told = teller.tell(move, session.snapshot.state)
            if told.what_for:
                yield from _wrapped(f"{clock.now().at:%a %H:%M}", told.what)
                yield from textwrap.wrap(told.what_for, WIDTH, initial_indent=MARGIN, subsequent_indent=MARGIN)
            if isinstance(move, Did) and move.fact.kind == "strained":
                yield from _wrapped("", run.shown[-1].text)
    finally:
        session.close()
    yield "A day of your own: dyesession begin; in a terminal with a screen, dyesession."


def _wrapped(head: str, text: str) -> list[str]:
    return textwrap.wrap(f"{head:<11}{text}", WIDTH, subsequent_indent=" " * 11)
