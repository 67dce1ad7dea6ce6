"""How readings weigh the worlds, and where the worlds are put when too few of them still count.

Knows nothing of dye: unknowns are steps of Student's t (4 df), evidence is how far each world was off. Weights
are the likelihood times prior over proposal, so a set of worlds put elsewhere stands for the same belief
(importance sampling; textbook). Where to put them is found by looking round from a point, a
step along each unknown (Gauss-Newton). Heavy tails on both sides, so that an odd pot is believed and an odd reading is not. No chance.
"""

import math
import operator
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from dyesession.account.holdings import Evidence
from dyesession.account.matrices import eigen, solved
from dyesession.account.worlds import EVEN, WORLDS, ZEROS, Vector
from dyesession.dyeing.bands import Z_90, t4_log_density

Row = list[float]

ENOUGH = (
    0.35  # share of the worlds that must still count; below it they are put elsewhere; tuned on the tests
)
WIDER = 0.75  # how far the worlds are drawn together, of what the fit says (1: all); tuned on the tests
WIDEST_REACH, LEAST_REACH = (
    1.0,
    0.2,
)  # how far the slopes are looked for, in steps of the prior; our own choice
FIRMNESS = 1e-3  # keeps a fit over worlds that hardly differ in an unknown from running away; our own choice
UNMOVED = 1e-6  # an unknown no reading leans on stays as it was dealt
NEWTON_STEPS = 8
LEAST_STRETCH = 1e-9
PRIOR_TAIL = 4.0  # degrees of freedom of the guesses (`dyeing.bands`)
# Readings have lighter tails than guesses: an odd pot is believed before an odd reading is. Judgement.
READING_TAIL, T10_AT_HIGH = 10.0, 1.812461  # its 95 % point: any table
READING_SCALE = Z_90 / T10_AT_HIGH  # so that its 90 % band is that of a normal of standard deviation 1
READING_POWER = -(READING_TAIL + 1.0) / 2.0


@dataclass(frozen=True)
class Placing:
    """Where the worlds stand: steps of the unknowns that were moved, the log of prior over proposal, and the
    point they were moved to.
    """

    steps: Mapping[str, Vector] = field(default_factory=dict)
    lift: Vector = ZEROS
    best: Mapping[str, float] = field(default_factory=dict)


AS_DEALT = Placing()


def likelihood(evidence: Sequence[Evidence]) -> Vector:
    """Log likelihood of all readings in each world, but for a constant."""
    logs = ZEROS
    for off, sd, slip_from in _rows(evidence):
        square = READING_TAIL * (sd * READING_SCALE) ** 2
        slip = (1.0 + slip_from**2 / READING_TAIL) ** READING_POWER
        told = [math.log(slip + (1.0 + x * x / square) ** READING_POWER) for x in off]
        logs = tuple(map(operator.add, logs, told))
    return logs


def _rows(evidence: Sequence[Evidence]) -> list[tuple[Vector, float, float]]:
    """Each reading's offs; those on one free scale less their middle, for only how they differ counts."""
    rows = [(one.off, one.sd, one.slip_from) for one in evidence if not one.scale]
    for scale in dict.fromkeys(one.scale for one in evidence if one.scale):
        same = [one for one in evidence if one.scale == scale]
        shares = [1.0 / one.sd**2 for one in same]
        all_of_it = math.fsum(shares)
        middle = tuple(
            [
                math.fsum(map(operator.mul, column, shares)) / all_of_it
                for column in zip(*(one.off for one in same), strict=True)
            ]
        )
        rows += [(tuple(map(operator.sub, one.off, middle)), one.sd, one.slip_from) for one in same]
    return rows


def weights_of(logs: Vector, lift: Vector) -> Vector:
    """Weights that add up to 1."""
    both = logs if lift is ZEROS else tuple(map(operator.add, logs, lift))
    highest = max(both)
    if min(both) == highest:
        return EVEN
    shares = [math.exp(one - highest) for one in both]
    all_of_it = math.fsum(shares)
    return tuple([one / all_of_it for one in shares])


@dataclass(frozen=True)
class Lines:
    """What each reading is off as a straight line along each unknown, through the point looked round from."""

    names: tuple[str, ...]
    slopes: list[Row]
    starts: Row  # each line at nought
    scales: Row


@dataclass(frozen=True)
class Agreed:
    """Where prior and readings agree best, how far the prior's tail widens each unknown there, and how
    precise each reading counts there.
    """

    best: Row
    tails: Row
    precisions: Row


def look_round(names: Sequence[str], best: Mapping[str, float], reach: Mapping[str, float]) -> Placing:
    """The worlds put for a look round: the first at the point itself, two each a step along one unknown."""
    steps = {}
    for place, name in enumerate(names):
        column = [best.get(name, 0.0)] * WORLDS
        for at, sign in ((2 * place + 1, 1.0), (2 * place + 2, -1.0)):
            column[at] += sign * reach.get(name, WIDEST_REACH)
        steps[name] = tuple(column)
    return Placing(steps, ZEROS, dict(best))


def lines_seen(
    names: Sequence[str], evidence: Sequence[Evidence], best: Mapping[str, float], reach: Mapping[str, float]
) -> Lines:
    """The lines, from a day gone through with the worlds put for a look round."""
    rows = _rows(evidence)
    slopes = [
        [
            (off[2 * j + 1] - off[2 * j + 2]) / (2.0 * reach.get(name, WIDEST_REACH))
            for j, name in enumerate(names)
        ]
        for off, _, _ in rows
    ]
    point = [best.get(name, 0.0) for name in names]
    starts = [off[0] - _dot(row, point) for row, (off, _, _) in zip(slopes, rows, strict=True)]
    return Lines(tuple(names), slopes, starts, [sd * READING_SCALE for _, sd, _ in rows])


