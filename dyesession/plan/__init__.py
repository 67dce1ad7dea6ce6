"""The plan: recipe, lots and kitchen in; doses, water, pots and timetable out. Knows no files or screens."""

from dyesession.plan.document import plan_for_log, plan_from_document
from dyesession.plan.doses import Depth
from dyesession.plan.improvised import improvised
from dyesession.plan.lots import lot_from_text, lots_from_text
from dyesession.plan.model import (
    Band,
    FibreLot,
    Plan,
    PlannedAddition,
    PlannedBath,
    PlannedDose,
    PlannedReminder,
    PlannedStep,
    PlannedVessel,
    TimetableRow,
    Weigh,
)
from dyesession.plan.printed import plan_lines
from dyesession.plan.report import plan_as_json
from dyesession.plan.trouble import PlanError, Refused
from dyesession.plan.working import work_out

__all__ = [
    "Band",
    "Depth",
    "FibreLot",
    "Plan",
    "PlanError",
    "PlannedAddition",
    "PlannedBath",
    "PlannedDose",
    "PlannedReminder",
    "PlannedStep",
    "PlannedVessel",
    "Refused",
    "TimetableRow",
    "Weigh",
    "improvised",
    "lot_from_text",
    "lots_from_text",
    "plan_as_json",
    "plan_for_log",
    "plan_from_document",
    "plan_lines",
    "work_out",
]
