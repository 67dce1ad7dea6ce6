"""Lines broken for a page: what explains a word stays in its own column, whatever the window's width. Pure."""

import re
import textwrap

# A word or a few, two spaces or more, what explains it.
_EXPLAINED = re.compile(r"^(?P<indent> *)(?P<word>\S+(?: \S+)*)(?P<gap> {2,})(?P<text>\S.*)$")
_INDENTED = re.compile(r"^(?P<indent> *)(?P<text>\S.*)$")
NARROWEST = 16  # a column narrower than this is given up: the text goes on below its word


def hung(text: str, width: int) -> str:
    """The text with its lines broken at `width`; lines that go on in a column are joined to it first."""
    return "\n".join(line for whole in _joined(text.split("\n")) for line in _broken(whole, width))


def _joined(lines: list[str]) -> list[str]:
    """A line that begins exactly where the column above begins goes on with it."""
    whole: list[str] = []
    column = 0
    for line in lines:
        goes_on = column and re.match(rf" {{{column}}}\S", line)
        if goes_on and whole:
            whole[-1] = f"{whole[-1]} {line.strip()}"
            continue
        whole.append(line)
        found = _EXPLAINED.match(line)
        column = found.start("text") if found else 0
    return whole


def _broken(line: str, width: int) -> list[str]:
    if len(line) <= width:
        return [line]
    found = _EXPLAINED.match(line)
    column = found.start("text") if found else 0
    if width - column < NARROWEST:
        column = 0
    indented = _INDENTED.match(line)
    hang = column or (len(indented["indent"]) if indented else 0)
    return textwrap.wrap(
        line, max(NARROWEST, width), subsequent_indent=" " * hang, drop_whitespace=True,
        break_long_words=True, replace_whitespace=False,
    )  # fmt: skip
