"""Reminders about dust, skin and eyes while stuff is weighed, ground or added.

What each substance asks for stands in `substances`, with its source; what ten minutes a mill needs, and what
a pot is spoilt for, is common practice without a source and says so.
"""

import re
from collections.abc import Iterator

from dyesession.care.reminder import GRAVE, PLAIN, PRACTICE, SLIGHT, WORST, Reminder, shortened
from dyesession.care.scene import Item, Scene, amounts, with_trait
from dyesession.substances import strength_percent

_OPENS = ("weighs powder", "grinds")
_TOUCHES = ("adds", *_OPENS)
_FINE_FORMS = ("powder", "crystals", "granules")
_CHOPPED_FORMS = ("herb",)
_SAID_FINE = re.compile(r"\b(powder(ed)?|ground)\b", re.IGNORECASE)
_NOT_DYE = ("water", "scour", "alkali")  # kinds that are no dye: they wash, or stand in a kitchen anyway
_RUINS_EYES = frozenset({"H314", "H318"})
_BURNS = frozenset({"H271", *_RUINS_EYES})
_SOLD_BY_STRENGTH = ("acetic", "peroxide", "ammonia")  # traits of what is bought mild or fierce


def dust(scene: Scene) -> Iterator[Reminder]:
    """Weighing or adding a powder whose sheet asks for a mask; insects and madder have their own lines."""
    dusty = [item for item in scene.adding if _is_fine(item) and not item.has("insect dye", "madder")]
    if dusty and scene.does("weighs powder", "adds") and not scene.does("grinds"):
        severity = PLAIN if scene.does(*_OPENS) else SLIGHT
        text = f"{amounts(dusty)} for {scene.pot}: mask on, damp cloth under, shut the jar first."
        yield Reminder("dust", text, severity, "dust", dusty[0].source)


def chopping(scene: Scene) -> Iterator[Reminder]:
    """A dry herb got ready: no powder, but it dusts when it is cut."""
    herbs = [item for item in scene.adding if _is_herb(item)]
    if herbs and scene.does(*_OPENS):
        text = f"{amounts(herbs)} for {scene.pot} dusts when it is chopped: mask on, or chop it damp."
        yield Reminder("chopping", text, SLIGHT, "dust", herbs[0].source)


def grinding(scene: Scene) -> Iterator[Reminder]:
    """Roots, barks, woods, crystals under the pestle or in the mill."""
    ground = with_trait(scene.adding, "grinds to dust")
    ground = tuple(item for item in ground if not item.has("insect dye"))
    if ground and scene.does("grinds"):
        how = "outdoors or under a wet cloth, mask on"
        text = f"Grind {amounts(ground)} for {scene.pot} {how}. Let a mill settle 10 min."
        yield Reminder("grinding", shortened(text), PLAIN, "dust", PRACTICE)


def insect_dye(scene: Scene) -> Iterator[Reminder]:
    """Cochineal, lac or kermes in the hands of somebody allergic, or under the pestle."""
    insects = with_trait(scene.adding, "insect dye")
    if not insects:
        return
    first = insects[0]
    if scene.at.household.insect_allergy and scene.does(*_TOUCHES):
        text = f"Stop: {first.amount} for {scene.pot}, and you noted an insect-dye allergy. Let others do it."
        yield Reminder("insect dye", text, WORST, "allergy", first.source, private=True)
    elif scene.does(*_OPENS):
        text = f"{first.amount} for {scene.pot}: mask on, lidded or outdoors; its dust can start asthma."
        yield Reminder("insect dye", text, GRAVE, "allergy", first.source)


def madder_dust(scene: Scene) -> Iterator[Reminder]:
    """Madder being weighed, ground or added."""
    madder = with_trait(scene.adding, "madder")
    if madder and scene.does(*_TOUCHES):
        text = f"{madder[0].amount} for {scene.pot}: mask on until it is wet, and none near a mouth."
        yield Reminder("madder dust", text, PLAIN, "dust", madder[0].source)


def walnut_stain(scene: Scene) -> Iterator[Reminder]:
    """Walnut hulls handled, or their bath."""
    stains = with_trait(scene.here, "stains skin")
    if stains and scene.does(*_TOUCHES, "strains", "lifts", "pours", "rinses"):
        text = f"{stains[0].amount} in {scene.pot} stains skin for weeks and can blister it: gloves, sleeves."
        yield Reminder("walnut stain", text, SLIGHT, "skin", stains[0].source)


