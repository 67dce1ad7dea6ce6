"""What a recipe says, as frozen data: the shape of `recipes/*.toml` after it has been read.

Knows nothing of pots, fibre at hand, or sessions. Stages, lanes and roles are the trade's own words.
"""

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any, Literal

from dyesession.units import Dose, WaterText

Stage = Literal["scour", "wet", "mordant", "soak", "extract", "dye", "modify", "rinse", "rest", "dry"]
Lane = Literal["fibre", "liquor"]
Role = Literal["scour", "mordant", "assist", "tannin", "dyestuff", "modifier", "water"]
HeatKind = Literal["to", "hold", "cool_to", "rest"]

STAGES: tuple[Stage, ...] = (
    "scour",
    "wet",
    "mordant",
    "soak",
    "extract",
    "dye",
    "modify",
    "rinse",
    "rest",
    "dry",
)
LANES: tuple[Lane, ...] = ("fibre", "liquor")
ROLES: tuple[Role, ...] = ("scour", "mordant", "assist", "tannin", "dyestuff", "modifier", "water")


@dataclass(frozen=True)
class Heat:
    """One stretch of a step's heating.

    `to` and `cool_to` carry a temperature (and, for `to`, the minutes the rise should take); `hold` and
    `rest` carry minutes, or `overnight`. `word` is kept when the recipe gave a heat by name ("steaming");
    then `temperature_c` is the middle of that word's band and `margin_c` half its width.
    """

    kind: HeatKind
    temperature_c: float | None = None
    minutes: float | None = None
    overnight: bool = False
    word: str | None = None
    margin_c: float = 0.0


@dataclass(frozen=True)
class Ingredient:
    """One thing the recipe doses: its substance as the recipe names it, its role and its dose."""

    name: str
    substance: str
    role: Role
    dose: Dose | None
    least: Dose | None = None
    most: Dose | None = None
    bagged: bool = False


@dataclass(frozen=True)
class Addition:
    """A share (0 to 1) of an ingredient's dose that goes into a step's vessel."""

    ingredient: str
    share: Fraction = Fraction(1)


@dataclass(frozen=True)
class Judge:
    """The eye may end a dye step between these minutes after the hold began."""

    least_min: float
    most_min: float
    snippet_every_min: float | None = None


@dataclass(frozen=True)
class Step:
    """One step as the recipe has it. `after` alone orders; `lane` is for drawing."""

    name: str
    stage: Stage
    lane: Lane
    vessel: str | None
    after: tuple[str, ...] = ()
    add: tuple[Addition, ...] = ()
    enter: tuple[str, ...] = ()
    water: WaterText | None = None
    refreshes: int = 0
    into: str | None = None
    heat: tuple[Heat, ...] = ()
    judge: Judge | None = None
    say: str = ""


@dataclass(frozen=True)
class Recipe:
    """A whole recipe. `document` is the file as read, so that a log alone can repeat the colour."""

    name: str
    summary: str
    source: str
    fibre: tuple[str, ...]
    liquor_ratio: float
    ingredients: tuple[Ingredient, ...]
    steps: tuple[Step, ...]
    document: dict[str, Any] = field(default_factory=dict, compare=False, hash=False)
    path: str = ""

    def ingredient(self, name: str) -> Ingredient:
        """The ingredient of that name; KeyError when the recipe has none (loading has checked this)."""
        for one in self.ingredients:
            if one.name == name:
                return one
        raise KeyError(name)
