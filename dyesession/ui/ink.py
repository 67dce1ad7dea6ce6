"""Lines of inked text: what every drawing function returns, and how lines are measured, cut and joined.

Knows roles of colours, not colours; nothing of pots or sessions. Every text goes through `plain()` here.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from rich.cells import cell_len, set_cell_size
from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip

from dyesession.ui.plain import plain
from dyesession.ui.theme import Palette


@dataclass(frozen=True)
class Ink:
    """How a piece of text is drawn: colours by role (or `#rrggbb` for a dyed colour), and weight."""

    front: str = "text"
    ground: str = "ground"
    bold: bool = False

    def on(self, ground: str) -> "Ink":
        """The same ink on another ground."""
        return Ink(self.front, ground, self.bold)


TEXT, QUIET, LINE = Ink(), Ink("quiet"), Ink("line")
STRONG = Ink("strong", bold=True)

Span = tuple[str, Ink]
Line = tuple[Span, ...]
EMPTY: Line = ()


def say(text: str, ink: Ink = TEXT) -> Span:
    """A piece of text that may have come from anywhere, made safe to draw."""
    return plain(text), ink


def width_of(text: str | Line) -> int:
    """How many cells a text or a line takes."""
    if isinstance(text, str):
        return _width(text)
    return sum([_width(part) for part, _ in text])


@lru_cache(maxsize=4096)
def _width(text: str) -> int:
    return cell_len(plain(text))


def cut(text: str, width: int) -> str:
    """The text in at most `width` cells; an ellipsis stands for what did not fit."""
    text = plain(text)
    if cell_len(text) <= width:
        return text
    return set_cell_size(text, width - 1).rstrip() + "…" if width > 0 else ""


def tail(text: str, width: int) -> str:
    """The end of a text in at most `width` cells: what is being typed is read at its end."""
    text = plain(text)
    while cell_len(text) > max(0, width):
        text = text[1:]
    return text


def whole_clauses(text: str, width: int) -> str:
    """As many whole clauses (up to a `;` or `,`) from the front as go into `width` cells; perhaps none."""
    text = plain(text)
    while text and cell_len(text) > width:
        text = text[: max(0, text.rfind("; "), text.rfind(", "))]
    return text


def shorten(text: str, width: int) -> str:
    """Like `cut`, but gives up whole clauses first where that leaves at least half a line."""
    clauses = whole_clauses(text, width)
    return clauses if 2 * cell_len(clauses) >= min(width, width_of(text)) else cut(text, width)


def cut_line(line: Line, width: int) -> Line:
    """A line in at most `width` cells; an ellipsis in the last ink stands for what did not fit."""
    if width_of(line) <= width:
        return line
    kept: list[Span] = []
    room = width
    for text, ink in line:
        kept.append((cut(f"{text} ", room), ink) if width_of(text) >= room else say(text, ink))
        room -= width_of(kept[-1][0])
        if room <= 0 or kept[-1][0] != plain(text):
            break
    return tuple(kept)


def fill(line: Line, width: int, ground: str = "ground") -> Line:
    """A line of exactly `width` cells, cut or filled up with its ground."""
    room = width - width_of(line)
    if room < 0:
        line = cut_line(line, width)
        room = width - width_of(line)
    return (*line, (" " * room, Ink(ground=ground)))


def spread(left: Line, right: Line, width: int, ground: str = "ground") -> Line:
    """Two parts at the two ends of a line; the left one is cut where they would touch."""
    right = cut_line(right, width)
    left = cut_line(left, max(0, width - width_of(right) - 1))
    return (*left, (" " * (width - width_of(left) - width_of(right)), Ink(ground=ground)), *right)


# A figure is not parted from its ±, nor a number from its unit.
_UNPARTED = re.compile(r" (?=±)|(?<=±) |(?<=\d) (?=(?:g|kg|L|ml|°C|%|min)\b|[%°])")


def spread_if_room(left: Line, right: Line, width: int, ground: str = "ground") -> Line:
    """Two parts at the two ends of a line; the right one is left off where the left one needs the room."""
    both = width_of(left) + 1 + width_of(right) <= width
    return spread(left, right, width, ground) if both else fill(left, width, ground)


def _words(spans: Iterable[Span]) -> list[Line]:
    """The words of a paragraph, each a line of its own: a word may change its ink half-way."""
    words: list[list[Span]] = [[]]
    for text, ink in spans:
        for index, piece in enumerate(_UNPARTED.sub("\u00a0", plain(text)).split(" ")):
            if index:
                words.append([])
            if piece:
                words[-1].append((piece, ink))
    return [tuple(word) for word in words if word]


def wrap(spans: Iterable[Span], width: int, rows: int = 999) -> list[Line]:
    """A paragraph broken at spaces into at most `rows` lines; an ellipsis ends one that did not fit."""
    lines: list[list[Span]] = []
    if width <= 0 or rows <= 0:
        return []
    for word in _words(spans):
        gap = Ink(word[0][1].front, word[0][1].ground)
        if lines and width_of(tuple(lines[-1])) + 1 + width_of(word) <= width:
            lines[-1] += [(" ", gap), *word]
        elif len(lines) == rows:
            lines[-1] += [(" ", gap), *word, (" " * width, gap)]
            break
        else:
            lines.append(list(word))
    return [cut_line(tuple(line), width) for line in lines]


def changed_cells(was: Line, now: Line, width: int) -> range:
    """The cells of a line, filled up to a width, from the first piece of it that differs to the last."""
    if was == now:
        return range(0)
    before, after = fill(was, width), fill(now, width)
    shorter = min(len(before), len(after))
    first = next((n for n in range(shorter) if before[n] != after[n]), shorter)
    behind = next((n for n in range(shorter - first) if before[-1 - n] != after[-1 - n]), shorter - first)
    return range(width_of(after[:first]), width - width_of(after[len(after) - behind :]))


@lru_cache(maxsize=512)
def _style(ink: Ink, palette: Palette) -> Style:
    return Style(color=palette.colour(ink.front), bgcolor=palette.colour(ink.ground), bold=ink.bold)


def strip_of(line: Line, width: int, palette: Palette, ground: str = "ground") -> Strip:
    """A line as the framework wants it, exactly `width` cells; unbroken spaces are ordinary by now."""
    pieces = [(plain(text).replace("\u00a0", " "), ink) for text, ink in fill(line, width, ground) if text]
    return Strip([Segment(text, _style(ink, palette)) for text, ink in pieces], width)


def joined(parts: Sequence[Line], gap: str, ink: Ink = QUIET) -> Line:
    """Lines behind one another with a gap between them."""
    spans: list[Span] = []
    for index, part in enumerate(parts):
        spans += [(gap, ink)] if index else []
        spans += part
    return tuple(spans)
