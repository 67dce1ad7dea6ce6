"""What was said and asked beside the work: reminders, questions, alarms, corrections, notes. Pure."""

from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import Any

from dyesession.daybook.model import Asked, CorrectionReview, FlagReview, Noted, Rang, Told
from dyesession.daybook.walk import Pace
from dyesession.session import events as e
from dyesession.session.fold import Entry
from dyesession.session.state import State
from dyesession.session.words import happened_words


def reminders(paces: Iterable[Pace]) -> tuple[Told, ...]:
    """Every reminder as it was shown, with its step."""
    return tuple(
        Told(one.at, one.entry.event.step, text)
        for one in paces
        if isinstance(one.entry.event, e.Begun)
        for text in one.entry.event.reminders
    )


def asks(paces: Iterable[Pace]) -> tuple[Asked, ...]:
    """Every question that was answered or put off."""
    found = []
    for one in paces:
        event = one.entry.event
        if isinstance(event, e.Confirmed):
            found.append(
                Asked(one.entry.n, one.at, event.ask, event.vessel, event.answer, event.temperature_c)
            )
        elif isinstance(event, e.PutOff):
            found.append(Asked(one.entry.n, one.at, event.ask, event.vessel, "not now"))
    return tuple(found)


def alarms(paces: Sequence[Pace]) -> tuple[Rang, ...]:
    """Every alarm, and when it was acknowledged."""
    return tuple(
        Rang(
            one.entry.n,
            one.at,
            one.entry.event.countdown.rpartition("/")[0],
            one.entry.event.vessel,
            one.entry.event.over_s,
            _seen(one.entry.event.countdown, paces[index:]),
        )
        for index, one in enumerate(paces)
        if isinstance(one.entry.event, e.AlarmRaised)
    )


def _seen(countdown: str, later: Iterable[Pace]) -> datetime | None:
    for one in later:
        if isinstance(one.entry.event, e.Acknowledged) and one.entry.event.countdown == countdown:
            return one.at
    return None


def corrections(entries: Sequence[Entry], last: State) -> tuple[CorrectionReview, ...]:
    """Every correction with what stood there and what stands now; the newest of one entry counts."""
    by_n = {one.n: one for one in entries}
    newest = {one.event.entry: one.n for one in entries if isinstance(one.event, e.Corrected)}
    unfit = {one.n for one in last.flags}
    found = []
    for entry in entries:
        if isinstance(entry.event, e.Corrected):
            counts = newest[entry.event.entry] == entry.n and entry.n not in unfit
            found.append(_correction(entry, entry.event, by_n.get(entry.event.entry), counts))
    return tuple(found)


def _correction(entry: Entry, event: e.Corrected, old: Entry | None, counts: bool) -> CorrectionReview:
    stood = e.event_fields(old.event) if old is not None else {}
    set_now = {str(one["key"]): one["value"] for one in event.changes}
    was: dict[str, Any] = stood if event.strike else {key: stood.get(key) for key in set_now}
    return CorrectionReview(
        n=entry.n,
        at=entry.instant.at,
        entry=event.entry,
        entry_kind=old.event.kind if old is not None else "",
        was=was,
        now=None if event.strike else set_now,
        why=event.why,
        counts=counts,
    )


def notes(paces: Iterable[Pace]) -> tuple[Noted, ...]:
    """Every note in the dyer's words; struck entries have their own place."""
    return tuple(
        Noted(one.at, one.entry.event.text)
        for one in paces
        if isinstance(one.entry.event, e.Noted) and not one.entry.event.text.startswith("struck: ")
    )


def aftercare(paces: Iterable[Pace]) -> tuple[Noted, ...]:
    """Every piece of aftercare."""
    return tuple(_said(one) for one in paces if isinstance(one.entry.event, e.Cared))


def readings(paces: Iterable[Pace]) -> tuple[Noted, ...]:
    """Every reading."""
    return tuple(_said(one) for one in paces if isinstance(one.entry.event, e.Read))


def _said(pace: Pace) -> Noted:
    return Noted(pace.at, happened_words(pace.after, pace.entry.event))


def flags(entries: Iterable[Entry], last: State) -> tuple[FlagReview, ...]:
    """Entries that no longer fit, and entries the reader of the log found something wrong with."""
    unfit = [FlagReview(one.n, one.text) for one in last.flags]
    troubled = [FlagReview(one.n, one.trouble) for one in entries if one.trouble]
    return tuple(sorted((*unfit, *troubled), key=lambda one: one.n))
