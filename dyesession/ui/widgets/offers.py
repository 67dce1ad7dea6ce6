"""Rows on offer while a text is being typed: a touch chooses one, and it stands in the entry line. Knows no plans."""

from textual.events import Click, MouseScrollDown, MouseScrollUp

from dyesession.ui.ink import say
from dyesession.ui.messages import RowChosen, RowMarked
from dyesession.ui.rows import BLANK, ListPart, Row, draw_list, further_at, heading, moved, touched
from dyesession.ui.stove_view import StoveView
from dyesession.ui.widgets.drawn import Drawn


def offers_part(view: StoveView) -> ListPart:
    """The rows on offer, and below them what is said beside them."""
    rows = tuple(Row((say(one.says),), one.types) for one in view.offers)
    beside = (BLANK, *(heading(one) for one in view.beside)) if view.beside else ()
    return ListPart((*rows, *beside), view.mark)


class Offers(Drawn[ListPart]):
    """The rows; one touch chooses, for nothing counts before it is said back."""

    def __init__(self) -> None:
        super().__init__(draw_list, name="offers")

    def on_click(self, event: Click) -> None:
        """Choose the row touched."""
        event.stop()
        if self.part and (by := further_at(self.part, event.x, event.y, self.size.width, self.size.height)):
            self._move(by)
            return
        types = touched(self.part, event.y, self.size.height) if self.part else ""
        if types:
            self.post_message(RowChosen(types))

    def on_mouse_scroll_down(self, event: MouseScrollDown) -> None:
        """The wheel moves the mark."""
        self._move(1)

    def on_mouse_scroll_up(self, event: MouseScrollUp) -> None:
        """The wheel moves the mark."""
        self._move(-1)

    def _move(self, by: int) -> None:
        if self.part:
            self.post_message(RowMarked(moved(self.part.rows, self.part.cursor, by)))
