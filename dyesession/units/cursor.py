"""Words, numbers and marks of a typed amount, and a finger that moves along them.

Knows what a number looks like and nothing of units. Every figure becomes an exact fraction; what is
unclear is noted as a question and settled at the end, so that a plain mistake is reported first.
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from typing import NoReturn

from dyesession.units.names import Option
from dyesession.units.trouble import Ambiguous, Choice, Wanted, quoted, refuse

LONGEST_TEXT = 200  # characters; a dose is one line: common practice, no source
LARGEST_NUMBER = 10**9  # nothing in a kitchen is a thousand tonnes: common practice, no source
MOST_CHOICES = 12  # more than a person can pick from: common practice, no source

_VULGAR = {
    "½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4), "⅕": (1, 5), "⅖": (2, 5), "⅗": (3, 5),
    "⅘": (4, 5), "⅙": (1, 6), "⅚": (5, 6), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8),
}  # fmt: skip

# Each alternative moves forward at every step, so the time grows with the length and no faster.
_TOKEN = re.compile(
    r"(?P<space>[ \t\u00a0\u2007\u2009\u202f]+)"
    r"|(?P<number>[0-9]+(?:[.,][0-9]+)*|\.[0-9]+)"
    rf"|(?P<vulgar>[{''.join(_VULGAR)}])"
    r"|(?P<slash>[/\u2044\u2215])"
    r"|(?P<dash>[-\u2010-\u2015\u2212])"
    r"|(?P<paren>\([^()]*\))"
    r"|(?P<word>[°º˚] ?[^\W\d_°º]+|[°º˚%℃℉]|[^\W\d_°º]+(?:[.'’][^\W\d_]+)*\.?)"
    r"|(?P<plus>\+)|(?P<colon>[:\u2236])|(?P<comma>,)"
    r"|(?P<other>.)",
    re.DOTALL,
)


@dataclass(frozen=True)
class Token:
    """One mark of the text: what sort it is, how it is written, and where."""

    sort: str
    text: str
    start: int
    end: int

    @property
    def key(self) -> str:
        """The word as it is looked up: small letters, no full stops, no brackets, single spaces."""
        return " ".join(self.text.casefold().replace(".", "").replace("°", "° ").strip("()").split())


@dataclass(frozen=True)
class Number:
    """A figure with its place in the text; `whole` when written as a whole number, `split` when as a/b."""

    value: Fraction
    start: int
    end: int
    whole: bool = False
    split: bool = False


@dataclass(frozen=True)
class Ask:
    """A stretch of the text that could mean several things."""

    question: str
    start: int
    end: int
    options: tuple[Option, ...]


def tokenise(text: str) -> tuple[Token, ...]:
    """Cut `text` into marks, leaving out the spaces; every character belongs to exactly one mark."""
    found = _TOKEN.finditer(text)
    return tuple(Token(m.lastgroup or "", m.group(), *m.span()) for m in found if m.lastgroup != "space")


class Cursor:
    """A finger on the next mark of a text, with the questions gathered on the way."""

    def __init__(self, text: str, wanted: Wanted) -> None:
        """Start at the beginning; a text over 200 characters is refused unread."""
        self.text, self.wanted = text, wanted
        if len(text) > LONGEST_TEXT:
            self.refuse(f"is {len(text)} characters long, more than {LONGEST_TEXT}")
        self.tokens = tokenise(text)
        self.at = 0
        self.asks: list[Ask] = []

    def peek(self, ahead: int = 0) -> Token:
        """Look at a mark without moving; past the end comes one of sort `end`."""
        place = self.at + ahead
        if place < len(self.tokens):
            return self.tokens[place]
        return Token("end", "", len(self.text), len(self.text))

    def sees(self, *sorts: str) -> bool:
        """Say whether the next marks are of these sorts."""
        return all(self.peek(ahead).sort == sort for ahead, sort in enumerate(sorts))

    def sees_number(self, ahead: int = 0) -> bool:
        """Say whether a figure begins there."""
        return self.peek(ahead).sort in ("number", "vulgar")

    def skip(self, *words: str) -> bool:
        """Step over one of these words or marks, if it is next."""
        if self.peek().key in words and not self.sees("end"):
            self.at += 1
            return True
        return False

    @property
    def at_end(self) -> bool:
        """Whether nothing is left."""
        return self.at >= len(self.tokens)

    def rest(self) -> str:
        """Give what is left, as typed."""
        return self.text[self.peek().start :].strip()

    def refuse(self, what: str) -> NoReturn:
        """Refuse the whole text, saying what is wrong with it."""
        refuse(self.text, what, self.wanted)

    def number(self) -> Number | None:
        """Read a figure: `12`, `2.5`, `2,5`, `1/2`, `1 1/2`, `1½`; None when there is none.

        Raises `UnitError` for a negative, huge or oddly written one; notes a question for `1,000`.
        """
        if self.sees("dash") and self.sees_number(1):
            self.refuse("is negative")
        if self.sees("vulgar"):
            return self._vulgar()
        if not self.sees("number"):
            return None
        if self.sees("number", "slash", "number"):
            return self._fraction()
        first = self._decimal()
        if first.whole and self.sees("vulgar"):
            return self._joined(first, self._vulgar())
        if first.whole and self.sees("number", "slash", "number"):
            return self._joined(first, self._fraction())
        return first

    def _vulgar(self) -> Number:
        token = self.tokens[self.at]
        self.at += 1
        return Number(Fraction(*_VULGAR[token.text]), token.start, token.end, split=True)

    def _fraction(self) -> Number:
        above, below = self._whole(self.peek()), self._whole(self.peek(2))
        start, end = self.peek().start, self.peek(2).end
        if not below:
            self.refuse("divides by nothing")
        self.at += 3
        return Number(Fraction(above, below), start, end, split=True)

    def _joined(self, whole: Number, part: Number) -> Number:
        if part.value >= 1:
            self.refuse("has a fraction of one or more after a whole number")
        return Number(whole.value + part.value, whole.start, part.end)

    def _whole(self, token: Token) -> int:
        if not token.text.isdigit():
            self.refuse("mixes a decimal with a fraction")
        return self._in_bounds(int(token.text))

    def _in_bounds(self, value: int) -> int:
        if value > LARGEST_NUMBER:
            self.refuse("has a number larger than a thousand million")
        return value

    def _decimal(self) -> Number:
        token = self.tokens[self.at]
        self.at += 1
        self._no_exponent(token)
        if token.text.isdigit():
            return Number(Fraction(self._whole(token)), token.start, token.end, whole=True)
        before, mark, after = token.text.partition("," if "," in token.text else ".")
        if not after.isdigit() or (before and not before.isdigit()):
            self.refuse("has more than one comma or point in a number; write a large number without them")
        if mark == "," and len(after) == 3 and len(before) <= 3 and not before.startswith("0"):
            self._ask_comma(token, before, after)
        self._in_bounds(int(before or "0"))
        return Number(Fraction(f"{before or '0'}.{after}"), token.start, token.end)

    def _no_exponent(self, token: Token) -> None:
        following = self.peek()
        if following.key == "e" and following.start == token.end and self.peek(1).start == following.end:
            self.refuse("has a number with an exponent; write it in full")

    def _ask_comma(self, token: Token, before: str, after: str) -> None:
        options = (
            Option(f"{before}{after}, the comma marking thousands", before + after),
            Option(f"{before}.{after}, the comma being the decimal point", f"{before}.{after}"),
        )
        question = f"What does the comma mean in {quoted(self.text)}?"
        self.asks.append(Ask(question, token.start, token.end, options))

    def settle(self) -> None:
        """Refuse what is left over; then ask what is unclear, if anything is."""
        if not self.at_end:
            self.refuse(f"has something left over, {quoted(self.rest())}")
        self.settle_questions()

    def settle_questions(self) -> None:
        """Raise `Ambiguous` if a question was noted, each choice being the whole text made clear."""
        if not self.asks:
            return
        families = list(dict.fromkeys(_family(ask) for ask in self.asks))
        picks = [range(len(family)) for family in families]
        choices = tuple(self._choice(dict(zip(families, pick, strict=True))) for pick in product(*picks))
        if len(choices) > MOST_CHOICES:
            self.refuse("is unclear in too many places at once; write each unit out")
        raise Ambiguous(self.asks[0].question, choices)

    def _choice(self, picked: dict[tuple[str, ...], int]) -> Choice:
        """Make the text clear in every place, alike in all places that ask the same thing."""
        pieces: list[str] = []
        labels: dict[tuple[str, ...], str] = {}
        place = 0
        for ask in sorted(self.asks, key=lambda ask: ask.start):
            option = ask.options[picked[_family(ask)]]
            labels.setdefault(_family(ask), option.label)
            pieces += [self.text[place : ask.start], option.words]
            place = ask.end
        return Choice(" and ".join(labels.values()), ("".join(pieces) + self.text[place:]).strip())


def _family(ask: Ask) -> tuple[str, ...]:
    """Tell which asks are one question: those with the same labels but for the figures and units in them."""
    return tuple(re.sub(r"\(.*\)|[0-9.,]+", "", option.label) for option in ask.options)
