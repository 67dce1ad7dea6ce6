"""Which parts of the Stove are shown in a window of a given size, and where: pure arithmetic of cells.

Knows which parts a view has, never what they say beyond how many lines it takes. Nothing here depends on a
clock's digits, so nothing on the screen moves when a number changes.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from dyesession.ui.block_text import BIG, SMALL, Face, largest_face
from dyesession.ui.box import Box
from dyesession.ui.ink import say, wrap
from dyesession.ui.stove_view import Pot, StoveView, by_loudness, wants_pad
from dyesession.ui.widgets.account import TODAY_ROWS
from dyesession.ui.widgets.craft import how_rows
from dyesession.ui.widgets.notice import notice_part, notice_words
from dyesession.ui.widgets.pad import pad_rows

# Below this: the loudest clock and the next act, nothing else.
LEAST_WIDTH, LEAST_HEIGHT = 60, 18
# From this width on, the curve, the bars and the shade have room beside one another.
PANELS_WIDTH = 100
# From this width on, a pot has a tick outside each wall and a large letter.
ROOMY_POT = 26
_ROOMY_EDGES, _NARROW_EDGES = 4, 3
# The narrowest picture of a pot, and the narrowest in a window below `_ROOMY_WIDTH`.
_LEAST_POT, _LEAST_POT_SMALL_WINDOW, _ROOMY_WIDTH = 20, 28, 80
# A pot without a countdown can do with less, where others want big digits.
_STILL_POT = 15
# A pot is at most this many times as wide (in cells) as it is high (in rows), or it looks like a tray.
_WIDEST_POT_PER_ROW, _WIDEST_POT = 6, 64
_RESERVED_CLOCK = "0:00"  # room is kept for the widest clock there is
# The big digits in a pot want this much; a pot without a clock can do with the least.
_BIG_CLOCK_POT = 32


@dataclass(frozen=True)
class PotPlace:
    """A pot with a picture: where it stands, how many rows of words are below it, and its digits' face."""

    pot: Pot
    box: Box
    text_rows: int
    face: Face | None


@dataclass(frozen=True)
class Arrangement:
    """Where everything goes. A part without a box is not shown; `lines` are pots that became one line."""

    boxes: Mapping[str, Box] = field(default_factory=dict)
    pots: tuple[PotPlace, ...] = ()
    lines: tuple[Pot, ...] = ()


# From top to bottom. A gap is an empty row or several.
_ORDER = (
    "ringing", "headline", "gap lanes", "lanes", "gap pots", "vessel", "text", "lines", "gap panels",
    "panels", "gap account", "account", "gap care", "care", "how", "craft", "gap next", "ask", "next", "notice", "pad",
    "keys",
)  # fmt: skip
# What each part has at the very least, where it is shown at all.
_LEAST = {
    "ringing": 2, "headline": 1, "lanes": 2, "vessel": 6, "text": 1, "lines": 9, "account": 1, "care": 1,
    "ask": 5, "next": 1, "pad": 1, "keys": 1,
}  # fmt: skip
# The rows left over are given out in this order: first what is read from two metres, last what is pleasant.
_WISHES: tuple[tuple[str, int], ...] = (
    ("pad", 2), ("pad", 3), ("next", 3), ("ringing", 3), ("notice", 2), ("notice", 3), ("notice", 4),
    ("ask", 10), ("ask", 9), ("ask", 8), ("care", 2), ("account", 3), ("text", 2),
    ("how", 1), ("vessel", 7), ("account", 1), ("ask", 6), ("text", 3), ("how", 2), ("notice", 1), ("vessel", 8), ("gap account", 1),
    ("craft", 1), ("how", 3), ("care", 3), ("lanes", 2), ("headline", 1), ("gap pots", 1), ("vessel", 9), ("gap next", 1),
    ("gap lanes", 1), ("panels", 9), ("gap panels", 1), ("next", 5), ("ask", 11), ("ringing", 5),
    ("account", 5), ("gap care", 1), ("vessel", 14), ("panels", 12), ("account", 7), ("keys", 2), ("care", 5), ("vessel", 18),
    ("panels", 15), ("gap panels", 2), ("gap account", 2), ("gap pots", 2),
)  # fmt: skip
# Which part an empty row sets apart, where its name does not say so: no part, no empty row.
_BELOW_GAP = {"gap pots": "vessel"}
_MOST_UNSAVED = 2  # why nothing is saved stands there for long, and must not push the care lines away
_MOST_NOTICE = 4  # rows for one sentence above the keys: a question about a figure is read to its end
# In a lower window the lanes share a row, so that the strength can be large; and a question is worth more
# than the lanes, the top line and the keys: it must be read from two metres.
_LOW_WINDOW = 22
# A grave caution and its first aid are whole before anything else grows; and the cells beside a caution.
_MOST_GRAVE, _CARE_MARGIN = 4, 9
PAGE_PAD = 2
# In a window this high, plain rows are so low that large letters take five of them.
_TALL_WINDOW = 40
# Where even the least does not fit: what gives way, in this order.
_CUTS: tuple[tuple[str, int], ...] = (
    ("notice", 2), ("lanes", 1), ("lines", 1), ("care", 2), ("account", 0), ("lanes", 0), ("headline", 0), ("vessel", 5), ("notice", 0),
    ("lines", 0), ("pad", 0), ("ask", 4), ("keys", 0), ("vessel", 4), ("vessel", 3), ("text", 0), ("care", 0),
)  # fmt: skip


