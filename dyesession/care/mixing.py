"""What must not meet, in one vessel or in one room, and what a vessel's own metal does.

Each pair carries its source. Chemical equations are not worked out here: a pair either is on the list or not.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from dyesession.care.foam import SOURCE as FOAM_SOURCE
from dyesession.care.foam import foam_rise
from dyesession.care.reminder import GRAVE, MEMORY, PLAIN, PRACTICE, SLIGHT, WORST, Reminder, shortened
from dyesession.care.scene import Item, Scene, amounts, litres, tidy, with_trait

_MIXING_NOTE = "National Fire Protection Association note, 2020-04-13; US EPA household waste text"
_DITHIONITE_SHEET = "supplier SDS Jan 2016 under Reg. 1272/2008 (R31), fdokument.com/document/64223"
_LYE_SHEETS = "GisChem sodium hydroxide sheets, gischem.de dokument 577, 4413, 4421"
_LIME_CARD = "ILO/WHO International Chemical Safety Card 0408, inchem.org"
_CHROME_SHEET = "SDS 2015 under Reg. 1272/2008, scribd.com/document/577366829"
_CHEMISTRY = f"general chemistry; {MEMORY}"


@dataclass(frozen=True, slots=True)
class NeverMix:
    """Two traits that must not meet. `whole_room`: not even in two vessels of one room."""

    one: tuple[str, ...]
    other: tuple[str, ...]
    makes: str
    source: str
    whole_room: bool = False
    rather: str = ""


NEVER_MIX = (
    NeverMix(("ammonia",), ("bleach",), "chloramine gas", _MIXING_NOTE, whole_room=True),
    NeverMix(("acid",), ("bleach",), "chlorine gas", _MIXING_NOTE, whole_room=True),
    NeverMix(("alcohol",), ("bleach",), "chloroform", _MIXING_NOTE, whole_room=True),
    NeverMix(("acid",), ("reducing",), "sulphur dioxide", _DITHIONITE_SHEET, rather=" Air the vat first."),
    NeverMix(("acetic",), ("peroxide",), "peracetic acid", _MIXING_NOTE, rather=" Rinse between."),
    NeverMix(("iron", "copper"), ("peroxide",), "heat and a burst of gas", _CHEMISTRY),
    NeverMix(("lye", "lime"), ("ammonium salt",), "ammonia gas", _LYE_SHEETS),
    NeverMix(("strong acid",), ("lye", "lime"), "violent heat", _LYE_SHEETS),
    NeverMix(("oxidiser",), ("plant slurry", "flour", "tannin"), "fire", _CHROME_SHEET),
)


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
    MetalHarm(("lye",), ("aluminium", "zinc", "tin"), _HYDROGEN, WORST, _LYE_SHEETS),
    MetalHarm(("lime",), ("aluminium",), _HYDROGEN, WORST, _LIME_CARD),
    MetalHarm(("copper",), ("iron", "zinc", "aluminium"), _PLATES, PLAIN, _CHEMISTRY),
    MetalHarm(("acid",), ("aluminium", "iron", "copper", "zinc"), _EATS, PLAIN, PRACTICE),
)

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


def foam_over(scene: Scene) -> Iterator[Reminder]:
    """A carbonate and an acid brought together: gas against the room above the liquor."""
    rise = foam_rise(scene)
    if rise is None:
        return
    gas = "gas" if rise.gas_l is None else f"{litres(rise.gas_l)} gas"
    room = "room not known" if rise.free_l is None else f"{litres(rise.free_l)} free"
    meeting = f"{amounts(rise.carbonates)} on {rise.acid.word} in {rise.letter}"
    text = f"{meeting}: up to {gas}, {room}. Small portions."
    yield Reminder("foam", text, GRAVE if rise.over_rim else PLAIN, "foam over the rim", FOAM_SOURCE)


def metal_pot(scene: Scene) -> Iterator[Reminder]:
    """What stands in a pot of bare metal, and should not."""
    metal = bare_metal(scene.at.material)
    for harm in METAL_HARMS:
        items = with_trait(scene.here, *harm.traits)
        if metal in harm.metals and items:
            text = f"{items[0].amount} in bare {metal} {scene.pot}: {harm.harm}. Stainless or enamel."
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
    gassy = with_trait(scene.here, "ferments") or (rise.carbonates if rise else ())
    if gassy and scene.at.lid_on:
        text = f"{scene.pot} is lidded and {gassy[0].amount} in it makes gas: leave the lid loose."
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


def _first_meeting(scene: Scene, pair: NeverMix) -> tuple[Item, Item] | None:
    """The two items of this pair nearest to each other, or None where they do not meet."""
    meetings = [
        (one, other)
        for one in with_trait(scene.everywhere, *pair.one)
        for other in with_trait(scene.everywhere, *pair.other)
        if one is not other and (pair.whole_room or one in scene.here or other in scene.here)
    ]
    return min(meetings, key=lambda met: not _in_one_vessel(scene, *met), default=None)


def _in_one_vessel(scene: Scene, one: Item, other: Item) -> bool:
    """True when both stand in one vessel, or one is being poured on the other."""
    pouring = {one.letter, other.letter} == {scene.at.letter, scene.at.into} and bool(scene.target)
    return one.letter == other.letter or pouring


def _meeting_reminder(scene: Scene, pair: NeverMix, one: Item, other: Item) -> Reminder:
    if _in_one_vessel(scene, one, other):
        vessel = scene.at.into if scene.at.into in (one.letter, other.letter) else one.letter
        text = f"Never {one.amount} with {other.amount} in {vessel}: {pair.makes}.{pair.rather}"
        return Reminder("never mix", shortened(text), WORST, pair.makes, pair.source)
    held = f"{one.letter}'s {one.amount}", f"{other.letter}'s {other.amount}"
    if pair.whole_room:
        text = f"{held[0]} and {held[1]} in one room: {pair.makes}. One must go."
        return Reminder("never mix", text, WORST, pair.makes, pair.source)
    text = f"Keep {held[0]} from {held[1]}: {pair.makes}."
    return Reminder("never mix", text, GRAVE, pair.makes, pair.source)
