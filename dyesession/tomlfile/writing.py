"""Whole documents for people to read: recipes, kitchens, the tables at the head of a log.

Must not know what any table means. tomli-w writes the values; it is handed one table at a time, because left
to itself it writes a list of short tables as one long value, and times with a space.
"""

import re
import tomllib
from collections.abc import Iterator, Mapping
from datetime import datetime
from typing import Any

from dyesession.tomlfile.flat import UNPRINTABLE, Unwritable, block_text, key_text, normal, same

SHORT_ITEM_KEYS = 2  # a list of tables no larger than this stays one value: heat = [ { hold = "60 min" } ]
SHORT_ITEM_LENGTH = 80  # characters of such a table

_UNPRINTABLE = re.compile(f"[{UNPRINTABLE}]")


class _Moment(datetime):
    """A time that tomli-w writes with "T" and milliseconds."""

    def __str__(self) -> str:
        return self.isoformat(timespec="milliseconds")


def write_document(values: Mapping[str, Any]) -> str:
    """A TOML document: plain keys first, then `[table]`s and `[[table]]`s; parsed back and compared.

    Raises Unwritable when a value has no place in TOML.
    """
    plain = normal(values)
    text = "\n".join(_chunks("", plain, ""))
    # Outside strings and quoted keys tomli-w writes ASCII only, so these can be escaped wherever they stand.
    text = _UNPRINTABLE.sub(lambda hit: f"\\u{ord(hit[0]):04x}", text)
    try:
        text.encode()
        whole = same(tomllib.loads(text), plain)
    except ValueError as error:
        raise Unwritable("a text holds half a character: expected, for example, madder") from error
    if not whole:
        raise Unwritable("the document would not read back as it was written")
    return text


def _chunks(name: str, table: Mapping[str, Any], heading: str) -> Iterator[str]:
    import tomli_w

    own = {key: _for_tomli_w(value) for key, value in table.items() if not _stands_alone(value)}
    if own or heading.startswith("[[") or len(own) == len(table):
        yield heading + tomli_w.dumps(own)
    for key, value in table.items():
        inner = f"{name}.{key_text(key)}" if name else key_text(key)
        if isinstance(value, dict):
            yield from _chunks(inner, value, f"[{inner}]\n")
        elif _stands_alone(value):
            for item in value:
                yield from _chunks(inner, item, f"[[{inner}]]\n")


def _stands_alone(value: Any) -> bool:
    if isinstance(value, dict):
        return True
    if not isinstance(value, list) or not value or not all(isinstance(item, dict) for item in value):
        return False
    return not all(_short(item) for item in value)


def _short(item: dict[str, Any]) -> bool:
    nested = any(isinstance(value, (dict, list)) for value in item.values())
    return not nested and len(item) <= SHORT_ITEM_KEYS and len(block_text("", item)) <= SHORT_ITEM_LENGTH


def _for_tomli_w(value: Any) -> Any:
    if isinstance(value, datetime):
        return _Moment.combine(value.date(), value.timetz())
    if isinstance(value, list):
        return [_for_tomli_w(item) for item in value]
    if isinstance(value, dict):
        return {key: _for_tomli_w(item) for key, item in value.items()}
    return value
