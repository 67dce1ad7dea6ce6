"""A label set on paper: as lines of a fixed width, and as one SVG drawing that needs nothing beside itself.

Knows nothing of substances: it sets what `labels` hands it. Black on white; a sign is its code and its word.
"""

import unicodedata
from collections.abc import Iterator

from dyesession.care.labels import Label

NARROWEST = 32
_MM_WIDE, _MARGIN_MM, _LINE_MM, _TEXT_MM, _HEAD_MM = 105.0, 5.0, 4.6, 3.4, 6.5  # as wide as an A7 sheet
_NAMES = 13  # cells for a field's name
_SVG_COLUMNS, _SVG_TEXT_AT_MM = 38, 31.0  # characters of a sans-serif of that size that fit beside the names
_SIGN_MM, _SIGN_TEXT_MM = 15.0, 2.6  # 450 mm2: CLP asks 1 cm2 at least of a sign, h2compliance.com 2012


def label_lines(label: Label, width: int = 52) -> tuple[str, ...]:
    """The label in a frame, every line `width` cells wide. Raises ValueError below 32 cells."""
    if width < NARROWEST:
        raise ValueError(f"a label {width} wide: expected {NARROWEST} or more")
    inner = width - 4
    body = [label.heading, *(f"{name:{_NAMES}}{text}" for name, text in _set(label, inner - _NAMES))]
    rule = "─" * (width - 2)
    lines = (f"┌{rule}┐", *(f"│ {line}{' ' * (inner - _cells(line))} │" for line in body), f"└{rule}┘")
    return tuple(lines)


def label_svg(label: Label) -> str:
    """The label as one self-contained SVG document, 105 mm wide and as long as it needs."""
    lines = list(_set(label, _SVG_COLUMNS))
    signs_top = _MARGIN_MM + _HEAD_MM + 2.0
    text_top = signs_top + (_SIGN_MM + _LINE_MM if label.pictograms else 0.0)
    height = text_top + _LINE_MM * len(lines) + _MARGIN_MM
    parts = [
        _opening(label, height),
        _text(_MARGIN_MM, _MARGIN_MM + _HEAD_MM - 1.5, label.heading, _HEAD_MM, bold=True),
        *(_sign(i, signs_top, code, word) for i, (code, word) in enumerate(label.pictograms)),
        *(_line(text_top + _LINE_MM * (i + 1), name, text) for i, (name, text) in enumerate(lines)),
        "</svg>",
    ]
    return "\n".join(parts) + "\n"


def _set(label: Label, columns: int) -> Iterator[tuple[str, str]]:
    """Every line as (field's name, text): the name stands at the first line of its field only."""
    for name, text in label.rows():
        for i, line in enumerate(_wrapped(text, columns)):
            yield "" if i else name, line


def _line(y: float, name: str, text: str) -> str:
    drawn = _text(_SVG_TEXT_AT_MM, y, text, _TEXT_MM)
    return f"{_text(_MARGIN_MM, y, name, _TEXT_MM, bold=True)}\n{drawn}" if name else drawn


def _opening(label: Label, height: float) -> str:
    size = f'width="{_MM_WIDE:g}mm" height="{height:.1f}mm" viewBox="0 0 {_MM_WIDE:g} {height:.1f}"'
    frame = _box(1.0, 1.0, _MM_WIDE - 2.0, height - 2.0)
    title = f"<title>{_escaped(f'{label.heading}. {label.what}')}</title>"
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size} stroke-width="0.4">\n{title}\n{frame}'


def _text(x: float, y: float, text: str, size_mm: float, *, bold: bool = False, middle: bool = False) -> str:
    weight = ' font-weight="bold"' if bold else ""
    anchor = ' text-anchor="middle"' if middle else ""
    style = f'font-family="sans-serif" font-size="{size_mm:g}"{weight}{anchor} fill="#000"'
    return f'<text x="{x:g}" y="{y:.1f}" {style}>{_escaped(text)}</text>'


def _sign(i: int, top: float, code: str, word: str) -> str:
    """A box with the code and the word: a sign that cannot be told from its colour alone."""
    wide = _SIGN_MM * 2
    x = _MARGIN_MM + i * (wide + 2.0)
    box = _box(x, top, wide, _SIGN_MM)
    middle = x + wide / 2
    first = _text(middle, top + _SIGN_MM / 2 - 1.0, code, _TEXT_MM, bold=True, middle=True)
    return "\n".join((box, first, _text(middle, top + _SIGN_MM / 2 + 3.5, word, _SIGN_TEXT_MM, middle=True)))


def _box(x: float, y: float, wide: float, high: float) -> str:
    return f'<rect x="{x:g}" y="{y:.1f}" width="{wide:g}" height="{high:.1f}" fill="#fff" stroke="#000"/>'


def _escaped(text: str) -> str:
    """Text that no reader of SVG takes for markup."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;")


def _wrapped(text: str, columns: int) -> Iterator[str]:
    """The text in lines of at most `columns` cells; a word longer than a line is cut."""
    line = ""
    for word in text.split():
        while _cells(word) > columns:
            head = _head(word, columns)
            if line:
                yield line
                line = ""
            yield head
            word = word[len(head) :]
        joined = f"{line} {word}".strip()
        if _cells(joined) > columns:
            yield line
            line = word
        else:
            line = joined
    if line:
        yield line


def _head(word: str, columns: int) -> str:
    """As many of the word's first characters as fit; at least one."""
    end = 1
    while end < len(word) and _cells(word[: end + 1]) <= columns:
        end += 1
    return word[:end]


def _cells(text: str) -> int:
    """Cells of a terminal that a text takes: wide characters two, combining ones none."""
    return sum(_cell(c) for c in text)


def _cell(c: str) -> int:
    if unicodedata.combining(c):
        return 0
    return 2 if unicodedata.east_asian_width(c) in "WF" else 1
