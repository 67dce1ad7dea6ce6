"""A demo day before one's eyes: the real app in a borrowed folder, on a clock that runs ahead, pressing its own keys.

Keeps the pace and shows the captions; what is done and said stands in `tour_walk`. The looker-on has three keys.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from textual import events
from textual.screen import Screen

from dyesession.rehearsal.under_way import Passes
from dyesession.ui.app import DyeApp
from dyesession.ui.terminal import guard_mouse_bytes
from dyesession.ui.tour_walk import Press, Say, Scene, Until, walk
from dyesession.ui.widgets.caption import LEAVE, Caption, CaptionPart, caption_rows

if TYPE_CHECKING:
    from collections.abc import Iterator

    from dyesession.clock import SteppingClock
    from dyesession.ui.workroom import Workroom

# The pace; our own choice, no source.
FRAME_S = 0.1
READ_FROM_S, READ_PER_LETTER_S = 2.0, 0.06  # about 170 words a minute, after a moment to look
GLANCE_S = 0.7  # a caption that need not be read to its end
WAIT_FRAMES, ACT_FRAMES = 24, 3  # in how many frames a wait passes, and the minutes that an act takes


class TourApp(DyeApp):
    """The dyer's app, walking through a day by itself. `paced=False`: only `go_on()` moves it."""

    def __init__(self, workroom: Workroom, clock: SteppingClock, *, paced: bool = True) -> None:
        super().__init__(workroom=workroom, bounce_s=0.0)
        self._clock, self._paced = clock, paced
        self._scenes: Iterator[Scene] = walk(self)
        self._caption = CaptionPart("")
        self._bands: dict[Screen[Any], Caption] = {}
        self._hold_s = 0.0
        self._until: Until | None = None
        self._left_s = self._step_s = 0.0
        self.over = False

    @property
    def foot_rows(self) -> int:
        """The rows that the caption takes from every screen."""
        return caption_rows(self.size.width)

    @property
    def caption(self) -> str:
        """What is told at present."""
        return self._caption.text

    @property
    def is_read(self) -> bool:
        """Whether a caption stands that is meant to be read to its end."""
        return self._hold_s > GLANCE_S

    @property
    def passes(self) -> bool:
        """Whether time passes, or a caption stands: nothing has been pressed that a screen has yet to hear."""
        return self._hold_s > 0 or self._left_s > 0

    def on_mount(self) -> None:
        """Begin to walk; the app itself begins beside it."""
        if self._paced:
            self.set_interval(FRAME_S, self.go_on)

    def bell(self) -> None:
        """The tour makes no sound."""

    # The walk.

    def go_on(self) -> None:
        """One frame: what was begun goes on, or the next scene begins."""
        self._put_caption()
        if self._caption.still or self.over:
            return
        if self._hold_s > 0:
            self._hold_s -= FRAME_S
        elif self._left_s > 0:
            self._let_pass(min(self._left_s, self._step_s))
        elif self._until is None or self._until.so():
            self._until = None
            self._next_scene()

    def _next_scene(self) -> None:
        scene = next(self._scenes, None)
        match scene:
            case None:
                self.over = True
            case Say(text=text, stop=stop):
                self._tell(CaptionPart(text))
                self._hold_s = READ_FROM_S + READ_PER_LETTER_S * len(text) if stop else GLANCE_S
            case Press(key=key, character=character):
                self.screen.post_message(events.Key(key, character or (key if len(key) == 1 else None)))
            case Until():
                self._until = scene
            case Passes(seconds=seconds, waiting=waiting):
                self._left_s = seconds
                self._step_s = seconds / (WAIT_FRAMES if waiting else ACT_FRAMES)

    def _let_pass(self, seconds: float) -> None:
        self._clock.advance(seconds)
        self._left_s -= seconds
        self.look()

    def _tell(self, caption: CaptionPart) -> None:
        self._caption = caption
        self._put_caption()

    def _put_caption(self) -> None:
        """Show the caption on the screen that is on top; a screen that is new gets a band of its own."""
        self._bands = {one: band for one, band in self._bands.items() if one.is_attached}
        screen = self.screen
        if screen not in self._bands:
            if not screen.is_mounted:
                return
            self._bands[screen] = Caption()
            screen.mount(self._bands[screen])
        self._bands[screen].show(self._caption)
        self._bands[screen].stand_at_the_foot(self.foot_rows)

    # The looker-on.

    async def on_event(self, event: events.Event) -> None:
        """The keys and touches of the looker-on are the tour's; the screens hear only what the tour presses."""
        if isinstance(event, events.Key):
            self._pressed(event.key)
        elif isinstance(event, events.MouseUp):
            event.stop()
            self._touched(event.x, event.y)
        elif not isinstance(event, events.InputEvent):
            await super().on_event(event)

    def _pressed(self, key: str) -> None:
        if key == "space":
            self.hasten()
        elif key == "p":
            self._tell(CaptionPart(self._caption.text, not self._caption.still))
        elif key in ("q", "ctrl+q", "ctrl+c"):
            self.exit(0)

    def _touched(self, x: int, y: int) -> None:
        """A touch goes on; one on the last word of the band leaves."""
        leaves = y == self.size.height - 1 and x >= self.size.width - len(LEAVE) - 1
        self._pressed("q" if leaves else "space")

    def hasten(self) -> None:
        """What is told has been read, and what is waited for is over: on with it; after the last word, out."""
        if self._caption.still:
            self._tell(CaptionPart(self._caption.text))
        self._hold_s = 0.0
        if self._left_s > 0:
            self._let_pass(self._left_s)
        if self.over and self._paced:
            self.exit(0)


def run_tour(workroom: Workroom, clock: SteppingClock) -> int:
    """Show the tour until it is left; the exit code is 0 when it was left well. A fault of ours is raised."""
    app = TourApp(workroom, clock)
    guard_mouse_bytes()
    try:
        app.run()
    finally:
        app.close_day()
    if app.fault is not None:
        raise app.fault
    return app.return_code or 0
