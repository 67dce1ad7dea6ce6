"""Clocks to be read from across the room: all, or in a tiny window the loudest alone. Knows no sessions."""

from dataclasses import dataclass

from dyesession.ui.block_text import BIG, SMALL, Face, block_rows, faces_up_to, largest_face
from dyesession.ui.ink import EMPTY, QUIET, STRONG, Ink, Line, cut_line, say, spread_if_room, width_of
from dyesession.ui.stove_view import Account, Pot, StoveView, by_loudness
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.pot import state_words

_MARGIN = 2
_WIDEST_CLOCK = "0:00"
_NAME_ROWS = 1


@dataclass(frozen=True)
class AwayPart:
    """The pots, the loudest first, and how strong the bath is."""

    pots: tuple[Pot, ...]
    account: Account


def away_part(view: StoveView) -> AwayPart:
    """The page's share of a view: pots with a clock first."""
    return AwayPart(tuple(by_loudness(view.pots)), view.account)


def _clock_inks(pot: Pot) -> tuple[Ink, Ink]:
    """The digits' ink, and the ground of the block around them."""
    if pot.state == "overdue":
        return Ink("alarm_ink", "alarm", bold=True), Ink(ground="alarm")
    if pot.state == "due":
        return Ink("ground", "strong", bold=True), Ink(ground="strong")
    return (QUIET if pot.state == "paused" else STRONG), Ink()


def _clock_lines(pot: Pot, face: Face | None) -> list[Line]:
    """The clock's rows with its unit at the foot of the last one."""
    if pot.clock is None:
        return []
    ink, around = _clock_inks(pot)
    rows = block_rows(pot.clock.text, face) if face else None
    if rows is None:
        return [(say("  "), say(f" {pot.clock.text} {pot.clock.unit} ", ink))]
    lines: list[Line] = []
    for index, row in enumerate(rows):
        unit = f" {pot.clock.unit} " if pot.clock.unit else " "
        last = index == len(rows) - 1
        lines.append((say("  "), say(f" {row}", ink), say(unit if last else " " * width_of(unit), ink)))
    return [(line[0], *((text, ink.on(around.ground)) for text, ink in line[1:])) for line in lines]


def _name_line(pot: Pot, width: int) -> Line:
    name = (say(f" {pot.letter} ", STRONG), say(f"{pot.name}  ", STRONG), *state_words(pot))
    return spread_if_room(name, (say(f"{pot.first} ", QUIET),), width)


def _face_for(pot: Pot, width: int, rows: int) -> Face | None:
    """The largest face for any clock of this pot: a countdown's digits must not change the face."""
    if pot.clock is None:
        return None
    text = pot.clock.text if len(pot.clock.text) > len(_WIDEST_CLOCK) else _WIDEST_CLOCK
    room = width - 2 * _MARGIN - (width_of(pot.clock.unit) + 1 if pot.clock.unit else 0)
    return largest_face(text, room, rows, faces_up_to(rows))


def _with_clock(pot: Pot, width: int, rows: int) -> list[Line]:
    face = _face_for(pot, width, rows - _NAME_ROWS)
    lines = [_name_line(pot, width), *_clock_lines(pot, face)]
    return lines if len(lines) <= rows else [_short_line(pot, width)]


def _short_line(pot: Pot, width: int) -> Line:
    clock: Line = (say(f"  {pot.clock.text} {pot.clock.unit}", STRONG),) if pot.clock else EMPTY
    return cut_line(
        (say(f" {pot.letter} ", STRONG), say(pot.name), *clock, say("  "), *state_words(pot)), width
    )


def _strength_lines(account: Account, width: int, rows: int) -> list[Line]:
    """How strong the bath is: what of, and below it the figure in large letters."""
    strength = account.strength
    if strength is None:
        return []
    label: Line = (say(strength.of, QUIET), say(f", {strength.how}" if strength.how else "", QUIET))
    unit: Line = (say(f" {strength.unit}", STRONG),)
    drawn = block_rows(strength.number, BIG if rows >= 8 * BIG.rows else SMALL)
    if drawn is None or len(drawn[0]) + 4 > width or rows < 3 * SMALL.rows:
        return [cut_line((say(strength.number, STRONG), *unit, say("  "), *label), width)]
    return [label, *((say(row, STRONG),) for row in drawn[:-1]), (say(drawn[-1], STRONG), *unit)]


def _clock_rows(part: AwayPart, width: int, height: int) -> list[Line]:
    """Each clock as large as its share of the rows, the loudest with the largest share; then the rest."""
    clocked = [pot for pot in part.pots if pot.clock is not None]
    still = [pot for pot in part.pots if pot.clock is None]
    rows: list[Line] = []
    for index, pot in enumerate(clocked):
        left = height - len(rows) - (1 if rows else 0)
        rest = len(clocked) - index - 1
        least = min(BIG.rows + _NAME_ROWS + 1, left // (rest + 1)) * rest
        rows += [EMPTY] if rows else []
        rows += _with_clock(pot, width, left - least)[: max(0, left)]
    return [*rows, *(_short_line(pot, width) for pot in still)][:height]


def _laid_beside(rows: list[Line], strength: list[Line], width: int, height: int) -> list[Line] | None:
    """The strength in the lower right corner, where the clocks leave that free; None where they do not."""
    across = max((width_of(line) for line in strength), default=0)
    rows = [*rows, *([EMPTY] * (height - len(rows)))]
    corner = rows[height - len(strength) :] if strength else []
    if any(width_of(line) + across + 3 > width for line in corner):
        return None
    start = width - across - _MARGIN
    beside = [
        (*line, say(" " * (start - width_of(line))), *figure)
        for line, figure in zip(corner, strength, strict=True)
    ]
    return [*rows[: height - len(strength)], *beside]


def draw_away(part: AwayPart, width: int, height: int, palette: Palette) -> list[Line]:
    """The clocks, and how strong the bath is beside the last of them, or below where there is no room."""
    strength = _strength_lines(part.account, width - 2 * _MARGIN, height)
    page = _laid_beside(_clock_rows(part, width, height), strength, width, height)
    if page is None:
        strength = [(say("  "), *line) for line in strength[: height // 3]]
        rows = _clock_rows(part, width, height - len(strength))
        page = [*rows, *([EMPTY] * (height - len(rows) - len(strength))), *strength]
    return [cut_line(row, width) for row in page[:height]]


def draw_loudest(pots: tuple[Pot, ...], width: int, height: int, palette: Palette) -> list[Line]:
    """The loudest pot's name and its clock, as large as they go in."""
    clocked = [pot for pot in pots if pot.clock is not None]
    if not clocked:
        return [cut_line((say(" no clock runs", QUIET),), width)]
    pot = clocked[0]
    lines = _with_clock(pot, width, height)
    return [cut_line(line, width) for line in lines[:height]]


def loudest_part(view: StoveView) -> tuple[Pot, ...]:
    """The tiny window's share of a view: the loudest pot with a clock."""
    return tuple(pot for pot in by_loudness(view.pots) if pot.clock is not None)[:1]
