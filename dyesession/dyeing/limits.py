"""Sentences for a number that cannot be: what it was, what was expected, an example.

Knows nothing of the science; every other file of this room checks its inputs with these.
"""

import math

from dyesession.errors import UserError


class OutOfRange(UserError):
    """A number outside what is possible in a dye pot."""


def above_zero(what: str, value: float, example: str) -> float:
    """Return `value`, or raise `OutOfRange` when it is not a finite number above nought."""
    if not 0.0 < value < math.inf:
        raise OutOfRange(f"The {what} is {value:g}, but it must be more than 0, for example {example}.")
    return value


def zero_or_more(what: str, value: float, example: str) -> float:
    """Return `value`, or raise `OutOfRange` when it is negative or not finite."""
    if not 0.0 <= value < math.inf:
        raise OutOfRange(f"The {what} is {value:g}, but it must be 0 or more, for example {example}.")
    return value


def within(what: str, value: float, low: float, high: float, example: str) -> float:
    """Return `value`, or raise `OutOfRange` when it lies outside `low` to `high`, ends included."""
    if not low <= value <= high:
        raise OutOfRange(
            f"The {what} is {value:g}, but it must lie between {low:g} and {high:g}, for example {example}."
        )
    return value


def a_share(what: str, value: float, example: str) -> float:
    """Return `value`, or raise `OutOfRange` when it is not a share from 0 to 1."""
    return within(what, value, 0.0, 1.0, example)


def between_shares(what: str, value: float, example: str) -> float:
    """Return `value`, or raise `OutOfRange` when it is not strictly between 0 and 1."""
    if not 0.0 < value < 1.0:
        raise OutOfRange(
            f"The {what} is {value:g}, but it must be more than 0 and less than 1, for example {example}."
        )
    return value
