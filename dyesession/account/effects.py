"""What a reading did to an estimate: the band before it and the band after it, of what it was a reading of.

Knows nothing of words. A ledger before and one after are handed in.
"""

from collections.abc import Callable
from typing import Protocol

from dyesession.account.course import Happening
from dyesession.account.holdings import Holdings
from dyesession.account.model import How, ReadingEffect
from dyesession.account.strengths import main_lot
from dyesession.account.worlds import Vector, band
from dyesession.session import events as e

Estimated = Callable[[Holdings], Vector]
HOWS: dict[str, How] = {"matched": "matched", "weighed": "weighed", "typed": "typed"}


class Reckoned(Protocol):
    """A ledger, as far as this file looks at one."""

    @property
    def held(self) -> Holdings:
        """Who holds what, in every world."""
        ...

    @property
    def weights(self) -> Vector:
        """What each world weighs."""
        ...


def effect_of(before: Reckoned, after: Reckoned, happening: Happening) -> ReadingEffect | None:
    """What this happening did, when it was a reading the account can use; else None."""
    if happening.odd:
        return None
    event = happening.entry.event
    about = _about(before.held, event)
    if about is None:
        return None
    what, unit, estimated = about
    return ReadingEffect(
        n=happening.entry.n,
        second=happening.second,
        what=what,
        unit=unit,
        before=band(estimated(before.held), before.weights),
        after=band(estimated(after.held), after.weights),
        how=HOWS.get(str(getattr(event, "how", "weighed")), "read"),
    )


def _about(held: Holdings, event: e.Event) -> tuple[str, str, Estimated] | None:
    if isinstance(event, e.Read) and event.vessel in held.baths:
        vessel = event.vessel
        lot = main_lot(held, vessel)
        if event.strength is not None and lot:
            return f"the {lot} in the {vessel}", "g", lambda now: now.bath(vessel).pool.grams(lot)
        if event.volume_l is not None:
            return f"the {vessel}", "L", lambda now: now.bath(vessel).pool.volume_l
    return None
