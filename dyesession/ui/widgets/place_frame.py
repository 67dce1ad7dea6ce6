"""The top line of a place, and the line above its keys. Knows no sessions."""

from dyesession.ui.frame_view import Frame
from dyesession.ui.ink import EMPTY, QUIET, STRONG, Line, fill, say, spread, wrap
from dyesession.ui.theme import Palette


def draw_title(frame: Frame, width: int, height: int, palette: Palette) -> list[Line]:
    """One line: the place and what stands behind it on the left, the time of day on the right."""
    beside: Line = (say("   "), say(frame.beside, QUIET)) if frame.beside else EMPTY
    clock: Line = (say(frame.wall_clock, STRONG), say(" ")) if frame.wall_clock else EMPTY
    return [spread((say(" "), say(frame.title, STRONG), *beside), clock, width)]


def draw_line(note: str, width: int, height: int, palette: Palette) -> list[Line]:
    """A sentence, in as many rows as it was given."""
    return [fill((say(" "), *line), width) for line in wrap([say(note)], width - 2, height)]
