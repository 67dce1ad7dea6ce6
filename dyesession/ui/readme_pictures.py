"""The pictures in the README: which fixtures they are, and how they are written. Draws nothing itself."""

from collections.abc import Callable, Mapping
from pathlib import Path

FOLDER = Path(".pictures")
SIZE = (80, 24)
RENEW = "python -m dyesession.ui.contact_sheet --readme"
# Each place as the README shows it: the file's name, and the fixture in it.
PICTURES: Mapping[str, str] = {
    "bench": "bench",
    "working-out": "working",
    "stove": "two-pots",
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
