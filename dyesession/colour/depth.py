"""What more or less of the same dye would look like, each shade with a ± that grows away from the sample.

Knows nothing of doses beyond their ratio, or of baths. What the ± is made of stands at each figure. Where the
theory stops: Allen, Faulkner, Goldfinger & McGregor, "Effect of the continuous medium ... IV", abstract (it
breaks down from K/S 9); Safi, Ameri & Ansari 2021, Physica Scripta 96(12) 125832, abstract (17 and 25).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from dyesession.colour.ciede2000 import de00
from dyesession.colour.cielab import Lab
from dyesession.colour.kubelka_munk import (
    LEAST_R,
    at_depth,
    depths_of,
    fitted_exponent,
    held_at_cloth,
    spectrum_of,
)
from dyesession.colour.readings import Reading, check_alike
from dyesession.colour.rebuilt import Spectrum, rebuilt, seen
from dyesession.colour.shades import depth_line, depths, strength
from dyesession.colour.spread import ONE_DIRECTION, carried, together
from dyesession.colour.trouble import NoDye, OutOfRange, TooDark
from dyesession.colour.viewing import Viewing

SERIES = (0.25, 0.5, 2.0, 4.0)
MOST_RATIO, CHECKED_RATIO = 10.0, 4.0
NOTE_FROM_KS, WARN_FROM_KS, REFUSE_FROM_KS = 9.0, 17.0, 25.0

# The 95 % point of the miss at half and at twice the depth on independent reflectance curves (1.2 to 1.3),
# and about twice that at a quarter and at four times: our own benchmark, `tests/bench/bench_colour.py`.
_MODEL_PER_DOUBLING = 1.3
# Light thrown back by the fibre's very surface. No figure for wool or cotton yarn was found: none is taken
# off, and half of what 2 % would change is carried as ±.
_SURFACE_SHARE, _SURFACE_CARRIED = 0.02, 0.5
# How depth follows dose when nobody has tried: as 1, and perhaps as 0.8 (our own choice).
PROPORTIONAL, _PERHAPS_EXPONENT = 1.0, 0.8
_NO_STRENGTH = 1e-3
_SMALL_LOG = 0.05  # step along the line of depths, for its slope
# The 95 % point of a strength ratio's miss when it is told from two Lab, on dyed swatches: our own trial.
_STRENGTH_MISS = 0.033


@dataclass(frozen=True)
class Predicted:
    """A shade worked out: at which ratio of the sample's depth, its Lab and ± (CIEDE2000), what to know."""

    ratio: float
    lab: Lab
    plus_minus: float
    notes: tuple[str, ...]


@dataclass(frozen=True)
class Exponent:
    """How depth follows dose, depth = dose^value, with its ±. `fitted` is False where nobody has tried."""

    value: float
    plus_minus: float
    fitted: bool


NOT_FITTED = Exponent(PROPORTIONAL, PROPORTIONAL - _PERHAPS_EXPONENT, False)


def at_ratio(undyed: Reading, sample: Reading, ratio: float) -> Predicted:
    """The shade at `ratio` times the sample's depth, 0 to 10; 1 gives the sample back.

    Raises `Unlike` for unlike or wet readings, `NoDye`, `TooDark`, `OutsideCloth` and `OutOfRange`.
    """
    check_alike(undyed, sample)
    _check_ratio(ratio)
    notes = _checked_notes(undyed, sample, ratio)
    if ratio == 1.0:
        return Predicted(ratio, sample.lab, sample.plus_minus, notes)
    lab = depth_line(undyed.lab, sample.lab, sample.viewing)(ratio)
    return Predicted(ratio, lab, _plus_minus(undyed, sample, ratio), notes)


def series(undyed: Reading, sample: Reading, ratios: Sequence[float] = SERIES) -> tuple[Predicted, ...]:
    """The sample's depth series: a quarter, half, twice and four times, unless said. Raises as `at_ratio`.

    Of a sample too dark for the theory only the paler shades are given, and they say so.
    """
    shades: list[Predicted] = []
    left_out: tuple[str, ...] = ()
    for ratio in ratios:
        try:
            shades.append(at_ratio(undyed, sample, ratio))
        except TooDark as trouble:
            left_out = (str(trouble),)
    if not shades:
        raise TooDark(*left_out)
    return tuple(replace(one, notes=one.notes + left_out) for one in shades)


def at_dose(
    undyed: Reading, sample: Reading, dose_ratio: float, exponent: Exponent = NOT_FITTED
) -> Predicted:
    """The shade at `dose_ratio` times the sample's dose, by how depth follows dose. Raises as `at_ratio`."""
    ratio = depth_of_dose(dose_ratio, exponent)
    found = at_ratio(undyed, sample, ratio)
    line = depth_line(undyed.lab, sample.lab, sample.viewing)
    low, high = exponent.value - exponent.plus_minus, exponent.value + exponent.plus_minus
    unsure = max(
        de00(found.lab, line(dose_ratio**other)) for other in (low, high if exponent.fitted else low)
    )
    return Predicted(ratio, found.lab, together(found.plus_minus, unsure), found.notes)


def depth_of_dose(dose_ratio: float, exponent: Exponent = NOT_FITTED) -> float:
    """The ratio of depths for a ratio of doses (more than 0)."""
    if not 0.0 < dose_ratio < math.inf:
        raise OutOfRange(f"The ratio of doses is {dose_ratio:g}, but it must be more than 0, for example 2.")
    return float(dose_ratio**exponent.value)


