"""Reminders about dust, skin and eyes while stuff is weighed, ground or added.

What each substance asks for stands in `substances`, with its source.
"""

from collections.abc import Iterator

from dyesession.care.reminder import GRAVE, PLAIN, PRACTICE, SLIGHT, WORST, Reminder
from dyesession.care.scene import Item, Scene, amounts, with_trait

_OPENS = ("weighs powder", "grinds")
_TOUCHES = ("adds", *_OPENS)
_NOT_DYE = ("water", "scour")  # kinds that leave a pot fit for food


def dust(scene: Scene) -> Iterator[Reminder]:
    """Weighing, grinding or adding a powder whose sheet asks for a mask."""
    dusty = [item for item in scene.adding if _is_dusty(scene, item)]
    if dusty:
        severity = PLAIN if scene.does(*_OPENS) else SLIGHT
        text = f"{amounts(dusty)} for {scene.pot}: mask on, damp cloth under, shut the jar first."
        yield Reminder("dust", text, severity, "dust", dusty[0].source)


def insect_dye(scene: Scene) -> Iterator[Reminder]:
    """Cochineal, lac or kermes in the hands of somebody allergic, or under the pestle."""
    insects = with_trait(scene.adding, "insect dye")
    if not insects:
        return
    first = insects[0]
    if scene.at.household.insect_allergy and scene.does(*_TOUCHES):
        text = f"Stop: {first.amount} for {scene.pot}, and you noted an insect-dye allergy. Let others do it."
        yield Reminder("insect dye", text, WORST, "allergy", first.source)
    elif scene.does(*_OPENS):
        text = f"{first.amount} for {scene.pot}: mask on, lidded or outdoors; its dust can start asthma."
        yield Reminder("insect dye", text, GRAVE, "allergy", first.source)


def madder_dust(scene: Scene) -> Iterator[Reminder]:
    """Madder being weighed, ground or added."""
    madder = with_trait(scene.adding, "madder")
    if madder and scene.does(*_TOUCHES):
        text = f"{madder[0].amount} for {scene.pot}: keep its dust down, never taste it, no food pots."
        yield Reminder("madder dust", text, PLAIN, "dust", madder[0].source)


def walnut_stain(scene: Scene) -> Iterator[Reminder]:
    """Walnut hulls handled, or their bath."""
    stains = with_trait(scene.here, "stains skin")
    if stains and scene.does(*_TOUCHES, "strains", "lifts", "pours", "rinses"):
        text = f"{stains[0].amount} in {scene.pot} stains skin for weeks and can blister it: gloves, sleeves."
        yield Reminder("walnut stain", text, SLIGHT, "skin", stains[0].source)


def goggles(scene: Scene) -> Iterator[Reminder]:
    """Adding or weighing what may ruin an eye."""
    harsh = with_trait(scene.adding, "eye danger")
    if harsh and scene.does(*_TOUCHES):
        text = f"Goggles on for {amounts(harsh)} in {scene.pot}: a splash may ruin an eye."
        yield Reminder("goggles", text, PLAIN, "eyes", harsh[0].source)


def damp_powder(scene: Scene) -> Iterator[Reminder]:
    """A reducer whose damp powder heats and burns."""
    reducers = with_trait(scene.adding, "damp fire")
    if reducers:
        text = f"{amounts(reducers)} for {scene.pot}: dry scoop, into water. Damp powder can catch fire."
        yield Reminder("damp powder", text, GRAVE, "fire", reducers[0].source)


def lye_into_water(scene: Scene) -> Iterator[Reminder]:
    """Lye: into cold water only, never water onto it."""
    lye = with_trait(scene.adding, "lye")
    if lye:
        bath = f", now {scene.heat}" if scene.heat else ""
        text = f"{amounts(lye)} for {scene.pot}{bath}: into cold water, bit by bit, never water onto lye."
        yield Reminder("lye into water", text, GRAVE, "burns", lye[0].source)


def open_air(scene: Scene) -> Iterator[Reminder]:
    """Something that wants open air, used under a roof."""
    airy = [item for item in scene.adding if _wants_air(item)]
    if airy and scene.at.indoors:
        text = f"{amounts(airy)} for {scene.pot}: this wants open air, or a hood that vents outside."
        yield Reminder("open air", text, GRAVE, "fumes", airy[0].source)


def not_food(scene: Scene) -> Iterator[Reminder]:
    """Anything but water or a wash going into a pot: that pot is no longer for food."""
    dye = [item for item in scene.adding if item.substance is None or item.substance.kind not in _NOT_DYE]
    if dye and scene.does("adds", "weighs powder"):
        text = f"{dye[0].amount} goes in {scene.pot}: pot, spoon, sieve and scales are never for food again."
        yield Reminder("not food", text, SLIGHT, "food", PRACTICE)


def _is_dusty(scene: Scene, item: Item) -> bool:
    """Insects and madder have a line of their own."""
    substance = item.substance
    if substance is None or not substance.powder_needs_mask or substance.has("insect dye", "madder"):
        return False
    return scene.does(*_OPENS) or (scene.does("adds") and substance.form == "powder")


def _wants_air(item: Item) -> bool:
    """Insect dyes and refused substances speak for themselves."""
    substance = item.substance
    if substance is None or substance.refused or substance.has("insect dye"):
        return False
    return substance.air == "outdoors"
