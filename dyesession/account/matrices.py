"""Small symmetric matrices: solving, and the directions in which one stretches. Textbook methods, from memory.

Knows nothing of what they stand for. Sizes here are a few dozen rows, so plain lists do.
"""

import math
from collections.abc import Sequence

Row = list[float]
Matrix = list[Row]

SWEEPS = 30  # Jacobi needs a handful; a bound, not a setting
TINY = 1e-14


def solved(matrix: Sequence[Sequence[float]], rights: Sequence[Sequence[float]]) -> list[Row]:
    """x of matrix x = right, for each right-hand side; a positive definite matrix is expected (Cholesky)."""
    lower = _lower(matrix)
    return [_back(lower, _forward(lower, right)) for right in rights]


def _lower(matrix: Sequence[Sequence[float]]) -> Matrix:
    lower: Matrix = []
    for i, row in enumerate(matrix):
        made: Row = []
        for j in range(i + 1):
            rest = row[j] - math.fsum(a * b for a, b in zip(made, lower[j] if j < i else made, strict=False))
            made.append(math.sqrt(max(rest, TINY)) if j == i else rest / lower[j][j])
        lower.append(made)
    return lower


def _forward(lower: Matrix, right: Sequence[float]) -> Row:
    found: Row = []
    for row, value in zip(lower, right, strict=True):
        rest = value - math.fsum(a * b for a, b in zip(row, found, strict=False))
        found.append(rest / row[-1])
    return found


def _back(lower: Matrix, right: Row) -> Row:
    size = len(right)
    found = [0.0] * size
    for i in reversed(range(size)):
        rest = right[i] - math.fsum(lower[k][i] * found[k] for k in range(i + 1, size))
        found[i] = rest / lower[i][i]
    return found


def eigen(matrix: Sequence[Sequence[float]]) -> tuple[Row, Matrix]:
    """Stretches of a symmetric matrix, and the direction of each as a row (Jacobi's rotations)."""
    size = len(matrix)
    a = [list(row) for row in matrix]
    v = [[1.0 if i == j else 0.0 for j in range(size)] for i in range(size)]
    for _ in range(SWEEPS):
        off = math.fsum(a[i][j] ** 2 for i in range(size) for j in range(i))
        if off <= TINY * math.fsum(a[i][i] ** 2 for i in range(size)):
            break
        for p in range(size):
            for q in range(p + 1, size):
                _rotate(a, v, p, q)
    return [a[i][i] for i in range(size)], v


def _rotate(a: Matrix, v: Matrix, p: int, q: int) -> None:
    """Turn rows and columns p and q so that their common element becomes nought."""
    if a[p][q] == 0.0:
        return
    angle = (a[q][q] - a[p][p]) / (2.0 * a[p][q])
    tangent = math.copysign(1.0, angle) / (abs(angle) + math.hypot(1.0, angle))
    cosine = 1.0 / math.hypot(1.0, tangent)
    sine = tangent * cosine
    for row in a:
        row[p], row[q] = cosine * row[p] - sine * row[q], sine * row[p] + cosine * row[q]
    for rows in (a, v):
        for k in range(len(a)):
            rows[p][k], rows[q][k] = (
                cosine * rows[p][k] - sine * rows[q][k],
                sine * rows[p][k] + cosine * rows[q][k],
            )
