"""The shipped recipes worked out in kitchens of several kinds, for what they make `care` say."""

from dataclasses import replace
from functools import cache
from pathlib import Path

from dyesession.care import Household
from dyesession.kitchen.model import Burner, Kitchen, Pot, Scale
from dyesession.plan import lots_from_text, work_out
from dyesession.plan.model import Plan
from dyesession.recipe import load_recipe

RECIPES = {one.stem: one for one in sorted((Path(__file__).parents[2] / "recipes").glob("*.toml"))}
TODDLER = Household(child_kg=12.0)


def pots(material: str, *litres: float) -> tuple[Pot, ...]:
    return tuple(Pot(f"{material} {i}", volume_l, 28.0, True, material) for i, volume_l in enumerate(litres))


SCALES = (Scale("kitchen scale", 1.0, 5000.0),)
ROOMY = pots("stainless", 12.0, 12.0, 12.0, 12.0, 12.0)
RINGS = (Burner("front ring", 1800.0, "electric"),)

KITCHENS = {
    "ordinary": Kitchen(scales=SCALES, pots=ROOMY, burners=RINGS),
    "with a child": Kitchen(scales=SCALES, pots=ROOMY, burners=RINGS, household=TODDLER),
    "with an allergy": Kitchen(
        scales=SCALES, pots=ROOMY, burners=RINGS, household=Household(insect_allergy=True)
    ),
    "bare aluminium": Kitchen(scales=SCALES, pots=pots("aluminium", *[12.0] * 5), burners=RINGS),
    "a camp stove in the yard": Kitchen(
        scales=SCALES, pots=ROOMY, burners=(Burner("stove", None, "camp stove", indoors=False),)
    ),
    "no lids": Kitchen(scales=SCALES, pots=tuple(replace(one, lid=False) for one in ROOMY), burners=RINGS),
    "big pots": Kitchen(scales=SCALES, pots=pots("stainless", *[40.0] * 5), burners=RINGS),
}


@cache
def planned(recipe: str, kitchen: str = "ordinary", fibre: str = "") -> Plan:
    """A shipped recipe worked out for a lot of its own fibre, or for the lot given."""
    read = load_recipe(RECIPES[recipe])
    lot = fibre or f"240 g {read.fibre[0]}"
    return work_out(read, lots_from_text([lot], read.fibre[0]), KITCHENS[kitchen])


def lines(plan: Plan, trigger: str) -> list[str]:
    return [one.text for one in plan.reminders if one.trigger == trigger]
