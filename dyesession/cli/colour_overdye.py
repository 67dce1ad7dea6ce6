"""`dyesession colour overdye`: a second dye or a further dip over a skein. Reads, calls, prints; computes nothing."""

import argparse
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from dyesession.cli.colour import print_answer
from dyesession.cli.colour_reading import ColourAsked, ground, one, target
from dyesession.cli.colour_told import overdye_told

if TYPE_CHECKING:
    from dyesession.colour.mend import Lot
    from dyesession.colour.readings import Reading
    from dyesession.daybook.hit import Overdye
    from dyesession.daybook.shade_card import Shade


def overdye(options: argparse.Namespace) -> int:
    """One typed second dye, or every dye of the logs beside a further dip."""
    from dyesession.colour.overdye import plan_overdye

    skein, undyed, shade = _skein(options)
    if options.second is None:
        return _from_the_logs(options, skein, undyed, shade)
    reckoned_on, notes = (undyed, ()) if undyed is not None else ground(None, skein)
    plan = plan_overdye(reckoned_on, skein, one(options.second), target(options.target))
    print_answer(options, *overdye_told(replace(plan, notes=(*plan.notes, *notes)), skein))
    return 0


def _skein(options: argparse.Namespace) -> "tuple[Reading, Reading | None, Shade | None]":
    shade = None
    if options.log is not None:
        from dyesession.cli.logged_shades import shade_named, workroom_of

        shade = shade_named(workroom_of(options), options.log, options.lot)
    if options.skein is None and shade is None:
        raise ColourAsked('A skein is needed, for example --skein "lab(75 -5 70)", or --log with the day that dyed it.')
    undyed = one(options.undyed) if options.undyed else shade.undyed if shade is not None else None
    return one(options.skein) if options.skein or shade is None else shade.reading, undyed, shade


def _from_the_logs(
    options: argparse.Namespace, skein: "Reading", undyed: "Reading | None", shade: "Shade | None"
) -> int:
    from dyesession.cli.logged_shades import shades_in, workroom_of
    from dyesession.daybook.hit import ASSUMED, overdyes, seconds_of
    from dyesession.daybook.shade_card import lot_of

    shades = shades_in(workroom_of(options))
    lot: Lot | None = lot_of(shade, shades) if shade is not None else None
    seconds = seconds_of(shades, skein, lot.dye.dyestuff if lot is not None else "")
    found = overdyes(undyed, skein, target(options.target), seconds, lot)
    notes = () if undyed is not None else (ASSUMED,)
    document = {"overdyes": [_document(one, skein) for one in found], "notes": list(notes)}
    print_answer(options, document, [*(line for one in found for line in _lines(one, skein)), *notes])
    return 0


def _document(found: "Overdye", skein: "Reading") -> dict[str, Any]:
    grams = dict(zip(("mass_g", "low_g", "high_g"), found.grams, strict=True)) if found.grams is not None else {}
    return {"dye": found.second.name, **overdye_told(found.plan, skein)[0], **grams}


def _lines(found: "Overdye", skein: "Reading") -> list[str]:
    from dyesession.daybook.hit import grams_of

    lines = [f"{found.second.name}: {overdye_told(found.plan, skein)[1][0]}", *overdye_told(found.plan, skein)[1][1:]]
    if found.grams is not None:
        middle, low, high = (grams_of(one) for one in found.grams)
        lines.insert(2, f"that is about {middle} g ({low} to {high} g) of the dyestuff for this lot")
    return [lines[0], *(f"    {line}" for line in lines[1:])]
