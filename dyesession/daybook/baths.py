"""The baths of a day: what the dyer was shown after each entry, beside what the same entries give now.

Shown then is the program's own testimony in the log; reckoned now is today's account of the corrected facts.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from dyesession.account import Account, Ledger
from dyesession.account.logged import starting_of
from dyesession.account.model import Band90, BathEstimate
from dyesession.account.testimony import LEAST_G, rounded
from dyesession.daybook.model import BathLine, BathReview
from dyesession.session import events as e
from dyesession.session.fold import Entry, effective
from dyesession.session.opening import LoggedDay

Named = tuple[str, bool]


def bath_reviews(day: LoggedDay) -> tuple[BathReview, ...]:
    """Every bath that was ever shown or is reckoned now, kept ones under their label."""
    shown, reckoned = _shown_then(day.entries), _reckoned_now(day)
    names = dict.fromkeys((*shown, *reckoned))
    return tuple(
        BathReview(
            vessel, kept, tuple(shown.get((vessel, kept), ())), tuple(reckoned.get((vessel, kept), ()))
        )
        for vessel, kept in names
    )


def _shown_then(entries: Iterable[Entry]) -> dict[Named, list[BathLine]]:
    found: dict[Named, list[BathLine]] = {}
    for entry in entries:
        if isinstance(entry.event, e.Accounted):
            for row in entry.event.baths:
                name = (str(row.get("vessel", "")), bool(row.get("kept", False)))
                found.setdefault(name, []).append(_as_line(row, entry, entry.event.after))
    return found


def _as_line(row: Mapping[str, Any], entry: Entry, after: int) -> BathLine:
    return BathLine(
        after=after,
        at=entry.instant.at,
        volume_l=_number(row.get("volume_l")),
        lot=str(row.get("lot", "")),
        mass_g=_number(row.get("mass_g")),
        low_g=_number(row.get("low_g")),
        high_g=_number(row.get("high_g")),
    )


def _number(value: object) -> float | None:
    return float(value) if isinstance(value, int | float) else None


def _reckoned_now(day: LoggedDay) -> dict[Named, list[BathLine]]:
    """The account after each entry at which the dyer was shown one, and at the end."""
    found: dict[Named, list[BathLine]] = {}
    for entry, account in _accounts(day):
        for bath in account.baths:
            for line in _lines_of(bath, entry):
                found.setdefault((bath.vessel, bath.kept), []).append(line)
    return found


def _accounts(day: LoggedDay) -> Iterable[tuple[Entry, Account]]:
    wanted = {one.event.after for one in day.entries if isinstance(one.event, e.Accounted)}
    facts = [one for one in effective(day.entries) if not isinstance(one.event, e.Accounted)]
    ledger = Ledger.start(day.plan, day.opened, starting_of(day.header))
    for index, entry in enumerate(facts):
        # The corrections are carried out already: to hand one on would fold the whole day again.
        if not isinstance(entry.event, e.Corrected):
            ledger = ledger.after(entry)
        if entry.n in wanted or index == len(facts) - 1:
            yield entry, ledger.account()


def _lines_of(bath: BathEstimate, entry: Entry) -> Sequence[BathLine]:
    """A bath as the testimony would round it, so that a difference is one of estimates, never of rounding."""
    litres, at = rounded(bath.volume_l.mean), entry.instant.at
    amounts = [one for one in (*bath.dye, *bath.contents) if one.grams.mean >= LEAST_G]
    return [BathLine(entry.n, at, litres, one.lot, *_rounded(one.grams)) for one in amounts] or [
        BathLine(entry.n, at, litres)
    ]


def _rounded(grams: Band90) -> tuple[float, float, float]:
    return rounded(grams.mean), rounded(grams.low), rounded(grams.high)
