"""A rehearsed day move by move: what its dyer does next, and how long passes before the next move.

Whoever holds the clock lets that time pass: at once in a rehearsal, before one's eyes on the tour.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from dyesession.account import line as said_line
from dyesession.account import sentences
from dyesession.account.model import Account
from dyesession.errors import UserError
from dyesession.kitchen.model import Kitchen
from dyesession.rehearsal import dyer
from dyesession.rehearsal.model import Call, Question, Shown
from dyesession.rehearsal.world import World
from dyesession.session import events as e
from dyesession.session.asking import Ask, care_now, reminders_before, reminders_for, step_name
from dyesession.session.session import Session, Snapshot
from dyesession.session.state import State, StepState
from dyesession.session.suggest import Suggestion, Wait, rings, suggest
from dyesession.session.words import ring_words

MOST_MOVES = 2000  # a day that needs more never ends; our own choice
NOT_NOW = "not now"
LOOK_EVERY_S = 60.0
STUCK_STEP_S = 600.0
WORTH_LOOKING_IN_MIN = 30.0  # a hold shorter than this is not looked at half way; our own choice


class RehearsalError(UserError):
    """A day that cannot be rehearsed to its end."""


@dataclass(frozen=True)
class Asked:
    """A question stands before the next act, and is not answered yet."""

    question: str


@dataclass(frozen=True)
class Did:
    """Something was done."""

    fact: e.Event


@dataclass(frozen=True)
class Passes:
    """So many seconds pass before the next move; the clock must have passed them when that is asked for.

    `waiting`: there is nothing to do meanwhile.
    """

    seconds: float
    waiting: bool


Move = Asked | Did | Passes


@dataclass(frozen=True)
class _Visit:
    """A moment at which this dyer goes to look at a step's pot."""

    second: float
    key: str
    step: StepState


@dataclass
class DayUnderWay:
    """One rehearsal under way: the session, and what has been noticed so far."""

    session: Session[Account]
    kitchen: Kitchen
    world: World = field(default_factory=World)
    shown: list[Shown] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)
    calls: list[Call] = field(default_factory=list)
    cared: dict[str, list[str]] = field(default_factory=dict)
    private: dict[str, list[str]] = field(default_factory=dict)
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

    def moves(self) -> Iterator[Move]:
        """Do what is suggested until the day is closed. Raises `RehearsalError` when it never is."""
        for _ in range(MOST_MOVES):
            if self._state.status == "complete":
                return
            yield from self._move(self._next())
        left = ", ".join(one.name for one in self._state.steps if one.status in ("waiting", "running"))
        raise RehearsalError(
            f"{self._day.recipe} does not come to an end in {MOST_MOVES} moves: left are {left or 'none'}; "
            "expected a recipe whose steps all can begin, as “check” looks for"
        )

    def _move(self, suggestion: Suggestion) -> Iterator[Move]:
        if isinstance(suggestion, Wait):
            yield from self._wait(suggestion)
        elif isinstance(suggestion, Ask):
            yield from self._answer(suggestion)
        else:
            now_s = self.session.now_s()
            for fact in dyer.facts_for(suggestion, self._state, self.world, self.kitchen, now_s):
                yield from self._do(fact)

    def _answer(self, ask: Ask) -> Iterator[Move]:
        fact = dyer.answer(ask, self.world, self.session.now_s(), self.kitchen)
        at, step = self.session.now().at, ask.key.partition(": ")[0]
        self.questions.append(Question(at, step, ask.question, getattr(fact, "answer", NOT_NOW)))
        yield Asked(ask.question)
        yield from self._do(fact)

    def _do(self, fact: e.Event) -> Iterator[Move]:
        before, now_s = self._state, self.session.now_s()
        self._note_care(replace(before, now_s=now_s), fact)
        self.session.do(fact).result()
        self.world.after(fact, before, now_s)
        self._note_account()
        yield Did(fact)
        yield from self._pass(dyer.TAKES_MIN.get(fact.kind, dyer.USUAL_MIN) * 60, waiting=False)

    def _note_care(self, state: State, fact: e.Event) -> None:
        """The reminders of an act; those that tell who lives here are kept apart, as they are from a log."""
        step = fact.step if isinstance(fact, e.Begun) else step_name(state, fact)
        public = (
            reminders_for(state, step, self.session.household)
            if isinstance(fact, e.Begun)
            else reminders_before(state, fact, self.session.household)
        )
        shown = care_now(state, fact, step if isinstance(fact, e.Begun) else "", self.session.household)
        if public:
            self.cared.setdefault(step, []).extend(public)
        if private := [one for one in shown if one not in public]:
            self.private.setdefault(step, []).extend(private)

    def _note_account(self) -> None:
        said = sentences(self._day.account, self._day.plan)
        if said and (not self.shown or self.shown[-1].text != said_line(said[0])):
            self.shown.append(Shown(self.session.now().at, self._state.n, said_line(said[0])))

    def _wait(self, wait: Wait) -> Iterator[Move]:
        """Wait until something is due, going to look at what holds in between."""
        now_s = self.session.now_s()
        until_s = wait.until_s if wait.until_s is not None else now_s + STUCK_STEP_S
        visits = [one for one in self._visits(now_s) if one.second < until_s]
        if not visits:
            yield from self._pass(max(1.0, until_s - now_s), waiting=True)
            return
        visit = min(visits, key=lambda one: one.second)
        yield from self._pass(max(0.0, visit.second - now_s), waiting=True)
        self._visited.add(visit.key)
        for fact in self._seen_at(visit):
            if fact is not None:
                yield from self._do(fact)

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
        look = dyer.look_in(visit.step, self.world, self.session.now_s(), self.kitchen)
        return look, dyer.dip(visit.step, self._state)

    def _pass(self, seconds: float, *, waiting: bool) -> Iterator[Passes]:
        """Let time pass, noticing what rings; a long wait with nothing due is one stretch."""
        end_s = self.session.now_s() + seconds
        while (left_s := end_s - self.session.now_s()) > 0:
            yield Passes(min(left_s, self._until_something_rings(left_s)), waiting)
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
        state, now = self._state, self.session.now()
        ringing = rings(state, state.seconds(now))
        for one in ringing:
            if (one.countdown, one.severity) not in self._ringing:
                minute = state.seconds(now) / 60
                what = ring_words(state, one)[0]
                self.calls.append(Call(now.at, minute, one.step, one.vessel, one.severity, what))
        self._ringing = {(one.countdown, one.severity) for one in ringing}