def arrange(view: StoveView, width: int, height: int) -> Arrangement:
    """Where everything goes in a window of `width` x `height` cells, 1 x 1 and up."""
    if width < LEAST_WIDTH or height < LEAST_HEIGHT:
        return _arrange_small(view, width, height)
    if view.away or view.where is not None or view.offers:
        return _arrange_page(view, width, height)
    return _arrange_stove(view, width, height)


def _present(view: StoveView) -> set[str]:
    """The parts this view has something for."""
    has = {
        "ringing": view.ringing is not None,
        "headline": view.ringing is None,
        "lanes": bool(view.lanes.rows),
        "account": bool(view.account.sentences or view.account.strength) and view.ask is None,
        "care": bool(view.care),
        "ask": view.ask is not None,
        "next": view.ask is None,
        "notice": needs_notice(view),
        "pad": wants_pad(view),
        "keys": bool(view.keys) or view.entry is not None,
    }
    return {part for part, there in has.items() if there}


def needs_notice(view: StoveView) -> bool:
    """Whether there is something to say in the line above the keys."""
    return bool(view.note) or view.saving.state == "NOT SAVED"


def notice_rows(view: StoveView, width: int) -> int:
    """The rows of the line above the keys: a sentence must be read to its end."""
    if not needs_notice(view):
        return 0
    most = _MOST_NOTICE if view.note else _MOST_UNSAVED
    return max(1, len(wrap(notice_words(notice_part(view)), width - 1, most)))


