"""`dyesession daybook`: every day in the workroom's logs, found by what was dyed. Prints; computes nothing."""

import argparse
import json
import zlib
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from dyesession.cli.workroom import Workroom
    from dyesession.daybook.finding import DayBook

Commands = argparse._SubParsersAction  # argparse gives this type no public name

WIDTH = 100


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `daybook`."""
    made = commands.add_parser(
        "daybook",
        help="list the days dyed, or those that answer to a condition",
        description="List the days dyed, the newest first: what, with what, how it came out, what it left, which"
        " aftercare is due. Files that cannot be read are named with their reason.",
        epilog='examples:\n  dyesession daybook\n  dyesession daybook --where "dyestuff madder" --where "fibre silk"\n'
        '  dyesession daybook --where "near #8b3a2b within 6" --json\n\n'
        "conditions: dyestuff, with (anything that went in), fibre, recipe, verdict, notes, since, until, on,\n"
        "near COLOUR [within N], kept, due, repeats, rehearsal, demo",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=daybook)
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )
    made.add_argument(
        "--where", metavar="CONDITION", action="append", default=[], help='for example "dyestuff madder"'
    )
    made.add_argument(
        "--also", metavar="FOLDER", action="append", default=[], help="another folder of logs to look into"
    )
    made.add_argument("--json", action="store_true", help="print one JSON document")


def daybook(options: argparse.Namespace) -> int:
    """Print the days."""
    from datetime import datetime

    from dyesession.cli.workroom import find_workroom
    from dyesession.daybook.listed import day_book_as_json, day_book_lines, empty_lines
    from dyesession.daybook.where import condition, matching

    today = datetime.now().date()
    wanted = [condition(one, today) for one in options.where]
    workroom = find_workroom(getattr(options, "workroom", None))
    book = book_of(workroom, tuple(Path(one) for one in options.also))
    days = matching(book.days, wanted)
    aside = () if wanted else book.aside
    if options.json:
        print(json.dumps(day_book_as_json(days, aside, today), ensure_ascii=False, indent=2))
    else:
        lines = empty_lines(book, str(workroom.logs))
        lines += day_book_lines(days, aside, today, WIDTH) if book.days or book.aside else []
        print("\n".join(lines))
    return 0


def book_of(workroom: "Workroom", also: tuple[Path, ...] = ()) -> "DayBook":
    """The workroom's day book, by its index in the cache folder."""
    from dyesession.daybook.finding import day_book
    from dyesession.storage import DISK

    return day_book(DISK, (*workroom.log_folders, *also), index_of(workroom.logs))


def index_of(logs: Path) -> Path:
    """Where the index of a folder of logs is kept: one for each folder, in the user's cache folder."""
    import platformdirs

    name = f"day-book-{zlib.crc32(str(logs.resolve()).encode('utf-8', 'surrogateescape')):08x}.json"
    return Path(platformdirs.user_cache_dir("dyesession", appauthor=False)) / name
