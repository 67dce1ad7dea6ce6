"""One line above the keys: what is not saved and where it should be, or a short note. Knows no sessions."""

from dataclasses import dataclass

from dyesession.ui.ink import EMPTY, Line, fill, say, wrap
from dyesession.ui.stove_view import Saving, StoveView
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.headline import saving_words


@dataclass(frozen=True)
class NoticePart:
    """The note, and where the session should be when it is not saved; `said`: the top line says so too."""

    note: str
    saving: Saving
    said: bool = False


def notice_part(view: StoveView) -> NoticePart:
    """The line's share of a view."""
    unsaved = view.saving.state == "NOT SAVED"
    return NoticePart(view.note, view.saving if unsaved else Saving(), not view.away and view.ringing is None)


def draw_notice(part: NoticePart, width: int, height: int, palette: Palette) -> list[Line]:
    """One line, more where there is room. What is not saved comes before any note."""
    unsaved: Line = EMPTY
    if part.saving.state == "NOT SAVED":
        path = say(f"not in {part.saving.path}") if part.saving.path else say("")
        block = EMPTY if part.said else (*saving_words(part.saving), say(" "))
        unsaved = (*block, path, say("; " if part.note and part.saving.path else ""))
    whole = (*unsaved, say(part.note))
    lines = wrap(whole, width - 1, height) if height > 1 else [whole]
    return [fill((say(" "), *line), width) for line in lines]
