"""Names and system errors in words that are safe to show: no control characters, no jargon.

Must not know who shows them.
"""

import errno
import os
from pathlib import Path

LONGEST_SHOWN = 120

_REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "your share of the disk is used up",
    errno.EFBIG: "the file may not grow any further here",
    errno.EROFS: "the disk can only be read",
    errno.EACCES: "writing or reading it is not allowed",
    errno.EPERM: "the system does not allow it",
    errno.EIO: "the disk reported an error",
    errno.ENOENT: "it is not there",
    errno.ENOTDIR: "part of its path is not a folder",
    errno.EEXIST: "the name is taken",
    errno.ENAMETOOLONG: "its name is too long",
    errno.EMFILE: "too many files are open",
    errno.ENOLCK: "the file system cannot lock files",
}


def because(error: OSError) -> str:
    """Why a file operation failed, in a few plain words."""
    code = error.errno or 0
    return _REASONS.get(code, os.strerror(code).lower() if code else shown(str(error)))


def shown(text: str | Path, longest: int = LONGEST_SHOWN) -> str:
    """Text from outside with every unprintable character made visible, cut to `longest` characters.

    Controls, direction marks, zero-width characters and broken surrogates become their escapes.
    """
    whole = str(text)
    cut = whole if len(whole) <= longest else whole[: longest - 1] + "…"
    return "".join(one if one.isprintable() else one.encode("unicode_escape").decode("ascii") for one in cut)
