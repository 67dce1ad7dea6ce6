"""A question that a hazard hangs on. Its double frame is used for nothing else.

Space and Enter do not answer it: a number or a letter does, and "not now" is always there.
"""

from textual.events import Click

from dyesession.ui.block_text import SMALL
from dyesession.ui.ink import EMPTY, Ink, Line, cut_line, fill, say, spread, width_of, wrap
from dyesession.ui.messages import Chosen, NotNow
from dyesession.ui.stove_view import Ask
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.drawn import Drawn
from dyesession.ui.widgets.next_act import large

_ON = "ask"
_INK, _STRONG, _QUIET = Ink("ask_ink", _ON), Ink("ask_ink", _ON, bold=True), Ink("ask_quiet", _ON)
_KEY = Ink("ask", "ask_ink", bold=True)
_LABEL = " ASK "
NOT_NOW_KEY = "-"
_GAP = 3
# Without these rows there is no frame: the question and the way to answer it matter more.
_FRAMED_ROWS, _FRAME = 5, 2
# The question, why, and the answers: what stands below the large letters.
_PLAIN_ROWS = 3


def _key(key: str) -> str:
    return f" {key} "


def _choices(ask: Ask) -> list[tuple[int, str, Line]]:
    """The letters to press: where each starts, its key, and how it is drawn."""
    placed: list[tuple[int, str, Line]] = []
    x = 0
    for choice in ask.choices:
        line: Line = (say(_key(choice.key), _KEY), say(f" {choice.word}", _STRONG))
        placed.append((x, choice.key, line))
        x += width_of(line) + _GAP
    return placed


def _not_now(ask: Ask) -> Line:
    return (say(_key(NOT_NOW_KEY), _KEY), say(f" {ask.not_now} ", _INK))


def _typed(ask: Ask) -> Line:
    """The number typed so far and what it was understood as; what to type, before the first digit."""
    if not ask.typed:
        return (say("type ", _QUIET), say(ask.wants, _STRONG))
    echo: Line = (say(f"  {ask.echo}", _STRONG), say("   enter: it counts", _QUIET)) if ask.echo else EMPTY
    return (say(f"{ask.wants}  ", _QUIET), say(f"{ask.typed}▏", _STRONG), *echo)


def _answers(ask: Ask, width: int) -> Line:
    left: Line = EMPTY
    for index, (_, _, line) in enumerate(_choices(ask)):
        left = (*left, say(" " * (_GAP if index else 0), _INK), *line)
    if ask.wants:
        left = (*left, say(" " * _GAP, _INK), *_typed(ask)) if left else _typed(ask)
    return spread(left, _not_now(ask), width, _ON)


def _body(ask: Ask, width: int, rows: int) -> list[Line]:
    """The question, why it is asked, and the answers; large letters first where there is room for them: a reason may
    end in first aid, which goes before any letters.
    """
    plain = len(wrap([say(ask.question)], width, 2)) + len(wrap([say(ask.why)], width, rows)) + 1
    letters = large(ask.short, width, rows - max(plain, _PLAIN_ROWS)) if rows >= plain + SMALL.rows else None
    head: list[Line] = [(say(row, _STRONG),) for row in letters or ()]
    room = rows - len(head) - 1
    question = wrap([say(ask.question, _STRONG)], width, max(1, min(2, room)))
    why = wrap([say(ask.why, _QUIET)], width, max(0, room - len(question)))
    body = [*head, *question, *why][: max(0, rows - 1)]
    return [*body, *([EMPTY] * (rows - 1 - len(body))), _answers(ask, width)]


def draw_ask(ask: Ask, width: int, height: int, palette: Palette) -> list[Line]:
    """The question in a double frame; in fewer than five rows without the frame."""
    if height < _FRAMED_ROWS:
        lines = [fill((say(" ", _INK), *line), width, _ON) for line in _body(ask, width - 2, height)]
        return lines[-height:]
    inner = width - 4
    top = (say("╔═", _INK), say(_LABEL, _KEY), say("═" * (width - len(_LABEL) - 3) + "╗", _INK))
    bottom = (say("╚" + "═" * (width - 2) + "╝", _INK),)
    rows = [_framed(line, inner) for line in _body(ask, inner, height - _FRAME)]
    return [cut_line(line, width) for line in (top, *rows, bottom)]


def _framed(line: Line, inner: int) -> Line:
    return (say("║ ", _INK), *fill(line, inner, _ON), say(" ║", _INK))


def answer_at(ask: Ask, x: int, y: int, width: int, height: int) -> str | None:
    """The key of the answer drawn at a cell, or None."""
    framed = height >= _FRAMED_ROWS
    answers_row = height - 1 - (1 if framed else 0)
    left, inner = (2, width - 4) if framed else (1, width - 2)
    if y != answers_row:
        return None
    if left + inner - width_of(_not_now(ask)) <= x < left + inner:
        return NOT_NOW_KEY
    for start, key, line in _choices(ask):
        if left + start <= x < left + start + width_of(line):
            return key
    return None


class AskBox(Drawn[Ask]):
    """The question; each answer can be touched."""

    def __init__(self) -> None:
        super().__init__(draw_ask, name="ask")

    def on_click(self, event: Click) -> None:
        """Only the answers are targets: a touch elsewhere answers nothing."""
        event.stop()
        if self.part is None:
            return
        key = answer_at(self.part, event.x, event.y, self.size.width, self.size.height)
        if key is not None:
            self.post_message(NotNow() if key == NOT_NOW_KEY else Chosen(key))
