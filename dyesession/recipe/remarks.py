"""What is written behind a recipe's figures: the remark on a line, where a careful hand puts the source of a figure.

Knows no recipe's meaning beyond its headings; a remark is shown as it stands and changes nothing.
"""

from collections.abc import Mapping
from typing import Any

from dyesession.tomlfile import Document
from dyesession.tomlfile.lines import KeyPath

_PARTS = {"ingredient": ("dose", "least", "most"), "step": ("heat", "water", "refreshes", "judge")}
_TOP = ("liquor_ratio", "fibre", "source")


def remarks(document: Document) -> dict[str, str]:
    """The remark behind each figure, by the name of its part and key: `alum.dose`, `mordant.heat`, `liquor_ratio`."""
    lines = document.text.split("\n")
    found: dict[str, str] = {}
    for name, path in _places(document.values):
        remark = _remark(lines, document.line_of(path))
        if remark:
            found[name] = remark
    return found


def _places(values: Mapping[str, Any]) -> list[tuple[str, KeyPath]]:
    places: list[tuple[str, KeyPath]] = [(key, (key,)) for key in _TOP if key in values]
    for part, keys in _PARTS.items():
        for index, table in enumerate(values.get(part, ())):
            name = table.get("name", "") if isinstance(table, Mapping) else ""
            places += [(f"{name}.{key}", (part, index, key)) for key in keys if key in table]
    return places


def _remark(lines: list[str], number: int) -> str:
    """What stands behind the first # of a line that is in no string."""
    if not 0 < number <= len(lines):
        return ""
    quote = ""
    line = lines[number - 1]
    for index, char in enumerate(line):
        if quote:
            quote = "" if char == quote and (quote == "'" or line[index - 1] != "\\") else quote
        elif char in "\"'":
            quote = char
        elif char == "#":
            return line[index + 1 :].strip()
    return ""
