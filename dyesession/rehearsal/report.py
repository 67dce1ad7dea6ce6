"""A rehearsal as another program reads it: the answer of `rehearse --json`. Plain tables, ISO times."""

from dataclasses import asdict
from datetime import datetime
from typing import Any

from dyesession.plan.model import PlannedDose
from dyesession.rehearsal.model import Rehearsed


def rehearsed_as_json(rehearsed: Rehearsed) -> dict[str, Any]:
    """Return the rehearsal as plain tables for JSON: grams, minutes from the start, ISO times."""
    plan = rehearsed.plan
    return {
        "recipe": plan.recipe,
        "session": rehearsed.session,
        "log": str(rehearsed.path) if rehearsed.path else None,
        "rehearsal": True,
        "started": _iso(rehearsed.started),
        "ended": _iso(rehearsed.ended),
        "fibre": {"mass_g": plan.fibre_mass_g, "lots": [asdict(one) for one in plan.lots]},
        "weighing": [_weighing(one) for one in plan.doses],
        "timeline": [_plain(asdict(one)) for one in rehearsed.timeline],
        "account": [_plain(asdict(one)) for one in rehearsed.account],
        "ledger": list(rehearsed.ledger),
        "reminders": [
            {"step": one.step, "texts": list(one.texts), "asks": one.asks} for one in rehearsed.care
        ],
        "reminder_count": rehearsed.reminder_count,
        "confirmation_count": len(rehearsed.questions),
        "asks": [_plain(asdict(one)) for one in rehearsed.questions],
        "calls": [_plain(asdict(one)) for one in rehearsed.calls],
        "alarms": [_plain(asdict(one)) for one in rehearsed.alarms],
        "most_calls_in_ten_min": rehearsed.most_calls_in_ten_min,
        "warnings": list(plan.warnings),
    }


def _weighing(dose: PlannedDose) -> dict[str, Any]:
    return {
        "ingredient": dose.ingredient,
        "substance": dose.substance,
        "mass_g": asdict(dose.mass_g),
        "how": dose.weigh.how,
        "say": dose.weigh.say,
    }


def _iso(moment: datetime) -> str:
    return moment.isoformat(timespec="milliseconds")


def _plain(row: dict[str, Any]) -> dict[str, Any]:
    return {key: _iso(value) if isinstance(value, datetime) else value for key, value in row.items()}
