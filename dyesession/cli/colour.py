"""`dyesession colour difference|depth|mend|overdye|photo`: reads what was typed, calls the science, prints.

Computes nothing of its own. How a colour is typed: `cli/colour_reading.py`; how an answer is said:
`cli/colour_told.py`; both are loaded when a command runs.
"""

import argparse
import json
from collections.abc import Callable
from dataclasses import replace
from typing import Any

from dyesession.cli.colour_reading import COLOUR, UNDYED, ColourAsked

Commands = argparse._SubParsersAction  # argparse gives this type no public name
Run = Callable[[argparse.Namespace], int]
BOX = "left,top,width,height in pixels"


def add_commands(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `colour` with its five commands."""
    colour = commands.add_parser(
        "colour",
        help="difference, depth, mend, overdye and photo: did I hit the colour, and what would mend it",
        description="Compare colours, say what would mend one, work out other depths and overdyes, read a photo.",
        epilog='example:\n  dyesession colour difference "lab(46 44 29)" "lab(42 45 30)"',
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    inner = colour.add_subparsers(metavar="COMMAND", title="commands", required=True)
    _difference(inner)
    _depth(inner)
    _mend(inner)
    _overdye(inner)
    _photo(inner)


def _command(
    commands: "Commands[argparse.ArgumentParser]", name: str, says: str, run: Run, example: str
) -> argparse.ArgumentParser:
    made = commands.add_parser(
        name,
        help=says,
        description=says[0].upper() + says[1:] + ".",
        epilog=f"example:\n  {example}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    made.set_defaults(run=run)
    made.add_argument("--json", action="store_true", help="print one JSON document")
    return made


def _difference(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "difference",
        "say how a dry sample differs from a target: depth first, then words, then a range",
        run_difference,
        'dyesession colour difference "lab(46 44 29)" "lab(42 45 30)" --undyed "lab(86 0 11)"',
    )
    made.add_argument(
        "colours", metavar="SAMPLE TARGET", nargs="*", help=f"the sample, then the target; {COLOUR}"
    )
    made.add_argument("--sample", metavar="COLOUR", help="the sample")
    made.add_argument(
        "--target",
        metavar="COLOUR",
        action="append",
        default=[],
        help="the target; several make one with a spread",
    )
    _undyed(made)


def _depth(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "depth",
        "show a dye at other depths, from one sample of it or from a logged skein",
        run_depth,
        'dyesession colour depth --undyed "lab(86 0 11)" --sample "lab(42 45 30)" --ratio 0.5',
    )
    _undyed(made)
    made.add_argument("--sample", metavar="COLOUR", help=COLOUR)
    made.add_argument(
        "--ratio", type=float, help="times the sample's depth, 0 to 10, such as 0.5; else 1/4, 1/2, 2 and 4"
    )
    _of_a_log(made, "the sample is a colour of this day; two doses of its dye in your logs say how depth follows dose")
    made.add_argument("--pale", metavar="COLOUR", help="a second sample of the same dye at a smaller dose")
    made.add_argument(
        "--pale-dose", type=float, metavar="SHARE", help="its dose as a share of the sample's, such as 0.5; "
        "then --ratio is a ratio of doses, and how depth follows dose is fitted",
    )  # fmt: skip


def _mend(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "mend",
        "say what would mend a colour, the least first, with grams and money; good enough is an answer",
        run_mend,
        'dyesession colour mend --target "lab(42 45 30)" --sample "lab(46 44 29)" --fibre 240 --dye "madder root 50"',
    )
    made.add_argument("--target", metavar="COLOUR", action="append", required=True, help="the target; several make one")
    made.add_argument("--sample", metavar="COLOUR", help="the dry sample; else the colour of --log")
    _of_a_log(made, "the day that dyed the sample: its fibre, dye and dose are taken from there")
    made.add_argument("--fibre", type=float, metavar="GRAMS", help="what the skein weighs, washed and air-dry")
    made.add_argument("--dye", metavar="DYE PERCENT", help='its dye and dose, such as "madder root 50"')
    made.add_argument("--second", metavar="COLOUR", help="a second dye's own sample, to be looked at last")
    made.add_argument("--second-dye", metavar="DYE PERCENT", help='its dye and dose, such as "indigo 4"')
    made.add_argument("--kitchen", metavar="FILE", help="a kitchen.toml with the jars' prices (else the workroom's own)")
    _undyed(made)


def _of_a_log(parser: argparse.ArgumentParser, says: str) -> None:
    parser.add_argument("--log", metavar="LOG", help=f"a log's name or path: {says}")
    parser.add_argument("--lot", metavar="NAME", help="which of its lots, where it dyed several")
    parser.add_argument(
        "--workroom", metavar="FOLDER", default=argparse.SUPPRESS, help="the folder with your logs"
    )


def _overdye(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "overdye",
        "work out the smallest addition of a second dye, or of a further dip, that brings a skein nearest a target",
        run_overdye,
        'dyesession colour overdye --undyed "lab(86 0 11)" --skein "lab(75 -5 70)" --second "lab(38 -4 -28)" '
        '--target "lab(52 -24 33)"',
    )
    _undyed(made)
    made.add_argument("--skein", metavar="COLOUR", help="the skein as it is now; else the colour of --log")
    made.add_argument(
        "--second", metavar="COLOUR", help="the second dye's own sample, its unit of depth; else every dye in your logs"
    )
    _of_a_log(made, "the day that dyed the skein")
    made.add_argument("--target", metavar="COLOUR", action="append", required=True, help="the colour in mind")


def _photo(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "photo",
        "read a colour from a photo, corrected by a grey or white card in it",
        _run_photo,
        "dyesession colour photo skein.jpg --fibre 900,400,300,300 --card 200,400,200,200 --card-reflects 18 "
        "--light daylight",
    )
    made.add_argument("file", metavar="FILE", help="a JPEG, PNG, TIFF or WEBP")
    made.add_argument("--fibre", metavar="BOX", required=True, help=f"the fibre, {BOX}")
    made.add_argument("--card", metavar="BOX", help=f"the card, {BOX}")
    made.add_argument(
        "--card-reflects", type=float, metavar="PERCENT", help="what it throws back, such as 18"
    )
    made.add_argument("--target", metavar="BOX", help=f"the target in the same photo, {BOX}")
    made.add_argument(
        "--light", default="unknown", help="daylight, cool led, lamp or unknown (as it is if not given)"
    )
    made.add_argument("--wet", action="store_true", help="the fibre is wet; it is read, but not compared")
    _undyed(made)


def _undyed(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--undyed", metavar="COLOUR", help=f"the undyed fibre (else natural wool, {UNDYED})")


def run_difference(options: argparse.Namespace) -> int:
    """Print how a sample differs from its target."""
    from dyesession.cli.colour_reading import ground, one, target
    from dyesession.cli.colour_told import difference_document, difference_lines
    from dyesession.colour.difference import difference

    texts = list(options.colours)
    if not options.sample and texts:
        options.sample = texts.pop(0)
    targets = [*texts, *options.target]
    if not options.sample or not targets:
        raise ColourAsked(
            "A sample and a target are needed; expected two colours, for example "
            'dyesession colour difference "lab(46 44 29)" "lab(42 45 30)".'
        )
    sample = one(options.sample)
    undyed, notes = ground(options.undyed, sample)
    found = difference(sample, target(targets), undyed)
    found = replace(found, notes=(*found.notes, *notes))
    print_answer(options, difference_document(found), difference_lines(found))
    return 0


def run_depth(options: argparse.Namespace) -> int:
    """Print a sample's dye at another depth, or its whole series."""
    from dyesession.cli.colour_depth import depth

    return depth(options)


def run_mend(options: argparse.Namespace) -> int:
    """Print what would mend a colour."""
    from dyesession.cli.colour_mend import mend

    return mend(options)


def _run_photo(options: argparse.Namespace) -> int:
    from dyesession.cli.colour_photo import photo

    return photo(options)


def run_overdye(options: argparse.Namespace) -> int:
    """Print the smallest addition of a second dye that comes nearest."""
    from dyesession.cli.colour_overdye import overdye

    return overdye(options)


def print_answer(options: argparse.Namespace, document: dict[str, Any], lines: list[str]) -> None:
    """One JSON document, or lines."""
    print(json.dumps(document, ensure_ascii=False, indent=2) if options.json else "\n".join(lines))
