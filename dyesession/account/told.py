"""All that is said of a bath when somebody asks in full: its account, once more or not, how far along the fibre is,
what the old bath would still do, what the last reading moved; and its strength over the day as a small picture.

Knows nothing of screens: plain sentences, and one line of blocks.
"""

from dyesession.account.along import along
from dyesession.account.model import Account
from dyesession.account.once_more import once_more
from dyesession.account.over_the_day import over_the_day
from dyesession.account.say import Said, main_bath, rounded_band, sentences
from dyesession.account.say_answers import (
    again_in_short,
    along_words,
    last_effects,
    once_more_words,
    would_take_words,
)
from dyesession.account.would_take import would_take
from dyesession.dyeing.limits import OutOfRange
from dyesession.errors import UserError
from dyesession.plan.lots import lot_from_text
from dyesession.plan.model import Plan
from dyesession.units import quoted

BATH_EXAMPLE = "80 g silk"
BLOCKS = "▁▂▃▄▅▆▇█"
PICTURE_CELLS, TODAY_CELLS = 48, 16
LEAST_POINTS = 3  # fewer make no line
TRIAL_G = 100.0  # fibre that a used bath is asked about where nobody names any; our own choice


class NoAnswer(UserError):
    """A bath without colour, or a fibre nobody knows."""


def told(account: Account, plan: Plan, vessel: str | None = None) -> tuple[Said, ...]:
    """Every sentence of a bath, of the main one where none is named; the most wanted first."""
    bath = account.bath(vessel) if vessel is not None else main_bath(account, plan)
    if bath is None:
        return ()
    said, inside = [*sentences(account, plan, bath.vessel)], _inside(account, bath.vessel)
    for lot in bath.dye:
        found = None if bath.uses or inside else once_more(account, lot.lot)
        if found is not None:
            said = [*(one for one in said if one.about != "again"), *once_more_words(found)]
    said += dark_enough(account, bath.vessel)
    if bath.uses and not inside:
        said += old_bath(account, bath.vessel, _kind(plan), TRIAL_G)
    said += last_effects(account)
    return tuple(dict.fromkeys(said))


def dark_enough(account: Account, vessel: str) -> tuple[Said, ...]:
    """Is it dark enough, wet, now? For every lot in a vessel's bath."""
    inside = _inside(account, vessel)
    return tuple(one for lot in inside for one in along_words(along(account, lot), wet=True))


def again(account: Account, lot: str) -> tuple[Said, ...]:
    """Whether to extract a dyestuff again, in one short line; nothing before its first strain."""
    found = once_more(account, lot)
    return (again_in_short(found),) if found is not None else ()


def old_bath(account: Account, bath: str, kind: str, mass_g: float) -> tuple[Said, ...]:
    """What a bath would still do for so much fibre of a kind; nothing for a bath or a fibre nobody knows."""
    try:
        found = would_take(account, bath, kind, mass_g)
    except OutOfRange:
        return ()
    return would_take_words(found) if found is not None else ()


def old_bath_asked(account: Account, bath: str, text: str) -> tuple[Said, ...]:
    """What a bath would still do for fibre written as a dyer does, “80 g silk”; raises a sentence for any other."""
    lot = lot_from_text(text, "")
    said = old_bath(account, bath, lot.kind, lot.mass_g)
    if not said:
        raise NoAnswer(
            f"There is no colour in {bath}, or {quoted(lot.kind)} is no fibre known here; expected a bath with colour in"
            f" it and a fibre, for example “{BATH_EXAMPLE}”."
        )
    return said


def picture(account: Account, vessel: str, cells: int = PICTURE_CELLS) -> str:
    """A bath's strength over the day, evenly in time, as one line of blocks with its ends in g/L; "" for none."""
    points = over_the_day(account, vessel)
    most = max((one.strength_g_l.mean for one in points), default=0.0)
    if most <= 0.0 or points[-1].second <= points[0].second:
        return ""
    span_s = points[-1].second - points[0].second
    row = ""
    for cell in range(cells):
        second = points[0].second + span_s * (cell + 1) / cells
        now = next(one for one in reversed(points) if one.second <= second or one is points[0])
        row += BLOCKS[round((len(BLOCKS) - 1) * now.strength_g_l.mean / most)]
    return f"{row}  now {rounded_band(points[-1].strength_g_l, 'g/L')}, at most about {most:.{0 if most >= 10.0 else 1}f} g/L"


def strength_today(account: Account, plan: Plan) -> str:
    """The main bath's strength over the day in a line that fits beside a pot; "" until it has changed twice."""
    bath = main_bath(account, plan)
    if bath is None or len(over_the_day(account, bath.vessel)) < LEAST_POINTS:
        return ""
    drawn = picture(account, bath.vessel, TODAY_CELLS)
    return f"strength today {drawn}" if drawn else ""


def _inside(account: Account, vessel: str) -> tuple[str, ...]:
    return tuple(one.lot for one in account.fibres if one.place == vessel and not one.snippet)


def _kind(plan: Plan) -> str:
    return plan.lots[0].kind if plan.lots else "wool"
