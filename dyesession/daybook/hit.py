"""Did I hit the colour? All of the answer in one: the difference, the depth series, what would mend it, an overdye.

Pure; calls the colour room and computes nothing of its own. Knows no files: shades and prices are handed in.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from dyesession.colour.depth import NOT_FITTED, Exponent, Predicted, series
from dyesession.colour.difference import Difference, difference
from dyesession.colour.mend import Advice, Cost, Dose, Lot, mend
from dyesession.colour.overdye import OverdyePlan, plan_further_dip, plan_overdye
from dyesession.colour.readings import Reading
from dyesession.colour.targets import Target
from dyesession.colour.typed import read_colour
from dyesession.daybook.shade_card import Shade
from dyesession.errors import UserError
from dyesession.kitchen.model import Jar
from dyesession.substances import find

UNDYED = "lab(86 0 11)"  # natural wool, scoured: common practice, no source
ASSUMED = f"Reckoned on undyed natural wool, {UNDYED}; give your own to be surer."
FURTHER_DIP = "a further dip"
_PERCENT = 100.0
_WHOLE_FROM_G = 10.0


@dataclass(frozen=True)
class Second:
    """A dye that might go over the skein: its name, its own sample, and the sample's dose where it is known."""

    name: str
    sample: Reading
    dose: Dose | None = None
    key: str = ""


@dataclass(frozen=True)
class Overdye:
    """One dye over the skein: whose, the plan, and grams for the lot (middle, low, high) where they are known."""

    second: Second
    plan: OverdyePlan
    grams: tuple[float, float, float] | None = None


@dataclass(frozen=True)
class Hit:
    """The whole answer. `advice` is empty where no lot is known; `trouble` says why there is no depth series."""

    found: Difference
    series: tuple[Predicted, ...]
    exponent: Exponent
    trouble: str
    advice: tuple[Advice, ...]
    notes: tuple[str, ...]


def ground_of(undyed: Reading | None, like: Reading) -> tuple[Reading, tuple[str, ...]]:
    """The undyed fibre, and what to say where it had to be assumed."""
    if undyed is not None:
        return undyed, ()
    return replace(read_colour(UNDYED), viewing=like.viewing), (ASSUMED,)


def hit(
    target: Target,
    sample: Reading,
    undyed: Reading | None = None,
    lot: Lot | None = None,
    second: Second | None = None,
) -> Hit:
    """Compare, and say what would mend it. Raises `Unlike` for wet readings or those of other lights."""
    ground, notes = ground_of(undyed, sample)
    found = difference(sample, target, ground)
    shades, trouble = _series(ground, sample)
    advice: tuple[Advice, ...] = ()
    if lot is not None:
        with_second = replace(lot, second=second.dose) if second is not None else lot
        plan = plan_overdye(ground, sample, second.sample, target) if second is not None else None
        advice = mend(found, with_second, plan)
    return Hit(found, shades, lot.exponent if lot else NOT_FITTED, trouble, advice, (*found.notes, *notes))


def _series(undyed: Reading, sample: Reading) -> tuple[tuple[Predicted, ...], str]:
    try:
        return series(undyed, sample), ""
    except UserError as trouble:
        return (), str(trouble)


def seconds_of(shades: Iterable[Shade], sample: Reading, own: str = "") -> tuple[Second, ...]:
    """The dyer's own samples that can stand for a second dye: dry, of one dye, read as the sample was.

    `own` is the skein's own dyestuff: more of that is a further dip.
    """
    return tuple(
        Second(f"{one.dyes[0].dyestuff} ({one.recipe}, {one.day})", one.reading, one.dyes[0], one.key)
        for one in shades
        if len(one.dyes) == 1
        and one.dyes[0].dyestuff != own
        and not one.reading.wet
        and one.reading.viewing == sample.viewing
    )


def overdyes(
    undyed: Reading | None, skein: Reading, target: Target, seconds: Sequence[Second], lot: Lot | None = None
) -> tuple[Overdye, ...]:
    """A further dip and every second dye, the one expected to miss by least first; what cannot be told is left out."""
    ground, _ = ground_of(undyed, skein)
    dip = Second(FURTHER_DIP, skein, lot.dye if lot is not None else None)
    found = [Overdye(dip, plan_further_dip(ground, skein, target), None)]
    for one in seconds:
        try:
            found.append(Overdye(one, plan_overdye(ground, skein, one.sample, target)))
        except UserError:
            continue  # a sample the theory does not reach
    with_grams = (replace(one, grams=_grams(one, lot)) for one in found)
    return tuple(sorted(with_grams, key=lambda one: (not one.plan.reachable, one.plan.expected)))


def _grams(one: Overdye, lot: Lot | None) -> tuple[float, float, float] | None:
    if lot is None or one.second.dose is None or not one.plan.amount:
        return None
    full_g = lot.fibre_g * one.second.dose.percent / _PERCENT
    return full_g * one.plan.amount, full_g * one.plan.amount_low, full_g * one.plan.amount_high


def prices_of(jars: Iterable[Jar], names: Iterable[str]) -> Mapping[str, float]:
    """The jars' prices per 100 g by the names a lot uses for them; two names of one substance are the same."""
    known = {_key(one.substance): one.price_per_100_g for one in jars if one.price_per_100_g is not None}
    found = {name: known.get(_key(name)) for name in names}
    return {name: price for name, price in found.items() if price is not None}


def _key(name: str) -> str:
    known = find(name)
    return known.key if known is not None else name.casefold()


def cost_words(cost: Cost) -> str:
    """A cost as one phrase: "madder root 36 g (20 to 60 g), 1.44"; without a price no money is."""
    if cost.high_g <= 0.0:
        return f"{cost.substance}: nothing more"
    money = f", costs {cost.money:.2f}" if cost.money is not None else ""
    return f"{cost.substance} about {grams_of(cost.mass_g)} g ({grams_of(cost.low_g)} to {grams_of(cost.high_g)} g){money}"


def grams_of(value: float) -> str:
    """Grams no finer than an estimate is: a tenth below ten."""
    return f"{value:.0f}" if value >= _WHOLE_FROM_G else f"{value:.1f}"
