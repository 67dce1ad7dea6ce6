"""A reading as one line of text, for a log or a list: the Lab, its light, its ±, dry or wet, what read it.

Knows nothing of files. `read_colour` gives back the reading that was written, to a tenth of a unit.
"""

from dyesession.colour.cielab import Lab
from dyesession.colour.readings import Reading

_DIGITS = 1  # a tenth of a unit is finer than any reading here


def written(reading: Reading) -> str:
    """For example "lab(42.1 45.3 29.8) D65/2 ± 4.5 dry, photo with card". Never a hex: a screen's are coarser."""
    viewing = f"{reading.viewing.illuminant}/{reading.viewing.observer_deg}"
    state = "wet" if reading.wet else "dry"
    by = "" if reading.by == "typed" else f", {reading.by}"
    return f"{lab_text(reading.lab, _DIGITS)} {viewing} ± {reading.plus_minus:.1f} {state}{by}"


def lab_text(lab: Lab, digits: int = 0) -> str:
    """For example "lab(42 45 30)"; whole figures unless said."""
    return "lab(" + " ".join(_figure(part, digits) for part in lab) + ")"


def _figure(value: float, digits: int) -> str:
    text = f"{value:.{digits}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text
