"""One entry of a log as plain data, and how it is told from a block's values.

Must not know what the kinds and fields mean: another room makes events of them.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from dyesession.clock import Instant

RESERVED = ("n", "at", "happened", "boot", "up_s", "kind", "seal")
UNREADABLE = "unreadable"
LARGEST_WHOLE = 2**63


@dataclass(frozen=True, slots=True)
class Entry:
    """An entry: its number, when it was recorded and (if told) happened, its kind and fields.

    `trouble` is None for an entry whose seal holds; otherwise one phrase says what is wrong with it.
    """

    n: int
    at: datetime
    happened: datetime | None
    boot: str
    up_s: float
    kind: str
    fields: Mapping[str, Any]
    trouble: str | None = None

    @property
    def instant(self) -> Instant:
        """When the entry was recorded, as the three numbers a countdown needs."""
        return Instant(self.at, self.boot, self.up_s)


def entry_from(values: dict[str, Any], n: int, trouble: str | None = None) -> Entry | None:
    """The entry a block's values make, or None when they lack what every entry has. Uses up `values`."""
    values.pop("n", None)
    if values.pop("seal", None) is None:
        return None
    at, boot, up_s = values.pop("at", None), values.pop("boot", None), values.pop("up_s", None)
    kind, happened = values.pop("kind", None), values.pop("happened", None)
    if type(at) is not datetime or at.tzinfo is None or type(boot) is not str or type(kind) is not str:
        return None
    if happened is not None and (type(happened) is not datetime or happened.tzinfo is None):
        return None
    if type(up_s) is int:
        up_s = float(up_s)
    if type(up_s) is not float or not sound(up_s) or not all(map(sound, values.values())):
        return None
    return Entry(n, at, happened, boot, up_s, kind, values, trouble)


def sound(value: Any) -> bool:
    """Whether every number in a value is finite and within 64 bits: TOML has nan, a log has not."""
    kind = type(value)
    if kind is float:
        return math.isfinite(value)
    if kind is int:
        return bool(-LARGEST_WHOLE <= value < LARGEST_WHOLE)
    if kind is list:
        return all(map(sound, value))
    if kind is dict:
        return all(map(sound, value.values()))
    return True
