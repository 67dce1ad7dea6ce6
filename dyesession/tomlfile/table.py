"""A typed view of one table for loaders: each question gets the right kind of value or a plain sentence.

Must not know what any table means: the loader says what it expects, within which bounds, with which example.
"""

import math
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, Final, Protocol, TypeVar, overload

from dyesession.storage import shown
from dyesession.tomlfile.flat import LARGEST_WHOLE
from dyesession.tomlfile.lines import KeyPath
from dyesession.tomlfile.problems import TomlFileError

D = TypeVar("D")

LONGEST_TEXT = 4_000  # characters; common practice, no source
SHOWN_VALUE = 40


class Required:
    """The type of the mark for a key without which a table cannot be read."""


REQUIRED: Final = Required()


class Placed(Protocol):
    """What a table needs of its document: its name, and the lines of its keys."""

    @property
    def where(self) -> str:
        """The document's name in messages."""
        ...

    def line_of(self, path: KeyPath) -> int:
        """The line of a key, or of the nearest thing around it."""
        ...


@dataclass(frozen=True)
class Table:
    """One table of a document. A value that will not do raises TomlFileError: file, line, expected, example.

    A method given `default` returns it when the key is absent; without one the key must be there.
    """

    document: Placed
    path: KeyPath
    values: Mapping[str, Any] = field(repr=False)

    def __contains__(self, key: str) -> bool:
        return key in self.values

    @property
    def label(self) -> str:
        """The table in words, such as `step 2 ("mordant")`."""
        words = [str(part) if isinstance(part, str) else f"{part + 1}" for part in self.path]
        name = self.values.get("name")
        named = f' ("{shown(name, SHOWN_VALUE)}")' if isinstance(name, str) and self.path else ""
        return (shown(" ".join(words)) or "the file") + named

    @overload
    def text(self, key: str, *, example: str = ..., choices: Collection[str] = ...) -> str: ...
    @overload
    def text(
        self, key: str, *, example: str = ..., choices: Collection[str] = ..., default: D
    ) -> str | D: ...
    def text(
        self,
        key: str,
        *,
        example: str = "",
        choices: Collection[str] = (),
        default: Any = REQUIRED,
    ) -> Any:
        """A text of 1 to 4,000 characters; with `choices`, one of them."""
        value = self._get(key, default)
        if value is _ABSENT:
            return default
        example = example or f'{key} = "{next(iter(choices), "some words")}"'
        if value is REQUIRED:
            raise self.missing(key, example)
        if not isinstance(value, str) or not value.strip():
            raise self.wrong(key, "text in quotes", example)
        if len(value) > LONGEST_TEXT:
            raise self.wrong(key, f"at most {LONGEST_TEXT} characters", example)
        if choices and value not in choices:
            raise self.wrong(key, one_of(value, choices), example)
        return value

    @overload
    def number(self, key: str, low: float, high: float, *, example: str = ...) -> float: ...
    @overload
    def number(self, key: str, low: float, high: float, *, example: str = ..., default: D) -> float | D: ...
    def number(self, key: str, low: float, high: float, *, example: str = "", default: Any = REQUIRED) -> Any:
        """A number from `low` to `high`, both included, whole or not."""
        value = self._get(key, default)
        if value is _ABSENT:
            return default
        example = example or f"{key} = {low:g}"
        if value is REQUIRED:
            raise self.missing(key, example)
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise self.wrong(key, "a number without quotes or unit", example)
        if not _finite(value) or not low <= value <= high:
            raise self.wrong(key, f"a number from {low:g} to {high:g}", example)
        return float(value)

    @overload
    def whole(self, key: str, low: int, high: int, *, example: str = ...) -> int: ...
    @overload
    def whole(self, key: str, low: int, high: int, *, example: str = ..., default: D) -> int | D: ...
    def whole(self, key: str, low: int, high: int, *, example: str = "", default: Any = REQUIRED) -> Any:
        """A whole number from `low` to `high`, both included."""
        value = self._get(key, default)
        if value is _ABSENT:
            return default
        example = example or f"{key} = {low}"
        if value is REQUIRED:
            raise self.missing(key, example)
        if isinstance(value, bool) or not isinstance(value, int) or not low <= value <= high:
            raise self.wrong(key, f"a whole number from {low} to {high}", example)
        return value

    @overload
    def flag(self, key: str, *, example: str = ...) -> bool: ...
    @overload
    def flag(self, key: str, *, example: str = ..., default: D) -> bool | D: ...
    def flag(self, key: str, *, example: str = "", default: Any = REQUIRED) -> Any:
        """True or false."""
        value = self._get(key, default)
        if value is _ABSENT:
            return default
        if value is REQUIRED:
            raise self.missing(key, example or f"{key} = true")
        if not isinstance(value, bool):
            raise self.wrong(key, "true or false", example or f"{key} = true")
        return value

    @overload
    def moment(self, key: str, *, example: str = ...) -> datetime: ...
    @overload
    def moment(self, key: str, *, example: str = ..., default: D) -> datetime | D: ...
    def moment(self, key: str, *, example: str = "", default: Any = REQUIRED) -> Any:
        """A date and time with its offset from UTC."""
        value = self._get(key, default)
        if value is _ABSENT:
            return default
        example = example or f"{key} = 2026-03-14T09:05:40+01:00"
        if value is REQUIRED:
            raise self.missing(key, example)
        if not isinstance(value, datetime) or value.utcoffset() is None:
            raise self.wrong(key, "a date and time with its offset", example)
        return value

    def texts(self, key: str, *, example: str = "", choices: Collection[str] = ()) -> tuple[str, ...]:
        """A list of texts; empty when the key is absent. With `choices`, each is one of them."""
        example = example or f'{key} = ["{next(iter(choices), "alum")}"]'
        items = self._list(key, "a list of texts", example)
        for number, item in enumerate(items):
            if not isinstance(item, str) or not item.strip() or len(item) > LONGEST_TEXT:
                raise self._wrong_at((key, number), item, "a list of texts in quotes", example)
            if choices and item not in choices:
                raise self._wrong_at((key, number), item, one_of(item, choices), example)
        return tuple(items)

    def table(self, key: str, *, example: str = "") -> "Table | None":
        """A table inside this one, or None when it is absent."""
        if key not in self.values:
            return None
        value = self.values[key]
        if not isinstance(value, Mapping):
            raise self.wrong(key, "a table", example or f"[{key}]")
        return Table(self.document, (*self.path, key), value)

    def tables(self, key: str, *, example: str = "") -> tuple["Table", ...]:
        """The tables of a list; empty when the key is absent."""
        example = example or f"[[{key}]]"
        items = self._list(key, "a list of tables", example)
        for number, item in enumerate(items):
            if not isinstance(item, Mapping):
                raise self._wrong_at((key, number), item, "a list of tables", example)
        return tuple(
            Table(self.document, (*self.path, key, number), item) for number, item in enumerate(items)
        )

    def unknown_keys(self, allowed: Collection[str]) -> None:
        """Refuse a key that is not allowed here, naming the nearest one that is."""
        for key in self.values:
            if key not in allowed:
                told = f'"{shown(key, SHOWN_VALUE)}" is not known in {self.label}'
                raise self.problem(key, f"{told}; expected {one_of(key, allowed)}")

    def line(self, key: str | None = None) -> int:
        """The line of a key, or of the table itself; 0 when unknown."""
        return self.document.line_of(self.path if key is None else (*self.path, key))

    def problem(self, key: str | None, wrong: str) -> TomlFileError:
        """An error to raise at a key (or at the table) with the loader's own words."""
        return TomlFileError(self.document.where, self.line(key), wrong)

    def missing(self, key: str, example: str) -> TomlFileError:
        """An error to raise when a key is absent."""
        return self.problem(None, f"{self.label} has no {key}; expected, for example, {example}")

    def wrong(self, key: str, expected: str, example: str) -> TomlFileError:
        """An error to raise when a key's value will not do."""
        return self._wrong_at((key,), self.values.get(key), expected, example)

    def _wrong_at(self, keys: KeyPath, value: object, expected: str, example: str) -> TomlFileError:
        line = self.document.line_of((*self.path, *keys))
        told = f"{keys[0]} in {self.label} is {_told(value)}; expected {expected}, for example {example}"
        return TomlFileError(self.document.where, line, told)

    def _get(self, key: str, default: object) -> Any:
        if key in self.values:
            return self.values[key]
        return REQUIRED if default is REQUIRED else _ABSENT

    def _list(self, key: str, expected: str, example: str) -> list[Any]:
        value = self.values.get(key, [])
        if not isinstance(value, list):
            raise self.wrong(key, expected, example)
        return value


_ABSENT: Final = object()


def one_of(given: str, choices: Collection[str]) -> str:
    """What was expected among several words: the nearest, or all of them."""
    import difflib

    near = difflib.get_close_matches(given[:SHOWN_VALUE], choices, n=1)
    if near:
        return f'perhaps "{near[0]}"'
    return "one of " + ", ".join(f'"{choice}"' for choice in sorted(choices))


def _finite(value: float) -> bool:
    return abs(value) <= LARGEST_WHOLE if isinstance(value, int) else math.isfinite(value)


def _told(value: object) -> str:
    if isinstance(value, str):
        return f'"{shown(value, SHOWN_VALUE)}"'
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int) and not _finite(value):
        return "a number with too many digits"
    if isinstance(value, (list, Mapping)):
        return "a list" if isinstance(value, list) else "a table"
    return shown(str(value), SHOWN_VALUE)
