"""Makes any text safe to draw: what a terminal would obey or hide becomes a mark that can be read.

Knows nothing of screens. Which characters are invisible: the general categories of the Unicode Character
Database (UAX #44) as Python's `unicodedata` carries them, and the few blank letters listed below.
"""

import unicodedata
from functools import lru_cache

# Categories that a terminal obeys (Cc), hides (Cf), cannot encode (Cs) or may draw as anything (Co, Cn),
# and the two separators that some terminals take for a new line (Zl, Zp): UAX #44, table 12.
_MARKED = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})
# Letters and symbols that are drawn as nothing (their Unicode names say "filler" or "blank").
_BLANK = frozenset("\u034f\u115f\u1160\u17b4\u17b5\u2800\u3164\uffa0")
# "Control Pictures", U+2400 to U+2421: one visible picture for each C0 control and for DEL.
_PICTURES, _DEL = 0x2400, 0x7F
# Spaces at which a line may not be broken: they stay so, in the one width every terminal draws.
_UNBROKEN, _UNBROKEN_SPACES = "\u00a0", frozenset("\u00a0\u2007\u202f")
# No written language stacks more marks than this on one letter (common practice, no source).
_MOST_MARKS = 2


def _is_variation_selector(char: str) -> bool:
    return "\ufe00" <= char <= "\ufe0f" or "\U000e0100" <= char <= "\U000e01ef"


def _picture(char: str) -> str:
    code = ord(char)
    if code < 0x20:
        return chr(_PICTURES + code)
    return "\u2421" if code == _DEL else f"‹{code:04X}›"


def _shown(char: str, stacked: int) -> str:
    if unicodedata.combining(char) or unicodedata.category(char) in {"Mn", "Me"}:
        return char if 0 < stacked <= _MOST_MARKS else _picture(char)
    if unicodedata.category(char) in _MARKED or char in _BLANK:
        return _picture(char)
    if unicodedata.category(char) == "Zs":
        return _UNBROKEN if char in _UNBROKEN_SPACES else " "
    return char


@lru_cache(maxsize=4096)
def plain(text: str) -> str:
    """The text as it may be drawn: one line, no markup, nothing obeyed and nothing hidden.

    A control, bidirectional, zero-width or unassigned character is shown as a mark (`␛`, `‹202E›`), a space
    of any width as a space. Brackets stay brackets: no caller may hand the result to a markup parser.
    Doing it twice changes nothing.
    """
    if text.isascii() and text.isprintable():
        return text
    shown: list[str] = []
    stacked = 0  # marks on the present letter, the letter itself included; 0 where there is no letter
    for char in unicodedata.normalize("NFC", text):
        is_mark = unicodedata.category(char) in {"Mn", "Me"}
        hidden = _is_variation_selector(char) or char in _BLANK
        shown.append(_picture(char) if hidden else _shown(char, stacked))
        stacked = stacked + 1 if is_mark and stacked else int(not is_mark and not hidden)
    return "".join(shown)
