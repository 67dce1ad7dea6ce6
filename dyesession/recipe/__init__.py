"""Recipes: the models and friendly loading of `recipes/*.toml`. Knows nothing of sessions."""

from dyesession.recipe.loading import check_recipe, find_recipe, load_recipe, recipe_from_document
from dyesession.recipe.model import (
    LANES,
    ROLES,
    STAGES,
    Addition,
    Heat,
    Ingredient,
    Judge,
    Recipe,
    Step,
)
from dyesession.recipe.trouble import RecipeError

__all__ = [
    "LANES",
    "ROLES",
    "STAGES",
    "Addition",
    "Heat",
    "Ingredient",
    "Judge",
    "Recipe",
    "RecipeError",
    "Step",
    "check_recipe",
    "find_recipe",
    "load_recipe",
    "recipe_from_document",
]
