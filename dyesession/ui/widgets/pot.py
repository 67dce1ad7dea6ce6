"""A pot, drawn as a pot: filled to its waterline in the liquor's colour, its clock in it, words below.

Knows how full, how hot and how far it is told to draw; computes none of it.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

from textual.events import Click

from dyesession.ui.block_text import SMALL, Face, block_rows, largest_face
from dyesession.ui.ink import (
    EMPTY,
    QUIET,
    STRONG,
    TEXT,
    Ink,
    Line,
    cut,
    fill,
    say,
    shorten,
    spread,
    whole_clauses,
    width_of,
)
from dyesession.ui.messages import PotTouched
from dyesession.ui.sheet import Sheet
from dyesession.ui.stove_rooms import ROOMY_POT, liquor_cells
from dyesession.ui.stove_view import POT_MARKS, Pot
from dyesession.ui.theme import Palette, contrast, ink_on
from dyesession.ui.widgets.drawn import Drawn

_FULL = "█"
# WCAG 2.2, 1.4.11: 3 to 1 is the least for a mark that carries meaning.
_LEAST_CONTRAST = 3.0
# Share of a pot by which a filling counts as above its mark: less is a reading's own uncertainty (a choice).
_OVER_MARK = 0.02


@dataclass(frozen=True)
class PotPart:
    """A pot, the rows of words below it, and the face its digits have (all pots of a row alike)."""

    pot: Pot
    text_rows: int
    face: Face | None


@dataclass(frozen=True)
class _Shape:
    """The cells of a vessel: its two walls, what is between them, and the rows above the bottom."""

    left: int
    right: int
    deep: int
    ticks: bool

    @property
    def inner(self) -> int:
        """Cells between the walls."""
        return self.right - self.left - 1


def _shape(width: int, rows: int) -> _Shape:
    """A roomy pot has ticks outside its walls; a narrower one has notches in them, and more liquor."""
    roomy = width >= ROOMY_POT
    left = int(roomy)
    return _Shape(left, left + liquor_cells(width) + 1, rows - 1, roomy)


@dataclass(frozen=True)
class _Clock:
    """A clock ready to be placed: its rows, where, and its unit beside or above it."""

    rows: tuple[str, ...]
    unit: str
    x: int
    y: int
    unit_x: int
    unit_y: int

    @property
    def right(self) -> int:
        """The cell behind the last one taken."""
        return max(self.x + len(self.rows[0]), self.unit_x + width_of(self.unit))


def is_colour(text: str | None) -> bool:
    """Whether the text is a colour as `#rrggbb`."""
    digits = text[1:] if text and text.startswith("#") else ""
    return len(digits) == 6 and all(char in "0123456789abcdefABCDEF" for char in digits)


def liquor_ground(liquor: str | None, palette: Palette) -> str:
    """What a liquor is drawn in: its own colour once read and where the terminal can show it."""
    return liquor if liquor and is_colour(liquor) and palette.dyed else "bare"


def _surface(ground: str, palette: Palette) -> str:
    """The waterline's ink: it must stand out from the liquor and from the air above it."""
    inks = ("quiet", "wall", "strong", "text")
    least = {
        ink: min(
            contrast(palette.colour(ink), palette.colour(ground)),
            contrast(palette.colour(ink), palette.ground),
        )
        for ink in inks
    }
    good = [ink for ink in inks if least[ink] >= _LEAST_CONTRAST]
    return good[0] if good else max(inks, key=lambda ink: least[ink])


def _level(pot: Pot, shape: _Shape) -> int:
    """Rows of liquor: none only when empty, and above the mark whenever the pot is filled above it."""
    level = min(shape.deep, max(int(pot.fill > 0), round(pot.fill * shape.deep)))
    over = pot.fill > pot.mark + _OVER_MARK
    return min(shape.deep, level + 1) if over and level <= round(pot.mark * shape.deep) else level


def _vessel(sheet: Sheet, pot: Pot, shape: _Shape, palette: Palette) -> None:
    """Walls, liquor, waterline, the mark at two thirds, and the bottom with the burner's glow."""
    level = _level(pot, shape)
    ground, first = liquor_ground(pot.liquor, palette), shape.left + 1
    sheet.wash(first, shape.deep - level, shape.inner, level, ground)
    line = Ink(_surface(ground, palette), "ground")
    if 0 < level < shape.deep:
        sheet.put(first, shape.deep - level - 1, "▁" * shape.inner, line)
    elif level:
        sheet.put(first, 0, "▔" * shape.inner, line.on(ground))
    for row in range(shape.deep):
        sheet.put(shape.left, row, "█", Ink("wall"))
        sheet.put(shape.right, row, "█", Ink("wall"))
    _mark(sheet, pot, shape)
    _bottom(sheet, pot, shape)


