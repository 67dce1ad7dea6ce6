"""The course of a day in every world: holdings carried from one happening to the next, and their lines.

Knows nothing of weights or bands; each world goes its own way, so the same day can be gone through again with
the worlds put elsewhere. What is an event's own doing stands in `movements`, what is time's in `passing`.
"""

from dataclasses import dataclass, replace

from dyesession.account import lines as l
from dyesession.account.beliefs import Placing
from dyesession.account.holdings import Holdings
from dyesession.account.movements import moved, poured_in
from dyesession.account.passing import Stage, dried, passed
from dyesession.account.pools import Pool
from dyesession.account.unknowns import Starting, by_substance, kept_name, priors_of, unknowns, with_all
from dyesession.plan.model import Plan
from dyesession.session import events as e
from dyesession.session.fold import Entry
from dyesession.session.state import OUT_DRY, State

# Steam alone is marked this often: a mark holds every world's pool, and a dyer may read the heat every minute.
MARKS_APART_S = 600.0


@dataclass(frozen=True)
class Happening:
    """An entry with the facts' states round it, and the session second it happened at."""

    entry: Entry
    second: float
    before: State
    after: State

    @property
    def odd(self) -> str:
        """Why it does not fit what came before it, "" when it does."""
        flags = self.after.flags
        return flags[-1].text if len(flags) > len(self.before.flags) else ""


@dataclass(frozen=True)
class Mark:
    """What a vessel held at one moment, in every world."""

    n: int
    second: float
    vessel: str
    pool: Pool


@dataclass(frozen=True)
class Course:
    """Where a day has come: holdings, the holdings as the lines have told them, the lines, and what each
    vessel held each time that changed.
    """

    held: Holdings
    told: Holdings
    second: float = 0.0
    moves: tuple[l.Movement, ...] = ()
    marks: tuple[Mark, ...] = ()


def started(plan: Plan, starting: Starting, placing: Placing) -> Course:
    """A day on which nothing has happened, its worlds where they are put."""
    held = Holdings(unknowns(plan, starting, placing.steps))
    return Course(held, held)


def _new_dyestuff(held: Holdings, happening: Happening) -> bool:
    names = _dyestuffs(held, happening.after, happening.entry.event)
    return any(kept_name(one) not in held.unknowns.values for one in names)


def _dyestuffs(held: Holdings, state: State, event: e.Event) -> dict[str, str]:
    """Substances of all colour there is, by lot: weighed today, or come with a bath of another day."""
    coming = poured_in(event) if isinstance(event, e.Drawn) else ()
    poured = {one.lot: one.substance for one in (*held.of_other_days.values(), *coming) if one.is_dye}
    return {one.name: one.substance for one in state.dyestuffs} | poured


def _as_told(held: Holdings, happening: Happening, starting: Starting) -> Holdings:
    """The holdings with what the day has come upon that no plan told: a fibre of another family, another
    dyestuff, a lot's weight put right.
    """
    state = happening.after
    dyestuffs = _dyestuffs(held, state, happening.entry.event)
    kinds = [one.kind for one in state.lots]
    starting = by_substance(starting, dyestuffs, kinds)
    held = held.changed(unknowns=with_all(held.unknowns, priors_of(kinds, dyestuffs), starting))
    for lot in state.lots:
        fibre = held.fibres.get(lot.name)
        if fibre is not None and fibre.mass_g != lot.mass_g:
            held = held.with_fibre(lot.name, replace(fibre, mass_g=lot.mass_g))
    return held


def carried_on(course: Course, starting: Starting, happening: Happening) -> Course:
    """A day one happening further; a doubted note has a line and nothing else."""
    if isinstance(happening.entry.event, e.Noted):
        line = l.only_noted(happening.entry, happening.second)
        return replace(course, moves=(*course.moves, line))
    second, before, held = _held_on(course, starting, happening)
    if happening.odd:
        line = l.not_counted(happening.entry, happening.odd, second)
        return replace(course, held=before, second=second, moves=(*course.moves, line))
    new = l.lines_of(happening.entry, second, course.told, before, held)
    marks = (*course.marks, *_marks(course, happening.entry.n, second, before, held))
    return Course(held, l.told_up_to(course.told, before, held), second, (*course.moves, *new), marks)


def holdings_on(course: Course, starting: Starting, happening: Happening) -> Course:
    """The same without its lines and marks, where only the readings' evidence is looked at."""
    if isinstance(happening.entry.event, e.Noted):
        return course
    second, _, held = _held_on(course, starting, happening)
    return Course(held, course.told, second)


def _held_on(course: Course, starting: Starting, happening: Happening) -> tuple[float, Holdings, Holdings]:
    """The second, and the holdings just before and just after a happening; the same where it is odd."""
    second = max(happening.second, course.second)
    stage = Stage(happening.before, starting)
    before = passed(course.held, stage, second, _own_pot(happening.entry.event))
    if happening.odd:
        return second, before, before
    if happening.before.lots is not happening.after.lots or _new_dyestuff(before, happening):
        before = _as_told(before, happening, starting)
    held = moved(before, happening.entry.event, happening.before, happening.after)
    held = _all_dried(held, happening.before, happening.after)
    return second, before, held if _own_pot(happening.entry.event) else held.settled_at(second)


def _marks(course: Course, n: int, second: float, before: Holdings, after: Holdings) -> list[Mark]:
    """What changed in a vessel: as it had become by then, and as it was left. Time alone is marked now and then."""
    found, last = [], course.held
    for name in dict.fromkeys((*before.baths, *after.baths)):
        had, has, was = after.bath(name).pool, before.bath(name).pool, last.bath(name).pool
        if has is not was and name in last.baths and (had is not has or _long_since(course, name, second)):
            found.append(Mark(n, second, name, has))
        if had is not has:
            found.append(Mark(n, second, name, had))
    return found


def _long_since(course: Course, vessel: str, second: float) -> bool:
    marked = next((one.second for one in reversed(course.marks) if one.vessel == vessel), None)
    return marked is None or second - marked >= MARKS_APART_S


def _own_pot(event: e.Event) -> str:
    """The pot a reading is of: it changes nothing in any other, whose time can be settled later. Else ""."""
    return event.vessel if isinstance(event, e.Read) and not event.lot else ""


def _all_dried(held: Holdings, before: State, after: State) -> Holdings:
    for lot in after.lots:
        was = before.lot(lot.name)
        if lot.place == OUT_DRY and was is not None and was.place != OUT_DRY and lot.name in held.fibres:
            held = dried(held, lot.name)
    return held
