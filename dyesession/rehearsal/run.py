"""Run a whole day through the real session, its real log and its real account, on a clock that steps.

The log is marked as a rehearsal, so that it never counts as a day that was dyed.
"""

import tempfile
from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

from dyesession.account.live import reckoner_for
from dyesession.clock import SteppingClock
from dyesession.kitchen.model import Kitchen
from dyesession.plan import work_out
from dyesession.plan.doses import Depth
from dyesession.plan.model import FibreLot, Plan
from dyesession.recipe.model import Recipe
from dyesession.rehearsal.gather import gathered
from dyesession.rehearsal.model import Rehearsed
from dyesession.rehearsal.under_way import DayUnderWay, Passes, RehearsalError
from dyesession.session.opening import begin_day
from dyesession.storage import Storage

__all__ = ["RehearsalError", "rehearse"]


def rehearse(
    recipe: Recipe,
    lots: Sequence[FibreLot],
    kitchen: Kitchen,
    into: Path | None,
    *,
    storage: Storage,
    start: datetime,
    depth: Depth = "aim",
) -> Rehearsed:
    """Rehearse a day from `start` (a time with an offset). `into` keeps its log there; None keeps nothing.

    Raises what `plan.work_out` and the log raise, and `RehearsalError` when the day does not end.
    """
    plan = work_out(recipe, lots, kitchen, depth=depth)
    if into is not None:
        return _rehearsed(recipe, plan, kitchen, into, storage, start, keep=True)
    with tempfile.TemporaryDirectory(prefix="dyesession-") as folder:
        return _rehearsed(recipe, plan, kitchen, Path(folder), storage, start, keep=False)


def _rehearsed(
    recipe: Recipe,
    plan: Plan,
    kitchen: Kitchen,
    folder: Path,
    storage: Storage,
    start: datetime,
    *,
    keep: bool,
) -> Rehearsed:
    clock = SteppingClock(start)
    session = begin_day(storage, folder, recipe, plan, kitchen, clock, reckoner_for, rehearsal=True)
    try:
        run = DayUnderWay(session, kitchen)
        for move in run.moves():
            if isinstance(move, Passes):
                clock.advance(move.seconds)
        return gathered(session.snapshot, start, keep, run.shown, run.questions, run.calls, run.cared, run.private)
    finally:
        session.close()
