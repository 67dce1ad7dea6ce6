"""The keys that apply now, each a key and a word that can be touched. While a number is typed: the number.

The rarer keys are left off where there is no room; they stay in the list behind `.`.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from textual.events import Click

from dyesession.ui.frame_view import Entry, KeyWord
from dyesession.ui.ink import EMPTY, QUIET, STRONG, Line, cut, cut_line, say, spread, tail, width_of
from dyesession.ui.keys import ALWAYS_SHOWN
from dyesession.ui.messages import KeyTouched
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.drawn import Drawn

if TYPE_CHECKING:
    from dyesession.ui.stove_view import StoveView

_GAPS = (4, 3, 2)  # cells between keys: as many as go in
_MARGIN = 1
# While letters answer a question, no letter does anything else but this one.
_LIVE_BESIDE_LETTERS = (*ALWAYS_SHOWN, "-", "escape", "q")


@dataclass(frozen=True)
class KeysPart:
    """The keys that apply, the most wanted first, and what is being typed."""

    keys: tuple[KeyWord, ...]
    entry: Entry | None = None


def keys_part(view: "StoveView") -> KeysPart:
    """The key line's share of a view: the keys that do something while a question stands, or all."""
    return KeysPart(tuple(key for key in view.keys if is_live(key.key, view)), view.entry)


def is_live(key: str, view: "StoveView") -> bool:
    """Whether a key does anything now: an Ask takes space away, and letters too where letters answer it."""
    ask = view.ask
    if ask is None:
        return True
    if key == "space":
        return view.ringing is not None
    return not ask.choices or key in _LIVE_BESIDE_LETTERS


def _cells(key: KeyWord) -> int:
    return width_of(f"{key.key} {key.word}")


def _row(keys: list[KeyWord], width: int) -> list[KeyWord]:
    """The first keys that go in one row at the closest spacing."""
    kept: list[KeyWord] = []
    used = _MARGIN
    for key in keys:
        used += _cells(key) + (_GAPS[-1] if kept else 0)
        if used > width:
            break
        kept.append(key)
    return kept


def _fitting(keys: tuple[KeyWord, ...], width: int, rows: int) -> list[list[KeyWord]]:
    """The keys row by row; the ones that are always shown have their place at the end kept free."""
    always = [key for key in keys if key.key in ALWAYS_SHOWN]
    kept_free = sum(_cells(key) + _GAPS[-1] for key in always)
    rest = [key for key in keys if key.key not in ALWAYS_SHOWN]
    lines: list[list[KeyWord]] = []
    for row in range(rows):
        last = row == rows - 1
        line = _row(rest, width - kept_free if last else width)
        rest = rest[len(line) :]
        lines.append([*line, *always] if last else line)
    return [line for line in lines if line]


def placed_keys(keys: tuple[KeyWord, ...], width: int, rows: int) -> list[tuple[int, int, KeyWord]]:
    """The keys that are shown, each with the cell it starts at and its row."""
    width -= _MARGIN
    placed = []
    for y, line in enumerate(_fitting(keys, width, rows)):
        taken = sum(_cells(key) for key in line) + _MARGIN
        gap = next((gap for gap in _GAPS if taken + gap * (len(line) - 1) <= width), _GAPS[-1])
        x = _MARGIN
        for key in line:
            placed.append((x, y, key))
            x += _cells(key) + gap
    return placed


def _draw_entry(entry: Entry, width: int) -> Line:
    """What is being typed, what it was understood as, and the two keys that matter now."""
    echo: Line = (say(f"  {entry.echo}", STRONG),) if entry.echo else EMPTY
    wants = (say(f" {cut(entry.wants, width // 3)}  ", QUIET),)
    left = (*wants, say(f"{tail(entry.typed, width - width_of((*wants, *echo)) - 2)}▏", STRONG), *echo)
    enter, escape = (say("enter", STRONG), say(" it counts ")), (say("  escape", STRONG), say(" clear "))
    ways = next(
        way for way in ((*enter, *escape), enter, EMPTY) if width_of((*left, *way)) < width or not way
    )
    return spread(left, ways, width)


def draw_keys(part: KeysPart, width: int, height: int, palette: Palette) -> list[Line]:
    """One or two rows of keys, or the number being typed."""
    if part.entry is not None:
        return [_draw_entry(part.entry, width)]
    rows: list[Line] = [EMPTY] * height
    for x, y, key in placed_keys(part.keys, width, height):
        gap = say(" " * (x - width_of(rows[y])))
        rows[y] = (*rows[y], gap, say(key.key, STRONG), say(f" {key.word}", QUIET))
    return [cut_line(row, width) for row in rows]


def key_at(part: KeysPart, x: int, y: int, width: int, height: int) -> str | None:
    """The key drawn at a cell, or None."""
    if part.entry is not None:
        return None
    for start, row, key in placed_keys(part.keys, width, height):
        if y == row and start <= x < start + _cells(key):
            return key.key
    return None


class KeyLine(Drawn[KeysPart]):
    """The key line; each key and its word can be touched."""

    def __init__(self) -> None:
        super().__init__(draw_keys, name="keys")

    def on_click(self, event: Click) -> None:
        """Touching a key's word is pressing it."""
        event.stop()
        if self.part is not None:
            key = key_at(self.part, event.x, event.y, self.size.width, self.size.height)
            if key is not None:
                self.post_message(KeyTouched(key))
