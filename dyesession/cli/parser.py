"""What may be typed: the commands, their options, their help with examples. Runs nothing.

argparse, because it costs nothing at start (measured: 24 ms for a whole run against 45 to 162 ms for the
alternatives looked at).
"""

import argparse
from collections.abc import Callable

from dyesession import __version__
from dyesession.cli.aftercare import add_command as add_aftercare
from dyesession.cli.bare import run_bench
from dyesession.cli.colour import add_commands as add_colour
from dyesession.cli.compare import add_command as add_compare
from dyesession.cli.completion import add_command as add_completion
from dyesession.cli.daybook import add_command as add_daybook
from dyesession.cli.label import add_command as add_label
from dyesession.cli.learn import add_command as add_learn
from dyesession.cli.repeat import add_command as add_repeat
from dyesession.cli.shade_card import add_command as add_shade_card
from dyesession.cli.shelf import add_command as add_shelf
from dyesession.cli.stock import add_command as add_stock
from dyesession.cli.tour import add_command as add_tour
from dyesession.cli.wrong import add_command as add_wrong
from dyesession.cli.yarn import add_command as add_yarn

Command = Callable[[argparse.Namespace], int]

EXAMPLES = """\
examples:
  dyesession tour
  dyesession
  dyesession begin madder-brick-red-on-wool --fibre "240 g wool"
  dyesession begin madder-brick-red-on-wool --fibre "165 g wool" --fibre "75 g wool" --plain
  dyesession work-out cochineal-crimson-on-wool --fibre "80 g wool" --kitchen kitchen.toml
  dyesession rehearse weld-yellow-on-wool --fibre "140 g wool" --into /somewhere/else
  dyesession resume
  dyesession check recipes/*.toml kitchen.toml logs/*.toml
  dyesession review 2026-03-14-madder-brick-red-on-wool-k7q2

exit codes: 0 fine; 1 something to put right, said in one sentence; 2 the command was not understood;
3 the log is in use by another process; 70 a fault of the program's own; 130 interrupted
"""


def parse(arguments: list[str]) -> tuple[Command, argparse.Namespace]:
    """The command to run and its options; argparse leaves with code 2 and one line when it cannot tell."""
    parser = whole_parser()
    options = parser.parse_args(arguments)
    return options.run, options


def whole_parser() -> argparse.ArgumentParser:
    """Every command with its options."""
    parser = argparse.ArgumentParser(
        prog="dyesession",
        description="Work out, run and record a day of natural dyeing. Without a command it opens the Bench: "
        "recipes, your kitchen, the day that is open. In line mode it takes that day up.",
        epilog=EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"dyesession {__version__}")
    _workroom(parser)
    parser.add_argument("--plain", action="store_true", help="line mode: prompts and printed lines, no screen")
    parser.set_defaults(run=run_bench, log=None)
    commands = parser.add_subparsers(metavar="COMMAND", title="commands")
    _begin(commands)
    _resume(commands)
    _work_out(commands)
    _rehearse(commands)
    _check(commands)
    _review(commands)
    _safety(commands)
    add_colour(commands)
    add_shade_card(commands)
    add_aftercare(commands)
    add_yarn(commands)
    add_wrong(commands)
    add_daybook(commands)
    add_shelf(commands)
    add_stock(commands)
    add_repeat(commands)
    add_compare(commands)
    add_label(commands)
    add_learn(commands)
    add_completion(commands)
    add_tour(commands)
    return parser


Commands = argparse._SubParsersAction  # argparse gives this type no public name


