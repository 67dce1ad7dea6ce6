"""What one day tells of kept baths: what went through each before it was put by, and what was drawn.

Pure; folds the facts of one log once more. Estimates come later: here stand facts alone.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime

from dyesession.session import events as e
from dyesession.session.brought import Brought, brought_in
from dyesession.session.fold import Entry, apply, effective, opening_state
from dyesession.session.opening import LoggedDay
from dyesession.session.state import KeptBath as KeptFact
from dyesession.session.state import State

COLOURED = frozenset({"dye", "modify"})


@dataclass(frozen=True)
class Drew:
    """A draw from a bath of another day. `keeper` is the session the entry names, "" for none; `n` its number."""

    session: str
    at: datetime
    label: str
    keeper: str
    volume_l: float | None
    vessel: str
    n: int = 0
    brought: tuple[Brought, ...] = ()


@dataclass(frozen=True)
class Dip:
    """Fibre that was in a bath during one step."""

    step: str
    lots: tuple[str, ...]


@dataclass(frozen=True)
class Trace:
    """One bath through the day: its last pH, what it was drawn from, what was dipped in it since.

    `changed` tells that anything came in beside the first draw, `heated` that it was brought to a heat,
    `litres_read` that its litres were read as it stands.
    """

    ph: float | None = None
    ph_at: datetime | None = None
    drew: tuple[Drew, ...] = ()
    dips: tuple[Dip, ...] = ()
    changed: bool = False
    heated: bool = False
    litres_read: bool = False

    @property
    def lots(self) -> tuple[str, ...]:
        """Every lot that was in it, each once."""
        return tuple(dict.fromkeys(lot for one in self.dips for lot in one.lots))


@dataclass(frozen=True)
class PutBy:
    """A bath put by: when, under which label, its trace; `bath` as it stands at the end, None when gone."""

    label: str
    at: datetime
    trace: Trace
    bath: KeptFact | None
    n: int = 0
    place: str = ""


@dataclass(frozen=True)
class Traced:
    """All that one day tells."""

    day: LoggedDay
    last: State
    put_by: tuple[PutBy, ...]
    drew: tuple[Drew, ...]
    undyed: Mapping[str, str] = field(default_factory=dict)
    dry: Mapping[str, str] = field(default_factory=dict)


def traced(day: LoggedDay) -> Traced:
    """Go through the day once, corrections carried out."""
    at_work = _AtWork()
    last = replace(opening_state(day.plan), instant=day.opened)
    for entry, before, after in _paces(day):
        at_work.see(day, entry, before, after)
        last = after
    standing = {one.label: one for one in last.kept}
    put_by = tuple(
        PutBy(label, one.at, one.trace, standing.get(label), one.n, one.place)
        for label, one in at_work.put_by.items()
    )
    return Traced(day, last, put_by, tuple(at_work.drew), at_work.undyed, at_work.dry)


def _paces(day: LoggedDay) -> Iterator[tuple[Entry, State, State]]:
    state = replace(opening_state(day.plan), instant=day.opened)
    for entry in effective(day.entries):
        before, state = state, apply(state, entry)
        yield entry, before, state


@dataclass
class _AtWork:
    """The baths as they go through the day."""

    traces: dict[str, Trace] = field(default_factory=dict)
    put_by: dict[str, PutBy] = field(default_factory=dict)
    drew: list[Drew] = field(default_factory=list)
    undyed: dict[str, str] = field(default_factory=dict)
    dry: dict[str, str] = field(default_factory=dict)

    def see(self, day: LoggedDay, entry: Entry, before: State, after: State) -> None:
        """One entry; one that does not fit changes nothing."""
        event, at = entry.event, entry.happened or entry.instant.at
        if any(one.n == entry.n for one in after.flags):
            return
        if isinstance(event, e.Read | e.Cared):
            self._read(event, at, before)
        elif isinstance(event, e.Entered | e.Dipped):
            self._dipped(event, before)
        elif isinstance(event, e.Drawn):
            self._drawn(day, entry.n, event, at, before)
        elif isinstance(event, e.Kept):
            trace = self.traces.pop(event.vessel, Trace())
            trace = replace(trace, litres_read=trace.litres_read or event.volume_l is not None)
            self.put_by[event.label] = PutBy(event.label, at, trace, None, entry.n, event.place)
        elif isinstance(event, e.Strained | e.Pooled):
            self._poured(event, after)
        elif isinstance(event, e.Added | e.ToppedUp):
            self._changed(event.vessel)
        elif isinstance(event, e.Reached):
            self.traces[event.vessel] = replace(self._of(event.vessel), heated=True)
        elif isinstance(event, e.Filled | e.Refreshed):
            self.traces[event.vessel] = Trace()
        elif isinstance(event, e.Discarded) and event.vessel:
            self.traces.pop(event.vessel, None)

    def _of(self, vessel: str) -> Trace:
        return self.traces.get(vessel, Trace())

    def _changed(self, vessel: str) -> None:
        self.traces[vessel] = replace(
            self._of(vessel), ph=None, ph_at=None, changed=True, litres_read=False
        )

    def _read(self, event: e.Read | e.Cared, at: datetime, before: State) -> None:
        if event.lot and event.colour:
            self._colour(event, before)
        if isinstance(event, e.Read) and event.vessel and event.ph is not None:
            self.traces[event.vessel] = replace(self._of(event.vessel), ph=event.ph, ph_at=at)
        if isinstance(event, e.Read) and event.vessel and event.volume_l is not None:
            self.traces[event.vessel] = replace(self._of(event.vessel), litres_read=True)

    def _colour(self, event: e.Read | e.Cared, before: State) -> None:
        dry = event.wet is False if isinstance(event, e.Read) else True
        dyed = any(one.plan.stage in COLOURED and event.lot in one.entered for one in before.steps)
        if dry:
            (self.dry if dyed else self.undyed)[event.lot] = event.colour

    def _dipped(self, event: e.Entered | e.Dipped, before: State) -> None:
        lot = event.lot if isinstance(event, e.Entered) else event.snippet
        known = before.lot(lot)
        if isinstance(event, e.Dipped) or (known is not None and known.snippet):
            return
        running = before.running_in(event.vessel)
        step, trace = running.name if running is not None else "", self._of(event.vessel)
        if trace.dips and trace.dips[-1].step == step:
            dip = replace(trace.dips[-1], lots=(*trace.dips[-1].lots, lot))
            self.traces[event.vessel] = replace(trace, dips=(*trace.dips[:-1], dip))
        else:
            self.traces[event.vessel] = replace(trace, dips=(*trace.dips, Dip(step, (lot,))))

    def _drawn(self, day: LoggedDay, n: int, event: e.Drawn, at: datetime, before: State) -> None:
        vessel = before.vessel(event.vessel)
        if vessel is None or vessel.bath is None:
            self.traces[event.vessel] = Trace()
        else:
            self._changed(event.vessel)
        if any(one.label == event.label for one in before.kept) and event.session in ("", day.name):
            back = self.put_by.get(event.label)
            self._joined(event.vessel, back.trace if back is not None else Trace())
            return
        drew = Drew(day.name, at, event.label, event.session, event.volume_l, event.vessel, n, brought_in(event.brought))
        self.drew.append(drew)
        trace = self._of(event.vessel)
        self.traces[event.vessel] = replace(trace, drew=(*trace.drew, drew))

    def _poured(self, event: e.Strained | e.Pooled, after: State) -> None:
        source = self._of(event.vessel)
        self._joined(event.into, source)
        left = after.vessel(event.vessel)
        if left is None or left.bath is None:
            self.traces.pop(event.vessel, None)

    def _joined(self, vessel: str, other: Trace) -> None:
        here = self._of(vessel)
        self.traces[vessel] = Trace(
            drew=tuple(dict.fromkeys((*here.drew, *other.drew))),
            dips=(*here.dips, *other.dips),
            changed=True,
            heated=here.heated or other.heated,
        )
