"""A day in one line of the day book: what was dyed with what, when, how it came out, what it left.

Pure; made of one log's facts alone, so that it can be kept in an index and thrown away. Dates are ISO 8601.
"""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import Any

from dyesession.session import events as e
from dyesession.session.fold import effective, fold, opening_state
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State
from dyesession.substances import find

STRUCK = "struck: "
COLOURED = frozenset({"dye", "modify"})
_LOG_NAMED = re.compile(r"\blog ([a-z0-9][a-z0-9-]{0,79})")


@dataclass(frozen=True, slots=True)
class FibreLine:
    """One lot: grams washed and air-dry."""

    name: str
    kind: str
    mass_g: float
    mordanted: str = ""


@dataclass(frozen=True, slots=True)
class ColourLine:
    """A colour as it was read or said of a lot; `wet` is None where nobody said."""

    lot: str
    colour: str
    wet: bool | None = None


@dataclass(frozen=True, slots=True)
class DrawnLine:
    """A kept bath that was drawn from: its label and the session that kept it ("" for one of the same day)."""

    label: str
    session: str


@dataclass(frozen=True, slots=True)
class CareLine:
    """A piece of aftercare: what, when, which lot ("" for all), what came of it."""

    what: str
    at: str
    lot: str = ""
    result: str = ""


@dataclass(frozen=True, slots=True)
class UsedLine:
    """Grams of a substance that went into pots and jars, whatever for."""

    substance: str
    mass_g: float


@dataclass(frozen=True, slots=True)
class DayLine:
    """One day. `dyestuffs` and `others` are substances that went in; `dyed` tells that fibre took colour.

    `kept` are labels of baths put by and still standing as far as this log alone tells. `from_logs` are the
    days it repeats, the nearest first. `entries` counts facts, `faults` says what is wrong with the file.
    `dyes_drawn` are dyestuffs that kept baths of other days brought. What was read of a lot before its first dyeing
    of the day stands in `undyed` and not in `colours`: it is not how the lot came out.
    """

    file: str
    session: str
    recipe: str
    opened: str
    closed: str
    status: str
    program: str
    rehearsal: bool
    demo: bool
    improvised: bool
    dyed: bool
    entries: int
    last_n: int
    last_at: str
    verdict: str
    fibre: tuple[FibreLine, ...]
    dyestuffs: tuple[str, ...]
    others: tuple[str, ...]
    notes: tuple[str, ...]
    colours: tuple[ColourLine, ...]
    kept: tuple[str, ...]
    drawn: tuple[DrawnLine, ...]
    discarded: tuple[str, ...]
    waiting: tuple[str, ...]
    cared: tuple[CareLine, ...]
    from_logs: tuple[str, ...]
    faults: tuple[str, ...]
    used: tuple[UsedLine, ...] = ()
    dyes_drawn: tuple[str, ...] = ()
    undyed: tuple[ColourLine, ...] = ()

    @property
    def dyed_with(self) -> tuple[str, ...]:
        """Every dyestuff of the day: weighed out, or brought by a kept bath."""
        return tuple(dict.fromkeys((*self.dyestuffs, *self.dyes_drawn)))

    @property
    def day(self) -> str:
        """The date alone, as YYYY-MM-DD."""
        return self.opened[:10]


def day_line(day: LoggedDay, file: str) -> DayLine:
    """The one line of a day, corrections carried out."""
    last = fold(opening_state(day.plan), day.entries, day.opened)
    facts = [one for one in effective(day.entries) if one.event.kind not in e.PROGRAM_KINDS]
    events = [one.event for one in facts]
    put_in = _put_in(last)
    undyed, colours = _colours(events, last)
    return DayLine(
        file=file,
        session=day.name,
        recipe=day.recipe,
        opened=day.opened.at.isoformat(timespec="seconds"),
        closed=next((_iso(one) for one in facts if isinstance(one.event, e.Closed)), ""),
        status=last.status,
        program=day.program,
        rehearsal=day.rehearsal,
        demo=is_demo(day),
        improvised=day.improvised,
        dyed=_dyed(last),
        entries=len(facts),
        last_n=day.entries[-1].n if day.entries else 0,
        last_at=_iso(facts[-1]) if facts else "",
        verdict=last.verdict,
        fibre=tuple(
            FibreLine(one.name, one.kind, one.mass_g, one.mordanted) for one in last.lots if not one.snippet
        ),
        dyestuffs=tuple(dict.fromkeys(s for s, dye in put_in if dye)),
        others=tuple(dict.fromkeys(s for s, dye in put_in if not dye)),
        notes=tuple(one.text for one in events if isinstance(one, e.Noted) and not one.text.startswith(STRUCK)),
        colours=colours,
        kept=tuple(one.label for one in last.kept),
        drawn=tuple(DrawnLine(one.label, one.session) for one in events if isinstance(one, e.Drawn)),
        discarded=tuple(one.label for one in events if isinstance(one, e.Discarded) and one.label),
        waiting=_waiting(last),
        cared=tuple(_care(one.event, _iso(one)) for one in facts if isinstance(one.event, e.Cared)),
        from_logs=lineage(day),
        faults=tuple(day.notes),
        used=_used(last),
        dyes_drawn=dyes_drawn(events),
        undyed=undyed,
    )


