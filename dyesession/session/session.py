"""The running day as an actor: one thread decides, appends, applies, in order, and hands out snapshots.

Screens send commands and never wait: a slow disk shows "saving", a failed one "not saved". The clock and
the log are handed in. What the dyer is shown of the bath's strength is reckoned by whoever opened the day
(`reckoner`); this room only writes that testimony down and passes it on.
"""

from __future__ import annotations

import queue
import threading
from collections.abc import Callable
from concurrent.futures import Future
from dataclasses import dataclass, field, replace
from datetime import datetime
from pathlib import Path
from typing import Generic, Literal, Protocol, TypeVar

from dyesession.care import Household
from dyesession.clock import Clock, Instant, clock_jump_s
from dyesession.plan.model import Plan
from dyesession.session import events as e
from dyesession.session import log
from dyesession.session.engine import Refused, decide
from dyesession.session.fold import Entry, apply, correction_misfit, fold, opening_state
from dyesession.session.from_shelf import FromShelf, beyond, completed, drawn_down, with_brought
from dyesession.session.state import State
from dyesession.session.suggest import Ring, rings
from dyesession.storage import shown

A = TypeVar("A")
A_co = TypeVar("A_co", covariant=True)
Saving = Literal["saved", "saving", "not saved", "unsure"]

CLOCK_SLACK_S = 2.0  # wall and boot clock may differ this much unremarked; our own choice, no source
GAP_S = 5 * 60.0  # away for longer than this earns the "where you are" page; our own choice, no source


class Reckoner(Protocol[A_co]):
    """Whatever turns the facts into estimates: called on the day's own thread, after each fact."""

    def __call__(self, entries: tuple[Entry, ...]) -> tuple[A_co, e.Accounted | None]:
        """The estimates and, when they have something new to tell, the testimony for the log."""
        ...


@dataclass(frozen=True)
class Snapshot(Generic[A]):
    """The day as it stands: immutable, safe to hand to a screen.

    `unsaved` counts facts that are not on disk; `trouble` is the sentence to show for them. `shelf` is what
    the bath shelf told the day as it opened.
    """

    plan: Plan
    name: str
    recipe: str
    path: str
    state: State
    entries: tuple[Entry, ...]
    account: A
    saving: Saving = "saved"
    unsaved: int = 0
    trouble: str = ""
    shelf: FromShelf = field(default_factory=FromShelf)


