"""Photos made by hand: known colours and card, with noise, cast, shading, coarse yarn, stored as bytes."""

import random
from collections.abc import Callable

from dyesession.colour.cielab import Lab
from dyesession.colour.patches import Rows
from dyesession.colour.srgb import Channels, encoded, linear_of_lab


def stored(light: Channels, draw: random.Random, noise: float) -> tuple[int, int, int]:
    """Light into bytes as a camera stores them, with its noise in bytes."""
    red, green, blue = (
        round(min(max(255.0 * encoded(min(max(one, 0.0), 1.0)) + draw.gauss(0.0, noise), 0.0), 255.0))
        for one in light
    )
    return red, green, blue


class Scene:
    """One photo: a cast on each channel, an exposure, a slope of light across it, a camera's noise."""

    def __init__(self, number: int, *, noise: float = 1.5, slope: float = 0.06, cast: float = 0.2) -> None:
        self.draw = random.Random(number)
        self.noise = noise
        self.gains = [0.7 * self.draw.uniform(1.0 - cast, 1.0) for _ in range(3)]
        self.slope = self.draw.uniform(-slope, slope)

    def fibre(self, lab: Lab, *, at: float = 1.0, coarse: float = 0.15, size: int = 30) -> Rows:
        """A patch of yarn of this colour; `at` says where along the slope, `coarse` how uneven its pixels."""
        return self._patch(linear_of_lab(lab), at, size, lambda: max(0.2, self.draw.gauss(1.0, coarse)))

    def card(self, reflects: float = 0.18, *, at: float = -1.0, size: int = 30) -> Rows:
        """A patch of a plain grey card."""
        return self._patch((reflects, reflects, reflects), at, size, lambda: 1.0)

    def _patch(self, light: Channels, at: float, size: int, pixel: Callable[[], float]) -> Rows:
        rows = []
        for y in range(size):
            shade = 1.0 + self.slope * (at + 0.2 * (y / size - 0.5))
            row = []
            for _ in range(size):
                grain = shade * pixel()
                lit = (light[0] * self.gains[0] * grain, light[1] * self.gains[1] * grain,
                       light[2] * self.gains[2] * grain)  # fmt: skip
                row.append(stored(lit, self.draw, self.noise))
            rows.append(row)
        return rows


def beside(left: Rows, right: Rows) -> Rows:
    """Two patches side by side in one."""
    return [[*a, *b] for a, b in zip(left, right, strict=True)]