def fit_exponent(
    undyed: Reading, pale: Reading, pale_dose: float, deep: Reading, deep_dose: float
) -> Exponent:
    """How depth follows dose for one dye, from two dyeings of it; doses in any one unit, the deeper larger.

    Raises `OutOfRange` for doses that do not rise, `NoDye` for a sample without dye, `Unlike`.
    """
    check_alike(undyed, pale)
    check_alike(undyed, deep)
    strengths = [strength(undyed.lab, one.lab, one.viewing) for one in (pale, deep)]
    value = fitted_exponent(strengths[0], pale_dose, strengths[1], deep_dose)
    unsure = together(_STRENGTH_MISS, *(_strength_share(undyed, one) for one in (pale, deep)))
    return Exponent(value, unsure / math.log(deep_dose / pale_dose), True)


def theory_notes(lab: Lab, viewing: Viewing, deeper: bool) -> tuple[str, ...]:
    """What to say of a sample as deep as this. Raises `TooDark` when it is to be made deeper still."""
    deepest = max(depths(lab, viewing))
    if deepest > REFUSE_FROM_KS and deeper:
        raise TooDark(
            f"A sample as dark as lab({lab.lightness:.3g} {lab.a:.3g} {lab.b:.3g}) is beyond what the theory "
            f"of depth covers (K/S {deepest:.0f}, above 25), so nothing deeper can be told from it; expected "
            "a paler sample of the same dye, for example one at half the dose."
        )
    if deepest > WARN_FROM_KS:
        return ("So deep a sample (K/S above 17) is where depth stops following the theory: a rough guess.",)
    if deepest > NOTE_FROM_KS:
        return ("A deep sample (K/S above 9): the theory of depth is less sure here than for pale shades.",)
    return ()


def _check_ratio(ratio: float) -> None:
    if not 0.0 <= ratio <= MOST_RATIO:
        raise OutOfRange(
            f"The ratio of depths is {ratio:g}, but it must lie between 0 and 10, for example 0.5 "
            "for half the depth."
        )


def _checked_notes(undyed: Reading, sample: Reading, ratio: float) -> tuple[str, ...]:
    if strength(undyed.lab, sample.lab, sample.viewing) < _NO_STRENGTH:
        raise NoDye(
            "The sample is no deeper than the undyed fibre, so there is no dye to make more or less of; "
            'expected a dyed sample, for example undyed "lab(86 0 11)" and sample "lab(42 45 30)".'
        )
    notes = theory_notes(sample.lab, sample.viewing, deeper=ratio > 1.0)
    if ratio > 1.0 and ratio * max(depths(sample.lab, sample.viewing)) > REFUSE_FROM_KS:
        notes += ("So deep (K/S above 25) cloth is as dark as it gets: the last shades run together.",)
    if ratio and not 1.0 / CHECKED_RATIO <= ratio <= CHECKED_RATIO:
        notes += ("Farther than a quarter or four times the depth nothing was checked.",)
    return notes


def _plus_minus(undyed: Reading, sample: Reading, ratio: float) -> float:
    viewing = sample.viewing
    model = _MODEL_PER_DOUBLING * abs(math.log2(ratio)) if ratio else 0.0
    of_sample = carried(
        lambda lab: depth_line(undyed.lab, lab, viewing)(ratio), sample.lab, sample.plus_minus
    )
    of_undyed = carried(
        lambda lab: depth_line(lab, sample.lab, viewing)(ratio), undyed.lab, undyed.plus_minus
    )
    return together(
        model, *_surface_and_darkness(undyed.lab, sample.lab, viewing, ratio), of_sample, of_undyed
    )


def _surface_and_darkness(undyed: Lab, sample: Lab, viewing: Viewing, ratio: float) -> tuple[float, float]:
    """What light from the very surface, and the darkest that cloth was seen to be, leave open."""
    ground, curve = rebuilt(undyed, viewing), rebuilt(sample, viewing)
    plain = spectrum_of(at_depth(depths_of(ground), depths_of(curve), ratio))
    bare = at_depth(depths_of(_without_surface(ground)), depths_of(_without_surface(curve)), ratio)
    with_surface = tuple(_SURFACE_SHARE + (1.0 - _SURFACE_SHARE) * one for one in spectrum_of(bare))
    shown = seen(plain, viewing)
    return (
        _SURFACE_CARRIED * de00(shown, seen(with_surface, viewing)),
        de00(shown, seen(held_at_cloth(plain, curve), viewing)),
    )


def _without_surface(curve: Spectrum) -> Spectrum:
    return tuple(max(LEAST_R, (one - _SURFACE_SHARE) / (1.0 - _SURFACE_SHARE)) for one in curve)


def _strength_share(undyed: Reading, sample: Reading) -> float:
    """How far (as a share) a sample's strength may be off for its ±: by how much depth looks as much."""
    line = depth_line(undyed.lab, sample.lab, sample.viewing)
    per_log = de00(line(1.0), line(math.exp(_SMALL_LOG))) / _SMALL_LOG
    return ONE_DIRECTION * sample.plus_minus / max(per_log, _SMALL_LOG)
