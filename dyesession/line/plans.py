"""The plan changed at the prompt, and stages of a day without a recipe, as they are typed.

The words are the session's own (`session.typed`); this only says back what was understood, before it counts.
"""

from dyesession.line.answers import Answer, Guess, Verb
from dyesession.line.phrase import Phrase
from dyesession.session.typed import Hand, Meaning, understand

CHANGE = "change small skein 75 g joins because I found it"
STAGE = "stage dye in D, madder 40 g, hold 60 min"


def _said_back(meaning: Meaning, phrase: Phrase) -> Answer:
    day = phrase.scene.day
    understood = understand(meaning, phrase.text, day.state, Hand(), day.shelf)
    return Guess(understood.event, understood.echo.removeprefix("= "))


def change(phrase: Phrase) -> Answer:
    """`change alum 15 % because the water is hard`."""
    return _said_back("plan", phrase)


def stage(phrase: Phrase) -> Answer:
    """`stage dye in D, madder 40 g, hold 60 min`."""
    return _said_back("stage", phrase)


VERBS = (
    Verb(("change",), "j", CHANGE, "the plan changed: a lot joins, a weight, a dose, and why", change, timed=False),
    Verb(("stage",), "", STAGE, "another stage, on a day without a recipe or beside it", stage, timed=False),
)
