"""Run a whole day through the real session, its real log and its real account, on a clock that steps.

The log is marked as a rehearsal, so that it never counts as a day that was dyed.
"""

import tempfile
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path

from dyesession.account import line as said_line
from dyesession.account import sentences
from dyesession.account.live import reckoner_for
from dyesession.account.model import Account
from dyesession.clock import SteppingClock
from dyesession.errors import UserError
from dyesession.kitchen.model import Kitchen
from dyesession.plan import work_out
from dyesession.plan.model import FibreLot, Plan
from dyesession.recipe.model import Recipe
from dyesession.rehearsal import dyer
from dyesession.rehearsal.gather import gathered
from dyesession.rehearsal.model import Call, Question, Rehearsed, Shown
from dyesession.rehearsal.world import World
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.opening import begin_day
from dyesession.session.session import Session, Snapshot
from dyesession.session.state import State, StepState
from dyesession.session.suggest import Suggestion, Wait, rings, suggest
from dyesession.session.words import ring_words
from dyesession.storage import Storage

MOST_MOVES = 2000  # a day that needs more never ends; our own choice
LOOK_EVERY_S = 60.0
STUCK_STEP_S = 600.0
WORTH_LOOKING_IN_MIN = 30.0  # a hold shorter than this is not looked at half way; our own choice


class RehearsalError(UserError):
    """A day that cannot be rehearsed to its end."""


def rehearse(
    recipe: Recipe,
    lots: Sequence[FibreLot],
    kitchen: Kitchen,
    into: Path | None,
    *,
    storage: Storage,
    start: datetime,
) -> Rehearsed:
    """Rehearse a day from `start` (a time with an offset). `into` keeps its log there; None keeps nothing.

    Raises what `plan.work_out` and the log raise, and `RehearsalError` when the day does not end.
    """
    plan = work_out(recipe, lots, kitchen)
    if into is not None:
        return _rehearsed(recipe, plan, kitchen, into, storage, start, keep=True)
    with tempfile.TemporaryDirectory(prefix="dyesession-") as folder:
        return _rehearsed(recipe, plan, kitchen, Path(folder), storage, start, keep=False)


def _rehearsed(
    recipe: Recipe,
    plan: Plan,
    kitchen: Kitchen,
    folder: Path,
    storage: Storage,
    start: datetime,
    *,
    keep: bool,
) -> Rehearsed:
    clock = SteppingClock(start)
    session = begin_day(storage, folder, recipe, plan, kitchen, clock, reckoner_for, rehearsal=True)
    try:
        run = _Run(session, clock, kitchen)
        run.to_the_end()
        return gathered(session.snapshot, start, keep, run.shown, run.questions, run.calls)
    finally:
        session.close()


@dataclass(frozen=True)
class _Visit:
    """A moment at which this dyer goes to look at a step's pot."""

    second: float
    key: str
    step: StepState


