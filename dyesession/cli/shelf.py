"""`dyesession shelf`: the kept baths and the mordanted fibre, folded from the logs. Prints; computes nothing."""

import argparse
import json
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from dyesession.cli.workroom import Workroom
    from dyesession.daybook.finding import DayBook
    from dyesession.session.opening import LoggedDay

Commands = argparse._SubParsersAction  # argparse gives this type no public name

WIDTH = 100


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `shelf`."""
    made = commands.add_parser(
        "shelf",
        help="show the kept baths, what they would still do, and the mordanted fibre that waits",
        description="Show every kept bath: what is in it and how sure that is, what it would still do, when to look"
        " at it again; mordant baths with what recharges them; mordanted fibre that waits. Folded from the logs.",
        epilog="examples:\n  dyesession shelf\n  dyesession shelf --json",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=shelf)
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )
    made.add_argument("--json", action="store_true", help="print one JSON document")


def shelf(options: argparse.Namespace) -> int:
    """Print the shelf."""
    from datetime import datetime

    from dyesession.cli.daybook import book_of
    from dyesession.cli.workroom import find_workroom
    from dyesession.shelf import shelf_as_json, shelf_lines, shelf_of

    workroom = find_workroom(getattr(options, "workroom", None))
    days = days_for_the_shelf(workroom, book_of(workroom))
    found = shelf_of(days, datetime.now().date(), workroom.kitchen(None).household)
    if options.json:
        print(json.dumps(shelf_as_json(found), ensure_ascii=False, indent=2))
    else:
        print("\n".join(shelf_lines(found, WIDTH)))
    return 0


def days_for_the_shelf(workroom: "Workroom", book: "DayBook") -> "list[LoggedDay]":
    """The days that count and have to do with the shelf: what they kept, drew, or left mordanted."""
    from dyesession.session.quick_day import read_facts_of_day
    from dyesession.storage import DISK

    wanted = [
        one
        for one in book.counted
        if one.kept or one.drawn or one.waiting or any(lot.mordanted for lot in one.fibre)
    ]
    return [read_facts_of_day(DISK, workroom.log(one.file)) for one in wanted]
