"""The flat writer: one `[[table]]` block of plain keys, lists and inline tables; and a quick reader of it.

Must not know what any table means. TOML 1.0.0 only, so that every reader of the next decades takes it; times
with "T", milliseconds and a fixed offset; text with every control and direction mark escaped.
"""

import math
import re
import tomllib
from collections.abc import Callable, Mapping
from datetime import datetime
from typing import Any

from dyesession.clock import fixed
from dyesession.errors import UserError
from dyesession.storage import shown

WIDEST_LINE = 110  # a longer list is written with one item to a line
LARGEST_WHOLE = 2**63 - 1  # TOML 1.0.0, "Integer": what every reader must take
DEEPEST = 12

_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+\Z")
# C1 controls, direction marks, line separators, the byte order mark: legal in TOML, unsafe to print.
UNPRINTABLE = r"\x80-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff"
_CONTROLS = rf"\x00-\x1f\x7f{UNPRINTABLE}"
_ESCAPED = re.compile(rf'["\\{_CONTROLS}]')
_BROKEN = re.compile(r"[\ud800-\udfff]")
_SHORT = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\t": "\\t", "\r": "\\r", "\b": "\\b", "\f": "\\f"}


class Unwritable(UserError):
    """A value that TOML, or our stricter use of it, has no way to hold."""


def render_block(table: str, values: Mapping[str, Any]) -> str:
    """A `[[table]]` block of the values, in their order, ending in a newline.

    Values: text, whole numbers within 64 bits, finite numbers, true and false, times with an offset, and
    lists and mappings of these. It is parsed back and compared before it is returned. Raises Unwritable.
    """
    plain = normal(values)
    text = block_text(table, plain)
    parsed_back(text, table, plain)
    return text


def block_text(table: str, plain: Mapping[str, Any]) -> str:
    """The block of values that `normal` has been through; not yet parsed back."""
    lines = [f"{key_text(key)} = {_line(key, value)}\n" for key, value in plain.items()]
    return f"[[{table}]]\n" + "".join(lines)


def parsed_back(text: str, table: str, plain: Mapping[str, Any]) -> dict[str, Any]:
    """What the standard parser makes of a block. Raises Unwritable unless it is exactly `plain`."""
    try:
        blocks = tomllib.loads(text)[table]
    except (ValueError, RecursionError, KeyError) as error:
        raise Unwritable(f"the entry cannot be written as TOML ({shown(str(error))})") from error
    if len(blocks) != 1 or not same(blocks[0], plain):
        raise Unwritable("the entry would not read back as it was written")
    block: dict[str, Any] = blocks[0]
    return block


def normal(values: Mapping[str, Any]) -> dict[str, Any]:
    """The values as a reader will see them: times cut to milliseconds, tuples as lists. Raises Unwritable."""
    return {key: _normal(value, key, 0) for key, value in values.items()}


def _normal(value: Any, key: str, depth: int) -> Any:
    kind = type(value)
    if kind is str or kind is bool:
        return value
    if depth > DEEPEST:
        raise Unwritable(f"{shown(key)} nests too deep: expected a list of flat tables, say baths = []")
    for wanted, make in _MAKERS:
        if isinstance(value, wanted):
            return make(value, key, depth)
    raise Unwritable(f"{shown(key)} is {shown(repr(value), 40)}: expected text, a number, a time or a list")


def _whole(value: int, key: str, _: int) -> int:
    if not -LARGEST_WHOLE - 1 <= value <= LARGEST_WHOLE:
        raise Unwritable(f"{shown(key)} is too large a number: expected at most {LARGEST_WHOLE}")
    return int(value)


def _number(value: float, key: str, _: int) -> float:
    if not math.isfinite(value):
        raise Unwritable(f"{shown(key)} is {value}: expected a number, for example 29.0")
    return float(value)


def _time(value: datetime, key: str, _: int) -> datetime:
    try:
        return fixed(value)
    except (ValueError, OverflowError) as error:
        raise Unwritable(f"{shown(key)} is {value}: expected a time with its offset") from error


def _items(value: list[Any] | tuple[Any, ...], key: str, depth: int) -> list[Any]:
    return [_normal(item, key, depth + 1) for item in value]


def _table(value: Mapping[str, Any], _: str, depth: int) -> dict[str, Any]:
    return {key: _normal(item, key, depth + 1) for key, item in value.items()}


_MAKERS: tuple[tuple[Any, Callable[[Any, str, int], Any]], ...] = (
    (bool, lambda value, _key, _depth: bool(value)),
    (int, _whole),
    (float, _number),
    (str, lambda value, _key, _depth: str.__str__(value)),
    (datetime, _time),
    ((list, tuple), _items),
    (Mapping, _table),
)


