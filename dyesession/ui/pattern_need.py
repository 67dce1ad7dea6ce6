"""What the pattern needs, asked in Working out: the pattern, the yarn at hand, a swatch where pieces were measured.

Reckons nothing: what was typed goes to the plan's rooms, and their lines are shown.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from dyesession.errors import UserError
from dyesession.plan import FibreLot, work_out
from dyesession.plan.yarn_need import Pattern, Swatch, YarnNeed, yarn_need
from dyesession.plan.yarn_said import yarn_lines
from dyesession.plan.yarn_text import pattern_from_text, pieces_from_text, swatch_from_text, yarn_from_text

if TYPE_CHECKING:
    from dyesession.kitchen.model import Kitchen
    from dyesession.plan.model import Plan
    from dyesession.recipe.model import Recipe

PATTERN, SWATCH, YARN = "pattern", "swatch", "yarn at hand"
EXAMPLES = {
    PATTERN: "for example 400 m, 250 g, 5 oz of double knitting, or its pieces: 2 of 50 x 60 cm",
    SWATCH: "a knitted piece, measured and weighed: 15 x 15 cm, 9 g",
    YARN: "weight and thickness: 320 g, 210 m/100 g; or 320 g aran; or 12 oz worsted 2/8",
}
USUAL_STEP_G = 1.0  # a kitchen scale's step where the kitchen lists none; common practice, no source


class PatternTalk:
    """The questions one after the other, and what has been answered."""

    def __init__(self) -> None:
        self.wanted = PATTERN
        self._pattern: Pattern | None = None
        self._swatch: Swatch | None = None

    def take(self, text: str, kitchen: Kitchen) -> YarnNeed | None:
        """An answer to what is wanted; the last one brings what the pattern needs. Raises one sentence for none."""
        if self.wanted == PATTERN:
            self._pattern = _pattern(text)
            self.wanted = SWATCH if self._pattern.asks == "square centimetres" else YARN
        elif self.wanted == SWATCH:
            self._swatch = swatch_from_text(text, _step_g(kitchen))
            self.wanted = YARN
        elif self._pattern is not None:
            return yarn_need(self._pattern, yarn_from_text(text, self._swatch))
        return None


def _pattern(text: str) -> Pattern:
    """A length, a weight, or the pieces of a garment. Raises the sentence of whichever was meant."""
    try:
        return pattern_from_text(text)
    except UserError:
        if not any(mark in text for mark in (" x ", "×", " by ")):
            raise
        return pieces_from_text(text)


def need_page(need: YarnNeed, recipe: Recipe, kitchen: Kitchen, width: int) -> str:
    """The answer as a page, with this recipe's doses for as much as is to be dyed."""
    return "\n".join(yarn_lines(need, _plan(need, recipe, kitchen), width))


def _plan(need: YarnNeed, recipe: Recipe, kitchen: Kitchen) -> Plan | None:
    kind = recipe.fibre[0] if recipe.fibre else "wool"
    try:
        return work_out(recipe, [FibreLot("yarn", kind, need.dye_g, form="yarn", air_dry=True)], kitchen)
    except UserError:
        return None  # why it cannot be worked out stands in Working out itself


def _step_g(kitchen: Kitchen) -> float:
    return min((one.resolution_g for one in kitchen.scales), default=USUAL_STEP_G)
