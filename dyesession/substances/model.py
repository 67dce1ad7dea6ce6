"""What the program knows about one substance: names, hazards, forms. Knows no recipe, no pot, no dose.

Every figure carries its own source; the data stand in the `*.toml` files beside this one.
"""

from collections.abc import Mapping
from dataclasses import dataclass

# From mildest to strictest; what may be done with a substance at home.
VERDICTS = ("yes", "with care", "experienced, outdoors", "not recommended", "refused")

FIRST_AID = ("rinse", "eye", "burn", "iron", "poison", "gas", "allergy")
"""Keys of the first-aid line a substance carries."""

# What the reminders look for. A trait is a fact about the stuff, never about a recipe.
TRAITS = (
    "acid", "acetic", "strong acid", "alkali", "strong alkali", "lime", "lye", "carbonate",
    "ammonia", "ammonium salt", "bleach", "peroxide", "alcohol", "oxidiser", "reducing", "damp fire",
    "iron", "copper", "chromium", "tin", "lead", "aluminium salt", "tannin", "oxalate",
    "insect dye", "madder", "poison plant", "plant slurry", "stains skin", "ferments", "foams", "flour",
    "grinds to dust", "flammable",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Figure:
    """One number with its unit and its source; `high` when the source gives a range."""

    value: float
    unit: str
    source: str
    high: float | None = None
    at_c: float | None = None
    of: str = ""


@dataclass(frozen=True, slots=True)
class Form:
    """Another form on the packet: one gram of it does the work of `grams` of the substance `of`.

    `low_grams` and `high_grams` stand where the sources differ; None where the figure is exact.
    """

    name: str
    grams: float
    of: str
    basis: str
    source: str
    low_grams: float | None = None
    high_grams: float | None = None


@dataclass(frozen=True, slots=True)
class Band:
    """The hazard codes of a solution from `at_least` to under `below` per cent by mass."""

    at_least: float
    below: float
    codes: tuple[str, ...]
    signal_word: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Substance:
    """One substance as a dyer meets it. Where sheets differ, the stricter codes stand.

    `source` covers the hazards and the words; every figure has its own. `lots_vary` is how far one
    lot may stand from the next in strength (half-width, per cent). `other_view` names what another sheet
    says; `cas_note` holds further numbers and where they come from; `must_not_meet` what to keep from it,
    with what would come of it in brackets.
    """

    key: str
    names: tuple[str, ...]
    kind: str
    roles: tuple[str, ...]
    form: str
    caution: str
    protection: tuple[str, ...]
    air: str
    powder_needs_mask: bool
    first_aid: str
    storage: str
    disposal: str
    home_use: str
    home_use_reason: str
    source: str
    lots_vary: Figure
    word: str
    traits: frozenset[str] = frozenset()
    cas: str = ""
    cas_note: str = ""
    must_not_meet: tuple[str, ...] = ()
    codes: tuple[str, ...] = ()
    pictograms: tuple[str, ...] = ()
    signal_word: str = ""
    other_view: str = ""
    safer: str = ""
    needs_choice: bool = False
    solubility: Figure | None = None
    limit: Figure | None = None
    gas: Figure | None = None
    iron_share: Figure | None = None
    forms: tuple[Form, ...] = ()
    bands: tuple[Band, ...] = ()

    @property
    def refused(self) -> bool:
        """True when no dose of it is ever worked out."""
        return self.home_use == "refused"

    def has(self, *traits: str) -> bool:
        """True when the substance has any of these traits."""
        return not self.traits.isdisjoint(traits)

    def band(self, percent: float) -> Band | None:
        """The hazard band of a solution of this strength, or None where none is known.

        `percent` is by mass, 0 to 100.
        """
        return next((b for b in self.bands if b.at_least <= percent < b.below), None)


@dataclass(frozen=True, slots=True)
class Wording:
    """The lines many substances share: air, protection, disposal, hazard codes, pictograms."""

    air: Mapping[str, str]
    protection: Mapping[str, str]
    disposal: Mapping[str, str]
    code: Mapping[str, str]
    pictogram: Mapping[str, str]
