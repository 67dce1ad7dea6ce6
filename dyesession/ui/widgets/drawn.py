"""The widget all parts of the Stove share: it keeps its part of the view and repaints when that differs.

Knows nothing of what is drawn: each part hands over its own pure drawing function.
"""

from collections.abc import Callable
from typing import Generic, TypeVar

from textual.strip import Strip
from textual.widget import Widget

from dyesession.ui.box import Box
from dyesession.ui.ink import EMPTY, Line, strip_of
from dyesession.ui.theme import Palette, palette_of

Part = TypeVar("Part")
Draw = Callable[[Part, int, int, Palette], list[Line]]


class Drawn(Widget, Generic[Part]):
    """A rectangle drawn line by line from one frozen part of the view.

    `draw(part, width, height, palette)` is pure and returns at most `height` lines.
    """

    ALLOW_SELECT = False  # a wet swipe must not select text
    can_focus = False

    def __init__(self, draw: Draw[Part], *, name: str) -> None:
        super().__init__(id=name.replace(" ", "-"))
        # Set here and not in a style sheet: reading one would hold up the first picture.
        self.styles.position, self.display = "absolute", False
        self._draw = draw
        self._part: Part | None = None
        self._drawn: tuple[object, list[Line]] = (None, [])
        self._box: Box | None = None

    @property
    def part(self) -> Part | None:
        """What is drawn at present."""
        return self._part

    def show(self, part: Part) -> None:
        """Draw this from now on. An equal part repaints nothing."""
        if part != self._part:
            self._part = part
            self.refresh()

    def put_at(self, box: Box | None) -> None:
        """Stand here on the screen, or nowhere. Only what differs is set: nothing is laid out in vain."""
        if self.display != (box is not None):
            self.display = box is not None
        if box is None or box == self._box:
            return
        self._box = box
        self.styles.offset = (box.x, box.y)
        self.styles.width, self.styles.height = box.width, box.height

    def render_line(self, y: int) -> Strip:
        """One line of the picture, as the framework asks for it."""
        palette = palette_of(self.app)
        lines = self._lines(palette)
        return strip_of(lines[y] if y < len(lines) else EMPTY, self.size.width, palette)

    def _lines(self, palette: Palette) -> list[Line]:
        drawn_for = (self._part, self.size, palette)
        if self._part is None:
            return []
        if self._drawn[0] != drawn_for:
            self._drawn = (drawn_for, self._draw(self._part, self.size.width, self.size.height, palette))
        return self._drawn[1]
