"""Running the app in a terminal until it is left, and what is said as it goes. Knows no screen in particular."""

from __future__ import annotations

import gc
from typing import TYPE_CHECKING

from dyesession.ui.app import DyeApp
from dyesession.ui.terminal import guard_mouse_bytes

if TYPE_CHECKING:
    from dyesession.account import Account
    from dyesession.kitchen.model import Alarm
    from dyesession.session.session import Session
    from dyesession.ui.workroom import Workroom

# Python looks for circles of forgotten objects whenever 700 are new: several times while one screen is drawn, where
# there are hardly any. Fewer looks, so that none falls between a key and its answer; our own choice, no source.
NEW_OBJECTS = 20_000


def run_stove(session: Session[Account], alarm: Alarm | None = None) -> int:
    """Run the Stove until it is left; the exit code is 0 when it was left well. A fault of ours is raised.

    Whoever opened the session closes it.
    """
    return _run(DyeApp(session, alarm=alarm))


def run_bench(workroom: Workroom) -> int:
    """Run the app from the Bench until it is left; days opened on the way are let go of."""
    app = DyeApp(workroom=workroom)
    try:
        return _run(app)
    finally:
        app.close_day()


def _run(app: DyeApp) -> int:
    guard_mouse_bytes()
    gc.set_threshold(NEW_OBJECTS)
    app.run()
    if app.day is not None and not app.day.is_over:
        print(f"The clocks go on. To take the day up again: dyesession resume {app.session.snapshot.name}")
    if app.fault is not None:
        raise app.fault
    return app.return_code or 0
