"""What a kept bath of another day brings into a pot: grams of each thing, as the shelf reckoned it then.

Pure. It is copied into the fact of pouring, so that a log needs no other log to be reckoned. What of it cannot be
read counts as not told.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

FROM_SHELF = " from the shelf"  # keeps colour of another day apart from a dyestuff weighed today
KEYS = ("mean_g", "low_g", "high_g")
DIGITS = 4  # a tenth of a milligram is beyond any estimate; our own choice


@dataclass(frozen=True)
class Brought:
    """One thing in a bath: mean and 90 % band in grams, as a substance and in a role of a dose."""

    ingredient: str
    substance: str
    role: str
    mean_g: float
    low_g: float
    high_g: float

    @property
    def is_dye(self) -> bool:
        """Whether it is colour."""
        return self.role == "dyestuff"

    @property
    def lot(self) -> str:
        """The name it goes by in the account: colour is kept apart from what was weighed today."""
        return f"{self.ingredient}{FROM_SHELF}" if self.is_dye else self.ingredient

    def share(self, of_it: float) -> "Brought":
        """The same of a part of the bath."""
        mean_g, low_g, high_g = (one * of_it for one in (self.mean_g, self.low_g, self.high_g))
        return Brought(self.ingredient, self.substance, self.role, mean_g, low_g, high_g)


def ingredient_of(lot: str) -> str:
    """The dyestuff a lot of an account is of, whether weighed today or poured in from the shelf."""
    return lot.removesuffix(FROM_SHELF)


def for_log(brought: Iterable[Brought]) -> tuple[Mapping[str, Any], ...]:
    """The tables that a log holds."""
    return tuple(
        {
            "ingredient": one.ingredient,
            "substance": one.substance,
            "role": one.role,
            **{key: round(getattr(one, key), DIGITS) for key in KEYS},
        }
        for one in brought
    )


def brought_in(tables: Iterable[Any]) -> tuple[Brought, ...]:
    """What those tables tell; one that is no such table, or whose grams make no band, is passed over."""
    return tuple(one for one in map(_read, tables) if one is not None)


def _read(table: Any) -> Brought | None:
    if not isinstance(table, Mapping):
        return None
    words = [table.get(key) for key in ("ingredient", "substance", "role")]
    grams = [table.get(key) for key in KEYS]
    if not all(isinstance(one, str) and one for one in words):
        return None
    if not all(isinstance(one, int | float) and not isinstance(one, bool) and math.isfinite(one) for one in grams):
        return None
    ingredient, substance, role = map(str, words)
    mean_g, low_g, high_g = (float(one or 0.0) for one in grams)
    if not 0.0 <= low_g <= mean_g <= high_g or high_g <= 0.0:
        return None
    return Brought(ingredient, substance, role, mean_g, low_g, high_g)
