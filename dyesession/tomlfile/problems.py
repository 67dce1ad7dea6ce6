"""The one error a TOML file can cause, and plain words for what the standard parser says.

Must not know what any table means.
"""

import re

from dyesession.errors import UserError


class TomlFileError(UserError):
    """A file that cannot be read as it stands.

    `where` is the file, `line` the line counted from 1, or 0 when the fault is the file's as a whole. The
    message is one sentence: file, line, what is wrong, what was expected, an example.
    """

    def __init__(self, where: str, line: int, wrong: str) -> None:
        super().__init__(f"{where}, line {line}: {wrong}" if line else f"{where}: {wrong}")
        self.where = where
        self.line = line


# The start of tomllib's message -> what a person did, and what they meant.
_MEANT = (
    ("Cannot overwrite a value", "this key stands twice in one table: expected each key once"),
    ("Cannot declare", "this table stands twice: expected [name] once, or [[name]] for one of several"),
    ("Cannot mutate immutable", "this adds to a list or table closed above: expected one form, say [[step]]"),
    ("Expected '=' after a key", 'expected a key, "=" and a value, for example name = "Madder brick red"'),
    ("Invalid statement", 'expected a key, "=" and a value, for example name = "Madder brick red"'),
    ("Invalid initial character for a key", 'expected a key of letters, digits, "_", "-", say mass_g = 36'),
    ("Invalid value", 'expected text in quotes, a number, true or false, for example dose = "12 %"'),
    ("Expected newline", 'expected one key to a line and text in quotes, for example dose = "12 %"'),
    ("Expected ']'", "expected a table name in brackets, for example [[ingredient]]"),
    ("Unclosed array", 'a list is not closed: expected "]", for example add = ["alum", "tartar"]'),
    ("Unclosed inline table", 'a table is not closed: expected "}", for example { hold = "60 min" }'),
    ('Expected "', 'a text is not closed: expected a quote at its end, for example name = "madder"'),
    ("Unterminated string", 'a text is not closed: expected a quote at its end, for example name = "madder"'),
    ("Unescaped '\\'", 'a "\\" needs another before it: expected, for example, "\\\\"'),
    ("Illegal character", "a character that cannot be typed stands here: expected plain text"),
    ("Found invalid character", "a character that cannot be typed stands here: expected plain text"),
    ("Exceeds the limit", "a number has thousands of digits: expected, for example, mass_g = 36"),
    ("maximum recursion", 'brackets stand too deep: expected, for example, heat = [{ hold = "60 min" }]'),
    ("Invalid date or datetime", "no such day or time: expected, for example, 2026-03-14T09:05:40+01:00"),
)
_PLACE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")


def plain_words(message: str, last_line: int) -> tuple[int, str]:
    """The line and the meaning of one of tomllib's messages."""
    place = _PLACE.search(message)
    line = int(place[1] or last_line) if place else 0
    said = message[: place.start()] if place else message
    meant = next((words for start, words in _MEANT if said.startswith(start)), None)
    return line, meant or f'{said[:1].lower()}{said[1:]}: expected TOML, for example name = "madder"'
