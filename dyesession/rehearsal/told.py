"""What a looker-on is told of a day as it goes: each fact in words, and what a kind of act is for when it is first done.

Knows no screens: the tour prints or shows it.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from dyesession.rehearsal.under_way import Asked, Did
from dyesession.session.state import State
from dyesession.session.words import happened_words

ASKED = "asked"
# For the first act of each kind. One or two sentences, short enough for two lines of a small window.
FIRST_TIME: Mapping[str, str] = {
    "begun": "Space does what NEXT says. Fibre and liquor have a lane each; a filled dot is under way.",
    "filled": "Pots are drawn as pots, filled to their waterline.",
    "weighed": "What the scale shows goes into the log, not what was planned.",
    "added": "CARE says what dusts, burns or must never meet, before it is done.",
    "lit": "The ring is on. A hold begins when its temperature is reached, not before.",
    "reached": "A reading is typed: t, the figure, enter. Each one is optional; each one makes the estimates surer.",
    "read": "Here the pot is looked at half way. Left out, that costs nothing but a wider ±.",
    "acknowledged": "A clock that has run out calls until it is seen. Space sees it.",
    "extended": "Still too hot for wool: e gives a clock longer.",
    ASKED: "A few questions hang on a hazard. Space cannot pass them; the pots never wait for anything else.",
    "strained": "Strained into the dye pot. One sentence counts its colour in grams of your own dyestuff, with a ±.",
    "refreshed": "Fresh water on the same dyestuff: what that would still bring was said before it was done.",
    "lifted": "Lifted and weighed wet: what the fibre carries out of a bath is counted too.",
    "dipped": "d dips a snippet to judge the shade by; d lifts it again.",
    "on-shade": "The eye decides, not the clock: o says that the shade is reached.",
    "discarded": "Emptied as its sheet of care says; that, too, is in the log.",
    "kept": "A bath worth keeping gets a label and goes to the shelf, with what it would still dye.",
    "closed": "The day is closed. Its log alone can repeat the colour next year.",
}


@dataclass(frozen=True)
class Told:
    """One act in words; `what_for` is there the first time only."""

    what: str
    what_for: str = ""


@dataclass
class Teller:
    """Tells acts one after the other, and remembers which kinds have been explained."""

    _explained: set[str] = field(default_factory=set)

    def tell(self, move: Asked | Did, state: State) -> Told:
        """What was asked or done, in the words of the log; `state` is the one it led to."""
        kind = move.fact.kind if isinstance(move, Did) else ASKED
        what = happened_words(state, move.fact) if isinstance(move, Did) else f"Asked: {move.question}"
        first = kind not in self._explained
        self._explained.add(kind)
        return Told(what, FIRST_TIME.get(kind, "") if first else "")
