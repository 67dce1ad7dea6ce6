"""The bath's account as a page of text: what stands in each bath, then line by line what moved. Reckons nothing."""

from dyesession.account import Account
from dyesession.account.model import Band90, BathEstimate, LedgerLine
from dyesession.account.say import FINEST, main_bath, rounded_band
from dyesession.account.say import line as said_line
from dyesession.account.told import picture, told
from dyesession.plan.model import Plan
from dyesession.session import words
from dyesession.session.state import State

OTHER_FIBRE_KEY, SNIPPET_KEY = "1", "2"  # as on the page of rare acts: a row by its number
NOTHING = "Nothing has moved yet: the first line comes with the first water."
LEAST = FINEST / 2.0  # less of a thing is "less than 0.1": it would round to nothing


def bath_page(account: Account, plan: Plan, state: State, vessel: str = "") -> str:
    """All that is said of a bath, the main one where none is in hand; its strength over the day; every movement."""
    said = told(account, plan, vessel or None)
    main = main_bath(account, plan)
    shown = vessel or (main.vessel if main is not None else "")
    drawn = picture(account, shown) if shown else ""
    parts = ["\n".join(said_line(one) for one in said), f"strength over the day  {drawn}" if drawn else ""]
    parts += [
        f"{OTHER_FIBRE_KEY}  what would it still do for other fibre?\n"
        f"{SNIPPET_KEY}  how far along is the fibre, by a dried snippet?"
    ] if account.baths else []
    return "\n\n".join(one for one in (*parts, ledger_page(account, state)) if one)


def ledger_page(account: Account, state: State) -> str:
    """What stands in the baths, and every line of the ledger, the oldest first; a sentence where there is none yet."""
    if not account.lines:
        return NOTHING
    stands = [_stands(state, one) for one in account.baths]
    head = ["as it stands", *stands, "", "how it came to that"] if stands else []
    return "\n".join([*head, *(_line(state, one) for one in account.lines)])


def _stands(state: State, bath: BathEstimate) -> str:
    named = f"kept, {bath.vessel}" if bath.kept else f"{words.letter(state, bath.vessel)} {bath.vessel}"
    held = [f"the colour of {rounded_band(one.grams, 'g')} {one.lot}" for one in bath.dye if one.grams.mean >= LEAST]
    held += [f"{rounded_band(one.grams, 'g')} {one.lot}" for one in bath.contents if one.grams.mean >= LEAST]
    return f"  {named.strip()}: {', '.join([rounded_band(bath.volume_l, 'L'), *held])}, {bath.how}"


def _line(state: State, line: LedgerLine) -> str:
    changes = [_moved(line.volume_change_l, "L")] if line.volume_change_l.mean else []
    changes += [f"{_moved(one.grams, 'g')} {one.lot}" for one in line.changes if one.grams.mean]
    when = words.clock_text(state, line.second)
    named = f"{words.letter(state, line.vessel)} {line.vessel}".strip() if line.vessel else ""
    what = f"{named}: {line.what}" if named else line.what
    return f"{when}  {'; '.join([what, ', '.join(changes)] if changes else [what])}, {line.how}"


def _moved(band: Band90, unit: str) -> str:
    """What came in or went out, told by a word: a dash before a range would read as the range's own."""
    way, size = ("in", band) if band.mean > 0 else ("out", Band90(-band.mean, -band.high, -band.low))
    said = rounded_band(size, unit) if size.mean >= LEAST else f"less than {FINEST:g} {unit}"
    return f"{way} {said}"
