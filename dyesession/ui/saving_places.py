"""Folders to offer for a day that cannot be saved where it is. Looks nothing up but where they are."""

import tempfile
from pathlib import Path


def places_to_save() -> tuple[str, ...]:
    """The home folder, the folder the program was started in, the system's own for passing things."""
    found = (Path.home(), Path.cwd(), Path(tempfile.gettempdir()) / "dyesession")
    return tuple(dict.fromkeys(str(one) for one in found))
