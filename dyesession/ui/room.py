"""How much of the window a screen may draw on. Knows no screen in particular."""

from typing import Any

from textual.screen import Screen


def room_of(screen: Screen[Any]) -> tuple[int, int]:
    """Columns and rows, 1 x 1 and up: the window, less what the app keeps at its foot for a caption."""
    foot_rows: int = getattr(screen.app, "foot_rows", 0)
    return max(1, screen.size.width), max(1, screen.size.height - foot_rows)
