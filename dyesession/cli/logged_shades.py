"""The colours of the workroom's logs, read for the commands that want them. Reads logs; computes nothing."""

import argparse
from typing import TYPE_CHECKING

from dyesession.errors import UserError

if TYPE_CHECKING:
    from dyesession.cli.workroom import Workroom
    from dyesession.daybook.shade_card import Shade


class NoShade(UserError):
    """A day or a lot whose colour nobody has read."""


def workroom_of(options: argparse.Namespace) -> "Workroom":
    """The workroom a command was given, or the usual one."""
    from dyesession.cli.workroom import find_workroom

    return find_workroom(getattr(options, "workroom", None))


def shades_in(workroom: "Workroom") -> "tuple[Shade, ...]":
    """Every colour of the days that count, the newest day first."""
    from dyesession.cli.daybook import book_of
    from dyesession.daybook.shade_card import shades_of
    from dyesession.session.quick_day import read_facts_of_day
    from dyesession.storage import DISK

    lines = [one for one in book_of(workroom).counted if one.colours]
    return shades_of(read_facts_of_day(DISK, workroom.log(one.file)) for one in lines)


def shade_named(workroom: "Workroom", log: str, lot: str | None) -> "Shade":
    """The colour of one day's lot. Raises `NoShade` where none was read, or where the lot must be said."""
    from dyesession.daybook.shade_card import shades_of
    from dyesession.session.quick_day import read_facts_of_day
    from dyesession.storage import DISK

    path = workroom.log(log)
    found = shades_of([read_facts_of_day(DISK, path)])
    chosen = [one for one in found if lot is None or one.lot.casefold() == lot.casefold()]
    if len(chosen) == 1:
        return chosen[0]
    names = ", ".join(f"“{one.lot or 'all'}”" for one in found)
    if not found:
        raise NoShade(
            f"No colour of dyed fibre was read on {path.stem}; expected a day with one, for example after "
            f'dyesession aftercare {path.stem} "dry shade" --colour "#8b3a2b".'
        )
    raise NoShade(f"{path.stem} has colours of {names}; expected one of them, for example --lot {found[0].lot!r}.")
