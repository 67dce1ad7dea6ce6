"""`dyesession shelf`: the kept baths and the mordanted fibre, and what is done to them. Prints; computes nothing."""

import argparse
import json
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

from dyesession.errors import UserError

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from dyesession.care import Reminder
    from dyesession.cli.workroom import Workroom
    from dyesession.shelf import Shelf, ShelfAct

Commands = argparse._SubParsersAction  # argparse gives this type no public name

WIDTH = 100


class ShelfAsked(UserError):
    """A command about the shelf that is short of something."""


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `shelf` and what can be done there."""
    made = commands.add_parser(
        "shelf",
        help="show the kept baths and the mordanted fibre that waits; draw, pool, top up, correct or throw away a bath",
        description="Show every kept bath: what is in it and how sure that is, what it would still do, when to look"
        " at it again; mordant baths with what recharges them; mordanted fibre that waits. Folded from the logs."
        " What is done to a bath is written into a log: a draw into the day's own, a correction into the log it puts"
        " right, all else into a new one.",
        epilog='examples:\n  dyesession shelf\n  dyesession shelf --json\n  dyesession shelf draw "madder bath 3" --into'
        ' "dye pot" --litres 2\n  dyesession shelf pool "madder bath 4" --into "madder bath 3"\n  dyesession shelf top-up'
        ' "alum bath 2" --add "10 g alum"\n  dyesession shelf correct "madder bath 3" --litres 4\n  dyesession shelf'
        ' discard "madder bath 3"',
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=shelf)
    _common(made)
    acts = made.add_subparsers(metavar="ACT", title="acts")
    draw = _act(acts, "draw", "pour a kept bath, or some of it, into a pot of an open day", _draw)
    draw.add_argument("--into", metavar="POT", required=True, help="the pot, by letter or name")
    draw.add_argument("--litres", metavar="AMOUNT", help='how much, "2 l" (else all of it)')
    draw.add_argument("--log", metavar="LOG", help="the day (else the newest open one)")
    pool = _act(acts, "pool", "pour one kept bath into another", _pool)
    pool.add_argument("--into", metavar="LABEL", required=True, help="the bath that it is poured into")
    pool.add_argument("--litres", metavar="AMOUNT", help='how much, "2 l" (else all of it)')
    pool.add_argument("--label", metavar="TEXT", default="", help="what the two are called from now on")
    up = _act(acts, "top-up", "put water, or what recharges it, into a kept bath", _top_up)
    up.add_argument("--water", metavar="AMOUNT", help='how much water, "1.5 l"')
    up.add_argument("--add", metavar="TEXT", action="append", default=[], help='for example "10 g alum"')
    correct = _act(acts, "correct", "say what a kept bath is seen to be, or put an entry right", _correct)
    correct.add_argument("--litres", metavar="AMOUNT", help='the litres as they stand, "4 l"')
    correct.add_argument("--ph", metavar="PH", type=float, help="its pH as it was read now")
    correct.add_argument("--stands", metavar="PLACE", help='where it stands, "in the cellar", "in the cold box"')
    correct.add_argument("--label", metavar="TEXT", default="", help="what it is called from now on")
    correct.add_argument(
        "--of", metavar="LOG", help="the entry of that day was wrong: --litres is what it should have said"
    )
    correct.add_argument("--why", metavar="TEXT", default="", help="why the entry was wrong")
    _act(acts, "discard", "throw a kept bath away, told what may go where", _discard)


def _common(made: argparse.ArgumentParser) -> None:
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )
    made.add_argument("--json", action="store_true", default=argparse.SUPPRESS, help="print one JSON document")


def _act(
    acts: "Commands[argparse.ArgumentParser]", name: str, says: str, run: "Callable[[argparse.Namespace], int]"
) -> argparse.ArgumentParser:
    made = acts.add_parser(name, help=says, description=f"{says[0].upper()}{says[1:]}.")
    made.set_defaults(run=run)
    _common(made)
    made.add_argument("bath", metavar="LABEL", help="the kept bath, by its label")
    made.add_argument("--kept-by", metavar="LOG", default="", help="the day that kept it, where several bear the label")
    return made


def shelf(options: argparse.Namespace) -> int:
    """Print the shelf."""
    from dyesession.shelf import shelf_as_json, shelf_lines

    found = _shelf(options)
    if getattr(options, "json", False):
        print(json.dumps(shelf_as_json(found), ensure_ascii=False, indent=2))
    else:
        print("\n".join(shelf_lines(found, WIDTH)))
    return 0


def _workroom(options: argparse.Namespace) -> "Workroom":
    from dyesession.cli.workroom import find_workroom

    return find_workroom(getattr(options, "workroom", None))


def _shelf(options: argparse.Namespace) -> "Shelf":
    from datetime import datetime

    from dyesession.cli.at_shelf import shelf_now

    return shelf_now(_workroom(options), datetime.now().date())


def _draw(options: argparse.Namespace) -> int:
    from dyesession.cli.at_shelf import bath_named, draw_into
    from dyesession.cli.days import newest_open
    from dyesession.clock import SystemClock
    from dyesession.storage import DISK

    workroom = _workroom(options)
    bath = bath_named(_shelf(options), options.bath, options.kept_by)
    log = workroom.log(options.log) if options.log else newest_open(workroom)
    if log is None:
        raise ShelfAsked(
            "No day is open that the bath could be poured into; begin one, for example: dyesession begin"
            ' madder-brick-red-on-wool --fibre "75 g wool"'
        )
    litres = _litres(options.litres)
    pot, minded = draw_into(
        workroom, DISK, log, bath, options.into, litres, SystemClock(), lambda minded: _agreed(options, minded)
    )
    much = "All" if litres is None else f"{litres:g} L"
    return _say(options, f"{much} of “{bath.label}” poured into the {pot}.", minded, log)


def _pool(options: argparse.Namespace) -> int:
    from dyesession.cli.at_shelf import bath_named
    from dyesession.shelf import pool

    standing = _shelf(options)
    poured = bath_named(standing, options.bath, options.kept_by)
    into = bath_named(standing, options.into)
    household = _workroom(options).kitchen(None).household
    return _do(options, pool(into, poured, _litres(options.litres), options.label, household))


def _top_up(options: argparse.Namespace) -> int:
    from dyesession.cli.at_shelf import bath_named
    from dyesession.shelf import adding_of, top_up

    bath = bath_named(_shelf(options), options.bath, options.kept_by)
    adding = [adding_of(bath, *_added(one)) for one in options.add]
    return _do(options, top_up(bath, _litres(options.water), adding, _workroom(options).kitchen(None).household))


def _correct(options: argparse.Namespace) -> int:
    from dyesession.cli import at_shelf
    from dyesession.clock import SystemClock
    from dyesession.shelf import read_again
    from dyesession.storage import DISK

    bath = at_shelf.bath_named(_shelf(options), options.bath, options.kept_by)
    litres = _litres(options.litres)
    if options.of is None:
        household = _workroom(options).kitchen(None).household
        return _do(options, read_again(bath, litres, options.ph, options.stands, options.label, household))
    if litres is None:
        raise ShelfAsked(f"Say what the entry of {options.of} should have said, for example --litres 1.")
    log = _workroom(options).log(options.of)
    text = at_shelf.correct(_workroom(options), DISK, bath, log, litres, options.why, SystemClock())
    return _say(options, text, (), log)


def _discard(options: argparse.Namespace) -> int:
    from dyesession.cli.at_shelf import bath_named
    from dyesession.shelf import discard

    bath = bath_named(_shelf(options), options.bath, options.kept_by)
    return _do(options, discard(bath, _workroom(options).kitchen(None).household))


def _do(options: argparse.Namespace, act: "ShelfAct") -> int:
    from dyesession.cli.at_shelf import LeftAsItStands, write
    from dyesession.clock import SystemClock
    from dyesession.storage import DISK

    if not _agreed(options, act.reminders):
        raise LeftAsItStands(f"{act.title}: not done, and nothing was written.")
    path = write(_workroom(options), DISK, act, SystemClock())
    return _say(options, act.says, act.reminders, path)


def _agreed(options: argparse.Namespace, minded: "Iterable[Reminder]") -> bool:
    """A person at a terminal is told what to bear in mind first, and asked; a script says what it does by calling."""
    if not _is_asked(options) or not (lines := tuple(dict.fromkeys(one.text for one in minded))):
        return True
    print("\n".join(("First bear in mind:", *(f"! {one}" for one in lines))))
    while (answer := input("Go on? (yes, no) ").strip().lower()) not in ("y", "yes", "n", "no"):
        print('Answer yes or no, for example "yes".')
    return answer in ("y", "yes")


def _is_asked(options: argparse.Namespace) -> bool:
    return sys.stdin.isatty() and sys.stdout.isatty() and not getattr(options, "json", False)


def _say(options: argparse.Namespace, text: str, minded: "Iterable[Reminder]", log: Path) -> int:
    lines = () if _is_asked(options) else tuple(dict.fromkeys(one.text for one in minded))
    if getattr(options, "json", False):
        document: dict[str, Any] = {"done": text, "reminders": list(lines), "log": log.stem}
        print(json.dumps(document, ensure_ascii=False, indent=2))
        return 0
    print("\n".join((text, *(f"! {one}" for one in lines), f"Written in {log.stem}.")))
    return 0


def _litres(text: str | None) -> float | None:
    from dyesession.units import read_volume

    if text is None:
        return None
    bare = text.strip().replace(",", ".")
    return float(read_volume(f"{bare} l" if bare.replace(".", "", 1).isdigit() else text).aim)


def _added(text: str) -> tuple[str, float]:
    """ "10 g alum" or "alum 10 g" in two: the substance and its grams."""
    from dyesession.units import read_mass

    words = text.split()
    for cut in range(1, len(words)):
        for amount, name in ((words[:cut], words[cut:]), (words[cut:], words[:cut])):
            try:
                return " ".join(name).removeprefix("of "), float(read_mass(" ".join(amount)).aim)
            except UserError:
                continue
    raise ShelfAsked(f"“{text}” does not say how much of what goes in; expected, for example, “10 g alum”.")
