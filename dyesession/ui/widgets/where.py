"""The page after an absence: what rings, what is in which pot, what was done last. Knows no sessions."""

from dyesession.ui.ink import EMPTY, QUIET, STRONG, TEXT, Ink, Line, cut_line, say, width_of, wrap
from dyesession.ui.stove_view import Happened, PotHolds, WhereYouAre
from dyesession.ui.theme import Palette

_LABEL_CELLS = 3
_RINGS = " RINGS "


def _ring_lines(rings: tuple[str, ...]) -> list[Line]:
    block = say(_RINGS, Ink("alarm_ink", "alarm", bold=True))
    blank = say(" " * len(_RINGS))
    return [
        (say(" "), blank if index else block, say(f"  {text}", STRONG)) for index, text in enumerate(rings)
    ]


def _pot_lines(pots: tuple[PotHolds, ...], width: int) -> list[Line]:
    """A pot's letter and name, and behind it what it holds."""
    named = max((width_of(pot.name) for pot in pots), default=0) + 2
    rows: list[Line] = []
    for pot in pots:
        head: Line = (say(f" {pot.letter} ", STRONG), say(pot.name), say(" " * (named - width_of(pot.name))))
        holds = "; ".join(pot.holds) or "empty"
        text = wrap([say(holds, STRONG if pot.holds else QUIET)], width - width_of(head) - 1)
        blank: Line = (say(" " * width_of(head)),)
        rows += [(*(blank if index else head), *line) for index, line in enumerate(text)]
    return rows


def _last_lines(last: tuple[Happened, ...]) -> list[Line]:
    return [(say(f" {entry.at}  ", QUIET), say(entry.what, TEXT)) for entry in last]


def _headed(heading: str, rows: list[Line]) -> list[Line]:
    return [(say(f" {heading}", QUIET),), *rows] if rows else []


def _without_oldest(last: tuple[Happened, ...], taken: int, height: int) -> tuple[Happened, ...]:
    """The newest entries there are rows for; one row is the section's heading."""
    room = max(0, height - taken - 1)
    return last[len(last) - min(room, len(last)) :]


def draw_where(where: WhereYouAre, width: int, height: int, palette: Palette) -> list[Line]:
    """What rings comes first; sections are set apart by an empty row while there are rows for that."""
    sections = [
        [(say(" "), *line) for line in wrap([say(where.heading, STRONG)], width - 2)],
        _ring_lines(where.rings),
        [(say(" "), *line) for text in where.amiss for line in wrap([say(text, STRONG)], width - 2)],
        _headed("in the pots", _pot_lines(where.pots, width)),
    ]
    last = _without_oldest(where.last, sum(len(section) for section in sections), height)
    filled = [section for section in (*sections, _headed("done last", _last_lines(last))) if section]
    spare = height - sum(len(section) for section in filled)
    rows: list[Line] = []
    for index, section in enumerate(filled):
        rows += [EMPTY] if 0 < index <= spare else []
        rows += section
    return [cut_line(row, width) for row in rows[:height]]
