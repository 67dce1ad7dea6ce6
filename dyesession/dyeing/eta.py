"""Time to temperature from thermometer readings: three ways, one of them fit to be shown.

Knows nothing of clocks. Shown is "two readings and the pot's own time constant": in a simulation of a 28
cm pot and 4,000 noisy trials it ran about 1 % short with the lid on and 5 to 18 % short with it off (an
open pot loses more and more as it warms), where a straight line ran 13 to 24 % short and three readings
often gave no answer (derived).
"""

import itertools
import math
from dataclasses import dataclass

from dyesession.dyeing.heating import minutes_to
from dyesession.dyeing.limits import OutOfRange, above_zero, zero_or_more

READING_SD_C = 0.5  # a kitchen thermometer read with care; judgement
LID_ON_STRETCH, OPEN_STRETCH = 1.02, 1.25  # derived from the simulation above
Z_90 = 1.645  # half-width of a 90 % band in standard deviations
ENOUGH_RISE_C, ENOUGH_MIN = 10.0, 5.0  # judgement: closer readings double the noise and more

# Time constants of a 28 cm stainless pot from the same simulation: litres, hours.
LID_ON_HOURS = ((5.0, 6.04), (10.0, 7.73), (15.0, 8.54))
OPEN_HOURS = ((5.0, 1.59), (10.0, 2.72), (15.0, 3.59))  # 5 and 15 L scaled by their cooling from 60 to 50 °C
CONSTANT_FACTOR = 1.5  # 90 % band of such a time constant for another pot, either way; judgement


@dataclass(frozen=True)
class Reading:
    """A thermometer reading: minutes from any start, °C."""

    minute: float
    temperature_c: float


@dataclass(frozen=True)
class TimeToTemperature:
    """Minutes from the later reading: not before, about, late if over.

    Infinite when it may never arrive. `settles_c` is where this setting tends to if nothing changes, with
    its 90 % half-width; it may lie above the boil. The band takes the time constant as known.
    """

    not_before_min: float
    about_min: float
    late_min: float
    settles_c: float
    settles_plus_minus_c: float


def far_enough(first: Reading, second: Reading) -> bool:
    """Whether two readings are far enough apart (10 °C and 5 min) for an answer worth showing."""
    rise_c = abs(second.temperature_c - first.temperature_c)
    return rise_c >= ENOUGH_RISE_C and second.minute - first.minute >= ENOUGH_MIN


def time_constant_prior_min(water_l: float, lid_on: bool) -> float:
    """Starting guess of a pot's time constant, good to a factor `CONSTANT_FACTOR`.

    Given for 5 to 15 L; smaller and larger pots are taken as these.
    """
    above_zero("water", water_l, "10 L")
    points = LID_ON_HOURS if lid_on else OPEN_HOURS
    minutes_per_hour = 60.0
    for (litres, hours), (more_litres, more_hours) in itertools.pairwise(points):
        if water_l <= more_litres:
            share = max(0.0, (water_l - litres) / (more_litres - litres))
            return (hours + (more_hours - hours) * share) * minutes_per_hour
    return points[-1][1] * minutes_per_hour


def settling_from_two_c(first: Reading, second: Reading, constant_min: float) -> float:
    """Temperature this setting tends to, from two readings and the time constant, °C (derived)."""
    minutes = _minutes_between(first, second)
    share_kept = math.exp(-minutes / above_zero("time constant", constant_min, "460 min"))
    return (second.temperature_c - first.temperature_c * share_kept) / -math.expm1(-minutes / constant_min)


def straight_line_min(target_c: float, first: Reading, second: Reading) -> float:
    """Minutes from the later reading on a straight line: safe only as "not before".

    It is infinite when the readings do not rise.
    """
    rise_c = second.temperature_c - first.temperature_c
    to_go_c = target_c - second.temperature_c
    minutes = _minutes_between(first, second)
    if to_go_c <= 0.0:
        return 0.0
    return to_go_c * minutes / rise_c if rise_c > 0.0 else math.inf


def from_three_readings(
    low_c: float, middle_c: float, high_c: float, apart_min: float
) -> tuple[float, float]:
    """Settling temperature (°C) and time constant (min) from three evenly spaced readings.

    Needs exact readings: with kitchen thermometers a quarter of trials gave no answer, so it is not for
    showing. Raises `OutOfRange` when the rise does not slow down.
    """
    above_zero("time between readings", apart_min, "10 min")
    first_rise, second_rise = middle_c - low_c, high_c - middle_c
    if not 0.0 < second_rise / first_rise < 1.0 if first_rise else True:
        raise OutOfRange(
            f"The readings {low_c:g}, {middle_c:g}, {high_c:g} °C do not slow down;"
            " expected a shrinking rise, for example 28.9, 41.9, 54.0 °C."
        )
    settles_c = (low_c * high_c - middle_c**2) / (low_c + high_c - 2.0 * middle_c)
    return settles_c, -apart_min / math.log(second_rise / first_rise)


def time_to_temperature(
    target_c: float,
    first: Reading,
    second: Reading,
    constant_min: float,
    lid_on: bool,
    reading_sd_c: float = READING_SD_C,
) -> TimeToTemperature:
    """Time to a target, from two readings and the time constant of this pot and lid.

    "Not before" is the lower of the straight line and the estimate, less their noise; "late" is the upper
    end stretched for the lid. Both bands are 90 %. A target already reached gives noughts.
    """
    zero_or_more("error of a reading", reading_sd_c, "0.5 °C")
    settles_c = settling_from_two_c(first, second, constant_min)
    minutes = _minutes_between(first, second)
    away = -math.expm1(-minutes / constant_min)
    settles_sd = reading_sd_c * math.hypot(1.0, 1.0 - away) / away
    if target_c <= second.temperature_c:
        return TimeToTemperature(0.0, 0.0, 0.0, settles_c, Z_90 * settles_sd)
    fast = _swayed(target_c, first, second, Z_90 * reading_sd_c)
    slow = _swayed(target_c, first, second, -Z_90 * reading_sd_c)
    not_before = min(straight_line_min(target_c, *fast), _curve_min(target_c, *fast, constant_min))
    about = _curve_min(target_c, first, second, constant_min)
    late = _curve_min(target_c, *slow, constant_min) * (LID_ON_STRETCH if lid_on else OPEN_STRETCH)
    return TimeToTemperature(not_before, about, late, settles_c, Z_90 * settles_sd)


def _curve_min(target_c: float, first: Reading, second: Reading, constant_min: float) -> float:
    settles_c = settling_from_two_c(first, second, constant_min)
    return minutes_to(target_c, second.temperature_c, settles_c, constant_min)


def _swayed(target_c: float, first: Reading, second: Reading, noise_c: float) -> tuple[Reading, Reading]:
    """Shift both readings, by `noise_c` in all, the way that hastens a straight line most (derived)."""
    rise_c = second.temperature_c - first.temperature_c
    to_go = (target_c - second.temperature_c) / rise_c if rise_c > 0.0 else math.inf
    angle = math.atan2(to_go + 1.0, to_go)
    return (
        Reading(first.minute, first.temperature_c - noise_c * math.cos(angle)),
        Reading(second.minute, second.temperature_c + noise_c * math.sin(angle)),
    )


def _minutes_between(first: Reading, second: Reading) -> float:
    minutes = second.minute - first.minute
    if minutes <= 0.0:
        raise OutOfRange(
            f"The later reading is at {second.minute:g} min and the earlier at {first.minute:g} min;"
            " the later one must come after, for example 5 then 15 min."
        )
    return minutes
