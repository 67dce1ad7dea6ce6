"""Numbers as a plan says them: rounded once, with their unit. Knows nothing of what they mean."""

import math
from collections.abc import Sequence

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
ML_PER_L = 1000.0
SMALL_L = 1.0  # below this a jug is read in millilitres


def letter_of(number: int) -> str:
    """A vessel's letter by its number from nought: A to Z, then A2 and on."""
    letter = LETTERS[number % len(LETTERS)]
    return letter if number < len(LETTERS) else f"{letter}{number // len(LETTERS) + 1}"


def to_step(mass_g: float, step_g: float) -> str:
    """Grams as a scale of this display step would show them: `18 g` on a 1 g scale."""
    steps = max(1, round(mass_g / step_g)) if mass_g > 0 else 0
    return f"{steps * step_g:.{max(0, -math.floor(math.log10(step_g)))}f} g"


def plus_minus(half_width_g: float) -> str:
    """Half-width of a band in grams, to two figures: `± 1.3 g`."""
    return f"± {_figures(half_width_g, 2)} g"


def percent(share: float) -> str:
    """Write a share as a whole per cent: `13 %`."""
    return f"{100 * share:.0f} %"


def litres(volume_l: float) -> str:
    """Litres to one decimal; below one, millilitres to the nearest five, or one under fifty: `120 mL`."""
    if round(volume_l, 3) >= SMALL_L:
        return f"{_trimmed(volume_l, 1)} L"
    ml = volume_l * ML_PER_L
    step = 5 if ml >= 50 else 1
    return f"{step * round(ml / step)} mL"


def and_list(parts: Sequence[str]) -> str:
    """Join words as a person would: `a`, `a and b`, `a, b and c`."""
    if len(parts) < 2:
        return "".join(parts)
    return ", ".join(parts[:-1]) + " and " + parts[-1]


def clock(minutes: float) -> str:
    """Minutes as hours and minutes: `3 h 05`."""
    hours, left = divmod(round(minutes), 60)
    return f"{hours} h {left:02d}"


def _trimmed(value: float, decimals: int) -> str:
    text = f"{value:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _figures(value: float, count: int) -> str:
    """Round to so many figures, without an exponent."""
    if value <= 0:
        return "0"
    decimals = count - 1 - math.floor(math.log10(value))
    return f"{round(value, decimals):.{max(0, decimals)}f}"
