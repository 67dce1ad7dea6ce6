"""Commands that print and leave: the plan, a rehearsal, a check, a review. Each as text or as one JSON document."""

import argparse
import json
import sys
import tomllib
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from dyesession.cli.planning import Planned, planned
from dyesession.cli.workroom import WorkroomError, find_workroom
from dyesession.storage import DISK

if TYPE_CHECKING:
    from dyesession.session.opening import LoggedDay


def _print(document: dict[str, Any]) -> None:
    print(json.dumps(document, ensure_ascii=False, indent=2))


WIDTH = 80


def work_out(options: argparse.Namespace) -> int:
    """Print what to weigh, the water and pots, the timetable, cautions."""
    from dyesession.daybook.learned_text import numbers_as_json
    from dyesession.daybook.own_numbers import used_for
    from dyesession.daybook.own_reasons import used_lines
    from dyesession.plan import plan_as_json, plan_lines

    day = planned(options, ask=not options.json)
    if options.write:
        print(f"The weighing list is in {_write_sheet(day, Path(options.write))}.", file=sys.stderr)
    if options.json:
        _print({**plan_as_json(day.plan), "own_numbers": numbers_as_json(used_for(day.plan, day.learned))})
    elif not options.write:
        own = used_lines(day.plan, day.learned, WIDTH)
        print("\n".join([*plan_lines(day.plan, day.kitchen.poison_centre), *own]))
    return 0


PAGE, TEXT = (".html", ".htm"), (".txt", ".text")


def _write_sheet(day: Planned, path: Path) -> Path:
    """Write the weighing list as a page or as text, by the ending of the file's name."""
    from dyesession.cli.dyers_folder import write_text
    from dyesession.plan.sheet import sheet_lines, sheet_of
    from dyesession.plan.sheet_html import sheet_html

    if path.suffix.lower() not in (*PAGE, *TEXT):
        raise WorkroomError(
            f"{path} ends in neither .html nor .txt, so it is not known how to write it; for example --write madder.html"
        )
    sheet = sheet_of(day.plan, day.kitchen, f"{datetime.now().astimezone():%Y-%m-%d}")
    page = path.suffix.lower() in PAGE
    write_text(DISK, path, sheet_html(sheet) if page else "\n".join(sheet_lines(sheet)) + "\n")
    return path


def rehearse(options: argparse.Namespace) -> int:
    """Run the whole day on a stepping clock and print what would happen."""
    from dyesession.daybook.own_numbers import own_kitchen
    from dyesession.rehearsal import rehearse as run
    from dyesession.rehearsal import rehearsed_as_json, rehearsed_lines

    day = planned(options, ask=False)
    into = Path(options.into) if options.into else None
    start = datetime.now().astimezone().replace(hour=9, minute=0, second=0, microsecond=0)
    kitchen = own_kitchen(day.kitchen, day.learned)
    rehearsed = run(day.recipe, day.lots, kitchen, into, storage=DISK, start=start)
    if options.json:
        _print(rehearsed_as_json(rehearsed))
    else:
        print("\n".join(rehearsed_lines(rehearsed)))
    return 0


def check(options: argparse.Namespace) -> int:
    """Print one sentence per fault; 1 when there was any."""
    faults = 0
    for name in options.files:
        path = Path(name)
        found = _checker(path)(path)
        for sentence in found:
            print(sentence)
        faults += len(found)
    if not faults:
        print(f"{len(options.files)} file{'s' if len(options.files) != 1 else ''} looked through, no fault found.")
    return 1 if faults else 0


def _checker(path: Path) -> Callable[[Path], list[str]]:
    """A log, a kitchen or a recipe, by what stands in it; what cannot be told is read as a recipe."""
    from dyesession.kitchen import check_kitchen
    from dyesession.recipe import check_recipe
    from dyesession.session.log import check_log

    kinds: dict[str, Callable[[Path], list[str]]] = {
        "log": check_log,
        "kitchen": check_kitchen,
        "recipe": check_recipe,
    }
    return kinds[_kind(path)]


LOG_MARK, RECIPE_MARK = b"\n[seal]", b"\n[[step]]"
KITCHEN_TABLES = ("scale", "pot", "jug", "burner", "jar", "household", "water", "alarm")
HEAD_BYTES = 262_144


def _kind(path: Path) -> str:
    try:
        with path.open("rb") as file:
            head = file.read(HEAD_BYTES)
    except OSError:
        return "recipe"
    if LOG_MARK in head or b"\nsession = " in head:
        return "log"
    if RECIPE_MARK in head:
        return "recipe"
    return "kitchen" if path.stem == "kitchen" or _has_kitchen_table(head) else "recipe"


def _has_kitchen_table(head: bytes) -> bool:
    try:
        tables = tomllib.loads(head.decode("utf-8"))
    except (ValueError, RecursionError):
        return False
    return any(name in tables for name in KITCHEN_TABLES)


def review(options: argparse.Namespace) -> int:
    """Print a day beside its plan."""
    from dyesession.daybook.review import review as look_back
    from dyesession.daybook.review import review_as_json, review_lines
    from dyesession.session.opening import read_day

    workroom = find_workroom(getattr(options, "workroom", None))
    day = read_day(DISK, workroom.log(options.log))
    if options.write:
        return _write_page(day, Path(options.write))
    seen = look_back(day)
    if options.json:
        _print(review_as_json(seen))
    else:
        print("\n".join(review_lines(seen, 80)))
    return 0


def _write_page(day: "LoggedDay", path: Path) -> int:
    from dyesession.cli.dyers_folder import write_text
    from dyesession.daybook.page import day_page

    write_text(DISK, path, day_page(day))
    print(f"Written to {path}.")
    return 0
