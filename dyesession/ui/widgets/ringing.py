"""What rings: an amber block across the top of any screen, until it is acknowledged. Knows no sessions."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from textual.events import Click

from dyesession.ui.frame_view import Ringing
from dyesession.ui.ink import EMPTY, Ink, Line, Span, fill, say, spread, width_of, wrap
from dyesession.ui.messages import Next
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.drawn import Drawn
from dyesession.ui.widgets.next_act import large

if TYPE_CHECKING:
    from dyesession.ui.stove_view import StoveView

_ON = "alarm"
_INK = Ink("alarm_ink", _ON)
_STRONG = Ink("alarm_ink", _ON, bold=True)
_LABEL = " RINGING "
_SEEN = "space: seen"
_LEAST_TEXT = 30


@dataclass(frozen=True)
class RingingPart:
    """What rings, and the time of day: the block stands where the top line was."""

    ringing: Ringing
    wall_clock: str


def ringing_part(view: "StoveView") -> RingingPart | None:
    """The block's share of a view; None where nothing rings."""
    return RingingPart(view.ringing, view.wall_clock) if view.ringing else None


def _sentence(ringing: Ringing) -> list[Span]:
    over = f" {ringing.over}" if ringing.over else ""
    more = f" {ringing.more}." if ringing.more else ""
    return [
        say(f"{ringing.letter}: {ringing.what}{over}.", _STRONG), say(f" {ringing.act}{more}", _INK),
    ]  # fmt: skip


def _short(ringing: Ringing) -> str:
    return ringing.short or (f"{ringing.letter} over" if ringing.over else ringing.letter)


def draw_ringing(part: RingingPart, width: int, height: int, palette: Palette) -> list[Line]:
    """The pot and what is wrong, what to do; at the right the time of day and the key to press."""
    ends = [(say(f" {part.wall_clock} ", _STRONG),), (say(f" {_SEEN} ", _STRONG),)]
    label = len(_LABEL) + 1
    side = max(width_of(end) for end in ends)
    letters = large(_short(part.ringing), width - label - _LEAST_TEXT - side, height) or ()
    across = label + (len(letters[0]) + 2 if letters else 0)
    text = wrap(_sentence(part.ringing), width - across - side, height)
    rows = []
    for index in range(height):
        head = say(_LABEL if index == 0 else " " * len(_LABEL), _STRONG)
        block: Line = (say(f" {letters[index]}", _STRONG),) if index < len(letters) else EMPTY
        gap = say(" " * (across - len(_LABEL) - width_of(block)), _INK)
        words = text[index] if index < len(text) else EMPTY
        end = ends[1] if index == height - 1 else ends[0] if index == 0 else EMPTY
        rows.append(fill(spread((head, *block, gap, *words), end, width, _ON), width, _ON))
    return rows


class RingingBlock(Drawn[RingingPart]):
    """The block, which can be touched like the space bar: I have seen it."""

    def __init__(self) -> None:
        super().__init__(draw_ringing, name="ringing")

    def on_click(self, event: Click) -> None:
        """The whole block is the target."""
        event.stop()
        self.post_message(Next())
