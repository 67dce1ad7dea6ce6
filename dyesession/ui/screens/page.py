"""A page of plain lines over the Stove: the keys, the bath's ledger. Any key puts it away."""

from collections.abc import Mapping

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.events import Key
from textual.screen import Screen
from textual.widgets import Static

from dyesession.ui.messages import Act
from dyesession.ui.plain import plain

SCROLLS = ("up", "down", "pageup", "pagedown", "home", "end")


class PageScreen(Screen[None]):
    """A heading and lines; scrolls with the arrows, goes with any other key or a touch."""

    DEFAULT_CSS = "PageScreen { padding: 1 2; } PageScreen VerticalScroll { height: 1fr; }"

    def __init__(self, heading: str, text: str, acts: Mapping[str, type[Act]] | None = None) -> None:
        super().__init__()
        self._heading, self._text, self._acts = heading, text, acts or {}

    def compose(self) -> ComposeResult:
        """The heading, the lines, how to get back."""
        yield Static(Content(plain(self._heading)).stylize("bold"))
        with VerticalScroll():
            yield Static(Content("\n".join(plain(one) for one in self._text.split("\n"))))
        yield Static(Content("any key: back to the pots"))

    def on_key(self, event: Key) -> None:
        """A key of the page's own posts its act; anything else but a scrolling key goes back."""
        if event.key in SCROLLS:
            return
        event.stop()
        act = self._acts.get(event.character or "")
        self.app.pop_screen()
        if act is not None:
            self.app.post_message(act())

    def on_click(self) -> None:
        """A touch goes back."""
        self.app.pop_screen()
