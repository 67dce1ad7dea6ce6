"""The photo in half-block cells with the mark and the patches on it. Pure drawing; knows no files.

Two squares of the photo stand in one cell, one above the other. Where dyed colours cannot be shown, the photo is
drawn in four shades by how light it is: enough to tell card from skein.
"""

from dyesession.ui.ink import Ink, Line, say
from dyesession.ui.photo_view import PhotoView
from dyesession.ui.sheet import Sheet
from dyesession.ui.theme import Palette, ink_on, luminance

_SHADES = " ░▒▓█"


def fitted(view: PhotoView, width: int, height: int) -> tuple[int, int]:
    """How many cells across and down the photo takes in so many cells, its shape kept."""
    across, down = len(view.rows[0]) if view.rows else 1, max(1, len(view.rows))
    share = min(width / across, 2 * height / down)
    return max(1, min(width, round(across * share))), max(1, min(height, round(down * share / 2)))


def draw_photo(view: PhotoView, width: int, height: int, palette: Palette) -> list[Line]:
    """The photo as large as it fits, from the left upper corner."""
    across, down = fitted(view, width, height)
    sheet = Sheet(width, height)
    for y in range(down):
        for x in range(across):
            upper, lower = _square(view, x, 2 * y, across, 2 * down), _square(view, x, 2 * y + 1, across, 2 * down)
            if palette.dyed:
                sheet.put(x, y, "▀", Ink(upper, lower))
            else:
                light = (luminance(upper) + luminance(lower)) / 2.0
                sheet.put(x, y, _SHADES[min(4, int(5.0 * light**0.5))], Ink("text"))
    for one in view.pointed:
        _frame(sheet, one.box, across, down, one.word, palette)
    _frame(sheet, view.box, across, down, "", palette)
    return sheet.lines()


def _square(view: PhotoView, x: int, y: int, across: int, down: int) -> str:
    row = view.rows[min(len(view.rows) - 1, y * len(view.rows) // down)]
    return row[min(len(row) - 1, x * len(row) // across)]


def _frame(
    sheet: Sheet, box: tuple[float, float, float, float], across: int, down: int, word: str, palette: Palette
) -> None:
    """The four corners of a patch, and its word inside."""
    left, top = int(box[0] * across), int(box[1] * down)
    right, bottom = int((box[0] + box[2]) * across), int((box[1] + box[3]) * down)
    right, bottom = max(right, left + 1), max(bottom, top + 1)
    corners = ((left, top, "┌"), (right, top, "┐"), (left, bottom, "└"), (right, bottom, "┘"))
    for x, y, sign in corners:
        ground = sheet.ground_at(x, y)
        front = ink_on(palette.colour(ground), palette) if palette.dyed else palette.strong
        sheet.put_over(x, y, sign, front, bold=True)
    if word:
        written = f" {word} "
        sheet.put(left, min(top + 1, max(0, down - 1)), say(written)[0], Ink("strong", "band", bold=True))
