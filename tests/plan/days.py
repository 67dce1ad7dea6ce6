"""Recipes, kitchens and fibre for the tests of the plan. All invented."""

from pathlib import Path

from dyesession.kitchen import Burner, Household, Kitchen, Pot, Scale
from dyesession.plan import FibreLot
from dyesession.recipe import load_recipe, recipe_from_document

RECIPES = Path(__file__).parents[2] / "recipes"

KITCHEN_SCALE = Scale("kitchen scale", 1.0, 5000.0)
LETTER_SCALE = Scale("letter scale", 0.1, 500.0)

KITCHEN = Kitchen(
    scales=(KITCHEN_SCALE,),
    pots=(
        Pot("big pot", 12.0, 28.0, True, "stainless"),
        Pot("canning pot", 12.0, 28.0, True, "enamelled steel"),
        Pot("small pot", 5.0, 20.0, True, "stainless"),
        Pot("iron pot", 12.0, None, None, "enamelled steel"),
    ),
    burners=(Burner("front", 1800.0, "electric"),),
    elevation_m=400.0,
)


def house_recipe(name):
    return load_recipe(RECIPES / f"{name}.toml")


def wool(mass_g, **more):
    return FibreLot("wool", "wool", mass_g, air_dry=True, **more)


def an_ingredient(name, dose, substance="potassium alum", role="mordant", **more):
    return {"name": name, "substance": substance, "role": role, "dose": dose, **more}


def a_step(name, stage="mordant", **more):
    return {"name": name, "stage": stage, "lane": "fibre", "vessel": f"{name} pot", **more}


def a_recipe(ingredients, steps, **more):
    tables = {
        "format": 1,
        "name": "A day",
        "fibre": ["wool"],
        "ingredient": ingredients,
        "step": steps,
        **more,
    }
    return recipe_from_document(tables, "test")


def alum_only(dose="12 %", **more):
    """The shortest day there is: alum on wool."""
    step = a_step("mordant", add=["alum"], enter=["fibre"], heat=[{"to": "85 degC", "over": "45 min"}])
    return a_recipe([an_ingredient("alum", dose)], [step], **more)


def with_child(kitchen, child_kg=12.0):
    from dataclasses import replace

    return replace(kitchen, household=Household(child_kg=child_kg, children=True))