def key_text(key: str) -> str:
    """A key as it is written: bare where it can be, else in quotes."""
    return key if _BARE_KEY.match(key) else _text(key)


def _line(key: str, value: Any) -> str:
    text = _value(value)
    if isinstance(value, list) and len(value) > 1 and len(key) + len(text) > WIDEST_LINE:
        return "[\n" + "".join(f"  {_value(item)},\n" for item in value) + "]"
    return text


def _value(value: Any) -> str:
    return _RENDER[type(value)](value)


def _text(value: str) -> str:
    if value.isascii() and value.isprintable() and '"' not in value and "\\" not in value:
        return f'"{value}"'
    if _BROKEN.search(value):
        raise Unwritable(f'"{shown(value, 40)}" holds half a character: expected text, for example "madder"')
    return '"' + _ESCAPED.sub(lambda hit: _SHORT.get(hit[0]) or f"\\u{ord(hit[0]):04x}", value) + '"'


def _float_text(value: float) -> str:
    text = repr(value)
    return text if "." in text else text.replace("e", ".0e")


_RENDER: dict[type, Callable[[Any], str]] = {
    str: _text,
    bool: lambda value: "true" if value else "false",
    int: str,
    float: _float_text,
    datetime: lambda value: value.isoformat(timespec="milliseconds"),
    list: lambda value: f"[{', '.join([_value(item) for item in value])}]",
    dict: lambda value: (
        f"{{{', '.join([f'{key_text(key)} = {_value(item)}' for key, item in value.items()])}}}"
    ),
}


def same(read: Any, meant: Any) -> bool:
    """Whether two values are equal in kind as well as in worth: 5 is not 5.0, and true is not 1."""
    kind = type(read)
    if kind is not type(meant):
        return False
    if kind is dict:
        return read.keys() == meant.keys() and all(same(value, meant[key]) for key, value in read.items())
    if kind is list:
        return len(read) == len(meant) and all(map(same, read, meant))
    if kind is datetime:
        return bool(read == meant and read.utcoffset() == meant.utcoffset())
    return bool(read == meant)


# --- Reading a block back. Only plain lines are read here; any other block goes to the standard parser.

_PLAIN_LINE = re.compile(
    r"([A-Za-z0-9_-]+) = (?:"
    rf'"([^"\\{_CONTROLS}]*)"'
    r"|(-?(?:0|[1-9][0-9]{0,17}))"
    r"|(-?(?:0|[1-9][0-9]{0,17})\.[0-9]{1,20})"
    r"|([0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\.[0-9]{3}[+-][0-9]{2}:[0-9]{2})"
    r"|(true|false))\n"
)
_LIST = re.compile(r"([A-Za-z0-9_-]+) = \[(?:[^\n]+|\n(?:  [^\n]*\n)+)\]\n")
_AS_IS: Callable[[str], Any] = str
_READERS = (_AS_IS, _AS_IS, _AS_IS, int, float, datetime.fromisoformat, "true".__eq__)  # by group number


def read_block(text: str, table: str) -> dict[str, Any]:
    """The values of one `[[table]]` block. Raises ValueError, RecursionError or KeyError when it is none.

    Equal to what the standard parser gives, key for key, and several times as fast on plain blocks.
    """
    heading = f"[[{table}]]\n"
    if text.startswith(heading):
        values = _plain_values(text, len(heading))
        if values is not None:
            return values
    blocks = tomllib.loads(text)[table]
    if not isinstance(blocks, list) or len(blocks) != 1:
        raise ValueError(f"expected one [[{table}]] block")
    block: dict[str, Any] = blocks[0]
    return block


def _plain_values(text: str, at: int) -> dict[str, Any] | None:
    values: dict[str, Any] = {}
    keys, end = 0, len(text)
    while at < end:
        if hit := _PLAIN_LINE.match(text, at):
            kind = hit.lastindex or 0
            values[hit[1]] = _READERS[kind](hit[kind])
        elif hit := _LIST.match(text, at):
            values.update(_one_list(hit[0], hit[1]))
        else:
            return None
        at, keys = hit.end(), keys + 1
    return values if len(values) == keys else None  # a key given twice is not plain


def _one_list(text: str, key: str) -> dict[str, Any]:
    """A list that starts where a key may stand: what parses by itself parses the same in its place."""
    try:
        values = tomllib.loads(text)
    except (ValueError, RecursionError):
        return {}
    return values if list(values) == [key] else {}
