"""One page of pictures of every fixture at every size: `python -m dyesession.ui.contact_sheet --into DIR`.

Writes an SVG for each, one self-contained HTML page with all of them, and PNGs where `rsvg-convert` is
installed (Debian: librsvg2-bin; elsewhere: librsvg). Draws what the framework composed; knows no sessions.
"""

import argparse
import asyncio
import re
import shutil
import subprocess
from html import escape
from itertools import groupby
from pathlib import Path
from typing import Any

from rich.color import Color, ColorSystem
from rich.segment import Segment
from rich.style import Style
from textual.app import App
from textual.screen import Screen
from textual.strip import Strip

from dyesession.ui import readme_pictures
from dyesession.ui.bench_rows import BENCH_DRAWING
from dyesession.ui.bench_view import BenchView
from dyesession.ui.book_rows import BOOK_DRAWING
from dyesession.ui.book_view import BookView
from dyesession.ui.colour_fixtures import COLOUR_FIXTURES, PHOTO_PAGE
from dyesession.ui.colour_rows import COLOUR_DRAWING
from dyesession.ui.colour_view import ColourView
from dyesession.ui.fixtures import FIXTURES
from dyesession.ui.kitchen_rows import KITCHEN_DRAWING
from dyesession.ui.kitchen_view import KitchenView
from dyesession.ui.leaf_fixtures import LEAF_FIXTURES
from dyesession.ui.leaf_rows import leaf_drawing
from dyesession.ui.leaf_view import LeafView
from dyesession.ui.photo_view import PhotoView
from dyesession.ui.place_fixtures import PLACE_FIXTURES
from dyesession.ui.screens.photo import PhotoScreen
from dyesession.ui.screens.place import PlaceScreen
from dyesession.ui.screens.stove import StoveScreen
from dyesession.ui.stove_view import StoveView
from dyesession.ui.theme import Depth, register_themes
from dyesession.ui.working_rows import WORKING_DRAWING
from dyesession.ui.working_view import WorkingView

AnyView = StoveView | BenchView | WorkingView | KitchenView | ColourView | PhotoView | BookView | LeafView

SIZES = ((60, 18), (80, 24), (200, 60))
# A cell of the picture in points: most terminals' cells are about half as wide as high.
_CELL_WIDTH, _CELL_HEIGHT, _FONT = 10.0, 20.0, 16.6
_BASELINE = 0.74
# Block characters as parts of a cell (x, y, width, height): drawn as rectangles they show no seams.
_BLOCKS = {
    "█": (0.0, 0.0, 1.0, 1.0),
    "▀": (0.0, 0.0, 1.0, 0.5),
    "▄": (0.0, 0.5, 1.0, 0.5),
    "▁": (0.0, 0.875, 1.0, 0.125),
    "▔": (0.0, 0.0, 1.0, 0.125),
    "▏": (0.0, 0.0, 0.125, 1.0),
    "─": (0.0, 0.47, 1.0, 0.06),
    "━": (0.0, 0.44, 1.0, 0.12),
}


ALL_FIXTURES: dict[str, AnyView] = {**FIXTURES, **PLACE_FIXTURES, **COLOUR_FIXTURES, **LEAF_FIXTURES, "photo": PHOTO_PAGE}


def screen_of(view: AnyView) -> Screen[None]:
    """The screen that a view is drawn on."""
    match view:
        case BenchView():
            return PlaceScreen(BENCH_DRAWING, view)
        case WorkingView():
            return PlaceScreen(WORKING_DRAWING, view)
        case KitchenView():
            return PlaceScreen(KITCHEN_DRAWING, view)
        case ColourView():
            return PlaceScreen(COLOUR_DRAWING, view)
        case PhotoView():
            return PhotoScreen(view)
        case BookView():
            return PlaceScreen(BOOK_DRAWING, view)
        case LeafView():
            return PlaceScreen(leaf_drawing(view.frame.title), view)
        case StoveView():
            return StoveScreen(view)


class FixtureApp(App[None]):
    """Shows one fixture; its colours can be forced to what a lesser terminal has."""

    ENABLE_COMMAND_PALETTE = False

    def __init__(self, view: AnyView, dark: bool = True, depth: Depth | None = None) -> None:
        super().__init__()
        self.forced_depth = depth
        self._first, self._dark = view, dark

    def on_mount(self) -> None:
        """Choose the theme and show the view."""
        register_themes(self, self._dark)
        self.push_screen(screen_of(self._first))


def strips_of(app: App[Any]) -> list[Strip]:
    """The screen as it stands, line by line. The only place that touches this private name."""
    return [Strip(line) for line in app.screen._compositor.render_strips()]


def shown(app: App[Any]) -> str:
    """The screen as plain text, for snapshots that a person can read."""
    return "\n".join(strip.text.rstrip() for strip in strips_of(app)) + "\n"


async def _strips(view: AnyView, size: tuple[int, int], dark: bool, depth: Depth | None) -> list[Strip]:
    app = FixtureApp(view, dark, depth)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        return strips_of(app)


def _hex(color: Color | None, depth: Depth | None) -> str:
    if color is None:
        return "#000000"
    if depth == "16":
        color = color.downgrade(ColorSystem.STANDARD)
    return str(color.get_truecolor().hex)


def _block(
    block: tuple[float, float, float, float], run: int, left: float, top: float, front: str
) -> list[str]:
    """A run of one block character: a single rectangle where the blocks touch, else one for each."""
    bx, by, bw, bh = block
    whole = bw == 1.0
    return [
        f'<rect x="{left + (one + bx) * _CELL_WIDTH:.1f}" y="{top + by * _CELL_HEIGHT:.1f}" '
        f'width="{bw * _CELL_WIDTH * (run if whole else 1):.1f}" height="{bh * _CELL_HEIGHT:.1f}" fill="{front}"/>'
        for one in range(1 if whole else run)
    ]