def goggles(scene: Scene) -> Iterator[Reminder]:
    """Adding or weighing what may ruin an eye. What is ordinary at home only asks to be poured with care."""
    harsh = [item for item in scene.adding if _hard_on_eyes(item)]
    if not harsh or not scene.does(*_TOUCHES):
        return
    severe = [item for item in harsh if not _is_ordinary(item)]
    if severe:
        text = f"Goggles on for {amounts(severe)} in {scene.pot}: a splash or a speck may ruin an eye."
        yield Reminder("goggles", text, PLAIN, "eyes", severe[0].source)
        return
    liquid = all(item.substance and item.substance.form == "liquid" for item in harsh)
    how = "pour it low" if liquid else "keep it low"
    text = f"{amounts(harsh)} for {scene.pot}: hard on eyes until it is in the water, so {how}."
    yield Reminder("goggles", text, SLIGHT, "eyes", harsh[0].source)


def too_strong(scene: Scene) -> Iterator[Reminder]:
    """An acid, ammonia or peroxide bought stronger than a kitchen's."""
    burning = [item for item in with_trait(scene.adding, *_SOLD_BY_STRENGTH) if _burns_as_bought(item)]
    if burning and scene.does(*_TOUCHES):
        item = burning[0]
        strong = f"{item.amount} at {strength_percent(item.name):g} %"
        text = f"{strong} for {scene.pot} burns skin and eyes: use the kitchen strength instead."
        yield Reminder("too strong", text, GRAVE, "burns", _band_source(item))


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
        bath = "" if not scene.heat or scene.to_be_heated else f", now {scene.heat}"
        text = f"{amounts(lye)} for {scene.pot}{bath}: into cold water, bit by bit, no water onto lye."
        yield Reminder("lye into water", text, GRAVE, "burns", lye[0].source)


def open_air(scene: Scene) -> Iterator[Reminder]:
    """Something that wants open air, used under a roof."""
    airy = [item for item in scene.adding if _wants_air(item)]
    if airy and scene.at.indoors:
        text = f"{amounts(airy)} for {scene.pot}: this wants open air, or a hood that vents outside."
        yield Reminder("open air", text, GRAVE, "fumes", airy[0].source)


def not_food(scene: Scene) -> Iterator[Reminder]:
    """The first dye or mordant of the day: from then on the pots are dye pots. Not said at every jar."""
    dye = [item for item in scene.coming if _spoils_for_food(item)]
    begun = any(_spoils_for_food(item) for item in scene.contents + scene.elsewhere)
    if dye and not begun and scene.at.stage != "scour" and scene.does("adds", "weighs powder", "pours"):
        spoilt = "pots, spoons, sieve, scales are never for food"
        text = f"{dye[0].amount} for {scene.pot}: from now on {spoilt}."
        yield Reminder("not food", text, SLIGHT, "food", PRACTICE)


def _spoils_for_food(item: Item) -> bool:
    """Iron says so in a line of its own."""
    return not item.has("iron") and _is_dye(item)


def _is_dye(item: Item) -> bool:
    return item.substance is None or item.substance.kind not in _NOT_DYE


def _hard_on_eyes(item: Item) -> bool:
    """Peroxide always, for a sheet under 8 % still warns; the rest at the strength its name gives."""
    if item.substance is None or item.substance.refused:
        return False
    return item.has("peroxide") or not _RUINS_EYES.isdisjoint(item.codes)


def _burns_as_bought(item: Item) -> bool:
    """True when the dyer named a strength, and at that strength it burns."""
    return strength_percent(item.name) is not None and not _BURNS.isdisjoint(item.codes)


def _is_ordinary(item: Item) -> bool:
    return item.substance is not None and item.substance.home_use == "yes"


def _is_fine(item: Item) -> bool:
    """A powder that asks for a mask, by its kind or by what the dyer calls it."""
    substance = item.substance
    if substance is None:
        return False
    if substance.powder_needs_mask and substance.form in _FINE_FORMS:
        return True
    return substance.kind == "dyestuff" and _SAID_FINE.search(item.name) is not None


def _is_herb(item: Item) -> bool:
    substance = item.substance
    return (
        substance is not None
        and substance.powder_needs_mask
        and substance.form in _CHOPPED_FORMS
        and not _is_fine(item)
    )


def _band_source(item: Item) -> str:
    percent = strength_percent(item.name)
    band = item.substance.band(percent) if item.substance and percent is not None else None
    return band.source if band else item.source


def _wants_air(item: Item) -> bool:
    """Insect dyes and refused substances speak for themselves."""
    substance = item.substance
    if substance is None or substance.refused or substance.has("insect dye"):
        return False
    return substance.air == "outdoors"
