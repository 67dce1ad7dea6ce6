"""How a reading's ± goes through a reckoning: shares of it, sums of it, and what a prediction makes of it.

Knows nothing of readings themselves. A ± is the half-width of a 90 % band in CIEDE2000, taken to lie alike in
all directions; the shares below follow from the chi-squared law with 3 degrees of freedom (derived).
"""

import math
from collections.abc import Callable, Iterator

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.trouble import ColourError

_NINETY_IN_THREE = 2.5003  # sqrt of the 90 % point of chi-squared with 3 degrees of freedom, 6.2514
_NINETY_IN_ONE = 1.6449  # the same for one direction alone
ONE_DIRECTION = _NINETY_IN_ONE / _NINETY_IN_THREE
"""The share of a ± that stands for one direction (lightness, say) alone."""

EXPECTED = 1.0 / _NINETY_IN_ONE
"""The share of a ± in one direction that is to be expected, rather than seldom passed (root mean square)."""

WITHIN = _NINETY_IN_ONE
"""How many times an expected miss in one direction its 90 % half-width is."""


def together(*parts: float) -> float:
    """Several independent ± in one."""
    return math.sqrt(math.fsum(part * part for part in parts))


def carried(predict: Callable[[Lab], Lab], at: Lab, plus_minus: float) -> float:
    """The ± that `predict` makes out of this ± of its Lab: the mean gain over three directions.

    A step into a colour that cannot be is taken the other way; where neither can be, the gain counts as 1.
    """
    if plus_minus <= 0.0:
        return 0.0
    here = predict(at)
    gains = (_gain(predict, here, steps, plus_minus) for steps in _steps(at, plus_minus))
    return plus_minus * math.sqrt(math.fsum(gain * gain for gain in gains) / 3.0)


def _steps(at: Lab, size: float) -> Iterator[tuple[Lab, Lab]]:
    """There and back along lightness, along chroma and across it, each about `size` in CIEDE2000."""
    turn = math.radians(at.hue_deg)
    for way in (
        (1.0, 0.0, 0.0),
        (0.0, math.cos(turn), math.sin(turn)),
        (0.0, -math.sin(turn), math.cos(turn)),
    ):
        long = size * size / (de00(at, _moved(at, way, size)) or size)
        yield _moved(at, way, long), _moved(at, way, -long)


def _moved(at: Lab, way: tuple[float, float, float], by: float) -> Lab:
    return Lab(at.lightness + by * way[0], at.a + by * way[1], at.b + by * way[2])


def _gain(predict: Callable[[Lab], Lab], here: Lab, steps: tuple[Lab, Lab], size: float) -> float:
    for moved in steps:
        try:
            return de00(here, predict(moved)) / size
        except ColourError:
            continue
    return 1.0
