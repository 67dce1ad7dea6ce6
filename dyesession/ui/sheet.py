"""A sheet of cells to draw pictures on: pots, curves, bars. Knows nothing of what they mean."""

from collections.abc import Sequence

from rich.cells import cell_len

from dyesession.ui.ink import Ink, Line
from dyesession.ui.plain import plain

_Cell = tuple[str, Ink]


class Sheet:
    """A grid of cells; whatever is put outside it is lost, so that no picture can break a small window."""

    def __init__(self, width: int, height: int, ground: str = "ground") -> None:
        self.width, self.height = max(0, width), max(0, height)
        blank = (" ", Ink(ground=ground))
        self._rows: list[list[_Cell]] = [[blank] * self.width for _ in range(self.height)]

    def put(self, x: int, y: int, text: str, ink: Ink) -> None:
        """Write text from a cell on, on the ink's own ground. A wide character takes two cells."""
        for char in plain(text):
            x = self._put(x, y, char, ink)

    def put_over(self, x: int, y: int, text: str, front: str, bold: bool = False) -> None:
        """Write text on whatever ground each cell already has; spaces leave the cell as it is."""
        inks: dict[str, Ink] = {}
        for char in plain(text):
            if char == " ":
                x += 1
                continue
            ground = self.ground_at(x, y)
            ink = inks.get(ground) or inks.setdefault(ground, Ink(front, ground, bold))
            x = self._put(x, y, char, ink)

    def _put(self, x: int, y: int, char: str, ink: Ink) -> int:
        """Write one character; says the cell behind it. Half a wide character is drawn as a space."""
        taken = cell_len(char)
        if taken == 0:
            self._join(x - 1, y, char)
        elif taken == 1:
            self._set(x, y, char, ink)
        else:
            whole = x >= 0 and x + 2 <= self.width
            self._set(x, y, char if whole else " ", ink)
            self._set(x + 1, y, "" if whole else " ", ink, second_half=whole)
        return x + taken

    def put_line(self, x: int, y: int, line: Line) -> None:
        """Write an inked line from a cell on."""
        for text, ink in line:
            self.put(x, y, text, ink)
            x += cell_len(plain(text))

    def wash(self, x: int, y: int, width: int, height: int, ground: str) -> None:
        """Cover a rectangle with a ground."""
        for row in range(y, y + height):
            self.put(x, row, " " * width, Ink(ground=ground))

    def ground_at(self, x: int, y: int) -> str:
        """The ground of a cell; of the sheet's first cell where there is no such cell."""
        inside = 0 <= y < self.height and 0 <= x < self.width
        return self._rows[y][x][1].ground if inside else "ground"

    def lines(self) -> list[Line]:
        """The sheet as lines, neighbouring cells of one ink joined."""
        return [_run_together(row) for row in self._rows]

    def copy(self) -> "Sheet":
        """A sheet of its own with the same picture on it."""
        found = Sheet(0, 0)
        found.width, found.height, found._rows = self.width, self.height, [list(row) for row in self._rows]
        return found

    def lines_after(self, before: "Sheet", lines: Sequence[Line]) -> list[Line]:
        """The sheet as lines; those of the sheet it was copied from where nothing was drawn since."""
        rows = zip(self._rows, before._rows, lines, strict=False)
        return [line if row == was else _run_together(row) for row, was, line in rows]

    def _set(self, x: int, y: int, char: str, ink: Ink, second_half: bool = False) -> None:
        """Fill one cell; what is left of a wide character that stood half in it becomes a space."""
        if not (0 <= y < self.height and 0 <= x < self.width):
            return
        row = self._rows[y]
        if row[x][0] == "" and not second_half:
            row[x - 1] = (" ", row[x - 1][1])
        if x + 1 < self.width and row[x + 1][0] == "":
            row[x + 1] = (" ", row[x + 1][1])
        row[x] = (char, ink)

    def _join(self, x: int, y: int, mark: str) -> None:
        if 0 <= y < self.height and 0 <= x < self.width:
            char, ink = self._rows[y][x]
            self._rows[y][x] = (char + mark, ink)


def _run_together(row: list[_Cell]) -> Line:
    spans: list[_Cell] = []
    for char, ink in row:
        if spans and (spans[-1][1] is ink or spans[-1][1] == ink):
            spans[-1] = (spans[-1][0] + char, ink)
        else:
            spans.append((char, ink))
    return tuple(spans)
