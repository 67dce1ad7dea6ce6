"""How large and how deep a file may be before the standard parser is let near it.

Must not know what any table means. Why: tomllib takes time growing with the square of the parts of a dotted
key (github.com/python/cpython/issues/149231) and recurses into every bracket. The figures are common
practice, no source: far above what a recipe or a day's log needs.
"""

import re
from dataclasses import dataclass

from dyesession.tomlfile.problems import TomlFileError


@dataclass(frozen=True)
class Limits:
    """The largest file in bytes, line in characters, dots in a key, and brackets within brackets."""

    file_bytes: int
    line_length: int = 16_000
    key_dots: int = 8
    nesting: int = 16


HAND_WRITTEN = Limits(file_bytes=500_000)
LOG = Limits(file_bytes=8_000_000)

# Strings and comments, each consumed once even when unclosed, so the pass is linear in the text.
_HIDDEN = re.compile(
    r'"""(?:[^"\\]|\\.|"(?!""))*+(?:"{3,5}|\\?\Z)'
    r"|'''(?:[^']|'(?!''))*+(?:'{3,5}|\Z)"
    r'|"(?:[^"\\\n]|\\[^\n])*+(?:"|\\?(?=\n)|\\?\Z)'
    r"|'[^'\n]*+(?:'|(?=\n)|\Z)"
    r"|#[^\n]*+",
    re.DOTALL,
)
_NOT_NEWLINE = re.compile(r"[^\n]")
_BRACKET = re.compile(r"[\[\]{}]")


def blanked(text: str) -> str:
    """The text with every string turned into letters and every comment into spaces, each at its place."""
    return _HIDDEN.sub(lambda hit: _NOT_NEWLINE.sub(" " if hit[0][0] == "#" else "s", hit[0]), text)


def check_limits(text: str, where: str, limits: Limits) -> None:
    """Raises TomlFileError when a line is too long, a key has too many dots, or brackets nest too deep."""
    long_at = _first_long_line(text, limits.line_length)
    if long_at:
        wrong = f"the line is over {limits.line_length} characters long: expected a few dozen"
        raise TomlFileError(where, long_at, wrong)
    if text.count(".") <= limits.key_dots and text.count("[") + text.count("{") <= limits.nesting:
        return  # nothing can be too deep: the usual block of a log
    bare = blanked(text)
    dots = _dotted_key(limits.key_dots + 1).search(bare)
    if dots:
        wrong = f"a key has over {limits.key_dots} dots: expected, for example, mass_g = 36"
        raise TomlFileError(where, _line_at(bare, dots.start()), wrong)
    deep = _first_too_deep(bare, limits.nesting)
    if deep is not None:
        wrong = f'brackets stand over {limits.nesting} deep: expected, say, heat = [{{ hold = "60 min" }}]'
        raise TomlFileError(where, _line_at(bare, deep), wrong)


def _first_long_line(text: str, length: int) -> int:
    if len(text) <= length:
        return 0
    return next((number for number, line in enumerate(text.split("\n"), 1) if len(line) > length), 0)


def _dotted_key(dots: int) -> re.Pattern[str]:
    return re.compile(rf"(?<![A-Za-z0-9_-])(?:[A-Za-z0-9_-]++[ \t]*+\.[ \t]*+){{{dots}}}")


def _first_too_deep(bare: str, nesting: int) -> int | None:
    depth = 0
    for hit in _BRACKET.finditer(bare):
        depth += 1 if hit[0] in "[{" else -1
        if depth > nesting:
            return hit.start()
    return None


def _line_at(text: str, offset: int) -> int:
    return text.count("\n", 0, offset) + 1
