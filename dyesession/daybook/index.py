"""The day book's index: one line a log, kept in the cache folder. Deleting it costs only time.

Must not know what a line means. One written by another version, or damaged, is as good as none.
"""

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from dyesession import __version__
from dyesession.errors import UserError
from dyesession.storage import Storage, make_folder, read_file, replace_file

MARK = f"dyesession day book 3, {__version__}"
MOST_BYTES = 64_000_000  # far above what 20,000 days need; common practice, no source


def load_index(storage: Storage, path: Path) -> dict[str, dict[str, Any]]:
    """The lines by their key; empty where there is no index that this program wrote."""
    try:
        found = json.loads(read_file(storage, path, MOST_BYTES))
    except (OSError, UserError, ValueError, RecursionError):
        return {}
    if not isinstance(found, dict) or found.get("mark") != MARK or not isinstance(found.get("days"), dict):
        return {}
    return {key: line for key, line in found["days"].items() if isinstance(line, dict)}


def save_index(storage: Storage, path: Path, lines: Mapping[str, Mapping[str, Any]]) -> None:
    """Keep the lines; where that cannot be done nothing is lost but time."""
    text = json.dumps({"mark": MARK, "days": lines}, ensure_ascii=False, separators=(",", ":"))
    try:
        make_folder(storage, path.parent)
        replace_file(storage, path, text.encode("utf-8"))
    except OSError:
        return
