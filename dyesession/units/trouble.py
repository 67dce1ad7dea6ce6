"""What can be wrong with an amount somebody typed, said in one sentence.

Knows nothing of grammar or of units; every message quotes the text, says what was expected, gives an example.
"""

from dataclasses import dataclass
from typing import NoReturn

from dyesession.errors import UserError

LONGEST_QUOTE = 40  # characters of the typed text repeated in a message: common practice, no source


class UnitError(UserError):
    """An amount that cannot be read as it stands."""


class NeedsWeight(UnitError):
    """A dose or amount that cannot be reckoned until somebody puts it on a scale; never taken as zero."""


@dataclass(frozen=True)
class Choice:
    """One thing an unclear text may mean: `label` for the person, `text` for the same reader again."""

    label: str
    text: str


class Ambiguous(UnitError):
    """A text with more than one ordinary meaning; the person picks one of `choices`, nobody guesses."""

    def __init__(self, question: str, choices: tuple[Choice, ...]) -> None:
        self.question = question
        self.choices = choices
        offered = ", ".join(choice.label for choice in choices[:-1])
        offered = f"{offered} or {choices[-1].label}" if offered else choices[-1].label
        super().__init__(f"{question.rstrip('?')}: {offered}; write it out, for example “{choices[0].text}”.")


def _visible(character: str) -> str:
    """Stand a harmless mark in for a character that could act on a terminal."""
    if character.isprintable():
        return character
    code = ord(character)
    if code < 0x20:
        return chr(0x2400 + code)  # Unicode block "Control Pictures": one picture for each control character
    return "␡" if code == 0x7F else "�"


def quoted(text: str) -> str:
    """Give `text` between quotation marks, cut short, with control characters shown as marks."""
    short = text if len(text) <= LONGEST_QUOTE else text[: LONGEST_QUOTE - 1] + "…"
    return "“" + "".join(_visible(character) for character in short) + "”"


@dataclass(frozen=True)
class Wanted:
    """What a reader hoped to find, for its messages: a noun with its article, and texts it would read."""

    noun: str
    example: str


def refuse(text: str, what: str, wanted: Wanted) -> NoReturn:
    """Raise a `UnitError` saying what is wrong with `text` and what was wanted."""
    raise UnitError(sentence(text, what, wanted))


def sentence(text: str, what: str, wanted: Wanted) -> str:
    """Build the one sentence of a message: the text, what is wrong, what was expected, an example."""
    return f"{quoted(text)} {what}; expected {wanted.noun}, for example “{wanted.example}”."
