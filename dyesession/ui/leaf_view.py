"""A leaf of the day book or a kept bath, as plain words and pictures ready to draw. Must not know logs or baths.

What can be marked has a key; a line that only says something gets one too, so that a long leaf can be gone through.
"""

from dataclasses import dataclass

from dyesession.ui.bench_view import Swatch
from dyesession.ui.frame_view import Frame
from dyesession.ui.stove_view import Curve


@dataclass(frozen=True)
class Told:
    """A sentence, as many rows as it wants; `head` stands in a column before it, `mark` is a quiet word behind it."""

    says: str
    key: str = ""
    head: str = ""
    strong: bool = False
    mark: str = ""


@dataclass(frozen=True)
class Doable:
    """Something that is done when it is chosen, and what it does in a few words."""

    key: str
    does: str
    why: str = ""


@dataclass(frozen=True)
class Shades:
    """Colours that were read, each with its figure; `of` says of what, where it is not said with each."""

    swatches: tuple[Swatch, ...]
    key: str = ""
    of: str = ""


@dataclass(frozen=True)
class LaneBar:
    """A step of a day that is over: planned from and to, and as it was, in minutes from the opening; None: not."""

    name: str
    lane: str
    planned: tuple[float, float] | None
    actual: tuple[float, float] | None
    when: str = ""


@dataclass(frozen=True)
class DayLanes:
    """The steps of a day beside one another."""

    bars: tuple[LaneBar, ...]
    key: str = ""


@dataclass(frozen=True)
class Heat:
    """One pot's temperature over the day."""

    curve: Curve
    key: str = ""


Item = Told | Doable | Shades | DayLanes | Heat


@dataclass(frozen=True)
class Section:
    """A quiet heading and what stands under it."""

    head: str
    items: tuple[Item, ...]


@dataclass(frozen=True)
class LeafView:
    """Everything a leaf draws at one moment. `about` explains the marked line."""

    frame: Frame
    cursor: str = ""
    sections: tuple[Section, ...] = ()
    about: tuple[Item, ...] = ()


def key_of(section: int, index: int, item: Item) -> str:
    """What an item is marked by: its own key, else its place on the leaf."""
    return item.key or f"say:{section}:{index}"


def keys_on(sections: tuple[Section, ...]) -> tuple[str, ...]:
    """Everything that can be marked, from top to bottom, each once."""
    found = (
        key_of(number, index, item)
        for number, section in enumerate(sections)
        for index, item in enumerate(section.items)
    )
    return tuple(dict.fromkeys(found))
