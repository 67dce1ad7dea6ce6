"""A number of the dyer's own from several days: a starting guess, what each day says of it, and so what to expect.

Pure; knows no days by name. Days differ: each day's number is the dyer's own plus that day's swing, plus the
error of reading it. Swing and error have heavy tails together (Student's t, 4 df, as `bands`), and the guess
has none: one day far from it is doubted, several that agree are believed. How far days swing is itself learned,
from a usual swing. Grid integration, no chance (textbook Bayes).
"""

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from dyesession.dyeing.bands import T4_AT_HIGH, Scale, from_scale, quantile, t4_share_below, to_scale
from dyesession.dyeing.eta import Z_90
from dyesession.dyeing.limits import above_zero
from dyesession.dyeing.priors import Prior

MIDDLES = 121  # places close together where days point, of the grid for the dyer's own number
HALVINGS = 24  # of the grid's width, until a point of the day to come is found
SWINGS = (0.5, 0.7, 1.0, 1.4, 2.0)  # times the usual swing; our own choice
SWING_WEIGHTS = (0.12, 0.24, 0.28, 0.24, 0.12)  # about a log-normal, a factor of 1.5 either way as 1 sd; judgement
TAIL_SHARE = 0.0005  # how much of the guess lies beyond the grid on either side
WIDER = 6.0  # swings and errors beyond the outermost day that the grid still covers
ODD = 3.0  # so many times its own swing and error off, a day is called odd; our own choice, no source
ENDS = (0.05, 0.5, 0.95)
LEAST_POINTS = 2  # through fewer no slope goes
REWEIGHTINGS = 6
TAIL = 4.0  # degrees of freedom of the heavy tails
TAIL_SCALE = Z_90 / T4_AT_HIGH  # so that a heavy-tailed 90 % band is that of a normal of the same sd
NO_SHARE = 1e-7  # a cell with less is not worth counting
LEAST_SHARE = 1e-300  # keeps a logarithm finite
NARROWEST = 1e-6  # steps of a scale; keeps a width above nought


@dataclass(frozen=True)
class Told:
    """What one day says: the number, and the standard deviation of its reading on the guess's scale."""

    value: float
    error: float


@dataclass(frozen=True)
class Learned:
    """The number itself (`own`), what a further day will show (`next_day`), and which days were odd, by place."""

    own: Prior
    next_day: Prior
    odd: tuple[int, ...]


def learn(guess: Prior, told: Sequence[Told], swing: float) -> Learned:
    """The dyer's own number from a guess and what days say, `swing` the usual day-to-day sd on its scale.

    Raises `OutOfRange` for a value that cannot stand on the guess's scale, or a width of 0 or less.
    """
    above_zero("swing from day to day", swing, "0.2")
    points = [to_scale(one.value, guess.scale) for one in told]
    errors = [above_zero("error of a day's reading", one.error, "0.1") for one in told]
    if not told:
        return Learned(guess, guess, ())
    reach = WIDER * max(math.hypot(swing, one) for one in errors)
    middles = _grid(guess, points, reach)
    shares = _posterior(middles, _cells(guess, middles), points, errors, swing)
    own = [math.fsum(row) for row in shares]
    centre = at_share(middles, own, 0.5)
    return Learned(
        as_prior(guess, [at_share(middles, own, one) for one in ENDS]),
        as_prior(guess, [_day_to_come(middles, shares, swing, one) for one in ENDS]),
        tuple(
            i
            for i, (point, error) in enumerate(zip(points, errors, strict=True))
            if abs(point - centre) > ODD * math.hypot(swing, error)
        ),
    )


