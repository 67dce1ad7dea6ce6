"""The shelf as it stands on a day: days and a date in, kept baths and waiting fibre out. Pure.

Which days count is for the caller to say: rehearsals never do.
"""

from collections.abc import Sequence
from datetime import date, timedelta

from dyesession.account import Band90
from dyesession.care import Household, Situation, keeping, reminders
from dyesession.session.opening import LoggedDay
from dyesession.session.state import Lot
from dyesession.shelf.drawing import Standing, source_of, standing_baths
from dyesession.shelf.estimates import Estimates, Reckon, account_of_day
from dyesession.shelf.model import Inside, KeptBath, Shelf, Told, Waiting, WouldDo
from dyesession.shelf.say import bath_sentences
from dyesession.shelf.tracing import COLOURED, Drew, Traced, traced
from dyesession.shelf.would_do import Mordanting, recharges, would_do
from dyesession.units import show_mass

__all__ = ["bath_sentences", "shelf_of", "told_to"]

ALIKE_SHARE = 0.05  # two weighings of one skein, damp or dry days between; our own choice, no source
ENDED = ("complete", "stopped")


def shelf_of(
    days: Sequence[LoggedDay],
    today: date,
    household: Household | None = None,
    reckoned: Reckon = account_of_day,
) -> Shelf:
    """Everything that stands on the shelf of these days; rehearsals among them are passed over."""
    all_days = [traced(one) for one in days if not one.rehearsal]
    stood_on = _demo_stands_on(all_days, today)
    today = stood_on or today
    standing, told = standing_baths(all_days)
    estimates = Estimates(standing, reckoned)
    over = {one.label for one in told}
    baths = [
        _bath(one, standing, estimates, today, household or Household(), told)
        for one in standing
        if not one.gone or one.put_by.label in over
    ]
    return Shelf(
        tuple(sorted(baths, key=lambda one: (one.look_again, one.kept_at))),
        waiting_fibre(all_days, today),
        tuple(told),
        stood_on,
    )


DEMO_SHOWN_DAYS_AFTER = 4  # so that what the last demo day left is not yet past its date; our own choice, no source


def _demo_stands_on(days: Sequence[Traced], today: date) -> date | None:
    """A demo season is shown as it stood soon after its last day, not as it would have rotted since."""
    if not days or not all(is_demo(one) for one in days):
        return None
    last = max(one.day.opened.at.date() for one in days)
    return min(today, last + timedelta(days=DEMO_SHOWN_DAYS_AFTER))


def is_demo(day: Traced) -> bool:
    """Whether a day is an invented one that came with the program."""
    return day.day.header.get("demo") is True


def told_to(shelf: Shelf, session: str) -> tuple[str, ...]:
    """What one session is to be told: where it and another drew more than there was."""
    return tuple(one.text for one in shelf.told if session in one.sessions)


def _bath(
    one: Standing,
    standing: Sequence[Standing],
    estimates: Estimates,
    today: date,
    household: Household,
    told: Sequence[Told],
) -> KeptBath:
    keeper, put_by = one.keeper, one.put_by
    inside, volume_l = estimates.inside(one), estimates.volume(one)
    contents = tuple((each.substance, None) for each in inside)
    keeps = keeping(
        tuple((each.substance, None) for each in inside if not each.carried), place_of(put_by.place)
    )
    began_on = estimates.began(one).date()
    look_again = began_on + timedelta(days=keeps.days)
    uses, read = estimates.uses(one), estimates.ph(one)
    dye = [each for each in inside if each.role == "dyestuff"]
    return KeptBath(
        session=keeper.day.name,
        label=put_by.label,
        recipe=keeper.day.recipe,
        kept_at=put_by.at,
        age_days=max(0, (today - began_on).days),
        volume_l=volume_l,
        inside=inside,
        uses=uses,
        hue_may_drift=bool(dye) and uses > 0,
        went_through=tuple(_went_through(one, standing).values()),
        ph=read[0] if read is not None else None,
        ph_on=read[1].date() if read is not None else None,
        look_again=look_again,
        look_again_source=keeps.source,
        past=today > look_again,
        how=estimates.how(one),
        cautions=_cautions(put_by.label, contents, volume_l, (look_again - today).days, household),
        draws=tuple(one.draws),
        troubles=tuple(each.text for each in told if _is_about(each, one)),
        drawn_from=tuple(f"{drew.label} ({_keeper_of(standing, drew)})" for drew in put_by.trace.drew),
        recharge=recharges(_mordanted_in(one, estimates), inside),
        would_do=_would_do(one, estimates, dye, volume_l),
        demo=is_demo(keeper),
        began_on=began_on,
        left_l=one.left_l,
        entry=put_by.n,
        place=put_by.place,
    )


def place_of(words: str) -> str:
    """Which of the places `keeping` knows a dyer's words mean: cold and frozen are said so, all else is a room."""
    said = words.casefold().split()
    return next((one for one in ("frozen", "cold") if one in said), "room")


