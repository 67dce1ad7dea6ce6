"""Every act at the prompt in one table: its words, its letter, an example. No word and no letter does two
things.

The letters are those of the screen. `y` is left out on purpose: it must never answer anything.
"""

from dyesession.line import fibre, looking, paper, plans, pots, readings, steps
from dyesession.line.answers import Answer, Tell, Verb
from dyesession.line.phrase import Phrase

_SPACE = 2


def _help(phrase: Phrase) -> Answer:
    return Tell(help_lines())


HELP = (Verb(("help", "words"), "?", "help", "this list", _help, timed=False),)
VERBS: tuple[Verb, ...] = (
    *readings.VERBS,
    *pots.VERBS,
    *fibre.VERBS,
    *steps.VERBS,
    *plans.VERBS,
    *paper.VERBS,
    *looking.VERBS,
    *HELP,
)
BY_WORD: dict[str, Verb] = {word: verb for verb in VERBS for word in verb.words}
BY_LETTER: dict[str, Verb] = {verb.letter: verb for verb in VERBS if verb.letter} | {".": HELP[0]}
_LONGEST = max(len(word.split()) for word in BY_WORD)

INTRODUCTION = (
    "An empty line does what NEXT says, once it is done. A question is answered with its figure or letter.",
    "A figure alone is a reading, said back first. “-” or “not now” puts a question off.",
    "“10 min ago” at the end of a line says when it happened.",
)


def find(text: str) -> tuple[Verb, str] | None:
    """The act a line begins with, by word or letter, and what follows it; None when there is none."""
    words = text.split()
    for count in range(min(_LONGEST, len(words)), 0, -1):
        said = " ".join(words[:count]).casefold()
        bare = said.rstrip(":,")
        verb = BY_WORD.get(bare) or (BY_LETTER.get(bare) if count == 1 else None)
        if verb is not None:
            rest = _after(text, count)
            return verb, f": {rest}" if said.endswith(":") else rest
    return None


def _after(text: str, count: int) -> str:
    """The text behind its first words, as it was typed."""
    parts = text.strip().split(None, count)
    return parts[count] if len(parts) > count else ""


def nearest(word: str) -> str | None:
    """The word of an act most like this one, if any is like it."""
    from difflib import get_close_matches

    return next(iter(get_close_matches(word.casefold(), BY_WORD, n=1, cutoff=0.7)), None)


def help_lines() -> tuple[str, ...]:
    """Every act, one a line."""
    rows = []
    for verb in VERBS:
        letter = f" ({verb.letter})" if verb.letter else ""
        example = "" if verb.example == verb.words[0] else f" For example: {verb.example}"
        rows.append(f"{verb.words[0]}{letter}: {verb.explained}.{example}")
    return (*INTRODUCTION, *rows)
