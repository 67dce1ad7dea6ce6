"""The lines above the keys: a short note, or what is not saved, why and where. Knows no sessions."""

from dataclasses import dataclass

from dyesession.ui.ink import EMPTY, Line, fill, say, wrap
from dyesession.ui.stove_view import Saving, StoveView
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.headline import saving_words


@dataclass(frozen=True)
class NoticePart:
    """The note, and why the session is not saved when it is not; `said`: the top line says so too."""

    note: str
    saving: Saving
    said: bool = False


def notice_part(view: StoveView) -> NoticePart:
    """The line's share of a view."""
    unsaved = view.saving.state == "NOT SAVED"
    return NoticePart(view.note, view.saving if unsaved else Saving(), not view.away and view.ringing is None)


def draw_notice(part: NoticePart, width: int, height: int, palette: Palette) -> list[Line]:
    """One line, more where there is room."""
    whole = notice_words(part)
    lines = wrap(whole, width - 1, height) if height > 1 else [whole]
    return [fill((say(" "), *line), width) for line in lines]


def notice_words(part: NoticePart) -> Line:
    """The answer to what was typed comes first: it would not be seen behind a long path."""
    unsaved = part.saving.state == "NOT SAVED" and not part.said
    block: Line = (*saving_words(part.saving), say(" ")) if unsaved else EMPTY
    said = [one.rstrip(".") for one in (part.note, part.saving.why) if one]
    return (*block, say("; ".join(said) if len(said) > 1 else part.note or part.saving.why))
