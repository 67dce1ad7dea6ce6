"""Durable files: append, atomic replace, locks, all behind one object that a test can swap for a failing one.

Must not know what is in a file. What the calls promise: Linux man-pages write(2), fsync(2), open(2),
rename(2), flock(2). Not promised: a disk that lies about having written; locks on network folders; Windows.
"""

from dyesession.storage.disk import DISK, DiskStorage
from dyesession.storage.files import (
    discard,
    fresh_name,
    make_folder,
    read_file,
    replace_file,
    write_all,
    write_new,
)
from dyesession.storage.interface import NotAPlainFile, Storage, TooLarge
from dyesession.storage.wording import because, shown

__all__ = [
    "DISK",
    "DiskStorage",
    "NotAPlainFile",
    "Storage",
    "TooLarge",
    "because",
    "discard",
    "fresh_name",
    "make_folder",
    "read_file",
    "replace_file",
    "shown",
    "write_all",
    "write_new",
]
