"""Which parts of a place are shown in a window of a given size, and where: pure arithmetic of cells."""

from collections.abc import Mapping

from dyesession.ui.box import Box
from dyesession.ui.frame_view import Frame
from dyesession.ui.ink import say, wrap
from dyesession.ui.widgets.pad import PAD_ROWS

# From this width on, what explains the marked line stands beside the list, else below it.
BESIDE_WIDTH = 110
_LIST_SHARE = 0.56
_WIDEST_LIST = 104
_GAP = 3
# From these heights on there are large letters in the next act, an empty row under the top line, a row for what
# explains the marked line.
_LARGE_HEIGHT, _TALL_HEIGHT, _GAP_HEIGHT, _ASIDE_HEIGHT = 22, 44, 20, 22
_LEAST_LIST = 4
_MOST_NOTICE = 3  # rows for one sentence: a refusal must be read to its end


def arrange_place(frame: Frame, aside_rows: int, width: int, height: int) -> Mapping[str, Box]:
    """Where everything goes in a window of `width` x `height` cells, 1 x 1 and up.

    `aside_rows`: how many rows the explanation wants where it stands below the list; 0 for none.
    """
    below = _below(frame, width, height)
    top = {"ringing": min(3, height) if frame.ringing else 0, "headline": 0 if frame.ringing else 1}
    gap = int(height >= _GAP_HEIGHT)
    taken = sum(top.values()) + gap + sum(below.values())
    middle = max(0, height - taken)
    boxes = _stacked(top, 0, width)
    y = sum(top.values()) + gap
    boxes |= _middle(aside_rows, width, height, y, middle)
    return boxes | _stacked(below, y + middle, width)


def _below(frame: Frame, width: int, height: int) -> dict[str, int]:
    """The rows of what stands under the middle; in a low window the next act before the rest."""
    act = 5 if height >= _TALL_HEIGHT else 3 if height >= _LARGE_HEIGHT else 1
    rows = {
        "gap": int(height >= _LARGE_HEIGHT),
        "next": act,
        "notice": len(wrap([say(frame.note)], width - 2, _MOST_NOTICE)),
        "pad": PAD_ROWS if frame.entry is not None and height >= _GAP_HEIGHT - 4 else 0,
        "keys": 1,
    }
    for part, least in (("gap", 0), ("notice", 1), ("pad", 0), ("keys", 0), ("notice", 0), ("next", 0)):
        if sum(rows.values()) > max(1, height - 2):
            rows[part] = min(rows[part], least)
    return rows


def _middle(aside_rows: int, width: int, height: int, y: int, rows: int) -> dict[str, Box]:
    if rows <= 0:
        return {}
    if width >= BESIDE_WIDTH and aside_rows:
        listed = min(_WIDEST_LIST, int(width * _LIST_SHARE))
        beside = Box(listed + _GAP, y, width - listed - _GAP - 1, rows)
        return {"list": Box(0, y, listed, rows), "aside": beside}
    if aside_rows and height >= _ASIDE_HEIGHT and rows - aside_rows - 1 >= _LEAST_LIST:
        listed = rows - aside_rows - 1
        return {"list": Box(0, y, width, listed), "aside": Box(1, y + listed + 1, width - 2, aside_rows)}
    return {"list": Box(0, y, width, rows)}


def _stacked(rows: Mapping[str, int], y: int, width: int) -> dict[str, Box]:
    boxes = {}
    for part, count in rows.items():
        if count > 0:
            boxes[part] = Box(0, y, width, count)
        y += count
    boxes.pop("gap", None)
    return boxes
