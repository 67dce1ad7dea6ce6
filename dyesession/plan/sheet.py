"""What a weighing list on paper holds, as plain data; and the list as text to be printed or pinned to a shelf.

Pure strings: whoever asked for the list writes it down. The same sheet is drawn as a page in `sheet_html`.
"""

import textwrap
from collections.abc import Iterable
from dataclasses import dataclass

from dyesession.kitchen.model import Kitchen
from dyesession.plan.model import Plan, PlannedBath, PlannedDose
from dyesession.plan.shopping import Shopping, in_words, price_text, shopping
from dyesession.plan.timetable import end_min
from dyesession.plan.words import clock, litres
from dyesession.units import show_mass, show_percent, show_range

WIDTH = 72
BOX = "[ ]"
NOT_ADVICE = (
    "The label and the safety data sheet of your own product, your local codes and a licensed practitioner outrank "
    "this sheet. After an accident, ring your poison centre or the emergency number first."
)


@dataclass(frozen=True)
class Sheet:
    """A plan ready to be written on paper; `made` is the day it was printed, `poison_centre` a number or ""."""

    plan: Plan
    shopping: Shopping
    made: str
    poison_centre: str = ""


def sheet_of(plan: Plan, kitchen: Kitchen, made: str) -> Sheet:
    """The sheet of a plan made in a kitchen."""
    return Sheet(plan, shopping(plan, kitchen.jars), made, kitchen.poison_centre)


def fibre_words(plan: Plan) -> tuple[str, ...]:
    """The lots, a line each."""
    lines = []
    for lot in plan.lots:
        name = f"{lot.name}: " if lot.name != lot.kind else ""
        state = "washed and air-dry" if lot.air_dry else "washed and air-dry?"
        ready = f", mordanted already ({lot.mordanted})" if lot.mordanted else ""
        lines.append(f"{name}{show_mass(lot.mass_g)} {lot.kind}, {state}{ready}")
    return tuple(lines)


def dose_words(dose: PlannedDose) -> str:
    """A dose and what it is a share of: "28.8 g, 12 % WOF (8 to 15 %)"."""
    if dose.percent_wof is None:
        return show_mass(dose.mass_g.aim)
    band = dose.percent_wof
    ends = f" ({show_range(band.low, band.high, show_percent)})" if band.low != band.high else ""
    return f"{show_mass(dose.mass_g.aim)}, {show_percent(band.aim)} WOF{ends}"


def bath_words(bath: PlannedBath) -> str:
    """A bath: "7.2 L in the mordant pot (big pot), 1:30"."""
    pot = f" ({bath.pot})" if bath.pot and bath.pot != bath.vessel else ""
    return f"{litres(bath.water_l)} in the {bath.vessel}{pot}, 1:{bath.ratio_l_per_kg:.0f}"


def to_mind(plan: Plan) -> tuple[str, ...]:
    """The warnings that are not said beside a bath already."""
    beside = {f"{one.step}: {one.say}." for one in plan.baths if one.say}
    return tuple(one for one in plan.warnings if one not in beside)


def named(ingredient: str, substance: str) -> str:
    """An ingredient with its substance, where that is another word."""
    return ingredient if ingredient.casefold() == substance.casefold() else f"{ingredient} ({substance})"


def poison_words(number: str) -> str:
    """Whom to ring, on every sheet with cautions; a line to write on where the number is not known."""
    return f"Poison centre: {number or '________________'}"


def cautions(plan: Plan) -> tuple[str, ...]:
    """The reminders of the day, each once, with its step; none that tells who lives in the house."""
    said = {one.text: f"{one.step}: {one.text}" for one in reversed(plan.reminders) if not one.private}
    return tuple(reversed(said.values()))


def sheet_lines(sheet: Sheet) -> list[str]:
    """The sheet as plain lines: boxes to tick before what is to be weighed and poured."""
    plan = sheet.plan
    lines = [plan.recipe, f"weighing list, {sheet.made}", ""]
    lines += [f"  {one}" for one in fibre_words(plan)]
    lines += _headed("To answer first", plan.questions)
    lines += _headed("Mind", to_mind(plan))
    lines += ["", "To weigh"]
    for dose in plan.doses:
        lines.append(f"  {BOX} {named(dose.ingredient, dose.substance)}: {dose_words(dose)}")
        lines += _wrapped(dose.weigh.say, "        ")
    lines += ["", "Water and pots"]
    for bath in plan.baths:
        lines.append(f"  {BOX} {bath.step}: {bath_words(bath)}")
        lines += _wrapped(bath.say, "        ")
    lines += ["", f"The day: {clock(end_min(plan.timetable))} from the first filling to the last skein hung"]
    lines += [_row(one.start_min, one.end_min, one.critical, one.step, one.vessel) for one in plan.timetable]
    lines += ["", "From the jars"]
    lines += [f"  {one.ingredient}: {in_words(one)}" for one in sheet.shopping.items]
    if sheet.shopping.day_price is not None:
        lines.append(f"  the day uses up {price_text(sheet.shopping.day_price)} of what has a price")
    lines += _headed("Care", cautions(plan))
    lines += ["", poison_words(sheet.poison_centre)]
    return [*lines, "", *textwrap.wrap(NOT_ADVICE, WIDTH)]


def _headed(head: str, sentences: Iterable[str]) -> list[str]:
    said = [line for one in sentences for line in _wrapped(one, "  ")]
    return ["", head, *said] if said else []


def _wrapped(text: str, indent: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=indent, subsequent_indent=indent)


def _row(start_min: float, end_min_: float, critical: bool, step: str, vessel: str | None) -> str:
    mark = "*" if critical else " "
    where = f", {vessel}" if vessel else ""
    return f"  {mark} {clock(start_min):>7} to {clock(end_min_):>7}  {step}{where}"