def _grid(guess: Prior, points: Sequence[float], reach: float) -> list[float]:
    """Places on the scale, close together where days point and wide apart where only the guess does."""
    ends = [
        to_scale(quantile(guess.centre, guess.low, guess.high, guess.scale, share), guess.scale)
        for share in (TAIL_SHARE, 1.0 - TAIL_SHARE)
    ]
    low, high = min(ends[0], min(points) - reach), max(ends[1], max(points) + reach)
    near_low, near_high = min(points) - reach / 2.0, max(points) + reach / 2.0
    wide = [low + (high - low) * i / (MIDDLES // 2) for i in range(MIDDLES // 2 + 1)]
    close = [near_low + (near_high - near_low) * i / (MIDDLES - 1) for i in range(MIDDLES)]
    return sorted({*wide, *close})


def _cells(guess: Prior, places: Sequence[float]) -> list[float]:
    """How much of the guess lies in each cell round its place."""
    middle = to_scale(guess.centre, guess.scale)
    down = (middle - to_scale(guess.low, guess.scale)) / Z_90
    up = (to_scale(guess.high, guess.scale) - middle) / Z_90
    return steps_of([_normal_below((one - middle) / (down if one < middle else up)) for one in edges(places)])


def _normal_below(steps: float) -> float:
    return 0.5 * math.erfc(-steps / math.sqrt(2.0))


def edges(places: Sequence[float]) -> list[float]:
    """The borders of the cells but for the outermost, which are open."""
    return [(a + b) / 2.0 for a, b in itertools.pairwise(places)]


def steps_of(below: Sequence[float]) -> list[float]:
    """Shares of cells from the shares below their borders."""
    whole = [0.0, *below, 1.0]
    return [max(0.0, b - a) for a, b in itertools.pairwise(whole)]


def _posterior(
    middles: Sequence[float],
    prior: Sequence[float],
    points: Sequence[float],
    errors: Sequence[float],
    swing: float,
) -> list[tuple[float, ...]]:
    """For each middle, the share of each swing, after the days; all add up to 1."""
    logs = []
    for middle, share in zip(middles, prior, strict=True):
        row = []
        for by, weight in zip(SWINGS, SWING_WEIGHTS, strict=True):
            fits = math.log(max(share, LEAST_SHARE)) + math.log(weight)
            for point, error in zip(points, errors, strict=True):
                width = TAIL_SCALE * math.hypot(swing * by, error)
                fits += -math.log(width) - far((point - middle) / width)
            row.append(fits)
        logs.append(row)
    highest = max(max(row) for row in logs)
    shares = [tuple(math.exp(one - highest) for one in row) for row in logs]
    whole = math.fsum(math.fsum(row) for row in shares)
    return [tuple(one / whole for one in row) for row in shares]


def _day_to_come(
    middles: Sequence[float], shares: Sequence[tuple[float, ...]], swing: float, wanted: float
) -> float:
    """The place below which a share of what a further day may show lies, by halving."""
    counting = [
        (middle, TAIL_SCALE * swing * by, share)
        for middle, row in zip(middles, shares, strict=True)
        for by, share in zip(SWINGS, row, strict=True)
        if share > NO_SHARE
    ]
    whole = math.fsum(share for _, _, share in counting)
    low, high = middles[0] - WIDER * swing, middles[-1] + WIDER * swing
    for _ in range(HALVINGS):
        place = (low + high) / 2.0
        below = math.fsum(share * t4_share_below((place - middle) / width) for middle, width, share in counting)
        low, high = (place, high) if below < wanted * whole else (low, place)
    return (low + high) / 2.0


def at_share(places: Sequence[float], shares: Sequence[float], wanted: float) -> float:
    """The place below which a share lies, straight within a cell."""
    so_far = 0.0
    borders = [places[0], *edges(places), places[-1]]
    for left, right, share in zip(borders, borders[1:], shares, strict=False):
        if so_far + share >= wanted:
            return left + (right - left) * (wanted - so_far) / share if share > 0.0 else left
        so_far += share
    return places[-1]


def as_prior(guess: Prior, places: Sequence[float]) -> Prior:
    """A learned number in place of its guess, from low end, middle and high end on the guess's scale."""
    low, centre, high = places
    low, high = min(low, centre - NARROWEST), max(high, centre + NARROWEST)
    scale: Scale = guess.scale
    return Prior(
        guess.name, from_scale(centre, scale), from_scale(low, scale), from_scale(high, scale), scale, "learned"
    )


def learn_slope(guess: Prior, points: Sequence[tuple[float, float, float]]) -> Prior:
    """A slope through points (x, y, sd of y) whose height nobody knows, from a guess on the log scale.

    Heavy tails, so that one odd point counts little; the height is the one that fits each slope best.
    """
    xs = [one[0] for one in points]
    if len(points) < LEAST_POINTS or max(xs) - min(xs) <= 0.0:
        return guess
    places = [
        to_scale(quantile(guess.centre, guess.low, guess.high, guess.scale, (i + 0.5) / MIDDLES), guess.scale)
        for i in range(MIDDLES)
    ]
    logs = [_best_fit(from_scale(one, guess.scale), points) for one in places]
    highest = max(logs)
    shares = [math.exp(one - highest) for one in logs]
    whole = math.fsum(shares)
    return as_prior(guess, [at_share(places, [one / whole for one in shares], end) for end in ENDS])


def _best_fit(slope: float, points: Sequence[tuple[float, float, float]]) -> float:
    """Log likelihood of a slope at its best height, found by reweighting."""
    offs = [y - slope * x for x, y, _ in points]
    height = sorted(offs)[len(offs) // 2]
    for _ in range(REWEIGHTINGS):
        weights = [
            _counts((off - height) / sd) / sd**2 for off, (_, _, sd) in zip(offs, points, strict=True)
        ]
        height = math.fsum(w * off for w, off in zip(weights, offs, strict=True)) / math.fsum(weights)
    return -math.fsum(far((off - height) / (TAIL_SCALE * sd)) for off, (_, _, sd) in zip(offs, points, strict=True))


def _counts(sds: float) -> float:
    """How much a point so many standard deviations off counts, beside one that is not off at all."""
    return (TAIL + 1.0) / (TAIL + (sds / TAIL_SCALE) ** 2)


def far(steps: float) -> float:
    """Minus the log density of Student's t at so many steps, but for a constant."""
    return (TAIL + 1.0) / 2.0 * math.log1p(steps * steps / TAIL)
