"""A rectangle of cells: where a part of a screen stands. Knows nothing of what is in it."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Box:
    """A rectangle of cells."""

    x: int
    y: int
    width: int
    height: int
