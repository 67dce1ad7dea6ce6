"""A fault's traceback goes to a file only its owner can read; the person is shown where."""

import os
import tempfile
import traceback
from pathlib import Path


def write_crash(fault: BaseException) -> str:
    """Write the traceback, without the values of variables, and return the file's path."""
    import platformdirs

    try:
        folder = Path(platformdirs.user_state_dir("dyesession", appauthor=False))
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(prefix="fault-", suffix=".txt", dir=folder)
    except OSError:
        handle, name = tempfile.mkstemp(prefix="dyesession-fault-", suffix=".txt")
    with os.fdopen(handle, "w", encoding="utf-8", errors="backslashreplace") as file:
        file.write("".join(traceback.format_exception(fault)))
    return name