def _mordanted_in(one: Standing, estimates: Estimates) -> list[Mordanting]:
    """Each first mordanting behind a bath: its fibre in grams and what went in for it."""
    return [
        Mordanting(
            sum(lot.mass_g for lot in each.keeper.last.lots if lot.name in each.put_by.trace.lots),
            estimates.doses_g(each),
        )
        for each in estimates.origins(one)
    ]


def _would_do(
    one: Standing, estimates: Estimates, dye: Sequence[Inside], volume_l: Band90 | None
) -> WouldDo | None:
    """What it would still do, told by its own dyeing, else by the dyeing of a bath it was drawn from."""
    own = would_do(one.keeper, estimates.account(one.keeper.day), one.put_by.trace.lots, dye, volume_l)
    if own is not None or not one.put_by.trace.drew:
        return own
    for first in estimates.origins_before(one):
        keeper, lots = first.keeper, first.put_by.trace.lots
        found = would_do(keeper, estimates.account(keeper.day), lots, dye, volume_l)
        if found is not None:
            return found
    return None


def _is_about(told: Told, one: Standing) -> bool:
    return told.label == one.put_by.label and one.keeper.day.name in told.sessions


def _keeper_of(standing: Sequence[Standing], drew: Drew) -> str:
    source = source_of(standing, drew)
    return source.keeper.day.name if source is not None else "of a day not here"


def _went_through(
    one: Standing, standing: Sequence[Standing], back: int = 0
) -> dict[tuple[str, str], str]:
    """The fibre that was in it, that of the baths it was drawn from first; each day's lot once."""
    lots, day = {lot.name: lot for lot in one.keeper.last.lots}, one.keeper.day.name
    own = {(day, name): _lot_words(lots[name]) for name in one.put_by.trace.lots if name in lots}
    sources = [source_of(standing, drew) for drew in one.put_by.trace.drew] if back < len(standing) else []
    before: dict[tuple[str, str], str] = {}
    for bath in sources:
        if bath is not None and bath is not one:
            before |= _went_through(bath, standing, back + 1)
    return before | own


def _lot_words(lot: Lot) -> str:
    return f"{show_mass(lot.mass_g)} {lot.kind}"


def _cautions(
    label: str,
    contents: tuple[tuple[str, float | None], ...],
    volume_l: Band90 | None,
    days: int,
    household: Household,
) -> tuple[str, ...]:
    """What care says of taking this bath off the shelf, the worst first."""
    situation = Situation(
        step="shelf",
        actions=("opens",),
        vessel=label,
        letter=label,
        contents=contents,
        pouring=contents,
        pouring_from=label,
        volume_l=volume_l.mean if volume_l is not None else None,
        look_again_in_days=days,
        household=household,
    )
    return tuple(one.text for one in reminders(situation))


def waiting_fibre(days: Sequence[Traced], today: date) -> tuple[Waiting, ...]:
    """Lots mordanted on a day that is over, in no dye bath then or since; the oldest first."""
    found = []
    for day in days:
        if day.last.status not in ENDED:
            continue
        for lot, how in _mordanted(day):
            if not any(_used(lot, day, later) for later in days if later.day.opened.at > day.day.opened.at):
                since = day.day.opened.at.date()
                age, demo = max(0, (today - since).days), is_demo(day)
                found.append(
                    Waiting(day.day.name, lot.name, lot.kind, lot.mass_g, since, age, how, demo)
                )
    return tuple(sorted(found, key=lambda one: (one.since, one.lot)))


def _mordanted(day: Traced) -> list[tuple[Lot, str]]:
    steps = day.last.steps
    coloured = {lot for one in steps if one.plan.stage in COLOURED for lot in one.entered}
    found = []
    for lot in day.last.lots:
        mine = [one for one in steps if one.plan.stage == "mordant" and lot.name in one.entered]
        if lot.snippet or lot.name in coloured or not (mine or lot.mordanted):
            continue
        found.append((lot, _how(day, {one.name for one in mine}) or lot.mordanted))
    return found


def _how(day: Traced, steps: set[str]) -> str:
    """What went into its mordant bath, by share of all the fibre that was in it."""
    fibre = {name for one in day.last.steps if one.name in steps for name in one.entered}
    fibre_g = sum(one.mass_g for one in day.last.lots if one.name in fibre)
    named = dict(day.last.substances)
    put_in: dict[str, float] = {}
    for one in day.last.put_in:
        if one.step in steps:
            put_in[one.ingredient] = put_in.get(one.ingredient, 0.0) + one.mass_g
    if fibre_g <= 0:
        return ""
    return ", ".join(
        f"{named.get(name, name)} {100.0 * grams / fibre_g:.3g} %" for name, grams in put_in.items()
    )


def _used(lot: Lot, day: Traced, later: Traced) -> bool:
    """Whether a later day's lot is this one: it is said so, or it is mordanted already, of the same name,
    kind and weight.
    """
    for other in later.last.lots:
        if not other.mordanted or other.kind != lot.kind:
            continue
        alike = abs(other.mass_g - lot.mass_g) <= ALIKE_SHARE * lot.mass_g
        if day.day.name in other.mordanted or (other.name == lot.name and alike):
            return True
    return False
