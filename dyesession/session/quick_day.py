"""A day's facts read quickly, for whoever goes through a whole folder of logs. No lock, nothing changed.

What the program itself wrote as account is passed over in a whole log: the fold of the facts ignores it.
"""

from pathlib import Path

from dyesession.session.log_facts import facts_of, read_facts
from dyesession.session.opening import LoggedDay, _day
from dyesession.storage import Storage


def read_facts_of_day(storage: Storage, path: Path) -> LoggedDay:
    """As `opening.read_day`, but a whole log comes without its account entries. Raises what that raises."""
    return _day(read_facts(storage, path), str(path))


def day_from_bytes(path: Path, data: bytes) -> LoggedDay:
    """The day in a log's bytes, without its account entries where it is whole. Raises as `read_day` does."""
    return _day(facts_of(path, data), str(path))
