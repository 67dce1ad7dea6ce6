"""A number of the dyer's own whose readings hang on a second one too: both learned together from several days.

Pure; knows no days by name. What the second number leaves open stays open however many days there are: its error
is shared by all of them and not averaged away. Days swing, are read and have their tails as in `dyeing.learning`; the
guesses have heavy tails here. Grid integration, no chance (textbook Bayes).
"""

import math
from bisect import bisect_left
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from dyesession.dyeing.bands import Z_90, from_scale, quantile, share_below, t4_share_below, to_scale
from dyesession.dyeing.learning import (
    ENDS,
    LEAST_SHARE,
    ODD,
    SWING_WEIGHTS,
    SWINGS,
    TAIL,
    TAIL_SCALE,
    as_prior,
    at_share,
    edges,
    steps_of,
)
from dyesession.dyeing.limits import above_zero
from dyesession.dyeing.priors import Prior

COARSE, COARSE_BESIDE = 41, 17  # places of the first grid, over all of both guesses
FINE, FINE_BESIDE = 61, 13  # places of the second, where the first found anything
TAIL_SHARE = 0.0005  # of a guess, beyond the first grid on either side
LEAST_MASS = 1e-3  # of the most likely place: less is not looked at again
TOLD_AT_LEAST = 0.0005  # of all, for a place of the second number to be told apart
NO_SHARE = 1e-4  # of all: what is less likely is left out of a further day
FURTHER, STEPS = 5.0, 41  # usual swings beyond the number, and places between, over which a further day is sought

Predict = Callable[[float, float, int], float]  # (number, second number, which reading) to the log of the reading
Row = list[float]


@dataclass(frozen=True)
class Reading:
    """Log of what was read, its standard deviation, and how many readings its day's swing is shared between."""

    log: float
    error: float
    of_its_day: int = 1


@dataclass(frozen=True)
class LearnedBeside:
    """The number and a further day's, the second number, and a further day's at places of the second number.

    `at` rises by the second number; `odd` are places of readings that hardly counted.
    """

    own: Prior
    next_day: Prior
    beside: Prior
    at: tuple[tuple[float, Prior], ...]
    odd: tuple[int, ...]


@dataclass(frozen=True)
class _Grid:
    """Places of both numbers on their scales, and what each reading is predicted at them, with its slope."""

    places: Row
    besides: Row
    predicted: list[list[list[tuple[float, float]]]]  # by second number, number, reading


def learn_beside(
    guess: Prior,
    beside: Prior,
    told: Sequence[Reading],
    predict: Predict,
    swing: float,
    shared: float = 0.0,
    shared_beside: float = 0.0,
) -> LearnedBeside:
    """Both numbers from their guesses and what was read, `swing` the usual day-to-day sd of the first.

    `shared` is the sd of an error of the log that all readings have in common, such as of a jug that is off;
    `shared_beside` that of one the second number has in common with all of them, on its scale.
    Raises `OutOfRange` for a width of 0 or less.
    """
    above_zero("swing from day to day", swing, "0.2")
    for one in told:
        above_zero("error of a day's reading", one.error, "0.1")
    if not told:
        return LearnedBeside(guess, guess, beside, (), ())
    coarse = _grid(_all_of(guess, COARSE), _all_of(beside, COARSE_BESIDE), guess, beside, told, predict)
    rough = _masses(coarse, guess, beside, told, swing, (1.0,), (1.0,))
    places = _where([math.fsum(row[i][0] for row in rough) for i in range(COARSE)], coarse.places, FINE)
    besides = _where([math.fsum(one[0] for one in row) for row in rough], coarse.besides, FINE_BESIDE)
    grid = _grid(places, besides, guess, beside, told, predict)
    masses = _masses(grid, guess, beside, told, swing, SWINGS, SWING_WEIGHTS)
    return _told(grid, masses, guess, beside, told, swing, shared, shared_beside)


def _all_of(prior: Prior, count: int) -> Row:
    low, high = (
        to_scale(quantile(prior.centre, prior.low, prior.high, prior.scale, share), prior.scale)
        for share in (TAIL_SHARE, 1.0 - TAIL_SHARE)
    )
    return _evenly(low, high, count)


def _evenly(low: float, high: float, count: int) -> Row:
    return [low + (high - low) * i / (count - 1) for i in range(count)]


def _where(masses: Row, places: Row, count: int) -> Row:
    """Places close together where there is anything, one coarse step further out on either side."""
    least = LEAST_MASS * max(masses)
    there = [i for i, mass in enumerate(masses) if mass >= least]
    first, last = max(0, there[0] - 1), min(len(places) - 1, there[-1] + 1)
    return _evenly(places[first], places[last], count)


def _grid(
    places: Row, besides: Row, guess: Prior, beside: Prior, told: Sequence[Reading], predict: Predict
) -> _Grid:
    values = [from_scale(one, guess.scale) for one in places]
    step = places[1] - places[0]
    predicted = []
    for second in besides:
        at = from_scale(second, beside.scale)
        columns = []
        for i in range(len(told)):
            logs = [predict(value, at, i) for value in values]
            inner = [(b - a) / (2.0 * step) for a, b in zip(logs, logs[2:], strict=False)]
            slopes = [(logs[1] - logs[0]) / step, *inner, (logs[-1] - logs[-2]) / step]
            columns.append(list(zip(logs, slopes, strict=True)))
        predicted.append([list(row) for row in zip(*columns, strict=True)])
    return _Grid(places, besides, predicted)


