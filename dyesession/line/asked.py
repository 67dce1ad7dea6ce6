"""What a typed line says to a question of the session's, and a line as it was meant. Pure; records nothing."""

import re

from dyesession.errors import UserError
from dyesession.line import amounts, lines
from dyesession.line.phrase import Phrase, Scene
from dyesession.line.trouble import LineError
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.state import State
from dyesession.session.words import pot
from dyesession.units import quoted, show_temperature

LONGEST_LINE = 1000  # characters heard of one line; our own choice, no source
FIGURE = re.compile(r"[.,]?[0-9¼½¾⅓⅔⅛⅜⅝⅞]")


def answer(ask: Ask, text: str, scene: Scene) -> e.Confirmed | None:
    """The answer a line gives; None where it is about something else. Raises `LineError` for another pot."""
    return _pot(ask, text, scene.day.state) if ask.kind == "pot" else _temperature(ask, text, scene)


def _pot(ask: Ask, text: str, state: State) -> e.Confirmed | None:
    for vessel in state.vessels:
        if text.casefold() in (vessel.letter.casefold(), vessel.name.casefold()):
            if vessel.letter != ask.expected:
                raise LineError(f"{vessel.letter} is the {vessel.name}, which is not the pot meant: look again")
            return ask.answered(letter=vessel.letter)
    return None


def _temperature(ask: Ask, text: str, scene: Scene) -> e.Confirmed | None:
    phrase = Phrase(text, scene)
    named = phrase.pot()
    if named not in (None, ask.vessel) or not phrase.rest:
        return None
    try:
        typed = amounts.any_sort(phrase.rest) or amounts.temperature(phrase.rest)
    except UserError:
        if FIGURE.match(phrase.rest):
            raise
        return None
    if typed.sort != "temperature":
        return None
    if typed.value < 0.0:
        raise LineError(f"{quoted(text)} is below nought; expected how warm the pot is, for example 72")
    return ask.answered(temperature_c=typed.value)


def said_back(ask: Ask, given: e.Confirmed, state: State) -> str:
    """A temperature as it was understood: "A, the mordant pot: 72 °C."."""
    assert given.temperature_c is not None
    return f"{pot(state, ask.vessel)}: {show_temperature(given.temperature_c)}."


def is_the_reading(command: e.Event, ask: Ask) -> bool:
    """Whether an act is itself the reading that a question asks for."""
    return (
        isinstance(command, e.Read)
        and ask.kind == "temperature"
        and command.vessel == ask.vessel
        and command.temperature_c is not None
        and command.temperature_c >= 0.0
    )


def ended(sentence: str) -> str:
    """A sentence with its full stop."""
    return sentence if sentence.endswith((".", "?", "!", "”.")) else f"{sentence}."


def clean(text: str) -> str:
    """A line as it was meant: bounded, without control characters or halves of characters."""
    whole = text[:LONGEST_LINE].encode("utf-8", "replace").decode()
    return " ".join(lines.plain(whole).split())
