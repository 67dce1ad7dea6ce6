"""What the kitchen has. Every entry is optional; a missing one widens an estimate or is asked for once.

Knows nothing of recipes or sessions. Household, telephone number and commands never enter a log:
`Kitchen.for_log` leaves them out.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Scale:
    """A kitchen scale: resolution and capacity in grams, repeatability as a standard deviation in grams."""

    name: str
    resolution_g: float
    capacity_g: float | None = None
    repeatability_g: float | None = None


@dataclass(frozen=True)
class Jug:
    """A measuring jug: capacity in litres and the smallest mark in litres."""

    name: str
    volume_l: float
    resolution_l: float | None = None


@dataclass(frozen=True)
class Pot:
    """A pot: brim volume in litres, inner diameter in centimetres, lid, material ("stainless", "iron")."""

    name: str
    volume_l: float
    diameter_cm: float | None = None
    lid: bool | None = None
    material: str = ""


@dataclass(frozen=True)
class Burner:
    """A burner: rated power in watts; `kind` is "gas", "electric", "induction" or "camp stove"."""

    name: str
    power_w: float | None = None
    kind: str = ""
    indoors: bool = True


@dataclass(frozen=True)
class TapWater:
    """Tap water: hardness and alkalinity in mg/L as calcium carbonate, and pH."""

    hardness_mg_l: float | None = None
    alkalinity_mg_l: float | None = None
    ph: float | None = None


@dataclass(frozen=True)
class Jar:
    """A jar of dyestuff or mordant: form on the packet, price per 100 g, grams left."""

    name: str
    substance: str
    form: str = ""
    price_per_100_g: float | None = None
    mass_left_g: float | None = None


@dataclass(frozen=True)
class Household:
    """Who lives here: the lightest child's and pet's mass in kilograms (None: none), insect-dye allergy."""

    lightest_child_kg: float | None = None
    lightest_pet_kg: float | None = None
    insect_dye_allergy: bool = False


@dataclass(frozen=True)
class Alarm:
    """How to be called: bell or not, seconds between rings, quiet hours, an optional command."""

    bell: bool = True
    repeat_s: float = 15.0
    quiet_from: str = ""
    quiet_to: str = ""
    command: tuple[str, ...] = ()


@dataclass(frozen=True)
class Kitchen:
    """Everything known about the kitchen; an empty one is valid."""

    scales: tuple[Scale, ...] = ()
    jugs: tuple[Jug, ...] = ()
    pots: tuple[Pot, ...] = ()
    burners: tuple[Burner, ...] = ()
    thermometer: bool | None = None
    elevation_m: float | None = None
    station_pressure_kpa: float | None = None
    water: TapWater = TapWater()
    jars: tuple[Jar, ...] = ()
    household: Household = Household()
    poison_centre: str = ""
    alarm: Alarm = Alarm()
    units: str = "metric"
    path: str = ""
