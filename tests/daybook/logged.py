"""A day run in a test, as its log would tell it."""

from typing import Any

from days import Day

from dyesession.session.opening import LoggedDay


def logged(day: Day, header: dict[str, Any] | None = None) -> LoggedDay:
    """The day as its log would tell it."""
    return LoggedDay(
        name="2026-03-14-a-day-k7q2",
        path="logs/2026-03-14-a-day-k7q2.toml",
        recipe=day.plan.recipe,
        rehearsal=False,
        plan=day.plan,
        opened=day.opened,
        entries=day.entries,
        header=header or {},
        program="dyesession 0.1.0",
    )
