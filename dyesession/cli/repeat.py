"""`dyesession repeat LOG`: a new recipe of what was done on a day. Calls the day book; computes nothing."""

import argparse
import json
import textwrap
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.errors import UserError

if TYPE_CHECKING:
    from dyesession.daybook.repeating import Repeated
    from dyesession.daybook.towards import Towards

Commands = argparse._SubParsersAction  # argparse gives this type no public name

WIDTH = 80


class FileThere(UserError):
    """A file that would be written over."""


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `repeat`."""
    made = commands.add_parser(
        "repeat",
        help="make a recipe of what was done on a day, for other fibre",
        description="Make a recipe of what was done on a day, not of what had been planned: doses as weighed, heat as"
        " it was, corrections carried out; rescaled to other fibre, with what is other this time called out.",
        epilog='examples:\n  dyesession repeat 2026-03-14-madder-brick-red-on-wool-k7q2 --fibre "90 g silk"\n'
        '  dyesession repeat LOG --fibre "90 g wool" --depth 0.5 --write recipes/paler-brick.toml',
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=repeat)
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )
    made.add_argument("log", metavar="LOG", help="a log's name or path")
    made.add_argument(
        "--fibre", metavar="TEXT", action="append", default=[], help='"90 g silk"; else the fibre of the day'
    )
    made.add_argument("--kitchen", metavar="FILE", help="a kitchen.toml (else the workroom's own)")
    made.add_argument(
        "--depth", metavar="SHARE", type=float, default=1.0, help="of the day's depth, 0.5 for half of it"
    )
    made.add_argument(
        "--target", metavar="COLOUR", help='work the depth out so that the shade comes nearest, "#a5564a" for example'
    )
    made.add_argument("--undyed", metavar="COLOUR", default="", help="the fibre's own colour, where the day has none")
    made.add_argument("--write", metavar="FILE", help="write the recipe to this new file")
    made.add_argument("--json", action="store_true", help="print one JSON document")


def repeat(options: argparse.Namespace) -> int:
    """Print what is other this time and the weighing list; write the recipe, or print it."""
    from dyesession.cli.learn import learnt_for
    from dyesession.cli.workroom import find_workroom
    from dyesession.daybook.repeating import repeat as again
    from dyesession.daybook.towards import towards
    from dyesession.daybook.walk import walk
    from dyesession.plan import lots_from_text
    from dyesession.session.opening import read_day
    from dyesession.storage import DISK

    workroom = find_workroom(getattr(options, "workroom", None))
    day = read_day(DISK, workroom.log(options.log))
    kind = day.plan.lots[0].kind if day.plan.lots else "wool"
    lots = lots_from_text(options.fibre, kind) if options.fibre else ()
    aim = towards(day.name, tuple(walk(day)), options.target, options.undyed) if options.target else None
    depth = aim.depth if aim is not None else options.depth
    learned = learnt_for(workroom, [one.substance for one in day.plan.doses if one.role == "dyestuff"])
    found = again(day, lots, workroom.kitchen(options.kitchen), depth=depth, learned=learned)
    if options.write:
        _write(Path(options.write), found)
    if options.json:
        print(json.dumps(_as_json(found, aim), ensure_ascii=False, indent=2))
    else:
        print("\n".join(_lines(found, options.write, aim)))
    return 0


def _write(path: Path, found: "Repeated") -> None:
    """Write a new file; nothing is ever written over."""
    from dyesession.cli.dyers_folder import write_text
    from dyesession.storage import DISK
    from dyesession.tomlfile import write_document

    if path.exists():
        raise FileThere(f"{path} is there already; expected a new name, for example {path.stem}-2{path.suffix}")
    write_text(DISK, path, write_document(found.document))


def _as_json(found: "Repeated", aim: "Towards | None") -> dict[str, object]:
    from dataclasses import asdict

    from dyesession.plan import plan_as_json

    return {
        "recipe": found.document,
        "lineage": list(found.lineage),
        "changes": [asdict(one) for one in found.changes],
        "expected_depth": asdict(found.expected) if found.expected is not None else None,
        "towards": asdict(aim) if aim is not None else None,
        "plan": plan_as_json(found.plan),
    }


def _lines(found: "Repeated", written: str | None, aim: "Towards | None") -> list[str]:
    from dyesession.tomlfile import write_document

    lines = [f"{found.document['name']}, repeated from {found.lineage[0]}"]
    if found.lineage[1:]:
        lines += _wrapped(f"which goes back to {', '.join(found.lineage[1:])}", "  ")
    if aim is not None:
        near = f"{aim.apart:.1f} apart (CIEDE2000) at the nearest, ± {aim.plus_minus:.1f}"
        lines += _wrapped(f"towards the target: {aim.depth:.2f} of the depth of the {aim.lot}, {near}", "  ")
    lines += _wrapped(found.expect, "  ")
    if found.changes:
        lines += ["", "Other this time"]
    for one in found.changes:
        effect = f": {one.effect}" if one.effect else ""
        lines += _wrapped(f"{one.text}{effect}.", "  ")
    lines += ["", "Weigh"] if found.plan.doses else []
    for dose in found.plan.doses:
        lines += _wrapped(f"{dose.ingredient}: {dose.weigh.say}", "  ")
    if written:
        return [*lines, "", f"Written to {written}."]
    return [*lines, "", *write_document(found.document).splitlines()]


def _wrapped(text: str, indent: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent=indent, subsequent_indent=f"{indent}  ", break_on_hyphens=False
    )
