"""`dyesession wrong LOG [WHAT]`: what went wrong, by what the log shows. Calls the day book; computes
nothing.
"""

import argparse
import json

Commands = argparse._SubParsersAction  # argparse gives this type no public name

WIDTH = 80


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `wrong`."""
    made = commands.add_parser(
        "wrong",
        help="say what may have gone wrong (streaks, felting, too pale ...) by what the log shows",
        description="Say what may have gone wrong on a day: the usual causes of a trouble, what the log shows"
        " of each, and the mend. Without a trouble, all that the log shows.",
        epilog="examples:\n  dyesession wrong 2026-03-14-madder-brick-red-on-wool-k7q2 streaks\n"
        "  dyesession wrong logs/2026-03-14-madder-brick-red-on-wool-k7q2.toml too pale --json",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=wrong)
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )
    made.add_argument("log", metavar="LOG", help="a log's name or path")
    made.add_argument(
        "what",
        metavar="WHAT",
        nargs="*",
        help="streaks, felting, stickiness, bleeding, too pale, too dull or wrong hue",
    )
    made.add_argument("--json", action="store_true", help="print one JSON document")


def wrong(options: argparse.Namespace) -> int:
    """Print the causes, what the log shows of each, and the mend."""
    from dyesession.cli.workroom import find_workroom
    from dyesession.daybook.troubles import (
        symptom_named,
        trouble_lines,
        troubles_as_json,
        what_went_wrong,
    )
    from dyesession.session.opening import read_day
    from dyesession.storage import DISK

    what = symptom_named(" ".join(options.what)) if options.what else None
    workroom = find_workroom(getattr(options, "workroom", None))
    found = what_went_wrong(read_day(DISK, workroom.log(options.log)), what)
    if options.json:
        print(json.dumps(troubles_as_json(found), ensure_ascii=False, indent=2))
    else:
        print("\n".join(trouble_lines(found, WIDTH)))
    return 0
