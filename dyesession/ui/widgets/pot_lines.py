"""Pots there is no picture's room for: one line each, with its clock. Knows no sessions."""

from textual.events import Click

from dyesession.ui.ink import QUIET, STRONG, Line, cut_line, joined, say, width_of
from dyesession.ui.messages import PotTouched
from dyesession.ui.stove_view import Pot
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.drawn import Drawn
from dyesession.ui.widgets.pot import state_words

_NAME_CELLS = 16


def _clock_words(pot: Pot) -> Line:
    return (say(f"  {pot.clock.text} {pot.clock.unit}".rstrip(), STRONG),) if pot.clock else ()


def _line(pot: Pot) -> Line:
    gap = " " * max(2, _NAME_CELLS - width_of(pot.name))
    rest = f"   {pot.first}" if pot.first else ""
    return (
        say(f" {pot.letter} ", STRONG), say(f"{pot.name}{gap}"), *state_words(pot), *_clock_words(pot),
        say(rest, QUIET),
    )  # fmt: skip


def draw_pot_lines(pots: tuple[Pot, ...], width: int, height: int, palette: Palette) -> list[Line]:
    """A line for each pot; all in one where there is only one row."""
    if len(pots) <= height:
        return [cut_line(_line(pot), width) for pot in pots]
    short = [(say(f" {pot.letter} ", STRONG), *state_words(pot), *_clock_words(pot)) for pot in pots]
    return [cut_line(joined(short, "  "), width)]


class PotLines(Drawn[tuple[Pot, ...]]):
    """Lines that can be touched, each for its pot."""

    def __init__(self) -> None:
        super().__init__(draw_pot_lines, name="lines")

    def on_click(self, event: Click) -> None:
        """The line's pot; nothing where several share a line."""
        event.stop()
        pots = self.part or ()
        if len(pots) <= self.size.height and 0 <= event.y < len(pots):
            self.post_message(PotTouched(pots[event.y].letter))
