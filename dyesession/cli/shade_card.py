"""`dyesession shade-card`: every colour in the logs, or those nearest a colour. Calls, prints, writes one page."""

import argparse
import json
import os
import shutil
import sys
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from dyesession.daybook.shade_lines import Depth

Commands = argparse._SubParsersAction  # argparse gives this type no public name
NEAREST = 8
_WIDTH = 100


def add_command(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `shade-card`."""
    made = commands.add_parser(
        "shade-card",
        help="show every colour in the logs with its recipe and dose, or those nearest a colour",
        description="Show every colour in the logs with its recipe, dose, fibre and date; with --near the past colours"
        " nearest one you have in mind; with --write one page to look at or print.",
        epilog='examples:\n  dyesession shade-card\n  dyesession shade-card --near "#8b3a2b"\n'
        "  dyesession shade-card --write shades.html",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=shade_card)
    made.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )
    made.add_argument("--near", metavar="COLOUR", action="append", default=[], help='such as "lab(42 45 30)"; several make one')
    made.add_argument("--write", metavar="FILE", help="write one HTML page instead of printing")
    made.add_argument("--json", action="store_true", help="print one JSON document")


def shade_card(options: argparse.Namespace) -> int:
    """Print or write the card."""
    from dyesession.cli.logged_shades import shades_in, workroom_of
    from dyesession.daybook import shade_lines as said
    from dyesession.daybook.shade_card import nearest_shades

    shades = said.in_order(shades_in(workroom_of(options)))
    near = None
    if options.near:
        from dyesession.cli.colour_reading import target

        near = nearest_shades(shades, target(options.near).middle, NEAREST)
    if options.write:
        return _write(Path(options.write), said.shade_card_page([one.shade for one in near] if near is not None else shades))
    if options.json:
        print(json.dumps(said.shade_card_as_json(shades, near), ensure_ascii=False, indent=2))
        return 0
    depth, width = depth_of_terminal(), shutil.get_terminal_size((_WIDTH, 0)).columns
    lines = said.near_lines(near, depth, width) if near is not None else said.shade_card_lines(shades, depth, width)
    print("\n".join(lines))
    return 0


def _write(path: Path, page: str) -> int:
    from dyesession.cli.dyers_folder import write_text
    from dyesession.cli.workroom import WorkroomError
    from dyesession.storage import DISK

    if path.suffix.lower() not in (".html", ".htm"):
        raise WorkroomError(f"{path} does not end in .html, and a shade card is a page; for example --write shades.html")
    write_text(DISK, path, page)
    print(f"Written to {path}.")
    return 0


def depth_of_terminal() -> "Depth":
    """What the terminal can show by what it says of itself; nothing where the output is no terminal."""
    if os.environ.get("NO_COLOR") or not sys.stdout.isatty() or os.environ.get("TERM") == "dumb":
        return "none"
    if os.environ.get("COLORTERM", "").lower() in ("truecolor", "24bit"):
        return "full"
    return "256" if "256" in os.environ.get("TERM", "") else "16"
