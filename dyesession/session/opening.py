"""Opening a day: a new log from recipe, plan and kitchen, or without a recipe, or an old one taken up again.

Knows the log's header and nothing of how estimates are made: the reckoner is handed in.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeVar

from dyesession import __version__
from dyesession.care import DISCLAIMER_SHORT, Household
from dyesession.clock import Clock, Instant, clock_jump_s, elapsed_s
from dyesession.errors import UserError
from dyesession.kitchen import kitchen_for_log
from dyesession.kitchen.model import Kitchen
from dyesession.plan import improvised, plan_for_log, plan_from_document
from dyesession.plan.improvised import NAME as IMPROVISED
from dyesession.plan.model import FibreLot, Plan
from dyesession.recipe.model import Recipe
from dyesession.session import events as e
from dyesession.session import log
from dyesession.session.fold import Entry
from dyesession.session.from_shelf import FromShelf
from dyesession.session.session import GAP_S, Reckoner, Session
from dyesession.storage import Storage
from dyesession.units import quoted

A = TypeVar("A")

Priors = Sequence[Mapping[str, Any]]
ReckonerFor = Callable[[Plan, Instant], Reckoner[A]]


class DayError(UserError):
    """A log that cannot be taken up as a day at the stove."""


@dataclass(frozen=True)
class LoggedDay:
    """A day as its log tells it: nothing running, nothing locked."""

    name: str
    path: str
    recipe: str
    rehearsal: bool
    plan: Plan
    opened: Instant
    entries: tuple[Entry, ...]
    header: dict[str, Any]
    notes: tuple[str, ...] = ()
    program: str = ""

    @property
    def improvised(self) -> bool:
        """Whether the day was begun without a recipe."""
        recipe = self.header.get("recipe")
        return isinstance(recipe, Mapping) and recipe.get("improvised") is True

    @property
    def at_the_shelf(self) -> bool:
        """Whether nothing was dyed: the log tells what was done to kept baths between two days."""
        recipe = self.header.get("recipe")
        return isinstance(recipe, Mapping) and recipe.get(AT_THE_SHELF) is True


def begin_day(
    storage: Storage,
    folder: Path,
    recipe: Recipe,
    plan: Plan,
    kitchen: Kitchen,
    clock: Clock,
    reckoner_for: ReckonerFor[A],
    *,
    rehearsal: bool = False,
    shelf: FromShelf | None = None,
    priors: Priors = (),
) -> Session[A]:
    """A new day: its log is on disk, header and all, before this returns.

    `priors` are tables of the dyer's own numbers that its estimates start from, as its log is to hold them.
    """
    return _begun(
        storage, folder, recipe.document, plan, kitchen, clock, reckoner_for, rehearsal, shelf, priors
    )


def begin_improvised(
    storage: Storage,
    folder: Path,
    lots: Sequence[FibreLot],
    kitchen: Kitchen,
    clock: Clock,
    reckoner_for: ReckonerFor[A],
    *,
    name: str = IMPROVISED,
    rehearsal: bool = False,
    shelf: FromShelf | None = None,
    priors: Priors = (),
) -> Session[A]:
    """A new day without a recipe, named by the dyer or not: its log is on disk before this returns.

    Stages come in as `Replanned("step", ...)`; `priors` are as in `begin_day`. Raises `PlanError` where the lots have no sound weight.
    """
    document = {"format": 1, "name": name, "improvised": True}
    plan = improvised(lots, kitchen, name)
    return _begun(storage, folder, document, plan, kitchen, clock, reckoner_for, rehearsal, shelf, priors)


def begin_at_the_shelf(
    storage: Storage,
    folder: Path,
    plan: Plan,
    kitchen: Kitchen,
    clock: Clock,
    reckoner_for: ReckonerFor[A],
) -> Session[A]:
    """A log of its own for what is done to kept baths between two dye days: no fibre, no step.

    Nobody else writes into it, so that two folders can be put together by copying.
    """
    document = {"format": 1, "name": plan.recipe, "improvised": True, AT_THE_SHELF: True}
    return _begun(storage, folder, document, plan, kitchen, clock, reckoner_for, False, None)


AT_THE_SHELF = "at_the_shelf"


def _begun(
    storage: Storage,
    folder: Path,
    recipe: Mapping[str, Any],
    plan: Plan,
    kitchen: Kitchen,
    clock: Clock,
    reckoner_for: ReckonerFor[A],
    rehearsal: bool,
    shelf: FromShelf | None,
    priors: Priors = (),
) -> Session[A]:
    opened, title = clock.now(), str(recipe["name"])
    header = _header(recipe, plan, kitchen, opened, rehearsal)
    if priors:
        header["prior"] = [dict(one) for one in priors]
    writer = log.create_log(storage, folder, log.session_name(title, opened.at.date()), header)
    return Session(
        writer,
        plan,
        title,
        opened,
        (),
        clock,
        kitchen.household,
        reckoner_for(plan, opened),
        kitchen.poison_centre,
        shelf,
    )


def _header(
    recipe: Mapping[str, Any], plan: Plan, kitchen: Kitchen, opened: Instant, rehearsal: bool
) -> dict[str, Any]:
    header: dict[str, Any] = {
        "opened": opened.at,
        "boot": opened.boot,
        "up_s": opened.up_s,
        "program": f"dyesession {__version__}",
    }
    header["mind"] = DISCLAIMER_SHORT
    if rehearsal:
        header["rehearsal"] = True
    header["fibre"] = [_fibre(one) for one in plan.lots]
    header["recipe"] = dict(recipe)
    header["kitchen"] = kitchen_for_log(kitchen)
    header["plan"] = plan_for_log(plan)
    return header


def _fibre(lot: FibreLot) -> dict[str, Any]:
    known = {"form": lot.form, "mordanted": lot.mordanted}
    return {
        "name": lot.name,
        "kind": lot.kind,
        "mass_g": lot.mass_g,
        **{key: value for key, value in known.items() if value},
    }


def resume_day(
    storage: Storage,
    path: Path,
    clock: Clock,
    household: Household,
    reckoner_for: ReckonerFor[A],
    poison_centre: str = "",
    shelf: FromShelf | None = None,
) -> Session[A]:
    """An open day taken up where its facts left it; a gap or a torn end becomes an entry of its own.

    Raises DayError for a log that a newer program wrote into, and what `log.open_log` raises; the file is
    then as it was.
    """
    writer = log.open_log(storage, path)
    try:
        day = _day(writer.contents, str(path))
        _understood(day)
    except UserError:
        writer.close()
        raise
    session = Session(
        writer,
        day.plan,
        day.recipe,
        day.opened,
        day.entries,
        clock,
        household,
        reckoner_for(day.plan, day.opened),
        poison_centre,
        shelf,
    )
    _note_return(session, clock.now(), writer)
    return session


def _understood(day: LoggedDay) -> None:
    """A log with facts this program does not know is not written into: they might change what follows."""
    for one in day.entries:
        if isinstance(one.event, e.Unknown) and one.event.name != log.UNREADABLE:
            raise DayError(
                f"{day.path}: entry {one.n} is of a kind this program does not know,"
                f" {quoted(one.event.name)}; it can be looked at with review, and gone on with in the program"
                " that wrote it"
            )


def _note_return(session: Session[Any], now: Instant, writer: log.LogWriter) -> None:
    recovered = writer.recovered
    if recovered is not None:
        session.record(e.Recovered(recovered.torn_bytes, recovered.side_file.name))
    last = session.snapshot.state.instant
    if last is None:
        return
    away = elapsed_s(last, now)
    if away.seconds > GAP_S:
        session.record(e.ResumedAfterGap(round(away.seconds, 1), away.by))
    elif abs(jump_s := clock_jump_s(last, now)) > GAP_S:
        session.record(e.ClockChanged(round(jump_s, 1)))


def read_day(storage: Storage, path: Path) -> LoggedDay:
    """A log read for looking at: no lock, nothing changed."""
    return _day(log.read_log(storage, path), str(path))


def _day(contents: log.LogContents, path: str) -> LoggedDay:
    header = dict(contents.header)
    try:
        opened = Instant(header["opened"], str(header.get("boot", "")), float(header.get("up_s", 0.0)))
        plan = plan_from_document(header["plan"])
        recipe = str(header["recipe"]["name"])
    except (KeyError, TypeError, ValueError) as trouble:
        raise DayError(
            f"{path}: the head of this log has no whole plan and recipe (missing or odd: {trouble}); "
            "expected a log that dyesession began, for example one made by rehearse"
        ) from trouble
    return LoggedDay(
        name=str(header.get("session", "")),
        path=path,
        recipe=recipe,
        rehearsal=bool(header.get("rehearsal", False)),
        plan=plan,
        opened=opened,
        entries=tuple(_entry(one) for one in contents.entries),
        header=header,
        notes=contents.notes,
        program=str(header.get("program", "")),
    )


def _entry(one: log.Entry) -> Entry:
    instant = Instant(one.at, one.boot, one.up_s)
    return Entry(one.n, instant, e.event_from_fields(one.kind, one.fields), one.happened, one.trouble or "")
