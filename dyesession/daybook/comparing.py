"""Two days side by side: what was other, ranked by how much it matters for the colour. Pure.

How much it matters is told in depth: the natural logarithm of the factor that the starting guesses of
`dyeing.priors` give, or a weight of our own where there is none (each says so). It ranks; it promises nothing.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from dyesession.colour.ciede2000 import de00
from dyesession.colour.readings import check_alike, plus_minus_between
from dyesession.colour.typed import read_colour
from dyesession.daybook.called_out import SHIFTING
from dyesession.daybook.day_facts import DayFacts, Dosed, day_facts
from dyesession.dyeing.exhaustion import exhausted_share
from dyesession.dyeing.priors import KEPT_SHARE, STANDARD_LIQUOR_RATIO, UPTAKE_RATE, partition_prior
from dyesession.errors import UserError
from dyesession.session.opening import LoggedDay
from dyesession.substances import find
from dyesession.units import show_duration, show_percent, show_temperature

OWN = "own weight, no source"
# Weights of our own, in natural logarithms of depth: they order the list, and are never shown as a figure.
DYE_MISSING, MODIFIER_MISSING, MORDANT_MISSING, OTHER_MISSING = 3.0, 2.5, 2.0, 0.3
MODIFIER_PER_LOG, MORDANT_PER_LOG, OTHER_PER_LOG = 1.0, 0.3, 0.05
BATH_DRAWN, METAL_POT, PER_PH, PER_MG_L, PER_C, EXTRACT_PER_LOG, MORDANT_TIME_PER_LOG = (
    1.0, 1.5, 0.4, 0.0005, 0.02, 0.2, 0.1,
)  # fmt: skip
LEAST = 0.01  # a difference that matters less is no difference
NEAR_MIN = 5.0  # minutes apart that are no difference at a stove; our own choice, no source


@dataclass(frozen=True)
class Row:
    """One thing that was other: what, on the one day and on the other, how it bears on the colour.

    `weight` orders the rows; `factor` is the second day's depth over the first's where a guess gives one.
    """

    what: str
    one: str
    other: str
    weight: float
    effect: str = ""
    factor: float | None = None
    source: str = OWN


@dataclass(frozen=True)
class CameOut:
    """A lot's dry colour on both days, and how far apart (CIEDE2000, ±), None where it cannot be told."""

    lot: str
    one: str
    other: str
    apart: float | None = None
    plus_minus: float | None = None


@dataclass(frozen=True)
class Comparison:
    """Both days: how they came out, what was other (what matters most first), what was the same."""

    one: DayFacts
    other: DayFacts
    came_out: tuple[CameOut, ...]
    rows: tuple[Row, ...]
    same: tuple[str, ...]


def compare(one: LoggedDay, other: LoggedDay) -> Comparison:
    """Put two days side by side."""
    first, second = day_facts(one), day_facts(other)
    rows = list(_rows(first, second))
    told = sorted((row for row in rows if row.weight >= LEAST), key=lambda row: -row.weight)
    same = tuple(f"{row.what} {row.one}" for row in rows if row.weight < LEAST)
    return Comparison(first, second, tuple(_came_out(first, second)), tuple(told), same)


def _came_out(one: DayFacts, other: DayFacts) -> Iterator[CameOut]:
    """Lots of one name beside each other; where no name is the same, the first of each day."""
    shared = [lot for lot in one.colours if lot in other.colours]
    for lot in shared:
        yield CameOut(lot, one.colours[lot], other.colours[lot], *_apart(one.colours[lot], other.colours[lot]))
    if not shared and (one.colours or other.colours):
        lots = [next(iter(day.colours), "") for day in (one, other)]
        here, there = (day.colours.get(lot, "") for day, lot in zip((one, other), lots, strict=True))
        apart = _apart(here, there) if here and there else (None, None)
        yield CameOut(" beside ".join(lot for lot in lots if lot), here, there, *apart)


def _apart(first: str, second: str) -> tuple[float | None, float | None]:
    try:
        sample, standard = read_colour(second), read_colour(first)
        check_alike(sample, standard)
    except UserError:
        return None, None
    return de00(standard.lab, sample.lab), plus_minus_between(standard, sample)


