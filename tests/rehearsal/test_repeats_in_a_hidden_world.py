"""A rehearsed day with hidden truths, repeated by its log and rehearsed again: the smaller twin of `bench/repeats.py`."""

import pytest
from bench.repeats import KITCHEN, RECIPE, Dyer, Went, in_all_g, repeats

from dyesession.daybook.learning import learnt
from dyesession.plan import work_out
from dyesession.plan.model import FibreLot
from dyesession.recipe import load_recipe


def test_by_its_log_a_rehearsed_colour_comes_as_near_as_is_claimed_and_by_the_recipe_alone_it_does_not() -> None:
    found = repeats(12)
    assert 10 <= found.by_log <= 12 and found.by_recipe <= 7
    assert found.off_by_recipe > 2.0 * found.off_by_log


def test_a_hidden_day_loses_no_colour_and_its_log_holds_what_was_done_and_read(tmp_path) -> None:
    recipe = load_recipe(RECIPE)
    plan = work_out(recipe, (FibreLot("skein", "wool", 120.0, air_dry=True),), KITCHEN)
    dyer = Dyer(3, plan, tmp_path)
    day, world = dyer.dyes(recipe, 120.0, 0, Went(dose=1.2, longer_min=20.0, pulls=2))
    events = [one.event for one in day.entries]
    [root] = [one for one in events if one.kind == "added" and one.ingredient == "madder"]
    assert root.mass_g == pytest.approx(72.0) and in_all_g(world) == pytest.approx(72.0)
    assert 0.1 < world.depth < 0.6
    assert sum(one.kind == "strained" for one in events) == 2
    about = {one.about.what for one in learnt([day]).numbers}
    assert {"exhaustion", "kept share", "liquor held"} <= about
