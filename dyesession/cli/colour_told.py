"""What the colour commands say: each answer as a document and as lines. Computes nothing and reads nothing."""

from typing import TYPE_CHECKING, Any

from dyesession.colour.written import lab_text

if TYPE_CHECKING:
    from dyesession.colour.cielab import Lab
    from dyesession.colour.depth import Predicted
    from dyesession.colour.difference import Difference
    from dyesession.colour.overdye import OverdyePlan
    from dyesession.colour.readings import Reading
    from dyesession.colour.targets import Target


def difference_document(found: "Difference") -> dict[str, Any]:
    """A difference as a document."""
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


def difference_lines(found: "Difference") -> list[str]:
    """A difference as lines: the readings, the words, the range."""
    from dyesession.colour.difference import shown_range

    verdict = found.verdict
    return [
        f"sample  {shown(found.sample)}",
        f"target  {shown(found.target.middle)}{spread(found.target)}",
        found.words,
        f"{shown_range(verdict.low, verdict.high)} in CIEDE2000: {verdict.word}",
        *found.notes,
    ]


def depth_told(found: "Predicted", sample: "Reading") -> tuple[dict[str, Any], list[str]]:
    """A shade at another depth, as a document and as lines."""
    hexed, notes = hex_of(found.lab, sample)
    document = {
        "lab": list(found.lab),
        "hex": hexed,
        "band": found.plus_minus,
        "ratio": found.ratio,
        "notes": [*found.notes, *notes],
    }
    shown = (
        f"{found.ratio:.3g} times the depth: {lab_text(found.lab)} {hexed} ± {figure(found.plus_minus)} "
        "(CIEDE2000), modelled"
    )
    return document, [shown, *found.notes, *notes]


def overdye_told(plan: "OverdyePlan", skein: "Reading") -> tuple[dict[str, Any], list[str]]:
    """An overdye plan, as a document and as lines."""
    hexed, notes = hex_of(plan.lab, skein)
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
    miss = f"as it is, the skein misses by {figure(plan.now)} (CIEDE2000)"
    if not plan.amount:
        return document, [plan.says, miss, *plan.notes, *notes]
    lines = [
        plan.says,
        f"add {plan.amount:.2g} ({plan.amount_low:.2g} to {plan.amount_high:.2g}) of the second dye's sample",
        f"then about {lab_text(plan.lab)} {hexed}, modelled; expect a miss of {figure(plan.expected)}; {miss}",
    ]
    return document, [*lines, *plan.notes, *notes]


def reading_told(reading: "Reading") -> tuple[dict[str, Any], list[str]]:
    """A reading, as a document and as lines."""
    hexed, notes = hex_of(reading.lab, reading)
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
    return document, [f"{shown(reading)}, {reading.conditions}", *notes]


def hex_of(lab: "Lab", like: "Reading") -> tuple[str, tuple[str, ...]]:
    """The hex of a Lab, and what to say where a screen cannot show it."""
    from dyesession.colour.screen import screen_of

    screen = screen_of(lab, like.viewing)
    said = () if screen.exact else ("A screen cannot show this colour; the hex is the nearest it can.",)
    return screen.hex, said


def shown(reading: "Reading") -> str:
    """A reading in one line."""
    state = "wet" if reading.wet else "dry"
    return f"{lab_text(reading.lab)} {reading.viewing} ± {figure(reading.plus_minus)}, {state}, {reading.how}"


def spread(target: "Target") -> str:
    """How far a target of several readings reaches."""
    return (
        f", {len(target.readings)} readings within {figure(target.spread)}"
        if len(target.readings) > 1
        else ""
    )


def figure(value: float) -> str:
    """A ± or a difference: never a second decimal."""
    return f"{value:.0f}" if value >= 3.0 else f"{value:.1f}"
