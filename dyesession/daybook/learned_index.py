"""What each log says of the dyer's own numbers, kept in a disposable index: learning from many logs stays quick.

Keyed by what is in a file, as the day book's index is. Deleting it, or meddling with it, costs only time.
"""

import zlib
from collections.abc import Iterable, Mapping
from dataclasses import asdict
from pathlib import Path
from typing import Any

from dyesession.daybook.dyers_numbers import Learnt
from dyesession.daybook.index import load_index, save_index
from dyesession.daybook.learning import DayTold, learnt_from, told_by
from dyesession.daybook.seen import About, FurtherStrain, Seen, Uptake
from dyesession.daybook.seen_colour import Depth
from dyesession.errors import UserError
from dyesession.session.quick_day import day_from_bytes
from dyesession.storage import Storage, read_file
from dyesession.tomlfile import LOG

WAY = 2  # raise it when what is read out of a log changes: what was kept before is then read anew


def learnt_of(storage: Storage, paths: Iterable[Path], index: Path | None = None) -> Learnt:
    """What these logs taught. `index` is where it is kept, None for nowhere. A log that cannot be read teaches
    nothing.
    """
    known = load_index(storage, index) if index is not None else {}
    kept = dict(known)
    told = [one for one in (_told(storage, path, kept) for path in paths) if one is not None]
    if index is not None and kept != known:
        save_index(storage, index, kept)
    return learnt_from(told)


def _told(storage: Storage, path: Path, kept: dict[str, dict[str, Any]]) -> DayTold | None:
    try:
        data = read_file(storage, path, LOG.file_bytes)
        key = f"{WAY}-{len(data)}-{zlib.crc32(data):08x}"
        if key in kept:
            try:
                return _from_plain(kept[key])
            except (KeyError, TypeError, ValueError):
                pass  # an index somebody meddled with costs only time
        found = told_by(day_from_bytes(path, data))
    except (UserError, OSError):
        return None
    kept[key] = asdict(found)
    return found


def _from_plain(table: Mapping[str, Any]) -> DayTold:
    return DayTold(
        str(table["day"]),
        str(table["opened"]),
        tuple(Seen(About(**one["about"]), float(one["value"]), float(one["error"]), str(one["day"])) for one in table["seen"]),
        tuple(Depth(**one) for one in table["depths"]),
        tuple(Uptake(**one) for one in table["uptakes"]),
        tuple(FurtherStrain(**one) for one in table["strains"]),
    )
