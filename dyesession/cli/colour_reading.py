"""Colours and targets as they are typed on the command line, into readings. Computes nothing.

A colour is `lab(42 45 30)` (D65, 2 degrees unless said), `lch(...)`, a hex or another CSS colour, a colorimeter's
line (`42.1,45.3,29.8,D65,10`), or the name of its .csv file.
"""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from dyesession.errors import UserError

if TYPE_CHECKING:
    from dyesession.colour.readings import Reading
    from dyesession.colour.targets import Target

UNDYED = "lab(86 0 11)"  # natural wool, scoured: common practice, no source
COLOUR = 'a colour: "lab(42 45 30)", "lab(42 45 30) D65/10 ± 1.5", "#a63e36", or a colorimeter\'s .csv file'
_CSV_BYTES = 4_000_000


class ColourAsked(UserError):
    """A colour command that is short of something, or asks for what cannot be."""


def readings(text: str) -> "tuple[Reading, ...]":
    """The readings a text stands for; more than one only from a file. Raises one sentence."""
    from dyesession.colour.sensor_csv import reading_of_bare_line, readings_of_csv
    from dyesession.colour.typed import read_colour

    if not text.lower().endswith(".csv"):
        return (reading_of_bare_line(text) or read_colour(text),)
    path = Path(text)
    try:
        if not path.is_file() or path.stat().st_size > _CSV_BYTES:
            raise OSError
        return readings_of_csv(path.read_text(encoding="utf-8"), path.name)
    except (OSError, UnicodeDecodeError) as trouble:
        raise ColourAsked(
            f"There is no file of readings {path.name!r} that can be read; expected a colorimeter's .csv in "
            "UTF-8, for example readings.csv."
        ) from trouble


def one(text: str) -> "Reading":
    """One reading; the mean of a file's. Raises one sentence."""
    return target([text]).middle


def target(texts: Sequence[str]) -> "Target":
    """One target out of several texts. Raises `Unlike` for unlike or wet readings."""
    return target_of_readings([reading for text in texts for reading in readings(text)])


def target_of_readings(readings: "Sequence[Reading]") -> "Target":
    """One target out of several readings."""
    from dyesession.colour.targets import target_of

    return target_of(readings)


def ground(text: str | None, like: "Reading") -> "tuple[Reading, tuple[str, ...]]":
    """The undyed fibre, and what to say where it had to be assumed."""
    if text is not None:
        return one(text), ()
    assumed = replace(one(UNDYED), viewing=like.viewing)
    return assumed, (f"Reckoned on undyed natural wool, {UNDYED}; give your own with --undyed.",)
