"""A day run in a test, written to a real log as a dyer's program would have written it."""

from pathlib import Path
from typing import Any

from days import Day

from dyesession.kitchen import kitchen_for_log
from dyesession.kitchen.model import Kitchen
from dyesession.plan import plan_for_log
from dyesession.session import events as e
from dyesession.session import log
from dyesession.storage import DISK


def written(
    day: Day,
    folder: Path,
    name: str = "2026-03-14-a-day-k7q2",
    *,
    recipe: dict[str, Any] | None = None,
    kitchen: Kitchen | None = None,
    **more: Any,
) -> Path:
    """The day's log; `more` are further keys of its head, such as rehearsal=True."""
    header = {
        "opened": day.opened.at,
        "boot": day.opened.boot,
        "up_s": day.opened.up_s,
        "program": "dyesession 0.1.0",
        **more,
        "fibre": [{"name": one.name, "kind": one.kind, "mass_g": one.mass_g} for one in day.plan.lots],
        "recipe": recipe or {"name": day.plan.recipe},
        "kitchen": kitchen_for_log(kitchen or Kitchen()),
        "plan": plan_for_log(day.plan),
    }
    with_log = log.create_log(DISK, folder, name, header)
    try:
        for one in day.entries:
            with_log.append(one.event.kind, one.instant, e.event_fields(one.event), one.happened)
    finally:
        with_log.close()
    return folder / f"{name}.toml"
