"""What a unit can measure, and a unit as a size. Knows no names: those are in `names` and `longtail`."""

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction


class Kind(Enum):
    """What a unit measures; the value is how a message says it."""

    MASS = "a weight"
    VOLUME = "a volume"
    LENGTH = "a length"
    TIME = "a time"
    PERCENT = "a percentage"
    PARTS = "a number of parts"
    HOUSEHOLD = "a household measure"


@dataclass(frozen=True)
class Unit:
    """A unit and its size in grams, litres, metres, minutes or per cent."""

    kind: Kind
    size: Fraction
