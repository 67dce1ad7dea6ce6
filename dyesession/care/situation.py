"""What is about to happen at one vessel, as plain data. Knows no recipe, session or screen type.

The plan passes the planned situation, the session the actual one; both get the same reminders.
"""

from dataclasses import dataclass, field

# A substance by key or by any name, and grams of it (None where nobody has said).
Content = tuple[str, float | None]

# What the step does. "lifts" lifts fibre or a bag out; "moves" carries the vessel itself; "keeps" puts the
# vessel's bath by for another day; "opens" takes one off the shelf; "discards" pours the bath away.
ACTIONS = (
    "adds", "strains", "lifts", "pours", "moves", "rinses", "enters", "heats", "grinds", "weighs powder",
    "keeps", "opens", "discards",
)  # fmt: skip

BURNERS = ("", "electric", "induction", "gas ring", "microwave", "camp stove", "charcoal")

UNWEIGHED_KG = 10.0
"""Body mass taken for a child or pet nobody has weighed: own choice, the lightest row of the iron table."""


@dataclass(frozen=True, slots=True)
class Household:
    """Who lives with the dye. Masses in kg, of the lightest child and pet; None where not given."""

    child_kg: float | None = None
    pet_kg: float | None = None
    children: bool = False
    pets: bool = False
    insect_allergy: bool = False

    def smallest(self) -> tuple[str, float] | None:
        """("child" or "pet", kg) of the lightest who could swallow something, or None."""
        found = []
        if self.children or self.child_kg is not None:
            found.append(("child", self.child_kg if self.child_kg is not None else UNWEIGHED_KG))
        if self.pets or self.pet_kg is not None:
            found.append(("pet", self.pet_kg if self.pet_kg is not None else UNWEIGHED_KG))
        return min(found, key=lambda who: who[1], default=None)


@dataclass(frozen=True, slots=True)
class OtherVessel:
    """Another vessel in the room, and what is in it; `free_l` is the room above its liquor, where known."""

    letter: str
    contents: tuple[Content, ...] = ()
    vessel: str = "pot"
    free_l: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """One step at one vessel. Every field optional: what is not known raises no reminder of its own.

    `adding` is what this step weighs, grinds or adds; `contents` what stands in the vessel already.
    `temperature_c` is the bath's, as `temperature_how` says ("planned" or "read"); `volume_l` its
    liquor; `ahead` says that the step has yet to bring it there; `into` is the letter of the vessel it is
    poured or strained into. `wof_percent` holds doses on
    the weight of fibre. `cooling_min` is the time down to 40 °C, (low, high) in minutes, where reckoned.
    A kept bath that is opened or poured in brings its contents in `pouring` and its label in
    `pouring_from`; `look_again_in_days` says when a kept bath is to be looked at (below 0: overdue by so
    many days), of the one opened or the one being put by.
    Raises ValueError for an action or a burner not in ACTIONS or BURNERS: a word nobody knows would
    silence a reminder.
    """

    step: str = ""
    stage: str = ""
    actions: tuple[str, ...] = ()
    vessel: str = "pot"
    letter: str = "A"
    material: str = ""
    volume_l: float | None = None
    capacity_l: float | None = None
    vessel_kg: float | None = None
    temperature_c: float | None = None
    temperature_how: str = "planned"
    ahead: bool = False
    contents: tuple[Content, ...] = ()
    adding: tuple[Content, ...] = ()
    pouring: tuple[Content, ...] = ()
    pouring_from: str = ""
    look_again_in_days: float | None = None
    other_vessels: tuple[OtherVessel, ...] = ()
    into: str = ""
    household: Household = field(default_factory=Household)
    burner: str = ""
    indoors: bool = True
    lid_on: bool = False
    wof_percent: tuple[tuple[str, float], ...] = ()
    fibres: tuple[str, ...] = ()
    cooling_min: tuple[float, float] | None = None

    def __post_init__(self) -> None:
        unknown = [action for action in self.actions if action not in ACTIONS]
        if unknown:
            raise ValueError(f"unknown action {unknown[0]!r}: one of {', '.join(ACTIONS)}")
        if self.burner not in BURNERS:
            raise ValueError(f"unknown burner {self.burner!r}: one of {', '.join(BURNERS[1:])}")
