"""The bath's account line by line, as a page of text: what moved, when, and what that did. Reckons nothing."""

from dyesession.account import Account
from dyesession.account.model import Band90, LedgerLine
from dyesession.account.say import line as said_line
from dyesession.account.say import main_bath, rounded_band
from dyesession.account.told import picture, told
from dyesession.plan.model import Plan
from dyesession.session import words
from dyesession.session.state import State


def bath_page(account: Account, plan: Plan, state: State, vessel: str = "") -> str:
    """All that is said of a bath, the main one where none is in hand; its strength over the day; every movement."""
    said = told(account, plan, vessel or None)
    main = main_bath(account, plan)
    shown = vessel or (main.vessel if main is not None else "")
    drawn = picture(account, shown) if shown else ""
    parts = ["\n".join(said_line(one) for one in said), f"strength over the day  {drawn}" if drawn else ""]
    return "\n\n".join(one for one in (*parts, ledger_page(account, state)) if one)


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
