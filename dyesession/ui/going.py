"""What means the same in every place: what rings is seen, the alarm is tried, help, on, and back. Knows no place."""

from __future__ import annotations

from typing import TYPE_CHECKING

from dyesession.ui import place_messages as p

if TYPE_CHECKING:
    from dyesession.ui.app import DyeApp


def go(app: DyeApp, act: p.PlaceAct, place: str) -> bool:
    """Do an act that is no place's own; says whether it was one."""
    match act:
        case p.Seen():
            app.seen()
        case p.TryAlarm():
            app.try_alarm()
        case p.PlaceHelp():
            from dyesession.ui.explained_places import help_of

            app.show_page(place, help_of(place), f"any key: back to {place}")
        case p.NextPlace():
            app.next_place(place)
        case p.LeavePlace():
            app.leave()
        case _:
            return False
    return True
