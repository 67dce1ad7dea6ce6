"""What went wrong? For each trouble its usual causes, what the log shows of them, and the mend, with sources.

Pure. A cause the log shows stands first, then those it says nothing of, then those it speaks against. A cause
is never proved by a log: the words say what is seen, not who was at fault.
"""

import textwrap
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from typing import Any

from dyesession.daybook.causes_colour import CAUSES as OF_COLOUR
from dyesession.daybook.causes_fibre import CAUSES as OF_FIBRE
from dyesession.daybook.traces import Traces, traces
from dyesession.daybook.usual import SYMPTOMS, Standing, Symptom, Usual
from dyesession.errors import UserError
from dyesession.session.opening import LoggedDay
from dyesession.units import quoted

__all__ = [
    "SYMPTOMS",
    "WORDS",
    "Cause",
    "NoSuchTrouble",
    "Symptom",
    "Trouble",
    "symptom_named",
    "trouble_lines",
    "troubles_as_json",
    "what_went_wrong",
]

# Words people use for a trouble, by the one it is called here.
WORDS: Mapping[str, Symptom] = {
    "streaks": "streaks", "streaky": "streaks", "uneven": "streaks", "patchy": "streaks",
    "felting": "felting", "felted": "felting", "shrunk": "felting", "matted": "felting",
    "stickiness": "stickiness", "sticky": "stickiness", "harsh": "stickiness", "tacky": "stickiness",
    "bleeding": "bleeding", "bleeds": "bleeding", "runs": "bleeding", "rubs off": "bleeding",
    "rubs": "bleeding", "crocking": "bleeding",
    "too pale": "too pale", "pale": "too pale", "weak": "too pale", "light": "too pale",
    "too dull": "too dull", "dull": "too dull", "brown": "too dull", "muddy": "too dull",
    "wrong hue": "wrong hue", "hue": "wrong hue", "wrong colour": "wrong hue", "colour": "wrong hue",
}  # fmt: skip

ORDER: tuple[Standing, ...] = ("shown", "not said", "spoken against")


class NoSuchTrouble(UserError):
    """A trouble that is not among those known here."""


@dataclass(frozen=True)
class Cause:
    """A cause as it stands for one day."""

    why: str
    source: str
    standing: Standing
    seen: str
    mend: str
    mend_source: str


@dataclass(frozen=True)
class Trouble:
    """One trouble and its causes, the ones the log shows first."""

    what: Symptom
    causes: tuple[Cause, ...]


def symptom_named(text: str) -> Symptom:
    """The trouble a text names: `streaky`, `too pale`, `rubs off`. Raises `NoSuchTrouble`."""
    spoken = " ".join(text.casefold().replace("-", " ").split())
    found = WORDS.get(spoken) or WORDS.get(spoken.removeprefix("too "))
    if found is None:
        known = ", ".join(SYMPTOMS)
        raise NoSuchTrouble(
            f"{quoted(text)} is no trouble known here; expected one of {known}, for example streaks."
        )
    return found


def what_went_wrong(day: LoggedDay, what: Symptom | None = None) -> tuple[Trouble, ...]:
    """The causes of one trouble, or of all, beside what this day's log shows of each."""
    usual = {**OF_FIBRE, **OF_COLOUR}
    found = traces(day)
    chosen = SYMPTOMS if what is None else (what,)
    return tuple(Trouble(one, _causes(usual[one], found)) for one in chosen)


def _causes(usual: tuple[Usual, ...], found: Traces) -> tuple[Cause, ...]:
    made = []
    for one in usual:
        seen = one.look(found)
        if seen is not None:  # None: nothing of the kind could have been on this day
            made.append(Cause(one.why, one.source, seen.standing, seen.text, one.mend, one.mend_source))
    return tuple(sorted(made, key=lambda one: ORDER.index(one.standing)))


def troubles_as_json(found: tuple[Trouble, ...]) -> list[dict[str, Any]]:
    """The troubles as plain tables."""
    return [asdict(one) for one in found]


NOTHING_SHOWN = "The log shows none of the usual causes"


def trouble_lines(found: tuple[Trouble, ...], width: int) -> list[str]:
    """The troubles as plain lines no wider than that; of several, only what the log shows."""
    if len(found) == 1:
        return _one_trouble(found[0], width)
    lines: list[str] = []
    for trouble in found:
        seen = [one for one in trouble.causes if one.standing == "shown"]
        if seen:
            lines += [*([""] if lines else []), trouble.what]
            lines += [line for one in seen for line in _cause_lines(one, width)]
    hint = "name the trouble to see them all, for example streaks."
    return lines or _wrapped(f"{NOTHING_SHOWN}; {hint}", width, "")


def _one_trouble(trouble: Trouble, width: int) -> list[str]:
    lines = [trouble.what, *(line for one in trouble.causes for line in _cause_lines(one, width))]
    if all(one.standing == "spoken against" for one in trouble.causes):
        lines += _wrapped(f"{NOTHING_SHOWN} of this.", width, "  ")
    return lines


def _cause_lines(cause: Cause, width: int) -> list[str]:
    if cause.standing == "spoken against":
        return _wrapped(f"- hardly: {cause.why}. {cause.seen}", width, "  ")
    return [
        *_wrapped(f"- {cause.why}. ({cause.source})", width, "  "),
        *_wrapped(cause.seen or "The log does not say.", width, "    "),
        *_wrapped(f"Mend: {cause.mend} ({cause.mend_source})", width, "    "),
    ]


def _wrapped(text: str, width: int, indent: str) -> list[str]:
    return textwrap.wrap(text, width, initial_indent=indent, subsequent_indent=indent)
