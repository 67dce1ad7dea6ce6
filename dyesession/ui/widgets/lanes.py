"""The lanes: fibre and liquor, each step with its mark, up to where they meet and beyond. Knows no sessions.

When there is less room, the lines between steps shrink first, then the words of states, then the finished
parts, then the far end.
"""

from dataclasses import dataclass

from dyesession.ui.ink import EMPTY, LINE, QUIET, STRONG, TEXT, Ink, Line, cut_line, say, width_of
from dyesession.ui.stove_view import STAGE_MARKS, Lanes, Stage, StageState
from dyesession.ui.theme import Palette

_INKS: dict[StageState, Ink] = {
    "waiting": TEXT, "ready": STRONG, "running": STRONG, "paused": STRONG, "done": QUIET, "skipped": QUIET,
}  # fmt: skip
# States whose mark alone says too little get their word too, while there is room.
_SPOKEN: frozenset[StageState] = frozenset({"ready", "paused", "skipped"})
_OVER: frozenset[StageState] = frozenset({"done", "skipped"})
_LONGEST_LINK = 6


@dataclass(frozen=True)
class _Way:
    """How much is drawn: the length of a link, state words or not, finished parts or not, how far ahead."""

    link: int
    spoken: bool
    finished: bool
    ahead: int


_EVERYTHING_AHEAD = 99
_WAYS = (
    *(_Way(link, True, True, _EVERYTHING_AHEAD) for link in range(_LONGEST_LINK, 0, -1)),
    _Way(1, False, True, _EVERYTHING_AHEAD),
    *(_Way(link, False, False, _EVERYTHING_AHEAD) for link in range(3, 0, -1)),
    *(_Way(1, False, False, ahead) for ahead in (2, 1, 0)),
)


def _stage(stage: Stage, way: _Way) -> Line:
    word = f" {stage.state}" if way.spoken and stage.state in _SPOKEN else ""
    return (say(f"{stage.word} {STAGE_MARKS[stage.state]}{word}", _INKS[stage.state]),)


def _link(way: _Way) -> Line:
    return (say(f" {'─' * way.link} ", LINE),)


def _shown(stages: tuple[Stage, ...], way: _Way) -> tuple[list[Line], bool]:
    """The steps of a lane as drawn, and whether the far end was left off."""
    begun = 0
    while not way.finished and begun < len(stages) and stages[begun].state in _OVER:
        begun += 1
    short: list[Line] = [(say(f"✓ {begun}", QUIET),)] if begun else []
    now = next((i for i, stage in enumerate(stages) if stage.state not in _OVER), len(stages))
    kept = stages[begun : now + 1 + way.ahead]
    return [*short, *(_stage(stage, way) for stage in kept)], now + 1 + way.ahead < len(stages)


def _run(stages: tuple[Stage, ...], way: _Way) -> Line:
    parts, left_off = _shown(stages, way)
    if left_off:
        parts.append((say("…", LINE),))
    line: Line = EMPTY
    for index, part in enumerate(parts):
        line = (*line, *(_link(way) if index else EMPTY), *part)
    return line


def _meeting(bodies: list[Line], together: Line, way: _Way) -> list[Line]:
    """Every lane drawn out to the same column, joined there, and the common way behind the last."""
    reach = max(width_of(body) for body in bodies) + 1 + way.link
    rows = []
    for index, body in enumerate(bodies):
        last = index == len(bodies) - 1
        corner = "┐" if index == 0 else "┴" if last else "┤"
        rule = "─" * (reach - width_of(body) - 1)
        tail: Line = (say("─" * way.link + " ", LINE), *together) if last else EMPTY
        rows.append((*body, say(f" {rule}{corner}", LINE), *tail))
    return rows


def _drawn(lanes: Lanes, way: _Way) -> list[Line]:
    bodies = [_run(row.stages, way) for row in lanes.rows]
    together = _run(lanes.together, way)
    if len(bodies) == 1:
        return [(*bodies[0], *_link(way), *together) if together else bodies[0]]
    return _meeting(bodies, together, way) if together else bodies


def _in_one_row(lanes: Lanes, width: int) -> Line:
    """What is under way in every lane, and what follows: all there is room for in a single row."""
    now: Line = EMPTY
    for row in lanes.rows:
        under_way = [stage for stage in row.stages if stage.state not in _OVER]
        if under_way:
            now = (*now, *((say(" + ", LINE),) if now else EMPTY), *_stage(under_way[0], _WAYS[-1]))
    ahead = [_run(lanes.together, way) for way in _WAYS[-4:]]
    room = width - width_of(now) - 6
    together = next((line for line in ahead if width_of(line) <= room), ahead[-1])
    return cut_line((say(" "), *now, *((say(" ─ ", LINE),) if now else EMPTY), *together), width)


def draw_lanes(lanes: Lanes, width: int, height: int, palette: Palette) -> list[Line]:
    """One line for each lane, cut to the width; in a single row, what is under way and what follows."""
    if not lanes.rows:
        return []
    if height == 1 and len(lanes.rows) > 1:
        return [_in_one_row(lanes, width)]
    named = max(width_of(row.name) for row in lanes.rows) + 3
    ways = [_drawn(lanes, way) for way in _WAYS]
    fitting = (rows for rows in ways if all(width_of(row) <= width - named - 2 for row in rows))
    chosen = next(fitting, ways[-1])
    heads = [say(f" {row.name}{' ' * (named - width_of(row.name))}", QUIET) for row in lanes.rows]
    return [cut_line((head, *row), width) for head, row in zip(heads, chosen, strict=True)]
