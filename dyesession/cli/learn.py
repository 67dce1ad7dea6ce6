"""`dyesession learn`, and what days have taught handed to whoever begins or works out a day. Computes nothing."""

import argparse
import json
from collections.abc import Iterable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from dyesession.cli.workroom import Workroom
    from dyesession.daybook.day_line import DayLine
    from dyesession.daybook.dyers_numbers import Learnt
    from dyesession.daybook.own_book import NewlyTaught, OwnNumbers

Commands = argparse._SubParsersAction  # argparse gives this type no public name

WIDTH = 100
MOST_READ = 24  # days read before a day is begun, those with its dyestuffs first; our own choice, no source


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `learn`."""
    made = commands.add_parser(
        "learn",
        help="show what your days have taught: your own numbers, each with its days",
        description="Show the numbers that your days have taught: how much a fibre takes of a dyestuff, what a dyestuff"
        " keeps, what wet fibre holds, how your pots cool and your stove heats, jars beside each other, how depth follows"
        " dose. Each takes the place of the usual guess from the next day on. Then what is not known yet, and what reading"
        " would teach it. Folded from the logs; nothing is stored.",
        epilog="examples:\n  dyesession learn\n  dyesession learn --json",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=learn)
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )
    made.add_argument("--json", action="store_true", help="print one JSON document")


def learn(options: argparse.Namespace) -> int:
    """Print the dyer's own numbers."""
    from dyesession.cli.workroom import find_workroom
    from dyesession.daybook.learned_text import learned_as_json, learned_lines

    found = own_numbers(find_workroom(getattr(options, "workroom", None)))
    if options.json:
        print(json.dumps(learned_as_json(found.learned, found.demo, found.lacking), ensure_ascii=False, indent=2))
    else:
        print("\n".join(learned_lines(found.learned, WIDTH, found.demo, found.lacking)))
    return 0


def own_numbers(workroom: "Workroom") -> "OwnNumbers":
    """What all the days that count taught, and what they did not."""
    from dyesession.cli.daybook import book_of
    from dyesession.daybook.own_book import OwnNumbers
    from dyesession.daybook.untaught import untaught

    book = book_of(workroom)
    found = _from_days(workroom, book.counted)
    return OwnNumbers(found, untaught(found, book.counted), bool(book.counted) and book.is_demo)


def newly_taught(workroom: "Workroom") -> "NewlyTaught | None":
    """What the dyer's newest day that is over added to the numbers; None where it added nothing."""
    from dyesession.cli.daybook import book_of
    from dyesession.daybook.learned_text import moved
    from dyesession.daybook.own_book import NewlyTaught, newest_over

    day = newest_over(book_of(workroom).counted)
    if day is None:
        return None
    before = learnt_for(workroom, day.dyestuffs, without=day.session)
    numbers = moved(before, learnt_for(workroom, day.dyestuffs))
    numbers = tuple(one for one in numbers if day.session in one.days)
    new = tuple(one for one in numbers if before.number(one.about.what, one.about.of, one.about.on) is None)
    return NewlyTaught(day.session, day.recipe, day.closed, numbers, new) if numbers else None


def learnt_for(workroom: "Workroom", substances: Iterable[str] = (), without: str = "") -> "Learnt":
    """What the dyer's own days taught, for a day with these dyestuffs. Demo days teach a dyer nothing."""
    from dyesession.cli.daybook import book_of
    from dyesession.daybook.seen import key_of

    own = [one for one in book_of(workroom).counted if not one.demo and one.session != without]
    wanted = {key_of(one) for one in substances}
    with_it = [one for one in own if wanted & {key_of(dyestuff) for dyestuff in one.dyestuffs}]
    others = [one for one in own if one not in with_it]
    return _from_days(workroom, (*with_it, *others)[:MOST_READ])


def _from_days(workroom: "Workroom", lines: "Iterable[DayLine]") -> "Learnt":
    from dyesession.cli.daybook import index_of
    from dyesession.daybook.learned_index import learnt_of
    from dyesession.storage import DISK

    beside = index_of(workroom.logs)
    index = beside.with_name(beside.name.replace("day-book", "own-numbers"))
    return learnt_of(DISK, [workroom.log(one.file) for one in lines], index)
