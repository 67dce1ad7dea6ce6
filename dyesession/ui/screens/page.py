"""A page of plain lines over a place: the keys, the bath's ledger, where a figure comes from. Any key puts it away."""

from collections.abc import Mapping

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.events import Click, Key, Resize
from textual.screen import Screen
from textual.widgets import Static

from dyesession.ui.frame_view import Ringing
from dyesession.ui.hanging import hung
from dyesession.ui.messages import Act
from dyesession.ui.plain import plain

SCROLLS = ("up", "down", "pageup", "pagedown", "home", "end")
BACK = "any key: back to the pots"
BESIDE_CELLS = 6  # the padding at both sides and the bar that scrolls
FURTHER = "▼ touch here, or page down: there is more"


class TouchLine(Static):
    """A line of a page of keys: touching it is pressing the key it begins with."""

    ALLOW_SELECT = False

    def __init__(self, text: str, acts: Mapping[str, type[Act]]) -> None:
        super().__init__(Content(text or " "))
        self._act = acts.get(text.partition(" ")[0])

    def on_click(self, event: Click) -> None:
        """Go back and do it; a line without a key only goes back."""
        event.stop()
        if isinstance(self.screen, PageScreen):
            self.screen.go_back(self._act)


class PageLines(VerticalScroll):
    """The lines that scroll: at once and without moving of themselves, or a held arrow would be swallowed."""

    def action_scroll_up(self) -> None:
        """One line up."""
        self.scroll_up(animate=False, immediate=True)

    def action_scroll_down(self) -> None:
        """One line down."""
        self.scroll_down(animate=False, immediate=True)

    def action_page_up(self) -> None:
        """A page up."""
        self.scroll_page_up(animate=False)

    def action_page_down(self) -> None:
        """A page down."""
        self.scroll_page_down(animate=False)

    def action_scroll_home(self) -> None:
        """To the first line."""
        self.scroll_home(animate=False, immediate=True)

    def action_scroll_end(self) -> None:
        """To the last line."""
        self.scroll_end(animate=False, immediate=True)


class ScrollTouch(Static):
    """Shown where a page is longer than the window: a touch goes on by a page, from the end back to the top."""

    ALLOW_SELECT = False

    def on_click(self, event: Click) -> None:
        """Scroll; a page put away by a touch here would be a page never read."""
        event.stop()
        lines = self.screen.query_one(VerticalScroll)
        if lines.scroll_offset.y >= lines.max_scroll_y:
            lines.scroll_home(animate=False)
        else:
            lines.scroll_page_down(animate=False)


class PageScreen(Screen[None]):
    """A heading and lines; scrolls with the arrows, goes with any other key or a touch. What rings is told above."""

    DEFAULT_CSS = """
    PageScreen { padding: 1 2; }
    PageScreen VerticalScroll { height: 1fr; }
    PageScreen #rings { display: none; background: $warning; color: black; text-style: bold; }
    """

    def __init__(
        self, heading: str, text: str, acts: Mapping[str, type[Act]] | None = None, back: str = BACK
    ) -> None:
        super().__init__()
        self._heading, self._text, self._acts, self._back = heading, text, acts or {}, back
        self._rings, self._lines = Static(id="rings"), Static()
        self._further = ScrollTouch(Content(FURTHER))
        self._further.display = False

    def compose(self) -> ComposeResult:
        """What rings, the heading, the lines, how to get back."""
        yield self._rings
        yield Static(Content(plain(self._heading)).stylize("bold"))
        with PageLines():
            if self._acts:
                yield from (TouchLine(plain(one), self._acts) for one in self._text.split("\n"))
            else:
                yield self._lines
        yield self._further
        yield Static(Content(plain(self._back)))

    def on_resize(self, event: Resize) -> None:
        """Break the lines anew for the width there is; offer to go further where there is more than is seen."""
        whole = "\n".join(plain(one) for one in self._text.split("\n"))
        self._lines.update(Content(hung(whole, max(1, event.size.width - BESIDE_CELLS))))
        self.call_after_refresh(self._offer_further)

    def _offer_further(self) -> None:
        if self.is_mounted and self.is_attached:
            self._further.display = self.query_one(VerticalScroll).max_scroll_y > 0

    def show_ringing(self, ringing: Ringing | None) -> None:
        """Tell what rings above the page, or nothing."""
        self._rings.display = ringing is not None
        if ringing is not None:
            over = f" {ringing.over}" if ringing.over else ""
            self._rings.update(
                Content(plain(f" RINGING  {ringing.letter}: {ringing.what}{over}. {ringing.act} "))
            )

    def on_key(self, event: Key) -> None:
        """A key of the page's own posts its act; anything else but a scrolling key goes back."""
        if event.key in SCROLLS:
            return
        event.stop()
        self.go_back(self._acts.get("space" if event.key == "space" else event.character or ""))

    def go_back(self, act: type[Act] | None = None) -> None:
        """Put the page away, and do what was pressed or touched on it, if anything."""
        self.app.pop_screen()
        if act is not None:
            self.app.post_message(act())

    def on_click(self) -> None:
        """A touch goes back."""
        self.app.pop_screen()
