"""An act at the shelf written down: a log of its own, begun, told and closed at once.

A new file with a name of its own each time: two machines never write into one log, so that their folders can
be put together by copying. Knows how facts are saved and nothing of what they mean.
"""

from pathlib import Path
from typing import TYPE_CHECKING, Any

from dyesession.clock import Clock
from dyesession.kitchen.model import Kitchen
from dyesession.plan.model import Band, Plan, PlannedDose, PlannedVessel, Weigh
from dyesession.session import events as e
from dyesession.session.opening import begin_at_the_shelf
from dyesession.session.session import Session
from dyesession.shelf.acts import JAR, Adding, ShelfAct, ShelfRefused
from dyesession.storage import Storage

if TYPE_CHECKING:
    from dyesession.account import Account

BOILING_C, BOILING_MARGIN_C = 100.0, 5.0  # nothing is heated at the shelf; our own choice, no source


def write_act(storage: Storage, folder: Path, act: ShelfAct, kitchen: Kitchen, clock: Clock) -> Path:
    """Write an act into a new log of this folder; answers with the file. Raises what the log raises."""
    from dyesession.account.live import reckoner_for

    session = begin_at_the_shelf(storage, folder, plan_of(act), kitchen, clock, reckoner_for)
    try:
        for event in (*act.events, e.Closed()):
            done(session, event)
        return Path(session.snapshot.path)
    finally:
        session.close()


def done(session: "Session[Account]", event: e.Event) -> None:
    """Have one fact decided and saved. Raises `Refused`, or `ShelfRefused` where it could not be saved."""
    session.do(event).result()
    if session.snapshot.saving != "saved":
        raise ShelfRefused(f"Not saved: {session.snapshot.trouble}")


def plan_of(act: ShelfAct) -> Plan:
    """The plan of a log at the shelf: one jar, what goes into it, no fibre and no step."""
    return Plan(
        recipe=act.title,
        lots=(),
        fibre_mass_g=0.0,
        boiling_c=BOILING_C,
        boiling_margin_c=BOILING_MARGIN_C,
        doses=tuple(_dose(one) for one in act.adding),
        baths=(),
        vessels=(PlannedVessel(JAR, "A", JAR, None, ""),),
        steps=(),
        timetable=(),
    )


def _dose(one: Adding) -> PlannedDose:
    role: Any = one.role
    weigh = Weigh("scale", None, f"weigh {one.mass_g:g} g")
    return PlannedDose(one.ingredient, one.substance, role, None, Band(one.mass_g, one.mass_g, one.mass_g), weigh)
