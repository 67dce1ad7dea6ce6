"""Reminders about hot liquor, full and heavy pots, and what burns under them.

Burn times: `scalds`. Habits at the stove are common practice without a source and say so; carbon monoxide:
US Consumer Product Safety Commission, document 5012.
"""

from collections.abc import Iterator

from dyesession.care.reminder import GRAVE, PLAIN, PRACTICE, SLIGHT, WORST, Reminder
from dyesession.care.scalds import (
    COOL_C,
    HOT_FROM_C,
    ONE_SECOND_FROM_C,
    SOURCE,
    roughly,
    scald_seconds,
    spoken,
)
from dyesession.care.scene import Item, Scene, amounts, degrees, litres, with_trait

CARBON_MONOXIDE_SOURCE = "US Consumer Product Safety Commission, document 5012"
FUEL_BURNERS = ("camp stove", "charcoal")

NEAR_BOIL_C = 90.0  # common practice, no source: where a plant slurry starts to climb
POWDER_FLASH_C = 95.0  # common practice, no source: powder makes a boiling pot flash up
FULL_SHARE = 2 / 3  # common practice, no source
HEAVY_KG = 8.0  # common practice, no source
LONG_S = 5 * 60.0  # own choice: a burn that takes this long is no splash's, but a hand's that stays in
_LIQUOR_KG_PER_L = 1.0  # water; a hot bath is up to 4 % lighter
_POT_KG_PER_L = 0.15  # common practice, no source: a stainless pot for each litre it holds
_SHOWN_L = 0.05  # half of the tenth of a litre that `litres` shows

# In this order: the first the step does is the one spoken of.
_HANDLING = {
    "strains": "Strain with a ladle, away from you.",
    "pours": "Ladle it, or pour away from you.",
    "moves": "Let it cool before you carry it.",
    "lifts": "Lift with tongs and let it drip.",
    "rinses": "Cool it before your hands go in.",
}
_WAITED_FOR = ("lifts", "rinses", "moves")  # hot liquor is ladled hot; these may wait until it is cool
_STEEPING = ("", "soak", "extract", "scour")  # stages in which plant stuff or soap is in the pot itself


def hot_liquor(scene: Scene) -> Iterator[Reminder]:
    """A bath from 45 °C that is lifted from, strained, poured, moved or rinsed in."""
    temperature_c = scene.at.temperature_c
    advice = next((said for act, said in _HANDLING.items() if scene.does(act)), None)
    if advice is None or temperature_c is None or temperature_c < HOT_FROM_C:
        return
    bath = scene.pot if scene.at.volume_l is None else f"{scene.pot}, {litres(scene.at.volume_l)},"
    burns, severity = _burns(temperature_c)
    stands = "goes to" if scene.to_be_heated else "will be at" if scene.at.ahead else "is at"
    text = f"{bath} {stands} {scene.heat}: {burns}. {advice}"
    yield Reminder("hot liquor", text, severity, "scald", SOURCE)


def _burns(temperature_c: float) -> tuple[str, int]:
    """How soon it burns, and how grave that is: from one second at 60 °C to hours at 45."""
    if temperature_c >= ONE_SECOND_FROM_C:
        return "one second burns", GRAVE
    soonest_s = scald_seconds(temperature_c)[0]
    if soonest_s >= LONG_S:
        return "too hot for a hand to stay in", SLIGHT
    return f"it burns in {spoken(soonest_s)}", PLAIN


def cool_down(scene: Scene) -> Iterator[Reminder]:
    """How long a hot bath takes to cool for bare hands, where somebody has reckoned it."""
    if scene.at.cooling_min is None or not scene.does(*_WAITED_FOR) or not scene.at_least(HOT_FROM_C):
        return
    low, high = scene.at.cooling_min
    fall = f"from {scene.heat} down to {degrees(COOL_C)}"
    text = f"Bare hands in {scene.pot} only when cool: {roughly(low, high)} {fall}, longer with a lid."
    yield Reminder("cool-down", text, SLIGHT, "scald", "reckoned by the law of cooling for this vessel")


def boil_over(scene: Scene) -> Iterator[Reminder]:
    """Plant slurry, bran or soap near the boil."""
    steeping = scene.here if scene.at.stage in _STEEPING else scene.coming
    rising = with_trait(steeping, "plant slurry", "foams")
    if rising and scene.at_least(NEAR_BOIL_C) and not scene.does("strains", "pours"):
        text = f"{amounts(rising)} at {scene.heat} in {scene.pot} can boil over: lid ajar, stay by it."
        yield Reminder("boil-over", text, PLAIN, "scald", PRACTICE)


