"""The pictures in the README: which fixtures they are, and how they are written. Draws nothing itself."""

from collections.abc import Callable, Mapping
from pathlib import Path
from xml.etree import ElementTree

FOLDER = Path(".pictures")
SIZE = (80, 24)
CELL_PX = (10, 20)
SVG = "{http://www.w3.org/2000/svg}"
RENEW = "python -m dyesession.ui.contact_sheet --readme"
# Each place as the README shows it: the file's name, and the fixture in it.
PICTURES: Mapping[str, str] = {
    "bench": "bench",
    "working-out": "working",
    "stove": "two-pots",
    "day-book": "book",
    "bath-shelf": "shelf",
    "colour": "colour-missed",
}


def pictures(draw: Callable[[str, tuple[int, int]], str]) -> dict[str, str]:
    """Each picture by its file's name; `draw(fixture, size)` makes one."""
    return {f"{name}.svg": draw(fixture, SIZE) for name, fixture in PICTURES.items()}


def write(folder: Path, drawn: Mapping[str, str]) -> None:
    """Write them, and take away what is no picture of the README any more."""
    folder.mkdir(exist_ok=True)
    for old in folder.glob("*.svg"):
        if old.name not in drawn:
            old.unlink()
    for name, svg in drawn.items():
        (folder / name).write_text(svg, encoding="utf-8")


def cells(svg: str) -> dict[tuple[int, int], tuple[str, str, str]]:
    """What a picture shows in each cell that is not blank: its sign, its ink and its ground.

    How the program that writes the file parts its runs is left out: only what can be seen.
    """
    shown: dict[tuple[int, int], tuple[str, str, str]] = {}
    grounds: dict[tuple[int, int], str] = {}
    for part in ElementTree.fromstring(svg):
        kind, ink = part.tag.rpartition("}")[2], part.get("fill", "")
        if kind == "rect":
            row, first = _row(part.get("y")), _column(part.get("x"))
            for column in range(first, first + _column(part.get("width"))):
                grounds[row, column] = ink
        for sign in part.iter(f"{SVG}tspan"):
            at = (_row(part.get("y")), _column(sign.get("x")))
            shown[at] = (sign.text or "", f"{ink} {part.get('font-weight', '')}".strip(), grounds.get(at, ""))
    return shown


def _row(y: str | None) -> int:
    return int(float(y or 0) // CELL_PX[1])


def _column(x: str | None) -> int:
    return int(float(x or 0) // CELL_PX[0])
