"""The shape of one reminder. Its words and when it applies stand beside each hazard, not here."""

from dataclasses import dataclass

WORST, GRAVE, PLAIN, SLIGHT = 4, 3, 2, 1
"""Severity: can kill or must not be done; can injure; can hurt or spoil; good to know."""

LONGEST_LINE = 100
"""Characters a reminder may have, so that it stands on one line or a little more."""

PRACTICE = "common practice, no source"
MEMORY = "from memory, unverified"


@dataclass(frozen=True, slots=True)
class Reminder:
    """One line of care: what raised it, what to say, how grave it is (1 to 4), and who says so.

    `private` tells that its words come from who lives in the house: shown, never written to a log.
    """

    trigger: str
    text: str
    severity: int
    hazard: str
    source: str
    private: bool = False


def shortened(text: str, longest: int = LONGEST_LINE) -> str:
    """As many whole sentences as fit in `longest` characters; always the first."""
    while len(text) > longest and ". " in text:
        text = text.rsplit(". ", 1)[0] + "."
    return text
