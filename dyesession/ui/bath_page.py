"""The bath's account line by line, as a page of text: what moved, when, and what that did. Reckons nothing."""

from dyesession.account import Account
from dyesession.account.model import Band90, LedgerLine
from dyesession.account.say import rounded_band
from dyesession.session import words
from dyesession.session.state import State


def ledger_page(account: Account, state: State) -> str:
    """Every line of the ledger; one sentence where there is none yet."""
    return "\n".join(_line(state, one) for one in account.lines) or "Nothing has moved yet."


def _line(state: State, line: LedgerLine) -> str:
    changes = [_signed(line.volume_change_l, "L")] if line.volume_change_l.mean else []
    changes += [f"{_signed(one.grams, 'g')} {one.lot}" for one in line.changes if one.grams.mean]
    when = words.clock_text(state, line.second)
    named = f"{words.letter(state, line.vessel)} {line.vessel}".strip() if line.vessel else ""
    return "  ".join(one for one in (when, named, line.what, ", ".join(changes)) if one)


def _signed(band: Band90, unit: str) -> str:
    """A change with its sign, so that what went out is not read as what came in."""
    if band.mean > 0:
        return f"+{rounded_band(band, unit)}"
    return f"-{rounded_band(Band90(-band.mean, -band.high, -band.low), unit)}"
