"""What a reading did to estimates: the band before it and the band after it, of what it was a reading of and
of whatever else it moved.

Knows nothing of words. A ledger before and one after are handed in.
"""

from collections.abc import Callable, Iterator
from typing import Protocol

from dyesession.account.course import Happening
from dyesession.account.holdings import Holdings
from dyesession.account.lines import how_of
from dyesession.account.model import Band90, ReadingEffect
from dyesession.account.strengths import sample_of
from dyesession.account.worlds import Vector, band, constant, mean
from dyesession.session import events as e

Estimated = Callable[[Holdings], Vector]
MOVED = 0.1  # of the half-width: what moved by less tells nobody anything; our own choice, no source
LEAST_G = 0.05


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


def effects_of(before: Reckoned, after: Reckoned, happening: Happening) -> tuple[ReadingEffect, ...]:
    """What this happening did to all it moved, when it was a reading the account can use; at least to what
    was read.
    """
    if happening.odd:
        return ()
    event, n = happening.entry.event, happening.entry.n
    found = [
        ReadingEffect(
            n,
            happening.second,
            what,
            unit,
            band(estimated(before.held), before.weights),
            band(estimated(after.held), after.weights),
            how_of(event),
        )
        for what, unit, estimated in _about(before.held, after.held, happening)
    ]
    moved = [one for one in found if _moved(one.before, one.after)]
    return tuple(moved or found[:1])


def _moved(was: Band90, now: Band90) -> bool:
    shift = max(abs(now.mean - was.mean), abs(now.half_width - was.half_width))
    return shift > MOVED * max(was.half_width, LEAST_G)


def _about(before: Holdings, after: Holdings, happening: Happening) -> Iterator[tuple[str, str, Estimated]]:
    event = happening.entry.event
    if isinstance(event, e.Lifted) and event.wet_mass_g is not None and event.lot in after.fibres:
        yield f"the liquor the {event.lot} carries", "L", _carried(event.lot)
    if not isinstance(event, e.Read) or not event.vessel:
        return
    if event.volume_l is not None and event.vessel in before.baths:
        yield f"the liquor in the {event.vessel}", "L", _litres(event.vessel)
    sample = sample_of(before, event.vessel, happening.before)
    if event.strength is not None and sample is not None:
        yield from _of_colour(after, event.vessel, sample.lot)


def _of_colour(after: Holdings, vessel: str, dye: str) -> Iterator[tuple[str, str, Estimated]]:
    """The colour in the pot read, in other pots, on fibre, and in the dyestuff."""
    for name in sorted(after.baths, key=lambda one: one != vessel):
        if mean(after.bath(name).pool.grams(dye)) > LEAST_G:
            yield f"the {dye} in the {name}", "g", _in_bath(name, dye)
    for name, fibre in after.fibres.items():
        if not fibre.snippet and mean(fibre.taken(dye)) > LEAST_G:
            yield f"the {dye} on the {name}", "g", _on_fibre(name, dye)
    yield f"what is left in the {dye}", "g", lambda now: now.stores[dye].colour_g


def _carried(lot: str) -> Estimated:
    return lambda now: now.fibres[lot].liquor.volume_l if lot in now.fibres else constant(0.0)


def _litres(vessel: str) -> Estimated:
    return lambda now: now.bath(vessel).pool.volume_l


def _in_bath(vessel: str, dye: str) -> Estimated:
    return lambda now: now.bath(vessel).pool.grams(dye)


def _on_fibre(name: str, dye: str) -> Estimated:
    return lambda now: now.fibres[name].taken(dye)