def _mark(sheet: Sheet, pot: Pot, shape: _Shape) -> None:
    """Level with a waterline that reaches the mark: both stand on the same edge of a cell."""
    row = min(shape.deep - 1, max(0, shape.deep - round(pot.mark * shape.deep) - 1))
    if shape.ticks:
        sheet.put(shape.left - 1, row, "▁", Ink("quiet"))
        sheet.put(shape.right + 1, row, "▁", Ink("quiet"))
        return
    for wall in (shape.left, shape.right):
        sheet.put(wall, row, "▁", Ink("ground", "wall"))


def _bottom(sheet: Sheet, pot: Pot, shape: _Shape) -> None:
    """The bottom of the pot; on the heat, flames stand below it: a shape of their own, not a colour alone."""
    for x in range(shape.left, shape.right + 1):
        flame = pot.on_heat and shape.left < x < shape.right and x % 4 != 1
        sheet.put(x, shape.deep, "▀", Ink("wall", "ember" if flame else "ground"))


def _placed_clock(pot: Pot, face: Face | None, shape: _Shape) -> _Clock | None:
    """Where the clock stands: in the middle, a row above the bottom where there is one to spare."""
    if pot.clock is None:
        return None
    first, unit = shape.left + 1, cut(pot.clock.unit, shape.inner)
    chosen = largest_face(pot.clock.text, shape.inner, shape.deep, (face, SMALL) if face else (SMALL,))
    drawn = (block_rows(pot.clock.text, chosen) if chosen else None) or (cut(pot.clock.text, shape.inner),)
    digits, beside = width_of(drawn[0]), width_of(unit)
    y = max(0, shape.deep - len(drawn) - int(shape.deep >= len(drawn) + 2))
    if not unit or digits + 1 + beside <= shape.inner:
        x = first + (shape.inner - digits - (beside + 1 if unit else 0)) // 2
        return _Clock(drawn, unit, x, y, x + digits + 1 if unit else x, y + len(drawn) - 1)
    x = first + (shape.inner - digits) // 2
    if y == 0:  # no row above the digits: the unit is left off, the state's word below says it
        return _Clock(drawn, "", x, y, x, y)
    return _Clock(drawn, unit, x, y, first + (shape.inner - beside) // 2, y - 1)


def _plate(pot: Pot) -> Ink | None:
    """The block behind a clock that wants the dyer: amber when something is wrong, else the plain inverse."""
    if pot.state == "overdue":
        return Ink("alarm_ink", "alarm", bold=True)
    return Ink("ground", "strong", bold=True) if pot.state == "due" else None


def _lone(plate: Ink) -> Ink:
    """The same plate where no row is left around the digits: its colour goes into the digits instead."""
    return Ink(plate.ground, "ground", bold=True)


def _crossing_plate(sheet: Sheet, clock: _Clock, palette: Palette) -> Ink | None:
    """Digits that would have to change from light to dark at the waterline stand on a plate of their own."""
    rows = range(clock.y, clock.y + len(clock.rows))
    inks = {ink_on(palette.colour(sheet.ground_at(clock.x, row)), palette) for row in rows}
    return Ink("strong", "ground", bold=True) if len(inks) > 1 else None


def _clock(sheet: Sheet, pot: Pot, shape: _Shape, face: Face | None, palette: Palette) -> None:
    clock = _placed_clock(pot, face, shape)
    if clock is None:
        return
    plate = _plate(pot) or _crossing_plate(sheet, clock, palette)
    if _plate(pot) and plate and len(clock.rows) >= shape.deep:
        plate = _lone(plate)
    if plate is not None:
        side, above = (2, 1) if _plate(pot) else (1, 0)
        left, right = (
            max(shape.left + 1, min(clock.x, clock.unit_x) - side),
            min(shape.right, clock.right + side),
        )
        top = max(0, min(clock.y, clock.unit_y) - above)
        bottom = min(shape.deep, clock.y + len(clock.rows) + above)
        sheet.wash(left, top, right - left, bottom - top, plate.ground)
    for offset, row in enumerate(clock.rows):
        _over(sheet, clock.x, clock.y + offset, row, plate, palette)
    if clock.unit:
        _over(sheet, clock.unit_x, clock.unit_y, clock.unit, plate, palette)


def _over(sheet: Sheet, x: int, y: int, text: str, plate: Ink | None, palette: Palette) -> None:
    ground = sheet.ground_at(x, y)
    front = plate.front if plate else ink_on(palette.colour(ground), palette)
    sheet.put_over(x, y, text, front, bold=True)


def state_words(pot: Pot) -> Line:
    """The mark and the word of a pot's state, and that it is on the heat."""
    words = f"{POT_MARKS[pot.state]} {pot.state}"
    if pot.state == "overdue":
        return (say(f" {words} ", Ink("alarm_ink", "alarm", bold=True)),)
    ink = STRONG if pot.state in ("due", "paused") else QUIET
    return (say(words, ink),)


def _one_row(pot: Pot, width: int) -> Line:
    """What is kept until when, while it runs; else the name and the state."""
    letter = say(f"{pot.letter} ", STRONG)
    if pot.state == "running" and pot.first:
        return (letter, say(f"{POT_MARKS[pot.state]} ", QUIET), say(cut(pot.first, width - 4)))
    return spread((letter, say(pot.name)), state_words(pot), width)


def _roomy_words(pot: Pot, width: int, rows: int) -> list[Line]:
    """A large letter where there are three rows for it, the state at the end of the first line."""
    letter = block_rows(pot.letter, SMALL) if rows >= SMALL.rows else None
    text = width - (len(letter[0]) + 2 if letter else 0)
    name: Line = (say(pot.name, TEXT),)
    if letter is None:
        name = (say(f"{pot.letter} ", STRONG), *name)
    heat: Line = (say(", on heat", QUIET),) if pot.on_heat and pot.state in ("running", "waiting") else EMPTY
    state = state_words(pot)
    if width_of((*name, *state, *heat)) + 2 <= text:
        state = (*state, *heat)
    lines = [
        spread(name, state, text), (say(shorten(pot.first, text)),), (say(shorten(pot.second, text), QUIET),),
    ]  # fmt: skip
    if letter is None:
        return lines
    return [(say(f"{row}  ", STRONG), *line) for row, line in zip(letter, lines, strict=False)]


def _narrow_words(pot: Pot, width: int, rows: int) -> list[Line]:
    """Name, what it is kept at, and the state with as much of the second line as goes in."""
    name: Line = (say(f"{pot.letter} ", STRONG), say(cut(pot.name, width - 2)))
    state = state_words(pot)
    clauses = whole_clauses(pot.second, width - width_of(state) - 2)
    more: Line = (say(f"  {clauses}", QUIET),) if clauses else EMPTY
    lines = [name, (say(shorten(pot.first, width)),), (*state, *more)]
    return lines if rows >= len(lines) else [spread(name, state, width), lines[1]]


def _words(part: PotPart, width: int) -> list[Line]:
    """The lines below a pot: in as much detail as its width and the rows allow."""
    if part.text_rows == 1:
        return [(say(" "), *_one_row(part.pot, width - 2))]
    if width < ROOMY_POT:
        return _narrow_words(part.pot, width - 1, part.text_rows)[: part.text_rows]
    lines = _roomy_words(part.pot, width - 2, part.text_rows)
    return [(say(" "), *line) for line in lines[: part.text_rows]]


def draw_pot(part: PotPart, width: int, height: int, palette: Palette) -> list[Line]:
    """The vessel, and its words on the last `text_rows` lines."""
    shape = _shape(width, height - part.text_rows)
    sheet, lines = _without_clock(replace(part.pot, clock=None), part.text_rows, width, height, palette)
    if part.pot.clock is None or shape.deep <= 0 or shape.inner <= 0:
        return list(lines)
    counted = sheet.copy()
    _clock(counted, part.pot, shape, part.face, palette)
    return [*counted.lines_after(sheet, lines), *lines[sheet.height :]]


@lru_cache(maxsize=64)  # every second only the clocks change
def _without_clock(
    pot: Pot, text_rows: int, width: int, height: int, palette: Palette
) -> tuple[Sheet, tuple[Line, ...]]:
    """The picture and its lines before a clock is put in. The sheet is shared: copy it to draw on."""
    rows = height - text_rows
    sheet, shape = Sheet(width, max(0, rows)), _shape(width, rows)
    if shape.deep > 0 and shape.inner > 0:
        _vessel(sheet, pot, shape, palette)
    said = (fill(line, width) for line in _words(PotPart(pot, text_rows, None), width))
    return sheet, (*sheet.lines(), *said)


class PotPicture(Drawn[PotPart]):
    """A pot that can be touched."""

    def __init__(self, name: str) -> None:
        super().__init__(draw_pot, name=name)

    def on_click(self, event: Click) -> None:
        """The whole pot is the target."""
        event.stop()
        if self.part is not None:
            self.post_message(PotTouched(self.part.pot.letter))
