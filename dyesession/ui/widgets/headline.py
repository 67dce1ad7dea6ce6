"""The top line: what is dyed, whether it is saved, and the time of day. Knows nothing of sessions."""

from dataclasses import dataclass

from dyesession.ui.ink import EMPTY, QUIET, STRONG, Ink, Line, say, spread
from dyesession.ui.stove_view import Saving, StoveView
from dyesession.ui.theme import Palette

_SAVING = {"saved": ("✓ saved", QUIET), "saving": ("… saving", QUIET)}


@dataclass(frozen=True)
class HeadlinePart:
    """What the top line says."""

    title: str
    fibre: str
    wall_clock: str
    saving: Saving


def headline_part(view: StoveView) -> HeadlinePart:
    """The top line's share of a view."""
    return HeadlinePart(view.title, view.fibre, view.wall_clock, view.saving)


def saving_words(saving: Saving) -> Line:
    """Whether the last entry is on the disk: a quiet word, or an alarm block."""
    unsaved = (f" ▲ {saving.state} ", Ink("alarm_ink", "alarm", bold=True))
    return (_SAVING.get(saving.state, unsaved),)


def draw_headline(part: HeadlinePart, width: int, height: int, palette: Palette) -> list[Line]:
    """One line: the title and the fibre on the left, the saving state and the time on the right."""
    fibre: Line = (say("   "), say(part.fibre, QUIET)) if part.fibre else EMPTY
    left = (say(" "), say(part.title, STRONG), *fibre)
    clock: Line = (say("   "), say(part.wall_clock, STRONG), say(" ")) if part.wall_clock else (say(" "),)
    return [spread(left, (*saving_words(part.saving), *clock), width)]