def _command(commands: "Commands[argparse.ArgumentParser]", name: str, says: str, run: Command, example: str) -> (
    argparse.ArgumentParser
):
    made = commands.add_parser(
        name,
        help=says,
        description=says[0].upper() + says[1:] + ".",
        epilog=f"example:\n  {example}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=run)
    _workroom(made)
    return made


def _workroom(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--workroom",
        metavar="FOLDER",
        default=argparse.SUPPRESS,
        help="the folder with your recipes, logs and kitchen.toml (else DYESESSION_WORKROOM, else this "
        "folder if it has recipes or logs, else your data folder)",
    )


def _planning(parser: argparse.ArgumentParser, *, recipe: bool = True) -> None:
    """A recipe (which may be left out where `recipe` is false), the fibre and the kitchen."""
    said = "a recipe's name, or the path of its file"
    parser.add_argument(
        "recipe", metavar="RECIPE", nargs=None if recipe else "?", help=said if recipe else f"{said} (else none)"
    )
    parser.add_argument(
        "--fibre",
        metavar="TEXT",
        action="append",
        required=True,
        help='a lot of washed, air-dry fibre, "240 g wool"; damp: "212 g damp, 148 g dry wool"; '
        "repeat for several lots",
    )
    parser.add_argument("--kitchen", metavar="FILE", help="a kitchen.toml (else the workroom's own)")
    parser.add_argument(
        "--washed",
        action="store_true",
        help="the fibre is washed and air-dry: the question is answered",
    )


def _begin(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "begin",
        "begin a dye day by a recipe, or without one",
        _run_begin,
        'dyesession begin madder-brick-red-on-wool --fibre "165 g wool" --fibre "75 g wool"',
    )
    _planning(made, recipe=False)
    made.add_argument("--plain", action="store_true", default=argparse.SUPPRESS, help="line mode")


def _resume(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands, "resume", "take up an open day where it stands", _open, "dyesession resume"
    )
    made.add_argument("log", metavar="LOG", nargs="?", help="a log's name or path (else the newest open one)")
    made.add_argument("--plain", action="store_true", default=argparse.SUPPRESS, help="line mode")


def _work_out(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "work-out",
        "work out doses, water, pots and the timetable",
        _run_work_out,
        'dyesession work-out weld-yellow-on-wool --fibre "140 g wool" --write weld.html',
    )
    _planning(made)
    made.add_argument("--json", action="store_true", help="print one JSON document")
    made.add_argument(
        "--write", metavar="FILE", help="write the weighing list, to be printed: a page (.html) or text (.txt)"
    )


def _rehearse(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "rehearse",
        "run a whole day on a stepping clock with modelled readings",
        _run_rehearse,
        'dyesession rehearse onion-skins-in-one-pot --fibre "100 g wool" --into rehearsals',
    )
    _planning(made)
    made.add_argument("--into", metavar="FOLDER", help="keep the rehearsal's log in this folder")
    made.add_argument("--json", action="store_true", help="print one JSON document")


def _check(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "check",
        "look through recipes, kitchens and logs for faults",
        _run_check,
        "dyesession check recipes/*.toml",
    )
    made.add_argument("files", metavar="FILE", nargs="+", help="a recipe, a kitchen or a log")


def _review(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "review",
        "show a day beside its plan",
        _run_review,
        "dyesession review logs/2026-03-14-madder-brick-red-on-wool-k7q2.toml --json",
    )
    made.add_argument("log", metavar="LOG", help="a log's name or path")
    made.add_argument("--json", action="store_true", help="print one JSON document")
    made.add_argument("--write", metavar="FILE", help="write one HTML page with pictures instead")


def _safety(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "safety",
        "show what is known of a substance, or what to keep apart and all substances",
        _run_safety,
        "dyesession safety copperas",
    )
    made.add_argument("substance", metavar="SUBSTANCE", nargs="*", help="any name or CAS number")
    made.add_argument("--json", action="store_true", help="print one JSON document")


# Each command's own module is loaded only when it runs.
def _open(options: argparse.Namespace) -> int:
    from dyesession.cli.days import open_day

    return open_day(options)


def _run_begin(options: argparse.Namespace) -> int:
    from dyesession.cli.days import begin

    return begin(options)


def _run_work_out(options: argparse.Namespace) -> int:
    from dyesession.cli.papers import work_out

    return work_out(options)


def _run_rehearse(options: argparse.Namespace) -> int:
    from dyesession.cli.papers import rehearse

    return rehearse(options)


def _run_check(options: argparse.Namespace) -> int:
    from dyesession.cli.papers import check

    return check(options)


def _run_review(options: argparse.Namespace) -> int:
    from dyesession.cli.papers import review

    return review(options)


def _run_safety(options: argparse.Namespace) -> int:
    from dyesession.cli.safety import safety

    return safety(options)
