"""The next act: in large letters for the other end of the kitchen, in full beside them. A touch does it."""

from textual.events import Click

from dyesession.ui.block_text import BIG, SMALL, block_rows
from dyesession.ui.frame_view import NextAct
from dyesession.ui.ink import EMPTY, Ink, Line, fill, say, spread_if_room, width_of, wrap
from dyesession.ui.messages import Next
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.drawn import Drawn

_BAND = "band"
STRONG = Ink("strong", _BAND, bold=True)
_TEXT = Ink("text", _BAND)
_LABEL = " NEXT  "
# The act in full needs at least this much beside the large letters.
_LEAST_TEXT = 16


def large(short: str, width: int, height: int) -> tuple[str, ...] | None:
    """The short words as large as they go in, or None."""
    for face in (BIG, SMALL):
        drawn = block_rows(short, face)
        if drawn and face.rows <= height and len(drawn[0]) <= width:
            return drawn
    return None


def _one_row(part: NextAct, width: int) -> list[Line]:
    when = (say(f"{part.when} ", _TEXT),)
    return [spread_if_room((say(_LABEL, STRONG), say(part.act, STRONG)), when, width, _BAND)]


def _words(part: NextAct, width: int, height: int) -> list[Line]:
    when = wrap([say(part.when, _TEXT)], width, 1)
    return [*wrap([say(part.act, STRONG)], width, height - len(when)), *when]


def draw_next(part: NextAct, width: int, height: int, palette: Palette) -> list[Line]:
    """A band across the window; from three rows on with large letters and the act in full beside them."""
    if height < SMALL.rows:
        return _one_row(part, width)
    letters = large(part.short, width - len(_LABEL) - _LEAST_TEXT - 2, height) or ()
    across = len(_LABEL) + (len(letters[0]) + 2 if letters else 0)
    text = _words(part, width - across - 1, height)
    rows = []
    for index in range(height):
        label = say(_LABEL if index == 0 else " " * len(_LABEL), STRONG)
        block: Line = (say(f"{letters[index]}  ", STRONG),) if index < len(letters) else EMPTY
        left = (label, *block)
        gap = say(" " * (across - width_of(left)), _TEXT)
        rows.append(fill((*left, gap, *(text[index] if index < len(text) else EMPTY)), width, _BAND))
    return rows


class NextBand(Drawn[NextAct]):
    """The next act, which can be touched like the space bar."""

    def __init__(self) -> None:
        super().__init__(draw_next, name="next")

    def on_click(self, event: Click) -> None:
        """The whole band is the target."""
        event.stop()
        self.post_message(Next())
