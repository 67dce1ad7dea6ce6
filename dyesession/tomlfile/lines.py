"""Which line a key stands on: a light scan beside the parser, which does not tell.

Must not know what any table means. Best effort: a key it cannot place gets the line of what it stands in.
"""

import re
import tomllib

from dyesession.tomlfile.limits import blanked

KeyPath = tuple[str | int, ...]

_NAME = r"[A-Za-z0-9_-]+(?:[ \t]*\.[ \t]*[A-Za-z0-9_-]+)*"
_HEADING = re.compile(rf"[ \t]*(\[\[?)[ \t]*({_NAME})[ \t]*\]")
_KEY = re.compile(rf"[ \t]*({_NAME})[ \t]*=")


def index_lines(text: str) -> dict[KeyPath, int]:
    """The line, counted from 1, of every heading, key, and item of a list that starts a line of its own."""
    scan = _Scan()
    for number, (line, bare) in enumerate(zip(text.split("\n"), blanked(text).split("\n"), strict=True), 1):
        scan.take(number, line, bare)
    return scan.found


def nearest_line(found: dict[KeyPath, int], path: KeyPath) -> int:
    """The line of a path, or of the nearest thing around it that has one; 0 for the file as a whole."""
    while path and path not in found:
        path = path[:-1]
    return found.get(path, 0)


class _Scan:
    """What a line-by-line scan remembers: the table it is in, and the list it is in."""

    def __init__(self) -> None:
        self.found: dict[KeyPath, int] = {}
        self._counts: dict[KeyPath, int] = {}
        self._table: KeyPath = ()
        self._list: KeyPath = ()
        self._item = 0
        self._depth = 0

    def take(self, number: int, line: str, bare: str) -> None:
        """Read one line, given as it stands and with its strings and comments blanked."""
        if self._depth == 0:
            self._start(number, line, bare)
        elif self._depth == 1 and bare.strip() and bare.lstrip()[0] not in ",]}":
            self.found.setdefault((*self._list, self._item), number)
        self._walk(bare)

    def _start(self, number: int, line: str, bare: str) -> None:
        heading = _HEADING.match(bare)
        if heading:
            self._table = self._open(_parts(line[slice(*heading.span(2))]), heading[1] == "[[")
            self.found.setdefault(self._table, number)
        elif key := _KEY.match(bare):
            self._list = self._table + _parts(line[slice(*key.span(1))])
            self._item = 0
            self.found.setdefault(self._list, number)

    def _open(self, parts: KeyPath, one_of_several: bool) -> KeyPath:
        path: KeyPath = ()
        for part in parts[:-1]:
            path = self._latest((*path, part))
        path = (*path, *parts[-1:])
        if not one_of_several:
            return path
        self._counts[path] = self._counts.get(path, -1) + 1
        return self._latest(path)

    def _latest(self, path: KeyPath) -> KeyPath:
        return (*path, self._counts[path]) if path in self._counts else path

    def _walk(self, bare: str) -> None:
        for one in bare:
            if one in "[{":
                self._depth += 1
            elif one in "]}":
                self._depth = max(0, self._depth - 1)
            elif one == "," and self._depth == 1:
                self._item += 1


def _parts(key: str) -> KeyPath:
    parts: list[str] = []
    try:
        inner = tomllib.loads(f"{key} = 0")
    except tomllib.TOMLDecodeError:
        return (key,)
    while isinstance(inner, dict):
        (part, inner), *_ = inner.items()
        parts.append(part)
    return tuple(parts)
