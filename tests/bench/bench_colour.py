"""How far depth and overdye predictions miss on reflectance curves they have never seen, and by which method.

Curves: the 99 test colour samples of CIE 224:2017 as colour-science carries them, at 400 to 700 nm; the 68
that are nowhere lighter than 0.70 stand for dyeings on a wool-like ground (a straight line from 0.50 to
0.76, our own). Truth: Kubelka-Munk with one constant on the curves themselves, so what is measured is what
is lost by knowing only a Lab. Beside it the method this replaces, Kubelka-Munk on the three linear channels
of a screen.

Run `python tests/bench/bench_colour.py` (from the project's top) for the tables.
"""

import math
import random
import statistics
import sys
import warnings
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parents[2]))

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.kubelka_munk import (
    Depths,
    at_depth,
    depths_of,
    dye_only,
    overdyed,
    spectrum_of,
)
from dyesession.colour.overdye import plan_overdye
from dyesession.colour.readings import Reading
from dyesession.colour.rebuilt import Spectrum, seen
from dyesession.colour.shades import depth_line, depths
from dyesession.colour.srgb import lab_of_linear, linear_of_lab
from dyesession.colour.targets import target_of
from dyesession.colour.trouble import ColourError
from dyesession.colour.viewing import D65_2

LIGHTEST = 0.70
GROUND: Spectrum = tuple(0.50 + 0.26 * i / 30 for i in range(31))
PAIRS, HUE_GAP_DEG, DRAW = 300, 40.0, 20170224
RATIOS = (0.25, 0.5, 2.0, 4.0)
MIXES = ((1.0, 1.0), (0.5, 0.5), (1.0, 0.25), (0.25, 1.0))
NOISES = (0.0, 1.0, 3.0)  # Lab units for each of L, a and b

# A separate implementation of the same theory in numpy, over another wool-like ground: mean and 95 % point. Not run here.
REFERENCE_DEPTH = {0.5: (0.55, 1.2), 2.0: (0.58, 1.3)}
REFERENCE_TWO_DYES = {(0.5, 0.5): (1.8, 6.5)}

Predict = Callable[[Spectrum, Spectrum, float], Lab]


@dataclass(frozen=True)
class Misses:
    """Mean, 95 % point and worst of some CIEDE2000 misses."""

    mean: float
    p95: float
    worst: float
    count: int


def summed_up(misses: Sequence[float]) -> Misses:
    ordered = sorted(misses)
    place = 0.95 * (len(ordered) - 1)
    low = math.floor(place)
    high = min(low + 1, len(ordered) - 1)
    p95 = ordered[low] + (ordered[high] - ordered[low]) * (place - low)
    return Misses(statistics.fmean(ordered), p95, ordered[-1], len(ordered))


