"""What can happen at the stove, one frozen fact a class; `kind` is its name in the log.

Facts only: what was done, read, weighed or said. Knows nothing of files, clocks or estimates.
A field that is None is left out of the log. Units stand in the names; volumes in litres, masses in grams.
`how` is one of *weighed, read, matched, typed, planned, modelled, learned*.
The facts themselves stand in `events_day`, `events_pots` and `events_program`.
"""

from collections.abc import Mapping
from dataclasses import fields
from typing import Any

from dyesession.session.events_day import (
    Aborted,
    Acknowledged,
    Begun,
    Cared,
    Cleared,
    Closed,
    Confirmed,
    Corrected,
    Extended,
    Finished,
    Noted,
    OnShade,
    Paused,
    PutOff,
    Replanned,
    Resumed,
    Skipped,
    Stopped,
)
from dyesession.session.events_pots import (
    Added,
    Dipped,
    Discarded,
    Dissolved,
    Drawn,
    Entered,
    Filled,
    Kept,
    Lifted,
    Lit,
    Pooled,
    Reached,
    Read,
    Refreshed,
    Soaked,
    Strained,
    ToppedUp,
    Weighed,
)
from dyesession.session.events_program import (
    Accounted,
    AlarmRaised,
    ClockChanged,
    Recovered,
    ResumedAfterGap,
    Unknown,
)

__all__ = [
    "KINDS",
    "PROGRAM_KINDS",
    "Aborted",
    "Accounted",
    "Acknowledged",
    "Added",
    "AlarmRaised",
    "Begun",
    "Cared",
    "Cleared",
    "ClockChanged",
    "Closed",
    "Confirmed",
    "Corrected",
    "Dipped",
    "Discarded",
    "Dissolved",
    "Drawn",
    "Entered",
    "Event",
    "Extended",
    "Filled",
    "Finished",
    "Kept",
    "Lifted",
    "Lit",
    "Noted",
    "OnShade",
    "Paused",
    "Pooled",
    "PutOff",
    "Reached",
    "Read",
    "Recovered",
    "Refreshed",
    "Replanned",
    "Resumed",
    "ResumedAfterGap",
    "Skipped",
    "Soaked",
    "Stopped",
    "Strained",
    "ToppedUp",
    "Unknown",
    "Weighed",
    "event_fields",
    "event_from_fields",
]

Event = (
    Begun | Confirmed | PutOff | Weighed | Soaked | Dissolved | Filled | Added | Lit | Reached | Read
    | Paused | Resumed | Extended | Strained | Refreshed | Pooled | ToppedUp | Entered | Lifted | Dipped
    | OnShade | Finished | Skipped | Kept | Drawn | Discarded | Replanned | Noted | Corrected
    | Acknowledged | Stopped | Aborted | Cleared | Closed | Cared
    | Accounted | ResumedAfterGap | ClockChanged | Recovered | AlarmRaised | Unknown
)  # fmt: skip

KINDS: dict[str, type[Any]] = {one.kind: one for one in Event.__args__ if one is not Unknown}
_KEYS = {kind: tuple(one.name for one in fields(made)) for kind, made in KINDS.items()}
PROGRAM_KINDS = frozenset({"account", "resumed-after-gap", "clock-changed", "recovered", "alarm-raised"})


def event_fields(event: Event) -> dict[str, Any]:
    """The event as plain log fields, those that are None or empty left out."""
    if isinstance(event, Unknown):
        return dict(event.data)
    values = {name: getattr(event, name) for name in _KEYS[event.kind]}
    return {
        name: list(value) if isinstance(value, tuple) else value
        for name, value in values.items()
        if value is not None and value != () and value != ""
    }


def event_from_fields(kind: str, data: Mapping[str, Any]) -> Event:
    """The event a log entry holds; `Unknown` where this program does not know the kind or its keys."""
    made = KINDS.get(kind)
    if made is None:
        return Unknown(kind, tuple(data.items()))
    known = _KEYS[kind]
    try:
        event: Event = made(
            **{k: tuple(v) if isinstance(v, list) else v for k, v in data.items() if k in known}
        )
    except TypeError:
        return Unknown(kind, tuple(data.items()))
    return event
