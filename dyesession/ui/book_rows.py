"""How the Day book is drawn: a line a day, what could not be read, and what explains the marked day. Knows no logs."""

from functools import lru_cache

from dyesession.ui.bench_rows import swatch_block, swatches_line
from dyesession.ui.book_view import OWN, BookDay, BookView, LeftAside
from dyesession.ui.ink import EMPTY, QUIET, STRONG, TEXT, Line, cut_line, say, spread, width_of, wrap
from dyesession.ui.place_keys import DAY_BOOK, OWN_NUMBERS
from dyesession.ui.rows import BLANK, Row, heading, paragraph, section
from dyesession.ui.screens.place import Drawing
from dyesession.ui.theme import Palette

_WIDEST = 96
_ASIDE_ROWS = 4
_ONE_SWATCH = 1
PAD = ("madder", "weld", "wool", "silk", "kept", "due", "dyestuff", "fibre", "near", "since")


def book_rows(view: BookView, width: int, palette: Palette) -> tuple[Row, ...]:
    """Every line of the Day book, the newest day first."""
    greeting = [row for text in view.greeting for row in paragraph(text, width, ink=TEXT)]
    days = [row for one in view.days for row in day_row(one, min(width, _WIDEST), palette)]
    found = f"{len(view.days)} of {view.of} days: {view.find}" if view.find else ""
    nothing = [Row((say("no day answers to that", QUIET),))] if view.find and not days else []
    own: Line = (say(OWN_NUMBERS), say(f"   {view.own}", QUIET))
    parts = (
        *greeting,
        *((BLANK, Row(cut_line(own, width), OWN)) if view.own else ()),
        *section(found or ("days" if days else ""), [*days, *nothing]),
        *section("left aside", [row for one in view.aside for row in _aside(one, width)]),
        *((BLANK, heading("looking through the logs …")) if view.looking else ()),
    )
    return tuple(parts[1:] if parts and parts[0] == BLANK else parts)


@lru_cache(maxsize=4096)
def day_row(day: BookDay, width: int, palette: Palette) -> tuple[Row, ...]:
    """A day in its line: the fibre, then the colours, give way where there is no room."""
    left: Line = (say(f"{day.date}  ", QUIET), say(day.recipe))
    due: Line = (say(f"  ! {day.due} due", STRONG),) if day.due else EMPTY
    mark: Line = (say(f"  {day.mark}", QUIET),) if day.mark else EMPTY
    fibre: Line = (say(f"   {day.fibre}", QUIET),) if day.fibre else EMPTY
    some = tuple(swatches_line(day.swatches[:count], palette) for count in (3, 2, _ONE_SWATCH, 0))
    for colours in some:
        for said in ((*left, *fibre, *mark, *due), (*left, *mark, *due)):
            if width_of(said) + width_of(colours) + 2 <= width:
                return (Row(spread(said, colours, width), day.key),)
    return (Row(cut_line((*left, *due), width), day.key),)


def _aside(one: LeftAside, width: int) -> list[Row]:
    rows = [Row((say(one.file, STRONG),), one.key)]
    return rows + [Row((say("  "), *line), one.key) for line in wrap([say(one.reason, QUIET)], width - 2, 2)]


def book_aside(view: BookView, width: int, height: int, palette: Palette) -> list[Line]:
    """What explains the marked day: what it was dyed with, how it came out, its colours where there is room."""
    left = next((one for one in view.aside if one.key == view.cursor), None)
    if left is not None:
        return wrap([say(left.reason)], width, height)
    day = next((one for one in view.days if one.key == view.cursor), None)
    return about_day(day, width, height, palette) if day is not None else []


def about_day(day: BookDay, width: int, height: int, palette: Palette) -> list[Line]:
    """A day in sentences, and its colours large where there is room."""
    roomy = height > _ASIDE_ROWS
    lines = wrap([say(f"{day.recipe}, {day.fibre}", STRONG), say(f"  {day.date}", QUIET)], width, height)
    for text in day.tells:
        lines += [EMPTY] if roomy else []
        lines += wrap([say(text)], width, max(0, height - len(lines)))
    for one in day.swatches if roomy else ():
        lines += swatch_block(one, 4, palette)
    return lines[:height]


BOOK_DRAWING: Drawing[BookView] = Drawing(DAY_BOOK, book_rows, book_aside, aside_rows=_ASIDE_ROWS, pad=PAD)
