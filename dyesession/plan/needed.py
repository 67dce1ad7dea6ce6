"""What a plan wants to know of the kitchen, and nothing else: the questions, in the order they matter.

Pure. Every question may stay open; `why` says what the plan does without an answer. No figure stands in here but
those of the plan.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from dyesession.care import Household
from dyesession.dyeing.boiling import CAP_BELOW_BOIL_C
from dyesession.kitchen.model import Kitchen
from dyesession.plan.cautions import Day
from dyesession.plan.explained import Worked
from dyesession.plan.model import Plan
from dyesession.plan.pots import FILL_SHARE
from dyesession.plan.shopping import is_of
from dyesession.plan.words import litres
from dyesession.substances import find
from dyesession.units import show_mass, show_temperature

MATERIALS = ("stainless", "enamel", "aluminium", "iron", "copper", "glass")
# Whoever may live in a house, so that every reminder that hangs on it is raised and the question is worth asking.
ANYBODY = Household(child_kg=12.0, pet_kg=4.0, children=True, pets=True, insect_allergy=True)
PRICED_ROLES = ("dyestuff", "mordant", "tannin", "modifier", "assist")


@dataclass(frozen=True)
class KitchenQuestion:
    """One question: where its answer goes, what is asked and why, an example, and answers that can be touched."""

    slot: str
    asks: str
    why: str
    example: str
    choices: tuple[str, ...] = ()


def kitchen_questions(worked: Worked) -> tuple[KitchenQuestion, ...]:
    """What this plan would be better for knowing, the most wanted first; a pot at a time."""
    plan, kitchen = worked.plan, worked.kitchen
    return (
        *_scale(plan, kitchen),
        *_pot(plan, kitchen),
        *_materials(plan, kitchen),
        *_household(worked),
        *_poison(plan, kitchen),
        *_height(plan, kitchen),
        *_ring(plan, kitchen),
        *_jars(plan, kitchen),
    )


def _scale(plan: Plan, kitchen: Kitchen) -> Iterator[KitchenQuestion]:
    if not kitchen.scales:
        why = "Without it no dose has a ±, and what is too small to weigh is not seen."
        yield KitchenQuestion(
            "scale", "What is the smallest step your scale shows?", why, "1 g", ("1 g", "0.1 g", "5 g")
        )
        return
    hard = next(
        (one for one in plan.doses if one.weigh.how in ("stock solution", "stock liquor", "larger lot")), None
    )
    if hard is not None:
        why = f"{show_mass(hard.mass_g.aim)} of {hard.ingredient} is too little for the scales listed; a finer one would weigh it outright."
        yield KitchenQuestion(
            "scale", "Is there a finer scale? Its smallest step", why, "0.1 g", ("0.1 g", "0.01 g")
        )


def _pot(plan: Plan, kitchen: Kitchen) -> Iterator[KitchenQuestion]:
    heated = {one.vessel for one in plan.steps if any(heat.kind == "to" for heat in one.heat)}
    without = [one for one in plan.baths if not one.pot and one.vessel in heated]
    if without:
        one = max(without, key=lambda bath: bath.water_l)
        wants = f"The {one.vessel} wants {litres(one.water_l)} and a third of its room free, {litres(one.water_l / FILL_SHARE)} to the brim."
        more = " another pot" if kitchen.pots else " your pot"
        yield KitchenQuestion(
            "pot", f"How much does{more} hold, to the brim, and what is it made of?", wants, "12 l stainless"
        )


def _materials(plan: Plan, kitchen: Kitchen) -> Iterator[KitchenQuestion]:
    used = {one.pot for one in plan.vessels if one.pot}
    for one in kitchen.pots:
        if one.name in used and not one.material:
            why = "Iron, copper and bare aluminium shift shades; alum eats bare aluminium and iron when hot."
            yield KitchenQuestion(
                f"material:{one.name}", f"What is the {one.name} made of?", why, "stainless", MATERIALS
            )


def _household(worked: Worked) -> Iterator[KitchenQuestion]:
    kitchen = worked.kitchen
    if kitchen.household != Household():
        return
    told = [one.text for one in worked.plan.reminders]
    more = [one for one in _reminders(worked, replace(kitchen, household=ANYBODY)) if one not in told]
    if more:
        why = f"This plan has {len(more)} reminders for such a house. It stays in your kitchen file and enters no log."
        yield KitchenQuestion(
            "household", "Do children or pets live here, or anyone allergic to insects?", why, "child 12 kg, cat 4 kg",
            ("children", "pets", "insect allergy"),
        )  # fmt: skip


def _reminders(worked: Worked, kitchen: Kitchen) -> list[str]:
    plan = worked.plan
    day = Day(worked.recipe, kitchen, plan.doses, plan.vessels, [one.kind for one in plan.lots])
    return list(dict.fromkeys(reminder.text for step in plan.steps for reminder in day.reminders(step)))


def _poison(plan: Plan, kitchen: Kitchen) -> Iterator[KitchenQuestion]:
    substances = [found for one in plan.doses if (found := find(one.substance)) is not None]
    grave = [one.word for one in substances if one.first_aid in ("iron", "poison")]
    if grave and not kitchen.poison_centre:
        why = f"With {grave[0]} in the house it should stand on the wall before the jar is opened. It enters no log."
        yield KitchenQuestion(
            "poison", "The number of your poison centre", why, "the number on the sheet by the telephone"
        )


def _height(plan: Plan, kitchen: Kitchen) -> Iterator[KitchenQuestion]:
    if kitchen.elevation_m is not None or kitchen.station_pressure_kpa is not None:
        return
    hottest = max((heat.temperature_c or 0.0 for step in plan.steps for heat in step.heat), default=0.0)
    if hottest > plan.boiling_c - plan.boiling_margin_c - CAP_BELOW_BOIL_C:
        why = f"The plan goes to {show_temperature(hottest)}; high up, water boils before that. Sea level is taken meanwhile."
        yield KitchenQuestion("height", "How high above the sea do you live?", why, "400 m")


def _ring(plan: Plan, kitchen: Kitchen) -> Iterator[KitchenQuestion]:
    heated = any(heat.kind == "to" for step in plan.steps for heat in step.heat)
    if heated and not kitchen.burners:
        why = "A weak ring takes longer than the recipe says, and the day's times are then too short."
        yield KitchenQuestion(
            "ring", "How strong is your strongest ring, and of what kind?", why, "1800 W electric"
        )


def _jars(plan: Plan, kitchen: Kitchen) -> Iterator[KitchenQuestion]:
    for one in plan.doses:
        if (
            one.role in PRICED_ROLES
            and one.mass_g.aim > 0
            and not any(is_of(jar, one) for jar in kitchen.jars)
        ):
            why = "Then the list says what to buy and what the day costs."
            asks = f"How much {one.ingredient} is in the jar, and what did 100 g cost?"
            yield KitchenQuestion(f"jar:{one.substance}", asks, why, "350 g, 4.50")
