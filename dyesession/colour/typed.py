"""A colour as people type it, into a reading: `lab(42 45 30) D65/10 ± 1.5 dry, colorimeter`, `lch(42 54 34)`, `#a63e36`.

Knows nothing of files. Syntax of the functions: CSS Color 4 (w3.org/TR/css-color-4), but `lab()` and `lch()`
mean the light a dyer states, D65 and 2 degrees unless said, and never CSS's D50.
"""

import re
from dataclasses import dataclass, replace

from dyesession.colour.cielab import Lab, lab_of_lch
from dyesession.colour.readings import PLUS_MINUS, Reading
from dyesession.colour.screen import lab_of_css
from dyesession.colour.trouble import NoIlluminant, UnreadableColour, quoted
from dyesession.colour.viewing import D65_2, ILLUMINANTS, Viewing

_NUMBER = r"[-+]?(?:\d+(?:[.,]\d+)?|[.,]\d+)"
_FUNCTION = re.compile(r"^(lab|lch)\(\s*(.+?)\s*\)$", re.IGNORECASE)
_BEHIND = re.compile(r"^(?:lab|lch)\([^)]*\)\s*(.+)$", re.IGNORECASE)
_CHANNEL = re.compile(rf"^(?:({_NUMBER})(%|deg|°)?|none)$", re.IGNORECASE)
_PLUS_MINUS = re.compile(rf"(?:±|\+\s?/?\s?-)\s*({_NUMBER})$")
_STATE = re.compile(r"\b(wet|dry)$", re.IGNORECASE)
_BY = re.compile(rf"\b(?:by )?({'|'.join(sorted(PLUS_MINUS, key=len, reverse=True))})$", re.IGNORECASE)
_LIGHTS = "|".join(sorted(ILLUMINANTS, key=len, reverse=True))
_VIEWING = re.compile(rf"\b({_LIGHTS})(?:\s*[/, ]\s*(10|2)\s*(?:°|deg(?:rees?)?)?)?$", re.IGNORECASE)
_HUNDRED_PERCENT = {"lab": (100.0, 125.0, 125.0), "lch": (100.0, 150.0, 360.0)}  # CSS Color 4
_EXAMPLE = 'for example "lab(42 45 30)" or "lab(42 45 30) D65/10"'


@dataclass(frozen=True)
class _Tail:
    """What stood behind the colour."""

    viewing: Viewing | None = None
    plus_minus: float | None = None
    wet: bool = False
    by: str = ""


def read_colour(text: str, viewing: Viewing | None = D65_2) -> Reading:
    """The reading a text stands for.

    `viewing` is meant where a Lab or LCh states none; pass None where it must state one, and `NoIlluminant`
    is raised. Raises `UnreadableColour` for what is no colour.
    """
    core, tail = _without_tail(text.strip())
    found = _FUNCTION.match(core)
    if not found and (behind := _BEHIND.match(core)):
        raise UnreadableColour(
            f"{quoted(text)} has {quoted(behind[1])} behind the colour; expected a light and an "
            'observer, a ±, wet or dry, for example "lab(42 45 30) D65/10 ± 1.5 dry".'
        )
    if found:
        return _from_function(text, found[1].lower(), found[2], tail, viewing)
    return _from_css(text, core, tail)


def _from_function(text: str, name: str, inside: str, tail: _Tail, viewing: Viewing | None) -> Reading:
    first, second, third = _channels(text, name, inside)
    meant = tail.viewing or viewing
    if meant is None:
        raise NoIlluminant(
            f"{quoted(text)} does not say for which light and observer it was read; expected both, "
            'for example "lab(42 45 30) D65/10".'
        )
    lab = Lab(first, second, third) if name == "lab" else lab_of_lch(first, second, third)
    return _reading(lab, "typed", "typed", meant, tail)


def _from_css(text: str, core: str, tail: _Tail) -> Reading:
    if tail.viewing not in (None, D65_2):
        raise UnreadableColour(
            f"{quoted(text)} states {tail.viewing}, but a screen's colour is always D65/2°; leave it "
            'away, for example "#a63e36".'
        )
    return _reading(lab_of_css(core), "matched", "eye", D65_2, tail)


def _reading(lab: Lab, how: str, by: str, viewing: Viewing, tail: _Tail) -> Reading:
    if tail.by and tail.by != by:
        by, how = tail.by, "matched" if tail.by == "eye" else how if tail.by == "typed" else "read"
    plus_minus = PLUS_MINUS[by] if tail.plus_minus is None else tail.plus_minus
    return Reading(lab, plus_minus, how=how, by=by, wet=tail.wet, viewing=viewing)


def _channels(text: str, name: str, inside: str) -> tuple[float, float, float]:
    if "/" in inside:
        raise UnreadableColour(
            f"{quoted(text)} is partly clear, and cloth is not; expected three figures, {_EXAMPLE}."
        )
    parts = [one for one in re.split(r"[\s;]+|,(?=\s)", inside) if one]
    if len(parts) == 1:
        parts = parts[0].split(",")
    found = [_CHANNEL.match(part) for part in parts]
    if len(parts) != 3 or not all(found):
        raise UnreadableColour(
            f"{quoted(text)} is no colour; expected {name}() with three figures, {_EXAMPLE}."
        )
    first, second, third = (
        _value(one, full) for one, full in zip(found, _HUNDRED_PERCENT[name], strict=True) if one
    )
    return first, second, third


def _value(found: re.Match[str], full: float) -> float:
    if found[1] is None:  # the CSS word "none"
        return 0.0
    number = _number(found[1])
    return number * full / 100.0 if found[2] == "%" else number


def _number(text: str) -> float:
    return float(text.replace(",", "."))


def _without_tail(text: str) -> tuple[str, _Tail]:
    """Take wet or dry, a ±, a light with its observer, and what read it off the end, in any order."""
    tail = _Tail()
    while True:
        if state := _STATE.search(text):
            text, tail = text[: state.start()], replace(tail, wet=state[1].lower() == "wet")
        elif by := _BY.search(text):
            text, tail = text[: by.start()], replace(tail, by=by[1].lower())
        elif spread := _PLUS_MINUS.search(text):
            text, tail = text[: spread.start()], replace(tail, plus_minus=_number(spread[1]))
        elif light := _VIEWING.search(text):
            viewing = Viewing(light[1].upper(), int(light[2] or D65_2.observer_deg))
            text, tail = text[: light.start()], replace(tail, viewing=viewing)
        else:
            return text.strip(), tail
        text = text.rstrip(" ,")
