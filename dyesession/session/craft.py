"""One line of craft for each stage: what the hand should know beside the figures. Pure; no hazard stands
here.

Hazards are `care`'s. Each line says where it comes from.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from dyesession.plan.model import PlannedStage

PRACTICE = "common practice, no source"


@dataclass(frozen=True)
class Craft:
    """A line of craft and its source."""

    text: str
    source: str


CRAFT: Mapping[PlannedStage, Craft] = {
    "scour": Craft("Tag lots with knotted thread: knots survive the pot, paper does not.", PRACTICE),
    "wet": Craft("Wet out until it sinks by itself: what is dry inside dyes patchy.", PRACTICE),
    "mordant": Craft(
        "Turn it, never stir; if there is time, let it cool in the bath.",
        "Mairet, A Book on Vegetable Dyes, 1916, ch. III",
    ),
    "soak": Craft("Bag the dyestuff from the start: then there is little to strain.", PRACTICE),
    "extract": Craft("Bag the dyestuff from the start: then there is little to strain.", PRACTICE),
    "strain": Craft("Let it settle, pour off the clear; strain by cloth: paper clogs.", PRACTICE),
    "dye": Craft(
        "Begin lukewarm, rise slowly; wool takes more as it cools in the bath.",
        "Beech, The Dyeing of Woollen Fabrics, 1902, pp. 80-81",
    ),
    "modify": Craft(
        "Iron last and little, in its own pot, the fibre out as it goes in.",
        "Mairet, A Book on Vegetable Dyes, 1916, ch. III",
    ),
    "rinse": Craft(
        "Rinse near the bath's own heat; many small rinses beat one large.",
        "Mairet, Vegetable Dyes, 1938, ch. I; the arithmetic of mixing",
    ),
    "rest": Craft("Keep it damp and evenly covered: what dries first takes unevenly.", PRACTICE),
    "dry": Craft("In the shade; judge the colour only when it is quite dry.", PRACTICE),
}


def craft_line(stage: PlannedStage) -> str:
    """The stage's line of craft with its source behind it."""
    found = CRAFT[stage]
    return f"{found.text} ({found.source})"
