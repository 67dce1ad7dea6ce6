"""A plan as another program reads it: the answer of `work-out --json`. Knows no command line and no files."""

from dataclasses import asdict
from typing import Any

from dyesession.plan.model import Plan, PlannedBath, PlannedDose
from dyesession.plan.timetable import end_min


def plan_as_json(plan: Plan) -> dict[str, Any]:
    """Return the plan as plain tables for JSON: grams, litres, minutes from the start."""
    return {
        "recipe": plan.recipe,
        "fibre": {"mass_g": plan.fibre_mass_g, "lots": [asdict(lot) for lot in plan.lots]},
        "boiling_c": plan.boiling_c,
        "boiling_margin_c": plan.boiling_margin_c,
        "doses": [_dose(dose) for dose in plan.doses],
        "baths": [_bath(bath) for bath in plan.baths],
        "vessels": [asdict(vessel) for vessel in plan.vessels],
        "steps": [asdict(step) for step in plan.steps],
        "timetable": [asdict(row) for row in plan.timetable],
        "end_min": end_min(plan.timetable),
        "reminders": [asdict(reminder) for reminder in plan.reminders],
        "warnings": list(plan.warnings),
        "questions": list(plan.questions),
    }


def _dose(dose: PlannedDose) -> dict[str, Any]:
    return asdict(dose)


def _bath(bath: PlannedBath) -> dict[str, Any]:
    return asdict(bath)
