"""Touches for whoever has no keyboard at hand: figures, units and the keys that end a text. Knows no amounts."""

from textual.events import Click

from dyesession.ui.ink import EMPTY, QUIET, STRONG, Ink, Line, say, width_of
from dyesession.ui.messages import PadTouched
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.drawn import Drawn

PAD_ROWS = 2
# What a touch types; the ending keys by their names. Words carry a space of their own, so that any two may follow.
FIGURES = ("1", "2", "3", "4", "5", "6", "7", "8", "9", "0", ".")
ENDS = (("backspace", "⌫"), ("enter", "✓ it counts"), ("escape", "clear"))
SHORT_ENDS = (("backspace", "⌫"), ("enter", "✓"), ("escape", "×"))  # where the words do not go in beside the figures
# A colour's figures are typed one behind the other.
_AS_THEY_ARE = frozenset("#abcdef")
_GAP = 1
_KEY_INK = Ink("strong", "band", bold=True)


def placed(words: tuple[str, ...], width: int) -> list[tuple[int, int, str, str]]:
    """Where each touch stands: its first cell, its row, what it types, what is written on it."""
    hex_figures = _AS_THEY_ARE.issubset(words)
    figures = [(one, one) for one in FIGURES]
    whole = sum(width_of(written) + 2 + _GAP for _, written in (*figures, *ENDS)) <= width
    rows = ([*figures, *(ENDS if whole else SHORT_ENDS)], [(_types(one, hex_figures), one) for one in words])
    found = []
    y = 0
    for row in rows:
        x = 1
        for types, written in row:
            cells = width_of(written) + 2
            if x + cells > width and x > 1:
                x, y = 1, y + 1
            found.append((x, y, types, written))
            x += cells + _GAP
        y += 1
    return found


def _types(word: str, hex_figures: bool) -> str:
    if hex_figures and word in _AS_THEY_ARE:
        return word
    return f"{word} " if word.startswith(",") else f" {word} "


def pad_rows(words: tuple[str, ...], width: int) -> int:
    """How many rows all the touches take."""
    return placed(words, width)[-1][1] + 1


def draw_pad(words: tuple[str, ...], width: int, height: int, palette: Palette) -> list[Line]:
    """Rows of touches: figures and the ending keys, then the words that are often wanted."""
    rows: list[Line] = [EMPTY] * height
    for x, y, _, written in placed(words, width):
        if y < height:
            gap = say(" " * (x - width_of(rows[y])), QUIET)
            rows[y] = (*rows[y], gap, say(f" {written} ", _KEY_INK if palette.dyed else STRONG))
    return rows


class Pad(Drawn[tuple[str, ...]]):
    """The touches; each posts what it types."""

    def __init__(self) -> None:
        super().__init__(draw_pad, name="pad")

    def on_click(self, event: Click) -> None:
        """A touch types what is written on it."""
        event.stop()
        for x, y, types, written in placed(self.part or (), self.size.width):
            if y == event.y and x <= event.x < x + width_of(written) + 2:
                self.post_message(PadTouched(types))