def _rows(one: DayFacts, other: DayFacts) -> Iterator[Row]:
    yield from _fibre(one, other)
    yield from _doses(one, other)
    yield from _strengths(one, other)
    yield from _extractions(one, other)
    yield from _dyeing(one, other)
    yield from _rest(one, other)


def _fibre(one: DayFacts, other: DayFacts) -> Iterator[Row]:
    if one.fibre == other.fibre:
        yield Row("fibre", one.fibre, other.fibre, 0.0)
        return
    factor = _taken(other, STANDARD_LIQUOR_RATIO) / _taken(one, STANDARD_LIQUOR_RATIO)
    weight = max(abs(math.log(factor)), OTHER_MISSING)
    source = "starting guesses of the share taken"
    yield Row("fibre", one.fibre, other.fibre, weight, _depth(factor), factor, source)


def _taken(day: DayFacts, ratio: float) -> float:
    """Share of the bath's colour that this fibre takes, by the starting guess."""
    dye = next((one.substance for one in day.dosed.values() if one.role == "dyestuff"), "")
    try:
        return exhausted_share(partition_prior(day.fibre.split(" and ")[0], dye).centre, ratio)
    except (UserError, KeyError, ValueError):
        return exhausted_share(partition_prior("wool", dye).centre, ratio)


def _depth(factor: float) -> str:
    return f"about {factor:.2g} times the depth"


_MISSING = {"dyestuff": DYE_MISSING, "modifier": MODIFIER_MISSING, "mordant": MORDANT_MISSING,
            "tannin": MORDANT_MISSING}  # fmt: skip
_PER_LOG = {"dyestuff": 1.0, "modifier": MODIFIER_PER_LOG, "mordant": MORDANT_PER_LOG,
            "tannin": MORDANT_PER_LOG}  # fmt: skip
_BEARS = {"dyestuff": "another colour", "modifier": "a modifier shifts the shade", "mordant": "hue and fastness",
          "tannin": "hue and depth"}  # fmt: skip


def _doses(one: DayFacts, other: DayFacts) -> Iterator[Row]:
    for name in dict.fromkeys((*one.dosed, *other.dosed)):
        first, second = one.dosed.get(name), other.dosed.get(name)
        if first is not None and second is not None and min(first.percent, second.percent) > 0:
            yield _dose(first, second)
        elif (known := first or second) is not None:
            yield _only_one(known, (first, second), (one, other))


def _only_one(known: Dosed, dosed: tuple[Dosed | None, ...], days: tuple[DayFacts, ...]) -> Row:
    """One day weighed it out; the other had none of it, or brought it along: in a kept bath, or on the fibre."""
    brought = next((_brought(known, day) for dose, day in zip(dosed, days, strict=True) if dose is None), "")
    here, there = (show_percent(dose.percent) if dose else brought or "none" for dose in dosed)
    if brought:
        effect = "as much as the bath still held" if known.role == "dyestuff" else "weighed on another day"
        return Row(known.substance, here, there, BATH_DRAWN, effect)
    return Row(known.substance, here, there, _MISSING.get(known.role, OTHER_MISSING), _BEARS.get(known.role, ""))


def _brought(known: Dosed, day: DayFacts) -> str:
    meant = find(known.substance)
    if known.role == "dyestuff" and meant is not None and meant.key in day.dyes_drawn:
        return "in the kept bath"
    return f"before: {day.came_mordanted}" if known.role == "mordant" and day.came_mordanted else ""


def _dose(first: Dosed, second: Dosed) -> Row:
    role, factor = first.role, second.percent / first.percent
    here, there = show_percent(first.percent), show_percent(second.percent)
    weight = _PER_LOG.get(role, OTHER_PER_LOG) * abs(math.log(factor))
    if role == "dyestuff":
        source = "depth follows dose (`colour.depth`)"
        return Row(first.substance, here, there, weight, _depth(factor), factor, source)
    return Row(first.substance, here, there, weight, _BEARS.get(role, ""))


def _strengths(one: DayFacts, other: DayFacts) -> Iterator[Row]:
    for name in one.strengths.keys() & other.strengths.keys():
        factor = other.strengths[name] / one.strengths[name]
        texts = f"{one.strengths[name]:.2f}", f"{other.strengths[name]:.2f}"
        yield Row(f"strength of the jar of {name}", *texts, abs(math.log(factor)), _depth(factor), factor, "jars")