def is_demo(day: LoggedDay) -> bool:
    """Whether the day is an invented one that came with the program."""
    return day.header.get("demo") is True


def lineage(day: LoggedDay) -> tuple[str, ...]:
    """The days this one repeats, the nearest first, as its recipe's source names them."""
    recipe = day.header.get("recipe")
    source = recipe.get("source", "") if isinstance(recipe, Mapping) else ""
    return tuple(dict.fromkeys(_LOG_NAMED.findall(str(source))))


def _iso(entry: Any) -> str:
    moment = entry.happened or entry.instant.at
    return str(moment.isoformat(timespec="seconds"))


def _put_in(last: State) -> list[tuple[str, bool]]:
    """Substances that went in, and whether each is a dyestuff."""
    roles = {one.ingredient: one.role for one in last.doses}
    named = dict(last.substances)
    return [
        (named.get(one.ingredient, one.ingredient), roles.get(one.ingredient) == "dyestuff")
        for one in last.put_in
    ]


def _used(last: State) -> tuple[UsedLine, ...]:
    named, grams = dict(last.substances), dict[str, float]()
    for one in last.put_in:
        substance = named.get(one.ingredient, one.ingredient)
        grams[substance] = grams.get(substance, 0.0) + one.mass_g
    return tuple(UsedLine(substance, round(mass_g, 3)) for substance, mass_g in grams.items())


def _dyed(last: State) -> bool:
    return any(one.plan.stage in COLOURED and one.entered for one in last.steps)


def _waiting(last: State) -> tuple[str, ...]:
    """Lots that were mordanted, on this day or before it, and have been in no dye bath yet."""
    coloured = {lot for one in last.steps if one.plan.stage in COLOURED for lot in one.entered}
    mordanted = {lot for one in last.steps if one.plan.stage == "mordant" for lot in one.entered}
    return tuple(
        one.name
        for one in last.lots
        if not one.snippet and one.name not in coloured and (one.name in mordanted or one.mordanted)
    )


def dyes_drawn(events: Iterable[e.Event]) -> tuple[str, ...]:
    """The dyestuffs that kept baths of other days brought, each once."""
    names = dict.fromkeys(name for one in events if isinstance(one, e.Drawn) for name in one.contents)
    found = (find(name) for name in names)
    return tuple(dict.fromkeys(one.key for one in found if one is not None and "dyestuff" in one.roles))


def _colours(
    events: Sequence[e.Event], last: State
) -> tuple[tuple[ColourLine, ...], tuple[ColourLine, ...]]:
    """What was read of each lot before its first dyeing of the day, and what came of it."""
    first = _first_dyed(events, last)
    before, after = list[ColourLine](), list[ColourLine]()
    for number, one in enumerate(events):
        if isinstance(one, e.Read) and one.colour and one.lot:
            into = before if number < first.get(one.lot, 0) else after
            into.append(ColourLine(one.lot, one.colour, one.wet))
        elif isinstance(one, e.Cared) and one.colour:
            after.append(ColourLine(one.lot, one.colour, False if "dry" in one.what.casefold() else None))
    return tuple(before), tuple(after)


def _first_dyed(events: Sequence[e.Event], last: State) -> dict[str, int]:
    """The number of the fact by which each lot first went into a dyeing; a lot that did not is not in it."""
    stage_in, first = dict[str, str](), dict[str, int]()
    for number, one in enumerate(events):
        if isinstance(one, e.Begun) and (step := last.step(one.step)) is not None and step.plan.vessel:
            stage_in[step.plan.vessel] = step.plan.stage
        elif isinstance(one, e.Entered) and stage_in.get(one.vessel) in COLOURED:
            first.setdefault(one.lot, number)
    return first


def _care(event: e.Cared, at: str) -> CareLine:
    return CareLine(event.what, at, event.lot, event.result or event.grade or event.colour)


def as_plain(line: DayLine) -> dict[str, Any]:
    """The line as plain values, for an index or as JSON."""
    return asdict(line)


def from_plain(table: Mapping[str, Any]) -> DayLine:
    """The line that `as_plain` made. Raises KeyError, TypeError or ValueError for anything else."""
    told = dict(table)
    for name, made in _TABLES.items():
        told[name] = tuple(made(**one) for one in told[name])
    for name in _WORDS:
        told[name] = tuple(told[name])
    return DayLine(**told)


_TABLES: Mapping[str, Any] = {
    "fibre": FibreLine, "colours": ColourLine, "drawn": DrawnLine, "cared": CareLine, "used": UsedLine,
    "undyed": ColourLine,
}  # fmt: skip
_WORDS = ("dyestuffs", "dyes_drawn", "others", "notes", "kept", "discarded", "waiting", "from_logs", "faults")
