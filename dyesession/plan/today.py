"""The day as it stands, as plain data: what `again` works out afresh what is left from. Knows no events.

Masses in grams, volumes in litres.
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from typing import Literal

from dyesession.plan.model import FibreLot, PlannedAddition, PlannedDose, PlannedStep, ReckonedOn

HowFar = Literal["to come", "under way", "over", "left out"]


@dataclass(frozen=True)
class StepToday:
    """A step as far as it has come.

    `lots` are those it enters or has entered, `fibre_in` tells that some went in, `put_in` what went in while
    it ran, `still` the additions to come.
    """

    plan: PlannedStep
    how_far: HowFar
    lots: tuple[str, ...] = ()
    fibre_in: bool = False
    filled: bool = False
    put_in: Mapping[str, float] = field(default_factory=dict)
    still: tuple[PlannedAddition, ...] = ()

    @property
    def name(self) -> str:
        """The step's name."""
        return self.plan.name

    @property
    def open(self) -> bool:
        """Whether a lot more can still go in with the others: not begun, or begun with no fibre in yet."""
        return self.how_far == "to come" or (self.how_far == "under way" and not self.fibre_in)

    def still_g(self, ingredient: str) -> float:
        """Grams of an ingredient still to go in."""
        return sum(one.mass_g for one in self.still if one.ingredient == ingredient)

    @property
    def ingredients(self) -> tuple[str, ...]:
        """What went in and what is still to go in, by name."""
        return tuple(dict.fromkeys((*self.put_in, *(one.ingredient for one in self.still))))


@dataclass(frozen=True)
class Today:
    """The whole day: steps in order, lots, doses, vessels that hold a bath and what each vessel would
    hold.
    """

    steps: tuple[StepToday, ...]
    lots: tuple[FibreLot, ...]
    doses: tuple[PlannedDose, ...] = ()
    capacity_l: Mapping[str, float] = field(default_factory=dict)
    full: frozenset[str] = frozenset()
    loose: Mapping[str, float] = field(default_factory=dict)

    @property
    def fibre_g(self) -> float:
        """Grams of all lots together."""
        return sum(one.mass_g for one in self.lots)

    def mass_g(self, lots: tuple[str, ...]) -> float:
        """Grams of some lots together."""
        return sum(one.mass_g for one in self.lots if one.name in lots)

    def named(self, name: str) -> str:
        """That name for a new step, numbered when the day has one like it."""
        return unlike(name, [one.name for one in self.steps])

    def step(self, name: str) -> StepToday | None:
        """The step of that name."""
        return next((one for one in self.steps if one.name == name), None)

    def reckoned_on(self, ingredient: str) -> ReckonedOn:
        """What an ingredient's dose grows with."""
        return next((one.reckoned_on for one in self.doses if one.ingredient == ingredient), "fibre")

    def in_g(self, ingredient: str) -> float:
        """Grams of an ingredient that are in already, whatever step they went in with."""
        return self.loose.get(ingredient, 0.0) + sum(one.put_in.get(ingredient, 0.0) for one in self.steps)

    def knows(self, ingredient: str) -> bool:
        """Whether the day has this ingredient."""
        return any(one.ingredient == ingredient for one in self.doses)


def unlike(name: str, taken: Collection[str]) -> str:
    """That name, or numbered from two when it is taken."""
    unique, count = name, 2
    while unique in taken:
        unique, count = f"{name} {count}", count + 1
    return unique
