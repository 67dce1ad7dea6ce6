"""What the shelf has to tell a day that opens: baths, waiting fibre, what does not add up. Facts alone.

Nothing is reckoned, so that a day opens at once; the account of a kept bath is for the shelf itself to show.
"""

from collections.abc import Sequence
from datetime import date

from dyesession.session.from_shelf import FromShelf, ShelfBath, ShelfFibre
from dyesession.session.opening import LoggedDay
from dyesession.shelf.drawing import Standing, standing_baths
from dyesession.shelf.model import Told
from dyesession.shelf.standing import is_demo, waiting_fibre
from dyesession.shelf.tracing import traced


def from_shelf(days: Sequence[LoggedDay], today: date, session: str = "") -> FromShelf:
    """The shelf's facts for the day named `session`, "" for one that begins.

    Rehearsals and demo days are passed over: nobody's kitchen holds what they kept or mordanted.
    """
    all_days = [one for one in (traced(day) for day in days if not day.rehearsal) if not is_demo(one)]
    standing, told = standing_baths(all_days)
    others = [one for one in standing if not one.gone and one.keeper.day.name != session]
    return FromShelf(
        tuple(_bath(one) for one in others),
        tuple(
            ShelfFibre(one.lot, one.kind, one.mass_g, one.how, one.since, one.session)
            for one in waiting_fibre(all_days, today)
            if one.session != session
        ),
        tuple(one.text for one in told if session in one.sessions or _for_all(one, session)),
    )


def _for_all(told: Told, session: str) -> bool:
    """A day that begins is told of every bath that was overdrawn, not of logs that are not here yet."""
    return not session and len(told.sessions) > 1


def _bath(one: Standing) -> ShelfBath:
    bath = one.put_by.bath
    named = dict(one.keeper.last.substances)
    names = (*(each.ingredient for each in bath.bath.contents), *bath.bath.liquor_of) if bath is not None else ()
    substances = tuple(dict.fromkeys(named.get(each, each) for each in names))
    return ShelfBath(one.put_by.label, one.keeper.day.name, one.left_l, substances)
