"""What a plan holds, as frozen data. Masses in grams, volumes in litres, times in minutes from the start.

A band is (low, aim, high): the recipe's own spread, not an error. The ± of a weighing stands in `Weigh`.
"""

from dataclasses import dataclass
from typing import Literal

from dyesession.recipe.model import Heat, Judge, Lane, Role

PlannedStage = Literal[
    "scour", "wet", "mordant", "soak", "extract", "strain", "dye", "modify", "rinse", "rest", "dry"
]
ReckonedOn = Literal["fibre", "bath", "nothing"]
WeighHow = Literal["scale", "stock liquor", "stock solution", "larger lot", "no scale", "not weighed"]


@dataclass(frozen=True)
class FibreLot:
    """A lot of fibre as it lies on the table.

    `mass_g` is the washed, air-dry mass that every share of fibre is reckoned on. `damp_mass_g` is kept
    when the dyer gave a damp weight beside the dry one. `air_dry` is None until the question was answered.
    """

    name: str
    kind: str
    mass_g: float
    form: str = ""
    air_dry: bool | None = None
    damp_mass_g: float | None = None
    mordanted: str = ""
    words: str = ""


@dataclass(frozen=True)
class Band:
    """A recipe's own range: least, aim and most."""

    low: float
    aim: float
    high: float


@dataclass(frozen=True)
class Weigh:
    """How a dose is really measured: the way, its standard deviation in grams, one sentence to go by.

    For a stock liquor or solution, `take_g` is what is weighed out, `make_up_l` the volume it is made up
    to, and `use_l` the share of that which holds the dose.
    """

    how: WeighHow
    sd_g: float | None
    say: str
    take_g: float | None = None
    make_up_l: float | None = None
    use_l: float | None = None


@dataclass(frozen=True)
class PlannedDose:
    """One ingredient's dose over the whole day.

    `reckoned_on` is what it grows with: the fibre (itself or through another ingredient), the litres of its
    bath, or nothing, for a flat weight.
    """

    ingredient: str
    substance: str
    role: Role
    percent_wof: Band | None
    mass_g: Band
    weigh: Weigh
    known: bool = True
    reckoned_on: ReckonedOn = "fibre"


@dataclass(frozen=True)
class PlannedBath:
    """The water one step wants and whether the pot at hand takes it.

    `pot` is the kitchen's pot, "" when none is known; `fits` is None when no pot is known.
    """

    step: str
    vessel: str
    pot: str
    capacity_l: float | None
    water_l: float
    ratio_l_per_kg: float
    fits: bool | None
    say: str = ""


@dataclass(frozen=True)
class PlannedAddition:
    """What goes into a step's vessel: `mass_g` of it, the portion's place in words ("first half" or "")."""

    ingredient: str
    mass_g: float
    portion: str = ""
    bagged: bool = False


@dataclass(frozen=True)
class PlannedStep:
    """One step of the day, refreshes unrolled, every temperature capped by the boiling point here.

    `water_l` is the volume the vessel should hold when the step's heating starts; `fresh_water` says that
    the vessel is emptied and filled anew. For a strain step, `vessel` is emptied through the sieve `into`,
    and `liquor_l` is what is expected to come through.
    `water_by` is what those litres grow with. `again` counts extractions of the same dyestuff: 0 the first.
    `of` is the recipe's own step name.
    """

    name: str
    stage: PlannedStage
    lane: Lane
    vessel: str | None
    of: str
    after: tuple[str, ...] = ()
    add: tuple[PlannedAddition, ...] = ()
    enter: tuple[str, ...] = ()
    water_l: float | None = None
    water_by: ReckonedOn = "fibre"
    fresh_water: bool = False
    into: str | None = None
    heat: tuple[Heat, ...] = ()
    judge: Judge | None = None
    again: int = 0
    liquor_l: float | None = None
    say: str = ""


@dataclass(frozen=True)
class TimetableRow:
    """When a step runs, in minutes from the start of the day. `critical`: a delay here delays the end.

    `lit_min` to `off_min` is how long its pot stands on a burner; None for a step without heat.
    """

    step: str
    stage: PlannedStage
    lane: Lane
    vessel: str | None
    start_min: float
    end_min: float
    critical: bool
    lit_min: float | None = None
    off_min: float | None = None


@dataclass(frozen=True)
class PlannedReminder:
    """A safety reminder that belongs to a planned step; severity 4 is the worst.

    `private` tells that its words come from who lives in the house: such a line is shown and never logged.
    """

    step: str
    trigger: str
    severity: int
    text: str
    source: str
    private: bool = False


@dataclass(frozen=True)
class PlannedVessel:
    """A vessel of the recipe and the kitchen pot that will be it. `lid` is None where nobody said."""

    name: str
    letter: str
    pot: str
    capacity_l: float | None
    material: str
    lid: bool | None = None


@dataclass(frozen=True)
class Plan:
    """A whole day worked out. `warnings` are sentences; `questions` wait for the dyer's answer.

    `burner` is the kind of ring the pots stand on, `indoors` where it stands; None where nobody said. `by_eye`:
    there is no thermometer, so heat goes by its look. `cooling`: how slowly the dyer's own pots cool, times the
    usual, as days dyed have taught.
    """

    recipe: str
    lots: tuple[FibreLot, ...]
    fibre_mass_g: float
    boiling_c: float
    boiling_margin_c: float
    doses: tuple[PlannedDose, ...]
    baths: tuple[PlannedBath, ...]
    vessels: tuple[PlannedVessel, ...]
    steps: tuple[PlannedStep, ...]
    timetable: tuple[TimetableRow, ...]
    reminders: tuple[PlannedReminder, ...] = ()
    warnings: tuple[str, ...] = ()
    questions: tuple[str, ...] = ()
    burner: str | None = None
    indoors: bool | None = None
    by_eye: bool = False
    cooling: float = 1.0

    def step(self, name: str) -> PlannedStep:
        """The planned step of that name; KeyError when there is none."""
        for one in self.steps:
            if one.name == name:
                return one
        raise KeyError(name)

    def dose(self, ingredient: str) -> PlannedDose:
        """The dose of that ingredient; KeyError when the plan has none."""
        for one in self.doses:
            if one.ingredient == ingredient:
                return one
        raise KeyError(ingredient)
