"""The shelf of a workroom: its logs read, its acts written. Reads and writes files; computes nothing.

What screens and commands both want of the shelf stands here once.
"""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.errors import UserError

if TYPE_CHECKING:
    from collections.abc import Callable
    from datetime import date

    from dyesession.care import Reminder
    from dyesession.cli.workroom import Workroom
    from dyesession.clock import Clock
    from dyesession.daybook.finding import DayBook
    from dyesession.session.brought import Brought
    from dyesession.session.from_shelf import FromShelf, ShelfBath
    from dyesession.session.opening import LoggedDay
    from dyesession.shelf import KeptBath, Shelf, ShelfAct
    from dyesession.storage import Storage


class NotOnTheShelf(UserError):
    """No bath of that label stands there, or several do."""


class LeftAsItStands(UserError):
    """The dyer, told what to mind, would rather not."""


def days_for_the_shelf(workroom: Workroom, book: DayBook) -> list[LoggedDay]:
    """The days that count and have to do with the shelf: what they kept, drew, or left mordanted."""
    from dyesession.session.quick_day import read_facts_of_day
    from dyesession.storage import DISK

    wanted = [
        one
        for one in book.counted
        if one.kept or one.drawn or one.waiting or any(lot.mordanted for lot in one.fibre)
    ]
    return [read_facts_of_day(DISK, workroom.log(one.file)) for one in wanted]


def shelf_now(workroom: Workroom, today: date) -> Shelf:
    """The whole shelf as it stands."""
    from dyesession.cli.daybook import book_of, index_of
    from dyesession.daybook.reckoned_index import kept_reckoning
    from dyesession.shelf import shelf_of
    from dyesession.storage import DISK

    days = days_for_the_shelf(workroom, book_of(workroom))
    beside = index_of(workroom.logs)
    index = beside.with_name(beside.name.replace("day-book", "kept-baths"))
    with kept_reckoning(DISK, index) as reckoned:
        return shelf_of(days, today, workroom.kitchen(None).household, reckoned)


def for_the_day(workroom: Workroom, today: date, session: str = "") -> FromShelf:
    """What the shelf tells a day that opens; nothing where the logs cannot be gone through: the day comes first."""
    from dyesession.cli.daybook import book_of
    from dyesession.session.from_shelf import FromShelf
    from dyesession.shelf import from_shelf

    try:
        told = from_shelf(days_for_the_shelf(workroom, book_of(workroom)), today, session)
    except (UserError, OSError):
        return FromShelf()
    return replace(told, bringing=partial(_bringing, workroom, today))


def _bringing(workroom: Workroom, today: date, bath: ShelfBath, volume_l: float | None) -> tuple[Brought, ...]:
    """What a bath brings along; nothing where its own log cannot be gone through: the pouring comes first."""
    from dyesession.shelf import bringing

    try:
        return bringing(bath_named(shelf_now(workroom, today), bath.label, bath.session), volume_l)
    except (UserError, OSError):
        return ()


def bath_named(shelf: Shelf, label: str, session: str = "") -> KeptBath:
    """The bath meant by a label, by large or small letters; the session that kept it tells two of one label apart."""
    same = [one for one in shelf.baths if one.label.casefold() == label.strip().strip("“”\"'").casefold()]
    found = [one for one in same if not session or one.session == session]
    if len(found) == 1:
        return found[0]
    if found:
        raise NotOnTheShelf(
            f"Several baths are labelled “{label}”; say which day kept it, for example --kept-by {found[0].session}"
        )
    where = f" of {session}" if session and same else ""
    standing = ", ".join(f"“{one.label}”" for one in shelf.baths) or "nothing"
    raise NotOnTheShelf(f"No bath “{label}”{where} stands on the shelf; there stands {standing}.")


def write(workroom: Workroom, storage: Storage, act: ShelfAct, clock: Clock) -> Path:
    """Write an act into a log of its own."""
    from dyesession.shelf import write_act

    return write_act(storage, workroom.logs, act, workroom.kitchen(None), clock)


def draw_into(
    workroom: Workroom,
    storage: Storage,
    log: Path,
    bath: KeptBath,
    vessel: str,
    volume_l: float | None,
    clock: Clock,
    agreed: Callable[[tuple[Reminder, ...]], bool] = lambda minded: True,
) -> tuple[str, tuple[Reminder, ...]]:
    """Pour a kept bath into a pot of an open day, and write it there; answers with the pot and what to bear in mind.

    `agreed` is asked with what to bear in mind before anything is written; a no raises `LeftAsItStands`.
    """
    from dyesession.account.live import reckoner_for
    from dyesession.cli.workroom import check_own
    from dyesession.session.opening import resume_day
    from dyesession.session.situation import situation_of
    from dyesession.session.understood import pot_named
    from dyesession.shelf import drawing, drawn
    from dyesession.shelf.writing import done

    check_own(log)
    kitchen = workroom.kitchen(None)
    session = resume_day(storage, log, clock, kitchen.household, reckoner_for, kitchen.poison_centre)
    try:
        state = session.snapshot.state
        told = drawn(bath, pot_named(vessel, state), volume_l)
        minded = drawing(bath, told.vessel, situation_of(state, told, kitchen.household), kitchen.household)
        if not agreed(minded):
            raise LeftAsItStands(f"“{bath.label}” stands as it stood; nothing was written.")
        done(session, told)
        return told.vessel, minded
    finally:
        session.close()


def correct(
    workroom: Workroom, storage: Storage, bath: KeptBath, log: Path, volume_l: float, why: str, clock: Clock
) -> str:
    """Put right the litres of an entry of the day that kept a bath, or drew from it, in that day's own log."""
    from dyesession.account.live import reckoner_for
    from dyesession.cli.workroom import check_own
    from dyesession.session.opening import resume_day
    from dyesession.shelf import correction
    from dyesession.shelf.writing import done

    check_own(log)
    name, event = correction(bath, log.stem, volume_l, why)
    kitchen = workroom.kitchen(None)
    session = resume_day(storage, log, clock, kitchen.household, reckoner_for, kitchen.poison_centre)
    try:
        done(session, event)
    finally:
        session.close()
    return f"Entry {event.entry} of {name} put right."