def pots_pictured(pots: tuple[Pot, ...], width: int) -> tuple[Pot, ...]:
    """The pots that keep a picture in this width: the loudest ones, in their own order."""
    least = _LEAST_POT if width >= _ROOMY_WIDTH else _LEAST_POT_SMALL_WINDOW
    kept = by_loudness(pots)[: max(1, width // least)]
    return tuple(pot for pot in pots if pot in kept)


def _most(view: StoveView, width: int, height: int, has: set[str]) -> dict[str, int]:
    """How many rows each part can use."""
    boxed = bool(view.curve or view.bars or view.shade)
    return {
        "ringing": 5 if "ringing" in has else 0, "headline": int("headline" in has), "notice": max(1, notice_rows(view, width)),
        "pad": pad_rows(view.pad, width) if wants_pad(view) else 0,
        "craft": int(bool(view.craft)), "how": how_rows(view.how, width), "lanes": len(view.lanes.rows), "panels": 15 if boxed else 0,
        "account": _most_account(view),
        "care": _care_rows(view.care, width), "ask": _most_ask(view, width, height), "next": 5 if "next" in has else 0,
        "keys": 2 if "keys" in has and _keys_width(view) > width else 1,
    }  # fmt: skip


def _care_rows(care: tuple[str, ...], width: int) -> int:
    return sum(len(wrap([say(line)], width - _CARE_MARGIN)) for line in care)


def _most_ask(view: StoveView, width: int, height: int) -> int:
    """A frame, large letters, the question, why it is asked, and the answers."""
    if view.ask is None:
        return 0
    inner = width - 4
    letters = BIG.rows if height >= _TALL_WINDOW else SMALL.rows
    return (
        2
        + letters
        + len(wrap([say(view.ask.question)], inner, 2))
        + len(wrap([say(view.ask.why)], inner))
        + 1
    )


def _most_account(view: StoveView) -> int:
    """The figure's rows or the sentences', and below them the strength over the day."""
    if not (view.account.sentences or view.account.strength):
        return 0
    return (5 if view.account.strength else 3) + (TODAY_ROWS if view.account.today else 0)


def _keys_width(view: StoveView) -> int:
    return sum(len(key.key) + len(key.word) + 4 for key in view.keys)


def _heights(view: StoveView, width: int, height: int, pictured: int, lines: int) -> dict[str, int]:
    """How many rows each part gets: the least each, then the wishes while there are rows, or the cuts."""
    has = _present(view)
    rows = {part: least for part, least in _LEAST.items() if part in has}
    if pictured:
        rows |= {"vessel": _LEAST["vessel"], "text": _LEAST["text"], "lines": lines}
    low = height < _LOW_WINDOW
    if "lanes" in has:
        rows["lanes"] = 1 if low else len(view.lanes.rows)
    if low and view.ask:
        rows |= {"lanes": 0, "headline": 0, "keys": 0 if view.entry is None else 1}
        if pictured and "pad" in has:
            rows["vessel"] = _LEAST["vessel"] - 1
    if view.ask is not None and "pad" in has and view.entry is None and height < _TALL_WINDOW:
        rows["keys"] = 0  # figures to touch answer the question; "not now" stands in its own box
    if "notice" in has:
        rows["notice"] = notice_rows(view, width)
    if "care" in has:
        rows["care"] = max(1, min(_MOST_GRAVE, _care_rows(view.care[: view.care_whole], width)))
    _cut(rows, height)
    _grow(rows, height, _most(view, width, height, has), bool(pictured), width)
    spare = height - sum(rows.values())
    rows["gap next"] = rows.get("gap next", 0) + max(0, spare)
    return rows


def _cut(rows: dict[str, int], height: int) -> None:
    for part, left in _CUTS:
        over = sum(rows.values()) - height
        if over > 0 and rows.get(part, 0) > left:
            rows[part] = max(left, rows[part] - over)


def _grow(rows: dict[str, int], height: int, most: Mapping[str, int], pictured: bool, width: int) -> None:
    for part, wanted in _WISHES:
        pot_part, at_least = part in ("vessel", "text"), rows.get(part, 0)
        if (pot_part and not pictured) or (part in ("panels", "gap panels") and width < PANELS_WIDTH):
            continue
        if part.startswith("gap") and part != "gap next" and not rows.get(_BELOW_GAP.get(part, part[4:])):
            continue
        if part == "notice" and wanted > most["notice"]:
            continue
        wanted = min(wanted, most.get(part, wanted))
        if wanted > at_least and wanted - at_least <= height - sum(rows.values()):
            rows[part] = wanted


def _stacked(rows: Mapping[str, int], width: int) -> dict[str, Box]:
    boxes, y = {}, 0
    for part in _ORDER:
        if rows.get(part, 0) > 0:
            boxes[part] = Box(0, y, width, rows[part])
            y += rows[part]
    return {part: box for part, box in boxes.items() if not part.startswith("gap")}


def _arrange_stove(view: StoveView, width: int, height: int) -> Arrangement:
    pictured = pots_pictured(view.pots, width)
    low_ask = view.ask is not None and height < _LOW_WINDOW
    lines = tuple(pot for pot in view.pots if pot not in pictured and (pot.clock or not low_ask))
    rows = _heights(view, width, height, len(pictured), len(lines))
    boxes = _stacked(rows, width)
    places: tuple[PotPlace, ...] = ()
    if "vessel" in boxes:
        places = _pot_places(pictured, boxes.pop("vessel"), rows.get("text", 0))
        boxes.pop("text", None)
    if "panels" in boxes:
        boxes |= _panel_boxes(view, boxes.pop("panels"))
    return Arrangement(boxes, places, lines)


def liquor_cells(width: int) -> int:
    """The cells between the walls of a pot drawn so wide: what is left of walls, ticks and a gap."""
    return max(0, width - (_ROOMY_EDGES if width >= ROOMY_POT else _NARROW_EDGES))


def _is_still(pot: Pot) -> bool:
    """Whether a pot has no digits to show: it waits, or its clock is a word."""
    return pot.clock is None or not any(char.isdigit() for char in pot.clock.text)


def pot_widths(pots: tuple[Pot, ...], width: int, vessel_rows: int) -> list[int]:
    """How wide each pot is drawn: alike, unless the ones without digits must make room for bigger digits."""
    widest = min(_WIDEST_POT, vessel_rows * _WIDEST_POT_PER_ROW)
    alike = min(widest, width // len(pots))
    still = sum(_is_still(pot) for pot in pots)
    if alike >= _BIG_CLOCK_POT or still in (0, len(pots)):
        return [alike] * len(pots)
    room = min(widest, _BIG_CLOCK_POT, (width - still * _STILL_POT) // (len(pots) - still))
    rest = (width - room * (len(pots) - still)) // still
    return [min(widest, rest) if _is_still(pot) else room for pot in pots]


def clock_face(widths: list[int], rows: int) -> Face | None:
    """The largest digits for which every clock there can be fits into the narrowest of the pots."""
    return largest_face(_RESERVED_CLOCK, liquor_cells(min(widths)) - 1, rows)


def _pot_places(pots: tuple[Pot, ...], box: Box, text_rows: int) -> tuple[PotPlace, ...]:
    widths = pot_widths(pots, box.width, box.height)
    clocked = [width for pot, width in zip(pots, widths, strict=True) if not _is_still(pot)]
    face = clock_face(clocked or widths, box.height - 1)
    gap = min(8, (box.width - sum(widths)) // (len(pots) + 1))
    places, x = [], gap
    for pot, width in zip(pots, widths, strict=True):
        places.append(PotPlace(pot, Box(x, box.y, width, box.height + text_rows), text_rows, face))
        x += width + gap
    return tuple(places)


# How the panels share the width: in parts of the whole.
_PANEL_SHARES = {"curve": 9, "bars": 8, "shade": 5}


def _panel_boxes(view: StoveView, box: Box) -> dict[str, Box]:
    there = [name for name in _PANEL_SHARES if getattr(view, name) is not None]
    parts = sum(_PANEL_SHARES[name] for name in there)
    boxes, x = {}, box.x
    for name in there:
        width = box.width * _PANEL_SHARES[name] // parts
        boxes[name] = Box(x, box.y, width, box.height)
        x += width
    return boxes


def _arrange_page(view: StoveView, width: int, height: int) -> Arrangement:
    """The large clocks, the rows on offer, or the page that says where the dyer is: it takes what the fixed parts
    leave.
    """
    rows = {"keys": int("keys" in _present(view)), "notice": notice_rows(view, width)}
    rows["pad"] = min(pad_rows(view.pad, width), PAGE_PAD) if wants_pad(view) else 0
    rows["ringing"] = 3 if view.ringing else 0
    rows["headline"] = int(view.ringing is None and not view.away)
    rows["ask"], rows["next"] = (6, 0) if view.ask else (0, 5 if height >= _TALL_WINDOW else 1 if view.offers else 3)
    page = height - sum(rows.values())
    lines = _clocks_beside(view, page)
    rows["lines"] = len(lines)
    page -= len(lines)
    boxes, y = {}, 0
    for part in ("ringing", "headline", "lines", "page", "ask", "next", "notice", "pad", "keys"):
        part_rows = page if part == "page" else rows[part]
        if part_rows > 0:
            name = part if part != "page" else "offers" if view.offers else "where" if view.where is not None else "away"
            boxes[name] = Box(0, y, width, part_rows)
        y += part_rows
    return Arrangement(boxes, (), lines)


def _clocks_beside(view: StoveView, rows: int) -> tuple[Pot, ...]:
    """The pots as lines over the rows on offer, for the clocks run on meanwhile: one at least, all where there is room."""
    if not view.offers:
        return ()
    offered = len(view.offers) + (len(view.beside) + 1 if view.beside else 0)
    kept = by_loudness(view.pots)[: max(1, rows - offered)]
    return tuple(pot for pot in view.pots if pot in kept)


def _arrange_small(view: StoveView, width: int, height: int) -> Arrangement:
    """The loudest clock and the next act; a question takes the next act's place, a typed number is shown."""
    rows: dict[str, int] = {"keys": 1 if view.entry and height > 2 else 0}
    act = "ask" if view.ask else "next"
    rows[act] = min(4 if view.ask else (3 if height >= BIG.rows + SMALL.rows + 1 else 1), height)
    rows["ringing"] = 1 if view.ringing and height > rows[act] + BIG.rows else 0
    boxes, y = {}, 0
    rows["loudest"] = max(0, height - sum(rows.values()))
    for part in ("ringing", "loudest", act, "keys"):
        if rows[part] > 0:
            boxes[part] = Box(0, y, width, min(rows[part], height - y))
            y += rows[part]
    return Arrangement(boxes)