class Session(Generic[A]):
    """A day that is open. Make it with `begin_day` or `resume_day`; close it with `close`.

    `poison_centre` is the dyer's own number for screens; like the household it never enters the log.
    """

    def __init__(
        self,
        writer: log.LogWriter,
        plan: Plan,
        recipe: str,
        opened: Instant,
        entries: tuple[Entry, ...],
        clock: Clock,
        household: Household,
        reckoner: Reckoner[A],
        poison_centre: str = "",
        shelf: FromShelf | None = None,
    ) -> None:
        self.poison_centre = poison_centre
        self._writer, self._clock, self._household = writer, clock, household
        self._reckoner, self._opening, self._opened = reckoner, opening_state(plan), opened
        self._unsaved: list[Entry] = []
        self._listeners: list[Callable[[Snapshot[A]], None]] = []
        self._work: queue.Queue[tuple[Callable[[], None], Future[None]] | None] = queue.Queue()
        account, _ = reckoner(entries)
        self._snapshot = Snapshot(
            plan, writer.name, recipe, str(writer.path), self._folded(entries), entries, account,
            shelf=shelf or FromShelf(),
        )  # fmt: skip
        self._thread = threading.Thread(target=self._run, name="dye day", daemon=True)
        self._thread.start()

    @property
    def snapshot(self) -> Snapshot[A]:
        """The day as it stands now."""
        return self._snapshot

    @property
    def household(self) -> Household:
        """Who lives here; never written to the log."""
        return self._household

    def now(self) -> Instant:
        """The day's own present."""
        return self._clock.now()

    def now_s(self) -> float:
        """The present in session seconds."""
        return self._snapshot.state.seconds(self._clock.now())

    def listen(self, listener: Callable[[Snapshot[A]], None]) -> None:
        """Call this with each new snapshot, on the day's own thread."""
        self._listeners.append(listener)

    def do(self, command: e.Event, happened: datetime | None = None) -> Future[None]:
        """Ask for a fact. The future ends when it is applied and tried to be saved; `Refused` ends it too."""
        now = self._clock.now()
        return self._later(lambda: self._do(command, now, happened))

    def record(self, event: e.Event) -> Future[None]:
        """Write down what the program itself noticed: a gap, a torn end set aside."""
        now = self._clock.now()
        return self._later(lambda: self._record(event, now, None))

    def tick(self) -> Future[None]:
        """Let the program look at the clocks: raise alarms, notice a changed wall clock."""
        now = self._clock.now()
        return self._later(lambda: self._tick(now))

    def is_due(self) -> bool:
        """Whether a look at the clocks has anything to do: an alarm not raised yet, facts not saved."""
        snapshot = self._snapshot
        return bool(snapshot.unsaved or _unraised(snapshot.state, self.now_s()))

    def try_again(self) -> Future[None]:
        """Try once more to save what is not saved."""
        return self._later(self._flush)

    def rescue(self, folder: str) -> Future[None]:
        """Write the whole day to a new file in another folder, and go on there."""
        return self._later(lambda: self._rescue(folder))

    def close(self) -> None:
        """Let what is under way end, then let go of the log."""
        self._work.put(None)
        self._thread.join()
        self._writer.close()

    def _later(self, work: Callable[[], None]) -> Future[None]:
        future: Future[None] = Future()
        self._work.put((work, future))
        return future

    def _run(self) -> None:
        while (item := self._work.get()) is not None:
            work, future = item
            try:
                work()
            except BaseException as trouble:
                future.set_exception(trouble)
            else:
                future.set_result(None)

    def _do(self, command: e.Event, now: Instant, happened: datetime | None) -> None:
        command = completed(self._snapshot.shelf, self._snapshot.state, command)
        if trouble := beyond(self._snapshot.shelf, command):
            raise Refused(f"{trouble}.")
        command = with_brought(self._snapshot.shelf, command)
        event = decide(self._snapshot.state, command, now, self._household)
        if isinstance(event, e.Corrected) and (wrong := correction_misfit(self._snapshot.entries, event)):
            raise Refused(wrong[0].upper() + wrong[1:] + ".")
        self._remark_clock(now)
        self._record(event, now, happened)
        self._testify(now)

    def _tick(self, now: Instant) -> None:
        state = self._snapshot.state
        for ring in _unraised(state, state.seconds(now)):
            self._record(e.AlarmRaised(ring.countdown, ring.vessel, round(ring.over_s, 1)), now, None)
        if self._unsaved:
            self._flush()

    def _remark_clock(self, now: Instant) -> None:
        last = self._snapshot.state.instant
        if last is None:
            return
        jump_s = clock_jump_s(last, now)
        if abs(jump_s) > CLOCK_SLACK_S:
            self._record(e.ClockChanged(round(jump_s, 1)), now, None)

    def _record(self, event: e.Event, now: Instant, happened: datetime | None) -> None:
        """Append, then apply and tell: a fact is on disk before it is shown as saved."""
        entry = Entry(self._snapshot.state.n + 1, now, event, happened)
        self._tell(replace(self._snapshot, saving="saving"))
        self._unsaved.append(entry)
        entries = (*self._snapshot.entries, entry)
        self._flush()
        state = self._snapshot.state
        folded = self._folded(entries) if isinstance(event, e.Corrected) else apply(state, entry)
        shelf = drawn_down(self._snapshot.shelf, event)
        self._tell(replace(self._snapshot, state=folded, entries=entries, shelf=shelf))

    def _flush(self) -> None:
        """Save what waits, oldest first; what cannot be saved stays in memory and is said to."""
        try:
            while self._unsaved:
                self._append(self._unsaved[0])
                del self._unsaved[0]
        except log.NotSaved as trouble:
            self._mark("not saved", str(trouble))
        except log.Unsure as trouble:
            self._mark("unsure", str(trouble))
        else:
            self._mark("saved", "")

    def _append(self, entry: Entry) -> None:
        self._writer.append(entry.event.kind, entry.instant, e.event_fields(entry.event), entry.happened)

    def _mark(self, saving: Saving, trouble: str) -> None:
        self._tell(replace(self._snapshot, saving=saving, unsaved=len(self._unsaved), trouble=trouble))

    def _rescue(self, folder: str) -> None:
        doubtful = self._writer.state == "unsure"
        self._writer = self._writer.rescue(_whole_folder(folder))
        if doubtful and self._unsaved:
            del self._unsaved[0]  # the copy holds the entry that nobody knew of
        self._tell(replace(self._snapshot, path=str(self._writer.path)))
        self._flush()

    def _testify(self, now: Instant) -> None:
        account, testimony = self._reckoner(self._snapshot.entries)
        self._tell(replace(self._snapshot, account=account))
        if testimony is not None:
            self._record(testimony, now, None)

    def _folded(self, entries: tuple[Entry, ...]) -> State:
        return fold(self._opening, entries, self._opened)

    def _tell(self, snapshot: Snapshot[A]) -> None:
        self._snapshot = snapshot
        for listener in self._listeners:
            listener(snapshot)


def _whole_folder(folder: str) -> Path:
    """A folder that is the same wherever the program was started. Raises `NotSaved` for any other."""
    try:
        whole = Path(folder).expanduser()
    except RuntimeError:  # no such user
        whole = Path(folder)
    if not whole.is_absolute():
        raise log.NotSaved(
            f"Not saved: “{shown(Path(folder))}” is no whole path; expected one from the root, for example /media/stick"
        )
    return whole


def _unraised(state: State, now_s: float) -> list[Ring]:
    """The alarms that ring and are not in the log yet, loudest first."""
    return [one for one in rings(state, now_s) if one.severity == "alarm" and not _is_raised(state, one)]


def _is_raised(state: State, ring: Ring) -> bool:
    step = state.step(ring.step)
    return step is None or step.countdown is None or step.countdown.raised
