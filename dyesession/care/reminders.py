"""Every reminder in one table. To add one: write its function beside its hazard, name it here, test it.

Figures and their sources stand beside each hazard.
"""

from collections.abc import Callable, Iterable, Iterator

from dyesession.care import heat, kept, mixing, poison, powders
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
    "too strong": powders.too_strong,
    "iron at home": poison.iron_at_home,
    "lock it up": poison.lock_up,
    "looks like juice": kept.looks_like_juice,
    "past its date": kept.past_its_date,
    "off unless chosen": poison.off_unless_chosen,
    "metal pot": mixing.metal_pot,
    "near a flame": heat.near_a_flame,
    "ammonia fumes": poison.ammonia_fumes,
    "open air": powders.open_air,
    "heavy pot": heat.heavy_pot,
    "boil-over": heat.boil_over,
    "powder at the boil": heat.powder_at_the_boil,
    "superheated jar": heat.superheated_jar,
    "full pot": heat.full_pot,
    "goggles": powders.goggles,
    "opened again": kept.opened_again,
    "sealed and warm": kept.sealed_and_warm,
    "put by": kept.put_by,
    "madder dust": powders.madder_dust,
    "dust": powders.dust,
    "grinding": powders.grinding,
    "chopping": powders.chopping,
    "iron dose": poison.iron_dose,
    "hot alkali on wool": mixing.hot_alkali_on_wool,
    "vent the lid": mixing.vent_the_lid,
    "thrown away": kept.thrown_away,
    "walnut stain": powders.walnut_stain,
    "hot vinegar": heat.hot_vinegar,
    "foul vat": kept.foul_vat,
    "iron and tannin": mixing.iron_and_tannin,
    "pot shifts the shade": mixing.shade_pot,
    "iron pot": poison.iron_pot,
    "drifted": kept.drifted,
    "cool-down": heat.cool_down,
    "not food": powders.not_food,
}

# What a step says once, at its worst moment, though it holds at several.
_ONCE_A_STEP = frozenset(
    (
        *("fuel stove indoors", "hot liquor", "cool-down", "boil-over", "full pot", "heavy pot"),
        *("ammonia fumes", "goggles"),
    )
)


def reminders(situation: Situation) -> tuple[Reminder, ...]:
    """What to bear in mind at this step, worst first, none twice; only what can apply."""
    return reminders_over((situation,))


def reminders_over(moments: Iterable[Situation]) -> tuple[Reminder, ...]:
    """The same over several moments of one step, each thing said once, at its worst, worst first.

    A step has moments: as it begins, at its hottest, as it ends. Pass them in that order.
    """
    raised = [one for moment in moments for one in _raised(scene_of(moment))]
    ranked = sorted(raised, key=lambda one: -one.severity)
    once: dict[str, Reminder] = {}
    for one in ranked:
        once.setdefault(one.trigger if one.trigger in _ONCE_A_STEP else one.text, one)
    return tuple(once.values())


def _raised(scene: Scene) -> Iterator[Reminder]:
    for trigger in TRIGGERS.values():
        yield from trigger(scene)
