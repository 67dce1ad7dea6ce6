"""Every reminder in one table. To add one: write its function beside its hazard, name it here, test it.

Still to grow: labels for a stored bath, baths past their look-again date, the microwave's superheated jar.
"""

from collections.abc import Callable, Iterator

from dyesession.care import heat, mixing, poison, powders
from dyesession.care.reminder import Reminder
from dyesession.care.scene import Scene, scene_of
from dyesession.care.situation import Situation

Trigger = Callable[[Scene], Iterator[Reminder]]

# Of two equally grave, the earlier is said first.
TRIGGERS: dict[str, Trigger] = {
    "fuel stove indoors": heat.fuel_stove_indoors,
    "never mix": mixing.never_mix,
    "refused": poison.refused_substance,
    "unknown substance": poison.unknown_substance,
    "insect dye": powders.insect_dye,
    "hot liquor": heat.hot_liquor,
    "foam": mixing.foam_over,
    "lye into water": powders.lye_into_water,
    "damp powder": powders.damp_powder,
    "iron at home": poison.iron_at_home,
    "off unless chosen": poison.off_unless_chosen,
    "metal pot": mixing.metal_pot,
    "near a flame": heat.near_a_flame,
    "ammonia fumes": poison.ammonia_fumes,
    "open air": powders.open_air,
    "heavy pot": heat.heavy_pot,
    "boil-over": heat.boil_over,
    "powder at the boil": heat.powder_at_the_boil,
    "full pot": heat.full_pot,
    "goggles": powders.goggles,
    "madder dust": powders.madder_dust,
    "dust": powders.dust,
    "iron dose": poison.iron_dose,
    "hot alkali on wool": mixing.hot_alkali_on_wool,
    "vent the lid": mixing.vent_the_lid,
    "walnut stain": powders.walnut_stain,
    "hot vinegar": heat.hot_vinegar,
    "iron and tannin": mixing.iron_and_tannin,
    "pot shifts the shade": mixing.shade_pot,
    "cool-down": heat.cool_down,
    "not food": powders.not_food,
}


def reminders(situation: Situation) -> tuple[Reminder, ...]:
    """What to bear in mind at this step, worst first, none twice; only what can apply."""
    scene = scene_of(situation)
    raised = (reminder for trigger in TRIGGERS.values() for reminder in trigger(scene))
    once = {reminder.text: reminder for reminder in raised}
    return tuple(sorted(once.values(), key=lambda reminder: -reminder.severity))
