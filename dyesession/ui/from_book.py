"""Days of the day book made into what the screens show. Reckons nothing: the day book's rooms say what is so."""

from datetime import date

from dyesession.colour.screen import screen_of
from dyesession.colour.typed import read_colour
from dyesession.daybook.aftercare import aftercare_due
from dyesession.daybook.day_line import ColourLine, DayLine
from dyesession.daybook.finding import DayBook
from dyesession.errors import UserError
from dyesession.ui.bench_view import Swatch
from dyesession.ui.book_view import BookDay, LeftAside
from dyesession.units import show_mass

_MOST_SWATCHES = 3
_STANDS = {"open": "under way", "stopped": "ended early", "aborted": "broken off", "complete": ""}


def book_day(line: DayLine, today: date) -> BookDay:
    """A day in one line, with what explains it."""
    due = aftercare_due(line, today)
    return BookDay(
        f"day:{line.session}",
        line.day,
        line.recipe,
        fibre_of(line),
        mark_of(line),
        len(due),
        swatches_of(line)[:_MOST_SWATCHES],
        tuple(_tells(line, [one.what for one in due])),
    )


def left_aside(book: DayBook) -> tuple[LeftAside, ...]:
    """The files that are no day of the book."""
    return tuple(LeftAside(f"aside:{index}", one.file, one.reason) for index, one in enumerate(book.aside))


def fibre_of(line: DayLine) -> str:
    """What was dyed: "240 g wool, 2 lots"."""
    if not line.fibre:
        return ""
    kinds = " and ".join(dict.fromkeys(one.kind for one in line.fibre))
    lots = f", {len(line.fibre)} lots" if len(line.fibre) > 1 else ""
    return f"{show_mass(sum(one.mass_g for one in line.fibre))} {kinds}{lots}"


def mark_of(line: DayLine) -> str:
    """Whether it is no day of one's own, else how it stands."""
    return "rehearsal" if line.rehearsal else "demo" if line.demo else _STANDS.get(line.status, line.status)


def swatches_of(line: DayLine) -> tuple[Swatch, ...]:
    """The last colour of every lot that a screen can show, dry before wet."""
    found: dict[str, tuple[bool, Swatch]] = {}
    for one in line.colours:
        dry_already = one.lot in found and found[one.lot][0]
        swatch = swatch_of(one)
        if swatch is not None and not (dry_already and one.wet):
            found[one.lot] = (one.wet is not True, swatch)
    return tuple(swatch for _, swatch in found.values())


def swatch_of(one: ColourLine) -> Swatch | None:
    """A colour as it was read, as a screen can show it; None for one told in words."""
    state = "" if one.wet is None else ", wet" if one.wet else ", dry"
    of = f"{one.lot or 'the fibre'}{state}"
    if one.colour.startswith("#"):
        return Swatch(one.colour, of)
    try:
        shade = screen_of(read_colour(one.colour).lab)
    except UserError:
        return None
    return Swatch(shade.hex, f"{of}: {one.colour}")


def _tells(line: DayLine, due: list[str]) -> list[str]:
    told = [f"“{line.verdict}”"] if line.verdict else []
    told += [f"with {' and '.join(line.dyed_with)}"] if line.dyed_with else []
    told += [f"from the kept bath “{one.label}”" for one in line.drawn if one.session]
    told += [f"aftercare due: {', '.join(due)}"] if due else []
    told += [f"kept: {', '.join(line.kept)}"] if line.kept else []
    told += [f"repeats {line.from_logs[0]}"] if line.from_logs else []
    return [*told, *line.faults]