def _masses(
    grid: _Grid,
    guess: Prior,
    beside: Prior,
    told: Sequence[Reading],
    swing: float,
    swings: Sequence[float],
    weights: Sequence[float],
) -> list[list[Row]]:
    """How likely each place of the second number, the number and its swing is; all add up to 1."""
    first = [math.log(max(one, LEAST_SHARE)) for one in _cells(guess, grid.places)]
    second = [math.log(max(one, LEAST_SHARE)) for one in _cells(beside, grid.besides)]
    each = [math.log(one) for one in weights]
    squares = [[(swing * by) ** 2 * one.of_its_day for by in swings] for one in told]
    scale = TAIL_SCALE**2
    logs = []
    for row, prior in zip(grid.predicted, second, strict=True):
        rows = []
        for readings, own in zip(row, first, strict=True):
            sums = [prior + own + one for one in each]
            for one, (log, slope), square in zip(told, readings, squares, strict=True):
                off, error, steep = (one.log - log) ** 2 / TAIL, one.error * one.error, slope * slope
                for i, swung in enumerate(square):  # Student's t, 4 df, at this width: its log but for a constant
                    width = scale * (error + steep * swung)
                    sums[i] -= 0.5 * math.log(width * (1.0 + off / width) ** 5)
            rows.append(sums)
        logs.append(rows)
    highest = max(max(map(max, rows)) for rows in logs)
    shares = [[[math.exp(one - highest) for one in sums] for sums in rows] for rows in logs]
    whole = math.fsum(math.fsum(map(math.fsum, rows)) for rows in shares)
    return [[[one / whole for one in sums] for sums in rows] for rows in shares]


def _cells(prior: Prior, places: Row) -> Row:
    """How much of a guess lies in each cell; with heavy tails, for nobody reads the one number without the other."""
    below = [
        share_below(prior.centre, prior.low, prior.high, prior.scale, from_scale(one, prior.scale))
        for one in edges(places)
    ]
    return steps_of(below)


def _told(
    grid: _Grid,
    masses: list[list[Row]],
    guess: Prior,
    beside: Prior,
    told: Sequence[Reading],
    swing: float,
    shared: float,
    shared_beside: float,
) -> LearnedBeside:
    by_place = [math.fsum(math.fsum(row[i]) for row in masses) for i in range(len(grid.places))]
    by_beside = [math.fsum(map(math.fsum, row)) for row in masses]
    best = max(range(len(by_beside)), key=lambda j: by_beside[j])
    top = max(range(len(by_place)), key=lambda i: math.fsum(masses[best][i]))
    off = shared * _by_reading(grid.predicted[best][top])
    own = _quantiles(grid.places, by_place, off)
    whole = [[math.fsum(row[i][s] for row in masses) for s in range(len(SWINGS))] for i in range(len(grid.places))]
    return LearnedBeside(
        as_prior(guess, own),
        as_prior(guess, _days_to_come(grid.places, whole, swing, off)),
        as_prior(beside, _quantiles(grid.besides, by_beside, shared_beside)),
        tuple(
            (from_scale(place, beside.scale), as_prior(guess, _days_to_come(grid.places, row, swing, off)))
            for place, row, mass in zip(grid.besides, masses, by_beside, strict=True)
            if mass >= TOLD_AT_LEAST
        ),
        tuple(
            i
            for i, (one, (log, slope)) in enumerate(zip(told, grid.predicted[best][top], strict=True))
            if abs(one.log - log) > ODD * math.hypot(one.error, slope * swing)
        ),
    )


def _by_reading(readings: Sequence[tuple[float, float]]) -> float:
    """How far the number moves when all readings are off alike: over the mean slope, by how much each tells."""
    square = math.fsum(slope * slope for _, slope in readings)
    return abs(math.fsum(slope for _, slope in readings)) / square if square > 0.0 else 0.0


def _quantiles(places: Row, shares: Row, off: float) -> Row:
    """The ends and the middle, the number being off by `off` (sd) in common with all that was read."""
    return _widened([at_share(places, shares, one) for one in ENDS], off)


def _widened(ends: Row, off: float) -> Row:
    low, middle, high = ends
    more = Z_90 * off
    return [middle - math.hypot(middle - low, more), middle, middle + math.hypot(high - middle, more)]


def _days_to_come(places: Row, shares: Sequence[Sequence[float]], swing: float, off: float) -> Row:
    """The ends and the middle of what a further day may show."""
    least = NO_SHARE * math.fsum(map(math.fsum, shares))
    counting = [
        (place, TAIL_SCALE * swing * by, share)
        for place, row in zip(places, shares, strict=True)
        for by, share in zip(SWINGS, row, strict=True)
        if share > least
    ]
    whole = math.fsum(share for _, _, share in counting)
    lows = _evenly(counting[0][0] - FURTHER * swing, counting[-1][0] + FURTHER * swing, STEPS)
    below = [
        math.fsum(share * t4_share_below((place - middle) / width) for middle, width, share in counting) / whole
        for place in lows
    ]
    return _widened([_crossed(lows, below, one) for one in ENDS], off)


def _crossed(places: Row, below: Row, wanted: float) -> float:
    """The place where a rising share passes the wanted one, straight between two places."""
    at = min(max(bisect_left(below, wanted), 1), len(below) - 1)
    rise = below[at] - below[at - 1]
    return places[at - 1] + (places[at] - places[at - 1]) * ((wanted - below[at - 1]) / rise if rise > 0.0 else 0.0)
