"""What must not meet, in one vessel or in one room, and what a vessel's own metal does.

The pairs and their sources stand in `apart`. Where something gives off gas, so does its lid have a word here.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from dyesession.care.apart import CHEMISTRY, LIME_CARD, LYE_SHEETS, NEVER_MIX, SODA_CARD, Apart
from dyesession.care.foam import SOURCE as FOAM_SOURCE
from dyesession.care.foam import foam_rise
from dyesession.care.reminder import GRAVE, PLAIN, PRACTICE, SLIGHT, WORST, Reminder, shortened
from dyesession.care.scene import Item, Scene, amounts, litres, tidy, with_trait


@dataclass(frozen=True, slots=True)
class MetalHarm:
    """A trait, and the bare metals such stuff harms or is harmed by."""

    traits: tuple[str, ...]
    metals: tuple[str, ...]
    harm: str
    severity: int
    source: str


_HYDROGEN = "makes hydrogen and eats the pot"
_PLATES = "plates it with copper"
_EATS = "eats it and shifts the shade"

METAL_HARMS = (
    MetalHarm(("lye",), ("aluminium", "zinc", "tin"), _HYDROGEN, WORST, LYE_SHEETS),
    MetalHarm(("lime",), ("aluminium",), _HYDROGEN, WORST, LIME_CARD),
    MetalHarm(("copper",), ("iron", "zinc", "aluminium"), _PLATES, PLAIN, CHEMISTRY),
    MetalHarm(("alkali",), ("aluminium",), _EATS, PLAIN, SODA_CARD),
    MetalHarm(("ammonia",), ("copper",), _EATS, PLAIN, CHEMISTRY),
    MetalHarm(("acid",), ("aluminium", "iron", "copper", "zinc"), _EATS, PLAIN, PRACTICE),
)
"""Worst first: of those that apply to one pot, the first is spoken of."""

_METALS = ("zinc", "galvanised", "aluminium", "iron", "copper", "tin")
_SHEATHED = frozenset(
    ("stainless", "enamel", "enamelled", "enameled", "lined", "coated", "nonstick", "stick", "anodised")
)
_SHADES = {"iron": "saddens", "copper": "greens", "aluminium": "brightens"}  # common practice, no source
_HARMFUL_HEAT_C = 50.0  # common practice, no source: above this, strong alkali and wool or silk part company
_PROTEIN = ("wool", "silk", "mohair", "alpaca", "cashmere", "angora")


def never_mix(scene: Scene) -> Iterator[Reminder]:
    """Two things that make a gas, a fire or violent heat, across every vessel in the room."""
    for pair in NEVER_MIX:
        met = _first_meeting(scene, pair)
        if met:
            yield _meeting_reminder(scene, pair, *met)


def about_to_meet(scene: Scene) -> Reminder | None:
    """The gravest meeting in one vessel that this very step would bring about, or None."""
    moved = scene.here if scene.target else scene.coming
    for pair in NEVER_MIX:
        met = _first_meeting(scene, pair)
        if met and _in_one_vessel(scene, *met) and any(item in moved for item in met):
            return _meeting_reminder(scene, pair, *met)
    return None


def foam_over(scene: Scene) -> Iterator[Reminder]:
    """A carbonate and an acid brought together: gas against the room above the liquor."""
    rise = foam_rise(scene)
    if rise is None:
        return
    gas = "gas" if rise.gas_l is None else f"{litres(rise.gas_l)} gas"
    room = "room not known" if rise.free_l is None else f"{litres(rise.free_l)} free"
    meeting = f"{amounts(rise.carbonates)} on {rise.acid.word} in {rise.letter}"
    text = shortened(f"{meeting}: up to {gas}, {room}. Small portions.")
    yield Reminder("foam", text, GRAVE if rise.over_rim else PLAIN, "foam over the rim", FOAM_SOURCE)


def metal_pot(scene: Scene) -> Iterator[Reminder]:
    """What stands in a pot of bare metal, and should not."""
    metal = bare_metal(scene.at.material)
    harm = next((h for h in METAL_HARMS if metal in h.metals and with_trait(scene.here, *h.traits)), None)
    if harm is not None:
        item = with_trait(scene.here, *harm.traits)[0]
        text = f"{item.amount} in bare {metal} {scene.pot}: {harm.harm}. Stainless or enamel."
        hazard = "gas" if harm.severity == WORST else "shade"
        yield Reminder("metal pot", text, harm.severity, hazard, harm.source)


def shade_pot(scene: Scene) -> Iterator[Reminder]:
    """Dye in a pot whose bare metal is itself a mordant."""
    metal = bare_metal(scene.at.material)
    dyes = [item for item in scene.here if item.substance and "dyestuff" in item.substance.roles]
    if dyes and metal in _SHADES:
        text = f"{dyes[0].amount} in bare {metal} {scene.pot}: the pot itself {_SHADES[metal]} the shade."
        yield Reminder("pot shifts the shade", text, SLIGHT, "shade", PRACTICE)


def iron_and_tannin(scene: Scene) -> Iterator[Reminder]:
    """Iron and tannin together in one vessel: ink."""
    iron, tannin = with_trait(scene.here, "iron"), with_trait(scene.here, "tannin")
    if iron and tannin:
        text = f"{iron[0].amount} with {tannin[0].amount} in {scene.pot} is ink: mark pot and spoon for iron."
        yield Reminder("iron and tannin", text, SLIGHT, "stain", PRACTICE)


def hot_alkali_on_wool(scene: Scene) -> Iterator[Reminder]:
    """Strong alkali, hot, with wool or silk in it."""
    alkali = with_trait(scene.here, "alkali")
    wool = next((fibre for fibre in scene.at.fibres if _is_protein(fibre)), None)
    if alkali and wool and scene.at_least(_HARMFUL_HEAT_C):
        text = f"{alkali[0].amount} in {scene.pot} at {scene.heat} harms the {tidy(wool)}: cooler, or less."
        yield Reminder("hot alkali on wool", text, PLAIN, "fibre", PRACTICE)


def vent_the_lid(scene: Scene) -> Iterator[Reminder]:
    """A lid on something that gives off gas."""
    rise = foam_rise(scene)
    working = ("ferments", "plant slurry") if scene.does("keeps") else ("ferments",)
    gassy = with_trait(scene.here, *working) or (rise.carbonates if rise else ())
    if gassy and scene.at.lid_on:
        text = f"{scene.pot} is lidded and {gassy[0].amount} in it gives off gas: leave the lid loose."
        yield Reminder("vent the lid", text, PLAIN, "burst lid", PRACTICE)


def bare_metal(material: str) -> str:
    """The bare metal of a vessel ("aluminium"), or "" for stainless, enamel, glass and what is not known."""
    words = material.lower().replace("aluminum", "aluminium").replace("-", " ").split()
    if _SHEATHED.intersection(words):
        return ""
    metal = next((metal for metal in _METALS if metal in words), "")
    return "zinc" if metal == "galvanised" else metal


def _is_protein(fibre: str) -> bool:
    return any(kind in fibre.lower() for kind in _PROTEIN)


def _first_meeting(scene: Scene, pair: Apart) -> tuple[Item, Item] | None:
    """The two items of this pair nearest to each other, or None where they do not meet."""
    ones, others = pair.traits or ((), ())
    meetings = [
        (one, other)
        for one in with_trait(scene.everywhere, *ones)
        for other in with_trait(scene.everywhere, *others)
        if one is not other
        and not one.has(*pair.but_not)
        and (pair.whole_room or one in scene.here or other in scene.here)
    ]
    return min(meetings, key=lambda met: not _in_one_vessel(scene, *met), default=None)


def _in_one_vessel(scene: Scene, one: Item, other: Item) -> bool:
    """True when both stand in one vessel, or one is being poured on the other."""
    pouring = {one.letter, other.letter} == {scene.at.letter, scene.at.into} and bool(scene.target)
    return one.letter == other.letter or pouring


def _meeting_reminder(scene: Scene, pair: Apart, one: Item, other: Item) -> Reminder:
    rather = f" {pair.do.capitalize()}."
    if _in_one_vessel(scene, one, other):
        vessel = scene.at.into if scene.at.into in (one.letter, other.letter) else one.letter
        text = f"Never {one.amount} with {other.amount} in {vessel}: {pair.makes}.{rather}"
        return Reminder("never mix", shortened(text), WORST, pair.makes, pair.source)
    held = f"{one.letter}'s {one.amount}", f"{other.letter}'s {other.amount}"
    if pair.whole_room:
        text = f"{held[0]} and {held[1]} in one room: {pair.makes}. One must go."
        return Reminder("never mix", text, WORST, pair.makes, pair.source)
    text = f"Keep {held[0]} from {held[1]}: {pair.makes}.{rather}"
    return Reminder("never mix", shortened(text), GRAVE, pair.makes, pair.source)
