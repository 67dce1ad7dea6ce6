"""What the account of a day that kept a bath comes to, kept in a disposable index: the shelf is up at once.

Keyed by what is in the log (its own starting numbers stand in its head) and by what is in the program that
reckons. Deleting it, or meddling with it, costs only time.
"""

import zlib
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import asdict
from functools import cache
from pathlib import Path
from typing import Any

from dyesession.account import Account, Band90
from dyesession.account.model import Amount, BathEstimate, FibreEstimate, Taken
from dyesession.daybook.index import load_index, save_index
from dyesession.session.opening import LoggedDay
from dyesession.session.quick_day import day_from_bytes
from dyesession.shelf.estimates import Reckon, account_of_day
from dyesession.storage import Storage, read_file
from dyesession.tomlfile import LOG

# Everything that has a say in an account; whatever changes in one of these rooms, all is reckoned anew.
ROOMS = ("account", "dyeing", "plan", "session", "substances")
PACKAGE = Path(__file__).resolve().parents[1]


@contextmanager
def kept_reckoning(storage: Storage, index: Path | None) -> Iterator[Reckon]:
    """A way to reckon days that looks into the index first and keeps there what it had to reckon.

    What it answers with holds the baths and the fibre of an account and nothing else. Raises what reading and
    reckoning a day raise; where the index cannot be read or written nothing is lost but time.
    """
    known = load_index(storage, index) if index is not None else {}
    used: dict[str, dict[str, Any]] = {}
    yield lambda day: _reckoned(storage, day, known, used)
    if index is not None and used and used != known:
        save_index(storage, index, used)


def _reckoned(
    storage: Storage, day: LoggedDay, known: Mapping[str, dict[str, Any]], used: dict[str, dict[str, Any]]
) -> Account:
    path = Path(day.path)
    try:
        data = read_file(storage, path, LOG.file_bytes)
    except OSError:
        return _for_the_shelf(account_of_day(day))  # its log went away meanwhile: told all the same, not kept
    key = f"{program_mark()}-{len(data)}-{zlib.crc32(data):08x}"
    account = _kept(known.get(key))
    if account is None:
        # The very bytes that the key is of: a day written on meanwhile is never kept under a wrong key.
        account = _for_the_shelf(account_of_day(day_from_bytes(path, data)))
    used[key] = _as_plain(account)
    return account


def _kept(table: Mapping[str, Any] | None) -> Account | None:
    try:
        return _from_plain(table) if table is not None else None
    except (KeyError, TypeError, ValueError):
        return None  # an index somebody meddled with costs only time


@cache
def program_mark() -> str:
    """A checksum of every file of the program that an account comes out of: another program, another mark."""
    mark = 0
    for path in (one for room in ROOMS for one in sorted((PACKAGE / room).iterdir())):
        if path.suffix in (".py", ".toml"):
            mark = zlib.crc32(path.read_bytes(), mark)
    return f"{mark:08x}"


def _for_the_shelf(account: Account) -> Account:
    """Of an account, what the shelf wants to know."""
    kept = tuple(one for one in account.baths if one.kept)
    return Account(account.n, account.second, baths=kept, fibres=account.fibres)


def _as_plain(account: Account) -> dict[str, Any]:
    return {
        "n": account.n,
        "second": account.second,
        "baths": [asdict(one) for one in account.baths],
        "fibres": [asdict(one) for one in account.fibres],
    }


def _from_plain(table: Mapping[str, Any]) -> Account:
    return Account(
        int(table["n"]),
        float(table["second"]),
        baths=tuple(_bath(one) for one in table["baths"]),
        fibres=tuple(_fibre(one) for one in table["fibres"]),
    )


def _bath(table: Mapping[str, Any]) -> BathEstimate:
    bands = {
        "volume_l": _band(table["volume_l"]),
        "dye": _amounts(table["dye"]),
        "contents": _amounts(table["contents"]),
        "dyestuff_inside": tuple(table["dyestuff_inside"]),
    }
    return BathEstimate(**{**table, **bands})


def _fibre(table: Mapping[str, Any]) -> FibreEstimate:
    taken = (
        Taken(str(one["lot"]), _band(one["grams"]), _band(one["percent_wof"])) for one in table["taken"]
    )
    bands = {
        "taken": tuple(taken),
        "mordant": _amounts(table["mordant"]),
        "liquor_l": _band(table["liquor_l"]),
        "carried": _amounts(table["carried"]),
    }
    return FibreEstimate(**{**table, **bands})


def _amounts(tables: Any) -> tuple[Amount, ...]:
    return tuple(Amount(str(one["lot"]), _band(one["grams"])) for one in tables)


def _band(table: Mapping[str, Any]) -> Band90:
    return Band90(float(table["mean"]), float(table["low"]), float(table["high"]))