@cache
def curves() -> tuple[Spectrum, ...]:
    """The 68 test colours that may be dyeings on the ground."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # colour-science tells of plotting libraries it does not find
        from colour import SpectralShape
        from colour.quality.cfi2017 import load_TCS_CIE2017

        table = load_TCS_CIE2017(SpectralShape(380, 780, 5))
    rows = {float(nm): row for nm, row in zip(table.wavelengths, table.values, strict=True)}
    samples = zip(*(rows[float(nm)] for nm in range(400, 701, 10)), strict=True)
    found = (tuple(float(one) for one in sample) for sample in samples)
    return tuple(one for one in found if max(one) < LIGHTEST)


def true_depth(dyed: Spectrum, ratio: float) -> Lab:
    return seen(spectrum_of(at_depth(depths_of(GROUND), true_dyeing(dyed), ratio)), D65_2)


def true_dyeing(dyed: Spectrum) -> Depths:
    """A test colour as a dyeing: nowhere lighter than its ground."""
    ground = depths_of(GROUND)
    return overdyed(ground, dye_only(ground, depths_of(dyed)), 1.0)


def true_mix(first: Spectrum, second: Spectrum, a: float, b: float) -> Lab:
    ground = depths_of(GROUND)
    mixed = overdyed(ground, dye_only(ground, depths_of(first)), a)
    return seen(spectrum_of(overdyed(mixed, dye_only(ground, depths_of(second)), b)), D65_2)


def lab_of_dyeing(dyed: Spectrum) -> Lab:
    return seen(spectrum_of(true_dyeing(dyed)), D65_2)


GROUND_LAB = seen(GROUND, D65_2)


def ours(dyed: Spectrum, ratio: float) -> Lab:
    return depth_line(GROUND_LAB, lab_of_dyeing(dyed), D65_2)(ratio)


def ours_mixed(first: Spectrum, second: Spectrum, a: float, b: float) -> Lab:
    ground = depths(GROUND_LAB, D65_2)
    mixed = overdyed(ground, dye_only(ground, depths(lab_of_dyeing(first), D65_2)), a)
    return seen(
        spectrum_of(overdyed(mixed, dye_only(ground, depths(lab_of_dyeing(second), D65_2)), b)), D65_2
    )


def _three(lab: Lab) -> Depths:
    return depths_of(linear_of_lab(lab))


def three_band(dyed: Spectrum, ratio: float) -> Lab:
    """The method replaced: K/S of the red, green and blue of a screen."""
    red, green, blue = spectrum_of(at_depth(_three(GROUND_LAB), _three(lab_of_dyeing(dyed)), ratio))
    return lab_of_linear((red, green, blue))


def three_band_mixed(first: Spectrum, second: Spectrum, a: float, b: float) -> Lab:
    ground = _three(GROUND_LAB)
    mixed = overdyed(ground, dye_only(ground, _three(lab_of_dyeing(first))), a)
    red, green, blue = spectrum_of(overdyed(mixed, dye_only(ground, _three(lab_of_dyeing(second))), b))
    return lab_of_linear((red, green, blue))


def no_change(dyed: Spectrum, ratio: float) -> Lab:
    return lab_of_dyeing(dyed)


def depth_misses(method: Callable[[Spectrum, float], Lab], ratio: float) -> Misses:
    return summed_up([de00(true_depth(one, ratio), method(one, ratio)) for one in curves()])


@cache
def pairs() -> tuple[tuple[Spectrum, Spectrum], ...]:
    """Pairs of test colours with a wide gap of hue, drawn once and for all."""
    draw, found = random.Random(DRAW), []
    while len(found) < PAIRS:
        first, second = draw.sample(curves(), 2)
        gap = abs(math.remainder(lab_of_dyeing(first).hue_deg - lab_of_dyeing(second).hue_deg, 360.0))
        if gap > HUE_GAP_DEG:
            found.append((first, second))
    return tuple(found)


def mix_misses(method: Callable[[Spectrum, Spectrum, float, float], Lab], a: float, b: float) -> Misses:
    return summed_up([de00(true_mix(x, y, a, b), method(x, y, a, b)) for x, y in pairs()])


@dataclass(frozen=True)
class Planned:
    """Overdye plans made from noisy readings: what they claimed, and what the cloth then missed by."""

    solved: Misses
    expected: Misses
    missed: Misses
    amount_off: Misses


def plan_misses(noise: float, count: int = PAIRS) -> Planned:
    """Plan the second dye for a hidden mix of the two (the skein as it is, half of the second)."""
    draw = random.Random(DRAW + round(noise))
    rows = []
    for first, second in pairs()[:count]:
        try:
            rows.append(_planned(first, second, noise, draw))
        except ColourError:
            continue  # noise may make a reading no cloth can show; the dyer is told so
    return Planned(*(summed_up(column) for column in zip(*rows, strict=True)))


def _planned(
    first: Spectrum, second: Spectrum, noise: float, draw: random.Random
) -> tuple[float, float, float, float]:
    hidden = 0.5

    def read(lab: Lab) -> Reading:
        noisy = Lab(*(one + draw.gauss(0.0, noise) for one in lab))
        # 90 % of the misses in three directions lie within 2.5 times the noise in each (chi-squared).
        return Reading(noisy, 2.5 * noise * _de00_per_lab(lab))

    undyed, skein = read(GROUND_LAB), read(lab_of_dyeing(first))
    other, target = read(lab_of_dyeing(second)), true_mix(first, second, 1.0, hidden)
    plan = plan_overdye(undyed, skein, other, target_of([read(target)]))
    missed = de00(target, true_mix(first, second, 1.0, plan.amount))
    return plan.solved, plan.expected, missed, abs(plan.amount / hidden - 1.0)


def _de00_per_lab(lab: Lab) -> float:
    steps = (Lab(lab.lightness + 1.0, lab.a, lab.b), Lab(lab.lightness, lab.a + 1.0, lab.b),
             Lab(lab.lightness, lab.a, lab.b + 1.0))  # fmt: skip
    return math.sqrt(math.fsum(de00(lab, one) ** 2 for one in steps) / 3.0)


def _reference(known: tuple[float, float] | None) -> str:
    return f"{known[0]:.2f} {known[1]:.2f}" if known else "none"


def main() -> None:
    print(f"Depth from one Lab, {len(curves())} curves: mean / 95 % / worst miss, CIEDE2000")
    for ratio in RATIOS:
        told = [depth_misses(method, ratio) for method in (ours, three_band, no_change)]
        shown = "   ".join(f"{one.mean:5.2f} {one.p95:5.2f} {one.worst:5.2f}" for one in told)
        print(f"  x{ratio:<5g} ours, three bands, no change: {shown}   reference {_reference(REFERENCE_DEPTH.get(ratio))}")
    print(f"Two dyes, {PAIRS} pairs: mean / 95 % / worst miss")
    for a, b in MIXES:
        told = [mix_misses(method, a, b) for method in (ours_mixed, three_band_mixed)]
        shown = "   ".join(f"{one.mean:5.2f} {one.p95:5.2f} {one.worst:5.2f}" for one in told)
        print(f"  {a:g} and {b:g}: ours, three bands: {shown}   reference {_reference(REFERENCE_TWO_DYES.get((a, b)))}")
    print("Overdye plans from noisy readings (mean / 95 %): solved, expected, truly missed, amount off")
    for noise in NOISES:
        plan = plan_misses(noise)
        told = (plan.solved, plan.expected, plan.missed, plan.amount_off)
        print(f"  noise {noise:g}: " + "   ".join(f"{one.mean:5.2f} {one.p95:5.2f}" for one in told)
              + f"   ({plan.missed.count} plans)")  # fmt: skip


if __name__ == "__main__":
    main()
