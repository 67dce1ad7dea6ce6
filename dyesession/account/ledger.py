"""The day's ledger: entries folded one by one into holdings and lines, so that a live day needs only its
newest.

Pure: an entry brings its own times, counted in session seconds as the fold of the facts counts them. What
this program itself wrote as account entries is passed over, and an entry that does not fit is told, not
counted.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from dyesession.account import lines as l
from dyesession.account.estimate import account_of
from dyesession.account.holdings import Holdings
from dyesession.account.model import Account, LedgerLine, StrengthReading
from dyesession.account.movements import moved
from dyesession.account.passing import Stage, dried, passed
from dyesession.account.unknowns import Starting, unknowns
from dyesession.account.worlds import band
from dyesession.clock import Instant
from dyesession.plan.model import Plan
from dyesession.session import events as e
from dyesession.session.fold import Entry, apply, effective, opening_state
from dyesession.session.state import OUT_DRY, State

# Facts that neither move anything nor change how a pot goes on: time is not settled at them, so a note made
# in the middle of a hold changes no estimate in its last digits.
IDLE = frozenset(
    {"noted", "acknowledged", "alarm-raised", "put-off", "weighed", "soaked", "cared", "unknown"}
    | {"resumed-after-gap", "clock-changed", "recovered"}
)


@dataclass(frozen=True)
class Ledger:
    """Everything reckoned so far. `entries` are kept as they came, so that a correction can be folded
    again.
    """

    plan: Plan
    opened: Instant
    starting: Starting
    state: State
    held: Holdings
    told: Holdings
    second: float = 0.0
    entries: tuple[Entry, ...] = ()
    lines: tuple[LedgerLine, ...] = ()
    strengths: tuple[StrengthReading, ...] = field(default=())

    @staticmethod
    def start(plan: Plan, opened: Instant, starting: Starting | None = None) -> "Ledger":
        """The ledger of a day on which nothing was done yet."""
        starting = starting or Starting()
        held = Holdings(unknowns(plan, starting))
        return Ledger(plan, opened, starting, replace(opening_state(plan), instant=opened), held, held)

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
        return _passed(self, second)

    def account(self) -> Account:
        """All estimates as the ledger stands."""
        held = _passed(self, self.second).held
        lines = (*self.lines, *l.time_lines(self.told, held, self.state.n, self.second))
        return account_of(self.plan, self.state, held, self.second, lines, self.strengths)


def reckon(
    plan: Plan, entries: tuple[Entry, ...], opened: Instant, starting: Starting | None = None
) -> Account:
    """The account of a day: the same facts, starting guesses and version give the same numbers everywhere."""
    return Ledger.start(plan, opened, starting).following(entries).account()


def _with(ledger: Ledger, entry: Entry) -> Ledger:
    if isinstance(entry.event, e.Accounted):
        return ledger
    state = apply(ledger.state, entry)
    if entry.event.kind in IDLE:
        return replace(ledger, state=state)
    ledger = _passed(ledger, _second_of(entry, state), _own_pot(entry.event))
    if len(state.flags) > len(ledger.state.flags):
        line = l.not_counted(entry, state.flags[-1].text, ledger.second)
        return replace(ledger, state=state, lines=(*ledger.lines, line))
    return _moved(ledger, entry, state)


def _second_of(entry: Entry, state: State) -> float:
    """When it happened: the entry's second, or earlier where the dyer says so."""
    if entry.happened is None:
        return state.now_s
    return state.now_s - max(0.0, (entry.instant.at - entry.happened).total_seconds())


def _own_pot(event: e.Event) -> str:
    """The pot a reading is of: it changes nothing in any other, whose time can be settled later. Else ""."""
    return event.vessel if isinstance(event, e.Read) and not event.lot else ""


def _passed(ledger: Ledger, second: float, only: str = "") -> Ledger:
    """Time settled up to a second; what was reckoned up to a later one stays."""
    second = max(second, ledger.second)
    stage = Stage(ledger.plan, ledger.state, ledger.starting)
    return replace(ledger, held=passed(ledger.held, stage, second, only), second=second)


def _moved(ledger: Ledger, entry: Entry, state: State) -> Ledger:
    held = moved(ledger.held, entry.event, ledger.state, state)
    held = _all_dried(held, ledger.state, state)
    if not _own_pot(entry.event):
        held = held.settled_at(ledger.second)
    new = l.lines_of(entry, ledger.second, ledger.told, ledger.held, held)
    told = l.told_up_to(ledger.told, ledger.held, held)
    strengths = ledger.strengths + _strengths(entry, ledger.second, held)
    return replace(
        ledger, state=state, held=held, told=told, lines=(*ledger.lines, *new), strengths=strengths
    )


def _all_dried(held: Holdings, before: State, after: State) -> Holdings:
    for lot in after.lots:
        was = before.lot(lot.name)
        if lot.place == OUT_DRY and was is not None and was.place != OUT_DRY and lot.name in held.fibres:
            held = dried(held, lot.name)
    return held


def _strengths(entry: Entry, second: float, held: Holdings) -> tuple[StrengthReading, ...]:
    event = entry.event
    if not isinstance(event, e.Read) or event.strength is None or not event.vessel:
        return ()
    volume_l = band(held.bath(event.vessel).pool.volume_l)
    return (
        StrengthReading(entry.n, second, event.vessel, event.strength, event.against, event.how, volume_l),
    )
