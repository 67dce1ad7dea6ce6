"""The substances a natural dyer meets: data in `*.toml`, one file for each group, and the way to find them.

Must not know recipes. Every figure has its source beside it in the data.
"""

from dyesession.substances.loader import data_files, load, wording
from dyesession.substances.model import (
    FIRST_AID,
    TRAITS,
    VERDICTS,
    Band,
    Figure,
    Form,
    Substance,
    Wording,
)
from dyesession.substances.names import find, form_named, nearest, strength_percent

__all__ = [
    "FIRST_AID",
    "TRAITS",
    "VERDICTS",
    "Band",
    "Figure",
    "Form",
    "Substance",
    "Wording",
    "data_files",
    "find",
    "form_named",
    "load",
    "nearest",
    "strength_percent",
    "wording",
]
