"""Looks after the photo page: which part is to be pointed at, and what was read of it. Knows no files."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from dyesession.colour.photo_frame import CARD, PARTS, SKEIN, TARGET, FrameReadings, box_round
from dyesession.ui import place_messages as p
from dyesession.ui.frame_view import NextAct
from dyesession.ui.photo_view import PhotoView, Pointed
from dyesession.ui.place_keys import place_key_words
from dyesession.ui.screens.photo import PhotoScreen

if TYPE_CHECKING:
    from dyesession.colour.patches import Box
    from dyesession.colour.photo_file import Coarse
    from dyesession.ui.app import DyeApp

BACK = "any key: back to the photo"
ASKS = {
    CARD: "point at the middle of the grey or white card",
    TARGET: "point at the colour you want, if it is in the photo",
    SKEIN: "point at the skein, where it is even",
}
WORDS = {CARD: "card", TARGET: "want", SKEIN: "skein"}
_KEYS = ("enter", "-", "q", "?")
HELP = """\
Touch the middle of what is asked for, or go there with the arrows and press enter. The corners show the patch that is
read: keep them on even colour. - leaves out what is not in the photo; without a card the ± is much larger.

Daylight by a north window or under an overcast sky, no lamp; a matt grey or white card in the same plane, the skein dry
beside it, the colour you want in the same photo if it can be."""


class AtPhoto:
    """What the photo page is in the middle of."""

    def __init__(
        self, app: DyeApp, name: str, photo: Coarse, asked: tuple[str, ...], reflects: float, light: str,
        taken: Callable[[FrameReadings], None], bounce_s: float,
    ) -> None:  # fmt: skip
        self._app, self._name, self._photo, self._taken = app, name, photo, taken
        self._asked = tuple(one for one in PARTS if one in asked)
        self._reflects, self._light = reflects, light
        self._left = self._asked
        self._boxes: dict[str, Box] = {}
        self._x, self._y, self._note = 0.5, 0.5, ""
        self.screen = PhotoScreen(self._view(), bounce_s)

    def refresh(self) -> None:
        """Show it as it stands now."""
        self.screen.show(self._view())

    def say(self, note: str) -> None:
        """A refusal: say it, and let the photo be pointed at anew."""
        self._note, self._left, self._boxes = note, self._asked, {}
        self.refresh()

    def carry_out(self, act: p.PlaceAct) -> None:
        """Do what was pressed or touched."""
        match act:
            case p.Spot(x=x, y=y, taken=taken):
                self._x, self._y = x, y
                if taken and self._left:
                    self._point()
            case p.SkipQuestion():
                self._leave_out()
            case p.LeavePlace():
                self._app.leave()
            case p.LayAside():
                self._note, self._left, self._boxes = "", self._asked, {}
            case p.Seen():
                self._app.seen()
            case p.TryAlarm():
                self._app.try_alarm()
            case p.PlaceHelp():
                self._app.show_page("The photo", HELP, BACK)
            case _:
                pass
        self.refresh()

    def _point(self) -> None:
        self._note = ""
        self._boxes[self._left[0]] = box_round(self._x, self._y, self._photo.width, self._photo.height)
        self._go_on()

    def _leave_out(self) -> None:
        if self._left and self._left[0] != SKEIN:
            self._go_on()
        else:
            self._note = "Without the skein there is nothing to read: point at it, or go back with q."

    def _go_on(self) -> None:
        self._left = self._left[1:]
        if self._left:
            return
        boxes, app = dict(self._boxes), self._app

        def read() -> FrameReadings:
            return app.workroom.photo_readings(self._name, boxes, self._reflects, self._light)

        def take(found: FrameReadings) -> None:
            app.leave()
            self._taken(found)

        app.in_background(read, take)

    def _view(self) -> PhotoView:
        photo = self._photo
        asks = ASKS[self._left[0]] if self._left else "one moment: reading"
        frame = self._app.frame(
            "Photo", self._name.rpartition("/")[2], NextAct(asks, "", WORDS.get(self._left[0], "") if self._left else ""),
            place_key_words(_KEYS), None, self._note,
        )  # fmt: skip
        pointed = tuple(Pointed(WORDS[name], self._shares(box)) for name, box in self._boxes.items())
        view = PhotoView(frame, photo.rows, self._x, self._y, pointed=pointed)
        return replace(view, box=self._shares(box_round(self._x, self._y, photo.width, photo.height)))

    def _shares(self, box: Box) -> tuple[float, float, float, float]:
        width, height = self._photo.width, self._photo.height
        return box.left / width, box.top / height, box.width / width, box.height / height
