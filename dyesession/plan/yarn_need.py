"""Whether the yarn at hand is enough for a pattern: by length, by weight, or by a swatch; and what then to
dye.

Pure; knows no recipe. Every figure has a half-width, two standard deviations or the nearest to it. Counts and
lengths are `dyeing.yarn`, weighings `dyeing.scales`; the shares below are common practice, no source.
"""

import math
from dataclasses import dataclass
from typing import Literal

from dyesession.dyeing.scales import COVERAGE, weighing_sd_g
from dyesession.plan.trouble import PlanError
from dyesession.units import show_figure, show_mass

# How far one knitter's use lies from another's: tension, joins, what is left at the ends. Common practice, no
# source.
KNITTING_SHARE = 0.10
# A weight told without a thickness holds only for yarn as thick as the pattern's. Common practice, no source.
THICKNESS_UNKNOWN_SHARE = 0.20
# A swatch is measured to about 3 mm each way, and a garment has seams and ribs it does not have. Common
# practice, no source.
EDGE_CM = 0.3
SWATCH_SHARE = 0.07
SMALLEST_SWATCH_CM = 5.0  # below this the edges are most of it: common practice, no source
METRES_PER_100_G = 100.0

Verdict = Literal["enough", "short", "touch and go"]


@dataclass(frozen=True)
class Figure:
    """An amount and its half-width, in the same unit."""

    aim: float
    plus_minus: float

    @property
    def low(self) -> float:
        """The lower end, never below nothing."""
        return max(0.0, self.aim - self.plus_minus)

    @property
    def high(self) -> float:
        """The upper end."""
        return self.aim + self.plus_minus


@dataclass(frozen=True)
class Thickness:
    """How thick a yarn is: metres in 100 g, the share that figure may be off by, its words and its source."""

    metres_per_100_g: float
    share: float
    words: str
    source: str


@dataclass(frozen=True)
class Swatch:
    """A knitted piece of the yarn at hand: its sides in centimetres, grams, and the step of the scale."""

    width_cm: float
    height_cm: float
    mass_g: float
    resolution_g: float = 1.0


@dataclass(frozen=True)
class YarnAtHand:
    """Yarn on the table: washed, air-dry grams, its thickness where it is known, a swatch where one was
    knitted.
    """

    mass_g: float
    thickness: Thickness | None = None
    swatch: Swatch | None = None


@dataclass(frozen=True)
class Pattern:
    """What a pattern asks for: metres, grams (of a thickness or of none told), or the area of its pieces.

    `low` and `high` are in metres, grams or square centimetres, by `asks`.
    """

    asks: Literal["metres", "grams", "square centimetres"]
    low: float
    high: float
    words: str
    thickness: Thickness | None = None


@dataclass(frozen=True)
class YarnNeed:
    """Grams wanted, grams at hand, grams over (below nothing: short), and how that was reckoned.

    `dye_g` is what to dye in one lot, the upper end of what is needed: two dyeings seldom match (common
    practice, no source). `because` holds the steps of the reckoning, one sentence each.
    """

    needed_g: Figure
    at_hand_g: float
    over_g: Figure
    verdict: Verdict
    dye_g: float
    because: tuple[str, ...]
    needed_m: Figure | None = None
    over_m: Figure | None = None


def yarn_need(pattern: Pattern, yarn: YarnAtHand) -> YarnNeed:
    """Compare a pattern with the yarn at hand. Raises `PlanError` where they have no measure in common."""
    needed, because = _needed_g(pattern, yarn)
    over = Figure(yarn.mass_g - needed.aim, needed.plus_minus)
    verdict: Verdict = "touch and go"
    if over.aim - over.plus_minus >= 0:
        verdict = "enough"
    elif over.aim + over.plus_minus < 0:
        verdict = "short"
    per_g = yarn.thickness.metres_per_100_g / METRES_PER_100_G if yarn.thickness is not None else None
    return YarnNeed(
        needed_g=needed,
        at_hand_g=yarn.mass_g,
        over_g=over,
        verdict=verdict,
        dye_g=needed.high,
        because=because,
        needed_m=_scaled(needed, per_g),
        over_m=_scaled(over, per_g),
    )


def _scaled(figure: Figure, factor: float | None) -> Figure | None:
    return None if factor is None else Figure(figure.aim * factor, figure.plus_minus * factor)


def _needed_g(pattern: Pattern, yarn: YarnAtHand) -> tuple[Figure, tuple[str, ...]]:
    aim, half = (pattern.low + pattern.high) / 2, (pattern.high - pattern.low) / 2
    if pattern.asks == "square centimetres":
        return _by_swatch(aim, yarn)
    if pattern.asks == "metres":
        return _by_length(aim, half, yarn, ())
    if pattern.thickness is not None and yarn.thickness is not None:
        return _by_thickness(pattern, aim, half, yarn)
    return _by_weight(pattern, aim, half, yarn)


