"""What happens to pots, liquor, dyestuff and fibre: weighed, filled, added, read, strained, entered, lifted,
kept.

Facts only; units stand in the names. Part of `events`.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, ClassVar


@dataclass(frozen=True)
class Weighed:
    """A dose was weighed out but is not yet in a pot."""

    kind: ClassVar[str] = "weighed"
    ingredient: str
    mass_g: float
    resolution_g: float | None = None
    how: str = "weighed"


@dataclass(frozen=True)
class Soaked:
    """Dyestuff was put to soak."""

    kind: ClassVar[str] = "soaked"
    ingredient: str
    vessel: str
    volume_l: float | None = None


@dataclass(frozen=True)
class Dissolved:
    """A powder was dissolved before it goes in."""

    kind: ClassVar[str] = "dissolved"
    ingredient: str
    volume_l: float | None = None


@dataclass(frozen=True)
class Filled:
    """A vessel was filled with water."""

    kind: ClassVar[str] = "filled"
    vessel: str
    volume_l: float
    how: str = "planned"


@dataclass(frozen=True)
class Added:
    """An ingredient, or a portion of it, went into a vessel."""

    kind: ClassVar[str] = "added"
    ingredient: str
    vessel: str
    mass_g: float
    how: str = "planned"
    portion: str = ""


@dataclass(frozen=True)
class Lit:
    """The heat under a vessel was turned on or off."""

    kind: ClassVar[str] = "lit"
    vessel: str
    on: bool = True


@dataclass(frozen=True)
class Reached:
    """A vessel reached the temperature its step was rising or cooling to; a hold starts here."""

    kind: ClassVar[str] = "reached"
    vessel: str
    temperature_c: float | None = None
    how: str = "planned"


@dataclass(frozen=True)
class Read:
    """A reading: of a vessel, a lot or a dyestuff; only what was read carries a value.

    `strength` is relative, on one linear scale; `against` names what it was compared with, `method` how
    ("dilution match", "equal columns", "white dish", "liquor colour"), and `error_share` is its standard
    deviation as a share of it, where the method tells one.
    """

    kind: ClassVar[str] = "read"
    vessel: str = ""
    lot: str = ""
    temperature_c: float | None = None
    ph: float | None = None
    volume_l: float | None = None
    mass_g: float | None = None
    strength: float | None = None
    against: str = ""
    colour: str = ""
    wet: bool | None = None
    how: str = "read"
    method: str = ""
    error_share: float | None = None


@dataclass(frozen=True)
class Strained:
    """The liquor of a vessel was strained into another; the spent dyestuff stays in the sieve."""

    kind: ClassVar[str] = "strained"
    vessel: str
    into: str
    volume_l: float | None = None
    how: str = "planned"


@dataclass(frozen=True)
class Refreshed:
    """Fresh water was given to strained dyestuff, to extract again."""

    kind: ClassVar[str] = "refreshed"
    vessel: str
    volume_l: float
    how: str = "planned"


@dataclass(frozen=True)
class Pooled:
    """All or some of one bath was poured into another."""

    kind: ClassVar[str] = "pooled"
    vessel: str
    into: str
    volume_l: float | None = None
    how: str = "planned"


@dataclass(frozen=True)
class ToppedUp:
    """Water was added: up to a level (`to_l`) or by a volume."""

    kind: ClassVar[str] = "topped-up"
    vessel: str
    to_l: float | None = None
    volume_l: float | None = None
    how: str = "planned"


@dataclass(frozen=True)
class Entered:
    """A fibre lot went into a vessel."""

    kind: ClassVar[str] = "entered"
    lot: str
    vessel: str


@dataclass(frozen=True)
class Lifted:
    """A fibre lot or snippet came out, weighed wet or not."""

    kind: ClassVar[str] = "lifted"
    lot: str
    vessel: str
    wet_mass_g: float | None = None


@dataclass(frozen=True)
class Dipped:
    """A snippet of the same fibre went into a vessel."""

    kind: ClassVar[str] = "dipped"
    snippet: str
    vessel: str


@dataclass(frozen=True)
class Kept:
    """A bath was put by under a label; `place` says where it stands, in the dyer's words."""

    kind: ClassVar[str] = "kept"
    vessel: str
    label: str
    volume_l: float | None = None
    place: str = ""


@dataclass(frozen=True)
class Drawn:
    """A kept bath, or some of it, was poured in; what is in it is copied here.

    `look_again` is the day it was to be looked at by, as "2026-03-20"; "" where nobody said. `brought` are the
    tables of `session.brought`: the grams of each thing in `brought_l` litres of it, as the shelf reckoned them.
    """

    kind: ClassVar[str] = "drawn"
    vessel: str
    label: str
    session: str = ""
    volume_l: float | None = None
    contents: tuple[str, ...] = ()
    look_again: str = ""
    brought: tuple[Mapping[str, Any], ...] = ()
    brought_l: float | None = None


@dataclass(frozen=True)
class Discarded:
    """A bath was thrown away: the one in a vessel, or a kept one by its label."""

    kind: ClassVar[str] = "discarded"
    vessel: str = ""
    label: str = ""
