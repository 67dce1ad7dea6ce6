"""A photo to be pointed at, by a touch or with the arrows: posts the spot. Draws what it is handed; reads nothing."""

from typing import Any

from textual.app import ComposeResult
from textual.events import Click, Resize
from textual.events import Key as KeyPressed
from textual.screen import Screen

from dyesession.ui import place_messages as p
from dyesession.ui.box import Box
from dyesession.ui.messages import KeyTouched, Next
from dyesession.ui.photo_view import PhotoView
from dyesession.ui.place_keys import PHOTO, live_key
from dyesession.ui.pressing import BOUNCE_S, InOrder, Pressed
from dyesession.ui.widgets.drawn import Drawn
from dyesession.ui.widgets.key_line import KeyLine, KeysPart
from dyesession.ui.widgets.next_act import NextBand
from dyesession.ui.widgets.photo import draw_photo, fitted
from dyesession.ui.widgets.place_frame import draw_line, draw_title
from dyesession.ui.widgets.ringing import RingingBlock, RingingPart

_STEPS = {"left": (-1, 0), "right": (1, 0), "up": (0, -1), "down": (0, 1), "pageup": (0, -8), "pagedown": (0, 8),
          "home": (-9999, 0), "end": (9999, 0)}  # fmt: skip
_NOTICE_ROWS = 2


class PhotoPart(Drawn[PhotoView]):
    """The photo; a touch on it is a spot of it."""

    def __init__(self) -> None:
        super().__init__(draw_photo, name="photo")

    def on_click(self, event: Click) -> None:
        """Tell the screen which cell was touched."""
        event.stop()
        if isinstance(self.screen, PhotoScreen):
            self.screen.touched(event.x, event.y)


class PhotoScreen(Screen[None]):
    """The photo page. `show(view)` draws; every act comes back as one of `ui.place_messages`."""

    AUTO_FOCUS = None
    ALLOW_SELECT = False

    def __init__(self, view: PhotoView, bounce_s: float = BOUNCE_S) -> None:
        super().__init__(name=PHOTO)
        self._view = view
        self.styles.overflow_x = self.styles.overflow_y = "hidden"
        self._keys = InOrder(self, self._press, bounce_s)
        self._photo = PhotoPart()
        parts: list[Drawn[Any]] = [
            RingingBlock(), Drawn(draw_title, name="headline"), self._photo, NextBand(),
            Drawn(draw_line, name="notice"), KeyLine(),
        ]  # fmt: skip
        self._parts = {str(one.id): one for one in parts}

    @property
    def view(self) -> PhotoView:
        """What is shown at present."""
        return self._view

    def compose(self) -> ComposeResult:
        """Every part is mounted once and stays."""
        yield from self._parts.values()

    def on_mount(self) -> None:
        """Draw what was handed over at the start."""
        self._redraw()

    def on_resize(self, event: Resize) -> None:
        """Arrange anew for the new size."""
        self._redraw()

    def show(self, view: PhotoView) -> None:
        """Draw this view from now on."""
        if view != self._view:
            self._view = view
            if self.is_mounted:
                self._redraw()

    def _redraw(self) -> None:
        frame, width, height = self._view.frame, max(1, self.size.width), max(1, self.size.height)
        below = _NOTICE_ROWS + 2
        top = 3 if frame.ringing else 1
        boxes = {
            "ringing": Box(0, 0, width, top) if frame.ringing else None,
            "headline": None if frame.ringing else Box(0, 0, width, 1),
            "photo": Box(1, top, max(1, width - 2), height - top - below) if height > top + below else None,
            "next": Box(0, max(0, height - below), width, 1),
            "notice": Box(0, max(0, height - below + 1), width, _NOTICE_ROWS),
            "keys": Box(0, height - 1, width, 1),
        }
        shown: dict[str, object] = {
            "ringing": RingingPart(frame.ringing, frame.wall_clock) if frame.ringing else None, "headline": frame,
            "photo": self._view, "next": frame.next_act, "notice": frame.note or None, "keys": KeysPart(frame.keys, None),
        }  # fmt: skip
        for name, widget in self._parts.items():
            part = shown.get(name)
            if part is not None:
                widget.show(part)
            widget.put_at(boxes[name] if part is not None else None)

    def touched(self, x: int, y: int) -> None:
        """A cell of the photo was touched."""
        across, down = self._cells()
        if x < across and y < down:
            self._post(p.Spot((x + 0.5) / across, (y + 0.5) / down))

    def _cells(self) -> tuple[int, int]:
        return fitted(self._view, max(1, self._photo.size.width), max(1, self._photo.size.height))

    def on_key(self, event: KeyPressed) -> None:
        """Every key is ours."""
        self._keys.arrived(event)

    def on_key_touched(self, message: KeyTouched) -> None:
        """A touched word in the key line is that key."""
        message.stop()
        self._press(Pressed(message.key, None, message.time))

    def on_next(self, message: Next) -> None:
        """A touch on the band of the next act, or on what rings, is the space bar."""
        message.stop()
        self._space()

    def _press(self, pressed: Pressed) -> None:
        live = live_key(pressed.key, PHOTO)
        if pressed.key in _STEPS:
            self._move(*_STEPS[pressed.key])
        elif live is not None and self._keys.counts(pressed.key, pressed.at_s):
            if pressed.key == "space":
                self._space()
            elif pressed.key == "enter":
                self._post(p.Spot(self._view.x, self._view.y))
            elif live.act is not None:
                self._post(live.act())

    def _space(self) -> None:
        self._post(p.Seen() if self._view.frame.ringing else p.Spot(self._view.x, self._view.y))

    def _move(self, across_by: int, down_by: int) -> None:
        across, down = self._cells()
        x = min(max(self._view.x + across_by / across, 0.5 / across), 1.0 - 0.5 / across)
        y = min(max(self._view.y + down_by / down, 0.5 / down), 1.0 - 0.5 / down)
        self._post(p.Spot(x, y, taken=False))

    def _post(self, act: p.PlaceAct) -> None:
        act.place = PHOTO
        self._keys.post(act)
