"""A list that can be touched: a touch marks a line, a touch on the marked line chooses it. Knows no plans."""

from textual.events import Click, MouseScrollDown, MouseScrollUp

from dyesession.ui.place_messages import Choose, Mark, PlaceAct
from dyesession.ui.rows import ListPart, draw_list, further_at, moved, touched
from dyesession.ui.widgets.drawn import Drawn


class RowList(Drawn[ListPart]):
    """The lines of a place."""

    def __init__(self) -> None:
        super().__init__(draw_list, name="list")

    def on_click(self, event: Click) -> None:
        """Mark the line touched, or choose it where it is marked already."""
        event.stop()
        if self.part and (by := further_at(self.part, event.x, event.y, self.size.width, self.size.height)):
            self._move(by)
            return
        key = touched(self.part, event.y, self.size.height) if self.part else ""
        if self.part and key:
            self._post(Choose(key) if key == self.part.cursor else Mark(key))

    def on_mouse_scroll_down(self, event: MouseScrollDown) -> None:
        """The wheel moves the mark."""
        self._move(1)

    def on_mouse_scroll_up(self, event: MouseScrollUp) -> None:
        """The wheel moves the mark."""
        self._move(-1)

    def _move(self, by: int) -> None:
        if self.part:
            self._post(Mark(moved(self.part.rows, self.part.cursor, by)))

    def _post(self, act: PlaceAct) -> None:
        act.place = str(self.screen.name)
        self.post_message(act)
