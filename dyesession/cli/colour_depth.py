"""`dyesession colour depth`: a dye at other depths, from a typed sample or a logged skein. Calls; computes nothing."""

import argparse
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from dyesession.cli.colour import print_answer
from dyesession.cli.colour_reading import ColourAsked, ground, one
from dyesession.cli.colour_told import depth_told

if TYPE_CHECKING:
    from dyesession.colour.depth import Exponent, Predicted
    from dyesession.colour.readings import Reading

_LEAST_UNSURE = 0.1


def depth(options: argparse.Namespace) -> int:
    """Print one depth, or the series."""
    sample, undyed_text, exponent = _sample(options)
    undyed, notes = (undyed_text, ()) if undyed_text is not None else ground(options.undyed, sample)
    exponent, more = _fitted(options, undyed, sample, exponent)
    told = [depth_told(replace(one, notes=(*one.notes, *notes, *more)), sample) for one in
            _predicted(options, undyed, sample, exponent)]  # fmt: skip
    if options.ratio is not None:
        print_answer(options, *told[0])
        return 0
    print_answer(options, {"series": [document for document, _ in told]}, _series_lines(told))
    return 0


def _sample(options: argparse.Namespace) -> "tuple[Reading, Reading | None, Exponent | None]":
    """The sample; with a log also its undyed fibre and how depth follows dose, where the logs tell."""
    if options.log is None:
        if options.sample is None:
            raise ColourAsked('A sample is needed, for example --sample "lab(42 45 30)", or --log with a day that has one.')
        return one(options.sample), None, None
    from dyesession.cli.logged_shades import shade_named, shades_in, workroom_of
    from dyesession.daybook.shade_card import exponent_of

    workroom = workroom_of(options)
    shade = shade_named(workroom, options.log, options.lot)
    fitted = exponent_of(shade, shades_in(workroom))
    return shade.reading, one(options.undyed) if options.undyed else shade.undyed, fitted if fitted.fitted else None


def _fitted(
    options: argparse.Namespace, undyed: "Reading", sample: "Reading", exponent: "Exponent | None"
) -> "tuple[Exponent | None, tuple[str, ...]]":
    from dyesession.colour.depth import fit_exponent

    if (options.pale is None) != (options.pale_dose is None):
        raise ColourAsked(
            'A pale sample goes with its dose, for example --pale "lab(58 37 25)" --pale-dose 0.25.'
        )
    if options.pale is not None:
        exponent = fit_exponent(undyed, one(options.pale), options.pale_dose, sample, 1.0)
    if exponent is None:
        return None, ()
    unsure = max(exponent.plus_minus, _LEAST_UNSURE)
    return exponent, (f"Depth follows dose to the power {exponent.value:.1f} ± {unsure:.1f}, learned.",)


def _predicted(
    options: argparse.Namespace, undyed: "Reading", sample: "Reading", exponent: "Exponent | None"
) -> "list[Predicted]":
    """At the ratio asked for, else the series; ratios are of doses where an exponent is known, else of depths."""
    from dyesession.colour.depth import SERIES, at_dose, at_ratio, series

    if options.ratio is not None:
        return [at_dose(undyed, sample, options.ratio, exponent) if exponent else at_ratio(undyed, sample, options.ratio)]
    if exponent is None:
        return list(series(undyed, sample))
    return [at_dose(undyed, sample, ratio, exponent) for ratio in SERIES]


def _series_lines(told: "list[tuple[dict[str, Any], list[str]]]") -> list[str]:
    """The shades one a line, and each note once."""
    notes = dict.fromkeys(note for _, lines in told for note in lines[1:])
    return [*(lines[0] for _, lines in told), *notes]
