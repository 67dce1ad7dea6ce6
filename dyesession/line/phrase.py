"""What a typed line names: pots by letter or name, lots, steps, ingredients; and what is left is the amount.

Knows the state of the day and no clock. A letter straight after a figure is a unit, never a pot.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from dyesession.account.model import Account
from dyesession.line.home import Home
from dyesession.line.trouble import LineError
from dyesession.session import events as e
from dyesession.session.asking import Ask
from dyesession.session.session import Snapshot
from dyesession.session.state import SIEVE, Lot, State, StepState, Vessel
from dyesession.session.suggest import Suggestion, Wait
from dyesession.units import quoted

_BETWEEN = {
    "of", "in", "into", "to", "from", "the", "at", "out", "it", "with", "by", "as", "for", "on", "under",
    "is",
    "and", "has", "up", "step", "another", "more",
}  # fmt: skip
_UNIT_LETTERS = {"c": "degrees Celsius", "f": "degrees Fahrenheit", "g": "grams", "l": "litres"}
_WHY = re.compile(r"(?:\s*:\s*|\s+because\s+(?:of\s+)?|\s+since\s+)(?P<why>.+)$", re.IGNORECASE | re.DOTALL)


@dataclass(frozen=True)
class Scene:
    """What a line is typed into: the day as it stands, what comes next, the session second, and who lives here."""

    day: Snapshot[Account]
    suggestion: Suggestion
    now_s: float
    home: Home = field(default_factory=Home)

    @property
    def state(self) -> State:
        """Where the day stands."""
        return self.day.state


def pot_in_question(scene: Scene) -> str | None:
    """The vessel that what comes next is about, else the only one that holds anything."""
    suggestion, state = scene.suggestion, scene.state
    if isinstance(suggestion, Wait):
        step = state.step(suggestion.step)
        named = step.plan.vessel if step else None
    elif isinstance(suggestion, Ask | e.Added | e.Reached | e.Strained | e.Filled | e.ToppedUp | e.Lit):
        named = suggestion.vessel
    else:
        named = getattr(suggestion, "vessel", None) or _vessel_of_step(state, suggestion)
    if named and state.vessel(named):
        return named
    held = [one.name for one in state.vessels if one.bath is not None]
    return held[0] if len(held) == 1 else None


def _vessel_of_step(state: State, suggestion: Suggestion) -> str | None:
    name = getattr(suggestion, "step", "") or str(getattr(suggestion, "countdown", "")).rpartition("/")[0]
    step = state.step(name)
    return step.plan.vessel if step else None


class Phrase:
    """What follows a verb. Each method takes what it names out of the text; `rest` is what remains."""

    def __init__(self, text: str, scene: Scene, why: bool = False) -> None:
        self.scene, self.state = scene, scene.state
        self.text, self.why = text.strip(), ""
        if why and (found := _WHY.search(" " + self.text)) is not None:
            self.why = found["why"].strip()
            self.text = (" " + self.text)[: found.start()].strip()

    @property
    def rest(self) -> str:
        """What nobody has taken, without small words at its ends."""
        words = self.text.replace("=", " ").strip(" ,;:").split()
        while words and words[0].casefold().strip(",;:") in _BETWEEN:
            del words[0]
        while words and words[-1].casefold().strip(",;:") in _BETWEEN:
            del words[-1]
        return " ".join(words).strip(" ,;:")

    def _take(self, names: Iterable[str]) -> str | None:
        """Take the name that stands first in the text, the longest of those that stand there."""
        found: list[tuple[int, int, str]] = []
        for name in names:
            if name and (match := re.search(rf"(?<!\w){re.escape(name)}(?!\w)", self.text, re.IGNORECASE)):
                found.append((match.start(), -len(name), name))
        if not found:
            return None
        start, minus_length, name = min(found)
        self.text = f"{self.text[:start]} {self.text[start - minus_length :]}".strip()
        return name

    def pot(self) -> str | None:
        """The vessel named, by its letter or its name; None when there is none."""
        letter = self._letter_place()
        named = self._name_place()
        if letter is not None and (named is None or letter[0] < named[0]):
            place = letter
        elif named is not None:
            place = named
        else:
            return None
        start, end, vessel = place
        self.text = f"{self.text[:start]} {self.text[end:]}".strip()
        return vessel

    def _name_place(self) -> tuple[int, int, str] | None:
        places = [
            (match.start(), match.end(), one.name)
            for one in self.state.vessels
            if (match := re.search(rf"(?<!\w){re.escape(one.name)}(?!\w)", self.text, re.IGNORECASE))
        ]
        return min(places, key=lambda one: (one[0], -one[1]), default=None)

    def _letter_place(self) -> tuple[int, int, str] | None:
        letters = {one.letter.casefold(): one for one in self.state.vessels}
        for match in re.finditer(r"(?<![\w'’])[^\W\d_](?![\w'’])", self.text):
            vessel = letters.get(match.group().casefold())
            if vessel is not None and not self._is_unit(match):
                return match.start(), match.end(), vessel.name
        return None

    def _is_unit(self, match: re.Match[str]) -> bool:
        """Whether a letter follows a figure and is a unit; refused where it may be either."""
        figure = re.search(r"[\d¼½¾⅓⅔]\s*°?\s*$", self.text[: match.start()])
        return figure is not None and match.group().casefold() in _UNIT_LETTERS

    def pot_or_guess(self, example: str, *, holding: bool = False) -> str:
        """The vessel named, else the one in question (`holding`: if it holds a bath). Raises `LineError`."""
        named = self.pot()
        if named is not None:
            return named
        self.refuse_unit_letter()
        guess = pot_in_question(self.scene)
        if guess is None or (holding and not holds_liquor(self.state, guess)):
            raise LineError(f"say which pot ({pots_in_words(self.state)}), for example “{example}”")
        return guess

    def refuse_unit_letter(self) -> None:
        """A `C` after a figure may be the pot C: where both would do, nobody guesses which."""
        letters = {one.letter.casefold(): one for one in self.state.vessels}
        found = re.search(r"(\S*\d\S*)\s*([cf])$", self.rest.casefold())
        vessel, meant = letters.get(found[2]) if found else None, pot_in_question(self.scene)
        if found is None or vessel is None or vessel.name == meant:
            return
        other = self.state.vessel(meant)
        first = f"“temperature {other.letter} {found[1]}” or " if other else ""
        raise LineError(
            f"“{self.rest}” may mean {_UNIT_LETTERS[found[2]]} or the pot {vessel.letter}: "
            f"type {first}“temperature {vessel.letter} {found[1]}”"
        )

    def need_pot(self, example: str) -> str:
        """The vessel named. Raises `LineError` when there is none."""
        named = self.pot()
        if named is None:
            raise LineError(f"say which pot ({pots_in_words(self.state)}), for example “{example}”")
        return named

    def pot_or_new(self, example: str) -> str:
        """The vessel named, or one that comes into use now: `new bucket`. Raises `LineError` when there is
        none.
        """
        found = re.search(
            r"(?<!\w)new\s+(?P<name>[^\W\d_][^\d,;:]*?)\s*(?=\d|[,;:]|$)", self.text, re.IGNORECASE
        )
        if found is None:
            return self.need_pot(example)
        self.text = f"{self.text[: found.start()]} {self.text[found.end() :]}".strip()
        return " ".join(found["name"].split())

    def lot(self) -> Lot | None:
        """The lot of fibre or snippet named."""
        name = self._take(one.name for one in self.state.lots)
        return self.state.lot(name) if name else None

    def snippet(self) -> str | None:
        """A snippet's name, used today or not yet."""
        found = re.search(r"(?<!\w)snippet\s+\d+(?!\w)", self.text, re.IGNORECASE)
        if found is None:
            return None
        self.text = f"{self.text[: found.start()]} {self.text[found.end() :]}".strip()
        return " ".join(found.group().casefold().split())

    def ingredient(self) -> str | None:
        """The ingredient of the recipe named."""
        known = [name for name, _ in self.state.substances]
        known += [one.name for one in self.state.dyestuffs]
        known += [one.ingredient for step in self.state.steps for one in step.plan.add]
        return self._take(dict.fromkeys(known))

    def step(self) -> StepState | None:
        """The step named, or the one under way in a pot named by its letter."""
        name = self._take(one.name for one in self.state.steps)
        if name is not None:
            return self.state.step(name)
        vessel = self.pot()
        return self.state.running_in(vessel) if vessel else None

    def step_or_guess(self, statuses: tuple[str, ...], example: str) -> StepState:
        """The step named, else the only one that stands so. Raises `LineError` when neither is plain."""
        named = self.step()
        if named is not None:
            return named
        fitting = [one for one in self.state.steps if one.status in statuses]
        if len(fitting) == 1:
            return fitting[0]
        asked = step_in_question(self.scene)
        if asked is not None and asked in fitting:
            return asked
        if not fitting:
            raise LineError(f"no step is {' or '.join(statuses)} now; “steps” says how each one stands")
        which = ", ".join(one.name for one in fitting)
        raise LineError(f"say which step ({which}), for example “{example}”")


def step_in_question(scene: Scene) -> StepState | None:
    """The step that what comes next is about."""
    suggestion, state = scene.suggestion, scene.state
    named = state.step(str(getattr(suggestion, "step", "")))
    if named is not None:
        return named
    vessel = pot_in_question(scene)
    return state.running_in(vessel) if vessel else None


def holds_liquor(state: State, name: str) -> bool:
    """Whether there is a bath in that vessel."""
    vessel = state.vessel(name)
    return vessel is not None and vessel.bath is not None


def pots_in_words(state: State) -> str:
    """All pots with their letters: "A wash pot, B mordant pot"."""
    return ", ".join(f"{one.letter} {one.name}" for one in state.vessels) or "none is in use yet"


def pot_of_lot(state: State, lot: Lot) -> Vessel | None:
    """The vessel a lot is in."""
    return state.vessel(lot.place)


def in_sieve(state: State) -> bool:
    """Whether strained dyestuff waits to be extracted again."""
    return any(one.place == SIEVE for one in state.dyestuffs)


def no_more(phrase: Phrase, example: str) -> None:
    """Refuse words that nobody took: a misread line must not act."""
    if left := phrase.rest:
        raise LineError(f"{quoted(left)} is not understood here; expected for example “{example}”")
