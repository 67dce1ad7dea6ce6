"""What dry colours say of a dyestuff: the strength of each dyeing over its dose, by jar. Pure.

Only dyeings with one dyestuff in a fresh bath of one day count, and only where the undyed fibre was read too:
the ground of the fibre is never guessed. Strength is the dye's own K/S (`colour.shades`).
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from dyesession.daybook.called_out import jar_of, kitchen_then
from dyesession.daybook.day_line import COLOURED
from dyesession.daybook.seen import family_of, key_of
from dyesession.daybook.walk import Pace
from dyesession.dyeing.eta import Z_90
from dyesession.dyeing.fibres import Family
from dyesession.errors import UserError
from dyesession.session import events as e
from dyesession.session.opening import LoggedDay
from dyesession.session.state import OUT_DRY

HUNDRED, GRAMS_PER_KG = 100.0, 1000.0
LEAST_ERROR = 0.08  # of a strength: unevenness of the yarn, where on it was read; judgement


@dataclass(frozen=True)
class Depth:
    """One dyeing: dose in % WOF, strength of its colour, the error of the strength's log, jar, fibre, bath."""

    day: str
    dyestuff: str
    family: Family
    jar: str
    percent: float
    strength: float
    error: float
    pulls: int
    liquor_ratio: float | None


def depths_seen(day: LoggedDay, paces: Sequence[Pace]) -> Iterator[Depth]:
    """The dyeings of a day whose depth can be told."""
    if not paces or any(isinstance(one.entry.event, e.Drawn) for one in paces):
        return
    last = paces[-1].after
    roles = {one.ingredient: one.role for one in last.doses}
    grams: dict[str, float] = {}
    for put in last.put_in:
        if roles.get(put.ingredient) == "dyestuff" or put.ingredient in {one.name for one in last.dyestuffs}:
            grams[put.ingredient] = grams.get(put.ingredient, 0.0) + put.mass_g
    steps = [one for one in last.steps if one.plan.stage in COLOURED and one.entered]
    if len(grams) != 1 or len(steps) != 1:
        return
    (ingredient, mass_g) = next(iter(grams.items()))
    substance = dict(last.substances).get(ingredient, ingredient)
    lots = [one for one in last.lots if not one.snippet and one.name in steps[0].entered]
    fibre_g = sum(one.mass_g for one in lots)
    undyed, dyed = colours_of(paces)
    jar = jar_of(kitchen_then(day), substance)
    for lot in lots:
        family = family_of(lot.kind)
        told = _strength(undyed.get(lot.name, ""), dyed.get(lot.name, "")) if family is not None else None
        if told is None or family is None or fibre_g <= 0.0:
            continue
        pulls = sum(one.pulls for one in last.dyestuffs)
        ratio = _ratio(paces, steps[0].plan.vessel or "", fibre_g)
        name = jar.name if jar is not None else ""
        yield Depth(day.name, key_of(substance), family, name, HUNDRED * mass_g / fibre_g, *told, pulls, ratio)


def _ratio(paces: Sequence[Pace], vessel: str, fibre_g: float) -> float | None:
    """Litres per kilogram as the fibre went in."""
    for pace in paces:
        if isinstance(pace.entry.event, e.Entered) and pace.entry.event.vessel == vessel:
            there = pace.after.vessel(vessel)
            litres = there.bath.volume_l if there is not None and there.bath is not None else None
            return litres * GRAMS_PER_KG / fibre_g if litres else None
    return None


def colours_of(paces: Sequence[Pace]) -> tuple[dict[str, str], dict[str, str]]:
    """Dry colours of each lot before it met any dye bath, and the latest afterwards."""
    undyed: dict[str, str] = {}
    dyed: dict[str, str] = {}
    met: set[str] = set()
    for pace in paces:
        event = pace.entry.event
        if isinstance(event, e.Entered):
            step = pace.after.running_in(event.vessel)
            bath = pace.after.vessel(event.vessel)
            coloured = step is not None and step.plan.stage in COLOURED
            if coloured or (bath is not None and bath.bath is not None and bath.bath.liquor_of):
                met.add(event.lot)
        elif isinstance(event, e.Read) and event.colour and event.lot and not event.wet:
            lot = pace.after.lot(event.lot)
            if event.lot not in met:
                undyed[event.lot] = event.colour
            elif event.wet is False or (lot is not None and lot.place == OUT_DRY):
                dyed[event.lot] = event.colour
        elif isinstance(event, e.Cared) and event.colour and "dry" in event.what.casefold():
            dyed[event.lot] = event.colour
    return undyed, dyed


def _strength(undyed: str, dyed: str) -> tuple[float, float] | None:
    """Strength of the dye and the error of its log; None where either colour is missing or unreadable."""
    from dyesession.colour.shades import strength
    from dyesession.colour.typed import read_colour

    if not undyed or not dyed:
        return None
    try:
        ground, sample = read_colour(undyed), read_colour(dyed)
        if ground.viewing != sample.viewing:
            return None
        value = strength(ground.lab, sample.lab, sample.viewing)
        paler = sample.lab._replace(lightness=min(100.0, sample.lab.lightness + sample.plus_minus / Z_90))
        other = strength(ground.lab, paler, sample.viewing)
    except UserError:
        return None
    if value <= 0.0:
        return None
    return value, math.hypot(LEAST_ERROR, abs(math.log(max(other, 1e-6) / value)))
