"""`dyesession compare LOG LOG`: two days side by side. Calls the day book; computes nothing."""

import argparse
import json

Commands = argparse._SubParsersAction  # argparse gives this type no public name

WIDTH = 100


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `compare`."""
    made = commands.add_parser(
        "compare",
        help="put two days side by side, what matters most for the colour first",
        description="Put two days side by side: how they came out, then what was other, what matters most for the"
        " colour first, then what was the same.",
        epilog="example:\n  dyesession compare 2026-03-14-madder-brick-red-on-wool-k7q2 2026-04-02-madder-m3xz",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=compare)
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )
    made.add_argument("one", metavar="LOG", help="a log's name or path")
    made.add_argument("other", metavar="LOG", help="another one")
    made.add_argument("--json", action="store_true", help="print one JSON document")


def compare(options: argparse.Namespace) -> int:
    """Print the comparison."""
    from dyesession.cli.workroom import find_workroom
    from dyesession.daybook.compared import comparison_as_json, comparison_lines
    from dyesession.daybook.comparing import compare as side_by_side
    from dyesession.session.opening import read_day
    from dyesession.storage import DISK

    workroom = find_workroom(getattr(options, "workroom", None))
    days = [read_day(DISK, workroom.log(one)) for one in (options.one, options.other)]
    found = side_by_side(*days)
    if options.json:
        print(json.dumps(comparison_as_json(found), ensure_ascii=False, indent=2))
    else:
        print("\n".join(comparison_lines(found, WIDTH)))
    return 0
