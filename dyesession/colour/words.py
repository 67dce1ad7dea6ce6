"""What is left of a difference in the trade's words: lighter, duller, bluer ... one word for each direction.

Knows nothing of dyes. "Brighter" and "duller" for chroma: lovibondcolour.com, "Delta E colour difference";
"stronger" and "weaker" are kept for depth, as a dyer means them. One word for hue, and not the one that a
colour already is: our own rule, after the warning in Westland & Ripamonti, Computational Colour Science Using
MATLAB, p. 54.
"""

import math
from dataclasses import dataclass

from dyesession.colour.ciede2000 import parts
from dyesession.colour.cielab import Lab
from dyesession.colour.spread import ONE_DIRECTION

SILENT_BELOW = 0.5  # a term smaller than this in L*, C* or H* is not worth a word: our own choice
NEAR_GREY = 5.0  # below this chroma a hue means nothing: our own choice

# By the standard's own nearest axis: the word for turning on, and for turning back.
_HUE_WORDS = (("yellower", "bluer"), ("greener", "redder"), ("bluer", "yellower"), ("redder", "greener"))
_AXIS_DEG = 90.0


@dataclass(frozen=True)
class Term:
    """One word, how much of it in L*, C* or H*, and how much the eye makes of that (CIEDE2000)."""

    word: str
    amount: float
    seen: float


def terms(standard: Lab, trial: Lab) -> tuple[Term, ...]:
    """Lightness, chroma and hue of the trial against the standard, a word for each, spoken or not."""
    apart = parts(standard, trial)
    light = trial.lightness - standard.lightness
    first = Term("lighter" if light > 0.0 else "darker", abs(light), abs(apart.lightness))
    if max(standard.chroma, trial.chroma) < NEAR_GREY:
        return first, _grey_term(standard, trial)
    chroma = trial.chroma - standard.chroma
    second = Term("brighter" if chroma > 0.0 else "duller", abs(chroma), abs(apart.chroma))
    return first, second, _hue_term(standard, trial, abs(apart.hue))


def spoken(standard: Lab, trial: Lab, plus_minus: float = 0.0) -> tuple[str, ...]:
    """The words worth saying, where the difference of the two is known to this ± (CIEDE2000)."""
    silent = plus_minus * ONE_DIRECTION
    return tuple(
        one.word for one in terms(standard, trial) if one.amount >= SILENT_BELOW and one.seen >= silent
    )


def _grey_term(standard: Lab, trial: Lab) -> Term:
    red, yellow = trial.a - standard.a, trial.b - standard.b
    if abs(red) >= abs(yellow):
        return Term("redder" if red > 0.0 else "greener", abs(red), abs(red))
    return Term("yellower" if yellow > 0.0 else "bluer", abs(yellow), abs(yellow))


def _hue_term(standard: Lab, trial: Lab, seen: float) -> Term:
    turn = math.radians(trial.hue_deg - standard.hue_deg)
    step = 2.0 * math.sqrt(standard.chroma * trial.chroma) * math.sin(math.remainder(turn, math.tau) / 2.0)
    # A grey has no hue of its own: the coloured one of the two then tells the axis.
    own = standard if standard.chroma else trial
    onward, back = _HUE_WORDS[round(own.hue_deg / _AXIS_DEG) % len(_HUE_WORDS)]
    return Term(onward if step > 0.0 else back, abs(step), seen)


def listed(words: tuple[str, ...]) -> str:
    """Words in a row: "lighter, duller and bluer"."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}" if words else ""
