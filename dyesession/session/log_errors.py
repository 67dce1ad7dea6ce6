"""What can be said about a log that will not open, or an entry that will not be saved.

Each message says what is so (saved, not saved or unsure), where, and what can be done.
"""

from pathlib import Path

from dyesession.errors import UserError


class LogError(UserError):
    """Something is wrong with a session log."""


class NotSaved(LogError):
    """The entry is certainly not in the file. `retry`: whether saving it again may work without more ado."""

    def __init__(self, message: str, *, retry: bool = True) -> None:
        super().__init__(message)
        self.retry = retry


class Unsure(LogError):
    """Nobody knows whether the entry is in the file: no more is written to it; a rescue copy is wanted."""


class NameTaken(LogError):
    """A log of that name is there already."""


class NotALog(LogError):
    """The file is no session log, or its head was never saved; nothing in it was ever called saved."""


class NewerFormat(LogError):
    """The log was made by a newer program; it is left untouched."""


class ReadOnly(LogError):
    """The log can be looked at but not written to."""


class EntriesMissing(LogError):
    """Entries are missing from the middle of the log: it opens for writing only when told to go on."""


class LogInUse(LogError):
    """Another running program writes this log. `pid` is its process, where the system tells."""

    def __init__(self, path: Path, message: str, pid: int | None, host: str) -> None:
        super().__init__(message)
        self.path, self.pid, self.host = path, pid, host