def _by_length(
    metres: float, half_m: float, yarn: YarnAtHand, before: tuple[str, ...], more: float = 0.0
) -> tuple[Figure, tuple[str, ...]]:
    """Metres over metres to the gram: the thickness and the knitter are what is not known."""
    if yarn.thickness is None:
        raise PlanError(
            "The pattern asks for a length, so the thickness of your yarn is needed; expected, for example,"
            " 320 g, 210 m/100 g, or a count such as Nm 2/8."
        )
    thickness = yarn.thickness
    aim_g = metres * METRES_PER_100_G / thickness.metres_per_100_g
    share = math.hypot(thickness.share, KNITTING_SHARE, more)
    told = (
        f"{show_figure(metres)} m at {show_figure(thickness.metres_per_100_g)} m to 100 g is"
        f" {show_mass(aim_g)}; your yarn's thickness is good to ± {_percent(thickness.share)}"
        f" ({thickness.source}).",
        f"Knitters differ by ± {_percent(KNITTING_SHARE)} (common practice, no source).",
    )
    return Figure(aim_g, math.hypot(share * aim_g, _share(half_m, metres) * aim_g)), (*before, *told)


def _by_thickness(
    pattern: Pattern, grams: float, half_g: float, yarn: YarnAtHand
) -> tuple[Figure, tuple[str, ...]]:
    """A weight of a named thickness is a length; yours may be thicker or thinner."""
    asked = pattern.thickness
    assert asked is not None
    per_g = asked.metres_per_100_g / METRES_PER_100_G
    told = (
        f"{show_mass(grams)} of {asked.words}, {show_figure(asked.metres_per_100_g)} m to 100 g"
        f" ± {_percent(asked.share)} ({asked.source}), is {show_figure(grams * per_g)} m.",
    )
    return _by_length(grams * per_g, half_g * per_g, yarn, told, asked.share)


def _by_weight(
    pattern: Pattern, grams: float, half_g: float, yarn: YarnAtHand
) -> tuple[Figure, tuple[str, ...]]:
    share = math.hypot(KNITTING_SHARE, THICKNESS_UNKNOWN_SHARE)
    unknown = "the pattern's" if pattern.thickness is None else "your yarn's"
    told = (
        f"{show_mass(grams)} by weight, and {unknown} thickness is not told: that holds only for yarn as"
        f" thick as the pattern's, ± {_percent(THICKNESS_UNKNOWN_SHARE)}; a weighed swatch says more"
        " (common practice, no source).",
        f"Knitters differ by ± {_percent(KNITTING_SHARE)} (common practice, no source).",
    )
    return Figure(grams, math.hypot(share * grams, half_g)), told


def _by_swatch(area_cm2: float, yarn: YarnAtHand) -> tuple[Figure, tuple[str, ...]]:
    """Grams to the square centimetre, times the pieces: the knitter's own hand is in it already."""
    swatch = yarn.swatch
    if swatch is None:
        raise PlanError(
            "The pieces are measured, so a swatch of your yarn is needed; expected, for example,"
            " 10 x 12 cm, 6 g."
        )
    if min(swatch.width_cm, swatch.height_cm) < SMALLEST_SWATCH_CM:
        raise PlanError(
            f"A swatch of {show_figure(swatch.width_cm)} by {show_figure(swatch.height_cm)} cm is too small"
            " to scale up; expected at least 5 cm each way, better 15 x 15 cm."
        )
    swatch_cm2 = swatch.width_cm * swatch.height_cm
    aim_g = swatch.mass_g * area_cm2 / swatch_cm2
    weighing = COVERAGE * weighing_sd_g(swatch.mass_g, swatch.resolution_g) / swatch.mass_g
    measuring = math.hypot(EDGE_CM / swatch.width_cm, EDGE_CM / swatch.height_cm)
    told = (
        f"The swatch is {show_mass(swatch.mass_g)} on {show_figure(swatch_cm2)} cm²; the pieces are"
        f" {show_figure(area_cm2)} cm², that is {show_mass(aim_g)}.",
        f"Weighing the swatch on a {swatch.resolution_g:g} g scale: ± {_percent(weighing)}; measuring it:"
        f" ± {_percent(measuring)}; seams and ribs: ± {_percent(SWATCH_SHARE)} (common practice, no source).",
    )
    return Figure(aim_g, math.hypot(weighing, measuring, SWATCH_SHARE) * aim_g), told


def _share(half: float, aim: float) -> float:
    return half / aim if aim > 0 else 0.0


def _percent(share: float) -> str:
    return f"{show_figure(100 * share, estimate=True)} %"
