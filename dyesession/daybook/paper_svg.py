"""Tags and labels as one drawing to be printed and cut out: one below another, as wide as an A7 sheet. Pure."""

import re
import textwrap
from collections.abc import Iterable, Sequence
from html import escape

from dyesession.care import Label, label_svg
from dyesession.daybook.skein_tags import Tag

WIDE_MM, MARGIN_MM, LINE_MM, TEXT_MM, TEXT_AT_MM, GAP_MM = 105.0, 5.0, 4.6, 3.4, 22.0, 4.0
COLUMNS = 44  # characters of a sans-serif of that size that fit beside the names; tried on paper's width
PATCH_MM = 12.0
_HEIGHT = re.compile(r'height="([0-9.]+)mm"')


def tag_svg(tag: Tag) -> str:
    """One tag as a self-contained SVG document; its colour stands as a patch beside its hex."""
    lines = [
        ("" if i else name, line) for name, text in tag.rows for i, line in enumerate(textwrap.wrap(text, COLUMNS))
    ]
    patch_mm = PATCH_MM if tag.colour else 0.0
    high_mm = 2 * MARGIN_MM + LINE_MM * len(lines) + patch_mm
    drawn = [_line(MARGIN_MM + LINE_MM * (i + 1), name, text) for i, (name, text) in enumerate(lines)]
    if tag.colour:
        top_mm = MARGIN_MM + LINE_MM * len(lines) + 2.0
        drawn.append(_box(TEXT_AT_MM, top_mm, WIDE_MM - TEXT_AT_MM - MARGIN_MM, PATCH_MM - 1.0, tag.colour))
    frame = _box(1.0, 1.0, WIDE_MM - 2.0, high_mm - 2.0, "#fff")
    return _document(high_mm, f"Tag: {tag.lot}", (frame, *drawn))


def paper_svg(tags: Sequence[Tag], labels: Iterable[Label]) -> str:
    """All of them as one SVG document, each in a frame to be cut out; the tags first."""
    parts, top_mm = list[str](), 0.0
    for one in (*(tag_svg(each) for each in tags), *(label_svg(each) for each in labels)):
        found = _HEIGHT.search(one)
        high_mm = float(found[1]) if found else 0.0
        moved = one.replace("<svg ", f'<svg y="{top_mm:.1f}" ', 1)
        parts.append(_HEIGHT.sub(f'height="{high_mm:.1f}"', moved, count=1).replace('width="105mm"', 'width="105"', 1))
        top_mm += high_mm + GAP_MM
    return _document(max(top_mm - GAP_MM, 1.0), "Tags and labels", parts)


def _document(high_mm: float, title: str, parts: Iterable[str]) -> str:
    size = f'width="{WIDE_MM:g}mm" height="{high_mm:.1f}mm" viewBox="0 0 {WIDE_MM:g} {high_mm:.1f}"'
    inside = "\n".join(one.rstrip("\n") for one in parts)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} stroke-width="0.4">\n'
        f"<title>{escape(title)}</title>\n{inside}\n</svg>\n"
    )


def _line(y_mm: float, name: str, text: str) -> str:
    style = f'font-family="sans-serif" font-size="{TEXT_MM:g}" fill="#000"'
    head = f'<text x="{MARGIN_MM:g}" y="{y_mm:.1f}" font-weight="bold" {style}>{escape(name)}</text>\n' if name else ""
    return f'{head}<text x="{TEXT_AT_MM:g}" y="{y_mm:.1f}" {style}>{escape(text)}</text>'


def _box(x: float, y: float, wide: float, high: float, fill: str) -> str:
    place = f'x="{x:g}" y="{y:.1f}" width="{wide:g}" height="{high:.1f}"'
    return f'<rect {place} fill="{escape(fill)}" stroke="#000"/>'