def _cells(x: int, y: int, text: str, style: Style, depth: Depth | None) -> str:
    """One piece of a line: its ground, its blocks as rectangles, its letters one by one."""
    front, ground = _hex(style.color, depth), _hex(style.bgcolor, depth)
    left, top = x * _CELL_WIDTH, y * _CELL_HEIGHT
    width = Segment(text).cell_length * _CELL_WIDTH
    parts = [
        f'<rect x="{left:.1f}" y="{top:.0f}" width="{width:.1f}" height="{_CELL_HEIGHT:.0f}" '
        f'fill="{ground}"/>'
    ]
    letters = []
    for char, alike in groupby(text):
        run = len(list(alike))
        if block := _BLOCKS.get(char):
            parts += _block(block, run, left, top, front)
        elif not char.isspace():
            wide = Segment(char).cell_length * _CELL_WIDTH
            letters += [f'<tspan x="{left + one * wide:.1f}">{escape(char)}</tspan>' for one in range(run)]
        left += Segment(char).cell_length * _CELL_WIDTH * run
    if letters:
        weight = ' font-weight="bold"' if style.bold else ""
        base = top + _BASELINE * _CELL_HEIGHT
        parts.append(f'<text y="{base:.1f}" fill="{front}"{weight}>{"".join(letters)}</text>')
    return "".join(parts)


def svg_of(strips: list[Strip], depth: Depth | None = None) -> str:
    """A picture of a screen with no font and no address in it."""
    across = max(strip.cell_length for strip in strips)
    width, height = across * _CELL_WIDTH, len(strips) * _CELL_HEIGHT
    parts = []
    for y, strip in enumerate(strips):
        x = 0
        for segment in strip:
            parts.append(_cells(x, y, segment.text, segment.style or Style(), depth))
            x += segment.cell_length
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:.0f} {height:.0f}" width="{width:.0f}" '
        f'height="{height:.0f}" font-family="DejaVu Sans Mono, Menlo, Consolas, monospace" '
        f'font-size="{_FONT}" shape-rendering="crispEdges">{"".join(parts)}</svg>\n'
    )


def draw(view: AnyView, size: tuple[int, int], dark: bool = True, depth: Depth | None = None) -> str:
    """A picture of a view at a size."""
    return svg_of(asyncio.run(_strips(view, size, dark, depth)), depth)


def draw_for_readme(fixture: str, size: tuple[int, int]) -> str:
    """A picture for the README, by the fixture's name; in lines, so that a change of it can be read."""
    svg = re.sub(r'(\d)\.0"', r'\1"', draw(ALL_FIXTURES[fixture], size))
    return svg.replace("><rect", ">\n<rect").replace("><text", ">\n<text")


def _page(pictures: dict[str, str]) -> str:
    figures = "\n".join(
        f"<figure><figcaption>{escape(name)}</figcaption>{svg}</figure>" for name, svg in pictures.items()
    )
    return (
        '<!doctype html><meta charset="utf-8"><title>Every place, every fixture</title>'
        "<style>body{background:#777;font:16px sans-serif;margin:2em}figure{margin:0 0 2em}"
        "svg{max-width:100%;height:auto}</style>\n" + figures + "\n"
    )


def _write_pngs(into: Path, names: list[str]) -> bool:
    """A PNG beside each SVG, where the converter is installed; says whether it was."""
    converter = shutil.which("rsvg-convert")
    if converter is None:
        return False
    for name in names:
        subprocess.run(
            [converter, str(into / f"{name}.svg"), "-o", str(into / f"{name}.png")], check=True, timeout=60
        )
    return True


def _options() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m dyesession.ui.contact_sheet", description=__doc__)
    where = parser.add_mutually_exclusive_group(required=True)
    where.add_argument("--into", type=Path, help="folder for the pictures; made if missing")
    where.add_argument("--readme", action="store_true", help="renew the pictures of the README, in .pictures here")
    parser.add_argument(
        "--fixture", choices=sorted(ALL_FIXTURES), action="append", help="only this one (repeatable)"
    )
    parser.add_argument("--size", action="append", help="only this size, as 80x24 (repeatable)")
    parser.add_argument("--theme", choices=("dark", "light"), default="dark")
    parser.add_argument("--colours", choices=("full", "16", "none"), default="full")
    return parser


def main(arguments: list[str] | None = None) -> int:
    """Draw the chosen fixtures at the chosen sizes."""
    chosen = _options().parse_args(arguments)
    if chosen.readme:
        readme_pictures.write(readme_pictures.FOLDER, readme_pictures.pictures(draw_for_readme))
        print(f"{len(readme_pictures.PICTURES)} pictures in {readme_pictures.FOLDER}")
        return 0
    sizes = [tuple(map(int, size.split("x"))) for size in chosen.size] if chosen.size else SIZES
    depth: Depth | None = None if chosen.colours == "full" else chosen.colours
    chosen.into.mkdir(parents=True, exist_ok=True)
    pictures = {}
    for name in chosen.fixture or ALL_FIXTURES:
        for width, height in sizes:
            picture = f"{name}-{width}x{height}"
            pictures[picture] = draw(ALL_FIXTURES[name], (width, height), chosen.theme == "dark", depth)
            (chosen.into / f"{picture}.svg").write_text(pictures[picture], encoding="utf-8")
    (chosen.into / "index.html").write_text(_page(pictures), encoding="utf-8")
    as_png = _write_pngs(chosen.into, list(pictures))
    missing = "" if as_png else " (no PNGs: rsvg-convert is not installed)"
    print(f"{len(pictures)} pictures in {chosen.into}{missing}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
