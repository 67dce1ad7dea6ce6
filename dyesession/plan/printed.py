"""The plan as plain lines for a terminal or a sheet of paper: what to weigh, then water, times, cautions.

Knows no screens. Every line fits 80 columns where its words allow.
"""

import textwrap
from collections.abc import Iterable

from dyesession.plan.model import Plan, PlannedBath, PlannedDose, TimetableRow
from dyesession.plan.sheet import NOT_ADVICE, poison_words
from dyesession.plan.words import clock, litres
from dyesession.units import show_mass

WIDTH = 80


def plan_lines(plan: Plan, poison_centre: str = "") -> list[str]:
    """The whole plan, line by line; below its cautions, whom to ring."""
    lines = [plan.recipe, ""]
    for lot in plan.lots:
        lines.append(f"  {lot.name}: {show_mass(lot.mass_g)} {lot.kind}")
    lines += _section("Questions", plan.questions)
    lines += _section("Mind", plan.warnings)
    lines += ["", "To weigh"]
    for dose in plan.doses:
        lines += _dose(dose)
    lines += ["", "Water and pots"]
    for bath in plan.baths:
        lines += _bath(bath)
    lines += [
        "",
        f"Times (water boils here at about {plan.boiling_c:.0f} ± {plan.boiling_margin_c:.0f} °C)",
    ]
    lines += [_row(row) for row in plan.timetable]
    lines += ["", "Care"]
    lines += _care(plan)
    lines += ["", poison_words(poison_centre)]
    lines += _wrapped(NOT_ADVICE, "")
    return lines


def _section(heading: str, sentences: Iterable[str]) -> list[str]:
    said = [line for one in sentences for line in _wrapped(one, "  ")]
    return ["", heading, *said] if said else []


def _wrapped(text: str, indent: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=indent, subsequent_indent=indent)


def _dose(dose: PlannedDose) -> list[str]:
    share = ""
    if dose.percent_wof is not None:
        share = f"{dose.percent_wof.aim:.3g} % WOF, "
        if dose.percent_wof.low != dose.percent_wof.high:
            share += f"{dose.percent_wof.low:.3g} to {dose.percent_wof.high:.3g} %, "
    head = f"  {dose.ingredient} ({dose.substance}): {share}{show_mass(dose.mass_g.aim)}"
    return [head, *_wrapped(dose.weigh.say, "    ")]


def _bath(bath: PlannedBath) -> list[str]:
    pot = f" in {bath.pot}" if bath.pot else ""
    head = f"  {bath.step}: {litres(bath.water_l)} in the {bath.vessel}{pot}, 1:{bath.ratio_l_per_kg:.0f}"
    return [head, *_wrapped(bath.say, "    ")]


def _row(row: TimetableRow) -> str:
    mark = "*" if row.critical else " "
    where = f", {row.vessel}" if row.vessel else ""
    return (
        f"  {mark} {clock(row.start_min):>7} to {clock(row.end_min):>7}  {row.lane:<6}  {row.step}{where}"
    )


def _care(plan: Plan) -> list[str]:
    lines: list[str] = []
    said: set[str] = set()
    for one in plan.reminders:
        if one.text not in said:
            said.add(one.text)
            lines += _wrapped(f"{one.step}: {one.text}", "  ")
    return lines
