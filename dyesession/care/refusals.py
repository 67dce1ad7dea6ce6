"""What is never worked out, and what is off until the dyer chooses it.

By substance, never by the name of a colour or a recipe. Reasons and sources stand in `substances`.
"""

from dataclasses import dataclass

from dyesession.care.heat import CARBON_MONOXIDE_SOURCE, FUEL_BURNERS
from dyesession.substances import Substance, find, strength_percent


@dataclass(frozen=True, slots=True)
class Refusal:
    """No dose, no step: what, why, what to do instead, and who says so."""

    what: str
    reason: str
    safer: str
    source: str

    @property
    def text(self) -> str:
        """The refusal in one sentence and the safer way in another."""
        return f"{self.what} is refused: {self.reason}. Instead: {self.safer}."


@dataclass(frozen=True, slots=True)
class Choice:
    """Off until the dyer chooses it: what, why, and who says so."""

    what: str
    reason: str
    source: str

    @property
    def text(self) -> str:
        """Why it is off, in one sentence."""
        return f"{self.what} is off until you choose it: {self.reason}."


def refusal(substance_text: str) -> Refusal | None:
    """The refusal of the substance this text names by key or by any old name, or None."""
    found = find(substance_text)
    return refusal_of(found) if found is not None else None


def refusal_of(substance: Substance) -> Refusal | None:
    """The refusal of this substance, or None where it is not refused."""
    if not substance.refused:
        return None
    return Refusal(_title(substance), substance.home_use_reason, substance.safer, substance.source)


def needs_choice(substance_text: str) -> Choice | None:
    """Why the substance this text names is off until chosen (copper, lye ...), or None."""
    found = find(substance_text)
    return choice_of(found, substance_text) if found is not None else None


def choice_of(substance: Substance, as_named: str = "") -> Choice | None:
    """Why this substance is off until chosen, or None; at a harmless strength ("5 %") it is not off."""
    percent = strength_percent(as_named)
    band = substance.band(percent) if percent is not None else None
    if not substance.needs_choice or (band is not None and not band.codes):
        return None
    return Choice(_title(substance), substance.home_use_reason, substance.source)


def heat_refusal(burner: str, indoors: bool) -> Refusal | None:
    """The refusal of a fuel-burning stove under a roof, or None."""
    if not indoors or burner not in FUEL_BURNERS:
        return None
    return Refusal(
        f"A {burner} indoors" if burner != "charcoal" else "Charcoal indoors",
        "its carbon monoxide kills, and an open window or a fan does not make it safe",
        "take it outdoors, or use the kitchen stove",
        CARBON_MONOXIDE_SOURCE,
    )


def _title(substance: Substance) -> str:
    return substance.key[0].upper() + substance.key[1:]