@dataclass
class _Run:
    """One rehearsal under way: the session, its clock, and what has been noticed so far."""

    session: Session[Account]
    clock: SteppingClock
    kitchen: Kitchen
    world: World = field(default_factory=World)
    shown: list[Shown] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)
    calls: list[Call] = field(default_factory=list)
    _ringing: set[tuple[str, str]] = field(default_factory=set)
    _visited: set[str] = field(default_factory=set)

    @property
    def _day(self) -> Snapshot[Account]:
        return self.session.snapshot

    @property
    def _state(self) -> State:
        return self.session.snapshot.state

    def _next(self) -> Suggestion:
        return suggest(self._state, self.session.now_s(), self.session.household)

    def to_the_end(self) -> None:
        """Do what is suggested until the day is closed."""
        for _ in range(MOST_MOVES):
            if self._state.status == "complete":
                return
            self._move(self._next())
        left = ", ".join(one.name for one in self._state.steps if one.status in ("waiting", "running"))
        raise RehearsalError(
            f"{self._day.recipe} does not come to an end in {MOST_MOVES} moves: left are {left or 'none'}; "
            "expected a recipe whose steps all can begin, as “check” looks for"
        )

    def _move(self, suggestion: Suggestion) -> None:
        if isinstance(suggestion, Wait):
            self._wait(suggestion)
        elif isinstance(suggestion, Ask):
            self._answer(suggestion)
        else:
            now_s = self.session.now_s()
            for fact in dyer.facts_for(suggestion, self._state, self.world, self.kitchen, now_s):
                self._do(fact)

    def _answer(self, ask: Ask) -> None:
        fact = dyer.answer(ask, self.world, self.session.now_s())
        at, step = self.clock.now().at, ask.key.partition(": ")[0]
        self.questions.append(Question(at, step, ask.question, fact.answer))
        self._do(fact)

    def _do(self, fact: e.Event) -> None:
        before, now_s = self._state, self.session.now_s()
        self.session.do(fact).result()
        self.world.after(fact, before, now_s)
        self._note_account()
        self._pass(dyer.TAKES_MIN.get(fact.kind, dyer.USUAL_MIN) * 60)

    def _note_account(self) -> None:
        said = sentences(self._day.account, self._day.plan)
        if said and (not self.shown or self.shown[-1].text != said_line(said[0])):
            self.shown.append(Shown(self.clock.now().at, self._state.n, said_line(said[0])))

    def _wait(self, wait: Wait) -> None:
        """Wait until something is due, going to look at what holds in between."""
        now_s = self.session.now_s()
        until_s = wait.until_s if wait.until_s is not None else now_s + STUCK_STEP_S
        visits = [one for one in self._visits(now_s) if one.second < until_s]
        if not visits:
            self._pass(max(1.0, until_s - now_s))
            return
        visit = min(visits, key=lambda one: one.second)
        self._pass(max(0.0, visit.second - now_s))
        self._visited.add(visit.key)
        for fact in self._seen_at(visit):
            if fact is not None:
                self._do(fact)

    def _visits(self, now_s: float) -> list[_Visit]:
        """Half way through a long hold its pot is looked at; a snippet dipped then is looked at later."""
        found = []
        for step in self._state.steps:
            countdown = step.countdown
            if countdown is None or countdown.kind != "hold" or step.status != "running":
                continue
            half_s = countdown.start_s + countdown.length_s / 2
            if countdown.length_s >= WORTH_LOOKING_IN_MIN * 60:
                found.append(_Visit(max(now_s, half_s), countdown.key, step))
            if step.plan.judge is not None and step.plan.judge.snippet_every_min:
                later_s = half_s + step.plan.judge.snippet_every_min * 60
                found.append(_Visit(max(now_s, later_s), f"{countdown.key} {dyer.SNIPPET}", step))
        return [one for one in found if one.key not in self._visited]

    def _seen_at(self, visit: _Visit) -> tuple[e.Event | None, ...]:
        if visit.key.endswith(dyer.SNIPPET):
            return (dyer.look_at_snippet(self._state),)
        look = dyer.look_in(visit.step, self.world, self.session.now_s())
        return look, dyer.dip(visit.step, self._state)

    def _pass(self, seconds: float) -> None:
        """Let time pass, noticing what rings; a long wait with nothing due is one step."""
        end_s = self.session.now_s() + seconds
        while (left_s := end_s - self.session.now_s()) > 0:
            self.clock.advance(min(left_s, self._until_something_rings(left_s)))
            self._notice()

    def _until_something_rings(self, left_s: float) -> float:
        now_s = self.session.now_s()
        running = [one for one in self._state.steps if one.countdown and one.status == "running"]
        due = [one.countdown.deadline_s - now_s for one in running if one.countdown]
        if any(one <= 0 for one in due):
            return LOOK_EVERY_S
        return max(1.0, min((one for one in due if one > 0), default=left_s))

    def _notice(self) -> None:
        self.session.tick().result()
        state, now = self._state, self.clock.now()
        ringing = rings(state, state.seconds(now))
        for one in ringing:
            if (one.countdown, one.severity) not in self._ringing:
                minute = state.seconds(now) / 60
                what = ring_words(state, one)[0]
                self.calls.append(Call(now.at, minute, one.step, one.vessel, one.severity, what))
        self._ringing = {(one.countdown, one.severity) for one in ringing}
