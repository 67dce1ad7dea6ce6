"""Cautions that stop a plan: a stove that may not be used where it stands."""

from pathlib import Path

import pytest

from dyesession.kitchen.model import Burner, Kitchen
from dyesession.plan import Refused, lots_from_text, work_out
from dyesession.recipe import load_recipe

RECIPES = Path(__file__).resolve().parents[2] / "recipes"


def test_a_camp_stove_under_a_roof_is_refused() -> None:
    recipe = load_recipe(RECIPES / "weld-yellow-on-wool.toml")
    lots = lots_from_text(["140 g dry wool"], "wool")
    indoors = Kitchen(burners=(Burner("camp stove", kind="camp stove", indoors=True),))
    outdoors = Kitchen(burners=(Burner("camp stove", kind="camp stove", indoors=False),))
    with pytest.raises(Refused, match="carbon monoxide"):
        work_out(recipe, lots, indoors)
    assert work_out(recipe, lots, outdoors).doses
