"""Gas from a carbonate that meets an acid, against the room above the liquor.

Litres per gram stand with each carbonate in `substances` (one CO2 a unit, 20 °C, one atmosphere). That is
all the gas there can be, at once: hot liquor makes it larger, little acid or small portions smaller.
"""

from dataclasses import dataclass

from dyesession.care.scene import Item, Scene, with_trait
from dyesession.substances import find

SOURCE = "ILO/WHO card 1135 for the foaming; gas volumes from molar masses"


@dataclass(frozen=True, slots=True)
class FoamRise:
    """A carbonate and an acid about to meet in the vessel with this letter.

    Litres are None where a mass or the room above the liquor is not known.
    """

    carbonates: tuple[Item, ...]
    acid: Item
    letter: str
    gas_l: float | None
    free_l: float | None

    @property
    def over_rim(self) -> bool:
        """True when the gas could fill more than the room above the liquor, or nobody can tell."""
        return self.gas_l is None or self.free_l is None or self.gas_l > self.free_l


def foam_litres(substance: str, mass_g: float) -> float:
    """Litres of carbon dioxide (20 °C) that `mass_g` grams can give; 0 for what is no carbonate.

    Raises LookupError for a substance nobody knows: no gas and not known are two things.
    """
    found = find(substance)
    if found is None:
        raise LookupError(f"no substance called {substance!r}")
    return found.gas.value * mass_g if found.gas else 0.0


def foam_rise(scene: Scene) -> FoamRise | None:
    """The carbonate and acid this step brings together in one vessel, or None."""
    if scene.target:
        return _meeting(scene.here, scene.target, scene.at.into, scene.target_free_l)
    return _meeting(scene.coming, scene.here, scene.pot, scene.free_l)


def _meeting(
    incoming: tuple[Item, ...], standing: tuple[Item, ...], letter: str, free_l: float | None
) -> FoamRise | None:
    """`incoming` meets `standing`: a carbonate on one side and an acid on the other."""
    fizzing, sour = with_trait(incoming, "carbonate"), with_trait(standing, "acid")
    if not (fizzing and sour):
        fizzing, sour = with_trait(standing, "carbonate"), with_trait(incoming, "acid")
    return FoamRise(fizzing, sour[0], letter, _gas_l(fizzing), free_l) if fizzing and sour else None


def _gas_l(carbonates: tuple[Item, ...]) -> float | None:
    if any(item.mass_g is None for item in carbonates):
        return None
    return sum(foam_litres(item.name, item.mass_g) for item in carbonates if item.mass_g is not None)