def powder_at_the_boil(scene: Scene) -> Iterator[Reminder]:
    """A dry powder put into a bath at the boil."""
    dry = [item for item in scene.adding if _is_dry(item)]
    if dry and scene.does("adds") and scene.hot_when_added(POWDER_FLASH_C):
        text = f"Off the heat before {amounts(dry)} goes in {scene.pot}: it flashes up at {scene.heat}."
        yield Reminder("powder at the boil", text, PLAIN, "scald", PRACTICE)


def full_pot(scene: Scene) -> Iterator[Reminder]:
    """More than two thirds of a pot that is hot or to be heated."""
    volume_l, capacity_l = scene.at.volume_l, scene.at.capacity_l
    hot = scene.does("heats") or scene.at_least(ONE_SECOND_FROM_C)
    if volume_l is None or capacity_l is None or not hot:
        return
    enough_l = capacity_l * FULL_SHARE
    if volume_l > enough_l + _SHOWN_L:
        holds = f"{scene.pot} holds {litres(volume_l)} of {litres(capacity_l)}"
        text = f"{holds}: on the heat, {litres(enough_l)} is enough."
        yield Reminder("full pot", text, PLAIN, "scald", PRACTICE)


def heavy_pot(scene: Scene) -> Iterator[Reminder]:
    """A pot of more than about 8 kg that is poured, strained by pouring, or carried."""
    mass_kg = _pot_and_liquor_kg(scene)
    if mass_kg is not None and mass_kg > HEAVY_KG and scene.does("pours", "strains", "moves"):
        text = f"{scene.pot} and its liquor weigh about {mass_kg:.0f} kg: ladle it out, or lift it with help."
        yield Reminder("heavy pot", text, PLAIN, "strained back", PRACTICE)


def fuel_stove_indoors(scene: Scene) -> Iterator[Reminder]:
    """A camp stove or charcoal under a roof: never."""
    if scene.at.indoors and scene.at.burner in FUEL_BURNERS and _warms(scene):
        burner = scene.at.burner.capitalize()
        text = f"{burner} under {scene.pot}: outdoors only. Its carbon monoxide kills, window or no."
        yield Reminder("fuel stove indoors", text, WORST, "carbon monoxide", CARBON_MONOXIDE_SOURCE)


def superheated_jar(scene: Scene) -> Iterator[Reminder]:
    """Something heated still, in a jar in a microwave oven."""
    if scene.at.burner == "microwave" and scene.does("heats"):
        text = f"{scene.pot} in the microwave can boil up when touched: wooden stick in, short bursts, wait."
        yield Reminder("superheated jar", text, PLAIN, "scald", PRACTICE)


def hot_vinegar(scene: Scene) -> Iterator[Reminder]:
    """Vinegar into a hot bath."""
    sour = with_trait(scene.adding, "acetic")
    if sour and scene.hot_when_added(ONE_SECOND_FROM_C):
        text = f"{amounts(sour)} in {scene.pot} at {scene.heat}: its fumes sting. Window open, face away."
        yield Reminder("hot vinegar", text, SLIGHT, "fumes", PRACTICE)


def near_a_flame(scene: Scene) -> Iterator[Reminder]:
    """Alcohol anywhere near heat."""
    fuels = with_trait(scene.here, "flammable")
    if fuels and (scene.does("heats") or scene.at.burner):
        text = f"{amounts(fuels)} in {scene.pot}: no flame, no hot ring in the room. A cold soak only."
        yield Reminder("near a flame", text, GRAVE, "fire", fuels[0].source)


def _warms(scene: Scene) -> bool:
    """True unless the step is known to do other things and none of them heats."""
    return not scene.at.actions or scene.does("heats") or scene.at_least(HOT_FROM_C)


def _is_dry(item: Item) -> bool:
    return item.substance is not None and item.substance.form in ("powder", "crystals")


def _pot_and_liquor_kg(scene: Scene) -> float | None:
    volume_l = scene.at.volume_l
    if volume_l is None:
        return None
    pot_kg = scene.at.vessel_kg
    if pot_kg is None:
        pot_kg = _POT_KG_PER_L * (scene.at.capacity_l or volume_l)
    return volume_l * _LIQUOR_KG_PER_L + pot_kg
