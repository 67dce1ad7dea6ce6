"""What the photo page shows: the photo in coarse cells, where the mark stands, what has been pointed at. Pure."""

from dataclasses import dataclass

from dyesession.ui.frame_view import Frame


@dataclass(frozen=True)
class Pointed:
    """A patch that was pointed at: its word, and its box as shares of the photo (left, top, width, height)."""

    word: str
    box: tuple[float, float, float, float]


@dataclass(frozen=True)
class PhotoView:
    """The photo in rows of `#rrggbb`, the mark as shares of it, the patches so far."""

    frame: Frame
    rows: tuple[tuple[str, ...], ...]
    x: float = 0.5
    y: float = 0.5
    box: tuple[float, float, float, float] = (0.45, 0.45, 0.1, 0.1)
    pointed: tuple[Pointed, ...] = ()
