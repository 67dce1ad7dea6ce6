"""What the kitchen has. Every entry is optional; a missing one widens an estimate or is asked for once.

Knows nothing of recipes or sessions. Household, telephone number and commands never enter a log:
`kitchen_for_log` leaves them out.
"""

from dataclasses import dataclass, field

from dyesession.care import Household


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
    """A burner: rated power in watts; `kind` is one of `BURNER_KINDS` or empty."""

    name: str
    power_w: float | None = None
    kind: str = ""
    indoors: bool = True


BURNER_KINDS = ("electric", "induction", "gas", "microwave", "camp stove", "charcoal")


@dataclass(frozen=True)
class TapWater:
    """Tap water: hardness and alkalinity in mg/L as calcium carbonate, and pH."""

    hardness_mg_l: float | None = None
    alkalinity_mg_l: float | None = None
    ph: float | None = None


@dataclass(frozen=True)
class Jar:
    """A jar of dyestuff or mordant: form on the packet, strength learned, price per 100 g, grams left.

    `strength` is relative to an ordinary lot, 1 being ordinary; None until sessions have taught it. `weighed_on`
    is the day on which so much was left, ISO 8601; "" where nobody wrote it down.
    """

    name: str
    substance: str
    form: str = ""
    strength: float | None = None
    price_per_100_g: float | None = None
    mass_left_g: float | None = None
    weighed_on: str = ""


@dataclass(frozen=True)
class Alarm:
    """How to be called: bell or not, seconds between rings, quiet hours as "22:00", an optional command."""

    bell: bool = True
    repeat_s: float = 15.0
    quiet_from: str = ""
    quiet_to: str = ""
    command: tuple[str, ...] = ()


@dataclass(frozen=True)
class Own:
    """What days dyed have taught of stove and pots: watts left for warming, and times the table's cooling.

    Handed in by the day book; it stands in no kitchen file and no log's kitchen. `power_says` and `cooling_says` are
    the numbers in words with their ±, `power_from` and `cooling_from` the days they come from.
    """

    net_power_w: float | None = None
    cooling: float = 1.0
    power_says: str = ""
    power_from: str = ""
    cooling_says: str = ""
    cooling_from: str = ""


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
    household: Household = field(default_factory=Household)
    poison_centre: str = ""
    alarm: Alarm = Alarm()
    units: str = "metric"
    path: str = ""
    own: Own = Own()
