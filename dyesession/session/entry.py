"""One line of the day, and the lines as the corrections among them leave them.

Pure; knows no file. A correction drops nothing: the corrected entry stands where it stood, as corrected.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime

from dyesession.clock import Instant
from dyesession.session import events as e
from dyesession.session.fit import misfit_of_figures


@dataclass(frozen=True)
class Entry:
    """One line of the day: its number, when it was recorded, when it happened (None: then), the fact.

    `trouble` says what the log reader found wrong with it (a seal that does not fit), "" when nothing.
    """

    n: int
    instant: Instant
    event: e.Event
    happened: datetime | None = None
    trouble: str = ""


def effective(entries: tuple[Entry, ...]) -> tuple[Entry, ...]:
    """The entries as the corrections among them leave them.

    The newest correction of an entry wins; one that was itself struck, or that names itself or a later entry,
    changes nothing.
    """
    latest: dict[int, e.Corrected] = {}
    for entry in reversed(entries):
        event = _as_corrected(entry, latest[entry.n]).event if entry.n in latest else entry.event
        if isinstance(event, e.Corrected) and event.entry < entry.n:
            latest.setdefault(event.entry, event)
    return tuple(_as_corrected(one, latest[one.n]) if one.n in latest else one for one in entries)


def _as_corrected(entry: Entry, correction: e.Corrected) -> Entry:
    if correction.strike:
        return replace(entry, event=e.Noted(f"struck: {correction.why}"))
    data = e.event_fields(entry.event)
    for change in correction.changes:
        if "key" in change and "value" in change:
            data[str(change["key"])] = change["value"]
    return replace(entry, event=e.event_from_fields(entry.event.kind, data))


def correction_misfit(entries: Iterable[Entry], event: e.Corrected) -> str | None:
    """Why a correction cannot be carried out on these entries, in one sentence, or None when it can."""
    entry = next((one for one in entries if one.n == event.entry), None)
    if entry is None:
        return f"there is no entry {event.entry}"
    if entry.event.kind in e.PROGRAM_KINDS | {"corrected", "unknown"}:
        return f"entry {entry.n} is the program's own or a correction: correct the entry that it was about"
    known = vars(entry.event)
    for change in event.changes:
        key = str(change.get("key", ""))
        if key not in known or isinstance(known[key], tuple):
            fields = ", ".join(known) or "nothing"
            return f'entry {entry.n} ({entry.event.kind}) has no "{key}" to set: it has {fields}'
        if isinstance(known[key], str) != isinstance(change.get("value"), str) and known[key] is not None:
            wanted = "words were" if isinstance(known[key], str) else "a figure was"
            return f'"{change.get("value")}" cannot be the {key} of entry {entry.n}: {wanted} expected'
    return misfit_of_figures(_as_corrected(entry, event).event)