def lines_fitted(steps: Mapping[str, Vector], evidence: Sequence[Evidence], weights: Vector) -> Lines:
    """The lines that fit the worlds as they stand best, each by half of what it weighs and half alike (least
    squares): no going through the day again is wanted for it.
    """
    names = tuple(steps)
    shares = [math.sqrt((w + 1.0 / WORLDS) / 2.0) for w in weights]
    columns = [tuple(map(operator.mul, shares, steps[name])) for name in names] + [tuple(shares)]
    square = _squared(columns)
    for i in range(len(names)):
        square[i][i] += FIRMNESS
    rows = _rows(evidence)
    rights = []
    for off, _, _ in rows:
        row = tuple(map(operator.mul, shares, off))
        rights.append([sum(map(operator.mul, column, row)) for column in columns])
    found = solved(square, rights)
    return Lines(names, [one[:-1] for one in found], [one[-1] for one in found], [sd * READING_SCALE for _, sd, _ in rows])


def _squared(columns: Sequence[Vector]) -> list[Row]:
    square: list[Row] = [[0.0] * len(columns) for _ in columns]
    for i, one in enumerate(columns):
        for j in range(i + 1):
            square[i][j] = square[j][i] = sum(map(operator.mul, one, columns[j]))
    return square


def agreed(lines: Lines) -> Agreed:
    """Where prior and readings agree best on those lines. Heavy tails by reweighting, step by step."""
    best = [0.0] * len(lines.names)
    tails, precisions = list(best), list(lines.scales)
    for _ in range(NEWTON_STEPS):
        tails = [max(1.0, (PRIOR_TAIL + z * z) / (PRIOR_TAIL + 1.0)) for z in best]
        offs = [start + _dot(row, best) for row, start in zip(lines.slopes, lines.starts, strict=True)]
        precisions = [
            (READING_TAIL + 1.0) / (READING_TAIL + (off / scale) ** 2) / scale**2
            for off, scale in zip(offs, lines.scales, strict=True)
        ]
        square = [[_dot3(a, tails, b) for b in lines.slopes] for a in lines.slopes]
        for i, precision in enumerate(precisions):
            square[i][i] += 1.0 / precision
        (pull,) = solved(square, [lines.starts])
        best = [
            -tail * math.fsum(row[j] * p for row, p in zip(lines.slopes, pull, strict=True))
            for j, tail in enumerate(tails)
        ]
    return Agreed(best, tails, precisions)


def reach_of(lines: Lines, found: Agreed) -> dict[str, float]:
    """How far to look along each unknown next time: about as far as it is still open."""
    square = [[_dot3(a, found.tails, b) for b in lines.slopes] for a in lines.slopes]
    for i, precision in enumerate(found.precisions):
        square[i][i] += 1.0 / precision
    columns = [[row[j] for row in lines.slopes] for j in range(len(lines.names))]
    reach = {}
    for name, tail, column, pull in zip(
        lines.names, found.tails, columns, solved(square, columns), strict=True
    ):
        left = tail - tail * tail * _dot(column, pull)
        reach[name] = min(WIDEST_REACH, max(LEAST_REACH, math.sqrt(max(left, 0.0))))
    return reach


def put_together(dealt: Mapping[str, Vector], lines: Lines, found: Agreed) -> Placing:
    """The dealt worlds shifted to where it agrees best, and drawn together only along what readings tell."""
    scaled = [
        [math.sqrt(p * tail) * slope for slope, tail in zip(row, found.tails, strict=True)]
        for row, p in zip(lines.slopes, found.precisions, strict=True)
    ]
    columns = [dealt[name] for name in lines.names]
    shifts: list[Vector] = [ZEROS] * len(columns)
    for stretch, direction in zip(*eigen([[_dot(a, b) for b in scaled] for a in scaled]), strict=True):
        if stretch > LEAST_STRETCH:
            along = [_dot(direction, column) / math.sqrt(stretch) for column in zip(*scaled, strict=True)]
            share = 1.0 - 1.0 / math.sqrt(1.0 + WIDER * stretch)
            shifts = _drawn(shifts, columns, along, share)
    best = dict(zip(lines.names, found.best, strict=True))
    steps, lift = {}, ZEROS
    for name, column, shift, tail in zip(lines.names, columns, shifts, found.tails, strict=True):
        if shift is ZEROS and abs(best[name]) < UNMOVED:
            continue
        wide, z = math.sqrt(tail), best[name]
        steps[name] = tuple([z + wide * (n - s) for n, s in zip(column, shift, strict=True)])
        lift = tuple(
            [
                so_far + t4_log_density(to) - t4_log_density(n)
                for so_far, to, n in zip(lift, steps[name], column, strict=True)
            ]
        )
    return Placing(steps, lift, best)


def _drawn(shifts: list[Vector], columns: list[Vector], along: Row, share: float) -> list[Vector]:
    """Every world drawn a share of the way to the middle along one direction."""
    part = [(place, one) for place, one in enumerate(along) if abs(one) > UNMOVED]
    projected = _summed([columns[place] for place, _ in part], [one for _, one in part])
    moved = list(shifts)
    for place, one in part:
        by = share * one
        moved[place] = tuple([s + by * p for s, p in zip(shifts[place], projected, strict=True)])
    return moved


def _dot(a: Sequence[float], b: Sequence[float]) -> float:
    return math.fsum(map(operator.mul, a, b))


def _dot3(a: Sequence[float], b: Sequence[float], c: Sequence[float]) -> float:
    return math.fsum(x * y * z for x, y, z in zip(a, b, c, strict=True))


def _summed(columns: Sequence[Vector], shares: Row) -> Vector:
    return tuple([math.fsum(map(operator.mul, row, shares)) for row in zip(*columns, strict=True)])
