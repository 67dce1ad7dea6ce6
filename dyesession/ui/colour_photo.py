"""A photo typed in Colour: its areas read at once where they were typed, else shown to be pointed at. Knows no files."""

from __future__ import annotations

from typing import TYPE_CHECKING

from dyesession.ui.colour_taken import parts_to_point_at

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from dyesession.colour.patches import Box
    from dyesession.colour.photo_file import Coarse
    from dyesession.colour.photo_frame import FrameReadings
    from dyesession.ui.app import DyeApp
    from dyesession.ui.colour_state import ColourState

_COARSE = (190, 110)  # squares across and down: as many as the largest window shows


def read_or_show(
    app: DyeApp, name: str, boxes: Mapping[str, Box], state: ColourState, take: Callable[[FrameReadings], None],
    bounce_s: float,
) -> None:  # fmt: skip
    """Bring the colours of the areas, beside the screen; without areas go to the photo and let them be pointed at."""
    workroom = app.workroom
    if boxes:
        app.in_background(lambda: workroom.photo_readings(name, boxes, state.card, state.light), take)
        return

    def show(photo: Coarse) -> None:
        from dyesession.ui.at_photo import AtPhoto

        app.go_to(AtPhoto(app, name, photo, parts_to_point_at(state), state.card, state.light, take, bounce_s))

    app.in_background(lambda: workroom.photo(name, *_COARSE), show)
