"""`dyesession colour mend`: what would mend a colour, in grams and money. Reads, calls, prints; computes nothing."""

import argparse
import textwrap
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from dyesession.cli.colour import print_answer
from dyesession.cli.colour_reading import ColourAsked, one, target
from dyesession.cli.colour_told import difference_document, difference_lines

if TYPE_CHECKING:
    from dyesession.colour.mend import Dose, Lot
    from dyesession.colour.readings import Reading
    from dyesession.daybook.hit import Hit, Second

_WIDTH = 90
_DYE_EXAMPLE = '--dye "madder root 50"'


def mend(options: argparse.Namespace) -> int:
    """Print the difference and what would mend it."""
    from dyesession.daybook.hit import hit

    sample, undyed, lot = _skein(options)
    if options.undyed:
        undyed = one(options.undyed)
    found = hit(target(options.target), sample, undyed, _priced(options, lot), _second(options))
    print_answer(options, _document(found), _lines(found))
    return 0


def _skein(options: argparse.Namespace) -> "tuple[Reading, Reading | None, Lot]":
    """The sample, its undyed fibre and its lot, as typed or from a log; what is typed counts before the log."""
    from dyesession.colour.mend import Lot

    sample, undyed, lot = None, None, None
    if options.log is not None:
        from dyesession.cli.logged_shades import shade_named, shades_in, workroom_of
        from dyesession.daybook.shade_card import lot_of

        workroom = workroom_of(options)
        shade = shade_named(workroom, options.log, options.lot)
        sample, undyed, lot = shade.reading, shade.undyed, lot_of(shade, shades_in(workroom))
    sample = one(options.sample) if options.sample else sample
    if sample is None:
        raise ColourAsked('A sample is needed, for example --sample "lab(46 44 29)", or --log with a day that has one.')
    grams = options.fibre if options.fibre is not None else lot.fibre_g if lot else None
    dye = _dose(options.dye) if options.dye else lot.dye if lot else None
    if grams is None or dye is None:
        raise ColourAsked(
            "What the skein weighs and what it was dyed with are needed to say what mending costs, for example "
            f"--fibre 240 {_DYE_EXAMPLE}, or --log with the day that dyed it."
        )
    return sample, undyed, replace(lot, fibre_g=grams, dye=dye) if lot else Lot(grams, dye)


def _dose(text: str) -> "Dose":
    from dyesession.colour.mend import Dose

    name, _, percent = text.strip().removesuffix("%").strip().rpartition(" ")
    try:
        return Dose(name.strip(" :,"), float(percent.replace(",", ".")))
    except ValueError as trouble:
        raise ColourAsked(
            f"“{text}” is no dye with its dose; expected a name and per cent of the fibre, for example {_DYE_EXAMPLE}."
        ) from trouble


def _second(options: argparse.Namespace) -> "Second | None":
    from dyesession.daybook.hit import Second

    if (options.second is None) != (options.second_dye is None):
        raise ColourAsked(
            "A second dye's sample goes with its name and dose, for example --second \"lab(38 -4 -28)\" "
            '--second-dye "indigo 4".'
        )
    if options.second is None:
        return None
    dose = _dose(options.second_dye)
    return Second(dose.dyestuff, one(options.second), dose)


def _priced(options: argparse.Namespace, lot: "Lot") -> "Lot":
    """With the prices of the kitchen's jars."""
    from dyesession.cli.logged_shades import workroom_of
    from dyesession.colour.mend import MODIFIERS
    from dyesession.daybook.hit import prices_of

    second = (_dose(options.second_dye).dyestuff,) if options.second_dye else ()
    names = (lot.dye.dyestuff, *second, *MODIFIERS)
    return replace(lot, price_per_100_g=prices_of(workroom_of(options).kitchen(options.kitchen).jars, names))


def _document(found: "Hit") -> dict[str, Any]:
    advice = [
        {
            "act": step.act,
            "says": step.says,
            "costs": [
                {"substance": c.substance, "mass_g": c.mass_g, "low_g": c.low_g, "high_g": c.high_g, "money": c.money}
                for c in step.costs
            ],
        }
        for step in found.advice
    ]
    return {"difference": difference_document(found.found), "mend": advice, "notes": list(found.notes)}


def _lines(found: "Hit") -> list[str]:
    from dyesession.daybook.hit import cost_words

    lines = [*difference_lines(found.found), *(note for note in found.notes if note not in found.found.notes)]
    for step in found.advice:
        said = step.says if step.act.casefold() in step.says.casefold() else f"{step.act}: {step.says}"
        lines += ["", *textwrap.wrap(said, _WIDTH)]
        lines += [f"    {cost_words(cost)}" for cost in step.costs]
    return lines
