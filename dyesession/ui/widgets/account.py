"""How strong the bath is: the figure in large letters, and the sentences of its account beside it.

Draws the figures it is handed and the word for where each comes from; reckons nothing.
"""

from collections.abc import Sequence

from dyesession.ui.block_text import BIG, SMALL, block_rows
from dyesession.ui.ink import EMPTY, QUIET, STRONG, TEXT, Ink, Line, Span, cut_line, say, width_of, wrap
from dyesession.ui.stove_view import Account, Said, Sentence, Strength, Weight
from dyesession.ui.theme import Palette

_INKS: dict[Weight, Ink] = {"plain": TEXT, "strong": STRONG, "quiet": QUIET}
# The sentences need at least this much beside the large figure.
_LEAST_TEXT = 30
# A longer line is hard to follow (common practice, no source).
_LONGEST_LINE = 90
TODAY_ROWS = 2  # the strength over the day, and the empty row above it


def sentence_spans(sentence: Sentence) -> list[Span]:
    """A sentence in its inks, the word for where it comes from quietly behind it."""
    spans = [say(part.text, _INKS[part.weight]) for part in sentence.parts]
    if not sentence.how or not spans:
        return spans
    text, ink = spans[-1]
    return [*spans[:-1], (text.rstrip(" .,"), ink), say(","), say(f" {sentence.how}.", QUIET)]


def _paragraph(account: Account, width: int, rows: int) -> list[Line]:
    """As many whole sentences as there are rows for; the first is cut where it is too long by itself."""
    return _whole(account.sentences, width, rows)


def _beside_figure(account: Account, width: int, rows: int) -> list[Line]:
    """The sentences beside the figure. Where the second would be lost, the first gives way: the figure says it."""
    first, others = account.sentences[:1], account.sentences[1:]
    if account.strength is not None and others and len(wrap(_spans((*first, others[0])), width)) > rows:
        short = Sentence((Said(f"{account.strength.of}.", "quiet"),), first[0].how)
        if len(wrap(_spans((short, others[0])), width)) <= rows:
            return _whole((short, *others), width, rows)
    return _whole(account.sentences, width, rows)


def _whole(sentences: Sequence[Sentence], width: int, rows: int) -> list[Line]:
    shown = next(n for n in range(len(sentences), -1, -1) if n <= 1 or len(wrap(_spans(sentences[:n]), width)) <= rows)
    return wrap(_spans(sentences[:shown]), width, rows)


def _spans(sentences: Sequence[Sentence]) -> list[Span]:
    return [span for sentence in sentences for span in (say(" "), *sentence_spans(sentence))]


def _figure(strength: Strength, width: int, rows: int) -> list[Line] | None:
    """The figure in large, its unit at its foot; None where it will not go in."""
    face = BIG if rows >= BIG.rows else SMALL
    drawn = block_rows(strength.number, face)
    if drawn is None or rows < face.rows or len(drawn[0]) + _LEAST_TEXT > width:
        return None
    beside: list[Line] = [EMPTY] * len(drawn)
    beside[-1] = (say(strength.unit, STRONG),)
    return [(say(f" {row} ", STRONG), *words) for row, words in zip(drawn, beside, strict=True)]


def _beside(figure: list[Line], text: list[Line]) -> list[Line]:
    across = max(width_of(line) for line in figure) + 3
    rows = []
    for index in range(max(len(figure), len(text))):
        left = figure[index] if index < len(figure) else EMPTY
        right = text[index] if index < len(text) else EMPTY
        rows.append((*left, say(" " * (across - width_of(left))), *right))
    return rows


def draw_account(account: Account, width: int, height: int, palette: Palette) -> list[Line]:
    """The figure with its sentences beside it from three rows on; below that, the sentences alone."""
    figure = _figure(account.strength, width, height) if account.strength and height >= SMALL.rows else None
    if figure is None:
        text = _paragraph(account, min(_LONGEST_LINE, width - 2), _text_rows(account, height))
        return [cut_line((say(" "), *line), width) for line in [*text, *_today(account, width, height - len(text))]]
    room = min(_LONGEST_LINE, width - max(width_of(line) for line in figure) - 4)
    text = _beside_figure(account, room, _text_rows(account, height))
    if not account.sentences and account.strength:
        text = wrap([say(f"{account.strength.of} "), say(account.strength.how, QUIET)], room, height)
    return [cut_line(line, width) for line in _beside(figure, [*text, *_today(account, room, height - len(text))])]


def _text_rows(account: Account, height: int) -> int:
    """The rows of the sentences: in a high part, those of the strength over the day are kept free."""
    return height - TODAY_ROWS if account.today and height > BIG.rows else height


def _today(account: Account, width: int, rows: int) -> list[Line]:
    """The strength over the day below the sentences, an empty row between where there are two; nothing cut short."""
    drawn: Line = (say(account.today),)
    if not account.today or rows < 1 or width_of(drawn) > width:
        return []
    return [EMPTY, drawn] if rows > 1 else [drawn]
