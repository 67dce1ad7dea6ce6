"""A list of lines some of which can be chosen: which of them are seen, which is marked, which was touched.

Pure arithmetic of lines; knows nothing of what they say.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from dyesession.ui.ink import EMPTY, QUIET, STRONG, Ink, Line, cut_line, fill, say, spread, width_of, wrap
from dyesession.ui.theme import Palette

MARK = "▸"
INDENT = 3  # cells before every line: the mark stands in them
UP, DOWN = "↑", "↓"  # at the right edge: there are more lines that way


@dataclass(frozen=True)
class Row:
    """A line, and what is chosen with it ("" for a line that only says something).

    Several lines behind one another with the same `key` are chosen together.
    """

    line: Line
    key: str = ""


@dataclass(frozen=True)
class ListPart:
    """All lines there are, and which of them has the mark."""

    rows: tuple[Row, ...]
    cursor: str = ""


BLANK = Row(EMPTY)


def heading(text: str) -> Row:
    """The quiet word above a section."""
    return Row((say(text, QUIET),))


def paragraph(text: str, width: int, key: str = "", ink: Ink = QUIET) -> tuple[Row, ...]:
    """A sentence in as many lines as it wants."""
    return tuple(Row(line, key) for line in wrap([say(text, ink)], width))


def section(head: str, rows: Sequence[Row]) -> tuple[Row, ...]:
    """A heading with its lines and an empty line before it; nothing where there are no lines."""
    return (BLANK, heading(head), *rows) if rows else ()


def two_ends(left: Line, right: Line, width: int, key: str = "") -> Row:
    """A line with something at its right end, which is left off where there is no room for both."""
    if width_of(left) + width_of(right) + 2 > width:
        return Row(cut_line(left, width), key)
    return Row(spread(left, right, width), key)


def keys_of(rows: Sequence[Row]) -> tuple[str, ...]:
    """What can be chosen, from top to bottom, each once."""
    return tuple(dict.fromkeys(row.key for row in rows if row.key))


def moved(rows: Sequence[Row], cursor: str, by: int) -> str:
    """What has the mark after it was moved so many lines down (up below 0); it stops at either end."""
    keys = keys_of(rows)
    if not keys:
        return ""
    if cursor not in keys:
        return keys[0]
    return keys[min(max(keys.index(cursor) + by, 0), len(keys) - 1)]


def first_seen(part: ListPart, height: int) -> int:
    """The first line that is seen: the marked lines stand in the middle where not all lines can be seen."""
    if len(part.rows) <= height:
        return 0
    marked = [index for index, row in enumerate(part.rows) if row.key and row.key == part.cursor]
    if not marked:
        return 0
    middle = (marked[0] + min(marked[-1], marked[0] + height - 1)) // 2
    top = min(max(0, middle - height // 2), len(part.rows) - height)
    # The heading of the first section belongs to its first line: nothing above it can be chosen.
    return 0 if not any(row.key for row in part.rows[:top]) and marked[0] < height else top


def touched(part: ListPart, y: int, height: int) -> str:
    """What was touched in the y-th line that is seen; "" for a line that only says something."""
    index = first_seen(part, height) + y
    return part.rows[index].key if 0 <= index < len(part.rows) else ""


_ARROW_CELLS = 4  # a finger is wider than an arrow


def further_at(part: ListPart, x: int, y: int, width: int, height: int) -> int:
    """By how many lines the mark moves when the arrow at a cell is touched; 0 where no arrow stands.

    Half of what is seen, so that no line is passed over.
    """
    top, half = first_seen(part, height), max(1, height // 2)
    if x < width - _ARROW_CELLS:
        return 0
    if y == height - 1 and top + height < len(part.rows):
        return half
    return -half if y == 0 and top > 0 else 0


def draw_list(part: ListPart, width: int, height: int, palette: Palette) -> list[Line]:
    """The lines that are seen, the marked ones on a band of their own; arrows say where there are more."""
    top = first_seen(part, height)
    seen = part.rows[top : top + height]
    lines = [_drawn(row, part, top + index, width) for index, row in enumerate(seen)]
    if top > 0 and lines:
        lines[0] = _with_more(lines[0], UP, width)
    if top + height < len(part.rows) and lines:
        lines[-1] = _with_more(lines[-1], DOWN, width)
    return lines


def _drawn(row: Row, part: ListPart, index: int, width: int) -> Line:
    if not row.key:
        shift = 1 if row.line and row.line[0][1] == QUIET and index + 1 < len(part.rows) else INDENT
        return cut_line((say(" " * shift), *row.line), width)
    if row.key != part.cursor:
        return cut_line((say(" " * INDENT), *row.line), width)
    first = index == 0 or part.rows[index - 1].key != row.key
    mark = say(f" {MARK} " if first else " " * INDENT, STRONG.on("band"))
    spans = tuple((text, ink.on("band") if ink.ground == "ground" else ink) for text, ink in row.line)
    return fill((mark, *spans), width, "band")


def _with_more(line: Line, arrow: str, width: int) -> Line:
    """The line with an arrow in its last cell, on the line's own ground."""
    ground = line[-1][1].ground if line else "ground"
    return (*fill(line, max(0, width - 1), ground), say(arrow, STRONG.on(ground)))
