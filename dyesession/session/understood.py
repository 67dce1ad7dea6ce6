"""What a typed text was understood as, and the one error of a text that says nothing. Pure."""

from dataclasses import dataclass

from dyesession.errors import UserError
from dyesession.session import events as e
from dyesession.session.state import State


class NotUnderstood(UserError):
    """What was typed does not say what was asked for."""


@dataclass(frozen=True)
class Understood:
    """The fact a text means, and how it is said back: "= 70.9 g alum"."""

    event: e.Event
    echo: str


@dataclass(frozen=True)
class Hand:
    """What the dyer has in hand: the pot, the step and the ingredient that a bare text is about."""

    vessel: str = ""
    step: str = ""
    ingredient: str = ""
    lot: str = ""


def pot_named(text: str, state: State) -> str:
    """The vessel a text names, by its letter or its name in any case; else the text itself, for a new one."""
    spoken = " ".join(text.split())
    for vessel in state.vessels:
        if spoken.casefold() in (vessel.name.casefold(), vessel.letter.casefold()):
            return vessel.name
    if len(spoken) == 1:
        pots = ", ".join(f"{one.letter} {one.name}" for one in state.vessels) or "none yet"
        raise NotUnderstood(
            f'No pot has the letter "{spoken}"; there are {pots}. For example in the dye pot.'
        )
    return spoken.removeprefix("the ").strip() or spoken
