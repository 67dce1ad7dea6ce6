"""A day that is looked back on made into a leaf. Reckons nothing: the day book's rooms say what is so."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from dyesession.daybook.aftercare import aftercare_due
from dyesession.daybook.curves import curves
from dyesession.daybook.day_line import DayLine, day_line
from dyesession.daybook.model import Review, StepReview
from dyesession.daybook.printed import bath_heading, bath_words, dose_words
from dyesession.daybook.review import review
from dyesession.daybook.skein_tags import only_washes
from dyesession.daybook.walk import Pace, walk
from dyesession.session.fold import opening_state
from dyesession.session.opening import LoggedDay
from dyesession.session.state import State
from dyesession.ui.from_book import fibre_of, mark_of, swatches_of
from dyesession.ui.leaf_view import DayLanes, Doable, Heat, LaneBar, Section, Shades, Told
from dyesession.ui.stove_view import Curve, CurvePoint

_SHORTEST_CURVE = 2  # a pot read fewer times than that has no line; it stands among the readings
_ENDED = ("complete", "stopped", "aborted")


@dataclass(frozen=True)
class DayLeaf:
    """A day laid open, and what its acts ask for."""

    day: LoggedDay
    line: DayLine
    sections: tuple[Section, ...]
    lots: tuple[str, ...]


def day_leaf(day: LoggedDay, today: date) -> DayLeaf:
    """Everything worth seeing of a day, the shade and what is still wanted first."""
    found, paces = review(day), tuple(walk(day))
    last = paces[-1].after if paces else opening_state(day.plan)
    line = day_line(day, f"{day.name}.toml")
    sections = (
        Section("how it came out", tuple(_came_out(line))),
        Section("still wanted", tuple(_wanted(line, today))),
        Section("with this day", tuple(_acts(line))),
        Section("otherwise than planned", tuple(Told(one) for one in found.otherwise) or (Told("nothing"),)),
        Section("the day: a line as planned, a bar as it was", tuple(_lanes(found))),
        Section("heat: dotted as wanted, a line as read", tuple(_heat(day, paces, last, found))),
        Section("doses", tuple(Told(dose_words(one)) for one in found.doses)),
        Section("cost, by the prices in your kitchen then", (Told(found.cost),) if found.cost else ()),
        *_baths(found),
        Section("readings", tuple(Told(one.text, head=f"{one.at:%H:%M}") for one in found.readings)),
        Section("notes", tuple(Told(one.text, head=f"{one.at:%d.%m.}") for one in (*found.notes, *found.aftercare))),
    )
    lots = tuple(one.name for one in line.fibre)
    return DayLeaf(day, line, tuple(one for one in sections if one.items), lots)


def _came_out(line: DayLine) -> Iterator[Told | Shades]:
    swatches = swatches_of(line)
    if swatches:
        yield Shades(swatches, "shades")
    else:
        told = [one for one in line.colours if one.colour]
        yield from (Told(one.colour, head=one.lot) for one in told[-2:])
    if line.verdict:
        yield Told(f"“{line.verdict}”", strong=True)
    kind = mark_of(line)
    yield Told(f"{line.recipe}, {fibre_of(line)}", head=line.day, mark=kind)
    if line.dyed_with:
        others = [one for one in line.others if not only_washes(one)]
        over = f" over {' and '.join(others)}" if others else ""
        yield Told(f"{' and '.join(line.dyed_with)}{over}", head="with")
    yield from (Told(f"the kept bath “{one.label}” of {one.session}", head="from") for one in line.drawn if one.session)
    if line.from_logs:
        yield Told(", ".join(line.from_logs), head="repeats")
    yield from (Told(f"{one.what}{f' ({one.lot})' if one.lot else ''}: {one.result}", head="tried") for one in line.cared)


def _wanted(line: DayLine, today: date) -> Iterator[Doable]:
    for one in aftercare_due(line, today):
        yield Doable(f"due:{one.what}", f"! {one.what}", f"since {one.since}: {one.do}")


def _acts(line: DayLine) -> Iterator[Doable]:
    if line.status == "open" and not line.demo and not line.rehearsal:
        yield Doable("take-up", "Take it up where it stands", "the clocks have gone on")
    yield Doable("repeat", "Repeat this colour", "a recipe of what was done, for other fibre")
    yield Doable("compare", "Compare with another day", "what was other, what matters most first")
    yield Doable("wrong", "What went wrong?", "streaks, felting, bleeding, too pale: causes and mends")
    if line.status in _ENDED and not line.demo:
        yield Doable("care", "Note some aftercare", "a dry shade, a second wash, a rub, the window")
    yield Doable("tags", "Print the skeins' tags", "a page to print and cut out, and a text")
    yield Doable("page", "Print the whole day", "one page: lanes, heat, doses, baths, swatches")
    yield Doable("words", "The whole review in words", "steps, doses, baths, questions, alarms, corrections")


def _lanes(found: Review) -> Iterator[DayLanes]:
    bars = tuple(_bar(found, one) for one in found.steps if one.planned or one.actual.start_min is not None)
    if bars:
        yield DayLanes(bars, "lanes")


def _bar(found: Review, step: StepReview) -> LaneBar:
    planned, actual = step.planned, step.actual
    when = f"{actual.start:%H:%M}" if actual.start else step.status
    when += f" to {actual.end:%H:%M}" if actual.start and actual.end else ""
    return LaneBar(
        step.name,
        step.lane,
        _span(planned.start_min, planned.end_min) if planned is not None else None,
        _span(actual.start_min, actual.end_min),
        when,
    )


def _span(start: float | None, end: float | None) -> tuple[float, float] | None:
    return (start, end) if start is not None and end is not None else None


def _heat(day: LoggedDay, paces: Sequence[Pace], last: State, found: Review) -> Iterator[Heat]:
    for one in curves(paces, last):
        points = [*one.read, *(point for line in one.wanted for point in line)]
        if len(one.read) < _SHORTEST_CURVE:
            continue
        first, end = min(minute for minute, _ in points), max(minute for minute, _ in points)
        wanted = tuple(CurvePoint(minute, degrees) for line in one.wanted for minute, degrees in line)
        read = tuple(CurvePoint(minute, degrees) for minute, degrees in one.read)
        start_at, end_at = (found.opened + timedelta(minutes=minute) for minute in (first, end))
        yield Heat(Curve(one.vessel, wanted, read, None, f"{start_at:%H:%M}", f"{end_at:%H:%M}"), f"heat:{one.vessel}")


def _baths(found: Review) -> Iterator[Section]:
    for bath in found.baths:
        yield Section(bath_heading(bath).casefold(), tuple(Told(one) for one in bath_words(found, bath)))
