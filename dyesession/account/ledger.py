"""The day's ledger: entries folded one by one into holdings and lines, so that a live day needs only its
newest.

Pure: an entry brings its own times, counted in session seconds as the fold of the facts counts them. What
this program itself wrote as account entries is passed over, and an entry that does not fit is told, not
counted. A reading weighs the worlds; when too few still count, they are put elsewhere and the day is gone
through again.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from dyesession.account import lines as l
from dyesession.account.beliefs import (
    AS_DEALT,
    ENOUGH,
    Placing,
    agreed,
    likelihood,
    lines_fitted,
    lines_seen,
    look_round,
    put_together,
    reach_of,
    weights_of,
)
from dyesession.account.course import Course, Happening, carried_on, holdings_on, started
from dyesession.account.effects import effects_of
from dyesession.account.estimate import Behind, account_of
from dyesession.account.holdings import Evidence, Holdings
from dyesession.account.model import Account, LedgerLine, ReadingEffect, StrengthReading
from dyesession.account.passing import Stage, passed
from dyesession.account.strengths import sample_of, strain_named
from dyesession.account.unknowns import Starting
from dyesession.account.worlds import EVEN, WORLDS, Vector, band, counting
from dyesession.clock import Instant
from dyesession.plan.model import Plan
from dyesession.session import events as e
from dyesession.session.fold import Entry, apply, effective, opening_state
from dyesession.session.state import State

# Facts that neither move anything nor change how a pot goes on: time is not settled at them, so a note made
# in the middle of a hold changes no estimate in its last digits.
IDLE = frozenset(
    {"noted", "acknowledged", "alarm-raised", "put-off", "weighed", "soaked", "cared", "unknown"}
    | {"resumed-after-gap", "clock-changed", "recovered"}
)
# Looks round at one reading, the step of the prior that is near enough to stop, and the longest to take at
# once; our own choice, bounds the time.
MOST_LOOKS, NEAR_ENOUGH, MOST_STEP = 3, 0.25, 2.5
# Share of the worlds that must count lest they are fitted a second time, and below which it is looked round instead;
# tuned on the tests: fewer worlds know their ends badly, more looks take longer than a dyer wants to wait.
STILL_ENOUGH, FEW = 0.25, 0.1


@dataclass(frozen=True)
class Ledger:
    """Everything reckoned so far. `entries` are kept as they came, so that a correction can be folded
    again; `happenings` are those that counted, so that the day can be gone through with other worlds.
    """

    plan: Plan
    opened: Instant
    starting: Starting
    state: State
    course: Course
    weights: Vector = EVEN
    placing: Placing = AS_DEALT
    entries: tuple[Entry, ...] = ()
    happenings: tuple[Happening, ...] = ()
    lines: tuple[LedgerLine, ...] = ()
    strengths: tuple[StrengthReading, ...] = ()
    effects: tuple[ReadingEffect, ...] = field(default=())

    @staticmethod
    def start(plan: Plan, opened: Instant, starting: Starting | None = None) -> "Ledger":
        """The ledger of a day on which nothing was done yet."""
        starting = starting or Starting()
        state = replace(opening_state(plan), instant=opened)
        return Ledger(plan, opened, starting, state, started(plan, starting, AS_DEALT))

    @property
    def held(self) -> Holdings:
        """Who holds what, in every world."""
        return self.course.held

    @property
    def second(self) -> float:
        """The session second up to which the day is reckoned."""
        return self.course.second

    def after(self, entry: Entry) -> "Ledger":
        """The ledger after one entry more; a correction folds the whole day again."""
        if isinstance(entry.event, e.Corrected):
            return Ledger.start(self.plan, self.opened, self.starting).following((*self.entries, entry))
        return replace(_with(self, entry), entries=(*self.entries, entry))

    def following(self, entries: Iterable[Entry]) -> "Ledger":
        """The ledger after many entries more, the corrections among them carried out."""
        found = tuple(entries)
        ledger = self if not self.entries else Ledger.start(self.plan, self.opened, self.starting)
        whole = (*self.entries, *found)
        for entry in effective(whole):
            ledger = _with(ledger, entry)
        return replace(ledger, entries=whole)

    def until(self, second: float) -> "Ledger":
        """The ledger as it will stand at a later session second if nothing is done: steam, uptake,
        extraction.
        """
        second = max(second, self.course.second)
        held = passed(self.held, Stage(self.state, self.starting), second)
        return replace(self, course=replace(self.course, held=held, second=second))

    def account(self) -> Account:
        """All estimates as the ledger stands."""
        now = self.until(self.second)
        since = l.banded(l.time_lines(self.course.told, now.held, self.state.n, self.second), self.weights)
        behind = Behind(self.state, self.starting, now.held, self.weights, self.second, self.course.marks)
        return account_of(behind, (*self.lines, *since), self.strengths, self.effects)


def reckon(
    plan: Plan, entries: tuple[Entry, ...], opened: Instant, starting: Starting | None = None
) -> Account:
    """The account of a day: the same facts, starting guesses and version give the same numbers everywhere."""
    return Ledger.start(plan, opened, starting).following(entries).account()


def _with(ledger: Ledger, entry: Entry) -> Ledger:
    if isinstance(entry.event, e.Accounted):
        return ledger
    state = apply(ledger.state, entry)
    if _moves_nothing(entry.event):
        return replace(ledger, state=state)
    happening = Happening(entry, _second_of(entry, state), ledger.state, state)
    course = carried_on(ledger.course, ledger.starting, happening)
    new = l.banded(course.moves[len(ledger.course.moves) :], ledger.weights)
    gone_on = replace(
        ledger,
        state=state,
        course=course,
        happenings=(*ledger.happenings, happening),
        lines=(*ledger.lines, *new),
    )
    return _read(ledger, gone_on, happening)


def _moves_nothing(event: e.Event) -> bool:
    return event.kind in IDLE and not (isinstance(event, e.Noted) and event.doubted)


def _second_of(entry: Entry, state: State) -> float:
    """When it happened: the entry's second, or earlier where the dyer says so."""
    if entry.happened is None:
        return state.now_s
    return state.now_s - max(0.0, (entry.instant.at - entry.happened).total_seconds())


