"""The account kept up with a running day: each new fact reckoned once, a correction reckoned afresh.

Not pure only in that it remembers how far it has come; the same entries give the same account.
"""

from collections.abc import Callable

from dyesession.account.ledger import Ledger
from dyesession.account.model import Account
from dyesession.account.testimony import accounted
from dyesession.account.unknowns import Starting
from dyesession.clock import Instant
from dyesession.plan.model import Plan
from dyesession.session import events as e
from dyesession.session.fold import Entry, effective


class LiveReckoner:
    """Call it with all entries so far; it gives the account and what to write down of it, if anything new."""

    def __init__(self, plan: Plan, opened: Instant, starting: Starting | None = None) -> None:
        self._plan, self._opened, self._starting = plan, opened, starting
        self._start()

    def _start(self) -> None:
        self._ledger = Ledger.start(self._plan, self._opened, self._starting)
        self._done = 0
        self._told: e.Accounted | None = None

    def __call__(self, entries: tuple[Entry, ...]) -> tuple[Account, e.Accounted | None]:
        """The account after these entries, and its testimony when it differs from the last one given."""
        fresh = entries[self._done :]
        if len(entries) < self._done or any(isinstance(one.event, e.Corrected) for one in fresh):
            self._start()
            fresh = effective(entries)
        for entry in fresh:
            self._ledger = self._ledger.after(entry)
        self._done = len(entries)
        account = self._ledger.account()
        told = accounted(account, entries[-1].n if entries else 0)
        if self._told is not None and _same(told, self._told):
            return account, None
        self._told = told
        return account, told if entries else None


def _same(one: e.Accounted, other: e.Accounted) -> bool:
    return (one.baths, one.dyestuffs, one.fibres) == (other.baths, other.dyestuffs, other.fibres)


def reckoner_for(plan: Plan, opened: Instant) -> LiveReckoner:
    """A reckoner for one day, from the usual starting guesses."""
    return LiveReckoner(plan, opened)


def reckoner_from(starting: Starting) -> Callable[[Plan, Instant], LiveReckoner]:
    """Makes reckoners that start from the dyer's own numbers where there are any."""
    return lambda plan, opened: LiveReckoner(plan, opened, starting)
