"""How My kitchen is drawn: the questions of the plan at hand first, then what is known, then what can be added."""

from dyesession.ui.ink import EMPTY, QUIET, STRONG, TEXT, Line, cut, cut_line, say, width_of, wrap
from dyesession.ui.kitchen_view import Asked, KitchenView, Known
from dyesession.ui.place_keys import KITCHEN
from dyesession.ui.rows import BLANK, Row, heading, paragraph, section
from dyesession.ui.screens.place import Drawing
from dyesession.ui.theme import Palette

_WHAT = 14
_PAD = ("g", "kg", "l", "W", "m", "cm", "stainless", "enamel", "electric", "gas", "child", "cat")


def kitchen_rows(view: KitchenView, width: int, palette: Palette) -> tuple[Row, ...]:
    """Every line of My kitchen."""
    parts = [
        *paragraph(view.about, width, ink=TEXT),
        *section("the plan would like to know", [row for one in view.asked for row in _asked(one, width)]),
        *section("known", [_known(one, width) for one in view.known]),
        *section("more of it", [_known(one, width) for one in view.more]),
        *section("the alarm", [_known(Known("alarm", "try it", view.alarm), width)] if view.alarm else []),
        BLANK,
        Row(cut_line((say(view.file, QUIET),), width)) if view.file else heading("nothing written down yet"),
    ]
    return tuple(parts[1:] if parts and parts[0] == BLANK else parts)


def _asked(asked: Asked, width: int) -> list[Row]:
    rows = [Row(line, asked.key) for line in wrap([say(asked.asks, STRONG)], width)]
    rows += [Row((say(f"    {word}"),), key) for key, word in asked.choices]
    return rows


def _known(known: Known, width: int) -> Row:
    what = cut(known.what, _WHAT - 1)
    gap = " " * (_WHAT - width_of(what))
    return Row(cut_line((say(f"{what}{gap}", QUIET), say(known.says)), width), known.key)


def kitchen_aside(view: KitchenView, width: int, height: int, palette: Palette) -> list[Line]:
    """Why the marked question is asked, and what an answer looks like."""
    marked = next(
        (one for one in view.asked if view.cursor in (one.key, *(key for key, _ in one.choices))), None
    )
    if marked is None:
        return (
            wrap([say("Enter: type it anew. Delete: take it away.", QUIET)], width, height)
            if view.known
            else []
        )
    lines = wrap([say(marked.why)], width, max(1, height - 1))
    example: Line = (
        say("for example ", QUIET),
        say(marked.example, STRONG),
        say("   -  leaves it open", QUIET),
    )
    return [*lines, cut_line(example, width)] if marked.example else [*lines, EMPTY]


KITCHEN_DRAWING: Drawing[KitchenView] = Drawing(KITCHEN, kitchen_rows, kitchen_aside, aside_rows=3, pad=_PAD)