def _read(before: Ledger, after: Ledger, happening: Happening) -> Ledger:
    """What a reading does to the belief; nothing for any other fact."""
    learned = _weighed(after) if len(after.held.evidence) > len(before.held.evidence) else after
    found = effects_of(before.until(after.second), learned, happening) if learned is not after else ()
    effects = (*after.effects, *found)
    return replace(learned, effects=effects, strengths=after.strengths + _strengths(learned, happening))


def _weighed(ledger: Ledger) -> Ledger:
    """The worlds weighed afresh by all that was read, and put elsewhere where too few of them count."""
    found = _weighed_as_placed(ledger)
    for enough in (ENOUGH, STILL_ENOUGH):
        if counting(found.weights) < enough * WORLDS:
            found = _fuller(found, _fitted_place(found))
    if counting(found.weights) < FEW * WORLDS:
        found = _fuller(found, _better_place(found))
    return replace(found, lines=l.banded(found.course.moves, found.weights))


def _fitted_place(ledger: Ledger) -> Placing:
    """Where prior and readings agree best by the lines that fit the worlds as they stand."""
    known = ledger.held.unknowns
    lines = lines_fitted(known.steps, ledger.held.evidence, ledger.weights)
    return put_together(known.dealt(), lines, agreed(lines))


def _fuller(ledger: Ledger, placing: Placing) -> Ledger:
    """The day with the worlds so placed, if more of them count then."""
    elsewhere = _weighed_as_placed(_gone_through(ledger, placing))
    return elsewhere if counting(elsewhere.weights) > counting(ledger.weights) else ledger


def _better_place(ledger: Ledger) -> Placing:
    """Where prior and readings agree best: found by looking round, going there, and looking round again."""
    known = ledger.held.unknowns
    names, best, reach = tuple(known.steps), dict(ledger.placing.best), dict.fromkeys(known.steps, 1.0)
    for look in range(MOST_LOOKS):
        lines = lines_seen(names, _evidence_of(ledger, look_round(names, best, reach)), best, reach)
        there = agreed(lines)
        far = max(abs(z - best.get(name, 0.0)) for name, z in zip(names, there.best, strict=True))
        if far <= NEAR_ENOUGH or look == MOST_LOOKS - 1:
            break
        best = {
            name: best.get(name, 0.0) + max(-MOST_STEP, min(MOST_STEP, z - best.get(name, 0.0)))
            for name, z in zip(names, there.best, strict=True)
        }
        reach = reach_of(lines, there)
    return put_together(known.dealt(), lines, there)


def _weighed_as_placed(ledger: Ledger) -> Ledger:
    weights = weights_of(likelihood(ledger.held.evidence), ledger.placing.lift)
    return replace(ledger, weights=weights)


def _gone_through(ledger: Ledger, placing: Placing) -> Ledger:
    """The same day with the worlds put elsewhere."""
    course = started(ledger.plan, ledger.starting, placing)
    for one in ledger.happenings:
        course = carried_on(course, ledger.starting, one)
    return replace(ledger, course=course, placing=placing)


def _evidence_of(ledger: Ledger, placing: Placing) -> tuple[Evidence, ...]:
    """How far each reading of the same day would be off with the worlds put elsewhere."""
    course = started(ledger.plan, ledger.starting, placing)
    for one in ledger.happenings:
        course = holdings_on(course, ledger.starting, one)
    return course.held.evidence


def _strengths(ledger: Ledger, happening: Happening) -> tuple[StrengthReading, ...]:
    event, n = happening.entry.event, happening.entry.n
    if not isinstance(event, e.Read) or event.strength is None or not event.vessel or happening.odd:
        return ()
    said = next((one for one in ledger.held.evidence if one.n == n), None)
    sample = sample_of(ledger.held, event.vessel, ledger.state)
    alone = said is not None and sum(one.scale == said.scale for one in ledger.held.evidence) == 1
    return (
        StrengthReading(
            n,
            happening.second,
            event.vessel,
            event.strength,
            event.against,
            event.how,
            band(ledger.held.bath(event.vessel).pool.volume_l, ledger.weights),
            counted=said is not None and not (said.scale and alone),
            lot=sample.lot if sample is not None else "",
            strain=sample.strain if sample is not None else 0,
            against_strain=strain_named(event.against),
        ),
    )
