"""The band at the foot of the tour's screens: what is happening, and how to go on. Knows no tour."""

from dataclasses import dataclass

from dyesession.ui.ink import Ink, Line, fill, say, spread, width_of, wrap
from dyesession.ui.theme import Palette
from dyesession.ui.widgets.drawn import Drawn

_SAID, _KEYS = Ink("strong", "bare"), Ink("strong", "bare", bold=True)
GO_ON, STAND, ON, LEAVE = "space on", "p stand still", "p go on", "q leave"


@dataclass(frozen=True)
class CaptionPart:
    """What is happening, and whether the tour stands still."""

    text: str
    still: bool = False


def caption_rows(width: int) -> int:
    """How many rows the band takes in a window so wide."""
    return 2 if width >= 80 else 3


def draw_caption(part: CaptionPart, width: int, height: int, palette: Palette) -> list[Line]:
    """The words, and the keys at the end of the last row, which the words may share."""
    keys = (say(f"{GO_ON}   {ON if part.still else STAND}   {LEAVE} ", _KEYS),)
    said = _broken(part.text, width, height, width_of(keys))
    rows: list[Line] = [(say(" ", _SAID), *line) for line in said]
    rows += [()] * (height - len(rows))
    return [*(fill(row, width, "bare") for row in rows[:-1]), spread(rows[-1], keys, width, "bare")]


def _broken(text: str, width: int, height: int, keys: int) -> list[Line]:
    """The words in lines: whole ones, then one as long as the keys leave room for."""
    lines = wrap([say(text, _SAID)], width - 2)
    rest = " ".join("".join(piece for piece, _ in line) for line in lines[height - 1 :])
    return [*lines[: height - 1], *wrap([say(rest, _SAID)], width - keys - 3, 1 if rest else 0)]


class Caption(Drawn[CaptionPart]):
    """The band itself; one stands on each screen that is shown."""

    def __init__(self) -> None:
        super().__init__(draw_caption, name="caption")

    def stand_at_the_foot(self, rows: int) -> None:
        """Take the lowest rows of whatever screen it is on."""
        if not self.display or self.styles.height is None or self.styles.height.value != rows:
            self.styles.position, self.styles.dock = "relative", "bottom"
            self.styles.width, self.styles.height = "100%", rows
            self.display = True
