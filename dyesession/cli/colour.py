"""`dyesession colour difference|depth|overdye|photo`: reads what was typed, calls the science, prints.

Computes nothing of its own. A colour on the command line is `lab(42 45 30)` (D65, 2 degrees unless said),
`lch(...)`, a hex or another CSS colour, or the name of a colorimeter's .csv file.
"""

import argparse
import json
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from dyesession.errors import UserError

if TYPE_CHECKING:
    from dyesession.colour.cielab import Lab
    from dyesession.colour.depth import Predicted
    from dyesession.colour.difference import Difference
    from dyesession.colour.overdye import OverdyePlan
    from dyesession.colour.patches import Box
    from dyesession.colour.photo import Card
    from dyesession.colour.readings import Reading
    from dyesession.colour.targets import Target

Commands = argparse._SubParsersAction  # argparse gives this type no public name
Run = Callable[[argparse.Namespace], int]

UNDYED = "lab(86 0 11)"  # natural wool, scoured: common practice, no source
_CSV_BYTES = 4_000_000
_COLOUR = 'a colour: "lab(42 45 30)", "lab(42 45 30) D65/10 ± 1.5", "#a63e36", or a colorimeter\'s .csv file'
_BOX = "left,top,width,height in pixels"
_PERCENT = 100.0


class ColourAsked(UserError):
    """A colour command that is short of something, or asks for what cannot be."""


def add_commands(commands: "Commands[argparse.ArgumentParser]") -> None:
    """Register `colour` with its four commands."""
    colour = commands.add_parser(
        "colour",
        help="difference, depth, overdye and photo: did I hit the colour, and what would mend it",
        description="Compare colours, work out other depths and overdyes, read a photo.",
        epilog='example:\n  dyesession colour difference "lab(46 44 29)" "lab(42 45 30)"',
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    inner = colour.add_subparsers(metavar="COMMAND", title="commands", required=True)
    _difference(inner)
    _depth(inner)
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
        "colours", metavar="SAMPLE TARGET", nargs="*", help=f"the sample, then the target; {_COLOUR}"
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
        "show a dye at another depth, from one sample of it",
        run_depth,
        'dyesession colour depth --undyed "lab(86 0 11)" --sample "lab(42 45 30)" --ratio 0.5',
    )
    _undyed(made)
    made.add_argument("--sample", metavar="COLOUR", required=True, help=_COLOUR)
    made.add_argument(
        "--ratio", type=float, required=True, help="times the sample's depth, 0 to 10, such as 0.5"
    )
    made.add_argument("--pale", metavar="COLOUR", help="a second sample of the same dye at a smaller dose")
    made.add_argument(
        "--pale-dose", type=float, metavar="SHARE", help="its dose as a share of the sample's, such as 0.5; "
        "then --ratio is a ratio of doses, and how depth follows dose is fitted",
    )  # fmt: skip


def _overdye(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "overdye",
        "work out the smallest addition of a second dye that brings a skein nearest a target",
        run_overdye,
        'dyesession colour overdye --undyed "lab(86 0 11)" --skein "lab(75 -5 70)" --second "lab(38 -4 -28)" '
        '--target "lab(52 -24 33)"',
    )
    _undyed(made)
    made.add_argument("--skein", metavar="COLOUR", required=True, help="the skein as it is now")
    made.add_argument(
        "--second", metavar="COLOUR", required=True, help="the second dye's own sample, its unit of depth"
    )
    made.add_argument("--target", metavar="COLOUR", action="append", required=True, help="the colour in mind")


def _photo(commands: "Commands[argparse.ArgumentParser]") -> None:
    made = _command(
        commands,
        "photo",
        "read a colour from a photo, corrected by a grey or white card in it",
        run_photo,
        "dyesession colour photo skein.jpg --fibre 900,400,300,300 --card 200,400,200,200 --card-reflects 18 "
        "--light daylight",
    )
    made.add_argument("file", metavar="FILE", help="a JPEG, PNG, TIFF or WEBP")
    made.add_argument("--fibre", metavar="BOX", required=True, help=f"the fibre, {_BOX}")
    made.add_argument("--card", metavar="BOX", help=f"the card, {_BOX}")
    made.add_argument(
        "--card-reflects", type=float, metavar="PERCENT", help="what it throws back, such as 18"
    )
    made.add_argument("--target", metavar="BOX", help=f"the target in the same photo, {_BOX}")
    made.add_argument(
        "--light", default="unknown", help="daylight, cool led, lamp or unknown (as it is if not given)"
    )
    made.add_argument("--wet", action="store_true", help="the fibre is wet; it is read, but not compared")
    _undyed(made)


