"""The widget all parts of the Stove share: it keeps its part of the view and repaints when that differs.

Knows nothing of what is drawn: each part hands over its own pure drawing function.
"""

from collections.abc import Callable
from itertools import zip_longest
from typing import Generic, TypeVar

from textual.filter import ANSIToTruecolor
from textual.geometry import Region, Size
from textual.strip import Strip
from textual.widget import Widget

from dyesession.ui.box import Box
from dyesession.ui.ink import EMPTY, Line, changed_cells, strip_of
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
        self._drawn: tuple[tuple[Part | None, Size, Palette] | None, list[Line]] = (None, [])
        self._painted_for: tuple[object, tuple[int, Palette] | None] = (None, None)
        self._painted: list[tuple[Line, Strip]] = []
        self._box: Box | None = None

    @property
    def part(self) -> Part | None:
        """What is drawn at present."""
        return self._part

    def show(self, part: Part) -> None:
        """Draw this from now on. Only the cells that differ are painted anew; an equal part repaints nothing."""
        if part == self._part:
            return
        drawn_for, before = self._drawn
        self._part = part
        size, palette = self.size, palette_of(self.app)
        if not self.display or drawn_for is None or drawn_for[1:] != (size, palette):
            self.refresh()
            return
        pairs = zip_longest(before, self._lines(size, palette), fillvalue=EMPTY)
        changed = [
            Region(cells.start, y, len(cells), 1)
            for y, (was, now) in enumerate(pairs)
            if was != now and (cells := changed_cells(was, now, size.width))
        ]
        if changed:
            self.refresh(*changed)

    def put_at(self, box: Box | None) -> None:
        """Stand here on the screen, or nowhere. Only what differs is set: nothing is laid out in vain."""
        if self.display != (box is not None):
            self.display = box is not None
        if box is None or box == self._box:
            return
        self._box = box
        self.styles.offset = (box.x, box.y)
        self.styles.width, self.styles.height = box.width, box.height

    def render_lines(self, crop: Region) -> list[Strip]:
        """The lines of the picture, as the framework asks for them at every painting, the unchanged ones too.

        A part has no border, padding or title, so the framework's own going over each line for them is left out.
        """
        size, palette = self.size, palette_of(self.app)
        lines = self._lines(size, palette)
        if self._painted_for[0] is not self._drawn:
            self._paint([*lines, *[EMPTY] * size.height][: size.height], size.width, palette)
        strips = [strip for _, strip in self._painted[crop.y : crop.bottom]]
        return strips if crop.column_span == (0, size.width) else [one.crop(*crop.column_span) for one in strips]

    def _paint(self, lines: list[Line], width: int, palette: Palette) -> None:
        known = self._painted if self._painted_for[1] == (width, palette) else []
        self._painted = [
            known[y] if y < len(known) and known[y][0] == line else (line, self.painted(line, width, palette))
            for y, line in enumerate(lines)
        ]
        self._painted_for = self._drawn, (width, palette)

    def painted(self, line: Line, width: int, palette: Palette) -> Strip:
        """One line as the terminal can show it: without colour, for one.

        The filter that looks for the sixteen named colours is left out: ours are all `#rrggbb`.
        """
        strip = strip_of(line, width, palette)
        for one in self.get_line_filters():
            if not isinstance(one, ANSIToTruecolor):
                strip = strip.apply_filter(one, self.background_colors[1])
        return strip

    def _lines(self, size: Size, palette: Palette) -> list[Line]:
        drawn_for = (self._part, size, palette)
        if self._drawn[0] != drawn_for:
            lines = [] if self._part is None else self._draw(self._part, size.width, size.height, palette)
            self._drawn = (drawn_for, lines)
        return self._drawn[1]
