"""`dyesession aftercare`: what finished skeins still want, and noting it on a closed day. Calls; computes nothing."""

import argparse
import json
from typing import TYPE_CHECKING

from dyesession.errors import UserError

if TYPE_CHECKING:
    from pathlib import Path

    from dyesession.daybook.fastness import Tried
    from dyesession.session import events as e

Commands = argparse._SubParsersAction  # argparse gives this type no public name
DRY_SHADE = "dry shade"


class AftercareAsked(UserError):
    """An aftercare command that is short of something."""


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `aftercare`."""
    made = commands.add_parser(
        "aftercare",
        help="list what finished skeins still want; note a dry shade, a rub, wash or window test on a closed day",
        description="Without a log: what finished skeins still want. With a log and a test: note its two readings and"
        " their grade on that day. A test can be begun with --before alone and ended later with --after.",
        epilog="examples:\n  dyesession aftercare\n"
        '  dyesession aftercare 2026-03-14-madder-brick-red-on-wool-k7q2 "dry shade" --colour "lab(42 45 30)"\n'
        '  dyesession aftercare 2026-03-14-madder-brick-red-on-wool-k7q2 "rub test" --before "lab(95 0 2)"'
        ' --after "lab(90 6 4)"',
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=aftercare)
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )
    made.add_argument("log", metavar="LOG", nargs="?", help="a log's name or path")
    made.add_argument("what", metavar="WHAT", nargs="*", help="dry shade, rub test, wash test or window test")
    made.add_argument("--lot", metavar="NAME", default="", help="which lot (else all of the day)")
    made.add_argument("--colour", metavar="COLOUR", help="the fibre's dry colour")
    made.add_argument("--before", metavar="COLOUR", help="the white cloth, or the fibre, before the test")
    made.add_argument("--after", metavar="COLOUR", help="the same after it")
    made.add_argument("--says", metavar="TEXT", default="", help="what came of it, in your own words")
    made.add_argument("--json", action="store_true", help="print one JSON document")


def aftercare(options: argparse.Namespace) -> int:
    """List what is due, or note what was done."""
    if options.log is None:
        return _due(options)
    from dyesession.cli.logged_shades import workroom_of

    path = workroom_of(options).log(options.log)
    what = " ".join(options.what)
    if not what:
        raise AftercareAsked(
            f'Say what was done, for example dyesession aftercare {path.stem} "rub test" --before "lab(95 0 2)" '
            '--after "lab(90 6 4)".'
        )
    return _note_shade(options, path) if "shade" in what.casefold() else _note_test(options, path, what)


def _due(options: argparse.Namespace) -> int:
    from dataclasses import asdict
    from datetime import datetime

    from dyesession.cli.daybook import book_of
    from dyesession.cli.logged_shades import workroom_of
    from dyesession.daybook.aftercare import all_due

    due = all_due(book_of(workroom_of(options)).counted, datetime.now().date())
    if options.json:
        print(json.dumps({"due": [asdict(one) for one in due]}, ensure_ascii=False, indent=2, default=str))
        return 0
    for one in due:
        print(f"{one.what}, due since {one.since}: {one.do}\n    {one.session}")
    if not due:
        print("No finished skein wants anything.")
    return 0


def _note_shade(options: argparse.Namespace, path: "Path") -> int:
    from dyesession.cli.colour_reading import one
    from dyesession.colour.readings import check_dry
    from dyesession.colour.written import written
    from dyesession.session import events as e

    if options.colour is None and not options.says:
        raise AftercareAsked(
            'A dry shade wants a colour or words, for example --colour "#8b3a2b" or --says "brick, a little pale".'
        )
    colour = ""
    if options.colour is not None:
        reading = one(options.colour)
        check_dry(reading)
        colour = options.colour.strip().lower() if options.colour.strip().startswith("#") else written(reading)
    _keep(options, path, e.Cared(DRY_SHADE, options.lot, options.says, colour))
    return _say(options, f"Noted on {path.stem}: {DRY_SHADE}, {colour or options.says}.", None)


def _note_test(options: argparse.Namespace, path: "Path", what: str) -> int:
    from dataclasses import replace

    from dyesession.cli.colour_reading import one
    from dyesession.daybook.fastness import before_of, begun, test_named, tried
    from dyesession.session.opening import read_day
    from dyesession.storage import DISK

    test = test_named(what)
    before = one(options.before) if options.before else before_of(read_day(DISK, path).entries, test, options.lot)
    if before is None:
        raise AftercareAsked(
            f"A {test.what} wants {test.of} read before it and after it, for example --before "
            '"lab(95 0 2)" --after "lab(90 6 4)"; --before alone begins it.'
        )
    if options.after is None:
        _keep(options, path, replace(begun(test, before, options.lot), result=options.says or f"begun; {test.of} read"))
        return _say(options, f"Noted on {path.stem}: {test.what} begun. {test.do}", None)
    found = tried(test, before, one(options.after), options.lot)
    _keep(options, path, replace(found.entry, result=options.says))
    return _say(options, f"Noted on {path.stem}: {test.what}, {found.words}. {found.advice}", found)


def _keep(options: argparse.Namespace, path: "Path", entry: "e.Cared") -> None:
    from dyesession.cli.dyers_folder import DyersFolder
    from dyesession.cli.logged_shades import workroom_of
    from dyesession.storage import DISK

    DyersFolder(workroom_of(options), DISK).note_care(path, entry)


def _say(options: argparse.Namespace, sentence: str, found: "Tried | None") -> int:
    import textwrap

    if options.json:
        document: dict[str, object] = {"noted": sentence}
        if found is not None:
            document |= {"grade": found.grade.grade, "says": found.words, "advice": found.advice,
                         "before": found.entry.before, "after": found.entry.after}  # fmt: skip
        print(json.dumps(document, ensure_ascii=False, indent=2))
    else:
        print("\n".join(textwrap.wrap(sentence, 90)))
    return 0
