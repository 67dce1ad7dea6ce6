"""Reading a TOML file: limits first, then the standard parser, and one plain sentence when it will not do.

Must not know what any table means.
"""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import Any

from dyesession.storage import DISK, Storage, because, read_file, shown
from dyesession.tomlfile.limits import HAND_WRITTEN, Limits, check_limits
from dyesession.tomlfile.lines import KeyPath, index_lines, nearest_line
from dyesession.tomlfile.problems import TomlFileError, plain_words
from dyesession.tomlfile.table import Table

BYTE_ORDER_MARK = b"\xef\xbb\xbf"


@dataclass(frozen=True)
class Document:
    """A TOML file as read: its tables, where it came from, and where in it each key stands."""

    where: str
    values: Mapping[str, Any]
    text: str = field(repr=False, default="")
    notes: tuple[str, ...] = ()

    def line_of(self, path: KeyPath) -> int:
        """The line of a key, such as ("step", 2, "heat"), or of what stands nearest around it; 0: unknown."""
        return nearest_line(self._lines, path)

    @property
    def top(self) -> Table:
        """The whole document as a table for a loader."""
        return Table(self, (), self.values)

    @cached_property
    def _lines(self) -> dict[KeyPath, int]:
        return index_lines(self.text)


def read_toml(path: Path, storage: Storage = DISK, limits: Limits = HAND_WRITTEN) -> Document:
    """Read a TOML file. Raises TomlFileError (or another UserError): file, line, what was expected."""
    try:
        data = read_file(storage, path, limits.file_bytes)
    except OSError as error:
        raise TomlFileError(
            shown(path), 0, f"{because(error)}; expected a file that can be read, such as recipes/madder.toml"
        ) from error
    return parse_toml(data, shown(path), limits)


def parse_toml(data: bytes, where: str, limits: Limits = HAND_WRITTEN) -> Document:
    """The document in `data`, with `where` as its name in messages. Raises TomlFileError."""
    notes: tuple[str, ...] = ()
    if data.startswith(BYTE_ORDER_MARK):
        data = data.removeprefix(BYTE_ORDER_MARK)
        notes = (f"{where}: an editor has put a byte order mark before the first line; it was left out.",)
    if len(data) > limits.file_bytes:
        raise TomlFileError(where, 0, f"over {limits.file_bytes} bytes long: expected a few thousand")
    text = _decoded(data, where).replace("\r\n", "\n")
    check_limits(text, where, limits)
    return Document(where, _parsed(text, where), text, notes)


def _decoded(data: bytes, where: str) -> str:
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise TomlFileError(where, line, "not UTF-8 text: expected plain text, saved as UTF-8") from error


def _parsed(text: str, where: str) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except (ValueError, RecursionError, MemoryError) as error:
        line, wrong = plain_words(shown(str(error)), text.rstrip("\n").count("\n") + 1)
        raise TomlFileError(where, line, wrong) from error