def _undyed(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--undyed", metavar="COLOUR", help=f"the undyed fibre (else natural wool, {UNDYED})")


def run_difference(options: argparse.Namespace) -> int:
    """Print how a sample differs from its target."""
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
    sample = _one(options.sample)
    undyed, notes = _ground(options.undyed, sample)
    found = difference(sample, _target(targets), undyed)
    found = replace(found, notes=(*found.notes, *notes))
    _print(options, _difference_document(found), _difference_lines(found))
    return 0


def run_depth(options: argparse.Namespace) -> int:
    """Print a sample's dye at another depth."""
    from dyesession.colour.depth import at_dose, at_ratio, fit_exponent

    sample = _one(options.sample)
    undyed, notes = _ground(options.undyed, sample)
    if options.pale is None and options.pale_dose is None:
        found = at_ratio(undyed, sample, options.ratio)
    elif options.pale is None or options.pale_dose is None:
        raise ColourAsked(
            'A pale sample goes with its dose, for example --pale "lab(58 37 25)" --pale-dose 0.25.'
        )
    else:
        exponent = fit_exponent(undyed, _one(options.pale), options.pale_dose, sample, 1.0)
        found = at_dose(undyed, sample, options.ratio, exponent)
        unsure = max(exponent.plus_minus, 0.1)
        notes += (f"Depth follows dose to the power {exponent.value:.1f} ± {unsure:.1f}, learned.",)
    found = replace(found, notes=(*found.notes, *notes))
    _print(options, *_depth_told(found, sample))
    return 0


def run_overdye(options: argparse.Namespace) -> int:
    """Print the smallest addition of a second dye that comes nearest."""
    from dyesession.colour.overdye import plan_overdye

    skein = _one(options.skein)
    undyed, notes = _ground(options.undyed, skein)
    plan = plan_overdye(undyed, skein, _one(options.second), _target(options.target))
    plan = replace(plan, notes=(*plan.notes, *notes))
    _print(options, *_overdye_told(plan, skein))
    return 0


def run_photo(options: argparse.Namespace) -> int:
    """Print a colour read from a photo, and how it differs from a target in the same photo."""
    from dyesession.colour.difference import difference
    from dyesession.colour.photo import read_photo

    patches = _patches(options)
    card = _card(options, patches)
    frame = Path(options.file).name
    sample = read_photo(patches["the fibre"], card, options.light, frame=frame, wet=options.wet)
    document, lines = _reading_told(sample)
    if "the target" in patches:
        target = read_photo(patches["the target"], card, options.light, frame=frame, what="the target")
        undyed, notes = _ground(options.undyed, sample)
        found = difference(sample, _target_of([target]), undyed)
        found = replace(found, notes=(*found.notes, *notes))
        document["difference"] = _difference_document(found)
        lines += _difference_lines(found)
    _print(options, document, lines)
    return 0


def _patches(options: argparse.Namespace) -> dict[str, Any]:
    from dyesession.colour.photo_file import patches_of_file

    boxes = {"the fibre": options.fibre, "the card": options.card, "the target": options.target}
    wanted = {what: _box(text, what) for what, text in boxes.items() if text is not None}
    return patches_of_file(Path(options.file), wanted)


def _card(options: argparse.Namespace, patches: dict[str, Any]) -> "Card | None":
    from dyesession.colour.photo import Card

    if (options.card is None) != (options.card_reflects is None):
        raise ColourAsked(
            "A card goes with how much it throws back, for example --card 200,400,200,200 --card-reflects 18 "
            "for a grey card of 18 %."
        )
    return None if options.card is None else Card(patches["the card"], options.card_reflects / _PERCENT)


def _box(text: str, what: str) -> "Box":
    from dyesession.colour.patches import Box

    try:
        left, top, width, height = (int(part) for part in text.split(","))
    except ValueError as trouble:
        raise ColourAsked(
            f"The patch for {what} is no box; expected {_BOX}, for example 400,300,120,120."
        ) from trouble
    return Box(left, top, width, height)


def _readings(text: str) -> "tuple[Reading, ...]":
    from dyesession.colour.sensor_csv import readings_of_csv
    from dyesession.colour.typed import read_colour

    if not text.lower().endswith(".csv"):
        return (read_colour(text),)
    path = Path(text)
    try:
        if not path.is_file() or path.stat().st_size > _CSV_BYTES:
            raise OSError
        return readings_of_csv(path.read_text(encoding="utf-8"), path.name)
    except (OSError, UnicodeDecodeError) as trouble:
        raise ColourAsked(
            f"There is no file of readings {path.name!r} that can be read; expected a colorimeter's .csv in "
            "UTF-8, for example readings.csv."
        ) from trouble


def _one(text: str) -> "Reading":
    return _target([text]).middle


def _target(texts: Sequence[str]) -> "Target":
    return _target_of([reading for text in texts for reading in _readings(text)])


def _target_of(readings: "Sequence[Reading]") -> "Target":
    from dyesession.colour.targets import target_of

    return target_of(readings)


def _ground(text: str | None, like: "Reading") -> "tuple[Reading, tuple[str, ...]]":
    """The undyed fibre, and what to say where it had to be assumed."""
    if text is not None:
        return _one(text), ()
    assumed = replace(_one(UNDYED), viewing=like.viewing)
    return assumed, (f"Reckoned on undyed natural wool, {UNDYED}; give your own with --undyed.",)


def _difference_document(found: "Difference") -> dict[str, Any]:
    depth = found.depth
    return {
        "de00": found.verdict.de00,
        "de00_low": found.verdict.low,
        "de00_high": found.verdict.high,
        "words": found.words,
        "verdict": found.verdict.word,
        "depth_ratio": depth.ratio if depth else None,
        "depth_ratio_low": depth.low if depth else None,
        "depth_ratio_high": depth.high if depth else None,
        "lab_sample": list(found.sample.lab),
        "lab_target": list(found.target.middle.lab),
        "notes": list(found.notes),
    }


def _difference_lines(found: "Difference") -> list[str]:
    from dyesession.colour.difference import shown_range

    verdict = found.verdict
    return [
        f"sample  {_shown(found.sample)}",
        f"target  {_shown(found.target.middle)}{_spread(found.target)}",
        found.words,
        f"{shown_range(verdict.low, verdict.high)} in CIEDE2000: {verdict.word}",
        *found.notes,
    ]


def _depth_told(found: "Predicted", sample: "Reading") -> tuple[dict[str, Any], list[str]]:
    hexed, notes = _hexed(found.lab, sample)
    document = {
        "lab": list(found.lab),
        "hex": hexed,
        "band": found.plus_minus,
        "ratio": found.ratio,
        "notes": [*found.notes, *notes],
    }
    shown = (
        f"{found.ratio:.3g} times the depth: {_lab(found.lab)} {hexed} ± {_figure(found.plus_minus)} "
        "(CIEDE2000), modelled"
    )
    return document, [shown, *found.notes, *notes]


def _overdye_told(plan: "OverdyePlan", skein: "Reading") -> tuple[dict[str, Any], list[str]]:
    hexed, notes = _hexed(plan.lab, skein)
    document = {
        "amount": plan.amount,
        "amount_low": plan.amount_low,
        "amount_high": plan.amount_high,
        "lab": list(plan.lab),
        "hex": hexed,
        "de00_expected": plan.expected,
        "reachable": plan.reachable,
        "says": plan.says,
        "notes": [*plan.notes, *notes],
    }
    miss = f"as it is, the skein misses by {_figure(plan.now)} (CIEDE2000)"
    if not plan.amount:
        return document, [plan.says, miss, *plan.notes, *notes]
    lines = [
        plan.says,
        f"add {plan.amount:.2g} ({plan.amount_low:.2g} to {plan.amount_high:.2g}) of the second dye's sample",
        f"then about {_lab(plan.lab)} {hexed}, modelled; expect a miss of {_figure(plan.expected)}; {miss}",
    ]
    return document, [*lines, *plan.notes, *notes]


def _reading_told(reading: "Reading") -> tuple[dict[str, Any], list[str]]:
    hexed, notes = _hexed(reading.lab, reading)
    document = {
        "lab": list(reading.lab),
        "hex": hexed,
        "plus_minus": reading.plus_minus,
        "how": reading.how,
        "wet": reading.wet,
        "illuminant": reading.illuminant,
        "observer": reading.observer_deg,
        "conditions": reading.conditions,
        "notes": list(notes),
    }
    return document, [f"{_shown(reading)}, {reading.conditions}", *notes]


def _hexed(lab: "Lab", like: "Reading") -> tuple[str, tuple[str, ...]]:
    """The hex of a Lab, and what to say where a screen cannot show it."""
    from dyesession.colour.screen import screen_of

    screen = screen_of(lab, like.viewing)
    said = () if screen.exact else ("A screen cannot show this colour; the hex is the nearest it can.",)
    return screen.hex, said


def _shown(reading: "Reading") -> str:
    state = "wet" if reading.wet else "dry"
    return f"{_lab(reading.lab)} {reading.viewing} ± {_figure(reading.plus_minus)}, {state}, {reading.how}"


def _spread(target: "Target") -> str:
    return (
        f", {len(target.readings)} readings within {_figure(target.spread)}"
        if len(target.readings) > 1
        else ""
    )


def _lab(lab: "Lab") -> str:
    return "lab(" + " ".join(f"{round(part)}" for part in lab) + ")"


def _figure(value: float) -> str:
    """A ± or a difference: never a second decimal."""
    return f"{value:.0f}" if value >= 3.0 else f"{value:.1f}"


def _print(options: argparse.Namespace, document: dict[str, Any], lines: list[str]) -> None:
    print(json.dumps(document, ensure_ascii=False, indent=2) if options.json else "\n".join(lines))
