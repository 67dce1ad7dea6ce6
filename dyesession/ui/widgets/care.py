"""Reminders that go with what is under way: one amber word, then plain sentences. Decides nothing itself."""

from dyesession.ui.ink import Ink, Line, cut_line, say, wrap
from dyesession.ui.theme import Palette

_WORD = " CARE "
_INDENT = len(_WORD) + 2


def draw_care(care: tuple[str, ...], width: int, height: int, palette: Palette) -> list[Line]:
    """Each reminder from a row of its own, the worst whole before the next; the last one that fits may be cut."""
    rows: list[Line] = []
    for reminder in care:
        rows += wrap([say(reminder)], width - _INDENT - 1, height - len(rows))
    word = (say(" "), say(_WORD, Ink("alarm_ink", "alarm", bold=True)), say(" "))
    blank = (say(" " * _INDENT),)
    return [cut_line((*(blank if index else word), *row), width) for index, row in enumerate(rows)]
