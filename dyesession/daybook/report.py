"""A review as another program reads it: the answer of `review --json`. Plain tables, times as ISO 8601."""

from dataclasses import asdict
from datetime import datetime
from typing import Any

from dyesession.daybook.model import DoseReview, Review


def review_as_json(review: Review) -> dict[str, Any]:
    """Return the review as plain tables for JSON: grams, litres, minutes from the opening, ISO times."""
    tables = _plain(asdict(review))
    tables["doses"] = [_dose(one) for one in review.doses]
    assert isinstance(tables, dict)
    return tables


def _dose(dose: DoseReview) -> dict[str, Any]:
    return {
        "ingredient": dose.ingredient,
        "substance": dose.substance,
        "role": dose.role,
        "planned": {"mass_g": asdict(dose.planned_g) if dose.planned_g else None, "say": dose.weigh_say},
        "weighed": {"mass_g": dose.weighed_g, "added_g": dose.added_g, "how": dose.how},
        "off_percent": dose.off_percent,
    }


def _plain(value: Any) -> Any:
    """Times as text, tuples as lists, everything else as it is."""
    if isinstance(value, datetime):
        return value.isoformat(timespec="milliseconds")
    if isinstance(value, dict):
        return {str(key): _plain(one) for key, one in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(one) for one in value]
    return value