def _extractions(one: DayFacts, other: DayFacts) -> Iterator[Row]:
    poured = any(day.dyes_drawn and not day.extractions for day in (one, other))
    if (one.extractions or other.extractions) and not poured:
        texts = str(one.extractions), str(other.extractions)
        given = [1.0 - KEPT_SHARE.centre**day.extractions for day in (one, other)]
        if min(given) <= 0:
            yield Row("extractions", *texts, MORDANT_MISSING)
        else:
            factor = given[1] / given[0]
            yield Row("extractions", *texts, abs(math.log(factor)), _depth(factor), factor, KEPT_SHARE.source)
    yield from _minutes("extracted for", one.extract_min, other.extract_min, EXTRACT_PER_LOG)
    yield from _degrees("extracted at", one.extract_c, other.extract_c)


def _dyeing(one: DayFacts, other: DayFacts) -> Iterator[Row]:
    if one.dye_min and other.dye_min:
        given = [1.0 - math.exp(-UPTAKE_RATE.centre * day) for day in (one.dye_min, other.dye_min)]
        factor = given[1] / given[0]
        texts = show_duration(round(one.dye_min)), show_duration(round(other.dye_min))
        near = abs(one.dye_min - other.dye_min) < NEAR_MIN
        weight = 0.0 if near else max(abs(math.log(factor)), LEAST)
        yield Row("dyed for", *texts, weight, _depth(factor), factor, UPTAKE_RATE.source)
    yield from _degrees("dyed at", one.dye_c, other.dye_c)
    if one.liquor_ratio and other.liquor_ratio:
        texts = f"{one.liquor_ratio:.0f} L/kg", f"{other.liquor_ratio:.0f} L/kg"
        factor = _taken(one, other.liquor_ratio) / _taken(one, one.liquor_ratio)
        source = "starting guesses of the share taken"
        yield Row("liquor ratio", *texts, abs(math.log(factor)), _depth(factor), factor, source)
    yield from _minutes("mordanted for", one.mordant_min, other.mordant_min, MORDANT_TIME_PER_LOG)


def _rest(one: DayFacts, other: DayFacts) -> Iterator[Row]:
    if one.drawn or other.drawn:
        texts = ", ".join(one.drawn) or "none", ", ".join(other.drawn) or "none"
        yield Row("kept bath poured in", *texts, BATH_DRAWN if one.drawn != other.drawn else 0.0, "its colour")
    if one.dye_pot_of and other.dye_pot_of:
        metal = any(m in (one.dye_pot_of, other.dye_pot_of) for m in SHIFTING)
        apart = one.dye_pot_of != other.dye_pot_of
        weight = (METAL_POT if metal else LEAST) if apart else 0.0
        effect = "bare metal shifts shades" if metal and apart else ""
        yield Row("dye pot of", one.dye_pot_of, other.dye_pot_of, weight, effect)
    if one.dye_ph is not None and other.dye_ph is not None:
        weight = PER_PH * abs(one.dye_ph - other.dye_ph)
        yield Row("pH of the dye bath", f"{one.dye_ph:g}", f"{other.dye_ph:g}", weight, "shifts the shade")
    if one.hardness_mg_l is not None and other.hardness_mg_l is not None:
        weight = PER_MG_L * abs(one.hardness_mg_l - other.hardness_mg_l)
        texts = f"{one.hardness_mg_l:.0f} mg/L", f"{other.hardness_mg_l:.0f} mg/L"
        yield Row("hardness of the water", *texts, weight, "lime shifts some shades")


def _minutes(what: str, one: float | None, other: float | None, per_log: float) -> Iterator[Row]:
    if one and other:
        texts = show_duration(round(one)), show_duration(round(other))
        near = abs(one - other) < NEAR_MIN
        yield Row(what, *texts, 0.0 if near else max(LEAST, per_log * abs(math.log(other / one))))


def _degrees(what: str, one: float | None, other: float | None) -> Iterator[Row]:
    if one is not None and other is not None:
        texts = show_temperature(round(one)), show_temperature(round(other))
        yield Row(what, *texts, PER_C * abs(other - one) if abs(other - one) >= 1.0 else 0.0)
