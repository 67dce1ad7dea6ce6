"""A colorimeter's lines of comma-separated values into readings; the light and the observer must be stated.

Knows nothing of files: it is handed their text. The columns are found by their names, so any order will do;
commas, semicolons or tabs part them, and with the latter two a decimal comma is understood.
"""

import csv
import re
from collections.abc import Mapping

from dyesession.colour.cielab import Lab, lab_of_lch
from dyesession.colour.readings import PLUS_MINUS, Reading
from dyesession.colour.trouble import NoIlluminant, UnreadableColour, quoted
from dyesession.colour.viewing import ILLUMINANTS, OBSERVERS_DEG, Viewing

# Names of columns as instruments write them, lower case, without stars, dots and spaces: from memory.
_COLUMNS = {
    "l": "lightness", "ciel": "lightness", "lightness": "lightness",
    "a": "a", "ciea": "a",
    "b": "b", "cieb": "b",
    "c": "chroma", "cab": "chroma", "chroma": "chroma",
    "h": "hue", "hab": "hue", "hue": "hue", "h°": "hue",
    "illuminant": "illuminant", "illum": "illuminant", "light": "illuminant",
    "illuminant/observer": "illuminant", "lightsource": "illuminant", "viewing": "illuminant",
    "observer": "observer", "obs": "observer", "angle": "observer",
    "state": "state", "wet": "state", "name": "name", "sample": "name", "id": "name", "note": "note",
}  # fmt: skip
_MOST_LINES, _LEAST_PARTINGS = 10_000, 2
_EXAMPLE = "“L*,a*,b*,illuminant,observer” above “42.1,45.3,29.8,D65,10”"
_LIGHT = re.compile(
    rf"^({'|'.join(sorted(ILLUMINANTS, key=len, reverse=True))})(?:\s*[/ ]\s*(\d+).*)?$", re.I
)

_BARE = ("L*", "a*", "b*", "illuminant", "observer", "state")

Row = Mapping[str, str]


def readings_of_csv(text: str, where: str) -> tuple[Reading, ...]:
    """Every line of a colorimeter's file; `where` names it in messages.

    Raises `UnreadableColour` for a file or line without a colour, `NoIlluminant` where no light is stated.
    """
    lines = [line for line in text.removeprefix("\ufeff").splitlines() if line.strip()]
    if len(lines) < 2 or len(lines) > _MOST_LINES:
        raise UnreadableColour(
            f"{where} holds {len(lines)} lines; expected one line naming the columns and then one for each "
            f"reading, for example {_EXAMPLE}."
        )
    return tuple(
        reading_of_line(lines[0], line, f"Line {number} of {where}")
        for number, line in enumerate(lines[1:], start=2)
    )


def reading_of_line(header: str, line: str, where: str) -> Reading:
    """The reading on one line, under the line that names its columns."""
    parting = _parting(header)
    row = _named(_split(header, parting, where), _split(line, parting, where))
    viewing = _viewing(row, where)
    return Reading(
        _lab(row, where, decimal_comma=parting != ","),
        PLUS_MINUS["colorimeter"],
        how="read",
        by="colorimeter",
        wet=row.get("state", "").lower() in ("wet", "yes", "true"),
        viewing=viewing,
        conditions=row.get("note", ""),
    )


def reading_of_bare_line(text: str) -> Reading | None:
    """The reading of a line without column names, L*, a*, b*, illuminant, observer: `42.1,45.3,29.8,D65,10`.

    None for a text that is no such line. Raises what `reading_of_line` raises, such as for a missing light.
    """
    parting = next((one for one in ";\t," if text.count(one) >= _LEAST_PARTINGS), "")
    cells = [cell.strip() for cell in text.split(parting)] if parting else []
    number = r"[-+]?\d+(?:[.,]\d+)?"
    if not cells or not all(re.fullmatch(number, cell) for cell in cells[:3]):
        return None
    return reading_of_line(parting.join(_BARE), text, "The line")


def _parting(header: str) -> str:
    return max(";\t,", key=header.count)


def _split(line: str, parting: str, where: str) -> list[str]:
    try:
        return [cell.strip() for cell in next(csv.reader([line], delimiter=parting))]
    except (csv.Error, StopIteration) as trouble:
        raise UnreadableColour(f"{where} is {quoted(line)}; expected for example {_EXAMPLE}.") from trouble


def _named(header: list[str], cells: list[str]) -> Row:
    row: dict[str, str] = {}
    for name, cell in zip(header, cells, strict=False):
        known = _COLUMNS.get(re.sub(r"[\s*._]", "", name.lower()))
        if known and cell:
            row.setdefault(known, cell)
    return row


def _lab(row: Row, where: str, *, decimal_comma: bool) -> Lab:
    def number(column: str) -> float:
        text = row[column].replace(",", ".") if decimal_comma else row[column]
        try:
            return float(text)
        except ValueError as trouble:
            raise UnreadableColour(
                f"{where} has {quoted(text)} for {column}; expected a number, for example 42.1."
            ) from (trouble)

    if {"lightness", "a", "b"} <= row.keys():
        return Lab(number("lightness"), number("a"), number("b"))
    if {"lightness", "chroma", "hue"} <= row.keys():
        return lab_of_lch(number("lightness"), number("chroma"), number("hue"))
    raise UnreadableColour(f"{where} has no L*, a* and b* (or L*, C*, h); expected for example {_EXAMPLE}.")


def _viewing(row: Row, where: str) -> Viewing:
    found = _LIGHT.match(row.get("illuminant", ""))
    observer = re.match(r"\d+", row.get("observer", "") or (found[2] if found and found[2] else ""))
    if not found or not observer or int(observer[0]) not in OBSERVERS_DEG:
        raise NoIlluminant(
            f"{where} does not say for which illuminant and observer its Lab was read, and the same cloth "
            f"has other figures under each; expected both, for example {_EXAMPLE}."
        )
    return Viewing(found[1].upper(), int(observer[0]))
