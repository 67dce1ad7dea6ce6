"""The shade card in lines for a terminal, as one document, and as one self-contained page. Pure; reads nothing.

A swatch always stands in a field of mid grey with its figure beside it: warm neighbours turn a colour. On a
terminal of few colours there is no swatch at all: a wrong one is worse than none.
"""

from collections.abc import Sequence
from html import escape
from typing import Any, Literal

from dyesession.colour.terminal import nearest_of_256
from dyesession.colour.written import lab_text, written
from dyesession.daybook.shade_card import Near, Shade
from dyesession.units import show_mass

Depth = Literal["full", "256", "16", "none"]
GREY = (0x77, 0x77, 0x77)
GREY_256 = 243  # the nearest to it of the 256, #767676
_CELLS = 8
_TENTHS_BELOW = 3.0
_HUE_STEP_DEG = 30.0
_NEAR_GREY = 8.0  # below this chroma a colour stands with the greys: our own choice
HINT_256 = "The swatches are the nearest of 256 colours: a hint only; the figures are what was read."
HINT = "A swatch on a screen is a hint: the figure beside it is what was read."

_STYLE = """
body{font:11pt sans-serif;color:#000;background:#777;margin:8mm}
h1,p.about{color:#fff}
figure{display:inline-block;vertical-align:top;width:62mm;margin:2mm;background:#777;break-inside:avoid}
div.swatch{height:34mm;margin:6mm}
figcaption{background:#fff;padding:2mm 3mm}
b{font-family:monospace}
@media print{body,figure{-webkit-print-color-adjust:exact;print-color-adjust:exact}}
"""


def in_order(shades: Sequence[Shade]) -> tuple[Shade, ...]:
    """As a card is looked over: greys first, then round the hues from red, the lightest first."""

    def place(one: Shade) -> tuple[Any, ...]:
        lab = one.reading.lab
        grey = lab.chroma < _NEAR_GREY
        return (not grey, 0.0 if grey else round(lab.hue_deg / _HUE_STEP_DEG), -lab.lightness)

    return tuple(sorted(shades, key=place))


def shade_card_lines(shades: Sequence[Shade], depth: Depth, width: int) -> list[str]:
    """Every shade in two lines, its swatch before it."""
    lines = [line for one in shades for line in _shade(one, depth, width, "")]
    return [*lines, *_hints(depth, bool(shades))] or _EMPTY


def near_lines(near: Sequence[Near], depth: Depth, width: int) -> list[str]:
    """The nearest shades, with how far each lies from the colour wanted."""
    lines = [line for one in near for line in _shade(one.shade, depth, width, f"{one.de00:.0f} away")]
    return [*lines, *_hints(depth, bool(near))] or ["No dry colour in the logs can be compared with it."]


_EMPTY = [
    "No colour has been read yet; note one with “colour” at the stove, or when it is dry, for example",
    '  dyesession aftercare LOG "dry shade" --colour "#8b3a2b"',
]


def _hints(depth: Depth, any_there: bool) -> list[str]:
    if not any_there or depth in ("16", "none"):
        return []
    return ["", HINT_256 if depth == "256" else HINT]


def _shade(one: Shade, depth: Depth, width: int, beside: str) -> list[str]:
    blank = " " * (_CELLS + 2) if depth in ("full", "256") else ""
    swatch = _swatch(one, depth)
    wet = "wet" if one.reading.wet else "dry"
    first = f"{one.hex}{'' if one.exact else '*'}  {lab_text(one.reading.lab)} ± {_figure(one.reading.plus_minus)} {wet}"
    first += f"  {beside}" if beside else ""
    second = f"{one.recipe}, {one.day}{', a demo day' if one.demo else ''}"
    third = f"{one.doses}; {one.lot + ', ' if one.lot else ''}{show_mass(one.fibre_g)} {one.fibre}"
    room = width - len(blank) - 2
    return [f"{swatch}  {first[:room]}", f"{swatch}  {second[:room]}", f"{blank}  {third[:room]}".rstrip(), ""]


def _figure(value: float) -> str:
    """A ±, never with a second decimal."""
    return f"{value:.0f}" if value >= _TENTHS_BELOW else f"{value:.1f}"


def _swatch(one: Shade, depth: Depth) -> str:
    """Eight cells of the colour with a cell of mid grey at either side; "" where a terminal cannot show it."""
    if depth == "full":
        red, green, blue = (int(one.hex[at : at + 2], 16) for at in (1, 3, 5))
        grey = f"\x1b[48;2;{GREY[0]};{GREY[1]};{GREY[2]}m"
        return f"{grey} \x1b[48;2;{red};{green};{blue}m{' ' * _CELLS}{grey} \x1b[0m"
    if depth == "256":
        grey = f"\x1b[48;5;{GREY_256}m"
        return f"{grey} \x1b[48;5;{nearest_of_256(one.reading.lab).number}m{' ' * _CELLS}{grey} \x1b[0m"
    return ""


def shade_as_plain(one: Shade) -> dict[str, Any]:
    """One shade as plain values."""
    return {
        "session": one.session, "day": one.day, "recipe": one.recipe, "lot": one.lot, "demo": one.demo, "fibre": one.fibre,
        "fibre_g": one.fibre_g, "wet": one.reading.wet, "hex": one.hex, "hex_exact": one.exact,
        "dyes": [{"dyestuff": dye.dyestuff, "percent": dye.percent} for dye in one.dyes],
        "others": [{"substance": other.dyestuff, "percent": other.percent} for other in one.others],
        "lab": list(one.reading.lab), "illuminant": one.reading.illuminant, "observer": one.reading.observer_deg,
        "plus_minus": one.reading.plus_minus, "read_by": one.reading.by, "how": one.reading.how,
        "undyed": written(one.undyed) if one.undyed is not None else None,
    }  # fmt: skip


def shade_card_as_json(shades: Sequence[Shade], near: Sequence[Near] | None) -> dict[str, Any]:
    """The card as one document; with `near` only those, each with its distance."""
    if near is None:
        return {"shades": [shade_as_plain(one) for one in shades]}
    return {"near": [{**shade_as_plain(one.shade), "de00": one.de00} for one in near]}


def shade_card_page(shades: Sequence[Shade]) -> str:
    """One self-contained HTML page on mid grey, to be looked at or printed."""
    figures = "\n".join(_picture(one) for one in shades) or '<p class="about">No colour has been read yet.</p>'
    return (
        f'<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8"><title>Shade card</title>'
        f'<style>{_STYLE}</style></head>\n<body>\n<h1>Shade card</h1>\n<p class="about">{escape(HINT)}</p>\n'
        f"{figures}\n</body></html>\n"
    )


def _picture(one: Shade) -> str:
    words = (
        f"<b>{one.hex}</b>" + ("" if one.exact else ", the nearest a screen can show"),
        escape(written(one.reading)),
        f"{escape(one.recipe)}, {one.day}{', a demo day' if one.demo else ''}",
        escape(one.doses),
        escape(f"{one.lot + ', ' if one.lot else ''}{show_mass(one.fibre_g)} {one.fibre}"),
    )
    return f'<figure><div class="swatch" style="background:{one.hex}"></div><figcaption>{"<br>".join(words)}</figcaption></figure>'
