"""`dyesession label`: tags for skeins and labels for kept baths, to print. Calls; computes nothing."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.errors import UserError

if TYPE_CHECKING:
    from dyesession.care import Label
    from dyesession.cli.workroom import Workroom
    from dyesession.daybook.skein_tags import Tag
    from dyesession.shelf import KeptBath

Commands = argparse._SubParsersAction  # argparse gives this type no public name

WIDTH = 52


class NothingToLabel(UserError):
    """Neither a kept bath nor a day of that name."""


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `label`."""
    made = commands.add_parser(
        "label",
        help="print the label of a kept bath, or the tags of a day's skeins",
        description="Print the label of a kept bath, or a day's tags and labels; with no name, the labels of all"
        " baths on the shelf. --write makes one page to print and cut out: .html, .svg or .txt.",
        epilog='examples:\n  dyesession label "madder bath 3"\n'
        "  dyesession label 2026-03-14-madder-brick-red-on-wool-k7q2 --write tags.html",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=label)
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )
    made.add_argument("name", metavar="NAME", nargs="*", help="a kept bath's label, or a log's name or path")
    made.add_argument("--write", metavar="FILE", help="write one page instead: .html, .svg or .txt")


def label(options: argparse.Namespace) -> int:
    """Print tags and labels, or write them as one page."""
    from dyesession.cli.workroom import find_workroom

    workroom = find_workroom(getattr(options, "workroom", None))
    tags, labels = _wanted(workroom, " ".join(options.name))
    if options.write:
        from dyesession.cli.dyers_folder import write_text
        from dyesession.storage import DISK

        path = Path(options.write)
        write_text(DISK, path, _page(path, tags, labels))
        print(f"Written to {options.write}.")
        return 0
    print(_text(tags, labels))
    return 0


def _text(tags: "tuple[Tag, ...]", labels: "list[Label]") -> str:
    from dyesession.care import label_lines
    from dyesession.daybook.skein_tags import tag_lines

    frames = [*(tag_lines(one, WIDTH) for one in tags), *(label_lines(one, WIDTH) for one in labels)]
    return "\n\n".join("\n".join(one) for one in frames)


def _page(path: Path, tags: "tuple[Tag, ...]", labels: "list[Label]") -> str:
    from dyesession.daybook.paper import paper_page
    from dyesession.daybook.paper_svg import paper_svg

    ending = path.suffix.casefold()
    if ending == ".txt":
        return _text(tags, labels) + "\n"
    if ending == ".svg":
        return paper_svg(tags, labels)
    if ending in (".html", ".htm"):
        return paper_page(tags, labels)
    raise NothingToLabel(f"{path} has no ending a page is made for; expected .html, .svg or .txt, for example tags.html")


def _wanted(workroom: "Workroom", name: str) -> "tuple[tuple[Tag, ...], list[Label]]":
    baths = _baths(workroom)
    if not name:
        if not baths:
            raise NothingToLabel("Nothing stands on the shelf; for a day's tags name its log, as “daybook” shows it")
        return (), [_label(workroom, one) for one in baths]
    named = [one for one in baths if one.label.casefold() == name.casefold()]
    if named:
        return (), [_label(workroom, one) for one in named]
    return _of_day(workroom, name, baths)


def _of_day(
    workroom: "Workroom", name: str, baths: "tuple[KeptBath, ...]"
) -> "tuple[tuple[Tag, ...], list[Label]]":
    from dyesession.cli.workroom import WorkroomError
    from dyesession.daybook.day_line import day_line
    from dyesession.daybook.skein_tags import tags_of
    from dyesession.session.quick_day import read_facts_of_day
    from dyesession.storage import DISK

    try:
        path = workroom.log(name)
    except WorkroomError as trouble:
        standing = ", ".join(f"“{one.label}”" for one in baths) or "none"
        raise NothingToLabel(f"No bath on the shelf is called “{name}” (there: {standing}). {trouble}") from None
    line = day_line(read_facts_of_day(DISK, path), path.name)
    mine = [_label(workroom, one) for one in baths if one.session == line.session]
    return tags_of(line), mine


def _baths(workroom: "Workroom") -> "tuple[KeptBath, ...]":
    from datetime import datetime

    from dyesession.cli.at_shelf import shelf_now

    return shelf_now(workroom, datetime.now().date()).baths


def _label(workroom: "Workroom", bath: "KeptBath") -> "Label":
    from dyesession.care import label_of
    from dyesession.shelf import stored_of

    kitchen = workroom.kitchen(None)
    return label_of(stored_of(bath, kitchen.poison_centre, kitchen.household))
