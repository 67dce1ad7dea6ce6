"""The one line of first aid under a step's reminders, with the poison centre's number where it is known.

Which line: the harm of the worst reminder. The lines defer, as those in `wording` do, from the same sources.
"""

from collections.abc import Mapping

from dyesession.care.reminder import Reminder
from dyesession.care.reminders import reminders
from dyesession.care.scene import Scene, scene_of
from dyesession.care.situation import Situation
from dyesession.care.wording import centre_words, number_words

# What a harm wants first. `{centre}` becomes the poison centre, with its number where that is known.
_FIRST: Mapping[str, str] = {
    "scald": "Scalded: cool running water at once, and stay there. Swallowed or in an eye: ring {centre}.",
    "iron": "Any swallowed: ring {centre} at once, before any sign shows.",
    "poison": "Swallowed, breathed or on skin: water over skin and eyes, ring {centre} at once.",
    "burn": "On skin or in an eye: wet things off, running water, a doctor. Swallowed: ring {centre}.",
    "eye": "In an eye: running water for a quarter of an hour, then a doctor. Swallowed: ring {centre}.",
    "gas": "Choking or dizzy: out into fresh air, the emergency number. Swallowed: ring {centre}.",
    "allergy": "Tight chest or swelling: out of the dust, the emergency number. Swallowed: ring {centre}.",
    "rinse": "In an eye or on skin: running water. Swallowed: rinse the mouth and ring {centre}.",
}
# The same where there is one line of room: the telephone number is to be seen whole.
_SHORT: Mapping[str, str] = {
    "scald": "Scalded: cool running water, at once.",
    "iron": "Any swallowed: ring now, before any sign.",
    "poison": "Swallowed, breathed, on skin: water, and ring now.",
    "burn": "On skin or in an eye: running water, a doctor.",
    "eye": "In an eye: running water 15 min, a doctor.",
    "gas": "Choking or dizzy: out; the emergency number.",
    "allergy": "Tight chest: out; the emergency number.",
    "rinse": "In an eye or on skin: running water.",
}

FIRST_AID_URGENCY = tuple(_FIRST)
"""First-aid keys, the most pressing first: of two substances in one step the earlier is the one spoken of."""

# Reminders whose harm is not that of the substance itself.
_BY_TRIGGER: Mapping[str, str] = {
    "fuel stove indoors": "gas",
    "never mix": "gas",
    "ammonia fumes": "gas",
    "hot liquor": "scald",
    "foam": "scald",
    "boil-over": "scald",
    "powder at the boil": "scald",
    "superheated jar": "scald",
    "full pot": "scald",
    "heavy pot": "scald",
    "cool-down": "scald",
    "damp powder": "scald",
    "near a flame": "scald",
    "iron at home": "iron",
    "insect dye": "allergy",
    "goggles": "eye",
    "too strong": "burn",
    "lye into water": "burn",
    "looks like juice": "poison",
}


def first_aid_for(situation: Situation, poison_centre: str = "") -> str:
    """One line of first aid for what this step may do, or "" where it has no reminder.

    It names the poison centre every time, with `poison_centre`, the dyer's own number, where given. It is
    for the screen: a telephone number never goes into a log.
    """
    said = reminders(situation)
    return first_aid_after(said, situation, poison_centre) if said else ""


def first_aid_after(
    said: tuple[Reminder, ...], situation: Situation, poison_centre: str = "", *, short: bool = False
) -> str:
    """The same where the reminders are already at hand, worst first. At least one. `short`: one line of it."""
    key = _BY_TRIGGER.get(said[0].trigger) or _of_substances(scene_of(situation))
    if short:
        number = number_words(poison_centre)
        return f"{_SHORT[key]} Poison centre{f' {number}' if number else ': ring it'}."
    return _FIRST[key].replace("{centre}", centre_words(poison_centre))


def _of_substances(scene: Scene) -> str:
    """The most pressing first aid of what is being handled, or else of what stands in the vessel."""
    keys = [item.substance.first_aid for item in scene.coming or scene.here if item.substance]
    return min(keys, key=FIRST_AID_URGENCY.index, default="rinse")
