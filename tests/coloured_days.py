"""Closed days with colours read of them, in real logs: our own invented madder, at a dose of one's choice."""

from dataclasses import replace
from functools import cache
from pathlib import Path

from daybook.written import written
from days import Day, madder_plan

from dyesession.plan.model import Plan
from dyesession.session import events as e

FIBRE_G = 240.0


def plan_at(percent: float) -> Plan:
    """The madder plan at another dose of madder."""
    plan = madder_plan()
    grams = FIBRE_G * percent / 100.0
    steps = tuple(
        replace(step, add=tuple(replace(one, mass_g=grams) if one.ingredient == "madder" else one for one in step.add))
        for step in plan.steps
    )
    return replace(plan, steps=steps)


@cache
def _home(percent: float, undyed: str) -> Day:
    day = Day(plan_at(percent))
    if undyed:
        day.do(e.Read(lot="large skein", colour=undyed, wet=False))
    day.home()
    return day


def coloured_day(
    folder: Path, colour: str, percent: float = 50.0, name: str = "2026-03-14-a-day-k7q2", undyed: str = "", *more: e.Event
) -> Path:
    """A closed day whose large skein dried to this colour."""
    day = Day(plan_at(percent))
    day.__dict__.update(_home(percent, undyed).__dict__)
    if colour:
        day.do(e.Cared("dry shade", "large skein", colour=colour))
    for one in more:
        day.do(one)
    return written(day, folder, name)
