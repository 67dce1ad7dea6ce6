"""Between Lab and what a screen or a style sheet writes: CSS colours in, a hex out.

Knows nothing of readings. Uses coloraide (loaded on first use) for the syntax of CSS Color 4, the conversion
and the fit of colours a screen cannot show. Its `lab-d65` is CIELAB for D65 and 2 degrees; CSS's own `lab()`
would be D50 and is therefore not read here.
"""

from dataclasses import dataclass

from dyesession.colour.cielab import Lab
from dyesession.colour.rebuilt import rebuilt, seen
from dyesession.colour.trouble import UnreadableColour, quoted
from dyesession.colour.viewing import D65_2, Viewing

_D65_LAB = "lab-d65"
_FIT = "oklch-chroma"  # the way CSS Color 4 fits: chroma down, lightness and hue kept
_LONGEST = 200


@dataclass(frozen=True)
class Screen:
    """A colour for a screen as `#rrggbb`; `exact` is False when a screen cannot show the colour itself."""

    hex: str
    exact: bool


def lab_of_css(text: str) -> Lab:
    """Lab (D65, 2 degrees) of a CSS colour: `#a63e36`, `rgb(166 62 54)`, `oklch(...)`, a CSS name.

    Raises `UnreadableColour` for anything else, and for a colour that is partly clear.
    """
    from coloraide import Color

    try:
        found = Color(text.strip()[:_LONGEST])
        whole = found.alpha(nans=False)
        parts = found.convert(_D65_LAB).coords(nans=False)
    except (ValueError, TypeError, ArithmeticError) as trouble:
        raise _unreadable(text) from trouble
    if whole != 1.0:
        raise UnreadableColour(
            f"{quoted(text)} is partly clear, and cloth is not; expected a whole one, for example #a63e36."
        )
    return Lab(*(float(part) for part in parts))


def _unreadable(text: str) -> UnreadableColour:
    return UnreadableColour(
        f"{quoted(text)} is no colour that can be read; expected a hex, another CSS colour, lab() or "
        'lch(), for example "#a63e36" or "lab(42 45 30)".'
    )


def screen_of(lab: Lab, viewing: Viewing = D65_2) -> Screen:
    """How a screen would show a Lab. One read for another light is first seen again for D65 and 2 degrees.

    Raises what `rebuilt` raises when that cannot be done.
    """
    from coloraide import Color

    shown = lab if viewing == D65_2 else seen(rebuilt(lab, viewing), D65_2)
    colour = Color(_D65_LAB, [*shown]).convert("srgb")
    exact = bool(colour.in_gamut())
    return Screen(colour.fit(method=_FIT).to_string(hex=True), exact)
